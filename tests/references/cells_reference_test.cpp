// SPDX-License-Identifier: GPL-3.0-or-later
// Wire cells with dielectric loss against finite elements of our own (scripts/cells.py) and the closed form of plates.
#include <gtest/gtest.h>

#include <complex>
#include <fstream>
#include <nlohmann/json.hpp>

#include "field/wire_cell.h"

namespace cells_reference_test {

using nlohmann::json;
using Complex = std::complex<double>;
constexpr double mm = 1e-3;

/// eps (1 - j tan delta) of [eps, tan delta].
Complex dielectric(const json& pair) {
    return pair[0].get<double>() * Complex(1, -pair[1].get<double>());
}

field::RowCell cellOf(const json& c) {
    field::RowCell cell;
    cell.bare = c.at("d").get<double>() * mm;
    cell.overall = c.at("do").get<double>() * mm;
    cell.pitch = c.at("pitch").get<double>() * mm;
    cell.sheet = c.at("t").get<double>() * mm;
    cell.distance = cell.sheet + cell.overall * (0.5 + 0.02);  // the reference's mesh leaves a fiftieth
    cell.enamel = dielectric(c.at("enamel"));
    cell.sheetPermittivity = dielectric(c.at("sheet"));
    cell.filler = dielectric(c.at("filler"));
    return cell;
}

TEST(LossyCellReference, CapacitanceAndLossMeetFiniteElements) {
    const auto file = json::parse(std::ifstream(COILWRIGHT_SOURCE_DIR "/tests/references/cells.json"));
    ASSERT_EQ(file.at("cases").size(), 5U);
    for (const auto& c : file.at("cases")) {
        const Complex found = field::rowCapacitance(cellOf(c));
        const Complex expected(c.at("C")[0].get<double>(), c.at("C")[1].get<double>());
        EXPECT_NEAR(found.real() / expected.real(), 1, 1e-4) << c.at("id");
        EXPECT_NEAR(found.imag() / expected.imag(), 1, 2e-4) << c.at("id");
    }
}

TEST(LossyCellReference, PlatesLoseAsTheClosedFormSays) {
    // Two dielectrics in series: 1 / C = sum t / (eps0 eps (1 - j tan delta)); with 0.03 mm of 3.5, tan 0.02 and 0.05
    // mm of 2.5, tan 0.005, C = 309.9112 - j 2.943791 nF/m2 (complex arithmetic in Python).
    field::RowCell plates;
    plates.distance = 0.08 * mm;
    plates.sheet = 0.05 * mm;
    plates.sheetPermittivity = {2.5, -0.0125};
    plates.filler = {3.5, -0.07};
    const Complex c = field::rowCapacitance(plates);
    EXPECT_NEAR(c.real() * 1e9, 309.9112, 1e-4);
    EXPECT_NEAR(c.imag() * 1e9, -2.943791, 1e-6);
}

}  // namespace cells_reference_test
