// SPDX-License-Identifier: GPL-3.0-or-later
// Built units of the open design: tested against its plan, kept as records, looked at together.
#pragma once

#include <QDialog>
#include <QLabel>
#include <QPushButton>
#include <QTabWidget>

#include "bench/elided_label.h"
#include "bench/unit_entry.h"
#include "bench/unit_list.h"
#include "document/document.h"

namespace bench {

class UnitsWindow : public QDialog {
    Q_OBJECT
public:
    /// The plan is of the design as it is open now. `folders`: of data. `file`: the shop's records; "" not chosen yet.
    UnitsWindow(document::Document& document, std::vector<std::string> folders, const QString& file, QWidget* parent);

    [[nodiscard]] UnitEntry& entry() { return *entry_; }
    [[nodiscard]] UnitList& list() { return *list_; }
    [[nodiscard]] QTabWidget& pages() { return *pages_; }
    [[nodiscard]] bool busy() const { return aside_.busy(); }
    [[nodiscard]] QString state() const { return state_->text(); }
    [[nodiscard]] const QString& file() const { return file_; }
    /// A file of records that is there, or a new one that the first record makes. One of another kind is told and not
    /// taken.
    void takeFile(const QString& path);

signals:
    void fileTaken(const QString& path);

private:
    QLayout* head();
    void makePlan(std::vector<std::string> folders);
    void chooseFile();
    void keep();
    void say(const QString& sentence);
    void showFile();

    document::Document& document_;
    solver::Aside aside_;
    QString file_;
    ElidedLabel* fileName_ = nullptr;
    QPushButton* choose_ = nullptr;
    QTabWidget* pages_ = nullptr;
    UnitEntry* entry_ = nullptr;
    UnitList* list_ = nullptr;
    QLabel* state_ = nullptr;
};

}  // namespace bench
