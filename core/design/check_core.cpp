// SPDX-License-Identifier: GPL-3.0-or-later
// Faults of the core, and of every reference to the catalog.
#include <cmath>
#include <map>

#include "catalog/entry_check.h"
#include "design/inspection.h"
#include "design/walk.h"
#include "units/joined.h"

namespace design {

namespace {

/// Says which map of the catalog a reference looks in.
constexpr const char* mapName(const catalog::PartRef<catalog::Sheet>&) {
    return "sheets";
}
constexpr const char* mapName(const catalog::PartRef<catalog::Alloy>&) {
    return "alloys";
}
constexpr const char* mapName(const catalog::PartRef<catalog::Wire>&) {
    return "wires";
}
constexpr const char* mapName(const catalog::PartRef<catalog::Bobbin>&) {
    return "bobbins";
}
constexpr const char* mapName(const catalog::PartRef<catalog::Insulation>&) {
    return "insulation";
}
constexpr const char* mapName(const catalog::PartRef<catalog::Fitting>&) {
    return "fittings";
}
constexpr const char* mapName(const catalog::PartRef<catalog::Sundry>&) {
    return "sundries";
}

struct UnknownParts {
    const Inspection& in;

    template <class T>
    void record(const std::string&, T&) const {}
    template <class T>
    void operator()(const std::string&, T&, const json::Allowed&) const {}
    template <class Part>
    void operator()(const std::string& at, catalog::PartRef<Part>& ref, const json::Allowed&) const {
        if (ref.empty() || in.part(ref)) return;
        in.fault(at, Inspection::quoted(ref.key),
                 std::string("a key of the catalog's ") + mapName(ref) + ", or an entry in curly brackets");
    }
};

struct InlineParts {
    const Inspection& in;

    template <class T>
    void record(const std::string&, T&) const {}
    template <class T>
    void operator()(const std::string&, T&, const json::Allowed&) const {}
    template <class Part>
    void operator()(const std::string& at, catalog::PartRef<Part>& ref, const json::Allowed&) const {
        if (ref.own) entry(at, *ref.own);
    }

    template <class Part>
    void entry(const std::string& at, const Part& part) const {
        catalog::check(part, in.file + ": " + at, in.faults);
    }
    // A film's stock thicknesses matter where it is chosen from, not here: every ply says its own.
    void entry(const std::string&, const catalog::Insulation&) const {}
    template <class Part>
    void stored(const std::string& list, const std::map<std::string, Part>& parts) const {
        for (const auto& [key, part] : parts) entry(units::joined({"/parts/", list, "/", key, "/entry"}), part);
    }
};

void checkStack(const Inspection& in) {
    const auto& stack = in.design.core.stack;
    if (stack.empty()) return in.fault("/core/stack", "an empty list", "sheets of at least one alloy");
    double sum = 0;
    for (std::size_t i = 0; i < stack.size(); ++i) {
        sum += stack[i].share;
        if (stack[i].alloy.empty()) in.fault("/core" + Inspection::at("stack", i, "alloy"), "nothing", "an alloy");
    }
    if (std::abs(sum - 1) > 1e-6)
        in.fault("/core/stack", "shares that add up to " + units::shortest(sum), "shares that add up to 1");
}

/// Cans go round the core, one round the other. Spheres stand in for them: the least that encloses the core is its
/// space diagonal.
void checkCans(const Inspection& in) {
    const auto& core = in.design.core;
    double inside = 0;
    std::string what = "the core";
    if (const auto* sheet = in.part(core.sheet)) {
        const bool shell = core.kind == CoreKind::Shell;
        const double width = sheet->tongue + (shell ? 2 : 1) * (sheet->windowWidth + sheet->outerLeg);
        const double diagonal = std::hypot(width, sheet->windowHeight + 2 * sheet->yoke, core.height.value);
        inside = std::ceil(diagonal * 1e5) / 1e5;  // to be read
    }
    for (std::size_t i = 0; i < core.cans.size(); ++i) {
        const ScreenCan& can = core.cans[i];
        const std::string at = "/core" + Inspection::at("cans", i);
        const double least = inside + 2 * can.thickness;
        if (can.diameter < least * (1 - 1e-9))
            in.fault(at + "/diameter", Inspection::length(can.diameter),
                     units::joined({"at least ", Inspection::length(least), ": ", what, " (",
                                    Inspection::length(inside), " across) and its own sheet"}));
        inside = can.diameter;
        what = "can " + std::to_string(i + 1);
    }
}

}  // namespace

void checkParts(const Inspection& in) {
    UnknownParts unknown{in};
    walk(in.design, unknown);
    InlineParts own{in};
    walk(in.design, own);
    own.stored("sheets", in.design.parts.sheets);
    own.stored("alloys", in.design.parts.alloys);
    own.stored("wires", in.design.parts.wires);
    own.stored("bobbins", in.design.parts.bobbins);
    own.stored("fittings", in.design.parts.fittings);
    own.stored("sundries", in.design.parts.sundries);
}

void checkCore(const Inspection& in) {
    const Design& d = in.design;
    checkStack(in);
    checkCans(in);
    if (d.core.sheet.empty()) in.fault("/core/sheet", "nothing", "a sheet");
    if (d.bobbin.empty()) in.fault("/bobbin", "nothing", "a bobbin");
    if (const auto* sheet = in.part(d.core.sheet)) {
        const bool twoLegs = sheet->cut == catalog::SheetCut::UI;
        if (twoLegs && d.core.kind == CoreKind::Shell)
            in.fault("/core/kind", "\"shell\" with a UI sheet", "\"two-leg\" with a UI sheet");
        if (!twoLegs && d.core.kind == CoreKind::TwoLeg)
            in.fault("/core/kind", "\"two-leg\" with an EI or M sheet", "\"shell\" with an EI or M sheet");
    }
}

}  // namespace design
