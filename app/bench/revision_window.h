// SPDX-License-Identifier: GPL-3.0-or-later
// The kept revisions of the open design: keep, issue, open again, check before a repeat order.
#pragma once

#include <QComboBox>
#include <QDialog>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTableWidget>

#include "design/revision.h"
#include "document/document.h"
#include "solver/aside.h"

namespace bench {

class RevisionWindow : public QDialog {
    Q_OBJECT
public:
    RevisionWindow(document::Document& document, QWidget* parent);

    [[nodiscard]] QTableWidget& table() { return *table_; }
    [[nodiscard]] QString words() const { return words_->toPlainText(); }
    [[nodiscard]] bool busy() const { return aside_.busy(); }

signals:
    void besideAsked(const design::DesignPtr& kept);

private:
    void build();
    QLayout* keeping();
    QLayout* issuing();
    void showRegister();
    void showEnabled();
    void keep();
    void issue();
    void noteLot();
    void takeUp();
    void putBeside();
    void checkMaterials();
    /// The chosen revision's number; 0: none.
    [[nodiscard]] int chosen() const;
    [[nodiscard]] std::string path() const { return document_.path().toStdString(); }
    /// Runs what may throw, and says its sentence.
    template <class Act>
    bool tried(const Act& act);

    document::Document& document_;
    design::Register all_;
    solver::Aside aside_;
    QTableWidget* table_ = nullptr;
    QLineEdit *reason_ = nullptr, *notice_ = nullptr, *by_ = nullptr, *lot_ = nullptr;
    QComboBox* state_ = nullptr;
    QPushButton *keep_ = nullptr, *issue_ = nullptr, *noteLot_ = nullptr, *takeUp_ = nullptr, *beside_ = nullptr,
                *check_ = nullptr;
    QPlainTextEdit* words_ = nullptr;
};

}  // namespace bench
