// SPDX-License-Identifier: GPL-3.0-or-later
// Faults of the core, and of every reference to the catalog.
#include <cmath>

#include "design/inspection.h"
#include "design/walk.h"

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
    void entry(const std::string&, const Part&) const {}
    void entry(const std::string& at, const catalog::Wire& w) const {
        if (w.overallDiameter < w.bareDiameter)
            in.fault(at + "/overall_diameter", Inspection::length(w.overallDiameter),
                     "at least the bare diameter, " + Inspection::length(w.bareDiameter));
    }
    void entry(const std::string& at, const catalog::Bobbin& b) const {
        for (std::size_t i = 0; i < b.chambers.size(); ++i) {
            const std::string here = at + Inspection::at("chambers", i);
            if (!(b.chambers[i].low < b.chambers[i].high))
                in.fault(here + "/high", Inspection::length(b.chambers[i].high),
                         "above the chamber's low end, " + Inspection::length(b.chambers[i].low));
            else if (i > 0 && b.chambers[i].low < b.chambers[i - 1].high)
                in.fault(here + "/low", Inspection::length(b.chambers[i].low),
                         "at least the end of the chamber before, " + Inspection::length(b.chambers[i - 1].high));
        }
        for (std::size_t i = 0; i < b.pins.size(); ++i)
            for (std::size_t j = 0; j < i; ++j)
                if (b.pins[i].number == b.pins[j].number)
                    in.fault(at + Inspection::at("pins", i, "number"),
                             std::to_string(b.pins[i].number) + " a second time", "a number that no other pin has");
    }
    void entry(const std::string& at, const catalog::Alloy& a) const {
        for (std::size_t i = 1; i < a.curve.size(); ++i)
            if (!(a.curve[i].field > a.curve[i - 1].field && a.curve[i].flux > a.curve[i - 1].flux))
                in.fault(at + Inspection::at("curve", i), "a point that does not rise",
                         "more field and more flux density than the point before");
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

}  // namespace

void checkParts(const Inspection& in) {
    UnknownParts unknown{in};
    walk(in.design, unknown);
    InlineParts own{in};
    walk(in.design, own);
}

void checkCore(const Inspection& in) {
    const Design& d = in.design;
    checkStack(in);
    if (d.core.sheet.empty()) in.fault("/core/sheet", "nothing", "a sheet");
    if (d.bobbin.empty()) in.fault("/bobbin", "nothing", "a bobbin");
    if (const auto* sheet = in.part(d.core.sheet)) {
        const bool twoLegs = sheet->cut == catalog::SheetCut::UI;
        if (twoLegs && d.core.kind == CoreKind::Shell)
            in.fault("/core/kind", "\"shell\" with a UI sheet", "\"two-leg\" with a UI sheet");
        if (!twoLegs && d.core.kind == CoreKind::TwoLeg)
            in.fault("/core/kind", "\"two-leg\" with an EI or M sheet", "\"shell\" with an EI or M sheet");
    }
    if (const auto* bobbin = in.part(d.bobbin); bobbin && bobbin->chambers.empty())
        in.fault("/bobbin", "a bobbin without chambers", "a bobbin with at least one chamber");
}

}  // namespace design
