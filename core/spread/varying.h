// SPDX-License-Identifier: GPL-3.0-or-later
// What varies from unit to unit of a design.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "coil/coil_build.h"
#include "design/design.h"
#include "json/record.h"
#include "spread/law.h"

namespace spread {

/// One number of a design, or of a part that it is made of, that varies.
struct Varying {
    std::string name;   ///< for people: "bare diameter of wire AWG 38 single"
    std::string place;  ///< JSON pointer into the design, its stored parts under "/parts"
    double nominal = 0;
    Law law;
    double lotShare = 0;  ///< of the variance of its deviate that a lot has in common
    std::string lot;      ///< those of the same name share their lot's deviate
    std::string source;   ///< of the width
    std::string status;   ///< "seen", "common practice, no source", "from memory"; "this design"
    bool operator==(const Varying&) const = default;
};

/// A design with all that varies in it. Tolerances that the design's own quantities carry rule over the shop's, and
/// make anything else vary too.
struct Variation {
    /// The nominal with a copy of every part, and turns a layer held: a unit is wound by the nominal's winding sheet.
    design::DesignPtr base;
    std::vector<Varying> all;
};
[[nodiscard]] Variation variationOf(const design::Design& nominal, const catalog::Catalog& shop,
                                    const catalog::Tolerances& tolerances);

/// What each is where nothing deviates.
[[nodiscard]] std::vector<double> nominals(const Variation& variation);

/// One unit's design, set anew for each: a copy of the base with its places found once.
class UnitDesign {
public:
    explicit UnitDesign(const Variation& variation);
    ~UnitDesign();
    UnitDesign(const UnitDesign&) = delete;
    UnitDesign& operator=(const UnitDesign&) = delete;
    /// The design with a value for each that varies, kept within what the design's field allows. A wire's overall
    /// diameter grows with the bare one and with its enamel.
    const design::Design& with(const std::vector<double>& values);
    /// The same for standard normal deviates.
    const design::Design& deviating(const std::vector<double>& deviates);

private:
    struct Place;
    const Variation& variation_;
    std::unique_ptr<design::Design> design_;
    std::vector<Place> places_;
};

}  // namespace spread
