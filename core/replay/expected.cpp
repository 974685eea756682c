// SPDX-License-Identifier: GPL-3.0-or-later
#include "replay/expected.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "units/joined.h"

namespace replay {

namespace {

using design::End;

/// Walks the coil build's layers, which stand in winding sequence, and gathers them by item.
class Gathering {
public:
    Gathering(const design::Design& design, const coil::CoilBuild& build, const catalog::Catalog& shop,
              const Machine& machine)
        : design_(design), build_(build), machine_(machine), bobbin_(design::part(design, design.bobbin, shop)) {
        for (const auto& layer : build.layers) layersOf_[layer.item].push_back(&layer);
    }

    std::vector<DueStep> steps(int leg) {
        std::vector<DueStep> all;
        for (int p = 0; p < static_cast<int>(design_.coil.size()); ++p)
            if (design_.coil[static_cast<std::size_t>(p)].leg == leg) addPlace(p, all);
        return all;
    }

private:
    void addPlace(int p, std::vector<DueStep>& all) {
        const auto& order = design_.coil[static_cast<std::size_t>(p)].order;
        std::string hand;
        for (int i = 0; i < static_cast<int>(order.size()); ++i) {
            const auto& item = order[static_cast<std::size_t>(i)];
            const auto* section = item.section();
            const bool joins = section != nullptr && !section->hand.empty() && section->hand == hand;
            hand = section != nullptr ? section->hand : "";
            if (const auto* barrier = item.barrier(); barrier != nullptr && barrier->ply.thickness <= 0) continue;
            if (!joins) all.push_back(step(p, i));
            all.back().items.push_back({p, i});
            if (const auto* shield = item.shield()) {
                all.back().name += ", shield " + shield->name;
                due(all.back(), "shield", 0);
            } else if (section == nullptr) {
                all.back().name += ", insulation";
                due(all.back(), "paper", 0);
            } else {
                addSection(*section, {p, i}, joins, all.back());
            }
        }
    }

    void addSection(const design::Section& section, const design::ItemIndex& at, bool joins, DueStep& step) {
        wires_.push_back(wire(section, at));
        step.name += units::joined({joins ? " and " : ", ", section.label()});
        const auto& order = design_.coil[static_cast<std::size_t>(at.place)].order;
        const auto behind = static_cast<std::size_t>(at.item) + 1;
        const auto* next = behind < order.size() ? order[behind].section() : nullptr;
        if (section.hand.empty() || next == nullptr || next->hand != section.hand) close(step);
    }

    struct Wire {
        const design::Section* section;
        const design::Winding* winding;
        std::vector<const coil::Layer*> layers;
    };
    using Item = design::ItemIndex;

    DueStep step(int p, int i) const {
        DueStep step;
        step.name = units::joined({"step ", std::to_string(p + 1), ".", std::to_string(i + 1)});
        step.chamber = design_.coil[static_cast<std::size_t>(p)].chamber;
        const auto chamber = static_cast<std::size_t>(step.chamber) - 1;
        if (bobbin_ != nullptr && chamber < bobbin_->chambers.size()) {
            step.chamberLow = bobbin_->chambers[chamber].low;
            step.chamberHigh = bobbin_->chambers[chamber].high;
        }
        return step;
    }
    static void due(DueStep& step, const char* kind, double after) { step.stops.push_back({kind, after, 0, 0, 0}); }
    Wire wire(const design::Section& section, const Item& at) {
        return {&section, design::winding(design_, section.winding), layersOf_[at]};
    }

