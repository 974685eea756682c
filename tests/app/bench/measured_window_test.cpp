// SPDX-License-Identifier: GPL-3.0-or-later
// Measured curves come to the bench from files, by dialog or dropped, lie over the plots, and their distance is told.
#include "bench/measured_window.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QDropEvent>
#include <QMimeData>
#include <QTemporaryDir>
#include <QTest>
#include <QUrl>
#include <cmath>

#include "analysis/between.h"
#include "exchange/write_file.h"
#include "opened_bench.h"
#include "units/text.h"

namespace measured_window_test {

using opened_bench::resources;

class MeasuredCurves : public opened_bench::OpenedBench {
protected:
    MeasuredCurves() : OpenedBench("microphone-input") {}

    QTemporaryDir folder;

    void SetUp() override {
        plots::Arrangement two;
        two.count = 2;
        window.plotGrid().arrange(two);
        showWindow();
    }
    bench::MeasuredWindow* measured() {
        QTest::keyClick(&window, Qt::Key_M, Qt::ControlModifier);
        return window.findChild<bench::MeasuredWindow*>();
    }
    const analysis::Trace& response() { return *window.answer()->trace("response"); }
    /// The design's own response with `more` dB at every frequency, and a peak of 3 dB at 10 kHz, in millivolts of an
    /// EMF of 20 mV, with a decimal comma.
    QString table(double more) {
        std::string text = "Frequenz (kHz);Pegel (mV);Phase (Grad)\n";
        const auto& curve = *response().curve("magnitude_dB");
        for (const double f : analysis::logarithmicGrid(20, 20000, 61)) {
            const double at = *analysis::between(response().frequency, curve.y, f);
            const double peak = std::abs(std::log10(f / 10000)) < 0.02 ? 3 : 0;
            std::string row = units::significant(f / 1000, 7) + ";" +
                              units::significant(20 * std::pow(10, (at + more + peak) / 20), 7) + ";0\n";
            for (char& c : row)
                if (c == '.') c = ',';
            text += row;
        }
        const QString path = folder.filePath("unit.csv");
        exchange::writeFile(path.toStdString(), text);
        return path;
    }
    static void type(QWidget& field, const QString& text) {
        field.setFocus();
        auto& line = dynamic_cast<QLineEdit&>(field);
        line.selectAll();
        QTest::keyClicks(&line, text);
        QTest::keyClick(&line, Qt::Key_Return);
    }
    template <class T>
    static T& named(QWidget& of, const QString& name) {
        for (auto* child : of.findChildren<T*>())
            if (child->accessibleName() == name) return *child;
        throw std::runtime_error("nothing named " + name.toStdString());
    }
    plots::Plot& plotOf(const std::string& trace) {
        for (int k = 0; k < window.plotGrid().count(); ++k)
            if (window.plotGrid().pane(k).plot().view().trace == trace) return window.plotGrid().pane(k).plot();
        throw std::runtime_error("no plot of " + trace);
    }
};

TEST_F(MeasuredCurves, AnInstrumentsTableLiesOverTheResponse) {
    auto* dialog = measured();
    ASSERT_NE(dialog, nullptr);
    EXPECT_EQ(dialog->overlays(), nullptr);
    dialog->take(table(0.5));
    auto& picker = dialog->picker();
    EXPECT_EQ(named<QComboBox>(picker, "Frequency").currentText(), "Frequenz (kHz)");
    EXPECT_EQ(named<QComboBox>(picker, "in").currentText(), "kHz");
    EXPECT_EQ(named<QComboBox>(picker, "Decimal sign").currentText(), "comma");
    EXPECT_EQ(named<QComboBox>(picker, "Values").currentText(), "Pegel (mV)");
    EXPECT_EQ(named<QTableWidget>(picker, "First rows of the file").rowCount(), 8);
    type(named<QLineEdit>(picker, "EMF of the generator"), "20 mV");
    QTest::keyClick(dialog->findChildren<QPushButton*>().at(1), Qt::Key_Space);  // Lay over the plots
    ASSERT_NE(dialog->overlays(), nullptr) << dialog->state().toStdString();
    ASSERT_EQ(dialog->overlays()->size(), 2u);
    ASSERT_EQ(dialog->words().size(), 2);
    EXPECT_TRUE(dialog->words()[0].contains("largest difference 3.50 dB at 10.0")) << dialog->words()[0].toStdString();
    // In the plot: crosses, the distance in words, and the measured value at the cursor.
    auto& plot = plotOf("response");
    int crossed = 0;
    for (int k = 0; k < plot.graphCount(); ++k) crossed += plot.graph(k)->scatterStyle().isNone() ? 0 : 1;
    EXPECT_GE(crossed, 1);
    EXPECT_TRUE(plot.measuredWords().contains("at most +3.5 dB at 10.0 kHz")) << plot.measuredWords().toStdString();
    window.plotGrid().placeCursor(1000);
    EXPECT_TRUE(plot.readout().contains("(measured ")) << plot.readout().toStdString();
    EXPECT_TRUE(plot.accessibleDescription().contains("measured less computed"));
    // Made to agree at 1 kHz, the half decibel is gone and the peak is left.
    type(named<QLineEdit>(*dialog, "Frequency at which measured and computed level are made to agree"), "1 kHz");
    dialog->layOver();
    ASSERT_EQ(dialog->overlays()->size(), 2u);  // the same file again takes its place
    EXPECT_TRUE(dialog->words()[0].contains("largest difference 3.00 dB")) << dialog->words()[0].toStdString();
    // An edit moves the computed curve, and the distance with it.
    const QString before = dialog->words()[0];
    auto changed = std::make_shared<design::Design>(*design);
    for (auto& place : changed->coil)
        for (auto& item : place.order)
            if (auto* section = item.section(); section && section->winding == "P") section->turns.value *= 1.2;
    window.document().replace(changed, "more turns");
    settle();
    QTest::qWait(20);
    EXPECT_NE(dialog->words()[0], before);
    // Taken away, nothing is left of it.
    auto& list = *dialog->findChild<QListWidget*>();
    for (int k = 0; k < 2; ++k) {
        list.setCurrentRow(0);
        QTest::keyClick(dialog->findChildren<QPushButton*>().at(2), Qt::Key_Space);
    }
    EXPECT_EQ(dialog->overlays(), nullptr);
    EXPECT_EQ(plot.measuredWords(), "");
}

TEST_F(MeasuredCurves, AFileDroppedOnTheBenchIsShown) {
    QMimeData data;
    data.setUrls({QUrl::fromLocalFile(table(0))});
    QDragEnterEvent enter(QPoint(10, 10), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&window, &enter);
    EXPECT_TRUE(enter.isAccepted());
    QDropEvent drop(QPointF(10, 10), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&window, &drop);
    auto* dialog = window.findChild<bench::MeasuredWindow*>();
    ASSERT_NE(dialog, nullptr);
    EXPECT_FALSE(dialog->picker().empty());
    dialog->layOver();
    ASSERT_NE(dialog->overlays(), nullptr) << dialog->state().toStdString();
    EXPECT_EQ(dialog->overlays()->front().file, "unit.csv");
    // Another design is another unit: nothing of it stays.
    window.document().open(design, {});
    EXPECT_EQ(plotOf("response").measuredWords(), "");
}

TEST_F(MeasuredCurves, WhatIsNoMeasurementIsSaidAndNothingIsLost) {
    auto* dialog = measured();
    dialog->take(table(0));
    dialog->layOver();
    const auto before = dialog->overlays();
    ASSERT_NE(before, nullptr);
    dialog->take(QString::fromStdString(resources + "/handbook/index.md"));
    EXPECT_TRUE(dialog->state().contains("index.md")) << dialog->state().toStdString();
    EXPECT_EQ(dialog->overlays(), before);
    dialog->take("/nowhere.csv");
    EXPECT_TRUE(dialog->state().contains("/nowhere.csv")) << dialog->state().toStdString();
    EXPECT_FALSE(dialog->picker().empty());  // the last good file stays
    type(named<QLineEdit>(*dialog, "Frequency at which measured and computed level are made to agree"), "loud");
    dialog->layOver();
    EXPECT_TRUE(dialog->state().contains("loud")) << dialog->state().toStdString();
    EXPECT_EQ(dialog->overlays(), before);
}

}  // namespace measured_window_test
