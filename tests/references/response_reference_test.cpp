// SPDX-License-Identifier: GPL-3.0-or-later
// Whole chain against the turn-by-turn model (tests/references/response.json and the curves beside it): every turn its
// own branch, an independent program. Same assumptions: walled ends, no dielectric loss, proximity on.
#include <gtest/gtest.h>

#include <cmath>

#include "analysis/answer.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "json/text.h"

namespace response_reference_test {

const std::string folder = COILWRIGHT_SOURCE_DIR "/tests/references/";

struct Row {
    double frequency, level, phase, impedance;
};

/// Columns: f, dB re EMF, dB re ideal, unwrapped phase, |Z_in|, …
std::vector<Row> readCurve(const std::string& name) {
    std::string text = exchange::readFile(folder + name + "_curve.csv");
    for (char& c : text)
        if (c == '\n') c = ',';
    text = text.substr(text.find("Zin_im") + 7);
    const auto numbers = json::read("[" + text.substr(0, text.find_last_of("0123456789") + 1) + "]", name);
    std::vector<Row> rows;
    for (std::size_t k = 0; k + 8 <= numbers.size(); k += 8)
        rows.push_back({numbers[k].get<double>(), numbers[k + 1].get<double>(), numbers[k + 3].get<double>(),
                        numbers[k + 4].get<double>()});
    return rows;
}

class WholeChain : public testing::TestWithParam<int> {
protected:
    void SetUp() override {
        reference_ = json::read(exchange::readFile(folder + "response.json"), "response.json")
                         .at("cases")
                         .at(static_cast<std::size_t>(GetParam()));
        name_ = reference_.at("name").get<std::string>();
        design_ = exchange::readDesign(exchange::readFile(folder + name_ + ".coilwright"), name_, {}).design;
        rows_ = readCurve(name_);
        analysis::Question question;
        for (const auto& row : rows_) question.frequencies.push_back(row.frequency);
        answer_ = analysis::answer(*design_, {}, nullptr, {}, question);
    }
    double figure(const char* figureName) const {
        const auto* found = answer_->figure(figureName);
        return found != nullptr ? found->value : std::nan("");
    }
    json::Value reference_;
    std::string name_;
    design::DesignPtr design_;
    std::vector<Row> rows_;
    analysis::AnswerPtr answer_;
};

TEST_P(WholeChain, ResponseFollowsTheTurnByTurnCurve) {
    ASSERT_EQ(rows_.size(), 121U);
    const auto& level = answer_->trace("response")->curve("magnitude_dB")->y;
    const double edge = reference_.at("f_high_3dB_first").get<double>() / 1.3;
    for (std::size_t k = 0; k < rows_.size(); ++k) {
        if (rows_[k].frequency > edge) break;
        EXPECT_NEAR(level[k], rows_[k].level, rows_[k].frequency <= 20e3 ? 0.05 : 0.3) << rows_[k].frequency;
    }
}

TEST_P(WholeChain, PhaseAndInputImpedanceFollowInTheBand) {
    const auto& phase = answer_->trace("response")->curve("phase_deg")->y;
    const auto& impedance = answer_->trace("impedance")->curve("source_side_ohm")->y;
    for (std::size_t k = 0; k < rows_.size() && rows_[k].frequency <= 20e3; ++k) {
        EXPECT_NEAR(phase[k], rows_[k].phase, 0.2) << rows_[k].frequency;
        EXPECT_NEAR(impedance[k] / rows_[k].impedance, 1, 0.003) << rows_[k].frequency;
    }
}

TEST_P(WholeChain, FiguresAgree) {
    EXPECT_NEAR(figure("gain_1kHz"), reference_.at("H_1k_dB").get<double>(), 0.005);
    EXPECT_NEAR(figure("gain_1kHz") + figure("insertion_loss"), reference_.at("ideal_dB").get<double>(), 0.005);
    EXPECT_NEAR(figure("low_3dB") / reference_.at("f_low_3dB").get<double>(), 1, 0.002);
    EXPECT_NEAR(figure("high_3dB_first") / reference_.at("f_high_3dB_first").get<double>(), 1, 0.03);
    EXPECT_NEAR(figure("high_3dB_smoothed") / reference_.at("f_high_3dB_smoothed").get<double>(), 1, 0.03);
    EXPECT_NEAR(figure("peak_frequency") / reference_.at("peak_f").get<double>(), 1, 0.03);
    EXPECT_NEAR(figure("peak_level"), reference_.at("peak_dB").get<double>(), 0.2);
    EXPECT_NEAR(figure("leakage_10kHz.P.S") / reference_.at("L_leak_10k_full").get<double>(), 1, 0.01);
    EXPECT_NEAR(figure("input_capacitance.input") / reference_.at("C_eff_primary").get<double>(), 1, 0.03);
    EXPECT_NEAR(figure("dcr.P") / reference_.at("Rdc").at("P").get<double>(), 1, 0.001);
    EXPECT_NEAR(figure("dcr.S") / reference_.at("Rdc").at("S").get<double>(), 1, 0.001);
}

class CommonMode : public WholeChain {};

TEST_P(CommonMode, GainAgreesWithinADecibel) {
    analysis::Question question;
    question.hookUp = "common mode";
    for (const auto& [text, values] : reference_.at("CM").items())
        question.frequencies.push_back(std::stod(text.substr(0, text.size() - 2)));
    const auto common = analysis::answer(*design_, {}, nullptr, {}, question);
    const auto& level = common->trace("response")->curve("magnitude_dB")->y;
    std::size_t k = 0;
    for (const auto& [text, values] : reference_.at("CM").items()) {
        if (question.frequencies[k] <= 20e3) {
            EXPECT_NEAR(level[k], values.at("cm_gain_dB").get<double>(), 1) << text;
        }
        ++k;
    }
}

INSTANTIATE_TEST_SUITE_P(ThreeCoils, WholeChain, testing::Values(0, 1, 2));
INSTANTIATE_TEST_SUITE_P(ShieldedStepUp, CommonMode, testing::Values(0));

}  // namespace response_reference_test
