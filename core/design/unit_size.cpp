// SPDX-License-Identifier: GPL-3.0-or-later
#include "design/unit_size.h"

#include <algorithm>
#include <limits>

namespace design {

Footprint footprint(const UnitSize& size) noexcept {
    return {std::max(size.x, size.y), std::min(size.x, size.y), size.z};
}

Footprint footprint(const Size& allowed) noexcept {
    const auto side = [](double given) { return given > 0 ? given : std::numeric_limits<double>::infinity(); };
    return footprint(UnitSize{side(allowed.length), side(allowed.width), side(allowed.height)});
}

UnitSize bareSize(const Core& core, const catalog::Sheet& sheet) {
    const bool shell = core.kind == CoreKind::Shell;
    const double depth = shell ? sheet.windowWidth.value : sheet.windowWidth / 2;
    const double across = catalog::overallWidth(sheet);
    return {shell ? across : across + 2 * depth, catalog::overallHeight(sheet), core.height + 2 * depth};
}

UnitSize unitSize(const Design& design, const catalog::Catalog& shop) {
    UnitSize size;
    if (const auto* sheet = part(design, design.core.sheet, shop)) size = bareSize(design.core, *sheet);
    for (const FittingUse& use : design.fittings) {
        const auto* fitting = part(design, use.fitting, shop);
        if (fitting == nullptr || fitting->form == catalog::FittingForm::Bolt) continue;
        size.x = std::max<double>(size.x, fitting->width);
        size.y = std::max<double>(size.y, fitting->length);
        size.z = std::max<double>(size.z, fitting->height);
    }
    return size;
}

}  // namespace design
