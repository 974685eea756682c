// SPDX-License-Identifier: GPL-3.0-or-later
// How much a design may hold. The limits lie far beyond any unit (common practice, no source); they keep a file that
// nobody wrote by hand from taking the program's time.
#include "design/inspection.h"

namespace design {

namespace {

constexpr std::size_t mostWindings = 200, mostTerminals = 1000, mostPlaces = 16, mostItems = 2000, mostPorts = 200,
                      mostHookUps = 200, mostOfAHookUp = 500, mostPromises = 2000, mostMasks = 200,
                      mostTablePoints = 10000, mostFittings = 100;

/// Faults lists that are too long.
class Counts {
public:
    explicit Counts(const Inspection& in) : in_(in), before_(in.faults.size()) {}
    [[nodiscard]] bool any() const { return in_.faults.size() > before_; }
    template <class List>
    void limit(const std::string& pointer, const List& list, std::size_t most) const {
        if (list.size() > most)
            in_.fault(pointer, std::to_string(list.size()) + " items", "at most " + std::to_string(most));
    }

private:
    const Inspection& in_;
    std::size_t before_;
};

void limitHookUp(const Counts& counts, const std::string& at, const HookUp& hookUp) {
    counts.limit(at + "/straps", hookUp.straps, mostOfAHookUp);
    counts.limit(at + "/earths", hookUp.earths, mostOfAHookUp);
    counts.limit(at + "/ports", hookUp.ports, mostPorts);
    for (std::size_t i = 0; i < hookUp.straps.size(); ++i)
        counts.limit(at + "/straps/" + std::to_string(i), hookUp.straps[i], mostOfAHookUp);
    for (std::size_t i = 0; i < hookUp.ports.size(); ++i) {
        const std::string port = at + "/ports/" + std::to_string(i);
        counts.limit(port + "/table", hookUp.ports[i].table, mostTablePoints);
        counts.limit(port + "/across", hookUp.ports[i].across, mostOfAHookUp);
    }
}

}  // namespace

bool isTooMuch(const Inspection& in) {
    const Design& d = in.design;
    const Counts counts(in);
    counts.limit("/terminals", d.terminals, mostTerminals);
    counts.limit("/windings", d.windings, mostWindings);
    counts.limit("/coil", d.coil, mostPlaces);
    counts.limit("/fittings", d.fittings, mostFittings);
    counts.limit("/ports", d.ports, mostPorts);
    counts.limit("/hook_ups", d.hookUps, mostHookUps);
    counts.limit("/brief/promises", d.brief.promises, mostPromises);
    counts.limit("/brief/masks", d.brief.masks, mostMasks);
    for (std::size_t i = 0; i < d.windings.size(); ++i) {
        counts.limit(Inspection::at("windings", i, "taps"), d.windings[i].taps, mostTerminals);
        counts.limit(Inspection::at("windings", i, "order"), d.windings[i].order, mostItems);
    }
    for (std::size_t i = 0; i < d.coil.size(); ++i)
        counts.limit(Inspection::at("coil", i, "order"), d.coil[i].order, mostItems);
    for (std::size_t i = 0; i < d.hookUps.size(); ++i) limitHookUp(counts, Inspection::at("hook_ups", i), d.hookUps[i]);
    return counts.any();
}

}  // namespace design
