// SPDX-License-Identifier: GPL-3.0-or-later
// The alloys that come with the program.
#pragma once

#include <fstream>
#include <sstream>
#include <string>

#include "magnetics/stack.h"
#include "sample_stack.h"

namespace sample {

inline const catalog::Catalog& shipped() {
    static const catalog::Catalog all = [] {
        std::ostringstream text;
        text << std::ifstream(std::string(COILWRIGHT_SOURCE_DIR) + "/resources/alloys.json").rdbuf();
        catalog::Catalog loaded = catalog::load({{"alloys.json", text.str()}});
        loaded.sheets = shop().sheets;
        return loaded;
    }();
    return all;
}

/// A closed path of one alloy's sheets.
inline magnetics::CoreModel pureStack(const std::string& alloy) {
    design::Design design = core({{alloy.c_str(), 1}});
    design.core.gap = 0;
    return magnetics::coreModel(design, shipped());
}

inline magnetics::StackBlock sheets(const std::string& alloy) {
    return pureStack(alloy).blocks.at(0);
}

}  // namespace sample
