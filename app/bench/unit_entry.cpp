// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/unit_entry.h"

#include <QRegularExpression>
#include <QShortcut>
#include <QSignalBlocker>
#include <QSplitter>
#include <QVBoxLayout>

#include "bench/language.h"
#include "bench/named_field.h"
#include "bench/record_table.h"
#include "bench/standing_mark.h"
#include "editors/labels.h"
#include "units/fault.h"

namespace bench {

using shop::RowVerdict;

namespace {

struct CauseOutcome {
    UnitCausesPtr finder;
    learn::Finding finding;
    QString why;  ///< what was in the way
};

std::string trimmed(const QLineEdit& line) {
    return line.text().trimmed().toStdString();
}

}  // namespace

std::vector<records::Named> namedIn(const QString& typed, const std::string& field) {
    static const QRegularExpression between(QStringLiteral("[,;]"));
    std::vector<records::Named> all;
    for (const QString& piece : typed.split(between, Qt::SkipEmptyParts)) {
        const QString one = piece.simplified();
        if (one.isEmpty()) continue;
        const QString name = one.section(QLatin1Char(' '), 1);
        if (name.isEmpty())
            units::refuse(field, '"' + one.toStdString() + '"', "what it is and then its name, as wire W12, sheets L3");
        all.push_back({one.section(QLatin1Char(' '), 0, 0).toStdString(), name.toStdString()});
    }
    return all;
}

QString nextSerial(const QString& serial) {
    static const QRegularExpression counted(QStringLiteral("^(.*?)(\\d{1,15})$"));
    const auto found = counted.match(serial);
    if (!found.hasMatch()) return {};
    const QString digits = found.captured(2);
    return found.captured(1) +
           QString::number(digits.toULongLong() + 1).rightJustified(static_cast<int>(digits.size()), QLatin1Char('0'));
}

UnitEntry::UnitEntry(QWidget* parent) : QWidget(parent), aside_(this) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 8, 0, 0);
    column->setSpacing(8);
    column->addLayout(head());
    returned_ = new QWidget;
    returned_->setLayout(returned());
    column->addWidget(returned_);
    auto* across = new QSplitter(Qt::Horizontal);
    table_ = new PlanTable;
    across->addWidget(table_);
    auto* beside = new QWidget;
    beside->setLayout(words());
    across->addWidget(beside);
    across->setStretchFactor(0, 3);
    across->setStretchFactor(1, 2);
    across->setChildrenCollapsible(false);
    across->setSizes({680, 380});
    column->addWidget(across, 1);
    column->addLayout(foot());
    connect(stage_, &QComboBox::currentIndexChanged, this, &UnitEntry::showStage);
    connect(table_, &PlanTable::rowChanged, this, &UnitEntry::showRow);
    connect(&table_->model(), &PlanModel::refused, this, &UnitEntry::told);
    connect(&table_->model(), &PlanModel::changed, this, [this] {
        emit told({});
        showVerdict();
    });
    connect(&aside_, &solver::Aside::failed, this, &UnitEntry::told);
    showVerdict();
}

QLineEdit* UnitEntry::line(QLayout& row, const QString& label, const QString& tip, int width) {
    auto* made = named(row, label, new QLineEdit, tip);
    made->setMinimumWidth(width * fontMetrics().averageCharWidth());
    return made;
}

QLayout* UnitEntry::head() {
    auto* row = new QHBoxLayout;
    stage_ = named(*row, tr("St&age"), new QComboBox,
                   tr("What was done to the unit before; return: it came back from a customer"));
    stage_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    serial_ = line(*row, tr("&Serial"), tr("Of this unit; digits at its end count on to the next"), 12);
    lots_ = line(*row, tr("&Lots"), tr("What is in the unit and of which lot: wire W12, sheets L3"), 20);
    lots_->setPlaceholderText(tr("wire W12, sheets L3"));
    initials_ = line(*row, tr("&Initials"), tr("Of whoever tests"), 6);
    return row;
}

QLayout* UnitEntry::returned() {
    auto* row = new QHBoxLayout;
    row->setContentsMargins(0, 0, 0, 0);
    symptom_ = line(*row, tr("S&ymptom"), tr("What the customer saw or heard"), 20);
    finding_ = line(*row, tr("&Finding"), tr("What was found on the bench"), 20);
    return row;
}

