// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/measured_table.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

#include "exchange/table_lines.h"
#include "units/csv_cell.h"
#include "units/fault.h"
#include "units/joined.h"
#include "units/text.h"

namespace exchange {

namespace {

using measured::CurveKind;
using measured::MeasuredCurve;
using units::refuse;

struct Row {
    double frequency = 0, first = 0, second = 0;
};

/// A value in its curve's unit.
double converted(const Picking& p, double number) {
    const double value = number * p.factor;
    switch (p.form) {
        case ValueForm::Ratio:
            return 20 * std::log10(std::abs(value));
        case ValueForm::Volt:
            return p.kind == CurveKind::Noise ? value : 20 * std::log10(std::abs(value) / p.emf);
        case ValueForm::LevelDbv:
            return value - 20 * std::log10(p.emf);
        case ValueForm::LevelDbu:
            return value - units::dbuOfVolts(p.emf);
        case ValueForm::Decibel:
            // Distortion in dB is told from the fundamental.
            return p.kind == CurveKind::Distortion ? 100 * std::pow(10, value / 20) : value;
        default:
            return value;
    }
}

/// Both curves of a pair of real and imaginary part.
Row ofParts(const Picking& p, const Row& row) {
    const std::complex<double> z(row.first * p.factor, row.second * p.factor);
    const double size = std::abs(z), angle = std::arg(z) * 180 / std::numbers::pi;
    return {row.frequency, p.kind == CurveKind::Impedance ? size : 20 * std::log10(size), angle};
}

Row finished(const Picking& p, const Row& row) {
    if (p.second && p.angle == AngleForm::Imaginary) return ofParts(p, row);
    Row made{row.frequency, p.value ? converted(p, row.first) : 0, row.second};
    if (p.angle == AngleForm::Radian) made.second *= 180 / std::numbers::pi;
    return made;
}

class RowReader {
public:
    RowReader(const std::string& file, const Picking& picking) : file_(file), picking_(picking) {}

    void take(std::string_view line, std::size_t number) {
        if (detail::isBlankLine(line) || detail::isRemark(line)) return;
        const auto cells = units::csvCells(line, picking_.delimiter);
        const auto frequency = cell(cells, picking_.frequency, number);
        const auto first = picking_.value ? cell(cells, *picking_.value, number) : std::optional<double>(0);
        const auto second = picking_.second ? cell(cells, *picking_.second, number) : std::optional<double>(0);
        if (!frequency || !first || !second) {
            ++missing_;
            return;
        }
        if (!(*frequency > 0))
            refuse(place(number, picking_.frequency), units::shortest(*frequency), "a frequency above 0");
        if (rows_.size() == mostTableRows) refuse(file_, "more than 200000 rows of numbers", "200000 at most");
        const Row row = finished(picking_, {*frequency * picking_.hertz, *first, *second});
        if (!std::isfinite(row.first) || !std::isfinite(row.second))
            ++missing_;
        else
            rows_.push_back(row);
    }
    MeasuredTable table(const std::vector<std::string>& names) {
        if (rows_.empty()) refuse(file_, "no row with numbers in the columns picked", "one or more");
        MeasuredTable made;
        order(made);
        const auto curve = [&](CurveKind kind, std::size_t column, auto part) {
            MeasuredCurve one{kind, names.at(column), {}, {}};
            for (const Row& row : rows_) {
                one.frequency.push_back(row.frequency);
                one.value.push_back(row.*part);
            }
            made.curves.push_back(std::move(one));
        };
        const bool parts = picking_.second && picking_.angle == AngleForm::Imaginary;
        if (picking_.value || parts) curve(picking_.kind, *picking_.value, &Row::first);
        if (picking_.second)
            curve(picking_.kind == CurveKind::Impedance ? CurveKind::ImpedanceAngle : CurveKind::Phase,
                  *picking_.second, &Row::second);
        return made;
    }

private:
    [[nodiscard]] std::string place(std::size_t line, std::size_t column) const {
        return units::joined({file_, ": line ", std::to_string(line + 1), ", column ", std::to_string(column + 1)});
    }
    std::optional<double> cell(const std::vector<std::string>& cells, std::size_t column, std::size_t line) const {
        if (column >= cells.size())
            refuse(place(line, column), std::to_string(cells.size()) + " cells", "a row with that column");
        if (units::csvIsMissing(cells[column])) return {};
        const auto value = units::csvNumber(cells[column], picking_.decimalComma);
        if (!value)
            refuse(place(line, column), units::joined({"\"", std::string_view(cells[column]).substr(0, 60), "\""}),
                   picking_.decimalComma ? "a number, as -12,5 or 1,2e-3" : "a number, as -12.5 or 1.2e-3");
        return std::isfinite(*value) ? value : std::nullopt;
    }
    void order(MeasuredTable& made) {
        const auto before = [](const Row& a, const Row& b) { return a.frequency < b.frequency; };
        if (!std::is_sorted(rows_.begin(), rows_.end(), before)) {
            std::stable_sort(rows_.begin(), rows_.end(), before);
            made.remarks.emplace_back("Rows were put in order of frequency.");
        }
        const auto same = [](const Row& a, const Row& b) { return a.frequency == b.frequency; };
        const auto end = std::unique(rows_.begin(), rows_.end(), same);
        if (const auto twice = rows_.end() - end; twice > 0)
            made.remarks.push_back(units::joined({std::to_string(twice), twice == 1 ? " row" : " rows",
                                                  " of a frequency that had a row already left out."}));
        rows_.erase(end, rows_.end());
        if (missing_ > 0)
            made.remarks.push_back(units::joined(
                {std::to_string(missing_), missing_ == 1 ? " row" : " rows", " without a number left out."}));
    }

    const std::string& file_;
    const Picking& picking_;
    std::vector<Row> rows_;
    std::size_t missing_ = 0;
};

}  // namespace

TablePreview preview(std::string_view text, const Picking& picking, std::size_t rows) {
    const auto lines = units::csvLines(text);
    TablePreview shown;
    if (picking.firstRow >= lines.size()) return shown;
    shown.columns = detail::columnNames(lines, picking);
    for (std::size_t k = picking.firstRow; k < lines.size() && shown.rows.size() < rows; ++k)
        if (!detail::isBlankLine(lines[k]) && !detail::isRemark(lines[k]))
            shown.rows.push_back(units::csvCells(lines[k], picking.delimiter));
    return shown;
}

MeasuredTable readMeasuredTable(std::string_view text, const std::string& file, const Picking& picking) {
    const auto lines = units::csvLines(text);
    if (picking.firstRow >= lines.size()) refuse(file, "no rows of numbers", "two columns of numbers or more");
    if (!(picking.emf > 0) || !(picking.hertz > 0))
        refuse(file, "a picking with " + units::shortest(picking.emf) + " V EMF", "an EMF above 0 V");
    if (!picking.value && picking.angle == AngleForm::Imaginary && picking.second)
        refuse(file, "an imaginary part alone", "a column of real parts beside it");
    auto names = detail::columnNames(lines, picking);
    for (const auto column : {picking.frequency, picking.value.value_or(0), picking.second.value_or(0)})
        if (column >= names.size())
            refuse(file, "column " + std::to_string(column + 1), "one of " + std::to_string(names.size()) + " columns");
    RowReader reader(file, picking);
    for (std::size_t k = picking.firstRow; k < lines.size(); ++k) reader.take(lines[k], k);
    return reader.table(names);
}

MeasuredTable readMeasuredTable(std::string_view text, const std::string& file) {
    return readMeasuredTable(text, file, guessedPicking(text, file));
}

}  // namespace exchange
