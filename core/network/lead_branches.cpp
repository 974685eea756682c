// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/lead_branches.h"

#include <algorithm>
#include <cmath>

#include "coil/lead_outs.h"

namespace network {
namespace {

double distance(const coil::LeadOut& a, const coil::LeadOut& b) {
    const double apart = a.atPin && b.atPin ? std::hypot(a.pinX - b.pinX, a.pinY - b.pinY) : coil::leadSpacing;
    return std::max(apart, (a.diameter + b.diameter) / 2);
}

}  // namespace

std::string coilSide(const coil::CoilBuild& build, const std::string& winding, const std::string& terminal) {
    const bool has = std::any_of(build.leads.begin(), build.leads.end(), [&](const auto& lead) {
        return lead.winding == winding && lead.terminal == terminal;
    });
    return has ? winding + "/lead of " + terminal : terminal;
}

ExtraBranches leadBranches(const coil::CoilBuild& build, Nodes& nodes, double warm, bool skinEffect) {
    const auto& leads = build.leads;
    const auto count = static_cast<Eigen::Index>(leads.size());
    ExtraBranches extra;
    extra.resistance.resize(count);
    extra.bareDiameter.resize(count);
    extra.inductance = Matrix::Zero(count, count);
    for (Eigen::Index k = 0; k < count; ++k) {
        const auto& lead = leads[static_cast<std::size_t>(k)];
        extra.ends.push_back({nodes.index(lead.terminal), nodes.index(coilSide(build, lead.winding, lead.terminal))});
        extra.resistance(k) = lead.resistance20 * warm;
        extra.bareDiameter(k) = skinEffect ? lead.diameter : 0;
        extra.inductance(k, k) = coil::straightWireInductance(lead.length, lead.diameter / 2);
        for (Eigen::Index i = 0; i < k; ++i) {
            const auto& other = leads[static_cast<std::size_t>(i)];
            if (other.winding != lead.winding) continue;
            extra.inductance(i, k) = extra.inductance(k, i) =
                coil::parallelWiresInductance(std::min(lead.length, other.length), distance(lead, other));
        }
    }
    return extra;
}

}  // namespace network
