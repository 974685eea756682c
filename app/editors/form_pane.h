// SPDX-License-Identifier: GPL-3.0-or-later
// The form of the selected part, with a list to reach every part.
#pragma once

#include <QComboBox>
#include <QLabel>
#include <QScrollArea>

#include "analysis/answer.h"
#include "document/document.h"
#include "document/selection.h"
#include "editors/field.h"

namespace editors {

class FormPane : public QWidget {
    Q_OBJECT
public:
    FormPane(document::Document& document, document::Selection& selection, QWidget* parent = nullptr);
    [[nodiscard]] const std::vector<Field*>& fields() const { return fields_; }
    [[nodiscard]] QComboBox& parts() { return *parts_; }

public slots:
    void showAnswer(analysis::AnswerPtr answer);

private:
    void listParts();
    void follow();
    void rebuild();
    void build(class FormBuilder& form);
    void buildItem(class FormBuilder& form, const design::ItemIndex& at);
    void buildWhole(class FormBuilder& form, const document::WholePart& part);
    [[nodiscard]] std::string shape() const;  ///< which rows there are; another shape means another form
    document::Document& document_;
    document::Selection& selection_;
    analysis::AnswerPtr answer_;
    QComboBox* parts_;
    QLabel* derived_;
    QLabel* refused_;
    QScrollArea* scroll_;
    std::vector<document::Selected> listed_;
    std::vector<Field*> fields_;
    std::string shape_;
};

}  // namespace editors
