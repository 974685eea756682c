// SPDX-License-Identifier: GPL-3.0-or-later
// Rejection of the demo designs under changes whose result is known beforehand.
#include <gtest/gtest.h>

#include <cmath>

#include "demo_designs.h"
#include "design/edit.h"

namespace balance_demo_test {

const std::vector<double> asked{100, 1e3, 20e3};

std::vector<double> rejection(const design::Design& d, const std::string& hookUp) {
    const auto answer = analysis::answer(d, demos::shop(), {}, {}, {hookUp, asked, false});
    const auto* trace = answer->trace("balance");
    return trace == nullptr ? std::vector<double>(asked.size(), std::nan("")) : trace->curves.front().y;
}

TEST(BalanceOfDemos, SwappedEndsAreTheOtherEndEarthed) {
    const auto d = *demos::open("microphone-input").design;
    const auto swapped = design::swapEnds(d, "S");
    const auto normal = rejection(d, "normal"), other = rejection(d, "other end earthed"),
               now = rejection(*swapped, "normal");
    // Curves are carried between solved frequencies to 0.5 %, and the leads come out elsewhere.
    for (std::size_t k = 0; k < asked.size(); ++k) EXPECT_NEAR(now[k], other[k], 0.05) << asked[k];
    EXPECT_GT(std::abs(now.back() - normal.back()), 0.5);  // 20 kHz
    const auto then = analysis::answer(*swapped, demos::shop(), {}, {}, {"normal", asked, false});
    const auto before = analysis::answer(d, demos::shop(), {}, {}, {"other end earthed", asked, false});
    const auto unlike = analysis::answer(d, demos::shop(), {}, {}, {"normal", asked, false});
    for (const char* figure : {"high_3dB_first", "input_capacitance.microphone"}) {
        EXPECT_NEAR(demos::valueOf(*then, figure) / demos::valueOf(*before, figure), 1, 5e-3) << figure;
        EXPECT_GT(std::abs(demos::valueOf(*then, figure) / demos::valueOf(*unlike, figure) - 1), 0.02) << figure;
    }
}

TEST(BalanceOfDemos, SwappedEndsOfABalancedPrimaryChangeNothingButItsSign) {
    // Turning the winding about and driving it the other way round is the same unit.
    auto d = *demos::open("microphone-input").design;
    const auto before = rejection(d, "normal");
    for (auto& port : d.ports)
        if (port.name == "microphone") std::swap(port.plus, port.minus);
    const auto after = rejection(d, "normal");
    for (std::size_t k = 0; k < asked.size(); ++k) EXPECT_NEAR(after[k], before[k], 1e-3) << asked[k];
}

}  // namespace balance_demo_test
