// SPDX-License-Identifier: GPL-3.0-or-later
// What the voltage test of a design rests on: what the customer asked for, and where the insulation is thinnest.
#pragma once

#include <string>
#include <vector>

#include "catalog/catalog.h"
#include "design/design.h"

namespace shop {

/// Every voltage that the brief's words on isolation name, V, as they stand: "250 V", "1.5 kV", "500 Vrms".
[[nodiscard]] std::vector<double> statedVoltages(const std::string& words);

/// Solid insulation between two neighbours in the winding order.
struct BarrierBetween {
    std::string a, b;      ///< winding or shield
    double thickness = 0;  ///< of all plies, m; 0: wire enamel alone
    int plies = 0;
    double margin = 0;     ///< least distance of the two from a flange, m: the way round the plies' edge
    std::string material;  ///< of the plies, as the catalog calls it
    bool operator==(const BarrierBetween&) const = default;
};

/// Neighbours of different windings, or of a winding and a shield, from the core outward in every chamber; between two
/// chambers stands a wall of the bobbin, which is no ply and is left out.
[[nodiscard]] std::vector<BarrierBetween> barriersOf(const design::Design& design, const catalog::Catalog& shop);

/// The thinnest that a winding has towards any other conductor, or null. The catalog knows no electric strength, so
/// thickness decides; of two alike, the one with less margin.
[[nodiscard]] const BarrierBetween* weakestOf(const std::vector<BarrierBetween>& all, const std::string& winding);

}  // namespace shop
