// SPDX-License-Identifier: GPL-3.0-or-later
// Faults of the brief and the conditions.
#include <set>

#include "design/inspection.h"

namespace design {

namespace {

void checkHookUpName(const Inspection& in, const std::string& pointer, const std::string& name) {
    if (!name.empty() && !hookUp(in.design, name))
        in.fault(pointer, Inspection::quoted(name), "the name of a hook-up in /hook_ups");
}

void checkPromise(const Inspection& in, const Promise& p, const std::string& at) {
    if (p.figure.empty()) in.fault(at + "/figure", "\"\"", "the name of a figure, as in \"high_3dB_first\"");
    if (p.figure.find('@') != std::string::npos)
        in.fault(at + "/figure", Inspection::quoted(p.figure),
                 "a figure without \"@\": the hook-up has a key of its own");
    checkHookUpName(in, at + "/hook_up", p.hookUp);
    if (!p.port.empty() && !port(in.design, p.port))
        in.fault(at + "/port", Inspection::quoted(p.port), "the name of a port in /ports");
    if (!p.atLeast && !p.atMost) in.fault(at, "a promise without a limit", "\"at_least\", \"at_most\" or both");
    if (p.atLeast && p.atMost && *p.atLeast > *p.atMost)
        in.fault(at + "/at_most", units::shortest(*p.atMost), "at least \"at_least\", " + units::shortest(*p.atLeast));
}

void checkMask(const Inspection& in, const Mask& m, const std::string& at) {
    if (m.trace.empty()) in.fault(at + "/trace", "\"\"", "the name of a trace, as in \"response\"");
    checkHookUpName(in, at + "/hook_up", m.hookUp);
    if (m.points.size() < 2) in.fault(at + "/points", "fewer than two points", "at least two points");
    for (std::size_t i = 0; i < m.points.size(); ++i) {
        const MaskPoint& now = m.points[i];
        const std::string here = at + Inspection::at("points", i);
        if (i > 0 && now.frequency < m.points[i - 1].frequency)
            in.fault(here, units::shortest(now.frequency) + " Hz",
                     "a frequency not below the one before, " + units::shortest(m.points[i - 1].frequency) + " Hz");
        if (now.low && now.high && *now.low > *now.high)
            in.fault(here, "low " + units::shortest(*now.low) + " above high " + units::shortest(*now.high),
                     "a low limit not above the high one");
    }
}

void checkLevelCriterion(const Inspection& in, const LevelCriterion& c) {
    if (!c.knee && !c.distortion && !c.sourceLevel && !c.rise)
        in.fault("/brief/maximum_level", "no criterion",
                 "at least one of \"saturation_knee\", \"distortion_percent\", \"source_level_dBu\" and "
                 "\"temperature_rise\"");
}

void checkPhantom(const Inspection& in, const PhantomFeed& phantom) {
    const std::string at = "/conditions/phantom";
    if (!port(in.design, phantom.port))
        in.fault(at + "/port", Inspection::quoted(phantom.port), "the name of a port in /ports");
    in.terminal(at + "/centre_tap", phantom.centreTap);
}

}  // namespace

void checkBrief(const Inspection& in) {
    const Brief& b = in.design.brief;
    checkLevelCriterion(in, b.maximumLevel);
    for (std::size_t i = 0; i < b.promises.size(); ++i)
        checkPromise(in, b.promises[i], "/brief" + Inspection::at("promises", i));
    for (std::size_t i = 0; i < b.masks.size(); ++i) checkMask(in, b.masks[i], "/brief" + Inspection::at("masks", i));
}

void checkConditions(const Inspection& in) {
    const Conditions& c = in.design.conditions;
    if (c.phantom) checkPhantom(in, *c.phantom);
    if (c.filled && !in.design.filling)
        in.fault("/conditions/filled", "true", "false, as there is no \"filling\" that the coil could be soaked in");
    std::set<std::string> seen;
    for (std::size_t i = 0; i < c.directCurrents.size(); ++i) {
        const std::string at = "/conditions" + Inspection::at("direct_currents", i, "winding");
        const std::string& name = c.directCurrents[i].winding;
        if (!winding(in.design, name))
            in.fault(at, Inspection::quoted(name), "the name of a winding in /windings");
        else if (!seen.insert(name).second)
            in.fault(at, Inspection::quoted(name) + " a second time", "each winding once");
    }
    if (in.design.filling && in.design.filling->compound.empty())
        in.fault("/filling/compound", "nothing", "an insulation of form varnish or compound");
}

}  // namespace design
