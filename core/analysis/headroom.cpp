// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/headroom.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "analysis/copper.h"
#include "analysis/direct_current.h"
#include "analysis/figure_making.h"
#include "magnetics/saturation.h"
#include "network/in_parallel.h"
#include "network/port_networks.h"
#include "units/text.h"

namespace analysis {

namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();

/// Level at the brief's point for a source EMF of `volts`.
double levelOf(const design::Design& design, const Solved& solved, const network::ComplexVector& outputs,
               double volts) {
    const int driven = solved.driven();
    const auto layout = solved.network.layout();
    if (design.brief.levelAt == design::LevelAt::Input) volts *= std::abs(outputs(layout.voltage(driven, driven)));
    if (design.brief.levelAt == design::LevelAt::Output && solved.observed() >= 0)
        volts *= std::abs(outputs(layout.voltage(driven, solved.observed())));
    return std::isfinite(volts) ? units::dbuOfVolts(volts) : infinite;
}

/// Loss by the conditions' direct currents in their windings, W.
double directLoss(const design::Design& design, const coil::CoilBuild& build) {
    double loss = 0;
    for (const auto& direct : design.conditions.directCurrents)
        if (const auto* winding = design::winding(design, direct.winding))
            loss += direct.current * direct.current * copperOf(design, build, *winding).resistance;
    return loss;
}

}  // namespace

double lossForRise(double rise, double surface) noexcept {
    constexpr double perSquareMetre = 1e4;  // cm2
    return std::pow(rise / 450, 1 / 0.826) * surface * perSquareMetre;
}

double surfaceOf(const coil::CoilBuild& b) noexcept {
    const double width =
        b.legs == 1 ? b.tongue + 2 * b.windowWidth + 2 * b.outerLeg : b.tongue + b.windowWidth + b.outerLeg;
    const double height = b.windowHeight + 2 * b.yoke;
    const double box = 2 * (width * height + (width + height) * b.stack);
    // A coil stands out by the window's width, or by half of it where two share the window.
    const double out = b.legs == 1 ? b.windowWidth : b.windowWidth / 2;
    return box + 4 * b.legs * out * (b.tongue + 2 * out + b.windowHeight);
}

bool asksForDistortion(const design::Design& design) {
    return design.brief.maximumLevel.distortion.has_value();
}

double designKneeFlux(const design::Design& design, const Solved& solved, const Answer::Stages& stages) {
    return magnetics::kneeFlux(*stages.core, std::abs(directFieldOf(design, solved, stages)));
}

double kneeLevel(const design::Design& design, const Solved& solved, const Answer::Stages& stages, double kneeFlux,
                 double frequency) {
    const auto outputs = solved.at(frequency);
    const double perTurn = magnetics::voltageAtFlux(frequency, 1, stages.core->area, kneeFlux);
    return levelOf(design, solved, outputs,
                   perTurn / std::abs(outputs(solved.network.layout().coreVoltage(solved.driven()))));
}

LevelLimits::LevelLimits(const design::Design& design, const Solved& solved, const Answer::Stages& stages,
                         const LargeSignal* large, double from, double to)
    : design_(design),
      solved_(solved),
      stages_(stages),
      large_(large),
      kneeFlux_(designKneeFlux(design, solved, stages)) {
    const auto& asked = design.brief.maximumLevel;
    if (asked.rise)
        powerAllowed_ =
            std::max(0.0, lossForRise(*asked.rise, surfaceOf(*stages.build)) - directLoss(design, *stages.build));
    if (!asked.distortion || large == nullptr || !(from < to)) return;
    const auto grid = logarithmicGrid(from, to, 25);
    offsets_.resize(grid.size());
    network::inParallel(grid.size(), [&](std::size_t i) {
        const double knee = kneeLevel(design, solved, stages, kneeFlux_, grid[i]);
        offsets_[i] = {std::log(grid[i]), distortionLevel(grid[i], knee) - (std::isfinite(knee) ? knee : 0)};
    });
}

double LevelLimits::distortionLevel(double frequency, double knee) const {
    const double operating = design_.brief.operatingLevel;
    const double middle = std::isfinite(knee) ? knee : operating;
    return levelOfDistortion(*large_, large_->linear(frequency), *design_.brief.maximumLevel.distortion / 100,
                             middle - 60, middle + 6);
}

