// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/lever.h"

#include <algorithm>
#include <cmath>
#include <functional>

#include "design/check.h"
#include "design/edit.h"
#include "units/text.h"

namespace analysis {

namespace {

using design::Design;
using design::DesignPtr;

constexpr double onePercent = 0.01;

/// Collects levers; each is given as a function that multiplies its quantity.
class Collector {
public:
    Collector(const Design& d, const catalog::Catalog& shop) : design_(d), shop_(shop) {}

    void add(const std::string& words, std::optional<design::ItemIndex> item, const std::string& winding, double step,
             const std::function<void(Design&, double)>& times) {
        Lever lever{words, item, winding, nullptr, nullptr, step};
        lever.more = design::changed(design_, [&](Design& d) { times(d, 1 + step); });
        lever.less = design::changed(design_, [&](Design& d) { times(d, 1 - step); });
        for (const DesignPtr& one : {lever.more, lever.less})
            if (!design::check(*one, shop_, "").empty()) return;
        all_.push_back(std::move(lever));
    }
    std::vector<Lever> take() { return std::move(all_); }

private:
    const Design& design_;
    const catalog::Catalog& shop_;
    std::vector<Lever> all_;
};

design::Item& itemOf(Design& d, design::ItemIndex at) {
    return d.coil[static_cast<std::size_t>(at.place)].order[static_cast<std::size_t>(at.item)];
}

void addItem(Collector& to, const design::Item& item, design::ItemIndex at) {
    if (const auto* section = item.section()) {
        // Whole turns, as they are wound: the nearest number of them to one per cent.
        const double turns = section->turns, by = std::max(1.0, std::round(onePercent * turns));
        to.add("turns of " + section->label(), at, "", by / turns, [at, turns](Design& d, double factor) {
            itemOf(d, at).section()->turns.value = std::round(turns * factor * 2) / 2;
        });
        if (section->interlayer && section->interlayer->thickness > 0)
            to.add("paper between layers of " + section->label(), at, "", onePercent,
                   [at](Design& d, double factor) { itemOf(d, at).section()->interlayer->thickness.value *= factor; });
    }
    if (const auto* barrier = item.barrier(); barrier != nullptr && barrier->ply.thickness > 0)
        to.add("insulation " + std::to_string(at.item + 1), at, "", onePercent,
               [at](Design& d, double factor) { itemOf(d, at).barrier()->ply.thickness.value *= factor; });
}

void addWire(Collector& to, const Design& d, const catalog::Catalog& shop, std::size_t index) {
    const auto& winding = d.windings[index];
    const auto* wire = design::part(d, winding.wire, shop);
    if (winding.foil || wire == nullptr) return;
    to.add("wire of " + winding.name, std::nullopt, winding.name, onePercent,
           [index, wire](Design& next, double factor) {
               auto own = std::make_shared<catalog::Wire>(*wire);
               own->bareDiameter = own->bareDiameter * factor;
               own->overallDiameter = own->overallDiameter * factor;
               next.windings[index].wire.own = std::move(own);
           });
}

void addCore(Collector& to, const Design& d) {
    to.add("stack height", std::nullopt, "", onePercent,
           [](Design& n, double factor) { n.core.height.value *= factor; });
    if (d.core.gap > 0)
        to.add("gap", std::nullopt, "", onePercent, [](Design& n, double factor) { n.core.gap.value *= factor; });
    for (std::size_t k = 0; k < d.core.stack.size(); ++k)
        to.add("permeability of " +
                   (d.core.stack.size() > 1 ? "alloy " + std::to_string(k + 1) : std::string("the alloy")),
               std::nullopt, "", onePercent,
               [k](Design& n, double factor) { n.core.stack[k].permeabilityFactor.value *= factor; });
}

/// What is watched while the levers are moved.
struct Watched {
    Question question;
    std::function<double(const Answer&)> read;  ///< not a number: cannot be said
    double now = 0;
    bool decibels = false;
};

/// Change for one per cent more; not a number where it cannot be said.
double shareOf(const Watched& watched, double less, double more, double step) {
    const double apart = (more - less) / (2 * step) * onePercent;
    return watched.decibels ? apart : apart / std::abs(watched.now);
}

std::vector<Pull> ranked(const Design& d, const catalog::Catalog& shop, const AnswerPtr& now, const Watched& watched,
                         const std::stop_token& stop) {
    std::vector<Pull> all;
    for (Lever& lever : levers(d, shop)) {
        const auto less = answer(*lever.less, shop, now, stop, watched.question);
        if (less->stopped) return {};
        const auto more = answer(*lever.more, shop, now, stop, watched.question);
        if (more->stopped) return {};
        const double share = shareOf(watched, watched.read(*less), watched.read(*more), lever.step);
        if (std::isfinite(share) && std::abs(share) > 1e-6) all.push_back({std::move(lever), share});
    }
    std::stable_sort(all.begin(), all.end());
    return all;
}

/// The first curve's value where the trace has the frequency next to `f`.
double valueNear(const Trace& trace, double f) {
    if (trace.curves.empty() || trace.curves.front().y.size() != trace.frequency.size() || trace.frequency.empty())
        return std::nan("");
    const auto near = std::min_element(trace.frequency.begin(), trace.frequency.end(), [f](double a, double b) {
        return std::abs(std::log(a / f)) < std::abs(std::log(b / f));
    });
    return trace.curves.front().y[static_cast<std::size_t>(near - trace.frequency.begin())];
}

}  // namespace

bool Pull::operator<(const Pull& other) const noexcept {
    return std::abs(share) > std::abs(other.share);
}

std::vector<Lever> levers(const Design& d, const catalog::Catalog& shop) {
    Collector to(d, shop);
    for (int p = 0; p < static_cast<int>(d.coil.size()); ++p) {
        const auto& order = d.coil[static_cast<std::size_t>(p)].order;
        for (int i = 0; i < static_cast<int>(order.size()); ++i)
            addItem(to, order[static_cast<std::size_t>(i)], {p, i});
    }
    for (std::size_t w = 0; w < d.windings.size(); ++w) addWire(to, d, shop, w);
    addCore(to, d);
    return to.take();
}

std::vector<Pull> pulls(const Design& d, const catalog::Catalog& shop, const AnswerPtr& now, const std::string& figure,
                        const std::stop_token& stop) {
    const auto* current = now->figure(figure);
    if (current == nullptr || !std::isfinite(current->value) || current->value == 0) return {};
    const std::string name = figure.substr(0, figure.find('@'));
    Watched watched;
    watched.question = {current->hookUp.empty() ? now->hookUp : current->hookUp, {1000.0}, false};
    watched.now = current->value;
    watched.decibels = units::inDecibels(current->unit);
    watched.read = [name](const Answer& then) {
        const auto* found = then.figure(name);
        return found ? found->value : std::nan("");
    };
    return ranked(d, shop, now, watched, stop);
}

std::vector<Pull> pulls(const Design& d, const catalog::Catalog& shop, const AnswerPtr& now, const Spot& spot,
                        const std::stop_token& stop) {
    constexpr double beside = 1.01;  // neighbours for what is a slope, as a delay is
    const auto* trace = now->trace(spot.trace);
    if (trace == nullptr || !trace->axis.isFrequency() || trace->curves.empty() || !(spot.frequency > 0)) return {};
    const bool relative = spot.trace == "response";
    Watched watched;
    watched.question = {now->hookUp, {spot.frequency / beside, spot.frequency, spot.frequency * beside, 1000.0}, false};
    std::sort(watched.question.frequencies.begin(), watched.question.frequencies.end());
    watched.decibels = relative || units::inDecibels(trace->curves.front().kind);
    watched.read = [spot, relative](const Answer& then) {
        const auto* found = then.trace(spot.trace);
        if (found == nullptr) return std::nan("");
        return valueNear(*found, spot.frequency) - (relative ? valueNear(*found, 1000) : 0);
    };
    watched.now = watched.read(*now);
    if (!std::isfinite(watched.now) || (!watched.decibels && watched.now == 0)) return {};
    return ranked(d, shop, now, watched, stop);
}

std::string sentence(const std::vector<Pull>& pulls, units::Kind kind, std::size_t count) {
    if (pulls.empty()) return "no quantity of the design moves it";
    std::string words = "moved most by ";
    for (std::size_t k = 0; k < std::min(count, pulls.size()); ++k) {
        const double share = pulls[k].share;
        std::string by =
            units::write(units::inDecibels(kind) ? units::Kind::Decibel : units::Kind::Share, std::abs(share), 2);
        by.insert(0, share < 0 ? "−" : "+");
        words += (k > 0 ? ", " : "") + pulls[k].lever.words + (k == 0 ? " (1 % more: " : " (") + by + ")";
    }
    return words;
}

}  // namespace analysis
