// SPDX-License-Identifier: GPL-3.0-or-later
// Totals of noise, noise figure, and the ratio that an amplifier would like.
#include <cmath>

#include "analysis/figure_making.h"
#include "analysis/noise_view.h"
#include "units/text.h"

namespace analysis {

void addNoiseFigures(const HookUpContext& context, std::vector<units::Figure>& figures) {
    const auto view = NoiseView::of(context.design, context.solved);
    if (!view) return;
    const auto ports = view->ports();
    const std::string source = view->source();
    const auto density = [&](double f) { return view->density(f); };
    const double flat = bandNoise(density, [](double) { return 1.0; }), weighted = bandNoise(density, aWeighting);
    figures.push_back(hookUpFigure(context, "output_noise_20kHz", units::dbuOfVolts(flat), "dBu", 0.5, source, ports));
    figures.push_back(hookUpFigure(context, "output_noise_A", units::dbuOfVolts(weighted), "dBu", 0.5,
                                   source + "; A-weighting of IEC 61672-1 over 20 Hz to 20 kHz", ports));
    const double figure = view->figure(1000);
    if (!std::isfinite(figure)) return;
    figures.push_back(hookUpFigure(context, "noise_figure_1kHz", figure, "dB", 0.2, source, ports));
    if (const auto factor = view->ratioFactor(1000))
        figures.push_back(hookUpFigure(context, "best_ratio_factor", *factor, "", 0.1,
                                       "sqrt((e_n / i_n) / |Z|) at the amplifier at 1 kHz: multiply the ratio by this "
                                       "for the least noise of this amplifier",
                                       ports));
}

}  // namespace analysis
