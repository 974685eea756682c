// SPDX-License-Identifier: GPL-3.0-or-later
// A lot's table read from each kind of columns, refused with its sentence, and written as an entry that loads.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "exchange/load_catalog.h"
#include "exchange/lot_entry.h"
#include "exchange/lot_file.h"
#include "units/fault.h"
#include "units/joined.h"
#include "units/text.h"

namespace lot_test {

constexpr double mu0 = 4e-7 * std::numbers::pi;

const catalog::Alloy& like() {
    static const catalog::Catalog shop = exchange::loadCatalog({COILWRIGHT_SOURCE_DIR "/resources"});
    return shop.alloys.at("nickel-50");
}

/// mu0 (5000 H + 12000 H^2) towards 1.5 T.
double flux(double field) {
    const double rising = mu0 * (5000 * field + 12000 * field * field);
    return rising / std::sqrt(1 + rising * rising / 2.25) + mu0 * field;
}

/// Rows of two numbers, from 0.1 to 200 A/m.
template <class Row>
std::string table(const std::string& head, const Row& row) {
    std::string text = head;
    for (int i = 0; i < 30; ++i) {
        const double field = 0.1 * std::pow(2000, i / 29.0);
        const auto [first, second] = row(field);
        text += units::joined({units::significant(first, 9), ",", units::significant(second, 9), "\n"});
    }
    return text;
}

std::string plain() {
    return table("# invented\nfield_A_per_m,flux_T\n", [](double field) { return std::pair{field, flux(field)}; });
}

std::string sentenceOf(const std::string& text) {
    try {
        (void)exchange::readLot(text, "lot.csv");
    } catch (const units::BadInput& bad) {
        return bad.what();
    }
    return "nothing wrong";
}

std::string with(const std::string& from, const std::string& to) {
    std::string text = plain();
    return text.replace(text.find(from), from.size(), to);
}

constexpr double turns = 700, path = 0.94, section = 1.1e-4, frequency = 20;
const std::string frame = "# turns: 700\n# path_m: 0.94\n# section_m2: 1.1e-4\n# frequency_Hz: 20\n";

void expectPoints(const exchange::MeasuredLot& lot) {
    ASSERT_EQ(lot.points.size(), 30U);
    for (const auto& point : lot.points) EXPECT_NEAR(point.flux / flux(point.field), 1, 1e-6) << point.field;
}

TEST(LotFile, FieldAndFlux) {
    expectPoints(exchange::readLot(plain(), "lot.csv"));
}

/// L = N^2 A B / (l H); Ampere's and Faraday's laws for a sine, typed here anew.
TEST(LotFile, InductanceAgainstCurrent) {
    const auto text = table(frame + "current_A, inductance_H\n", [](double field) {
        return std::pair{field * path / turns / std::numbers::sqrt2,
                         turns * turns * section / path * flux(field) / field};
    });
    expectPoints(exchange::readLot(text, "lot.csv"));
}

TEST(LotFile, InductanceAgainstVoltage) {
    const auto text = table(frame + "voltage_V,inductance_H\n", [](double field) {
        return std::pair{4.4428829 * frequency * turns * section * flux(field),
                         turns * turns * section / path * flux(field) / field};
    });
    const auto lot = exchange::readLot(text, "lot.csv");
    expectPoints(lot);
    EXPECT_EQ(lot.frequency, 20);
}

TEST(LotFile, RefusesWithOneSentenceAFault) {
    EXPECT_EQ(sentenceOf(""),
              "lot.csv: columns: found nothing; allowed is a line of column names: field_A_per_m,flux_T, "
              "current_A,inductance_H or voltage_V,inductance_H.");
    EXPECT_EQ(sentenceOf("H,B\n1,2\n"),
              "lot.csv: line 1: found \"H,B\"; allowed is a line of column names: field_A_per_m,flux_T, "
              "current_A,inductance_H or voltage_V,inductance_H.");
    EXPECT_EQ(sentenceOf(with("0.100000000,", "0.1;")).substr(0, 22), "lot.csv: line 3: found");
    EXPECT_EQ(sentenceOf("field_A_per_m,flux_T\n1,0.1\n2,-0.2\n"),
              "lot.csv: line 3: found \"2,-0.2\"; allowed is two numbers above 0 with a comma between.");
    EXPECT_EQ(sentenceOf("field_A_per_m,flux_T\n1,0.1\n2,nan\n"),
              "lot.csv: line 3: found \"2,nan\"; allowed is two numbers above 0 with a comma between.");
    EXPECT_EQ(sentenceOf("field_A_per_m,flux_T\n1,0.1\n2,0.2\n"),
              "lot.csv: rows: found 2; allowed is from 8 to 10000.");
    EXPECT_EQ(sentenceOf("# turns: many\n" + plain()),
              "lot.csv: line 1, turns: found \"many\"; allowed is a number above 0 and up to 1000000.");
    EXPECT_EQ(sentenceOf("# turns: 700\n# section_m2: 1e-4\ncurrent_A,inductance_H\n0.1,1\n"),
              "lot.csv: # path_m: found nothing; allowed is a line \"# path_m: number\" ahead of the table.");
    EXPECT_EQ(
        sentenceOf(table("field_A_per_m,flux_T\n",
                         [](double field) {
                             return std::pair{field, 10 * field};
                         })),
        "lot.csv: rows: found 0.3708 A/m with 3.708 T; allowed is at most 1e6 A/m and 3 T: check units and frame.");
}

TEST(LotEntry, LoadsAsTheShopsOwnAlloy) {
    const auto fitted = exchange::fittedLot("# remanence_T: 0.85\n" + plain(), "a/lot.csv", "lot-7", "Lot 7", like());
    const auto loaded = catalog::load({{"alloys.json", fitted.entry}});
    ASSERT_TRUE(loaded.alloys.contains("lot-7"));
    const auto& alloy = loaded.alloys.at("lot-7");
    EXPECT_EQ(alloy.title, "Lot 7");
    EXPECT_EQ(alloy.family, catalog::AlloyFamily::NickelIron50);
    EXPECT_NEAR(alloy.initialPermeability / 5000, 1, 0.1);
    EXPECT_EQ(alloy.remanence.value, 0.85);
    EXPECT_TRUE(alloy.resistivity == like().resistivity);  // source too
    EXPECT_GE(alloy.curve.size(), 20U);
    EXPECT_NE(alloy.initialPermeability.source.find("30 points of lot.csv from 0.100 to 200 A/m"), std::string::npos)
        << alloy.initialPermeability.source;
    EXPECT_NE(alloy.initialPermeability.source.find("standard uncertainty"), std::string::npos);
    EXPECT_TRUE(fitted.table.starts_with("field_A_per_m,flux_T,fit_T,deviation_percent\n0.100000,"));
    EXPECT_NE(fitted.words.find("initial permeability  "), std::string::npos);
}

TEST(LotEntry, SaysWhatMakesItLessCertain) {
    const auto aboveCorner = "# frequency_Hz: 400\n# thickness_m: 0.35e-3\n" + plain();
    EXPECT_NE(exchange::fittedLot(aboveCorner, "lot.csv", "a", "A", like())
                  .words.find("measured at 400 Hz, above a third of the sheet's eddy corner of"),
              std::string::npos);
    const std::string whole = plain();
    const std::string low = whole.substr(0, whole.find("\n", 300) + 1);
    EXPECT_NE(exchange::fittedLot(low, "lot.csv", "a", "A", like()).words.find("not measured up to saturation"),
              std::string::npos);
}

}  // namespace lot_test
