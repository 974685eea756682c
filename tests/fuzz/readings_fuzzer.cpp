// SPDX-License-Identifier: GPL-3.0-or-later
// Readings of a sample.
#include <cmath>

#include "exchange/readings_file.h"
#include "reader.h"

namespace {

void read(std::string_view bytes) {
    static const std::vector<units::Figure> known{{"inductance_10Hz.P", 4.7, "H", 0, "", true, "", "", {}},
                                                  {"low_3dB", 5, "Hz", 0, "", true, "", "", {}},
                                                  {"gain_1kHz", 17, "dB", 0, "", true, "", "", {}}};
    const auto readings = fuzz::unlessRefused("f", [&] { return exchange::readReadings(bytes, "f", known); });
    if (!readings) return;
    fuzz::require(!readings->empty(), "nothing read");
    for (const auto& r : *readings)
        fuzz::require(std::isfinite(r.value) && std::isfinite(r.doubt) && r.doubt >= 0, "a reading that is no number");
}

const fuzz::Registered readings("readings", read);

}  // namespace
