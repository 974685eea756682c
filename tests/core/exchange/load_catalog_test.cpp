// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/load_catalog.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "units/fault.h"

namespace exchange {
namespace load_catalog_test {

class LoadCatalog : public testing::Test {
protected:
    void SetUp() override {
        std::filesystem::remove_all(root_);
        std::filesystem::create_directories(root_ / "resources");
        std::filesystem::create_directories(root_ / "own");
    }
    void TearDown() override { std::filesystem::remove_all(root_); }
    void put(const std::string& name, const std::string& entries) {
        std::ofstream(root_ / name) << R"({"format": 1, "entries": )" << entries << "}";
    }
    std::string folder(const char* name) const { return (root_ / name).string(); }
    const std::filesystem::path root_ =
        std::filesystem::temp_directory_path() /
        (std::string("load_catalog_") + testing::UnitTest::GetInstance()->current_test_info()->name());
};

TEST_F(LoadCatalog, TheUsersEntriesRuleOverTheResources) {
    put("resources/wires.json", R"({"a": {"bare_diameter": 1e-4, "overall_diameter": 1.2e-4},
                                    "b": {"bare_diameter": 2e-4, "overall_diameter": 2.3e-4}})");
    put("own/wires.json", R"({"b": {"bare_diameter": 2e-4, "overall_diameter": 2.4e-4}})");
    put("own/insulation.json", R"({"oil": {"form": "compound", "permittivity": 2.2}})");
    const auto shop = loadCatalog({folder("resources"), folder("own"), folder("nowhere")});
    ASSERT_EQ(shop.wires.size(), 2U);
    EXPECT_EQ(shop.wires.at("a").overallDiameter.value, 1.2e-4);
    EXPECT_EQ(shop.wires.at("b").overallDiameter.value, 2.4e-4);
    EXPECT_EQ(shop.insulation.at("oil").permittivity.value, 2.2);
}

TEST_F(LoadCatalog, AFaultNamesTheFileInItsFolder) {
    put("own/wires.json", R"({"a": {"bare_diameter": -1, "overall_diameter": 1.2e-4}})");
    try {
        (void)loadCatalog({folder("own")});
        FAIL() << "loaded";
    } catch (const units::BadInput& bad) {
        EXPECT_EQ(std::string(bad.what()), folder("own") +
                                               "/wires.json: /entries/a/bare_diameter: found -1; allowed is a "
                                               "number above 0 and up to 0.01 m.");
    }
}

TEST(LoadCatalogResources, TheProgramsOwnCatalogLoads) {
    const auto shop = loadCatalog({COILWRIGHT_SOURCE_DIR "/resources"});
    EXPECT_FALSE(shop.sheets.empty());
    EXPECT_FALSE(shop.alloys.empty());
    EXPECT_FALSE(shop.wires.empty());
    EXPECT_FALSE(shop.bobbins.empty());
    EXPECT_FALSE(shop.insulation.empty());
}

}  // namespace load_catalog_test
}  // namespace exchange
