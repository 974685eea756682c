// SPDX-License-Identifier: GPL-3.0-or-later
// Units are tested against the plan in the window by keys alone, kept as records, and looked at together.
#include "bench/units_window.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QDir>
#include <QElapsedTimer>
#include <QTemporaryDir>
#include <QTest>
#include <cmath>

#include "exchange/write_file.h"
#include "made_units.h"
#include "opened_bench.h"
#include "units/text.h"

namespace units_window_test {

using bench::PlanModel;

template <class T>
T& named(QWidget& of, const QString& name) {
    for (auto* child : of.findChildren<T*>())
        if (child->accessibleName() == name) return *child;
    throw std::runtime_error("nothing named " + name.toStdString());
}

class BuiltUnits : public opened_bench::OpenedBench {
protected:
    BuiltUnits() : OpenedBench("microphone-input") {}
    QTemporaryDir folder;
    QString records = folder.filePath("shop.records");
    bench::UnitsWindow* units = nullptr;

    void SetUp() override {
        showWindow();
        QTest::keyClick(&window, Qt::Key_U, Qt::ControlModifier);
        units = window.findChild<bench::UnitsWindow*>();
        ASSERT_NE(units, nullptr);
        ASSERT_TRUE(QTest::qWaitForWindowActive(units));
        ASSERT_TRUE(QTest::qWaitFor([this] { return !units->busy(); }, 240000));
        ASSERT_GT(model().rowCount(), 0) << units->state().toStdString();
        units->takeFile(records);
    }
    bench::UnitEntry& entry() { return units->entry(); }
    PlanModel& model() { return entry().table().model(); }
    void write(const QString& name, const QString& text) {
        auto& field = named<QLineEdit>(entry(), name);
        field.setFocus();
        field.selectAll();
        QTest::keyClicks(&field, text);
    }
    void chooseStage(const QString& stage) {
        auto& box = named<QComboBox>(entry(), "Stage");
        box.setCurrentIndex(box.findText(stage));
        ASSERT_EQ(box.currentText(), stage);
    }
    /// Types into the current cell, as one goes down the plan.
    void type(const QString& text) {
        auto& table = entry().table();
        table.setFocus();
        QTest::keyClick(&table, Qt::Key_F2);
        auto* line = table.findChild<QLineEdit*>();
        ASSERT_NE(line, nullptr);
        line->selectAll();
        QTest::keyClick(line, Qt::Key_Delete);
        QTest::keyClicks(line, text);
        QTest::keyClick(line, Qt::Key_Return);
        QTest::qWait(1);
    }
    void typeAt(int row, const QString& text) {
        entry().table().setCurrentIndex(model().index(row, PlanModel::Read));
        type(text);
    }
    int rowOf(const std::string& name) {
        for (int row = 0; row < model().rowCount(); ++row)
            if (model().stage().rows[static_cast<std::size_t>(row)].name == name) return row;
        return -1;
    }
    /// What a good unit reads there.
    static QString good(const shop::PlanRow& row) {
        if (shop::asked(row) == shop::Asked::Answer) return QStringLiteral("yes");
        const double value = row.low && row.high ? (*row.low + *row.high) / 2
                             : row.low           ? *row.low
                             : row.high          ? *row.high
                                                 : *row.expected;
        // Keys of every keyboard.
        return QString::fromStdString(units::writeExact(row.kind, value)).replace("Ω", "ohm").replace("µ", "u");
    }
    void typeAllGood() {
        entry().table().toFirst();
        int asked = 0;
        for (const auto& row : model().stage().rows) {
            if (shop::asked(row) == shop::Asked::Nothing) continue;
            EXPECT_EQ(model().stage().rows[static_cast<std::size_t>(entry().table().currentIndex().row())].name,
                      row.name);  // Enter went on
            type(good(row));
            ++asked;
        }
        EXPECT_GT(asked, 3);
    }
    void picture(const QString& name) {
        const QString folder = COILWRIGHT_BUILD_DIR "/pictures";
        ASSERT_TRUE(QDir().mkpath(folder));
        ASSERT_TRUE(units->grab().save(folder + QLatin1Char('/') + name + QStringLiteral(".png")));
    }
    void keep() {
        QTest::keyClick(units, Qt::Key_Return, Qt::ControlModifier);
        ASSERT_TRUE(QTest::qWaitFor([this] { return !units->list().busy(); }, 20000));
    }
};

TEST_F(BuiltUnits, AUnitIsTypedInRowByRowKeptAndTheNextOneBegins) {
    EXPECT_EQ(window.findChildren<bench::UnitsWindow*>().size(), 1);
    EXPECT_EQ(bench::recalled().unitRecords, records);  // the file is remembered
    write("Serial", "M-0099");
    write("Lots", "wire W12, sheets L3 b");
    write("Initials", "ab");
    EXPECT_TRUE(entry().verdictWords().startsWith("Nothing")) << entry().verdictWords().toStdString();
    typeAllGood();
    EXPECT_TRUE(entry().verdictWords().startsWith("Pass")) << entry().verdictWords().toStdString();
    const auto readings = model().readings();
    keep();
    EXPECT_TRUE(units->state().startsWith("Kept: M-0099, wound, pass")) << units->state().toStdString();
    const auto kept = records::Store(records.toStdString()).find({});
    ASSERT_EQ(kept.size(), 1u);
    EXPECT_EQ(kept[0].part, bench::recordedPart(*design));
    EXPECT_EQ(kept[0].revision, design->revision);
    EXPECT_EQ(kept[0].stage, "wound");
    EXPECT_EQ(kept[0].verdict, "pass");
    EXPECT_EQ(kept[0].readings, readings);
    EXPECT_EQ(kept[0].lots, (std::vector<records::Named>{{"sheets", "L3 b"}, {"wire", "W12"}}));
    EXPECT_EQ(kept[0].initials, (std::vector<records::Named>{{"test", "ab"}}));
    // The entry is clear, the serial counted on, lots and initials stand.
    EXPECT_EQ(named<QLineEdit>(entry(), "Serial").text(), "M-0100");
    EXPECT_EQ(named<QLineEdit>(entry(), "Lots").text(), "wire W12, sheets L3 b");
    EXPECT_FALSE(model().anyRead());
    // The list has it.
    ASSERT_EQ(units->list().records().model().rowCount(), 1);
    EXPECT_TRUE(units->list().records().model().words(0).contains("M-0099"));
}

TEST_F(BuiltUnits, AReadingIsJudgedAsItIsTypedAndWhatIsNoneIsSaid) {
    const int row = rowOf("dcr.P");
    ASSERT_GE(row, 0);
    const auto& limits = model().stage().rows[static_cast<std::size_t>(row)];
    typeAt(row, "0,001 k");
    EXPECT_EQ(model().index(row, PlanModel::Judged).data().toString(), "fail");
    EXPECT_TRUE(entry().verdictWords().startsWith("Fail")) << entry().verdictWords().toStdString();
    ASSERT_EQ(model().readings().size(), 1u);
    EXPECT_DOUBLE_EQ(model().readings()[0].value, 1);
    typeAt(row, "3 kg");
    EXPECT_TRUE(units->state().contains("dcr.P")) << units->state().toStdString();
    EXPECT_TRUE(units->state().contains("kg")) << units->state().toStdString();
    EXPECT_DOUBLE_EQ(model().readings()[0].value, 1);
    EXPECT_EQ(entry().table().currentIndex().row(), row);
    typeAt(row, good(limits));
    EXPECT_EQ(model().index(row, PlanModel::Judged).data().toString(), "pass");
    EXPECT_TRUE(entry().verdictWords().startsWith("Not judged")) << entry().verdictWords().toStdString();
    QTest::keyClick(&entry().table(), Qt::Key_Up);
    entry().table().setCurrentIndex(model().index(row, PlanModel::Read));
    QTest::keyClick(&entry().table(), Qt::Key_Delete);
    EXPECT_FALSE(model().anyRead());
    // Nothing without a serial, nothing without a reading, no lot without its name.
    keep();
    EXPECT_TRUE(units->state().startsWith("Serial: found nothing")) << units->state().toStdString();
    write("Serial", "1");
    keep();
    EXPECT_TRUE(units->state().contains("a reading at least")) << units->state().toStdString();
    typeAt(row, good(limits));
    write("Lots", "W12");
    keep();
    EXPECT_TRUE(units->state().startsWith("Lots: found \"W12\"")) << units->state().toStdString();
    EXPECT_FALSE(QFile::exists(records));
}

TEST_F(BuiltUnits, ReadingsStayAtTheirStageUntilTheyAreKept) {
    const auto dcr = [this] { return *model().stage().rows[static_cast<std::size_t>(rowOf("dcr.P"))].expected; };
    const double wound = dcr(), laminated = wound * 1.01;
    write("Serial", "8");
    typeAt(rowOf("dcr.P"), QString::number(wound, 'g', 12));
    chooseStage("laminated");
    EXPECT_FALSE(model().anyRead());
    typeAt(rowOf("dcr.P"), QString::number(laminated, 'g', 12));
    chooseStage("wound");
    ASSERT_EQ(model().readings().size(), 1U);
    EXPECT_NEAR(model().readings()[0].value, wound, 1e-9);
    keep();
    EXPECT_TRUE(units->state().contains("is still to be kept")) << units->state().toStdString();
    EXPECT_EQ(named<QLineEdit>(entry(), "Serial").text(), "8");
    EXPECT_EQ(named<QComboBox>(entry(), "Stage").currentText(), "laminated");
    ASSERT_EQ(model().readings().size(), 1U);
    EXPECT_NEAR(model().readings()[0].value, laminated, 1e-9);
    keep();
    EXPECT_EQ(named<QLineEdit>(entry(), "Serial").text(), "9");
    EXPECT_FALSE(model().anyRead());
    EXPECT_EQ(records::Store(records.toStdString()).find({}).size(), 2U);
}

TEST_F(BuiltUnits, TheVoltageTestsCautionsStandBesideItsRow) {
    chooseStage("laminated");
    const int row = rowOf("hipot.P");
    ASSERT_GE(row, 0);
    entry().table().setCurrentIndex(model().index(row, PlanModel::Read));
    const QString words = named<QPlainTextEdit>(entry(), "How the chosen row is tested").toPlainText();
    EXPECT_TRUE(words.contains("Trained persons only")) << words.toStdString();
    EXPECT_TRUE(words.contains("ONCE")) << words.toStdString();
}

TEST_F(BuiltUnits, AFailIsKeptWithTheCauseThatItsReadingsTell) {
    chooseStage("laminated");
    // A thinner wire in the primary: its resistance alone is high.
    for (const auto& row : model().stage().rows) {
        if (shop::asked(row) == shop::Asked::Nothing) continue;
        typeAt(rowOf(row.name), good(row));
    }
    EXPECT_TRUE(entry().verdictWords().startsWith("Pass")) << entry().verdictWords().toStdString();
    const int row = rowOf("dcr.P");
    const double usual = *model().stage().rows[static_cast<std::size_t>(row)].expected;
    typeAt(row, QString::number(1.35 * usual));
    EXPECT_TRUE(entry().verdictWords().startsWith("Fail")) << entry().verdictWords().toStdString();
    const auto readings = model().probed();
    for (auto* button : entry().findChildren<QPushButton*>())
        if (button->text().startsWith("Seek")) QTest::keyClick(button, Qt::Key_Space);
    ASSERT_TRUE(entry().seeking());
    ASSERT_TRUE(QTest::qWaitFor([this] { return !entry().seeking(); }, 300000));
    QTest::qWait(10);
    const bench::UnitCauses alone(bench::unitPlan(design, shop, {opened_bench::resources}));
    const auto finding = alone.finder.find(readings);
    EXPECT_TRUE(finding.faulty);
    EXPECT_EQ(entry().causeWords(), QString::fromStdString(learn::findingWords(finding)).trimmed());
    EXPECT_TRUE(entry().causeWords().contains("winding P of thinner wire")) << entry().causeWords().toStdString();
    write("Serial", "F1");
    write("Cause", "thin wire");
    picture("unit_entry");
    keep();
    const auto kept = records::Store(records.toStdString()).find({});
    ASSERT_EQ(kept.size(), 1u);
    EXPECT_EQ(kept[0].verdict, "fail");
    EXPECT_EQ(kept[0].cause, "thin wire");
    EXPECT_TRUE(units->list().words().contains("thin wire: 1")) << units->list().words().toStdString();
}

TEST_F(BuiltUnits, AReturnIsARecordWithSymptomFindingAndCause) {
    chooseStage("return");
    write("Serial", "M-0042");
    keep();
    EXPECT_TRUE(units->state().contains("a symptom, a finding or a reading")) << units->state().toStdString();
    write("Symptom", "hum");
    write("Finding", "lead of the foil off");
    write("Cause", "open shield");
    picture("unit_return");
    keep();
    const auto kept = records::Store(records.toStdString()).find({});
    ASSERT_EQ(kept.size(), 1u);
    EXPECT_EQ(kept[0].stage, "return");
    EXPECT_EQ(kept[0].symptom, "hum");
    EXPECT_EQ(kept[0].finding, "lead of the foil off");
    EXPECT_EQ(kept[0].cause, "open shield");
    EXPECT_EQ(kept[0].verdict, "");
    EXPECT_EQ(named<QLineEdit>(entry(), "Serial").text(), "");
    EXPECT_EQ(named<QLineEdit>(entry(), "Symptom").text(), "");
}

TEST_F(BuiltUnits, ARecordThatIsThereIsLeftAndALaterVisitIsCounted) {
    const int row = rowOf("dcr.P");
    const QString reading = good(model().stage().rows[static_cast<std::size_t>(row)]);
    QDateTime now(QDate(2026, 11, 27), QTime(14, 5));
    entry().setClock([&now] { return now; });
    write("Serial", "7");
    typeAt(row, reading);
    auto there = entry().record();
    EXPECT_EQ(there.time, "2026-11-27T14:05:00");
    there.note = "first";
    records::Store(records.toStdString(), true).add({there});
    keep();
    EXPECT_TRUE(units->state().startsWith("Not kept: there is a record")) << units->state().toStdString();
    EXPECT_EQ(records::Store(records.toStdString()).find({}), std::vector{there});
    EXPECT_TRUE(model().anyRead());  // what was typed stays
    now = now.addSecs(60);
    keep();
    EXPECT_TRUE(units->state().contains("record number 2 of this serial")) << units->state().toStdString();
    const auto all = records::Store(records.toStdString()).find({});
    ASSERT_EQ(all.size(), 2u);
    EXPECT_EQ(all[0], there);
    EXPECT_EQ(all[1].time, "2026-11-27T14:06:00");
}

TEST_F(BuiltUnits, AFileOfAnotherKindIsToldAndNotTaken) {
    const QString other = folder.filePath("other.records");
    exchange::writeFile(other.toStdString(), "serial,dcr\n1,2\n");
    units->takeFile(other);
    EXPECT_TRUE(units->state().contains("other.records: found a file of another kind")) << units->state().toStdString();
    EXPECT_EQ(units->file(), records);
    units->takeFile(folder.filePath("no/such/folder.records"));
    write("Serial", "1");
    typeAt(rowOf("dcr.P"), "1");
    keep();
    EXPECT_TRUE(units->state().contains("folder.records")) << units->state().toStdString();
    EXPECT_TRUE(model().anyRead());
}

class ManyRecords : public BuiltUnits {
protected:
    const int count = made::full() ? 100000 : 5000;
    std::vector<records::UnitRecord> all = made::units(0, count);

