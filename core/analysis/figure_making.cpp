// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/figure_making.h"

#include <algorithm>
#include <cmath>

#include "units/joined.h"

namespace analysis {

const std::vector<DesignFamily>& designFamilies() {
    static const std::vector<DesignFamily> families{
        {addCoilFigures, true}, {addInductanceFigures}, {addCapacitanceFigures}};
    return families;
}

const std::vector<HookUpFamily>& hookUpFamilies() {
    static const std::vector<HookUpFamily> families{
        {addLevelFigures, true},      {addBandFigures, true},     {addImpedanceFigures, true},
        {addInputCapacitanceFigures}, {addHeadroomFigures, true}, {addDirectFigures},
        {addNoiseFigures, true},      {addBalanceFigures},        {addHumFigures}};
    return families;
}

units::Figure hookUpFigure(const HookUpContext& context, const std::string& quantity, double value,
                           const std::string& unit, double uncertainty, const std::string& source,
                           std::vector<std::string> ports) {
    units::Figure f{quantity + context.suffix,  value,           unit, uncertainty, source, true, "",
                    context.solved.hookUp.name, std::move(ports)};
    f.why = fieldDoubts(context.stages);
    const auto& curves = context.solved.outputs;
    if (curves.carries() && !curves.converged())
        f.why += (f.why.empty() ? "" : "; ") +
                 units::joined({"curves between ", std::to_string(curves.solves()), " solved frequencies are within ",
                                std::to_string(std::lround(std::ceil(100 * curves.error()))), " %"});
    f.valid = f.why.empty();
    if (!std::isfinite(value)) {
        f.valid = false;
        f.why = "does not occur between 0.1 Hz and 1 MHz";
    }
    return f;
}

std::string fieldDoubts(const Answer::Stages& stages) {
    std::string why;
    const auto add = [&](bool valid, const std::string& text) {
        if (!valid && !text.empty()) why += (why.empty() ? "" : "; ") + text;
    };
    add(stages.cut.leakage->valid, stages.cut.leakage->why);
    add(stages.capacitance->valid, stages.capacitance->why);
    add(stages.core->valid, stages.core->why);
    for (const auto& fill : stages.build->fill)
        for (const auto& problem : fill.problems) add(false, problem);
    return why;
}

namespace {
constexpr double stepsPerDecade = 200;
}

Crossing firstFall(const std::function<double(double)>& level, double from, double to, double limit) {
    const bool up = to > from;
    const double step = std::pow(10.0, (up ? 1 : -1) / stepsPerDecade);
    for (double f = from; up ? f < to : f > to;) {
        double next = f * step;
        if (up ? next > to : next < to) next = to;
        if (level(next) < limit) {
            double good = f, bad = next;
            for (int k = 0; k < 60 && std::abs(bad / good - 1) > 1e-9; ++k) {
                const double middle = std::sqrt(good * bad);
                (level(middle) < limit ? bad : good) = middle;
            }
            return {true, std::sqrt(good * bad)};
        }
        f = next;
    }
    return {};
}

Crossing firstMaximum(const std::function<double(double)>& level, double from, double to, double prominence) {
    const double step = std::pow(10.0, 1 / stepsPerDecade);
    double best = -1e300, bestAt = from;
    double before = level(from);
    bool rising = false;
    for (double f = from * step; f <= to; f *= step) {
        const double now = level(f);
        if (now > before) rising = true;
        if (now > best) {
            best = now;
            bestAt = f;
        }
        if (rising && best - now > prominence) {
            double low = bestAt / step, high = bestAt * step;  // golden section on log f
            for (int k = 0; k < 60; ++k) {
                const double a = low * std::pow(high / low, 0.381966), b = low * std::pow(high / low, 0.618034);
                (level(a) > level(b) ? high : low) = level(a) > level(b) ? b : a;
            }
            return {true, std::sqrt(low * high)};
        }
        if (!rising) {
            best = now;
            bestAt = f;
        }
        before = now;
    }
    return {};
}

}  // namespace analysis
