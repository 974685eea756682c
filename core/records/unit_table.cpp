// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/unit_table.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <optional>
#include <set>

#include "units/csv_cell.h"
#include "units/fault.h"
#include "units/joined.h"
#include "units/text.h"

namespace records {

namespace {

constexpr std::size_t mostFaults = 100;
constexpr std::array<std::pair<std::string_view, std::string UnitRecord::*>, 10> fields{
    {{"part", &UnitRecord::part},
     {"revision", &UnitRecord::revision},
     {"serial", &UnitRecord::serial},
     {"stage", &UnitRecord::stage},
     {"time", &UnitRecord::time},
     {"verdict", &UnitRecord::verdict},
     {"symptom", &UnitRecord::symptom},
     {"finding", &UnitRecord::finding},
     {"cause", &UnitRecord::cause},
     {"note", &UnitRecord::note}}};

/// A unit as SI and what a number in it is multiplied by; as it is where no kind knows it.
std::pair<std::string, double> inSi(const std::string& text) {
    using units::Kind;
    if (text.empty()) return {text, 1};
    for (const Kind kind : {Kind::Resistance, Kind::Inductance, Kind::Capacitance, Kind::Frequency, Kind::Voltage,
                            Kind::Current, Kind::Time, Kind::Mass, Kind::Length, Kind::Flux}) {
        try {
            return {std::string(units::unit(kind)), units::read(kind, "1 " + text)};
        } catch (const units::BadInput&) {  // another kind, or none
        }
    }
    return {text, 1};
}

class UnitReader {
public:
    UnitReader(std::string_view text, const std::string& file) : file_(file), lines_(units::csvLines(text)) {}

    std::vector<UnitRecord> read() {
        for (std::size_t k = 0; k < lines_.size() && faults_.size() < mostFaults; ++k) {
            const std::string_view line = lines_[k];
            line_ = k + 1;
            if (line.find_first_not_of(" \t,;") == std::string_view::npos || line.front() == '#') continue;
            if (columns_.empty())
                heading(line);
            else
                row(line);
        }
        if (columns_.empty() && faults_.empty())
            fault({}, "no line of column names", "a line with serial and other names");
        if (!faults_.empty()) throw units::BadInput(std::move(faults_));
        return std::move(units_);
    }

private:
    using Taker = std::function<void(const std::string& cell, UnitRecord& unit)>;

    void fault(std::optional<std::size_t> column, std::string found, std::string allowed) {
        std::string place = units::joined({file_, ": line ", std::to_string(line_)});
        if (column) place += units::joined({", column ", std::to_string(*column + 1), " (", names_[*column], ")"});
        faults_.push_back({std::move(place), std::move(found), std::move(allowed)});
    }
    static std::string quoted(std::string_view text) { return units::joined({"\"", text.substr(0, 60), "\""}); }

    void heading(std::string_view line) {
        for (const char delimiter : {',', ';', '\t'})
            if (std::count(line.begin(), line.end(), delimiter) > std::count(line.begin(), line.end(), delimiter_))
                delimiter_ = delimiter;
        names_ = units::csvCells(line, delimiter_);
        if (names_.size() > mostColumnsInATable)
            return fault({}, std::to_string(names_.size()) + " columns", "300 at most");
        std::set<std::string> said;
        for (std::size_t k = 0; k < names_.size(); ++k) {
            if (!said.insert(names_[k]).second) fault(k, "a column twice", "each once");
            columns_.push_back(taker(k));
        }
        if (!said.contains("serial")) fault({}, "no column serial", "one that tells units apart");
    }
    Taker taker(std::size_t column) {
        const std::string& name = names_[column];
        for (const auto& [word, member] : fields)
            if (name == word)
                return [member = member](const std::string& cell, UnitRecord& unit) { unit.*member = cell; };
        const auto named = [&](std::string_view front, std::vector<Named> UnitRecord::*to) -> Taker {
            return [what = name.substr(front.size()), to](const std::string& cell, UnitRecord& unit) {
                if (!cell.empty()) (unit.*to).push_back({what, cell});
            };
        };
        if (name.starts_with("lot ")) return named("lot ", &UnitRecord::lots);
        if (name.starts_with("initials ")) return named("initials ", &UnitRecord::initials);
        const auto open = name.rfind('[');
        if (open == std::string::npos || name.back() != ']' || open == 0) {
            fault(column, quoted(name),
                  "part, revision, serial, stage, time, verdict, symptom, finding, cause, note, "
                  "lot WHAT, initials STEP, or a test with its unit, as dcr P [ohm]");
            return {};
        }
        const std::string test = name.substr(0, name.find_last_not_of(' ', open - 1) + 1);
        const auto [si, factor] = inSi(name.substr(open + 1, name.size() - open - 2));
        return [this, column, test, si = si, factor = factor](const std::string& cell, UnitRecord& unit) {
            reading(column, cell, {test, si, factor}, unit);
        };
    }
    /// `reading` comes with the factor in the place of its value.
    void reading(std::size_t column, const std::string& cell, Reading reading, UnitRecord& unit) {
        if (units::csvIsMissing(cell)) return;
        const auto value = units::csvNumber(cell, delimiter_ != ',' && cell.find(',') != std::string::npos);
        if (!value || !std::isfinite(*value)) return fault(column, quoted(cell), "a number, or nothing");
        reading.value *= *value;
        unit.readings.push_back(std::move(reading));
    }
    void row(std::string_view line) {
        const auto cells = units::csvCells(line, delimiter_);
        if (cells.size() > columns_.size())
            return fault({}, std::to_string(cells.size()) + " cells", std::to_string(columns_.size()) + " at most");
        if (units_.size() == mostUnitsInATable) return fault({}, "more than 200000 units", "200000 in one table");
        UnitRecord unit;
        for (std::size_t k = 0; k < cells.size(); ++k)
            if (columns_[k]) columns_[k](cells[k], unit);
        if (unit.serial.empty()) fault({}, "no serial", "one for each unit");
        if (!unit.time.empty() && !dayOf(unit.time)) fault({}, quoted(unit.time), "a time as 2026-11-27T14:05");
        if (unit.verdict != "" && unit.verdict != "pass" && unit.verdict != "fail")
            fault({}, "verdict " + quoted(unit.verdict), "pass, fail, or nothing");
        units_.push_back(std::move(unit));
    }

    const std::string& file_;
    std::vector<std::string_view> lines_;
    std::size_t line_ = 0;
    char delimiter_ = ',';
    std::vector<std::string> names_;
    std::vector<Taker> columns_;
    std::vector<UnitRecord> units_;
    std::vector<units::Fault> faults_;
};

}  // namespace

std::vector<UnitRecord> readUnits(std::string_view text, const std::string& file) {
    return UnitReader(text, file).read();
}

}  // namespace records
