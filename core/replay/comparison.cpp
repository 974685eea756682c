// SPDX-License-Identifier: GPL-3.0-or-later
#include "replay/comparison.h"

#include <algorithm>
#include <cmath>

#include "units/joined.h"
#include "units/text.h"

namespace replay {

using units::joined;

namespace {

constexpr double sameTurns = 1e-6;

std::string turnsText(double turns) {
    return units::shortest(std::round(turns * 1e6) / 1e6);
}
std::string lengthText(double metres) {
    return units::write(units::Kind::Length, metres, 4);
}
std::string lineText(int line) {
    return joined({" (line ", std::to_string(line), ")"});
}

/// One step of the program beside one of the design.
class StepComparison {
public:
    StepComparison(const Run& run, int step, const DueStep& due, const Machine& machine, Comparison& to)
        : due_(due), machine_(machine), to_(to), count_(std::pow(10.0, -machine.turnsDecimals)) {
        for (const Stretch& s : run.stretches)
            if (s.step == step) stretches_.push_back(&s);
        for (const Halt& h : run.halts)
            if (h.step == step) halts_.push_back(&h);
        for (const Wrap& w : run.wraps)
            if (w.step == step) wraps_.push_back(&w);
    }

    void all() {
        turns();
        layers();
        stops();
        extraStops();
    }

private:
    void say(std::string_view words) { to_.differences.push_back(joined({due_.name, ": ", words})); }

    void turns() {
        double sum = 0;
        bool sense = true;
        for (const Stretch* s : stretches_) {
            sum += s->turns;
            sense = sense && s->sense == due_.sense;
        }
        if (std::abs(sum - due_.turns) > sameTurns)
            say(joined({turnsText(sum), " turns, the design has ", turnsText(due_.turns)}));
        if (!sense)
            say(joined({"is not wound in the design's sense, ", due_.sense > 0 ? "clockwise" : "counterclockwise"}));
    }

    void layers() {
        std::size_t next = 0;
        int said = -1;  // one sentence a layer
        for (const Stretch* s : stretches_) {
            while (next < due_.layers.size() && s->first > due_.layers[next].first + due_.layers[next].turns - count_)
                ++next;
            if (next == due_.layers.size()) return;  // the turns have been found too many already
            const DueLayer& layer = due_.layers[next];
            const int number = static_cast<int>(next) + 1;
            to_.wire += layer.wire * s->turns;
            wireSpeed(*s, layer);
            if (!machine_.traverse || said == number) continue;
            if (const std::string words = layerWords(*s, layer, number); !words.empty()) {
                say(words + lineText(s->line));
                said = number;
            }
        }
    }
    /// A speed below the spindle's slowest is not asked for.
    void wireSpeed(const Stretch& s, const DueLayer& layer) {
        const double speed = s.rpm / 60 * layer.turnLength;
        if (machine_.speedLetter == 0 || tooFast_ || s.rpm <= machine_.lowestRpm + 1 ||
            speed <= machine_.wireSpeed * (1 + 1e-3))
            return;
        say(joined({"the wire runs at ", units::significant(speed, 3), " m/s, the fastest is ",
                    units::shortest(machine_.wireSpeed), " m/s", lineText(s.line)}));
        tooFast_ = true;
    }
    std::string layerWords(const Stretch& s, const DueLayer& layer, int number) const {
        const std::string name = "layer " + std::to_string(number);
        const double end = layer.first + layer.turns;
        if (s.first < layer.first - count_ || s.first + s.turns > end + count_)
            return joined({name, " ends after ", turnsText(end), " turns in the design, the program winds on to ",
                           turnsText(s.first + s.turns)});
        if (!layer.guided) return {};
        // A count or a place of the program has a last digit.
        const double reach = layer.pitch / 2 + layer.pitch * count_ + 1e-6;
        const double from = layer.middle(s.first - layer.first), to = layer.middle(s.first + s.turns - layer.first);
        const double off = std::max(std::abs(s.from.traverse - from), std::abs(s.to.traverse - to));
        if (off <= reach) return {};
        for (const double mirror : {layer.begin + layer.end, due_.chamberLow + due_.chamberHigh})
            if (std::abs(s.from.traverse - (mirror - from)) <= reach &&
                std::abs(s.to.traverse - (mirror - to)) <= reach)
                return joined({name, " is wound from the wrong side, the design begins it at the ",
                               layer.begin < layer.end ? "low" : "high", " end"});
        const bool atStart = std::abs(s.from.traverse - from) > reach;
        return joined({name, ": after ", turnsText(atStart ? s.first : s.first + s.turns),
                       " turns the guide stands at ", lengthText(atStart ? s.from.traverse : s.to.traverse),
                       ", the design's wire lies at ", lengthText(atStart ? from : to),
                       ", more than half a pitch away"});
    }

