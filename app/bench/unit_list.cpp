// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/unit_list.h"

#include <QSignalBlocker>
#include <QSplitter>
#include <QVBoxLayout>

#include "bench/language.h"
#include "bench/named_field.h"
#include "editors/labels.h"
#include "records/unit_table.h"
#include "spread/spread_words.h"
#include "units/fault.h"
#include "units/text.h"

namespace bench {

namespace {

struct StudyOutcome {
    UnitStudyPtr study;
    QString why;  ///< what was in the way
};

QString intervalText(const spread::Interval& interval) {
    constexpr int digits = 3;
    return UnitList::tr("from %1 to %2")
        .arg(editors::text(units::significant(interval.low, digits)),
             editors::text(units::significant(interval.high, digits)));
}

QString threeDigits(double value) {
    return editors::text(units::significant(value, 3));
}

}  // namespace

UnitList::UnitList(QWidget* parent) : QWidget(parent), aside_(this) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 8, 0, 0);
    column->setSpacing(8);
    column->addLayout(filters());
    auto* across = new QSplitter(Qt::Horizontal);
    auto* left = new QSplitter(Qt::Vertical);
    table_ = new RecordTable;
    one_ = readOnlyWords(tr("The chosen record"), tr("A chosen record stands here with all its readings."));
    left->addWidget(table_);
    left->addWidget(one_);
    left->setStretchFactor(0, 3);
    left->setStretchFactor(1, 1);
    left->setChildrenCollapsible(false);
    across->addWidget(left);
    across->addWidget(picture());
    across->setStretchFactor(0, 1);
    across->setStretchFactor(1, 1);
    across->setChildrenCollapsible(false);
    across->setSizes({520, 540});
    column->addWidget(across, 1);
    connect(table_, &RecordTable::told, one_, &QPlainTextEdit::setPlainText);
    connect(&aside_, &solver::Aside::failed, this, &UnitList::told);
    showStudy({});
}

QLineEdit* UnitList::line(QLayout& row, const QString& label, const QString& tip, int width) {
    auto* made = named(row, label, new QLineEdit, tip);
    made->setMinimumWidth(width * fontMetrics().averageCharWidth());
    connect(made, &QLineEdit::editingFinished, this, [this, made] {
        if (!made->isModified()) return;  // left without typing
        made->setModified(false);
        ask();
    });
    return made;
}

QComboBox* UnitList::choice(QLayout& row, const QString& label, const QString& tip) {
    auto* made = named(row, label, new QComboBox, tip);
    made->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    return made;
}

QLayout* UnitList::filters() {
    auto* row = new QHBoxLayout;
    part_ = line(*row, tr("&Part"), tr("Its number; empty: every part"), 10);
    revision_ = line(*row, tr("&Revision"), tr("Of the design; empty: every one"), 4);
    stage_ = choice(*row, tr("St&age"), tr("What was done to the unit before it was tested"));
    stage_->addItem(tr("any"), QString());
    for (const char* stage : {"wound", "laminated", "potted", "return"})
        stage_->addItem(stageText(stage), QString::fromLatin1(stage));
    verdict_ = choice(*row, tr("&Verdict"), tr("Passed or failed"));
    verdict_->addItem(tr("any"), QString());
    for (const char* verdict : {"pass", "fail"}) verdict_->addItem(verdictText(verdict), QString::fromLatin1(verdict));
    lot_ = line(*row, tr("&Lot"), tr("A lot that is in the unit, by its name alone: W12"), 8);
    from_ = line(*row, tr("&From"), tr("The first day that counts: 2026-11-27"), 10);
    before_ = line(*row, tr("&Before"), tr("The first day that no longer counts: 2026-12-01"), 10);
    for (QComboBox* one : {stage_, verdict_}) connect(one, &QComboBox::currentIndexChanged, this, &UnitList::ask);
    return row;
}

QWidget* UnitList::picture() {
    auto* right = new QWidget;
    auto* column = new QVBoxLayout(right);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    auto* row = new QHBoxLayout;
    test_ = choice(*row, tr("&Shown test"), tr("Whose readings are charted"));
    row->setStretchFactor(test_, 1);
    column->addLayout(row);
    auto* down = new QSplitter(Qt::Vertical);
    chart_ = new ControlChartView;
    histogram_ = new HistogramView;
    words_ = readOnlyWords(tr("What these records say together"));
    for (QWidget* one : std::initializer_list<QWidget*>{chart_, histogram_, words_}) down->addWidget(one);
    down->setStretchFactor(0, 3);
    down->setStretchFactor(1, 3);
    down->setStretchFactor(2, 2);
    down->setChildrenCollapsible(false);
    column->addWidget(down, 1);
    connect(test_, &QComboBox::currentIndexChanged, this, &UnitList::ask);
    return right;
}

void UnitList::setFile(const QString& path) {
    file_ = path;
    ask();
}

void UnitList::setPlan(UnitPlanPtr plan) {
    plan_ = std::move(plan);
    ask();
}

void UnitList::choosePart(const QString& part) {
    part_->setText(part);
}

