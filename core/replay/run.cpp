// SPDX-License-Identifier: GPL-3.0-or-later
#include "replay/run.h"

#include <algorithm>
#include <cmath>

#include "replay/runner.h"
#include "units/joined.h"
#include "units/text.h"

namespace replay {

namespace {

/// Seconds for `turns` entered at `in`, left at `out` (turns/s), at most at `top`, speed changing by `a` turns/s2.
double windingTime(double turns, double in, double out, double top, double a) {
    const double peak = std::min(top, std::sqrt(std::max(0.0, (2 * a * turns + in * in + out * out) / 2)));
    const double up = std::max(peak, in), ramps = (up * up - in * in + up * up - out * out) / (2 * a);
    const double changing = (up - in + up - out) / a;
    return changing + (up > 0 ? std::max(0.0, turns - ramps) / up : 0);
}

}  // namespace

double Run::turns() const {
    double sum = 0;
    for (const Stretch& s : stretches) sum += s.turns;
    return sum;
}

double Run::cycle(const Machine& machine) const {
    return moving + waiting + machine.loadSeconds;
}

int Run::unitsADay(const Machine& machine) const {
    const double seconds = cycle(machine);
    return seconds > 0 ? static_cast<int>(std::floor(machine.shiftHours * 3600 / seconds)) * machine.spindles : 0;
}

/// Gives every stretch its time and shifts the events behind it.
void Runner::time() {
    auto& all = run_.stretches;
    double speed = 0;
    std::size_t event = 0;
    double shift = 0;
    for (std::size_t k = 0; k < all.size(); ++k) {
        Stretch& s = all[k];
        const double top = s.rpm / 60, a = m_.acceleration;
        if (s.stands) speed = 0;
        const double in = std::min(speed, top);
        const bool stops = k + 1 == all.size() || all[k + 1].stands;
        const double wish = stops ? 0 : std::min(top, all[k + 1].rpm / 60);
        if (in * in - wish * wish > 2 * a * s.turns * (1 + 1e-6) + 1e-9 && m_.speedLetter != 0)
            remark(s.line, units::joined({"a speed of ", units::shortest(s.rpm), " turns a minute cannot be left in ",
                                          units::shortest(s.turns), " turns"}));
        const double out = std::min(wish, std::sqrt(in * in + 2 * a * s.turns));
        s.seconds = windingTime(s.turns, in, out, top, a);
        speed = out;
        for (; event < run_.events.size() && run_.events[event].line < s.line; ++event)
            run_.events[event].seconds += shift;
        shift += s.seconds;
    }
    for (; event < run_.events.size(); ++event) run_.events[event].seconds += shift;
    run_.moving += shift;
}

Run Runner::finish() {
    time();
    if (!ended_) remark(run_.events.empty() ? 0 : run_.events.back().line, "the program has no end");
    if (run_.blocks > m_.mostBlocks)
        remark(0, units::joined(
                      {std::to_string(run_.blocks), " blocks, the machine holds ", std::to_string(m_.mostBlocks)}));
    if (!unitSaid_) remark(0, "the program does not say the unit of its lengths");
    std::stable_sort(run_.remarks.begin(), run_.remarks.end(),
                     [](const Remark& a, const Remark& b) { return a.line < b.line; });
    return std::move(run_);
}

Run run(const Program& program, const Machine& machine) {
    Runner runner(machine, program.file);
    for (const Block& block : program.blocks) runner.take(block);
    return runner.finish();
}

}  // namespace replay