    void stops() {
        for (const DueStop& stop : due_.stops) {
            if (stop.pin > 0 ? takeWrap(stop) : takeHalt(stop)) continue;
            if (stop.pin > 0)
                say(joined(
                    {"pin ", std::to_string(stop.pin), " is not wrapped after ", turnsText(stop.after), " turns"}));
            else
                say(joined({"no stop for ", stop.kind, " after ", turnsText(stop.after), " turns"}));
        }
    }
    bool takeHalt(const DueStop& stop) {
        const auto at = std::find_if(halts_.begin(), halts_.end(), [&](const Halt* h) {
            return h->kind == stop.kind && std::abs(h->after - stop.after) <= count_;
        });
        if (at == halts_.end()) return false;
        halts_.erase(at);
        return true;
    }
    bool takeWrap(const DueStop& stop) {
        constexpr double near = 1e-4;
        const auto at = std::find_if(wraps_.begin(), wraps_.end(), [&](const Wrap* w) {
            return std::abs(w->after - stop.after) <= count_ && std::abs(w->at.cross - stop.cross) < near &&
                   std::abs(w->at.traverse - stop.traverse) < near;
        });
        if (at == wraps_.end()) return false;
        if ((*at)->wraps != machine_.wraps)
            say(joined({"pin ", std::to_string(stop.pin), " has ", std::to_string((*at)->wraps),
                        " wraps, the machine's are ", std::to_string(machine_.wraps), lineText((*at)->line)}));
        wraps_.erase(at);
        return true;
    }
    void extraStops() {
        for (const Halt* h : halts_)
            say(joined({"a stop ", h->kind.empty() ? "without a reason" : "for " + h->kind, " after ",
                        turnsText(h->after), " turns that the design does not ask for", lineText(h->line)}));
        for (const Wrap* w : wraps_)
            say(joined({"a pin wrapped after ", turnsText(w->after), " turns that the design does not ask for",
                        lineText(w->line)}));
    }

    const DueStep& due_;
    const Machine& machine_;
    Comparison& to_;
    bool tooFast_ = false;
    const double count_;  // the machine's last digit of turns
    std::vector<const Stretch*> stretches_;
    std::vector<const Halt*> halts_;
    std::vector<const Wrap*> wraps_;
};

}  // namespace

Comparison compare(const Run& run, const Expected& expected, const Machine& machine) {
    Comparison to;
    const std::size_t steps = run.stepLines.size();
    if (steps != expected.steps.size())
        to.differences.push_back(joined({std::to_string(steps), " steps, each begun by a main block, the design has ",
                                         std::to_string(expected.steps.size())}));
    for (std::size_t k = 0; k < std::max(steps, expected.steps.size()); ++k) {
        if (k >= expected.steps.size()) break;
        StepComparison(run, static_cast<int>(k), expected.steps[k], machine, to).all();
    }
    for (std::string& words : collisions(run, expected.around, machine)) to.differences.push_back(std::move(words));
    return to;
}

}  // namespace replay
