// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/stage_json.h"

#include <gtest/gtest.h>

#include "exchange/read_file.h"
#include "json/text.h"
#include "units/fault.h"

namespace stage_json_test {

// Source: tests/references/leakage.json, case L08 (split bobbin, side by side), finite elements, mesh error <= 0.02 %.
TEST(StageJson, WindowOfTwoChambersAgreesWithFiniteElements) {
    const auto cases =
        json::read(exchange::readFile(COILWRIGHT_SOURCE_DIR "/tests/references/leakage.json"), "leakage.json")
            .at("cases");
    for (const auto& c : cases) {
        for (const char* ends : {"closed", "open"}) {
            json::Value question;
            question["w"] = c.at("w").get<double>() * 1e-3;
            question["h"] = c.at("h").get<double>() * 1e-3;
            question["ends"] = ends;
            for (const auto& s : c.at("sections"))
                question["sections"].push_back({{"x0", s.at("x0").get<double>() * 1e-3},
                                                {"x1", s.at("x1").get<double>() * 1e-3},
                                                {"y0", s.at("y0").get<double>() * 1e-3},
                                                {"y1", s.at("y1").get<double>() * 1e-3},
                                                {"turns", s.at("turns")}});
            const auto answer = exchange::fieldJson(json::write(question), "question.json");
            const auto& expected = c.at("lambda").at(ends);
            for (std::size_t i = 0; i < expected.size(); ++i)
                for (std::size_t k = i + 1; k < expected.size(); ++k)
                    EXPECT_NEAR(
                        answer.at("lambda_H_per_m").at(i).at(k).get<double>() / expected.at(i).at(k).get<double>(), 1,
                        0.002)
                        << c.at("id") << " " << ends;
        }
    }
}

// Source: tests/references/capacitance.json, C01 and P01, finite elements, mesh error <= 0.1 %.
TEST(StageJson, WireCellsAgreeWithFiniteElements) {
    const auto answer = exchange::fieldJson(
        R"({"cells": [{"d": 5e-5, "d_o": 6.2e-5, "pitch": 6.4e-5, "sheet": 2e-5},
                      {"d": 5e-5, "d_o": 6.2e-5, "pitch": 6.4e-5, "sheet": 2e-5, "nesting": "plane"}]})",
        "cells.json");
    EXPECT_NEAR(answer.at("capacitance_F_per_m2").at(0).get<double>() / 5.245145e-07, 1, 0.002);
    EXPECT_NEAR(answer.at("capacitance_F_per_m2").at(1).get<double>() / 7.443709e-07, 1, 0.002);
}

TEST(StageJson, EveryFaultHasItsSentence) {
    const auto sentenceOf = [](const char* text) {
        try {
            (void)exchange::fieldJson(text, "q.json");
        } catch (const units::BadInput& bad) {
            return std::string(bad.what());
        }
        return std::string("accepted");
    };
    EXPECT_EQ(sentenceOf("{}"), "q.json: found neither sections nor cells; allowed is a list of one or the other.");
    EXPECT_EQ(
        sentenceOf(R"({"sections": [{"x0": 0, "x1": 1e-3, "y0": 0, "y1": 1e-3}]})"),
        "q.json: /w and /h: found nothing; allowed is the window's width and height in m, where there are sections.");
    EXPECT_EQ(sentenceOf(R"({"w": 1e-2, "h": 1e-2, "sections": [{"x0": 2e-3, "x1": 1e-3, "y0": 0, "y1": 1e-3}]})"),
              "q.json: /sections/0: found x0, x1, y0, y1; allowed is x0 < x1 and y0 < y1 inside the window.");
    EXPECT_EQ(sentenceOf(R"({"cells": [{"d": 2e-4, "d_o": 1e-4, "pitch": 3e-4}]})"),
              "q.json: /cells/0: found d, d_o, pitch; allowed is d <= d_o <= pitch.");
    EXPECT_EQ(sentenceOf("[]"), "q.json: found a list; allowed is an object in curly brackets.");
}

}  // namespace stage_json_test