records::Filter UnitList::filter() const {
    records::Filter f;
    const auto typed = [](const QLineEdit& field) { return field.text().trimmed().toStdString(); };
    f.part = typed(*part_);
    f.revision = typed(*revision_);
    f.lot = typed(*lot_);
    f.stage = stage_->currentData().toString().toStdString();
    f.verdict = verdict_->currentData().toString().toStdString();
    for (const auto& [field, day] : {std::pair{from_, &f.from}, std::pair{before_, &f.before}}) {
        *day = typed(*field);
        if (!day->empty() && !records::dayOf(*day))
            units::refuse(field->accessibleName().toStdString(), '"' + *day + '"', "a day as 2026-11-27");
    }
    return f;
}

void UnitList::ask() {
    if (file_.isEmpty()) return showStudy({});
    try {
        const StudyAsked asked{file_.toStdString(), filter(), test_->currentData().toString().toStdString(), plan_};
        aside_.start(
            [asked](const std::stop_token&) -> std::any {
                try {
                    return StudyOutcome{unitStudy(asked), {}};
                } catch (const std::exception& failure) {
                    return StudyOutcome{{}, translated(failure.what())};
                }
            },
            [this](const std::any& result) {
                const auto& found = std::any_cast<const StudyOutcome&>(result);
                complain(found.why);
                showStudy(found.study);
            });
    } catch (const units::BadInput& bad) {
        complain(translated(bad.what()));
    }
}

/// What was in the way before is taken back; what others said stays.
void UnitList::complain(const QString& why) {
    if (!why.isEmpty() || complained_) emit told(why);
    complained_ = !why.isEmpty();
}

void UnitList::showStudy(const UnitStudyPtr& study) {
    study_ = study;
    std::shared_ptr<records::Store> store;
    if (study_) try {
            store = std::make_shared<records::Store>(file_.toStdString());
        } catch (const std::exception& failure) {
            emit told(translated(failure.what()));
        }
    table_->model().show(std::move(store), study_);
    one_->clear();
    showTests();
    chart_->showStudy(study_);
    showHistogram();
    showSummary();
}

void UnitList::showTests() {
    const QSignalBlocker quiet(test_);
    test_->clear();
    if (!study_) return;
    for (const auto& [test, unit] : study_->tests) test_->addItem(recordedTest(test), editors::text(test));
    if (study_->test) test_->setCurrentIndex(test_->findData(editors::text(study_->test->test)));
}

void UnitList::showHistogram() {
    if (!study_ || !study_->test) return histogram_->showFigure({});
    const auto& test = *study_->test;
    HistogramView::Shown shown;
    shown.column.name = test.test;
    shown.column.unit = test.series.unit;
    shown.summary = test.summary;
    shown.units = test.summary.occurs;
    if (test.limits) {
        shown.atLeast = test.limits->low;
        shown.atMost = test.limits->high;
    }
    histogram_->showFigure(std::move(shown));
}

QStringList UnitList::countLines() const {
    const auto& counts = study_->counts;
    const std::size_t judged = counts.passed + counts.failed;
    QStringList lines{tr("%1 records, passed: %2, failed: %3").arg(counts.units).arg(counts.passed).arg(counts.failed)};
    if (judged > 0) {
        const auto interval = spread::wilson(counts.passed, judged);
        lines.front() += tr("; kept: %1 (95 %: %2 to %3)")
                             .arg(editors::text(spread::percentWords(static_cast<double>(counts.passed) /
                                                                     static_cast<double>(judged))),
                                  editors::text(spread::percentWords(interval.low)),
                                  editors::text(spread::percentWords(interval.high)));
    }
    for (const auto& share : study_->causes)
        lines << tr("%1: %2, %3 of the failures")
                     .arg(share.cause.empty() ? tr("cause not told") : translated(share.cause))
                     .arg(share.units)
                     .arg(editors::text(spread::percentWords(share.share)));
    return lines;
}

QStringList UnitList::testLines(const TestStudy& test) const {
    QStringList lines;
    const auto value = [&](double number) { return recordedText(test.series.unit, number); };
    if (test.spread) {
        const auto& d = *test.spread;
        lines << tr("Mean %1 (95 %: %2 to %3), standard deviation %4 (%5 to %6)")
                     .arg(value(d.sample.mean), value(d.mean.low), value(d.mean.high), value(d.sample.deviation),
                          value(d.deviation.low), value(d.deviation.high));
        if (!d.looksNormal())
            lines << tr("Not normally distributed (Anderson-Darling %1, at most 0.752): Cpk says little.")
                         .arg(threeDigits(*d.andersonDarling));
    }
    if (test.capability) {
        const auto& c = *test.capability;
        if (c.cp) lines << tr("Cp %1 (95 %: %2)").arg(threeDigits(*c.cp), intervalText(c.cpInterval));
        lines << tr("Cpk %1 (95 %: %2)").arg(threeDigits(c.cpk), intervalText(c.cpkInterval));
    } else if (!test.limits) {
        lines << tr("No limits of the open design's plan belong to these readings: no Cp, no Cpk.");
    }
    return lines;
}

void UnitList::showSummary() {
    if (!study_) return words_->setPlainText(tr("No records: choose the shop's file, or keep the first record."));
    QStringList lines = countLines();
    if (study_->test) lines << testLines(*study_->test);
    words_->setPlainText(lines.join(QLatin1Char('\n')));
}

}  // namespace bench
