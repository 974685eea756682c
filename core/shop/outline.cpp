// SPDX-License-Identifier: GPL-3.0-or-later
// Outer sizes and pins.
#include <algorithm>

#include "catalog/sheet.h"
#include "design/unit_size.h"
#include "shop/datasheet_parts.h"

namespace shop {

Outline outlineOf(const design::Design& design, const catalog::Catalog& shop) {
    Outline outline;
    if (const catalog::Sheet* sheet = design::part(design, design.core.sheet, shop)) {
        const bool shell = design.core.kind == design::CoreKind::Shell;
        // A coil may fill its window from wall to wall; two coils share one.
        const double depth = shell ? sheet->windowWidth.value : sheet->windowWidth / 2;
        outline.coreWidth = catalog::overallWidth(*sheet);
        outline.coreLength = catalog::overallHeight(*sheet);
        outline.coreHeight = design.core.height;
        outline.coilWidth = shell ? sheet->tongue + 2 * depth : outline.coreWidth + 2 * depth;
        outline.coilLength = sheet->windowHeight;
        outline.coilHeight = outline.coreHeight + 2 * depth;
    }
    const design::UnitSize size = design::unitSize(design, shop);
    outline.width = size.x;
    outline.length = size.y;
    outline.height = size.z;
    if (const catalog::Bobbin* bobbin = design::part(design, design.bobbin, shop)) {
        outline.pitch = bobbin->pins.empty() ? 0 : bobbin->pinPitch.value;
        double low = 0, high = 0;
        for (const catalog::Pin& pin : bobbin->pins) {
            const bool used = std::any_of(design.terminals.begin(), design.terminals.end(),
                                          [&](const design::Terminal& t) { return t.pin == pin.number; });
            low = outline.pins.empty() ? pin.y : std::min(low, pin.y);
            high = outline.pins.empty() ? pin.y : std::max(high, pin.y);
            outline.pins.push_back({pin.number, pin.x, pin.y, used});
        }
        outline.rowDistance = high - low;
    }
    return outline;
}

}  // namespace shop
