// SPDX-License-Identifier: GPL-3.0-or-later
// Inductance of straight leads against Neumann's integral by quadrature (scripts/leads.py).
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>

#include "coil/lead_outs.h"

namespace leads_reference_test {

TEST(LeadReference, StraightRoundWiresAlongEachOther) {
    const auto file = nlohmann::json::parse(std::ifstream(COILWRIGHT_SOURCE_DIR "/tests/references/leads.json"));
    for (const auto& c : file.at("cases")) {
        const double length = c.at("length"), radius = c.at("radius"), distance = c.at("distance");
        const double own = c.at("own"), mutual = c.at("mutual");
        EXPECT_NEAR(coil::straightWireInductance(length, radius), own, 5e-4 * own) << c.dump();
        EXPECT_NEAR(coil::parallelWiresInductance(length, distance), mutual, 1e-8 * mutual) << c.dump();
    }
}

}  // namespace leads_reference_test
