// SPDX-License-Identifier: GPL-3.0-or-later
// The unit behind readings, against units that were made, against the closed form of the linear case, and against its
// own neighbours.
#include "spread/likeliest.h"

#include <gtest/gtest.h>

#include <cmath>

#include "promising.h"
#include "spread/sensitivity.h"
#include "units/fault.h"

namespace likeliest_test {

constexpr const char* inductance = "inductance_1kHz.P";
constexpr const char* copper = "dcr.P";

spread::Study studyOf(const design::Design& d, const catalog::Tolerances& tolerances) {
    auto plan = planOf(1, {inductance, copper});
    plan.exact = true;
    return {d, shop(), tolerances, plan};
}
std::size_t columnOf(const spread::Study& study, const std::string& name) {
    for (std::size_t k = 0; k < study.columns().size(); ++k)
        if (study.columns()[k].name == name) return k;
    return study.columns().size();
}
std::size_t varyingOf(const spread::Variation& variation, const std::string& name) {
    for (std::size_t k = 0; k < variation.all.size(); ++k)
        if (variation.all[k].name.starts_with(name)) return k;
    return variation.all.size();
}
double nominalOf(const spread::Study& study, const std::string& name) {
    return study.columns()[columnOf(study, name)].nominal.value_or(0);
}
double deviateOf(const spread::LikeliestUnit& unit, std::size_t varying) {
    for (const auto& d : unit.deviated)
        if (d.varying == varying) return d.deviate;
    return 0;
}

TEST(Likeliest, ReadingsOfTheNominalAreTheNominal) {
    const auto study = studyOf(promising(), usual());
    const double l = nominalOf(study, inductance), r = nominalOf(study, copper);
    const auto unit =
        spread::likeliestUnit(promising(), shop(), usual(), {{inductance, l, 0.01 * l}, {copper, r, 0.01 * r}});
    ASSERT_NE(unit.design, nullptr);
    EXPECT_LT(std::abs(unit.deviated.front().deviate), 0.01);
    EXPECT_NEAR(unit.figures[0], l, 1e-4 * l);
}

TEST(Likeliest, OneReadingOfALinearFigureFollowsTheClosedForm) {
    // One number, y = y0 + J z, prior N(0, 1), reading off by s: z = J (y - y0) / (J^2 + s^2), the posterior mean of a
    // normal law. Wire stretch acts on the copper's resistance as a plain factor.
    catalog::Tolerances stretch{{"wire_stretch", usual().at("wire_stretch")}};
    const auto study = studyOf(promising(), stretch);
    const double r = nominalOf(study, copper);
    const auto& v = study.variation().all;
    const std::size_t of = varyingOf(study.variation(), "stretch of winding P");
    ASSERT_LT(of, v.size());
    const double slope = r * v[of].law.deviation(1), read = 1.02 * r, doubt = 0.01 * r, s = doubt / 2;
    const auto unit = spread::likeliestUnit(promising(), shop(), stretch, {{copper, read, doubt}});
    EXPECT_NEAR(deviateOf(unit, of), slope * (read - r) / (slope * slope + s * s), 1e-3);
}

TEST(Likeliest, FindsWhatWasDoneToAUnit) {
    const auto study = studyOf(promising(), usual());
    const auto& all = study.variation().all;
    const std::size_t mu = varyingOf(study.variation(), "permeability of alloy");
    ASSERT_LT(mu, all.size());
    std::vector<double> values;
    for (const auto& v : all) values.push_back(v.nominal);
    values[mu] = all[mu].law.value(all[mu].nominal, -2.5);
    const auto made = study.unit(values);
    const double l = made.values[columnOf(study, inductance)], r = made.values[columnOf(study, copper)];
    ASSERT_LT(l, 0.9 * nominalOf(study, inductance));
    const auto unit =
        spread::likeliestUnit(promising(), shop(), usual(), {{inductance, l, 0.005 * l}, {copper, r, 0.005 * r}});
    EXPECT_LT(unit.furthest, 1);
    EXPECT_EQ(unit.deviated.front().varying, mu);
    // Gap and stack may have some part in it: the likeliest is less than what was done, never more.
    EXPECT_LT(unit.deviated.front().deviate, -1.2);
    EXPECT_GT(unit.deviated.front().deviate, -2.55);
    EXPECT_NEAR(unit.design->core.stack[0].permeabilityFactor, unit.deviated.front().value, 1e-12);
}

TEST(Likeliest, AnyStepAwayIsLessLikely) {
    // Independent of how it was found: with one number a cause (no lots shared) what is made least is a plain sum.
    catalog::Tolerances few{{"permeability", usual().at("permeability")},
                            {"joint_gap", usual().at("joint_gap")},
                            {"stack_height", usual().at("stack_height")}};
    const auto study = studyOf(promising(), few);
    const double l0 = nominalOf(study, inductance), l = 0.75 * l0, doubt = 0.02 * l;
    const auto unit = spread::likeliestUnit(promising(), shop(), few, {{inductance, l, doubt}});
    const auto& all = study.variation().all;
    ASSERT_EQ(all.size(), 3U);
    std::vector<double> z(3);
    for (const auto& d : unit.deviated) z[d.varying] = d.deviate;
    const auto sum = [&](const std::vector<double>& at) {
        std::vector<double> values;
        double all2 = 0;
        for (std::size_t k = 0; k < 3; ++k) {
            values.push_back(all[k].law.value(all[k].nominal, at[k]));
            all2 += at[k] * at[k];
        }
        const double off = (study.unit(values).values[columnOf(study, inductance)] - l) / (doubt / 2);
        return all2 + off * off;
    };
    const double least = sum(z);
    for (std::size_t k = 0; k < 3; ++k)
        for (const double by : {-0.2, 0.2}) {
            auto at = z;
            at[k] += by;
            EXPECT_GT(sum(at), least) << all[k].name << " " << by;
        }
}

TEST(Likeliest, RefusesAFigureThatIsNone) {
    EXPECT_THROW((void)spread::likeliestUnit(promising(), shop(), usual(), {{"inductance_9Hz.P", 1, 0.1}}),
                 units::BadInput);
}

}  // namespace likeliest_test
