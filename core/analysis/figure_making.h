// SPDX-License-Identifier: GPL-3.0-or-later
// How a figure is added: each family of figures is one function in one file, listed in `figureFamilies`.
#pragma once

#include <functional>

#include "analysis/stages.h"

namespace analysis {

/// What figures of the design as a whole are made from.
struct DesignContext {
    const design::Design& design;
    const catalog::Catalog& shop;
    Pipeline& pipeline;
    [[nodiscard]] const Answer::Stages& stages() const { return pipeline.stages(); }
};

/// What figures of one hook-up are made from. `suffix` is "@name", empty for the hook-up that is shown.
struct HookUpContext {
    const design::Design& design;
    const Solved& solved;
    const Answer::Stages& stages;
    std::string suffix;
};

/// A function that makes some figures.
template <class Context>
struct Family {
    using Maker = void (*)(const Context&, std::vector<units::Figure>&);
    Maker make = nullptr;
    /// It reads the coil build, or outputs, ports and core alone: it can do without fields and whole networks.
    bool light = false;
    Family(Maker function, bool needsNoFields = false) : make(function), light(needsNoFields) {}  // NOLINT: a function
    void operator()(const Context& context, std::vector<units::Figure>& figures) const { make(context, figures); }
};
using DesignFamily = Family<DesignContext>;
using HookUpFamily = Family<HookUpContext>;
[[nodiscard]] const std::vector<DesignFamily>& designFamilies();
[[nodiscard]] const std::vector<HookUpFamily>& hookUpFamilies();

/// A figure of a hook-up with its names filled in; marked not valid when `value` is not finite.
[[nodiscard]] units::Figure hookUpFigure(const HookUpContext& context, const std::string& quantity, double value,
                                         const std::string& unit, double uncertainty, const std::string& source,
                                         std::vector<std::string> ports);

/// Why results of the fields are outside validity, "" if they are not.
[[nodiscard]] std::string fieldDoubts(const Answer::Stages& stages);

/// Interpolated crossing and peaks of a level in dB over frequency.
struct Crossing {
    bool found = false;
    double frequency = 0;
};
/// First frequency from `from` towards `to` (either way) where `level` falls through `limit`; 200 steps a decade, then
/// bisection.
[[nodiscard]] Crossing firstFall(const std::function<double(double)>& level, double from, double to, double limit);
/// First maximum above `from` up to `to` that stands at least `prominence` above the next minimum.
[[nodiscard]] Crossing firstMaximum(const std::function<double(double)>& level, double from, double to,
                                    double prominence);

// The families, a file each.
void addCoilFigures(const DesignContext& context, std::vector<units::Figure>& figures);
void addInductanceFigures(const DesignContext& context, std::vector<units::Figure>& figures);
void addCapacitanceFigures(const DesignContext& context, std::vector<units::Figure>& figures);
void addLevelFigures(const HookUpContext& context, std::vector<units::Figure>& figures);
void addBandFigures(const HookUpContext& context, std::vector<units::Figure>& figures);
void addImpedanceFigures(const HookUpContext& context, std::vector<units::Figure>& figures);
void addInputCapacitanceFigures(const HookUpContext& context, std::vector<units::Figure>& figures);
void addHeadroomFigures(const HookUpContext& context, std::vector<units::Figure>& figures);
void addDirectFigures(const HookUpContext& context, std::vector<units::Figure>& figures);
void addNoiseFigures(const HookUpContext& context, std::vector<units::Figure>& figures);
void addBalanceFigures(const HookUpContext& context, std::vector<units::Figure>& figures);
void addHumFigures(const HookUpContext& context, std::vector<units::Figure>& figures);

}  // namespace analysis