    /// All wires of the hand are known: what they ask for together.
    void close(DueStep& step) {
        const auto& first = *wires_.front().section;
        step.sense = first.reversed ? -1 : 1;
        loading(step);
        std::map<int, DueLayer> layers;
        for (const Wire& w : wires_) {
            ends(step, w, true, 0);
            double done = 0;
            std::map<int, DueLayer> own;
            for (const auto* piece : w.layers) {
                done += piece->turns;
                if (!piece->tapAfter.empty()) due(step, "tap", done);
                join(own[piece->number], *piece);
            }
            ends(step, w, false, done);
            for (const auto& [number, layer] : own) {
                const double wire = layers[number].wire + layer.wire * layer.turns;  // m in all, until divided below
                if (layer.turns > layers[number].turns) layers[number] = layer;
                layers[number].wire = wire;
            }
        }
        for (auto& [number, layer] : layers) {
            layer.first = step.turns;
            layer.wire /= layer.turns;
            step.turns += layer.turns;
            if (number > 1 && first.interlayer && first.interlayer->thickness > 0 && first.lay != design::Lay::Random)
                due(step, "paper", layer.first);
            step.layers.push_back(layer);
        }
        wires_.clear();
    }
    static void join(DueLayer& layer, const coil::Layer& piece) {
        const bool low = piece.begins == End::Low;
        if (layer.turns == 0) {
            layer.begin = low ? piece.box.y0 : piece.box.y1;
            layer.pitch = piece.pitch;
            layer.guided = !piece.conductor.foil;
            layer.wire = piece.turnLength * piece.conductor.strands;
            layer.turnLength = piece.turnLength;
        }
        layer.end = low ? piece.box.y1 : piece.box.y0;
        layer.turns += piece.turns;
    }
    void loading(DueStep& step) {
        std::vector<std::pair<std::string, int>> now;
        bool foil = false;
        for (const Wire& w : wires_) {
            foil = foil || w.winding->foil.has_value();
            now.emplace_back(w.winding->wire.key, w.winding->strands);
        }
        if (foil)
            due(step, "foil", 0);
        else if (now != onMachine_)
            due(step, "wire", 0);
        onMachine_ = foil ? decltype(now){} : now;
    }
    /// Where a wire begins or ends: a pin, a lead, or an inner end that is kept.
    void ends(DueStep& step, const Wire& w, bool start, double after) const {
        const auto both = design::sectionEnds(design_, *w.section);
        const std::string& name = start ? both.start : both.finish;
        for (const auto& terminal : design_.terminals) {
            if (terminal.name != name) continue;
            const bool foil = w.winding->foil.has_value();
            if (!foil && !w.layers.empty() && w.layers.front()->conductor.bare < machine_.thinWire)
                due(step, "splice", after);
            due(step, terminal.pin > 0 ? "pin" : "lead", after);
            if (terminal.pin > 0 && !foil && machine_.wrapCode >= 0) standAt(step.stops.back(), terminal.pin);
            return;
        }
        due(step, "lead", after);
    }
    void standAt(DueStop& stop, int pin) const {
        if (bobbin_ == nullptr) return;
        for (const auto& p : bobbin_->pins)
            if (p.number == pin) {
                stop.pin = pin;
                stop.cross = p.x;
                stop.traverse = build_.windowHeight / 2 + p.y;
            }
    }

    const design::Design& design_;
    const coil::CoilBuild& build_;
    const Machine& machine_;
    const catalog::Bobbin* bobbin_;
    std::map<Item, std::vector<const coil::Layer*>> layersOf_;
    std::vector<Wire> wires_;
    std::vector<std::pair<std::string, int>> onMachine_;
};

}  // namespace

double DueLayer::middle(double done) const {
    const double width = std::abs(end - begin), half = std::min(pitch, width) / 2;
    const double along = std::min(half + done * pitch, width - half);
    return begin < end ? begin + along : begin - along;
}

Expected expected(const design::Design& design, const coil::CoilBuild& build, const catalog::Catalog& shop,
                  const Machine& machine, int leg) {
    Expected all;
    all.steps = Gathering(design, build, shop, machine).steps(leg);
    all.around.flangeTop = build.legs == 2 ? build.windowWidth / 2 : build.windowWidth;
    if (const auto* bobbin = design::part(design, design.bobbin, shop)) {
        for (const auto& chamber : bobbin->chambers) all.around.rooms.emplace_back(chamber.low, chamber.high);
        for (const auto& pin : bobbin->pins)
            all.around.pins.push_back({pin.number, pin.x, build.windowHeight / 2 + pin.y});
    }
    return all;
}

}  // namespace replay
