// SPDX-License-Identifier: GPL-3.0-or-later
// Designs and machines for the tests of winding programs.
#pragma once

#include <map>
#include <string>

#include "design/check.h"
#include "exchange/design_json.h"
#include "exchange/load_catalog.h"
#include "exchange/read_file.h"
#include "exchange/winding_program.h"
#include "replay/comparison.h"

namespace winding_cases {

inline const char* const demos[] = {"microphone-input", "ribbon-step-up", "direct-box", "line-unit", "splitter"};
inline const char* const winders[] = {"hand-guided", "single-traverse", "six-spindle"};

inline const catalog::Catalog& shop() {
    static const catalog::Catalog one = exchange::loadCatalog({COILWRIGHT_SOURCE_DIR "/resources"});
    return one;
}
inline design::Design demo(const std::string& name) {
    const std::string path = std::string(COILWRIGHT_SOURCE_DIR "/demo-projects/") + name + "/" + name + ".coilwright";
    return *exchange::readDesign(exchange::readFile(path), path, shop()).design;
}
inline std::string winderPath(const std::string& name) {
    return std::string(COILWRIGHT_SOURCE_DIR "/resources/winders/") + name + ".json";
}

/// A machine as the writer and as the replay reads it.
struct Both {
    exchange::Winder winder;
    replay::Machine machine;
};
inline const Both& both(const std::string& name) {
    static std::map<std::string, Both> known;
    if (!known.contains(name)) {
        const std::string path = winderPath(name), text = exchange::readFile(path);
        known[name] = {exchange::readWinder(text, path), replay::readMachine(text, path)};
    }
    return known[name];
}

inline std::string program(const design::Design& design, const Both& on, int leg = 1) {
    return exchange::windingProgram(exchange::windingPlan(design, coil::layOut(design, shop()), shop(), on.winder, leg),
                                    on.winder);
}

/// Everything that a replay against the design says, a line each.
inline std::string said(const std::string& text, const design::Design& design, const Both& on, int leg = 1) {
    const replay::Run run = replay::run(replay::readProgram(text, "program"), on.machine);
    std::string words;
    for (const auto& remark : run.remarks)
        words.append("line ").append(std::to_string(remark.line)).append(": ").append(remark.words).append("\n");
    const auto due = replay::expected(design, coil::layOut(design, shop()), shop(), on.machine, leg);
    for (const auto& one : replay::compare(run, due, on.machine).differences) words.append(one).append("\n");
    return words;
}

}  // namespace winding_cases
