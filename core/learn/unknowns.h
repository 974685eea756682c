// SPDX-License-Identifier: GPL-3.0-or-later
// The few numbers of a design that measured readings may teach.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "catalog/catalog.h"
#include "spread/varying.h"

namespace learn {

/// What can be fitted, by the shop's tolerances of the same names: permeability, joint_gap, sheet_thickness (paper and
/// film as they lie in the coil), permittivity (of insulation and enamel), tightness, wire_stretch.
inline constexpr std::array<const char*, 6> unknownKeys{"permeability", "joint_gap", "sheet_thickness",
                                                        "permittivity", "tightness", "wire_stretch"};

/// A factor on some of a design's numbers; of permeability, one for each alloy.
struct Unknown {
    std::string key;
    std::string words;                 ///< "permeability of nickel-80"
    std::vector<std::size_t> members;  ///< of the variation's numbers
    double spread = 0;                 ///< standard deviation of the factor's logarithm, by the shop's tolerances
    double most = 0;                   ///< its logarithm lies within this to either side
};

/// `keys` empty: all. What the design does not have (no gap, no paper) is not there. The logarithm goes as far as eight
/// standard deviations, at least to a factor 1.2.
[[nodiscard]] std::vector<Unknown> unknownsOf(const spread::Variation& variation, const std::vector<std::string>& keys);

/// The design with each unknown's numbers times its factor: permittivities in its stored parts, with the fit named as
/// their source. Throws nothing; a part that stands in the design itself keeps its number and is named in `left`.
[[nodiscard]] design::DesignPtr withFactors(const design::Design& design, const catalog::Catalog& shop,
                                            const spread::Variation& variation, const std::vector<Unknown>& unknowns,
                                            const std::vector<double>& factors, std::vector<std::string>& left);

}  // namespace learn
