// SPDX-License-Identifier: GPL-3.0-or-later
// Measured curves against traces made by hand, whose differences are known.
#include "measured/comparison.h"

#include <gtest/gtest.h>

#include <cmath>

#include "units/fault.h"

namespace comparison_test {

using measured::comparison;
using measured::CurveKind;
using measured::MeasuredCurve;

analysis::Trace trace(const std::string& column, std::vector<double> values) {
    analysis::Trace made;
    made.name = "response";
    made.title = "Response";
    made.frequency = {10, 100, 1000, 10000};
    analysis::Curve curve;
    curve.name = column;
    curve.y = std::move(values);
    made.curves = {curve};
    made.validFrom = 10;
    made.validTo = 5000;
    return made;
}

TEST(Comparison, IsStraightOverLogFrequencyAndCountsTheValidBand) {
    const MeasuredCurve curve{CurveKind::Response, "dB", {5, 10, std::sqrt(1e5), 1000, 9000}, {0, -3, 0, 0.5, 7}};
    const auto c = comparison(curve, trace("magnitude_dB", {-3, -1, 0, 1}), "magnitude_dB");
    EXPECT_EQ(c.outside, 1U);
    ASSERT_EQ(c.frequency.size(), 4U);
    EXPECT_NEAR(c.difference[0], 0, 1e-12);
    EXPECT_NEAR(c.predicted[1], -0.5, 1e-12) << "half way between 100 and 1000 Hz over log f";
    EXPECT_NEAR(c.difference[1], 0.5, 1e-12);
    EXPECT_EQ(c.valid, (std::vector<bool>{true, true, true, false}));
    EXPECT_EQ(c.inside, 3U);
    EXPECT_NEAR(c.largest, 0.5, 1e-12);
    EXPECT_NEAR(c.rms, std::sqrt(0.5 / 3), 1e-12);
    EXPECT_NEAR(c.mean, 1.0 / 3, 1e-12);
}

TEST(Comparison, AnglesDifferByLessThanHalfATurnAndSizesByTheirRatio) {
    const auto phase =
        comparison({CurveKind::Phase, "deg", {100}, {170}}, trace("phase_deg", {-540, -540, -540, -540}), "phase_deg");
    EXPECT_NEAR(phase.difference[0], -10, 1e-12);
    const auto ohms = comparison({CurveKind::Impedance, "ohm", {std::sqrt(1e3)}, {20}},
                                 trace("source_side_ohm", {10, 1000, 1000, 1000}), "source_side_ohm");
    EXPECT_NEAR(ohms.predicted[0], 100, 1e-9) << "between by the logarithm";
    EXPECT_NEAR(ohms.difference[0], 20 * std::log10(0.2), 1e-12);
}

TEST(Comparison, ToldFromOneFrequencyTheLevelDoesNotMatter) {
    const MeasuredCurve curve{CurveKind::Response, "dB", {10, 1000}, {-23, -20}};
    const auto c = comparison(curve, trace("magnitude_dB", {-3, -1, 0, 1}), "magnitude_dB", 1000);
    EXPECT_NEAR(c.measured[0], -3, 1e-12);
    EXPECT_NEAR(c.rms, 0, 1e-12);
    EXPECT_NE(measured::comparisonWords(c).find("both told from their value at 1.000 kHz"), std::string::npos)
        << measured::comparisonWords(c);
}

TEST(Comparison, TableAndWords) {
    const MeasuredCurve curve{CurveKind::Response, "dB", {100, 10000}, {-0.9, 2}};
    const auto c = comparison(curve, trace("magnitude_dB", {-3, -1, 0, 1}), "magnitude_dB");
    EXPECT_EQ(measured::comparisonCsv({c}),
              "frequency_Hz,response_measured_dB,response_predicted_dB,response_difference_dB,response_valid\n"
              "100,-0.900000000,-1.00000000,0.100000000,yes\n10000,2.00000000,1.00000000,1.00000000,no\n");
    EXPECT_EQ(measured::comparisonWords(c),
              "response against response magnitude_dB: 1 of 2 points compared, 100.0 Hz to 10.00 kHz\n"
              "  largest difference 0.100 dB at 100.0 Hz\n  mean 0.100 dB, rms 0.100 dB\n");
}

TEST(Comparison, RefusesWhatCannotBeHeldAgainstEachOther) {
    const auto said = [](const MeasuredCurve& curve, const std::string& column, std::optional<double> at) {
        try {
            (void)comparison(curve, trace("magnitude_dB", {-3, -1, 0, 1}), column, at);
        } catch (const units::BadInput& bad) {
            return std::string(bad.what());
        }
        return std::string("compared");
    };
    EXPECT_EQ(said({CurveKind::Response, "a", {1, 2}, {0, 0}}, "magnitude_dB", {}),
              "a: found 1.000 Hz to 2.000 Hz; allowed is frequencies within 10.00 Hz to 10.00 kHz.");
    EXPECT_EQ(said({CurveKind::Phase, "a", {100}, {0}}, "phase_deg", {}),
              "a: found no column \"phase_deg\" in Response; allowed is one over frequency: magnitude_dB.");
    EXPECT_EQ(said({CurveKind::Response, "a", {100, 200}, {0, 0}}, "magnitude_dB", 1000),
              "a: found told from 1.000 kHz; allowed is 100.0 Hz to 200.0 Hz.");
}

}  // namespace comparison_test
