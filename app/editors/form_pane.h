// SPDX-License-Identifier: GPL-3.0-or-later
// The form of the selected part, with a list to reach every part.
#pragma once

#include <QComboBox>
#include <QScrollArea>

#include "analysis/answer.h"
#include "document/document.h"
#include "document/selection.h"
#include "editors/form_view.h"

namespace editors {

class FormPane : public QWidget {
    Q_OBJECT
public:
    FormPane(document::Document& document, document::Selection& selection, QWidget* parent = nullptr);
    ~FormPane() override;
    FormPane(const FormPane&) = delete;
    FormPane(FormPane&&) = delete;
    FormPane& operator=(const FormPane&) = delete;
    FormPane& operator=(FormPane&&) = delete;
    [[nodiscard]] const std::vector<Field*>& fields() const { return view_->fields(); }
    [[nodiscard]] FormView& view() { return *view_; }
    [[nodiscard]] QComboBox& parts() { return *parts_; }
    [[nodiscard]] const WrongTexts& wrongTexts() const { return wrong_; }

signals:
    void faultsChanged();  ///< another form, or a field's fault came or went

public slots:
    void showAnswer(analysis::AnswerPtr answer);

private:
    /// Where the keyboard and the view were, to be there again in the next form.
    struct Spot {
        std::string path;
        int cursor = 0, from = -1, length = 0, scrolled = 0;
    };
    void listParts();
    void follow();
    void designChanged();
    void followRenamedWinding(const design::Design& before);
    void rebuildSoon();
    void rebuild(const Spot& spot);
    [[nodiscard]] Spot spot() const;
    void putBack(const Spot& spot);
    document::Document& document_;
    document::Selection& selection_;
    analysis::AnswerPtr answer_;
    QComboBox* parts_;
    QScrollArea* scroll_;
    FormView* view_ = nullptr;
    std::vector<document::Selected> listed_;
    WrongTexts wrong_;
    Folds folds_;
    design::DesignPtr design_;  ///< that the form was made for
    QString shape_;
    QString focus_;         ///< control that a button wants to have the keyboard
    bool coming_ = false;   ///< another form is on its way
    bool another_ = false;  ///< the document is about to be another design altogether
};

}  // namespace editors
