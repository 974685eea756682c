// SPDX-License-Identifier: GPL-3.0-or-later
// What a design's coil build asks of a machine: said once more, by code that knows nothing of the writer.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "coil/coil_build.h"
#include "replay/machine.h"

namespace replay {

/// A layer as the guide sees it.
struct DueLayer {
    double first = 0, turns = 0;  ///< of the step
    double begin = 0, end = 0;    ///< edge at which it begins and the other, m
    double pitch = 0;             ///< m
    double wire = 0;              ///< length of one turn, all wires, m
    double turnLength = 0;        ///< mean turn, m
    bool guided = true;           ///< false: foil, fed by hand
    /// Middle of the wire after `done` turns: half a pitch from the edges at the ends.
    [[nodiscard]] double middle(double done) const;
};

/// A stop, or a wrapped pin, that must come.
struct DueStop {
    std::string kind;
    double after = 0;
    int pin = 0;  ///< > 0: the machine wraps it itself, at these places
    double cross = 0, traverse = 0;
};

/// One item of the winding order.
struct DueStep {
    std::string name;                      ///< "step 1.3, P.a"
    std::vector<design::ItemIndex> items;  ///< several where wires are wound in one hand
    int chamber = 1;
    double turns = 0;
    int sense = 1;
    double chamberLow = 0, chamberHigh = 0;
    std::vector<DueLayer> layers;
    std::vector<DueStop> stops;
};

/// A pin of the bobbin in the coil's coordinates.
struct PinStand {
    int number = 0;
    double cross = 0, traverse = 0;
};

/// What stands in the guide's way.
struct Surroundings {
    double flangeTop = 0;                          ///< m from the tongue
    std::vector<std::pair<double, double>> rooms;  ///< chambers: low, high
    std::vector<PinStand> pins;
};

struct Expected {
    std::vector<DueStep> steps;
    Surroundings around;
};

/// For the coil on `leg` of a checked design.
[[nodiscard]] Expected expected(const design::Design& design, const coil::CoilBuild& build,
                                const catalog::Catalog& shop, const Machine& machine, int leg);

}  // namespace replay