QLayout* UnitEntry::words() {
    auto* column = new QVBoxLayout;
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    how_ = readOnlyWords(tr("How the chosen row is tested"));
    how_->setObjectName(QStringLiteral("planWords"));
    column->addWidget(how_, 3);
    causes_ = readOnlyWords(tr("Likely causes of a fail"),
                            tr("Where a unit with its core fails, the likely causes can be sought by its readings."));
    column->addWidget(causes_, 2);
    return column;
}

QLayout* UnitEntry::foot() {
    auto* column = new QVBoxLayout;
    column->setSpacing(8);
    auto* fields = new QHBoxLayout;
    cause_ =
        line(*fields, tr("&Cause"), tr("Of a fail or a return, in words that are counted: the same cause alike"), 20);
    note_ = line(*fields, tr("Note o&f this visit"), tr("Whatever else should be known of this visit"), 20);
    column->addLayout(fields);
    auto* row = new QHBoxLayout;
    mark_ = new QLabel;
    verdict_ = new QLabel;
    verdict_->setObjectName(QStringLiteral("unitVerdict"));
    verdict_->setWordWrap(true);
    seek_ = new QPushButton(tr("Seek the ca&use"));
    seek_->setAutoDefault(false);
    keep_ = new QPushButton(tr("&Keep, and on to the next"));
    keep_->setAutoDefault(false);
    keep_->setToolTip(tr("Puts the record into the shop's file and clears the entry (Ctrl+Enter)"));
    row->addWidget(mark_);
    row->addWidget(verdict_, 1);
    row->addWidget(seek_);
    row->addWidget(keep_);
    column->addLayout(row);
    connect(seek_, &QPushButton::clicked, this, &UnitEntry::seekCause);
    connect(keep_, &QPushButton::clicked, this, &UnitEntry::keepAsked);
    // Beside the button's own letter; the number block has an Enter of its own.
    for (const char* keys : {"Ctrl+Return", "Ctrl+Enter"})
        connect(new QShortcut(QKeySequence(QString::fromLatin1(keys)), this), &QShortcut::activated, keep_,
                &QPushButton::click);
    return column;
}

void UnitEntry::show(UnitPlanPtr plan) {
    plan_ = std::move(plan);
    finder_.reset();
    left_.clear();
    shown_ = -1;
    const QSignalBlocker quiet(stage_);
    stage_->clear();
    for (const auto& stage : plan_->plan.stages) {
        const std::string name = shop::recordedStage(stage.name);
        stage_->addItem(stageText(name), editors::text(name));
    }
    stage_->addItem(stageText("return"), QStringLiteral("return"));
    stage_->setCurrentIndex(0);
    showStage();
}

std::string UnitEntry::stage() const {
    return stage_->currentData().toString().toStdString();
}

/// A unit that came back is tested as it left the shop.
const shop::PlanStage* UnitEntry::plannedRows() const {
    if (!plan_ || stage_->currentIndex() < 0) return nullptr;
    const auto& all = plan_->plan.stages;
    return isReturn() ? &all.back() : &all[static_cast<std::size_t>(stage_->currentIndex())];
}

void UnitEntry::showStage() {
    aside_.stop();
    causes_->clear();
    returned_->setVisible(isReturn());
    if (shown_ >= 0 && table_->model().anyRead()) left_[shown_] = table_->model().reads();
    shown_ = stage_->currentIndex();
    auto typed = left_.extract(shown_);
    if (const auto* stage = plannedRows())
        table_->show(*stage, typed.empty() ? PlanModel::Reads{} : std::move(typed.mapped()));
    showRow(table_->currentIndex().row());
}

void UnitEntry::showRow(int row) {
    const auto* stage = plannedRows();
    if (stage == nullptr || row < 0 || row >= static_cast<int>(stage->rows.size())) return how_->clear();
    const auto& one = stage->rows[static_cast<std::size_t>(row)];
    QStringList lines{translated(one.what)};
    for (const std::string* words : {&one.hookUp, &one.settings, &one.method})
        if (!words->empty()) lines << editors::text(*words);
    if (!one.origin.empty()) lines << tr("Limits: %1").arg(editors::text(one.origin));
    if (!one.doubt.empty()) lines << tr("It cannot tell: %1").arg(editors::text(one.doubt));
    lines << QString() << tr("Cautions");
    for (const auto& caution : plan_->plan.cautions) lines << editors::text(caution);
    for (const auto& note : plan_->plan.notes)
        if (note.starts_with("CALIBRATION")) lines.prepend(editors::text(note));
    how_->setPlainText(lines.join(QLatin1Char('\n')));
}

