// SPDX-License-Identifier: GPL-3.0-or-later
// Reading catalog files: what is taken, what is replaced, and each fault with its sentence.
#include <gtest/gtest.h>

#include "catalog/catalog.h"
#include "units/fault.h"

namespace load_test {

using catalog::load;

/// The sentences of every fault that `files` have.
std::vector<std::string> faultsOf(const std::vector<catalog::CatalogFile>& files) {
    std::vector<std::string> all;
    try {
        (void)load(files);
    } catch (const units::BadInput& bad) {
        for (const auto& fault : bad.faults) all.push_back(units::sentence(fault));
    }
    return all;
}

using Sentences = std::vector<std::string>;

std::string inFile(const std::string& entries) {
    return R"({"format": 1, "sources": {"own": "measured here"}, "entries": {)" + entries + "}}";
}

std::string wire(const std::string& numbers) {
    return inFile(R"("W": {)" + numbers + "}");
}

TEST(Load, ReadsNumberSourceAndStanding) {
    const auto shop = load({{"wires.json", wire(R"("bare_diameter": {"value": 0.0001, "source": "own"},
        "overall_diameter": 0.00012, "overall_maximum": {"value": 0.000125, "source": "own", "guaranteed": true},
        "standing": "retired")")}});
    ASSERT_EQ(shop.wires.size(), 1U);
    const catalog::Wire& w = shop.wires.at("W");
    EXPECT_EQ(w.bareDiameter.value, 0.0001);
    EXPECT_EQ(w.bareDiameter.source, "measured here");
    EXPECT_FALSE(w.bareDiameter.guaranteed);
    EXPECT_EQ(w.overallDiameter.source, "");
    EXPECT_TRUE(w.overallMaximum.guaranteed);
    EXPECT_EQ(w.standing, catalog::Standing::Retired);
}

TEST(Load, LaterFileReplacesByKeyAndKeepsTheRest) {
    const std::string first = inFile(R"("A": {"bare_diameter": 0.1e-3, "overall_diameter": 0.12e-3},
                                        "B": {"bare_diameter": 0.2e-3, "overall_diameter": 0.22e-3})");
    const std::string second = inFile(R"("B": {"bare_diameter": 0.3e-3, "overall_diameter": 0.32e-3})");
    const auto shop = load({{"wires.json", first}, {"/home/shop/catalog/wires.json", second}});
    EXPECT_EQ(shop.wires.size(), 2U);
    EXPECT_EQ(shop.wires.at("A").bareDiameter.value, 0.1e-3);
    EXPECT_EQ(shop.wires.at("B").bareDiameter.value, 0.3e-3);
}

TEST(Load, KeepsUnknownKeysOfAnEntry) {
    const auto shop =
        load({{"wires.json", wire(R"("bare_diameter": 0.1e-3, "overall_diameter": 0.12e-3, "reel": 5)")}});
    EXPECT_EQ(shop.wires.at("W").extra, json::Value({{"reel", 5}}));
}

TEST(Load, RefusesANewerFormatWithBothNumbers) {
    EXPECT_EQ(faultsOf({{"wires.json", R"({"format": 2, "entries": {}})"}}),
              Sentences{"wires.json: /format: found 2; allowed is 1, the newest format that this program reads."});
}

TEST(Load, RefusesAFileWithoutFormatOrEntries) {
    EXPECT_EQ(faultsOf({{"wires.json", R"({"entries": {}})"}}),
              Sentences{"wires.json: /format: found nothing; allowed is the whole number 1."});
    EXPECT_EQ(faultsOf({{"wires.json", R"({"format": 0.5, "entries": {}})"}}),
              Sentences{"wires.json: /format: found 0.5; allowed is the whole number 1."});
    EXPECT_EQ(faultsOf({{"wires.json", R"({"format": 1})"}}),
              Sentences{"wires.json: /entries: found nothing; allowed is an object in curly brackets."});
    EXPECT_EQ(faultsOf({{"wires.json", "[]"}}),
              Sentences{"wires.json: /: found a list; allowed is an object in curly brackets."});
}

TEST(Load, RefusesAFileOfUnknownKindAndStrayKeys) {
    EXPECT_EQ(faultsOf({{"cores.json", R"({"format": 1, "entries": {}})"}}),
              Sentences{"cores.json: found a file of unknown kind; allowed is alloys.json, bobbins.json, "
                        "fittings.json, insulation.json, sheets.json, sundries.json, tolerances.json or wires.json."});
    EXPECT_EQ(faultsOf({{"wires.json", R"({"format": 1, "entires": {}, "entries": {}})"}}),
              Sentences{"wires.json: /entires: found an object; allowed is one of \"format\", \"note\", \"sources\", "
                        "\"entries\"."});
}

TEST(Load, NamesASourceThatTheFileDoesNotHave) {
    EXPECT_EQ(
        faultsOf({{"wires.json", wire(R"("bare_diameter": {"value": 0.1e-3, "source": "hearsay"},
                                               "overall_diameter": 0.12e-3)")}}),
        Sentences{"wires.json: /entries/W/bare_diameter/source: found \"hearsay\"; allowed is a key of this file's "
                  "\"sources\"."});
}

TEST(Load, NamesASourceInsideAChamber) {
    EXPECT_EQ(faultsOf({{"bobbins.json", inFile(R"("B": {"wall": 0.001, "chambers": [{"low": 0.001,
                        "high": {"value": 0.01, "source": "hearsay"}}]})")}}),
              Sentences{"bobbins.json: /entries/B/chambers/0/high/source: found \"hearsay\"; allowed is a key of this "
                        "file's \"sources\"."});
}

TEST(Load, TellsEveryFaultOfEveryFile) {
    const auto all = faultsOf({{"wires.json", inFile(R"("A": {"overall_diameter": "thick"}, "B": 3)")},
                               {"insulation.json", inFile(R"("P": {"permittivity": 0.5, "form": "film"})")}});
    EXPECT_EQ(
        all,
        (Sentences{"wires.json: /entries/A/bare_diameter: found nothing; allowed is a number above 0 and up to 0.01 m.",
                   "wires.json: /entries/A/overall_diameter: found \"thick\"; allowed is a number above 0 and up to "
                   "0.01 m.",
                   "wires.json: /entries/B: found 3; allowed is an object in curly brackets.",
                   "insulation.json: /entries/P/permittivity: found 0.5; allowed is a number from 1 to 100."}));
}

TEST(Load, GoesOnAfterAFileThatIsNotJson) {
    const auto all = faultsOf({{"sheets.json", "{\"format\": 1, "}, {"wires.json", R"({"format": 9, "entries": {}})"}});
    ASSERT_EQ(all.size(), 2U);
    EXPECT_TRUE(all[0].starts_with("sheets.json"));
    EXPECT_EQ(all[1], "wires.json: /format: found 9; allowed is 1, the newest format that this program reads.");
}

TEST(Load, RefusesABobbinForASheetThatIsNotThere) {
    EXPECT_EQ(faultsOf({{"bobbins.json", inFile(R"("B": {"wall": 0.001, "fits": "EI49",
                        "chambers": [{"low": 0.001, "high": 0.01}]})")}}),
              Sentences{"bobbins.json: /entries/B/fits: found \"EI49\"; allowed is the key of a sheet, or nothing."});
}

TEST(Load, FindsThePartThatADesignMeans) {
    catalog::Catalog shop, stored;
    shop.wires["W"].bareDiameter = 0.1e-3;
    stored.wires["W"].bareDiameter = 0.2e-3;
    catalog::PartRef<catalog::Wire> ref("W");
    EXPECT_EQ(catalog::find(ref, stored, shop)->bareDiameter.value, 0.2e-3);
    EXPECT_EQ(catalog::find(ref, {}, shop)->bareDiameter.value, 0.1e-3);
    auto own = std::make_shared<catalog::Wire>();
    own->bareDiameter = 0.3e-3;
    ref.own = own;
    EXPECT_EQ(catalog::find(ref, stored, shop)->bareDiameter.value, 0.3e-3);
    EXPECT_EQ(catalog::find(catalog::PartRef<catalog::Wire>("V"), stored, shop), nullptr);
}

}  // namespace load_test
