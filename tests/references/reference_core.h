// SPDX-License-Identifier: GPL-3.0-or-later
// The core that a file of reference numbers speaks of.
#pragma once

#include <fstream>
#include <nlohmann/json.hpp>
#include <string>

#include "magnetics/stack.h"

namespace reference_core {

/// "core_in_time": tests/references/core_in_time.json.
inline nlohmann::json numbersOf(const std::string& name) {
    return nlohmann::json::parse(
        std::ifstream(std::string(COILWRIGHT_SOURCE_DIR "/tests/references/") + name + ".json"));
}

inline magnetics::CoreModel coreOf(const nlohmann::json& numbers, bool withLoop) {
    const auto number = [&](const char* key) { return numbers.at(key).get<double>(); };
    magnetics::CoreModel model;
    model.area = number("area");
    model.pathLength = number("path");
    magnetics::StackBlock block;
    block.initialPermeability = number("initial_permeability");
    block.saturation = number("saturation");
    if (withLoop) {
        block.rayleigh = number("rayleigh");
        block.coercivity = number("slack");
        for (const auto& point : numbers.at("curve")) block.curve.push_back({point[0], point[1]});
    }
    model.blocks = {block};
    return model;
}

}  // namespace reference_core
