// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/headroom.h"

#include <cmath>
#include <limits>

#include "analysis/distortion.h"
#include "analysis/figure_making.h"
#include "magnetics/saturation.h"
#include "units/text.h"

namespace analysis {

double designKneeFlux(const design::Design& design, const Answer::Stages& stages) {
    return magnetics::kneeFlux(*stages.core, std::abs(directFieldOf(design, *stages.core)));
}

MaximumLevel maximumLevel(const design::Design& design, const Solved& solved, const Answer::Stages& stages,
                          double kneeFlux, double frequency) {
    const int driven = solved.driven();
    const auto layout = solved.network.layout();
    const auto outputs = solved.at(frequency);
    const double perTurn = magnetics::voltageAtFlux(frequency, 1, stages.core->area, kneeFlux);
    double volts = perTurn / std::abs(outputs(layout.coreVoltage(driven)));  // of source EMF
    if (design.brief.levelAt == design::LevelAt::Input) volts *= std::abs(outputs(layout.voltage(driven, driven)));
    if (design.brief.levelAt == design::LevelAt::Output && solved.observed() >= 0)
        volts *= std::abs(outputs(layout.voltage(driven, solved.observed())));
    if (!std::isfinite(volts)) return {std::numeric_limits<double>::infinity(), "none"};
    return {units::dbuOfVolts(volts), "core saturation"};
}

void addHeadroomFigures(const HookUpContext& context, std::vector<units::Figure>& figures) {
    const int driven = context.solved.driven();
    if (driven < 0) return;
    const auto& port = context.solved.network.circuit().ports[static_cast<std::size_t>(driven)];
    if (port.common) return;
    const double knee = designKneeFlux(context.design, context.stages);
    const auto maximum = maximumLevel(context.design, context.solved, context.stages, knee, 20);
    const char* source = "V = 4.443 f N A B at the core with the stack's saturation knee (criterion of our own)";
    auto level = hookUpFigure(context, "maximum_level_20Hz", maximum.dbu, "dBu", 2, source, {port.name});
    auto room = hookUpFigure(context, "headroom_20Hz", maximum.dbu - context.design.brief.operatingLevel, "dB", 2,
                             source, {port.name});
    if (!std::isfinite(maximum.dbu)) level.why = room.why = "the alloy's saturation is not known";
    figures.push_back(level);
    figures.push_back(room);
}

}  // namespace analysis