    void SetUp() override {
        BuiltUnits::SetUp();
        records::Store(records.toStdString(), true).add(all, 5000);
        units->pages().setCurrentIndex(1);
        units->takeFile(records);
        filter("Part", "");
        ASSERT_EQ(list().records().model().rowCount(), count);
    }
    bench::UnitList& list() { return units->list(); }
    void settle() {
        ASSERT_TRUE(QTest::qWaitFor([this] { return !list().busy(); }, 20000));
    }
    void filter(const QString& name, const QString& text) {
        auto& field = named<QLineEdit>(list(), name);
        field.setFocus();
        field.selectAll();
        QTest::keyClick(&field, Qt::Key_Delete);
        QTest::keyClicks(&field, text);
        QElapsedTimer clock;
        clock.start();
        QTest::keyClick(&field, Qt::Key_Return);
        settle();
        std::printf("  %s %s: %lld ms\n", qPrintable(name), qPrintable(text), static_cast<long long>(clock.elapsed()));
    }
    std::size_t walked(const std::function<bool(const records::UnitRecord&)>& meant) const {
        return static_cast<std::size_t>(std::count_if(all.begin(), all.end(), meant));
    }
};

TEST_F(ManyRecords, FiltersMeanWhatAWalkOverAllRecordsFinds) {
    auto& model = list().records().model();
    EXPECT_EQ(model.rowCount(), count);
    filter("Part", "T-3");
    EXPECT_EQ(static_cast<std::size_t>(model.rowCount()), walked([](const auto& u) { return u.part == "T-3"; }));
    auto& verdict = named<QComboBox>(list(), "Verdict");
    verdict.setCurrentIndex(verdict.findData("fail"));
    settle();
    const auto failed = walked([](const auto& u) { return u.part == "T-3" && u.verdict == "fail"; });
    EXPECT_EQ(static_cast<std::size_t>(model.rowCount()), failed);
    EXPECT_TRUE(list().words().contains(QString("failed: %1").arg(failed))) << list().words().toStdString();
    for (int row = 0; row < std::min(20, model.rowCount()); ++row)
        EXPECT_EQ(model.index(row, bench::RecordModel::Verdict).data().toString(), "fail");
    verdict.setCurrentIndex(0);
    filter("Lot", "L1");
    EXPECT_EQ(static_cast<std::size_t>(model.rowCount()),
              walked([](const auto& u) { return u.part == "T-3" && u.lots[0].name == "L1"; }));
    filter("Lot", "");
    filter("From", "2026-01-02");
    filter("Before", "2026-01-03");
    EXPECT_EQ(static_cast<std::size_t>(model.rowCount()),
              walked([](const auto& u) { return u.part == "T-3" && u.time >= "2026-01-02" && u.time < "2026-01-03"; }));
    filter("From", "2026-13-02");
    EXPECT_TRUE(units->state().startsWith("From: found \"2026-13-02\"")) << units->state().toStdString();
    filter("From", "");
    EXPECT_EQ(units->state(), "");
    // Newest first, and the last row is there when it is looked at.
    filter("Before", "");
    filter("Part", "");
    const auto last =
        std::min_element(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.time < b.time; });
    EXPECT_EQ(model.index(count - 1, bench::RecordModel::Serial).data().toString().toStdString(), last->serial);
}

