// SPDX-License-Identifier: GPL-3.0-or-later
// One unit's visit to the test bench, or its return, typed in against the test plan.
#pragma once

#include <QComboBox>
#include <QDateTime>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QWidget>
#include <functional>
#include <map>

#include "bench/plan_table.h"
#include "bench/unit_plan.h"
#include "solver/aside.h"

namespace bench {

class UnitEntry : public QWidget {
    Q_OBJECT
public:
    explicit UnitEntry(QWidget* parent = nullptr);

    /// Stages of the plan, and returns.
    void show(UnitPlanPtr plan);
    [[nodiscard]] PlanTable& table() { return *table_; }
    [[nodiscard]] QString verdictWords() const { return verdict_->text(); }
    [[nodiscard]] QString causeWords() const { return causes_->toPlainText(); }
    [[nodiscard]] bool seeking() const { return aside_.busy(); }
    /// What would be kept now. Throws units::BadInput: no serial, nothing read, a lot without its name.
    [[nodiscard]] records::UnitRecord record() const;
    /// To the next serial; lots and initials stay. To the other stage instead where readings of this serial are typed
    /// that are not kept yet.
    void next();
    [[nodiscard]] bool moreToKeep() const { return !left_.empty(); }  ///< at a stage that is not shown
    /// What tells the time of a record; the machine's clock unless set.
    void setClock(std::function<QDateTime()> clock) { clock_ = std::move(clock); }

signals:
    void keepAsked();
    void told(const QString& sentence);

private:
    QLayout* head();
    QLayout* returned();
    QLayout* words();
    QLayout* foot();
    QLineEdit* line(QLayout& row, const QString& label, const QString& tip, int width);
    void showStage();
    void showRow(int row);
    void showVerdict();
    void seekCause();
    void showCause(const learn::Finding& finding);
    [[nodiscard]] std::string stage() const;
    [[nodiscard]] const shop::PlanStage* plannedRows() const;
    [[nodiscard]] bool isReturn() const { return stage() == "return"; }

    std::function<QDateTime()> clock_ = &QDateTime::currentDateTime;
    UnitPlanPtr plan_;
    int shown_ = -1;                        ///< stage
    std::map<int, PlanModel::Reads> left_;  ///< what was typed at stages that are not shown
    UnitCausesPtr finder_;                  ///< made at the first fail
    solver::Aside aside_;
    QComboBox* stage_ = nullptr;
    QLineEdit *serial_ = nullptr, *lots_ = nullptr, *initials_ = nullptr;
    QWidget* returned_ = nullptr;
    QLineEdit *symptom_ = nullptr, *finding_ = nullptr, *cause_ = nullptr, *note_ = nullptr;
    PlanTable* table_ = nullptr;
    QPlainTextEdit *how_ = nullptr, *causes_ = nullptr;
    QLabel *mark_ = nullptr, *verdict_ = nullptr;
    QPushButton *seek_ = nullptr, *keep_ = nullptr;
};

/// "wire W12, sheets L3" as what and name. Throws units::BadInput, place `field`, where one has no name.
[[nodiscard]] std::vector<records::Named> namedIn(const QString& typed, const std::string& field);
/// "0412" → "0413"; digits at the end count on, with as many places; "" where there are none.
[[nodiscard]] QString nextSerial(const QString& serial);

}  // namespace bench
