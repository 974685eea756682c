// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/hipot.h"

#include <gtest/gtest.h>

#include "demos.h"

namespace hipot_test {

TEST(StatedVoltages, AreReadFromTheBriefsWordsAndNothingElse) {
    using V = std::vector<double>;
    EXPECT_EQ(shop::statedVoltages("Faraday shields; 250 V test between windings"), V{250});
    EXPECT_EQ(shop::statedVoltages("1.5 kV for 60 s, then 500Vrms"), (V{1500, 500}));
    EXPECT_EQ(shop::statedVoltages("3,75 kV to the case"), V{3750});
    EXPECT_EQ(shop::statedVoltages("two foil shields, 15 VA, P48, class 2, 600 ohm, 48 Volt-free, V 12"), V{});
    EXPECT_EQ(shop::statedVoltages("as IEC 60065"), V{}) << "a standard's voltage is not filled in from memory";
    EXPECT_EQ(shop::statedVoltages(""), V{});
}

TEST(Barriers, AreThoseBetweenNeighboursAndTheThinnestCounts) {
    const auto design = demos::demo("microphone-input");
    const auto all = shop::barriersOf(design, demos::shopCatalog());
    ASSERT_EQ(all.size(), 4u);
    EXPECT_EQ(all[0].a, "P");
    EXPECT_EQ(all[0].b, "inner shield");
    const auto* primary = shop::weakestOf(all, "P");
    const auto* secondary = shop::weakestOf(all, "S");
    ASSERT_NE(primary, nullptr);
    ASSERT_NE(secondary, nullptr);
    EXPECT_DOUBLE_EQ(primary->thickness, 100e-6);
    EXPECT_DOUBLE_EQ(secondary->thickness, 60e-6);
    EXPECT_EQ(secondary->margin, 0);
    EXPECT_EQ(shop::weakestOf(all, "none"), nullptr);
}

TEST(Barriers, PliesAddUpAndTakingOneOutFindsAnother) {
    auto design = demos::demo("splitter");
    EXPECT_DOUBLE_EQ(shop::weakestOf(shop::barriersOf(design, demos::shopCatalog()), "S2")->thickness, 80e-6);
    auto& order = design.coil.front().order;
    // A second ply behind each of the two that lie around foil 2.
    for (std::size_t k = 0; k + 1 < order.size(); ++k)
        if (order[k].barrier() != nullptr && (order[k + 1].shield() != nullptr) &&
            order[k + 1].shield()->name == "foil 2") {
            order.insert(order.begin() + static_cast<std::ptrdiff_t>(k), design::Item{*order[k].barrier()});
            order.insert(order.begin() + static_cast<std::ptrdiff_t>(k) + 3, design::Item{*order[k].barrier()});
            break;
        }
    const auto all = shop::barriersOf(design, demos::shopCatalog());
    EXPECT_DOUBLE_EQ(shop::weakestOf(all, "S2")->thickness, 120e-6) << "towards P.b now";
    EXPECT_DOUBLE_EQ(shop::weakestOf(all, "P")->thickness, 80e-6) << "towards foil 1 and 3 still";
}

TEST(Barriers, WindingsWoundTogetherHaveNone) {
    auto design = demos::demo("ribbon-step-up");
    auto& order = design.coil.front().order;
    std::erase_if(order, [](const design::Item& item) { return item.barrier() != nullptr; });
    const auto all = shop::barriersOf(design, demos::shopCatalog());
    ASSERT_NE(shop::weakestOf(all, "P"), nullptr);
    EXPECT_EQ(shop::weakestOf(all, "P")->plies, 0);
}

}  // namespace hipot_test
