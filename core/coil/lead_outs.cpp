// SPDX-License-Identifier: GPL-3.0-or-later
#include "coil/lead_outs.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "coil/wire_resistance.h"

namespace coil {
namespace {

using std::numbers::pi;
constexpr double twoTenMillionths = 2e-7;  // mu0 / 2 pi, H/m

const design::Terminal* terminalOf(const design::Design& design, const std::string& name) {
    const auto at =
        std::find_if(design.terminals.begin(), design.terminals.end(), [&](const auto& t) { return t.name == name; });
    return at == design.terminals.end() ? nullptr : &*at;
}

class Leads {
public:
    Leads(const design::Design& design, const catalog::Catalog& shop, const CoilBuild& build)
        : design_(design), bobbin_(design::part(design, design.bobbin, shop)), build_(build) {}

    std::vector<LeadOut> all() {
        for (std::size_t k = 0; k < build_.layers.size(); ++k) {
            const Layer& layer = build_.layers[k];
            const auto* section = design_.coil[static_cast<std::size_t>(layer.item.place)]
                                      .order[static_cast<std::size_t>(layer.item.item)]
                                      .section();
            const auto ends = design::sectionEnds(design_, *section);
            const bool low = layer.begins == design::End::Low;
            if (isEdge(k, true)) add(layer, ends.start, low);
            if (isEdge(k, false)) add(layer, ends.finish, !low);
            if (!layer.tapAfter.empty()) add(layer, layer.tapAfter, !low);
        }
        return std::move(leads_);
    }

private:
    /// True for the first (or last) layer of its section.
    bool isEdge(std::size_t k, bool first) const {
        for (std::size_t i = 0; i < build_.layers.size(); ++i)
            if (build_.layers[i].item == build_.layers[k].item && (first ? i < k : i > k)) return false;
        return true;
    }

    void add(const Layer& layer, const std::string& name, bool atLow) {
        const auto* terminal = terminalOf(design_, name);
        if (terminal == nullptr || std::any_of(leads_.begin(), leads_.end(), [&](const LeadOut& l) {
                return l.winding == layer.winding && l.terminal == name;
            }))
            return;
        LeadOut lead;
        lead.winding = layer.winding;
        lead.terminal = name;
        const auto& c = layer.conductor;
        double area = c.foil ? c.bare * layer.box.height() : pi / 4 * c.bare * c.bare * c.strands;
        lead.length = terminal->leadLength;
        if (terminal->pin > 0)
            lead.length += toPin(layer, *terminal, atLow, lead);
        else
            area = std::max(area, flexibleLeadArea);
        if (lead.length <= 0 || area <= 0) return;
        lead.diameter = std::sqrt(4 * area / pi);
        lead.resistance20 = conductorResistance(lead.length, area, 20);
        leads_.push_back(std::move(lead));
    }

    double toPin(const Layer& layer, const design::Terminal& terminal, bool atLow, LeadOut& lead) const {
        if (bobbin_ == nullptr) return 0;
        const auto pin = std::find_if(bobbin_->pins.begin(), bobbin_->pins.end(),
                                      [&](const auto& p) { return p.number == terminal.pin; });
        if (pin == bobbin_->pins.end()) return 0;
        lead.atPin = true;
        lead.pinX = pin->x;
        lead.pinY = pin->y;
        const double edge = build_.legs == 2 ? build_.windowWidth / 2 : build_.windowWidth;
        const bool across = (pin->row == "low" && !atLow) || (pin->row == "high" && atLow);
        return std::max(0.0, edge - layer.box.middle()) + std::abs(pin->x) + (across ? layer.box.height() : 0);
    }

    const design::Design& design_;
    const catalog::Bobbin* bobbin_;
    const CoilBuild& build_;
    std::vector<LeadOut> leads_;
};

}  // namespace

std::vector<LeadOut> leadOuts(const design::Design& design, const catalog::Catalog& shop, const CoilBuild& build) {
    return Leads(design, shop, build).all();
}

double straightWireInductance(double length, double radius) noexcept {
    return parallelWiresInductance(length, radius) + twoTenMillionths * length / 4;
}

double parallelWiresInductance(double length, double distance) noexcept {
    const double r = distance / length;
    return twoTenMillionths * length * (std::asinh(1 / r) - std::sqrt(1 + r * r) + r);
}

}  // namespace coil
