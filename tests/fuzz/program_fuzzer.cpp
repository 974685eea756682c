// SPDX-License-Identifier: GPL-3.0-or-later
// Winding programs, read and run on a machine that has every axis.
#include <cmath>
#include <fstream>
#include <iterator>

#include "reader.h"
#include "replay/run.h"

namespace {

const replay::Machine& machine() {
    static const replay::Machine made = [] {
        std::ifstream file(COILWRIGHT_SOURCE_DIR "/resources/winders/six-spindle.json");
        return replay::readMachine({std::istreambuf_iterator<char>(file), {}}, "six-spindle.json");
    }();
    return made;
}

void read(std::string_view bytes) {
    const std::string text(bytes);
    const auto run = fuzz::unlessRefused("f", [&] { return replay::run(replay::readProgram(text, "f"), machine()); });
    if (!run) return;
    fuzz::require(std::isfinite(run->turns()) && std::isfinite(run->cycle(machine())), "a run without an end");
    fuzz::require(run->cycle(machine()) >= 0 && run->unitsADay(machine()) >= 0, "a run that takes less than no time");
}

const fuzz::Registered programs("program", read);

}  // namespace
