// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/limits_file.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "units/csv_cell.h"
#include "units/fault.h"
#include "units/figure.h"
#include "units/joined.h"
#include "units/most_faults.h"

namespace exchange {

namespace {

using units::joined;

constexpr std::array<const char*, 5> limitColumns{"stage", "name", "low", "high", "unit"};
constexpr std::size_t mostLimits = 5000, shownOfACell = 60;

class LimitsReader {
public:
    explicit LimitsReader(const std::string& file) : file_(file) {}

    std::vector<PlanLimit> read(std::string_view text) {
        for (const auto line : units::csvLines(text)) {
            ++line_;
            if (line.find_first_not_of(" \t") == std::string_view::npos) continue;
            const auto cells = units::csvCells(line);
            if (!begun_)
                takeHead(cells);
            else
                take(cells);
            if (faults_.size() >= units::mostFaults || (!begun_ && !faults_.empty())) break;
        }
        if (faults_.empty() && all_.empty()) fault("no limit", "the table that `write DESIGN --limits F.csv` writes");
        if (!faults_.empty()) throw units::BadInput(std::move(faults_));
        return std::move(all_);
    }

private:
    void fault(const std::string& found, const std::string& allowed) {
        faults_.push_back({line_ == 0 ? file_ : joined({file_, ": line ", std::to_string(line_)}), found, allowed});
    }
    void takeHead(const std::vector<std::string>& cells) {
        for (std::size_t k = 0; k < limitColumns.size(); ++k) {
            const auto at = std::find(cells.begin(), cells.end(), limitColumns[k]);
            if (at == cells.end())
                return fault(joined({"no column \"", limitColumns[k], "\""}), "stage, name, low, high and unit");
            column_[k] = static_cast<std::size_t>(at - cells.begin());
        }
        begun_ = true;
    }
    void take(const std::vector<std::string>& cells) {
        const auto cell = [&](std::size_t k) { return column_[k] < cells.size() ? cells[column_[k]] : std::string(); };
        PlanLimit limit{cell(0), cell(1), {}, {}, cell(4)};
        if (!number(cell(2), limit.low) || !number(cell(3), limit.high)) return;
        if (limit.name.empty()) return fault("a step without a name", "a name as dcr.P");
        if (!limit.low && !limit.high) return;
        if (limit.low && limit.high && !(*limit.low < *limit.high))
            return fault(joined({"a lower limit of ", cell(2)}), joined({"less than the upper one, ", cell(3)}));
        if (all_.size() >= mostLimits) return fault("more limits", "up to 5000");
        all_.push_back(std::move(limit));
    }
    bool number(const std::string& cell, std::optional<double>& value) {
        if (cell.empty()) return true;
        value = units::csvNumber(cell);
        if (value && std::abs(*value) < 1e300) return true;
        fault(joined({"\"", cell.substr(0, shownOfACell), "\""}), "a number, or nothing");
        return false;
    }

    const std::string& file_;
    std::vector<PlanLimit> all_;
    std::vector<units::Fault> faults_;
    std::array<std::size_t, limitColumns.size()> column_{};
    std::size_t line_ = 0;
    bool begun_ = false;
};

}  // namespace

std::vector<PlanLimit> readLimits(std::string_view text, const std::string& file) {
    return LimitsReader(file).read(text);
}

const PlanLimit* limitOf(const std::vector<PlanLimit>& limits, const std::string& name, const std::string& stage) {
    const auto found = std::find_if(limits.rbegin(), limits.rend(), [&](const PlanLimit& one) {
        return units::dotted(one.name) == units::dotted(name) && (stage.empty() || one.stage == stage);
    });
    return found == limits.rend() ? nullptr : &*found;
}

}  // namespace exchange
