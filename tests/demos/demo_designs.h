// SPDX-License-Identifier: GPL-3.0-or-later
// The five demo designs, opened and answered.
#pragma once

#include <map>
#include <string>

#include "analysis/stages.h"
#include "exchange/design_json.h"
#include "exchange/load_catalog.h"
#include "exchange/read_file.h"

namespace demos {

inline const char* const all[] = {"microphone-input", "ribbon-step-up", "direct-box", "line-unit", "splitter"};

inline std::string pathOf(const std::string& name) {
    return std::string(COILWRIGHT_SOURCE_DIR) + "/demo-projects/" + name + "/" + name + ".coilwright";
}

inline const catalog::Catalog& shop() {
    static const catalog::Catalog one = exchange::loadCatalog({COILWRIGHT_SOURCE_DIR "/resources"});
    return one;
}

inline exchange::Opened open(const std::string& name) {
    return exchange::readDesign(exchange::readFile(pathOf(name)), pathOf(name), shop());
}

/// Its answer, computed once a program.
inline analysis::AnswerPtr answerOf(const std::string& name) {
    static std::map<std::string, analysis::AnswerPtr> known;
    auto& answer = known[name];
    if (!answer) answer = analysis::answer(*open(name).design, shop());
    return answer;
}

/// A figure's value; a missing figure fails the comparison that it goes into.
inline double valueOf(const analysis::Answer& answer, const std::string& figure) {
    const auto* found = answer.figure(figure);
    return found != nullptr ? found->value : std::numeric_limits<double>::quiet_NaN();
}

}  // namespace demos
