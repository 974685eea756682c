// SPDX-License-Identifier: GPL-3.0-or-later
// Hum at the observed port: its level in a stated field, what two legs cancel, what cans keep away.
#include <algorithm>
#include <cmath>

#include "analysis/figure_making.h"
#include "analysis/hum.h"
#include "analysis/most_rejection.h"
#include "units/text.h"

namespace analysis {

namespace {

constexpr double mains = 50, tesla = 1e-6;

/// dB. The core's share against finite elements is within 1 dB (tests/references/core_in_field.json); how even the
/// field is and how near iron or a chassis stands is not known (common practice, no source).
constexpr double shapeUncertainty = 3;
/// dB; a real can's lid, seams and anneal take so much of the closed shell's screening (common practice, no source).
constexpr double canUncertainty = 6;

const char* const source =
    "uniform field of 1 uT at 50 Hz along the legs, the worst axis; the core as an ellipsoid of its outline's volume";

}  // namespace

void addHumFigures(const HookUpContext& context, std::vector<units::Figure>& figures) {
    const auto pickup = humPickup(context.solved, context.stages, mains);
    if (!pickup) return;
    const auto& circuit = context.solved.network.circuit();
    const std::vector<std::string> ports{circuit.ports[static_cast<std::size_t>(context.solved.observed())].name};
    const auto& cans = context.design.core.cans;
    const double screening = shellScreening(shellsOf(context.design.core));
    const double apart = pickup->apart(), least = apart * std::pow(10.0, -mostHumCancelled / 20);
    const bool equal = context.stages.build->legs == 2 && apart > 0 && pickup->left() < least;
    const double volts = tesla * std::max(pickup->left(), least) / screening;
    auto hum = hookUpFigure(context, "hum_1uT_50Hz", units::dbuOfVolts(volts), "dBu",
                            cans.empty() ? shapeUncertainty : canUncertainty, source, ports);
    if (equal && hum.valid) hum.why = "at most: the coils cancel, legs and field are taken as 1 % unequal";
    figures.push_back(std::move(hum));
    if (context.stages.build->legs == 2 && apart > 0) {
        const double decibels = equal ? mostHumCancelled : 20 * std::log10(apart / pickup->left());
        auto cancelled = hookUpFigure(context, "hum_cancelled", decibels, "dB", shapeUncertainty,
                                      "pickup of both legs added over what is left of it in a uniform field", ports);
        if (equal && cancelled.valid) cancelled.why = "over 40 dB: unequal legs and an uneven field rule there";
        figures.push_back(std::move(cancelled));
    }
    if (cans.empty()) return;
    auto can = hookUpFigure(context, "screening_50Hz", 20 * std::log10(screening), "dB", canUncertainty,
                            "closed spherical shells in a uniform field", ports);
    if (can.valid) can.why = "an upper bound: the lid's gap and strained sheet let in more";
    figures.push_back(std::move(can));
}

}  // namespace analysis