/// Times are told, not judged.
TEST_F(ManyRecords, AStudyOfAllAndOfAPart) {
    const auto told = [](const char* what, const auto& act) {
        QElapsedTimer clock;
        clock.start();
        act();
        std::printf("  %s: %.1f ms\n", what, 1e-6 * static_cast<double>(clock.nsecsElapsed()));
    };
    bench::UnitStudyPtr whole, one;
    bench::StudyAsked asked{records.toStdString(), {}, "inductance P", nullptr};
    told("study of all", [&] { whole = bench::unitStudy(asked); });
    asked.filter.part = "T-2";
    told("study of a part", [&] { one = bench::unitStudy(asked); });
    EXPECT_EQ(whole->counts.units, all.size());
    EXPECT_EQ(one->counts.units, all.size() / 5);
    bench::ControlChartView chart;
    chart.resize(540, 240);
    chart.showStudy(whole);
    told("chart of all, painted", [&] { (void)chart.grab(); });
    EXPECT_EQ(chart.shown()->series.values.size(), all.size());
}

TEST_F(ManyRecords, OnlyRecordsInSightAreRead) {
    auto& model = list().records().model();
    ASSERT_EQ(model.rowCount(), count);
    units->pages().setCurrentIndex(0);
    units->pages().setCurrentIndex(1);
    QTest::qWait(50);
    EXPECT_GT(model.readSoFar(), 0u);
    EXPECT_LT(model.readSoFar(), 200u);
    list().records().scrollToBottom();
    QTest::qWait(50);
    EXPECT_LT(model.readSoFar(), 400u);
}

