// SPDX-License-Identifier: GPL-3.0-or-later
// What the shipped catalog holds, and that each of its numbers says where it comes from.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "json/text.h"
#include "read_resources.h"

namespace resources_test {

using catalog::SheetCut;

/// A visitor that collects the places of numbers without a source, and of lists whose source text is missing.
class Unsourced {
public:
    Unsourced(std::string place, const json::Value& written, std::vector<std::string>& found)
        : place_(std::move(place)), written_(written), found_(found) {}
    template <class T>
    void need(const char* key, T& value, const json::Allowed& = {}) {
        visit(key, value);
    }
    template <class T>
    void may(const char* key, T& value, const json::Allowed& = {}) {
        visit(key, value);
    }

private:
    template <class T>
    void visit(const std::string& key, T& value) {
        if (!written_.contains(key)) return;
        if constexpr (std::same_as<T, units::Datum>) {
            if (value.source.size() < 10) found_.push_back(place_ + "/" + key);  // a key left in place is shorter
        } else if constexpr (std::same_as<T, std::string>) {
            if (key.ends_with("_source") && value.size() < 10) found_.push_back(place_ + "/" + key);
        } else if constexpr (std::same_as<T, std::vector<double>>) {
            needText("thickness_source");
        } else if constexpr (std::same_as<T, std::vector<catalog::BhPoint>>) {
            needText("curve_source");
        } else if constexpr (std::same_as<T, std::vector<catalog::Pin>>) {
            needText("pin_source");
        } else if constexpr (requires { fields(*this, value[0]); }) {
            for (std::size_t i = 0; i < value.size(); ++i) {
                Unsourced item(place_ + "/" + key + "/" + std::to_string(i), written_.at(key).at(i), found_);
                fields(item, value[i]);
            }
        }
    }
    void needText(const char* key) {
        if (!written_.contains(key)) found_.push_back(place_ + "/" + key);
    }
    std::string place_;
    const json::Value& written_;
    std::vector<std::string>& found_;
};

template <class Part>
void collect(const std::string& file, const std::map<std::string, Part>& shelf, std::vector<std::string>& found) {
    const json::Value written = json::read(resource(file).text, file).at("entries");
    for (auto [key, part] : shelf) {
        Unsourced visitor(file + "/" + key, written.at(key), found);
        fields(visitor, part);
        if (!part.extra.empty()) found.push_back(file + "/" + key + " has unknown keys");
        if (part.title.empty()) found.push_back(file + "/" + key + " has no title");
    }
}

TEST(Resources, EveryNumberNamesItsSource) {
    const auto& shop = shopCatalog();
    std::vector<std::string> found;
    collect("sheets.json", shop.sheets, found);
    collect("alloys.json", shop.alloys, found);
    collect("wires.json", shop.wires, found);
    collect("bobbins.json", shop.bobbins, found);
    collect("insulation.json", shop.insulation, found);
    collect("fittings.json", shop.fittings, found);
    collect("sundries.json", shop.sundries, found);
    EXPECT_EQ(found, std::vector<std::string>{});
}

TEST(Resources, GuaranteedOnlyWhereAStandardWasRead) {
    for (const auto& [key, wire] : shopCatalog().wires)
        for (const auto* limit : {&wire.overallMinimum, &wire.overallMaximum})
            EXPECT_EQ(limit->guaranteed, limit->source.find("from memory") == std::string::npos &&
                                             limit->source.find("as printed") != std::string::npos)
                << key;
    for (const auto& [key, alloy] : shopCatalog().alloys) EXPECT_FALSE(alloy.initialPermeability.guaranteed) << key;
}

TEST(Resources, EverySourceIsUsed) {
    for (const auto& file : resourceFiles()) {
        const json::Value all = json::read(file.text, file.name);
        const std::string entries = all.at("entries").dump();
        for (const auto& [key, text] : all.at("sources").items())
            EXPECT_NE(entries.find("\"" + key + "\""), std::string::npos) << file.name << " " << key;
    }
}

TEST(Resources, ThirtySheetsAndMoreOfThreeCuts) {
    const auto& sheets = shopCatalog().sheets;
    EXPECT_GE(sheets.size(), 30U);
    const auto count = [&](SheetCut cut) {
        return std::count_if(sheets.begin(), sheets.end(), [&](const auto& s) { return s.second.cut == cut; });
    };
    EXPECT_GE(count(SheetCut::EI), 20);
    EXPECT_GE(count(SheetCut::M), 8);
    EXPECT_GE(count(SheetCut::UI), 6);
    for (const auto& [key, sheet] : sheets) EXPECT_FALSE(sheet.thicknesses.empty()) << key;
}

TEST(Resources, EveryAmericanGaugeInBothBuilds) {
    const auto& wires = shopCatalog().wires;
    for (int gauge = 14; gauge <= 50; ++gauge)
        for (const char* build : {" single", " heavy"})
            EXPECT_TRUE(wires.contains("AWG " + std::to_string(gauge) + build)) << gauge << build;
}

TEST(Resources, MetricWireInBothGradesWithoutALargeStep) {
    std::set<double> first, second;
    for (const auto& [key, wire] : shopCatalog().wires) {
        if (key.ends_with(" grade 1")) first.insert(wire.bareDiameter);
        if (key.ends_with(" grade 2")) second.insert(wire.bareDiameter);
    }
    EXPECT_EQ(first, second);
    EXPECT_EQ(*first.begin(), 0.020e-3);
    EXPECT_EQ(*first.rbegin(), 1.6e-3);
    double before = *first.begin();
    for (const double d : first) {
        EXPECT_LE(d / before, 1.15) << d;  // R20 goes by 1.122
        before = d;
    }
}

TEST(Resources, ThickerEnamelForTheHigherGrade) {
    const auto& wires = shopCatalog().wires;
    for (const auto& [key, wire] : wires) {
        const auto other = [&](const char* low, const char* high) {
            std::string name = key;
            if (const auto at = name.find(low); at != name.npos) {
                name.replace(at, std::string(low).size(), high);
                EXPECT_GT(wires.at(name).overallDiameter, wire.overallDiameter) << key;
            }
        };
        other("single", "heavy");
        other("grade 1", "grade 2");
        EXPECT_NEAR(wire.overallDiameter, (wire.overallMinimum + wire.overallMaximum) / 2, 0.6e-9) << key;
    }
}

TEST(Resources, OverallDiametersFallWithTheGauge) {
    const auto& wires = shopCatalog().wires;
    for (const char* build : {" single", " heavy"})
        for (int gauge = 15; gauge <= 50; ++gauge) {
            const auto& thick = wires.at("AWG " + std::to_string(gauge - 1) + build);
            const auto& thin = wires.at("AWG " + std::to_string(gauge) + build);
            EXPECT_LT(thin.overallMaximum, thick.overallMaximum) << gauge << build;
            EXPECT_LT(thin.overallMinimum, thick.overallMinimum) << gauge << build;
        }
}

TEST(Resources, FiveFamiliesOfAlloyWithAllNumbers) {
    std::set<catalog::AlloyFamily> families;
    for (const auto& [key, a] : shopCatalog().alloys) {
        families.insert(a.family);
        EXPECT_GE(a.curve.size(), 12U) << key;
        for (const double number : {a.maximumPermeability.value, a.rayleigh.value, a.saturation.value,
                                    a.remanence.value, a.coercivity.value, a.density.value, a.curieTemperature.value})
            EXPECT_GT(number, 0) << key;
    }
    EXPECT_EQ(families.size(), 5U);
}

TEST(Resources, CurveAgreesWithThePermeabilitiesAndSaturation) {
    constexpr double mu0 = 1.25663706212e-6;
    for (const auto& [key, a] : shopCatalog().alloys) {
        const auto permeability = [&](std::size_t i) { return a.curve[i].flux / (mu0 * a.curve[i].field); };
        EXPECT_NEAR(permeability(1) / a.initialPermeability, 1, 0.05) << key;
        double greatest = 0;
        std::size_t top = 1;
        for (std::size_t i = 1; i < a.curve.size(); ++i)
            if (permeability(i) > greatest) greatest = permeability(top = i);
        EXPECT_NEAR(greatest / a.maximumPermeability, 1, 0.10) << key;
        for (std::size_t i = 2; i < a.curve.size(); ++i)  // one maximum: up to it, then down
            EXPECT_EQ(permeability(i) > permeability(i - 1), i <= top) << key << " point " << i;
        EXPECT_GE(a.curve.back().flux - mu0 * a.curve.back().field, 0.95 * a.saturation) << key;
        const double field = a.curve[1].field;  // Rayleigh's slope at the foot
        EXPECT_NEAR(permeability(1), a.initialPermeability + a.rayleigh * field, 0.01 * a.initialPermeability) << key;
    }
}

TEST(Resources, BobbinsFitTheWindowOfTheirSheet) {
    const auto& shop = shopCatalog();
    std::set<std::string> sheets;
    std::set<std::size_t> chambers;
    for (const auto& [key, bobbin] : shop.bobbins) {
        const catalog::Sheet& sheet = shop.sheets.at(bobbin.fits);
        sheets.insert(bobbin.fits);
        chambers.insert(bobbin.chambers.size());
        EXPECT_GE(bobbin.chambers.front().low, bobbin.flange) << key;
        EXPECT_LE(bobbin.chambers.back().high + bobbin.flange, sheet.windowHeight) << key;
        EXPECT_LT(bobbin.wall + bobbin.clearance, 0.3 * sheet.windowWidth) << key;
        EXPECT_GT(bobbin.stackHeight, 0) << key;
    }
    EXPECT_GE(sheets.size(), 10U);
    EXPECT_EQ(chambers, (std::set<std::size_t>{1, 2, 3}));
}

TEST(Resources, PinsStandAtTheirPitchInTwoRows) {
    for (const auto& [key, bobbin] : shopCatalog().bobbins) {
        ASSERT_GE(bobbin.pins.size(), 8U) << key;
        EXPECT_EQ(bobbin.pins.front().number, 1) << key;
        for (std::size_t i = 1; i < bobbin.pins.size(); ++i) {
            const auto &one = bobbin.pins[i - 1], &next = bobbin.pins[i];
            EXPECT_EQ(next.number, one.number + 1) << key;
            if (one.row == next.row) {
                EXPECT_NEAR(std::abs(next.x - one.x), bobbin.pinPitch, 1e-9) << key;
            }
            EXPECT_EQ(next.y < 0, next.row == "low") << key;
        }
    }
}

TEST(Resources, InsulationFromTheLeastToTheMostPermittive) {
    const auto& all = shopCatalog().insulation;
    for (const char* key : {"polyester-film", "polyimide-film", "kraft-paper", "kraft-paper-impregnated",
                            "varnish-alkyd", "epoxy", "paraffin-wax"})
        EXPECT_TRUE(all.contains(key)) << key;
    EXPECT_LT(all.at("kraft-paper").permittivity, all.at("kraft-paper-impregnated").permittivity);
    for (const auto& [key, i] : all) {
        EXPECT_GE(i.permittivity, 2) << key;
        EXPECT_LE(i.permittivity, 5) << key;
        EXPECT_GT(i.lossFactor, 0) << key;
    }
}

TEST(Resources, FittingsOfEveryFormGoOnTheirSheets) {
    const auto& shop = shopCatalog();
    std::set<catalog::FittingForm> forms;
    for (const auto& [key, fitting] : shop.fittings) {
        forms.insert(fitting.form);
        EXPECT_GT(fitting.mass.value, 0) << key;
        if (fitting.fits.empty()) continue;
        const catalog::Sheet& sheet = shop.sheets.at(fitting.fits);
        if (fitting.form == catalog::FittingForm::Frame) {
            EXPECT_GE(fitting.width.value, catalog::overallWidth(sheet)) << key;
            EXPECT_GE(fitting.length.value, catalog::overallHeight(sheet)) << key;
            EXPECT_GT(fitting.height.value, fitting.stackHeight.value) << key;
        }
        if (!fitting.houses()) continue;
        EXPECT_GT(fitting.width - 2 * fitting.thickness, catalog::overallWidth(sheet)) << key;
        EXPECT_GT(fitting.length - 2 * fitting.thickness, catalog::overallHeight(sheet)) << key;
        EXPECT_GT(fitting.height - fitting.thickness, fitting.stackHeight + 2 * sheet.windowWidth) << key;
    }
    EXPECT_EQ(forms.size(), names(catalog::FittingForm{}).size());
}

TEST(Resources, SundriesOfEveryForm) {
    std::set<catalog::SundryForm> forms;
    for (const auto& [key, sundry] : shopCatalog().sundries) {
        forms.insert(sundry.form);
        EXPECT_GT(sundry.massPerMetre.value, 0) << key;
        if (sundry.form != catalog::SundryForm::Lead) continue;
        // Copper of 8890 kg/m3 (IEC 60028), and some insulation.
        EXPECT_GT(sundry.massPerMetre, 8890 * sundry.copper) << key;
        EXPECT_LT(sundry.massPerMetre, 3 * 8890 * sundry.copper) << key;
        EXPECT_FALSE(sundry.colours.empty()) << key;
    }
    EXPECT_EQ(forms.size(), names(catalog::SundryForm{}).size());
}

}  // namespace resources_test
