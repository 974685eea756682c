// SPDX-License-Identifier: GPL-3.0-or-later
// The quotation, the surcharge on metals and scrap by predicted yield, against sums by hand.
#include "shop/quotation.h"

#include <gtest/gtest.h>

#include <cmath>

#include "demos.h"
#include "exchange/read_file.h"
#include "units/fault.h"

namespace quotation_test {

using demos::demo;
using demos::shopCatalog;
const shop::Issue issue{"2026-03-14", std::string(64, 'a'), {}};
const std::string file = COILWRIGHT_SOURCE_DIR "/resources/prices/example.csv";

shop::Prices example() {
    return shop::readPrices(exchange::readFile(file), file);
}

class Quotations : public testing::TestWithParam<const char*> {
protected:
    design::Design design = demo(GetParam());
    shop::Prices prices = example();
    shop::Bill bill = shop::bill(design, shopCatalog(), issue, &prices);
};

TEST_P(Quotations, PricesAreCostsWithTheMarginAndTheSurchargeApart) {
    const shop::Quotation q = shop::quotation(design, bill, prices, issue, "p.csv");
    EXPECT_EQ(q.digest, issue.digest);
    EXPECT_EQ(q.validUntil, "2027-03-31");
    EXPECT_EQ(q.surchargeDay, "2026-11-02");
    ASSERT_EQ(q.prices.size(), 4u);
    for (std::size_t k = 0; k < 4; ++k) {
        const auto& cost = bill.costs[k];
        EXPECT_EQ(q.prices[k].quantity, (std::vector<int>{1, 10, 100, 1000}[k]));
        const double fair = 1.55 * (cost.total - cost.surcharge);  // the file's 55 %
        EXPECT_GE(q.prices[k].price, fair - 1e-6);
        EXPECT_LT(q.prices[k].price, fair + 0.01 + 1e-6);
        EXPECT_NEAR(q.prices[k].price * 100, std::round(q.prices[k].price * 100), 1e-6) << "whole hundredths";
        EXPECT_GE(q.prices[k].surcharge, cost.surcharge - 1e-6);
        EXPECT_LT(q.prices[k].surcharge, cost.surcharge + 0.01 + 1e-6);
    }
}

TEST_P(Quotations, TheSurchargeIsTheMassOfEachMetalTimesItsRate) {
    // By hand from what is bought: copper wire and foil, and every alloy that has a rate.
    const shop::Materials m = shop::materialsOf(design, coil::layOut(design, shopCatalog()), shopCatalog());
    const std::map<std::string, double> rates{{"nickel-80", 4.2}, {"nickel-80-high", 4.2}, {"nickel-50", 2.6}};
    double expected = 0;
    for (const auto& use : m.wires) expected += 1.35 * use.mass;
    for (const auto& use : m.foils) expected += 1.35 * use.mass;
    for (const auto& use : m.sheets)
        if (const auto rate = rates.find(use.key); rate != rates.end()) expected += 1.02 * use.mass * rate->second;
    for (const auto& cost : bill.costs) EXPECT_NEAR(cost.surcharge, expected, 1e-9);
    EXPECT_GT(expected, 0);
}

INSTANTIATE_TEST_SUITE_P(Every, Quotations,
                         testing::Values("microphone-input", "ribbon-step-up", "direct-box", "line-unit", "splitter"),
                         [](const auto& one) {
                             std::string name = one.param;
                             std::replace(name.begin(), name.end(), '-', '_');
                             return name;
                         });

TEST(Quotation, IsRefusedWhereAPriceWouldBeTooLow) {
    const design::Design design = demo("splitter");
    const auto prices = shop::readPrices("kind,name,unit,value,minimum,note\ncurrency,EUR,,,,\n", "p.csv");
    const auto bill = shop::bill(design, shopCatalog(), issue, &prices);
    try {
        (void)shop::quotation(design, bill, prices, issue, "p.csv");
        FAIL() << "quoted without prices";
    } catch (const units::BadInput& bad) {
        EXPECT_EQ(bad.faults.size(), bill.unpriced.size() + 2);
        EXPECT_EQ(units::sentence(bad.faults.front()),
                  "p.csv: found no price of EI48-1 (per piece); allowed is a line with the price of every part that is "
                  "quoted.");
        EXPECT_EQ(units::sentence(bad.faults.back()), "p.csv: found no margin; allowed is a line margin,,%,40,,.");
    }
}

TEST(Prices, ScrapFollowsFromThePredictedYield) {
    const design::Design design = demo("splitter");
    const shop::Prices prices = example();
    const auto all = shop::bill(design, shopCatalog(), issue, &prices, 1.0);
    const auto some = shop::bill(design, shopCatalog(), issue, &prices, 0.9);
    EXPECT_NEAR(all.scrap, 0.04, 1e-12);
    EXPECT_NEAR(some.scrap, 1 - 0.96 * 0.9, 1e-12);
    const auto& cost = some.costs.front();
    EXPECT_NEAR(cost.scrap, (cost.material + cost.labour + cost.surcharge) * 0.136 / 0.864, 1e-9);
    EXPECT_GT(cost.total, all.costs.front().total);
}

TEST(Prices, ASurchargeNeedsItsDay) {
    try {
        (void)shop::readPrices("kind,name,unit,value,minimum,note\ncurrency,EUR,,,,\nsurcharge,copper,kg,1.2,,\n",
                               "p.csv");
        FAIL();
    } catch (const units::BadInput& bad) {
        EXPECT_EQ(units::sentence(bad.faults.front()),
                  "p.csv: line 3: found a surcharge without its day; allowed is a line surcharge day,2027-01-15,,,,.");
    }
}

}  // namespace quotation_test
