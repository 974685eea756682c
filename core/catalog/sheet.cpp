// SPDX-License-Identifier: GPL-3.0-or-later
#include "catalog/sheet.h"

namespace catalog {

double pathLength(const Sheet& sheet) noexcept {
    if (sheet.pathLength > 0) return sheet.pathLength;
    const double along = sheet.windowHeight + sheet.yoke;
    // A shell's tongue carries two halves of the flux, each with its mid-line a quarter from the tongue's edge.
    const double legs =
        sheet.cut == SheetCut::UI ? (sheet.tongue + sheet.outerLeg) / 2 : sheet.tongue / 4 + sheet.outerLeg / 2;
    return 2 * along + 2 * (sheet.windowWidth + legs);
}

double overallWidth(const Sheet& sheet) noexcept {
    const int sides = sheet.cut == SheetCut::UI ? 1 : 2;
    return sheet.tongue + sides * (sheet.windowWidth + sheet.outerLeg);
}

double overallHeight(const Sheet& sheet) noexcept {
    return sheet.windowHeight + 2 * sheet.yoke;
}

double windowArea(const Sheet& sheet) noexcept {
    return sheet.windowWidth * sheet.windowHeight;
}

}  // namespace catalog
