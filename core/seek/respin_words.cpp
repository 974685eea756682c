// SPDX-License-Identifier: GPL-3.0-or-later
#include "seek/respin_words.h"

#include <cmath>

#include "units/joined.h"
#include "units/text.h"

namespace seek {

namespace {

using units::joined;

std::string lineWords(const shop::AlteredLine& line) {
    if (line.before.empty()) return joined({"    ", line.place, ": new: ", line.after});
    if (line.after.empty()) return joined({"    ", line.place, ": gone: ", line.before});
    return joined({"    ", line.place, ": ", line.before, " → ", line.after});
}

}  // namespace

std::string promiseWords(const analysis::PromiseState& promise) {
    const std::string now = std::isfinite(promise.now) ? units::write(promise.kind, promise.now) : std::string("none");
    return joined({promise.text, ": ", now, ", ", std::string(analysis::word(promise.standing))});
}

std::string headWords(const Respin& respin) {
    return joined({std::string(word(respin.change)), ": ", respin.what});
}

std::vector<std::string> respinWords(const Respin& respin, const std::vector<analysis::PromiseState>& broken) {
    std::vector<std::string> lines;
    lines.reserve(respin.words.size() + broken.size() + respin.lines.size() + 2);
    for (const auto& words : respin.words) lines.push_back("change    " + words);
    for (const auto& b : broken)
        for (const auto& p : respin.promises)
            if (p.index == b.index && p.mask == b.mask) lines.push_back("then      " + promiseWords(p));
    lines.push_back("weakest   " + respin.weakestPromise);
    lines.push_back(joined({"alters ", std::to_string(respin.lines.size()), " lines"}));
    for (const auto& line : respin.lines) lines.push_back(lineWords(line));
    return lines;
}

}  // namespace seek
