// SPDX-License-Identifier: GPL-3.0-or-later
// Tables of a measured lot of sheets.
#include <cmath>

#include "exchange/lot_file.h"
#include "reader.h"

namespace {

void read(std::string_view bytes) {
    const auto lot = fuzz::unlessRefused("f", [&] { return exchange::readLot(bytes, "f"); });
    if (!lot) return;
    for (const auto& point : lot->points)
        fuzz::require(std::isfinite(point.field) && std::isfinite(point.flux) && point.field > 0 && point.flux > 0,
                      "a point that nobody measured");
}

const fuzz::Registered lots("lot", read);

}  // namespace
