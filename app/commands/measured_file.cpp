// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/measured_file.h"

#include <array>
#include <cmath>

#include "exchange/measured_file.h"
#include "exchange/read_file.h"
#include "measured/comparison.h"
#include "units/csv_cell.h"
#include "units/fault.h"
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

std::optional<CurveKind> curveNamed(const std::string& name) {
    if (name.empty()) return {};
    std::string all;
    for (const auto& [word, kind] : kinds) {
        if (name == word) return kind;
        all += (all.empty() ? "" : ", ") + std::string(word);
    }
    refuse("--curve", '"' + name + '"', "one of " + all);
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

}  // namespace

std::optional<CurveKind> curveAsked(const Arguments& arguments) {
    return curveNamed(arguments.option("--curve"));
}

std::optional<double> positiveOption(const Arguments& arguments, const std::string& option, units::Kind kind) {
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

exchange::MeasuredTable readMeasuredFile(const std::string& path, const design::HookUp& hookUp,
                                         const Arguments& arguments) {
    exchange::PickingWish wish;
    takeColumns(arguments.option("--columns"), wish);
    wish.emf = positiveOption(arguments, "--emf", units::Kind::Voltage);
    if (const auto kind = curveNamed(arguments.option("--curve")))
        wish.kind = kind == CurveKind::Phase            ? CurveKind::Response
                    : kind == CurveKind::ImpedanceAngle ? CurveKind::Impedance
                                                        : *kind;
    return exchange::readMeasuredFile(exchange::readFile(path), path, hookUp, arguments.option("--port"), wish);
}

const design::HookUp& hookUpNamed(const design::Design& design, const std::string& name) {
    for (const auto& one : design.hookUps)
        if (one.name == name || name.empty()) return one;
    return design.hookUps.front();  // `knownHookUp` has said so
}

std::string sideOfPort(const design::HookUp& hookUp, const std::string& port) {
    if (port.empty()) return {};
    if (auto side = measured::sideOf(hookUp, port)) return *side;
    std::string all;
    for (const auto& use : hookUp.ports) all += (all.empty() ? "" : ", ") + use.port;
    refuse("--port", '"' + port + '"', "one of " + all);
}

}  // namespace commands
