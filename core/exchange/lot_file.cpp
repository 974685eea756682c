// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/lot_file.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <map>
#include <numbers>
#include <optional>

#include "units/fault.h"
#include "units/joined.h"
#include "units/most_faults.h"
#include "units/text.h"

namespace exchange {

namespace {

constexpr std::size_t leastPoints = 8, mostPoints = 10000;

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t\r");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t\r") - first + 1);
}

std::optional<double> number(std::string_view text) {
    text = trimmed(text);
    double value = 0;
    const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
    if (read.ec != std::errc() || read.ptr != text.data() + text.size() || !std::isfinite(value)) return {};
    return value;
}

enum class Columns { FieldAndFlux, CurrentAndInductance, VoltageAndInductance };
constexpr std::array<std::pair<const char*, Columns>, 3> headings{
    {{"field_A_per_m,flux_T", Columns::FieldAndFlux},
     {"current_A,inductance_H", Columns::CurrentAndInductance},
     {"voltage_V,inductance_H", Columns::VoltageAndInductance}}};

class LotReader {
public:
    LotReader(std::string_view text, const std::string& file) : file_(file) {
        for (std::size_t from = 0; from < text.size() && faults_.size() < units::mostFaults;) {
            const std::size_t end = std::min(text.find('\n', from), text.size());
            ++line_;
            take(trimmed(text.substr(from, end - from)));
            from = end + 1;
        }
    }
    MeasuredLot lot() {
        if (!columns_ && faults_.empty()) fault("columns", "nothing", allowedColumns());
        if (columns_ && *columns_ != Columns::FieldAndFlux)
            for (const char* key : {"turns", "path_m", "section_m2"}) wants(key);
        if (columns_ == Columns::VoltageAndInductance) wants("frequency_Hz");
        if (columns_ && faults_.empty() && (rows_.size() < leastPoints || rows_.size() > mostPoints))
            fault("rows", std::to_string(rows_.size()), "from 8 to 10000");
        if (!faults_.empty()) throw units::BadInput(std::move(faults_));
        MeasuredLot lot;
        for (const auto& [first, second] : rows_) lot.points.push_back(point(first, second));
        std::sort(lot.points.begin(), lot.points.end(), [](const auto& a, const auto& b) { return a.field < b.field; });
        lot.coercivity = frame_["coercivity_A_per_m"];
        lot.remanence = frame_["remanence_T"];
        lot.frequency = frame_["frequency_Hz"];
        lot.thickness = frame_["thickness_m"];
        check(lot);
        return lot;
    }

private:
    void fault(std::string_view at, std::string_view found, std::string_view allowed) {
        faults_.push_back({units::joined({file_, ": ", at}), std::string(found), std::string(allowed)});
    }
    [[nodiscard]] std::string here() const { return "line " + std::to_string(line_); }
    static std::string allowedColumns() {
        std::string all = "a line of column names: ";
        for (std::size_t k = 0; k < headings.size(); ++k)
            all += units::joined({k == 0 ? "" : k + 1 == headings.size() ? " or " : ", ", headings[k].first});
        return all;
    }
    void take(std::string_view line) {
        if (line.empty()) return;
        if (line.front() == '#') return remark(line.substr(1));
        if (!columns_) return heading(line);
        const auto comma = line.find(',');
        const auto first = number(line.substr(0, comma));
        const auto second = comma == std::string_view::npos ? std::nullopt : number(line.substr(comma + 1));
        if (!first || !second || *first <= 0 || *second <= 0)
            return fault(here(), quoted(line), "two numbers above 0 with a comma between");
        rows_.emplace_back(*first, *second);
    }
    static std::string quoted(std::string_view text) { return units::joined({"\"", text.substr(0, 60), "\""}); }
    /// "# key: number"; any other remark is for people.
    void remark(std::string_view text) {
        static const std::map<std::string, double, std::less<>> most{{"turns", 1e6},       {"path_m", 100},
                                                                     {"section_m2", 10},   {"frequency_Hz", 1e6},
                                                                     {"thickness_m", 0.1}, {"coercivity_A_per_m", 1e5},
                                                                     {"remanence_T", 3}};
        const auto colon = text.find(':');
        if (colon == std::string_view::npos) return;
        const auto known = most.find(trimmed(text.substr(0, colon)));
        if (known == most.end()) return;
        const auto value = number(text.substr(colon + 1));
        if (!value || *value <= 0 || *value > known->second)
            return fault(units::joined({here(), ", ", known->first}), quoted(trimmed(text.substr(colon + 1))),
                         units::joined({"a number above 0 and up to ", std::to_string(std::lround(known->second))}));
        frame_[known->first] = *value;
    }
    void heading(std::string_view line) {
        std::string names(line);
        std::erase(names, ' ');
        for (const auto& [text, columns] : headings)
            if (names == text) columns_ = columns;
        if (columns_) return;
        if (!told_) fault(here(), quoted(line), allowedColumns());
        told_ = true;
    }
    void wants(const std::string& key) {
        if (!frame_.contains(key)) fault("# " + key, "nothing", "a line \"# " + key + ": number\" ahead of the table");
    }
    [[nodiscard]] catalog::BhPoint point(double first, double second) const {
        if (*columns_ == Columns::FieldAndFlux) return {first, second};
        const double turns = frame_.at("turns"), path = frame_.at("path_m"), section = frame_.at("section_m2");
        const double permeability = second * path / (turns * turns * section);  // B / H, H/m
        if (*columns_ == Columns::CurrentAndInductance) {
            const double field = std::numbers::sqrt2 * turns * first / path;
            return {field, permeability * field};
        }
        const double flux =
            std::numbers::sqrt2 * first / (2 * std::numbers::pi * frame_.at("frequency_Hz") * turns * section);
        return {flux / permeability, flux};
    }
    void check(const MeasuredLot& lot) {
        constexpr double mostFlux = 3, mostField = 1e6;
        for (const auto& point : lot.points)
            if (point.flux > mostFlux || point.field > mostField) {
                fault("rows", units::joined({number6(point.field), " A/m with ", number6(point.flux), " T"}),
                      "at most 1e6 A/m and 3 T: check units and frame");
                break;
            }
        if (lot.points.back().field < 3 * lot.points.front().field)
            fault(
                "rows",
                "fields from " + number6(lot.points.front().field) + " to " + number6(lot.points.back().field) + " A/m",
                "the highest field three times the lowest or more");
        if (!faults_.empty()) throw units::BadInput(std::move(faults_));
    }
    static std::string number6(double value) { return units::significant(value, 4); }

    const std::string& file_;
    int line_ = 0;
    bool told_ = false;
    std::optional<Columns> columns_;
    std::map<std::string, double> frame_;
    std::vector<std::pair<double, double>> rows_;
    std::vector<units::Fault> faults_;
};

}  // namespace

MeasuredLot readLot(std::string_view text, const std::string& file) {
    return LotReader(text, file).lot();
}

}  // namespace exchange