TEST_F(ManyRecords, ChartHistogramAndNumbersAreThoseOfTheReadings) {
    filter("Part", "T-2");
    auto& test = named<QComboBox>(list(), "Shown test");
    test.setCurrentIndex(test.findData("inductance P"));
    settle();
    const auto* shown = list().chart().shown();
    ASSERT_NE(shown, nullptr);
    EXPECT_EQ(shown->test, "inductance P");
    std::vector<std::pair<std::string, double>> timed;
    for (const auto& unit : all)
        if (unit.part == "T-2") timed.emplace_back(unit.time, unit.readings[2].value);
    std::stable_sort(timed.begin(), timed.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    ASSERT_EQ(shown->series.values.size(), timed.size());
    double sum = 0, moved = 0;
    for (std::size_t k = 0; k < timed.size(); ++k) {
        EXPECT_EQ(shown->series.values[k], timed[k].second);
        sum += timed[k].second;
        if (k > 0) moved += std::abs(timed[k].second - timed[k - 1].second);
    }
    const double mean = sum / static_cast<double>(timed.size());
    const double half = 3 * moved / static_cast<double>(timed.size() - 1) / 1.128;
    EXPECT_NEAR(shown->chart->line.centre, mean, 1e-9);
    EXPECT_NEAR(shown->chart->line.high, mean + half, 1e-3 * half);
    EXPECT_NEAR(shown->chart->line.low, mean - half, 1e-3 * half);
    std::size_t inBars = 0;
    for (const auto bar : list().histogram().shown()->summary.histogram.units) inBars += bar;
    EXPECT_EQ(inBars, timed.size());
    EXPECT_TRUE(list().words().contains("Mean ")) << list().words().toStdString();
    // The records are of another part than the open design's: its limits are not theirs.
    EXPECT_TRUE(list().words().contains("No limits of the open design")) << list().words().toStdString();
    list().chart().setFocus();
    QTest::keyClick(&list().chart(), Qt::Key_End);
    EXPECT_EQ(list().chart().point(), static_cast<int>(timed.size()) - 1);
    EXPECT_TRUE(list().chart().pointWords(list().chart().point()).contains(QString::fromStdString(timed.back().first)));
}

TEST_F(BuiltUnits, RecordsOfThisPartAreHeldAgainstThePlansLimits) {
    const auto& row = entry().table().model().stage().rows[static_cast<std::size_t>(rowOf("dcr.P"))];
    std::vector<records::UnitRecord> made;
    const double middle = (*row.low + *row.high) / 2, step = (*row.high - *row.low) / 60;
    std::vector<double> values;
    for (int k = 0; k < 40; ++k) {
        records::UnitRecord unit;
        unit.part = bench::recordedPart(*design);
        unit.revision = design->revision;
        unit.serial = std::to_string(k);
        unit.stage = "wound";
        unit.time = "2026-11-" + std::to_string(10 + k / 2);
        unit.verdict = "pass";
        values.push_back(middle + step * ((k * 7) % 11 - 5));
        unit.readings = {{"dcr P", "ohm", values.back()}};
        made.push_back(unit);
    }
    records::Store(records.toStdString(), true).add(made);
    units->pages().setCurrentIndex(1);
    units->takeFile(records);
    auto& stage = named<QComboBox>(units->list(), "Stage");
    stage.setCurrentIndex(stage.findData("wound"));
    ASSERT_TRUE(QTest::qWaitFor([this] { return !units->list().busy(); }, 20000));
    const auto* shown = units->list().chart().shown();
    ASSERT_NE(shown, nullptr);
    ASSERT_TRUE(shown->limits && shown->capability);
    EXPECT_EQ(shown->limits->low, row.low);
    EXPECT_EQ(shown->limits->high, row.high);
    double mean = 0, squares = 0;
    for (const double v : values) mean += v / 40;
    for (const double v : values) squares += (v - mean) * (v - mean);
    const double deviation = std::sqrt(squares / 39);
    EXPECT_NEAR(*shown->capability->cp, (*row.high - *row.low) / (6 * deviation), 1e-6);
    EXPECT_TRUE(units->list().words().contains("Cpk ")) << units->list().words().toStdString();
    EXPECT_TRUE(units->list().words().contains("kept: 100 %")) << units->list().words().toStdString();
    units->list().records().setCurrentIndex(units->list().records().model().index(3, 0));
    picture("unit_records");
}

TEST(NextSerial, DigitsAtItsEndCountOn) {
    EXPECT_EQ(bench::nextSerial("0412"), "0413");
    EXPECT_EQ(bench::nextSerial("A-099"), "A-100");
    EXPECT_EQ(bench::nextSerial("9"), "10");
    EXPECT_EQ(bench::nextSerial("M"), "");
    EXPECT_EQ(bench::nextSerial(""), "");
}

}  // namespace units_window_test
