// SPDX-License-Identifier: GPL-3.0-or-later
// Blank designs: they can be wound, and what closed forms were asked for is what the full figures say.
#include "seek/first_design.h"

#include <gtest/gtest.h>

#include "demos.h"
#include "design/check.h"
#include "exchange/load_enquiries.h"
#include "units/fault.h"

namespace first_design_test {

const std::map<std::string, design::Enquiry>& kinds() {
    static const auto all = exchange::loadEnquiries({COILWRIGHT_SOURCE_DIR "/resources"});
    return all;
}

class EveryKind : public testing::TestWithParam<std::string> {};

TEST_P(EveryKind, BeginsWithADesignThatIsSoundAndKeepsLowEndAndLevel) {
    const auto& kind = kinds().at(GetParam());
    const auto first = seek::firstDesign(seek::needOf(seek::sketchOf(kind), "sketch"), demos::shop());
    ASSERT_NE(first, nullptr);
    for (const auto& fault : design::check(*first, demos::shop(), "first")) ADD_FAILURE() << fault.place;
    const std::string text = exchange::writeDesign(*first, demos::shop());
    EXPECT_EQ(exchange::writeDesign(*exchange::readDesign(text, "first", demos::shop()).design, demos::shop()), text);
    double primary = 0, secondary = 0;
    for (const auto& w : first->windings) (w.name == "P" ? primary : secondary) = design::conductorTurns(*first, w);
    EXPECT_NEAR(secondary / primary, kind.ratio, 0.5 / std::min(primary, secondary) * std::max(1.0, kind.ratio));
    const auto answer = analysis::answer(*first, demos::shop());
    for (const auto& p : answer->promises) {
        EXPECT_NE(p.standing, analysis::Standing::Unknown) << p.text << ' ' << p.why;
        // What the closed forms count turns by.
        const bool counted = p.figure.starts_with("low_3dB") || p.figure.starts_with("maximum_level") ||
                             p.figure.starts_with("headroom");
        EXPECT_TRUE(!counted || p.standing != analysis::Standing::Broken) << p.text << " now " << p.now;
    }
}

std::string plainName(const testing::TestParamInfo<std::string>& kind) {
    std::string name = kind.param;
    std::erase(name, '-');
    return name;
}
INSTANTIATE_TEST_SUITE_P(All, EveryKind,
                         testing::Values("microphone-input", "line-input", "direct-box", "line-output", "splitter"),
                         plainName);

TEST(FirstDesign, EveryKindThatIsOfferedIsTried) {
    EXPECT_EQ(kinds().size(), 5U);
}

TEST(FirstDesign, DrawsUpADemoAnewFromItsBrief) {
    const auto demo = demos::design("microphone-input");
    const auto anew = seek::firstDesign(seek::needOf(*demo, "demo"), demos::shop());
    EXPECT_EQ(anew->brief, demo->brief);
    EXPECT_EQ(anew->hookUps, demo->hookUps);
    EXPECT_TRUE(design::check(*anew, demos::shop(), "anew").empty());
}

TEST(FirstDesign, NoRoomIsSaid) {
    auto sketch = seek::sketchOf(kinds().at("line-output"));
    sketch.brief.size.length = 0.005;
    sketch.brief.size.width = 0.005;
    try {
        (void)seek::firstDesign(seek::needOf(sketch, "sketch"), demos::shop());
        FAIL() << "a unit of 5 mm";
    } catch (const units::BadInput& bad) {
        EXPECT_STREQ(bad.what(),
                     "brief: found nothing in the catalog that could keep it; allowed is a larger size, a lower level "
                     "or band, or less loss.");
    }
}

TEST(Enquiries, FaultsAreNamed) {
    try {
        (void)exchange::readEnquiries(R"({"entries": {"a": {"title": "A", "use": "a", "source": {"port": "x",
            "resistance": -1}, "outputs": [], "ratio": 1, "operating_level_dBu": 0, "promises": [], "note": ""}}})",
                                      "shop.json");
        FAIL();
    } catch (const units::BadInput& bad) {
        ASSERT_EQ(bad.faults.size(), 2U);
        EXPECT_EQ(bad.faults[0].place, "shop.json: /entries/a/source/resistance");
        EXPECT_EQ(bad.faults[1].place, "shop.json: /entries/a/outputs");
    }
}

}  // namespace first_design_test
