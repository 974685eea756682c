// SPDX-License-Identifier: GPL-3.0-or-later
// A measured file, as the options of a command line say it is to be read.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "commands/arguments.h"
#include "exchange/measured_table.h"
#include "measured/measured_curve.h"
#include "units/kind.h"

namespace commands {

/// The options that a measured file is read by.
inline const std::set<std::string> measuredOptions{"--hook-up", "--port", "--curve",
                                                   "--columns", "--emf",  "--relative-to"};

/// A table of any shape, or by its name a Touchstone file put into the hook-up. Reads --columns, --emf, --curve and
/// --port. Throws units::BadInput.
[[nodiscard]] exchange::MeasuredTable readMeasuredFile(const std::string& path, const design::HookUp& hookUp,
                                                       const Arguments& arguments);
/// The kind of curve after --curve. Throws units::BadInput.
[[nodiscard]] std::optional<measured::CurveKind> curveAsked(const Arguments& arguments);
/// The value above 0 after an option. Throws units::BadInput.
[[nodiscard]] std::optional<double> positiveOption(const Arguments& arguments, const std::string& option,
                                                   units::Kind kind);
/// The hook-up of a name that `knownHookUp` has passed.
[[nodiscard]] const design::HookUp& hookUpNamed(const design::Design& design, const std::string& name);
/// The port as columns of impedance name it; "" the source side. Throws units::BadInput for one that is not there.
[[nodiscard]] std::string sideOfPort(const design::HookUp& hookUp, const std::string& port);

}  // namespace commands
