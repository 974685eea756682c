// SPDX-License-Identifier: GPL-3.0-or-later
// A form made of widgets.
#pragma once

#include <QFormLayout>
#include <QLabel>
#include <QPushButton>
#include <QToolButton>
#include <map>

#include "editors/field.h"
#include "editors/form.h"

namespace editors {

/// Which groups the designer opened or folded, by their names; it outlives forms.
using Folds = std::map<std::string, bool>;

class FormView : public QWidget {
    Q_OBJECT
public:
    FormView(const Form& form, FieldHome home, Folds& folds, QWidget* parent = nullptr);
    [[nodiscard]] const std::vector<Field*>& fields() const { return fields_; }
    /// The field or button of this path, or null; a folded group that holds it is opened.
    [[nodiscard]] QWidget* control(const std::string& path);
    /// The path of the control that has the keyboard; "" if none.
    [[nodiscard]] std::string pathWithKeyboard() const;
    void showAnswer(const analysis::AnswerPtr& answer);

    /// Another form comes: nothing that happens to this one's widgets counts any more.
    void retire();

signals:
    /// A button changed the design; this control is to have the keyboard ("": whichever had it).
    void acted(const QString& focus);
    void selectAsked(const document::Selected& part);  ///< by a button whose act leads there

private:
    struct Group {
        int first = 0, last = 0;  ///< rows beneath the heading, the last not included
        std::string name;
        QToolButton* heading = nullptr;
    };
    struct Control {
        std::string path;
        QWidget* widget;
        int row;
    };
    void add(const Heading& heading);
    void add(const Part& part);
    void add(const Act& act);
    void add(const Table& table);
    void add(const Said& said);
    void closeGroups(int level);
    void fold(const Group& group, bool folded);
    void openWhatIsWrong();
    void chainTabs();
    [[nodiscard]] Field* field(const Part& part, FaultLine* line, QWidget* parent);
    [[nodiscard]] QAbstractButton* button(const Act& act, QAbstractButton* made, FaultLine* line);

    FieldHome home_;
    Folds& folds_;
    QFormLayout* rows_;
    std::vector<Field*> fields_;
    std::vector<Control> controls_;
    std::vector<std::pair<QLabel*, Said>> said_;
    std::vector<Group> groups_;
    std::vector<std::pair<int, Group>> open_;  ///< groups whose rows are still coming, with their level
};

}  // namespace editors
