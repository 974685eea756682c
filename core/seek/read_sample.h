// SPDX-License-Identifier: GPL-3.0-or-later
// A sample as its readings tell it.
#pragma once

#include <stop_token>
#include <string>
#include <vector>

#include "catalog/shop_tolerance.h"
#include "seek/respin.h"
#include "spread/figure_read.h"
#include "units/figure.h"

namespace seek {

struct ReadSample {
    Sample sample;                        ///< the unit is null where it was stopped
    std::vector<std::string> readings;    ///< each as read, as designed, and as the sample is taken to be
    std::vector<std::string> deviations;  ///< what is off, in standard deviations, greatest first; a few
    std::vector<std::string> doubts;      ///< sentences on why the sample may be another one
};

/// The likeliest unit (`spread::likeliestUnit`) of `recipe` with these readings. `figures`: of the recipe. Throws
/// units::BadInput for a figure that is none of them.
[[nodiscard]] ReadSample readSample(const design::DesignPtr& recipe, const catalog::Catalog& shop,
                                    const catalog::Tolerances& tolerances,
                                    const std::vector<spread::FigureRead>& readings,
                                    const std::vector<units::Figure>& figures, const std::stop_token& stop = {});

}  // namespace seek
