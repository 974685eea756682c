// SPDX-License-Identifier: GPL-3.0-or-later
// A table of an instrument, as text with whatever delimiter, read as measured curves.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "measured/measured_curve.h"

namespace exchange {

inline constexpr std::size_t mostTableRows = 200000, mostTableColumns = 200;

/// What a column of values holds. The first four are levels of a response, the next sizes in a unit of their own.
enum class ValueForm { Decibel, Ratio, Volt, LevelDbv, LevelDbu, Ohm, Percent, VoltPerRootHertz, Real };
/// What the second column of a pair holds. With Imaginary the first is its real part.
enum class AngleForm { Degree, Radian, Imaginary };

/// How a table is to be read: guessed first, then changed by whoever knows better.
struct Picking {
    char delimiter = ',';  ///< ',', ';', tab, or ' ' for any run of blanks
    bool decimalComma = false;
    std::size_t firstRow = 0;  ///< line where numbers begin, counted from 0
    std::size_t frequency = 0;
    double hertz = 1;  ///< of the unit that frequencies stand in
    std::optional<std::size_t> value = 1;
    ValueForm form = ValueForm::Decibel;
    double factor = 1;  ///< of a unit with a prefix: 0.001 for mV
    std::optional<std::size_t> second;
    AngleForm angle = AngleForm::Degree;
    measured::CurveKind kind = measured::CurveKind::Response;  ///< response, impedance, distortion or noise
    double emf = 1;  ///< V rms: what levels in volts, dBV and dBu are told from
    bool operator==(const Picking&) const = default;
};
/// Fields that a person set instead of the guess.
struct PickingWish {
    std::optional<std::size_t> frequency, value, second;  ///< columns, counted from 0
    std::optional<ValueForm> form;
    std::optional<AngleForm> angle;
    std::optional<measured::CurveKind> kind;
    std::optional<double> emf;
};

/// What a chooser shows: the columns' names and the first rows as they stand.
struct TablePreview {
    std::vector<std::string> columns;  ///< "1" where there is no name
    std::vector<std::vector<std::string>> rows;
};

/// The delimiter and decimal sign with which most lines are rows of numbers; where they begin; from the names above
/// them, which columns are frequency, value and angle and in what units. Where names say nothing: the first column is
/// frequency in Hz, the second a response in dB, the third its phase in degrees. Throws units::BadInput: no rows of two
/// numbers or more, more than 10 MB, 200 000 rows or 200 columns, or bytes that are no text.
[[nodiscard]] Picking guessedPicking(std::string_view text, const std::string& file, const PickingWish& wish = {});
[[nodiscard]] TablePreview preview(std::string_view text, const Picking& picking, std::size_t rows = 8);

struct MeasuredTable {
    std::vector<measured::MeasuredCurve> curves;  ///< the value's, and its phase or angle where there is one
    std::vector<std::string> remarks;             ///< rows left out or put in order, a sentence each
};
/// Rows in any order are put into order of frequency. A row whose cell is empty or no finite number (NaN, inf, ---) is
/// left out, as is a second row of the same frequency; lines that begin with # ! % * or / are an instrument's words. A
/// decimal comma and a grouping sign are told apart by no means: there is no grouping. Throws units::BadInput, place
/// "F: line 3, column 2".
[[nodiscard]] MeasuredTable readMeasuredTable(std::string_view text, const std::string& file, const Picking& picking);
/// Guess and read.
[[nodiscard]] MeasuredTable readMeasuredTable(std::string_view text, const std::string& file);

}  // namespace exchange
