// SPDX-License-Identifier: GPL-3.0-or-later
// Unit records from a table of a test bench.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "records/unit_record.h"

namespace records {

inline constexpr std::size_t mostUnitsInATable = 200000, mostColumnsInATable = 300;

/// Reads a table with one line of column names: comma, semicolon or tab between them, whichever the names have most;
/// with the latter two numbers may have a decimal comma. Columns in any order:
///
///     part, revision, serial, stage, time, verdict, symptom, finding, cause, note     serial is needed
///     lot WHAT, initials STEP                                                          "lot wire", "initials wind"
///     TEST [UNIT]                                                                      "dcr P [kohm]", "ratio []"
///
/// Readings become SI (kohm ohm, mH H); %, dB, dBu and units that nobody knows stay as they are. An empty cell is no
/// reading. Verdicts: pass, fail, or nothing. Times: 2026-11-27, or with T14:05 or T14:05:30 behind. Lines that begin
/// with # are for people. Throws units::BadInput with every fault, up to a hundred: place "F: line 3, column 7".
[[nodiscard]] std::vector<UnitRecord> readUnits(std::string_view text, const std::string& file);
/// The same records as a table that `readUnits` reads again.
[[nodiscard]] std::string unitTable(const std::vector<UnitRecord>& units);

/// Days of a record's time since 1970, with the share of a day that has gone; nothing if it is no time.
[[nodiscard]] std::optional<double> dayOf(std::string_view time);

}  // namespace records
