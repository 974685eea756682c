// SPDX-License-Identifier: GPL-3.0-or-later
// The other end of a port becomes the hot one.
#include <gtest/gtest.h>

#include "design/check.h"
#include "design/edit.h"
#include "sample_design.h"
#include "units/fault.h"

namespace design {
namespace hot_end_test {

using Names = std::vector<std::string>;
using Straps = std::vector<Names>;

void expectSound(const Design& d) {
    for (const auto& fault : check(d, sampleShop(), "s")) ADD_FAILURE() << units::sentence(fault);
}

TEST(OtherEndHot, EarthAndShieldGoToTheOtherEndAndBack) {
    Design d = sampleDesign();
    d.hookUps[0].ports[1].earthing = Earthing::MinusEarthed;
    const DesignPtr turned = otherEndHot(d, "normal", "output");
    expectSound(*turned);
    EXPECT_EQ(turned->hookUps[0].straps, (Straps{{"SH", "3"}}));
    EXPECT_EQ(turned->hookUps[0].earths, (Names{"core", "3"}));
    EXPECT_EQ(turned->hookUps[0].ports[1].earthing, Earthing::PlusEarthed);
    EXPECT_EQ(turned->windings, d.windings) << "nothing is soldered otherwise inside the unit";
    EXPECT_EQ(turned->ports, d.ports);
    EXPECT_EQ(*otherEndHot(*turned, "normal", "output"), d);
}

TEST(OtherEndHot, AnEndThatIsNotEarthedChangesNothing) {
    const Design d = sampleDesign();
    EXPECT_EQ(*otherEndHot(d, "normal", "input"), d);
    EXPECT_EQ(*otherEndHot(d, "nowhere", "output"), d);
    EXPECT_EQ(*otherEndHot(d, "normal", "nothing"), d);
}

/// Two windings in parallel at the port: P and S.
Design parallel() {
    Design d = sampleDesign();
    d.hookUps[0].straps = {{"1", "3"}, {"2", "4", "SH"}};
    d.hookUps[0].earths = {"core", "4"};
    d.hookUps[0].ports[0].earthing = Earthing::MinusEarthed;
    return d;
}

TEST(OtherEndHot, WindingsStayStrappedToEachOther) {
    const DesignPtr turned = otherEndHot(parallel(), "normal", "input");
    expectSound(*turned);
    EXPECT_EQ(turned->hookUps[0].straps, (Straps{{"1", "3", "SH"}, {"2", "4"}}));
    EXPECT_EQ(turned->hookUps[0].earths, (Names{"core", "1"}));
    const DesignPtr back = otherEndHot(*turned, "normal", "input");
    EXPECT_EQ(back->hookUps[0].straps, parallel().hookUps[0].straps);
    EXPECT_EQ(back->hookUps[0].earths, (Names{"core", "2"})) << "the same node by the port's own name";
}

TEST(OtherEndHot, AShieldThatIsEarthedKeepsItsEarth) {
    Design d = sampleDesign();
    d.hookUps[0].earths = {"SH"};
    const DesignPtr turned = otherEndHot(d, "normal", "output");
    expectSound(*turned);
    EXPECT_EQ(turned->hookUps[0].straps, (Straps{{"SH", "3"}}));
    EXPECT_EQ(turned->hookUps[0].earths, (Names{"SH"}));
}

TEST(OtherEndHot, ASeriesStrapBetweenTheEndsStays) {
    Design d = sampleDesign();
    d.ports[0] = {"input", "1", "4", {}};
    d.ports.resize(1);
    d.hookUps[0].straps = {{"2", "3"}, {"SH", "4"}};
    d.hookUps[0].ports.resize(1);
    const DesignPtr turned = otherEndHot(d, "normal", "input");
    EXPECT_EQ(turned->hookUps[0].straps, (Straps{{"2", "3"}, {"SH", "1"}}));
    EXPECT_EQ(turned->hookUps[0].earths, (Names{"core", "1"}));
}

}  // namespace hot_end_test
}  // namespace design
