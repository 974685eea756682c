// SPDX-License-Identifier: GPL-3.0-or-later
// A grid of plots with an answer of two traces.
#pragma once

#include <gtest/gtest.h>

#include <QTest>
#include <cmath>

#include "plots/plot_grid.h"

namespace plots_test {

inline analysis::AnswerPtr answer(double shift, bool sameImpedance = true) {
    auto a = std::make_shared<analysis::Answer>();
    a->hookUp = "normal";
    auto response = std::make_shared<analysis::Trace>();
    response->name = "response";
    response->title = "Response";
    response->hookUp = "normal";
    response->validTo = 3e5;
    response->why = "the leakage field is that of thin layers";
    response->curves = {{"magnitude_dB", "response", units::Kind::Decibel, "dB", {}, false, {}},
                        {"phase_deg", "phase", units::Kind::Angle, "deg", {}, false, {}},
                        {"group_delay_s", "group delay", units::Kind::Time, "s", {}, false, {}}};
    auto impedance = std::make_shared<analysis::Trace>();
    impedance->name = "impedance";
    impedance->title = "Impedance";
    impedance->hookUp = "normal";
    impedance->curves = {{"source_side_ohm", "source side", units::Kind::Resistance, "ohm", {}, true, {}},
                         {"load_side_ohm", "load side", units::Kind::Resistance, "ohm", {}, true, {}}};
    for (const double f : analysis::logarithmicGrid(0.1, 1e6, 141)) {
        response->frequency.push_back(f);
        response->curves[0].y.push_back(shift - 10 * std::log10(1 + std::pow(f / 80e3, 2)));
        response->curves[1].y.push_back(-57.3 * std::atan(f / 80e3));
        response->curves[2].y.push_back(2e-6 / (1 + f / 80e3));
        impedance->frequency.push_back(f);
        impedance->curves[0].y.push_back(200 + f * 1e-2 + (sameImpedance ? 0 : shift));
        impedance->curves[1].y.push_back(9000 / (1 + f / 2e5));
    }
    a->traces = {response, impedance};
    return a;
}

inline design::DesignPtr designWithMask() {
    auto d = std::make_shared<design::Design>();
    design::HookUp hookUp;
    hookUp.name = "normal";
    d->hookUps = {hookUp};
    design::Mask mask;
    mask.trace = "response";
    mask.points = {{20, -1.0, 1.0}, {20000, -1.0, 1.0}};
    d->brief.masks = {mask};
    return d;
}

class PlotTest : public testing::Test {
protected:
    plots::PlotGrid grid;
    design::DesignPtr design = designWithMask();
    plots::Plot& response() { return grid.pane(0).plot(); }
    plots::Plot& impedance() { return grid.pane(1).plot(); }
    void SetUp() override {
        grid.resize(900, 600);
        grid.show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(&grid));
        grid.showAnswer(answer(14), design);
    }
};

}  // namespace plots_test
