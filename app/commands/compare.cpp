// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright compare DESIGN MEASURED [--hook-up NAME] [--port NAME] [--curve KIND] [--csv F] [--columns F,V,A]
//     [--emf V] [--relative-to HZ]
#include <algorithm>
#include <array>
#include <cmath>

#include "analysis/answer.h"
#include "commands/arguments.h"
#include "commands/verb.h"
#include "exchange/measured_table.h"
#include "exchange/read_file.h"
#include "exchange/touchstone_reader.h"
#include "exchange/write_file.h"
#include "measured/comparison.h"
#include "measured/terminated.h"
#include "units/csv_cell.h"
#include "units/fault.h"
#include "units/joined.h"
#include "units/text.h"

namespace commands {

namespace {

using measured::CurveKind;

constexpr std::array<std::pair<const char*, CurveKind>, 6> kinds{{{"response", CurveKind::Response},
                                                                  {"phase", CurveKind::Phase},
                                                                  {"impedance", CurveKind::Impedance},
                                                                  {"angle", CurveKind::ImpedanceAngle},
                                                                  {"distortion", CurveKind::Distortion},
                                                                  {"noise", CurveKind::Noise}}};

std::optional<CurveKind> kindOf(const std::string& name) {
    if (name.empty()) return {};
    std::string all;
    for (const auto& [word, kind] : kinds) {
        if (name == word) return kind;
        all += (all.empty() ? "" : ", ") + std::string(word);
    }
    refuse("--curve", '"' + name + '"', "one of " + all);
}

std::optional<double> quantity(const Arguments& arguments, const std::string& option, units::Kind kind) {
    const std::string text = arguments.option(option);
    if (text.empty()) return {};
    try {
        const double value = units::read(kind, text);
        if (value > 0) return value;
    } catch (const units::BadInput& bad) {
        refuse(option, bad.faults.front().found, bad.faults.front().allowed);
    }
    refuse(option, text, "a value above 0");
}

/// "1,3" or "1,3,4": columns of frequency, value and angle, counted from 1.
void takeColumns(const std::string& text, exchange::PickingWish& wish) {
    if (text.empty()) return;
    std::vector<std::size_t> columns;
    for (const auto& cell : units::csvCells(text)) {
        const auto number = units::csvNumber(cell);
        if (!number || *number < 1 || *number > exchange::mostTableColumns || *number != std::floor(*number))
            refuse("--columns", '"' + text + '"', "two or three numbers of columns, counted from 1, as 1,3,4");
        columns.push_back(static_cast<std::size_t>(*number) - 1);
    }
    if (columns.size() < 2 || columns.size() > 3)
        refuse("--columns", '"' + text + '"', "two or three numbers of columns, counted from 1, as 1,3,4");
    wish.frequency = columns[0];
    wish.value = columns[1];
    if (columns.size() == 3) wish.second = columns[2];
}

struct Measured {
    std::vector<measured::MeasuredCurve> curves;
    std::vector<std::string> remarks;
};

bool isTouchstone(const std::string& path) {
    const auto dot = path.rfind('.');
    std::string ending = dot == std::string::npos ? "" : path.substr(dot + 1);
    std::transform(ending.begin(), ending.end(), ending.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return ending == "ts" || (ending.size() >= 3 && ending.front() == 's' && ending.back() == 'p' &&
                              ending.find_first_not_of("0123456789", 1) == ending.size() - 1);
}

Measured readMeasured(const std::string& path, const design::HookUp& hookUp, const Arguments& arguments) {
    const std::string text = exchange::readFile(path);
    if (isTouchstone(path)) {
        const auto data = exchange::readTouchstone(text, path);
        return {measured::terminated(data, hookUp, arguments.option("--port"), path).curves, data.remarks};
    }
    exchange::PickingWish wish;
    takeColumns(arguments.option("--columns"), wish);
    wish.emf = quantity(arguments, "--emf", units::Kind::Voltage);
    if (const auto kind = kindOf(arguments.option("--curve")))
        wish.kind = kind == CurveKind::Phase            ? CurveKind::Response
                    : kind == CurveKind::ImpedanceAngle ? CurveKind::Impedance
                                                        : *kind;
    const auto picking = exchange::guessedPicking(text, path, wish);
    auto table = exchange::readMeasuredTable(text, path, picking);
    return {std::move(table.curves), std::move(table.remarks)};
}

const design::HookUp& hookUpOf(const design::Design& design, const std::string& name) {
    for (const auto& one : design.hookUps)
        if (one.name == name || name.empty()) return one;
    return design.hookUps.front();  // `knownHookUp` has said so
}

/// The port as columns of impedance name it; "" the source side.
std::string sideOf(const design::HookUp& hookUp, const std::string& port) {
    if (port.empty()) return {};
    std::string all;
    for (const auto& use : hookUp.ports) {
        if (use.port == port)
            return use.role == design::Role::Drive     ? "source_side"
                   : use.role == design::Role::Observe ? "load_side"
                                                       : port;
        all += (all.empty() ? "" : ", ") + use.port;
    }
    refuse("--port", '"' + port + '"', "one of " + all);
}

/// All measured frequencies, or none where they are more than a design is quickly computed at.
std::vector<double> frequenciesOf(const std::vector<measured::MeasuredCurve>& curves) {
    constexpr std::size_t most = 2000;
    const auto& frequencies = curves.front().frequency;
    return frequencies.size() <= most ? frequencies : std::vector<double>{};
}

}  // namespace

std::string compareMeasured(const std::vector<std::string>& typed) {
    const Arguments arguments =
        sorted(typed, {{"DESIGN", "MEASURED"},
                       {},
                       {"--hook-up", "--port", "--curve", "--csv", "--columns", "--emf", "--relative-to"}});
    const auto wanted = kindOf(arguments.option("--curve"));
    const auto relativeTo = quantity(arguments, "--relative-to", units::Kind::Frequency);
    const Opened opened = openDesign(arguments.operands[0]);
    const std::string hookUpName = knownHookUp(*opened.design, arguments.option("--hook-up"));
    const design::HookUp& hookUp = hookUpOf(*opened.design, hookUpName);
    const std::string side = sideOf(hookUp, arguments.option("--port"));
    Measured measured = readMeasured(arguments.operands[1], hookUp, arguments);
    std::erase_if(measured.curves, [&](const auto& curve) { return wanted && curve.kind != *wanted; });
    if (measured.curves.empty())
        throw units::BadInput(units::Fault{arguments.operands[1], "no such curve", "a file that has one"});
    analysis::Question question;
    question.hookUp = hookUpName;
    question.everyHookUp = false;
    question.frequencies = frequenciesOf(measured.curves);
    const auto answer = analysis::answer(*opened.design, opened.shop, {}, {}, question);
    std::string text;
    for (const auto& remark : measured.remarks) text += remark + "\n";
    std::vector<measured::Comparison> all;
    for (const auto& curve : measured.curves) {
        const auto to = measured::counterpart(curve.kind, side);
        const analysis::Trace* trace = answer->trace(to.trace);
        if (trace == nullptr)
            throw units::BadInput(units::Fault{arguments.operands[1],
                                               units::joined({"a curve of ", measured::word(curve.kind)}),
                                               "what the hook-up " + hookUp.name + " has"});
        all.push_back(measured::comparison(curve, *trace, to.curve, relativeTo));
        text += measured::comparisonWords(all.back());
    }
    if (const std::string file = arguments.option("--csv"); !file.empty()) {
        exchange::writeFile(file, measured::comparisonCsv(all));
        text += file + "\n";
    }
    return text;
}

}  // namespace commands