double LevelLimits::distortionNear(double frequency, double knee) const {
    if (offsets_.empty()) return distortionLevel(frequency, knee);
    const double base = std::isfinite(knee) ? knee : 0, x = std::log(frequency);
    const auto next = std::lower_bound(offsets_.begin(), offsets_.end(), x,
                                       [](const Offset& o, double value) { return o.logFrequency < value; });
    if (next == offsets_.begin()) return base + next->db;
    if (next == offsets_.end()) return base + offsets_.back().db;
    const Offset &low = *std::prev(next), &high = *next;
    if (!std::isfinite(low.db) || !std::isfinite(high.db)) return base + std::max(low.db, high.db);
    return base + low.db + (high.db - low.db) * (x - low.logFrequency) / (high.logFrequency - low.logFrequency);
}

/// EMF at which wire and core lose what is allowed, V; small signal.
double LevelLimits::heatingEmf(double frequency) const {
    const int driven = solved_.driven();
    const auto layout = solved_.network.layout();
    const auto outputs = solved_.at(frequency);
    const auto& circuit = solved_.network.circuit();
    double watts =
        std::norm(outputs(layout.voltage(driven, driven))) * (1.0 / outputs(layout.impedance(driven))).real();
    for (int p = 0; p < static_cast<int>(circuit.ports.size()); ++p)
        if (p != driven)
            watts -=
                std::norm(outputs(layout.voltage(driven, p))) * network::portAdmittance(circuit, p, frequency).real();
    return watts > 0 ? std::sqrt(powerAllowed_ / watts) : infinite;
}

MaximumLevel LevelLimits::at(double frequency) const {
    const auto& asked = design_.brief.maximumLevel;
    MaximumLevel lowest{infinite, "none"};
    const auto take = [&](double dbu, const char* limit) {
        if (dbu < lowest.dbu) lowest = {dbu, limit};
    };
    const double knee = kneeLevel(design_, solved_, stages_, kneeFlux_, frequency);
    if (asked.knee) take(knee, "core saturation");
    if (asked.distortion && large_ != nullptr) take(distortionNear(frequency, knee), "distortion");
    if (asked.sourceLevel)
        take(levelOf(design_, solved_, solved_.at(frequency), units::voltsOfDbu(*asked.sourceLevel)), "source");
    if (asked.rise) take(levelOf(design_, solved_, solved_.at(frequency), heatingEmf(frequency)), "heating");
    return lowest;
}

std::string LevelLimits::source() const {
    const auto& asked = design_.brief.maximumLevel;
    std::string words;
    const auto add = [&](bool on, const std::string& text) {
        if (on) words += (words.empty() ? "" : "; ") + text;
    };
    add(asked.knee, "V = 4.443 f N A B at the core with the stack's saturation knee (criterion of our own)");
    add(asked.distortion.has_value(),
        units::shortest(asked.distortion.value_or(0)) + " % of harmonics by harmonic balance of the core's loop");
    add(asked.sourceLevel.has_value(), "the source's greatest EMF through the linear network");
    add(asked.rise.has_value(), "rise = 450 (P/A)^0.826 by loss of the linear network (McLyman, from memory)");
    return words;
}

void addHeadroomFigures(const HookUpContext& context, std::vector<units::Figure>& figures) {
    const int driven = context.solved.driven();
    if (driven < 0 || !drivesCore(context.solved)) return;
    const auto& port = context.solved.network.circuit().ports[static_cast<std::size_t>(driven)];
    std::optional<LargeSignal> large;
    if (asksForDistortion(context.design)) large.emplace(context.design, context.solved, context.stages, false);
    const LevelLimits limits(context.design, context.solved, context.stages, large ? &*large : nullptr);
    const MaximumLevel maximum = limits.at(20);
    const double uncertainty = std::string_view(maximum.limit) == "distortion" ? 6 : 2;
    auto level =
        hookUpFigure(context, "maximum_level_20Hz", maximum.dbu, "dBu", uncertainty, limits.source(), {port.name});
    auto room = hookUpFigure(context, "headroom_20Hz", maximum.dbu - context.design.brief.operatingLevel, "dB",
                             uncertainty, limits.source(), {port.name});
    if (!std::isfinite(maximum.dbu))
        level.why = room.why =
            context.design.brief.maximumLevel.knee ? "the alloy's saturation is not known" : "no criterion is reached";
    else if (std::string_view(maximum.limit) != "core saturation")
        for (auto* figure : {&level, &room})
            figure->why += std::string(figure->why.empty() ? "" : "; ") + maximum.limit + " rules";
    figures.push_back(level);
    figures.push_back(room);
}

}  // namespace analysis