void UnitEntry::showVerdict() {
    const bool rows = plannedRows() != nullptr;
    const auto found = table_->model().verdict();
    const bool any = rows && table_->model().anyRead();
    const bool fail = any && found.verdict == RowVerdict::Fail, pass = any && found.verdict == RowVerdict::Pass;
    mark_->setPixmap(fail || pass
                         ? standingMark(pass ? analysis::Standing::Kept : analysis::Standing::Broken, 16).pixmap(16, 16)
                         : QPixmap());
    mark_->setVisible(fail || pass);
    verdict_->setText(!any   ? tr("Nothing is read yet.")
                      : pass ? tr("Pass: every row was read and kept.")
                      : fail
                          ? tr("Fail: rows failed: %1, not read: %2.").arg(found.failed.size()).arg(found.open.size())
                          : tr("Not judged yet: rows not read: %1.").arg(found.open.size()));
    seek_->setText(aside_.busy() ? tr("Sto&p") : tr("Seek the ca&use"));
    const bool core = stage_->currentIndex() > 0;
    seek_->setEnabled(aside_.busy() || (fail && core));
    seek_->setToolTip(core ? tr("Which faults make such readings; takes a while the first time")
                           : tr("Causes are told of units with their core"));
    keep_->setEnabled(rows);
}

void UnitEntry::seekCause() {
    if (aside_.busy()) {
        aside_.stop();
        emit told(tr("Stopped."));
        return showVerdict();
    }
    aside_.start(
        [plan = plan_, finder = finder_, readings = table_->model().probed()](const std::stop_token& stop) -> std::any {
            CauseOutcome found{finder, {}, {}};
            try {
                if (!found.finder) found.finder = std::make_shared<const UnitCauses>(plan);
                if (!stop.stop_requested()) found.finding = found.finder->finder.find(readings);
            } catch (const units::BadInput& bad) {
                found.why = translated(bad.what());
            }
            return found;
        },
        [this](const std::any& result) {
            const auto& found = std::any_cast<const CauseOutcome&>(result);
            finder_ = found.finder;
            if (found.why.isEmpty())
                showCause(found.finding);
            else
                emit told(found.why);
            showVerdict();
        });
    emit told(tr("Likely causes are being computed; readings may be typed meanwhile."));
    showVerdict();
}

void UnitEntry::showCause(const learn::Finding& finding) {
    causes_->setPlainText(translated(learn::findingWords(finding)).trimmed());
    const bool one = finding.faulty && finding.explained && finding.group.size() == 1;
    if (one && cause_->text().trimmed().isEmpty()) {
        cause_->setText(editors::text(finding.group.front().words));
        emit told(tr("The likely cause stands in its field; change it if the unit shows another."));
    } else {
        emit told({});
    }
}

records::UnitRecord UnitEntry::record() const {
    records::UnitRecord unit;
    unit.part = plan_->part;
    unit.revision = plan_->design->revision;
    unit.serial = trimmed(*serial_);
    unit.stage = stage();
    unit.time = clock_().toString(QStringLiteral("yyyy-MM-ddTHH:mm:ss")).toStdString();
    if (unit.serial.empty()) units::refuse(tr("Serial").toStdString(), "nothing", "what tells this unit from others");
    unit.lots = namedIn(lots_->text(), tr("Lots").toStdString());
    if (const std::string who = trimmed(*initials_); !who.empty()) unit.initials = {{"test", who}};
    unit.readings = table_->model().readings();
    unit.cause = trimmed(*cause_);
    unit.note = trimmed(*note_);
    const auto verdict = table_->model().verdict().verdict;
    unit.verdict = verdict == RowVerdict::Pass ? "pass" : verdict == RowVerdict::Fail ? "fail" : "";
    if (isReturn()) {
        unit.symptom = trimmed(*symptom_);
        unit.finding = trimmed(*finding_);
    }
    if (unit.readings.empty() && unit.symptom.empty() && unit.finding.empty())
        units::refuse(unit.serial, "nothing read",
                      isReturn() ? "a symptom, a finding or a reading" : "a reading at least");
    return unit;
}

void UnitEntry::next() {
    aside_.stop();
    for (QLineEdit* field : {symptom_, finding_, cause_, note_}) field->clear();
    causes_->clear();
    table_->model().clear();
    if (moreToKeep()) {
        stage_->setCurrentIndex(left_.begin()->first);
        return table_->setFocus();
    }
    serial_->setText(isReturn() ? QString() : nextSerial(serial_->text().trimmed()));
    table_->toFirst();
    if (serial_->text().isEmpty())
        serial_->setFocus();
    else
        table_->setFocus();
}

}  // namespace bench
