// SPDX-License-Identifier: GPL-3.0-or-later
// Noise and common-mode rejection against an independent circuit solver on the exported netlist.

#include "analysis/balance.h"
#include "exchange/netlist.h"
#include "ngspice.h"

namespace netlist_noise_test {

/// Fits that have no exact counterpart are switched off on both sides; the core's fit stays.
design::Design plain(const std::string& file) {
    auto d = ngspice::opened(file);
    d.assumptions.proximity = false;
    d.assumptions.dielectricLoss = false;
    return d;
}

analysis::AnswerPtr answerOf(const design::Design& d, const std::string& hookUp, const analysis::AnswerPtr& before,
                             std::vector<double> frequencies) {
    analysis::Question question;
    question.hookUp = hookUp;
    question.everyHookUp = false;
    question.frequencies = std::move(frequencies);
    return analysis::answer(d, ngspice::shop(), before, {}, question);
}

/// The example asked for noise at the observed terminals instead of the response, at the design's temperature.
std::string askingForNoise(std::string netlist, double celsius) {
    const auto level = netlist.find("let level = db(", netlist.rfind(".control\nset"));
    const auto from = level + 15, end = netlist.find(")\nwrdata", from);
    std::string output = netlist.substr(from, end - from);  // "v(a)-v(b)", "v(a)-0", "0-v(b)"
    std::erase(output, ' ');
    std::vector<std::string> nodes;
    for (auto at = output.find("v("); at != std::string::npos; at = output.find("v(", at + 1))
        nodes.push_back(output.substr(at + 2, output.find(')', at) - at - 2));
    const std::string pair = nodes.size() == 2 ? "v(" + nodes[0] + "," + nodes[1] + ")" : "v(" + nodes.at(0) + ")";
    netlist.resize(netlist.rfind(".control\nset"));
    const std::string degrees = std::to_string(celsius);
    return netlist + ".options temp=" + degrees + " tnom=" + degrees +
           "\n.control\nset wr_singlescale\nset numdgt=12\nnoise " + pair +
           " vp0t0 dec 5 20 20k\nsetplot noise1\nwrdata response.txt onoise_spectrum\nquit 0\n.endc\n.end\n";
}

class NoiseOf : public testing::TestWithParam<std::string> {};

TEST_P(NoiseOf, NgspiceAgreesWithinATenthOfADecibelInEveryHookUp) {
    const auto d = plain(GetParam());
    for (const auto& hookUp : d.hookUps) {
        const auto first = answerOf(d, hookUp.name, nullptr, {});
        if (first->trace("noise") == nullptr) continue;  // common-mode drive
        const auto got =
            ngspice::rows(askingForNoise(exchange::netlist(d, *first), d.conditions.temperature), d.name + "noise");
        ASSERT_EQ(got.size(), 16U) << hookUp.name;
        std::vector<double> frequencies;
        for (const auto& row : got) frequencies.push_back(row.at(0));
        const auto answered = answerOf(d, hookUp.name, first, frequencies);
        const auto& density = answered->trace("noise")->curve("output_V_per_rtHz")->y;
        for (std::size_t k = 0; k < got.size(); ++k)
            EXPECT_NEAR(20 * std::log10(density[k] / got[k].at(1)), 0, 0.1) << hookUp.name << " " << frequencies[k];
    }
}

INSTANTIATE_TEST_SUITE_P(Designs, NoiseOf, testing::ValuesIn(ngspice::designs()),
                         [](const auto& tried) { return ngspice::testName(tried.param); });

class RejectionOf : public testing::TestWithParam<std::string> {};

/// The design with two more hook-ups: one driven between its legs and on both alike, its source balanced, which is what
/// rejection compares. Both are asked of one netlist: the core's fit is the same.
design::Design withTest(const design::Design& d, std::size_t hookUp) {
    auto test = d;
    for (const auto& [mode, name] :
         {std::pair{design::Mode::Differential, "between the legs"}, std::pair{design::Mode::Common, "on both legs"}}) {
        auto other = d.hookUps[hookUp];
        other.name = name;
        for (auto& use : other.ports) {
            if (use.role != design::Role::Drive) continue;
            use.earthing = design::Earthing::Balanced;
            use.mode = mode;
        }
        test.hookUps.push_back(other);
    }
    return test;
}

/// ngspice's levels of the hook-up, Hz and dB.
std::vector<std::vector<double>> levels(const design::Design& d, std::size_t hookUp, const char* name) {
    return ngspice::rows(exchange::netlist(d, *answerOf(d, d.hookUps[hookUp].name, nullptr, {})), d.name + name);
}

void expectRejection(const design::Design& d, std::size_t hookUp) {
    const std::string& name = d.hookUps[hookUp].name;
    const auto both = withTest(d, hookUp);
    // Of the same design as the netlists, so that its layers are cut into the same pieces.
    const auto first = answerOf(both, name, nullptr, {});
    if (first->trace("balance") == nullptr) return;
    const auto wanted = levels(both, d.hookUps.size(), "normal"),
               unwanted = levels(both, d.hookUps.size() + 1, "common");
    ASSERT_EQ(wanted.size(), unwanted.size());
    const auto test = analysis::CommonModeTest::of(both, *first->stages->solved.at(name), *first->stages,
                                                   network::Prepared::Currents::Branches);
    ASSERT_TRUE(test.has_value());
    std::size_t held = 0;
    for (std::size_t k = 0; k < wanted.size(); ++k) {
        const double rejection = wanted[k].at(1) - unwanted[k].at(1);
        if (rejection > 110) continue;  // beyond what either solver's digits are trusted with
        ++held;
        const double frequency = wanted[k].at(0);
        EXPECT_NEAR(test->at(frequency).balanced, rejection, 0.5) << name << " " << frequency;
    }
    EXPECT_GT(held, wanted.size() / 4) << name;
}

TEST_P(RejectionOf, NgspiceAgreesWithinHalfADecibelInEveryHookUp) {
    const auto d = plain(GetParam());
    for (std::size_t hookUp = 0; hookUp < d.hookUps.size(); ++hookUp) expectRejection(d, hookUp);
}

INSTANTIATE_TEST_SUITE_P(Designs, RejectionOf, testing::ValuesIn(ngspice::designs()),
                         [](const auto& tried) { return ngspice::testName(tried.param); });

/// The designs whose hook-ups "normal" and "common mode" differ in the drive alone.
class SameRejection : public testing::TestWithParam<std::string> {};

TEST_P(SameRejection, TheCommonModeHookUpTellsTheSame) {
    const auto d = plain(GetParam());
    const std::vector<double> asked{20, 100, 1e3, 10e3, 100e3};
    const auto normal = answerOf(d, "normal", nullptr, asked), common = answerOf(d, "common mode", normal, asked);
    const auto &own = normal->trace("balance")->curve("rejection_dB")->y,
               &same = common->trace("balance")->curve("rejection_dB")->y;
    for (std::size_t k = 0; k < own.size(); ++k)
        if (own[k] <= 110) {
            EXPECT_NEAR(same[k], own[k], 0.1) << asked[k];
        }
}

INSTANTIATE_TEST_SUITE_P(Designs, SameRejection,
                         testing::Values("tests/references/open_1_shielded_step_up.coilwright",
                                         "demo-projects/microphone-input/microphone-input.coilwright"),
                         [](const auto& tried) { return ngspice::testName(tried.param); });

}  // namespace netlist_noise_test
