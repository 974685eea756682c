// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright fit DESIGN MEASURED [--readings F.csv] [--serial S] [--only KEY,KEY] [--to F.coilwright] …
#include <algorithm>

#include "commands/learned.h"
#include "commands/measured_file.h"
#include "commands/verb.h"
#include "design/edit.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "exchange/write_file.h"
#include "learn/fit.h"
#include "learn/unknowns.h"
#include "units/csv_cell.h"
#include "units/fault.h"
#include "units/joined.h"

namespace commands {

namespace {

std::vector<std::string> keysOf(const Arguments& arguments) {
    const std::string text = arguments.option("--only");
    if (text.empty()) return {};
    auto keys = units::csvCells(text);
    std::string allowed;
    for (const char* key : learn::unknownKeys) allowed += (allowed.empty() ? "" : ", ") + std::string(key);
    for (const auto& key : keys)
        if (std::find(learn::unknownKeys.begin(), learn::unknownKeys.end(), key) == learn::unknownKeys.end())
            refuse("--only", '"' + key + '"', "some of " + allowed);
    return keys;
}

/// Whether a file is a table of unit records: a column of its first line is called serial.
bool isUnitTable(const std::string& text) {
    for (const auto line : units::csvLines(text)) {
        if (line.empty() || line.front() == '#') continue;
        for (const char delimiter : {',', ';', '\t'}) {
            const auto cells = units::csvCells(line, delimiter);
            if (std::find(cells.begin(), cells.end(), "serial") != cells.end()) return true;
        }
        return false;
    }
    return false;
}

/// What was measured, gathered for the fit.
struct Gathered {
    std::vector<learn::Point> points;
    std::string text;  ///< remarks
    bool curves = false, readings = false;
};

void takeCurves(const std::string& path, const design::Design& design, const design::Fixture& fixture,
                const Arguments& arguments, Gathered& all) {
    constexpr double leastAngle = 0.5;  // degree, standard uncertainty (common practice, no source)
    const design::HookUp& hookUp = hookUpNamed(design, knownHookUp(design, arguments.option("--hook-up")));
    (void)sideOfPort(hookUp, arguments.option("--port"));  // a port that is not there is refused
    const auto wanted = curveAsked(arguments);
    const auto relativeTo = positiveOption(arguments, "--relative-to", units::Kind::Frequency);
    auto file = readMeasuredFile(path, hookUp, arguments);
    for (const auto& remark : file.remarks) all.text += remark + "\n";
    for (const auto& curve : file.curves) {
        if (wanted && curve.kind != *wanted) continue;
        const double doubt = curve.kind == measured::CurveKind::Response ? fixture.doubts.level / learn::coverage95
                             : curve.kind == measured::CurveKind::Impedance
                                 ? fixture.doubts.impedance.share / learn::coverage95
                                 : leastAngle;
        auto points = learn::pointsOf(curve, design, hookUp, arguments.option("--port"), doubt, relativeTo);
        if (points.empty()) all.text += units::joined({"a curve of ", measured::word(curve.kind), " is not fitted\n"});
        all.points.insert(all.points.end(), std::make_move_iterator(points.begin()),
                          std::make_move_iterator(points.end()));
    }
    all.curves = true;
}

void takeReadings(const std::string& path, const Opened& opened, const Arguments& arguments, Gathered& all) {
    const auto units = readUnitsOf(path, arguments.option("--serial"));
    if (units.size() > 1)
        units::refuse(path, std::to_string(units.size()) + " units",
                      "one, or --serial S of one: a lot is fitted unit by unit");
    const Planned planned = plannedFor(*opened.design, opened.shop, arguments);
    const auto probes = learn::planProbes(*opened.design, planned.prediction, planned.plan, opened.shop,
                                          shopTolerances(places()), planned.fixture);
    auto points = learn::pointsOf(probes, units.front().readings);
    if (points.empty())
        units::refuse(path, "no reading that the test plan of this design names",
                      "tests by the names in its limits: dcr.P, inductance_10Hz.P");
    all.points.insert(all.points.end(), std::make_move_iterator(points.begin()), std::make_move_iterator(points.end()));
    all.readings = true;
}

Gathered gathered(const Opened& opened, const Arguments& arguments) {
    Gathered all;
    std::vector<std::string> files{arguments.operands[1]};
    if (const std::string more = arguments.option("--readings"); !more.empty()) files.push_back(more);
    for (const auto& file : files)
        if (isUnitTable(exchange::readFile(file)))
            takeReadings(file, opened, arguments, all);
        else
            takeCurves(file, *opened.design, fixtureAsked(arguments), arguments, all);
    return all;
}

}  // namespace

std::string fitMeasured(const std::vector<std::string>& typed) {
    Grammar grammar{{"DESIGN", "MEASURED"}, {}, measuredOptions};
    grammar.options.insert({"--readings", "--serial", "--only", "--to", "--fixture"});
    const Arguments arguments = sorted(typed, grammar);
    const auto keys = keysOf(arguments);
    const Opened opened = openDesign(arguments.operands[0]);
    const Gathered measured = gathered(opened, arguments);
    // Readings are those of the plan's last stage, filled where the design has a filling.
    const auto design = design::changed(*opened.design, [&](design::Design& d) {
        if (measured.readings) d.conditions.filled = d.filling.has_value();
    });
    const auto fitted =
        learn::fitted(*design, measured.points, keys, opened.shop, shopTolerances(places()), measured.curves);
    std::string text = measured.text + learn::fittedWords(fitted);
    const std::string to = arguments.option("--to");
    if (to.empty()) return text + "nothing was changed: --to F.coilwright writes the design with these factors\n";
    const auto learned = design::changed(*fitted.design, [&](design::Design& d) {
        d.conditions = opened.design->conditions;
        d.note += units::joined(
            {d.note.empty() ? "" : "\n", "Fitted to ", arguments.operands[1], ": ", learn::fittedWords(fitted)});
    });
    exchange::writeFile(to, exchange::writeDesign(*learned, opened.shop));
    return text +
           units::joined({"the design with these factors in ", to, "; ", arguments.operands[0], " is as it was\n"});
}

}  // namespace commands
