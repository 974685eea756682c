// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "records/unit_table.h"
#include "units/csv_cell.h"
#include "units/joined.h"
#include "units/text.h"

namespace records {

namespace {

/// Names of columns in the order in which they are first met.
void meet(std::vector<std::string>& names, std::string name) {
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(std::move(name));
}

const std::string* named(const std::vector<Named>& all, const std::string& what) {
    for (const Named& one : all)
        if (one.what == what) return &one.name;
    return nullptr;
}

std::string testColumn(const Reading& reading) {
    return units::joined({reading.test, " [", reading.unit, "]"});
}

/// The columns that not every unit has.
struct Columns {
    std::vector<std::string> lots, initials, tests;
    explicit Columns(const std::vector<UnitRecord>& units) {
        for (const UnitRecord& unit : units) {
            for (const Named& lot : unit.lots) meet(lots, lot.what);
            for (const Named& step : unit.initials) meet(initials, step.what);
            for (const Reading& reading : unit.readings) meet(tests, testColumn(reading));
        }
    }
    [[nodiscard]] std::string heading() const {
        std::string text = "part,revision,serial,stage,time,verdict,symptom,finding,cause,note";
        for (const auto& lot : lots) text += "," + units::csvCell("lot " + lot);
        for (const auto& step : initials) text += "," + units::csvCell("initials " + step);
        for (const auto& test : tests) text += "," + units::csvCell(test);
        return text + "\n";
    }
};

/// A cell, empty or not, for each column.
std::string cells(const std::vector<std::string>& columns, const std::vector<Named>& all) {
    std::string text;
    for (const auto& what : columns) {
        const std::string* name = named(all, what);
        text += "," + (name != nullptr ? units::csvCell(*name) : std::string());
    }
    return text;
}

std::string readings(const std::vector<std::string>& tests, const UnitRecord& unit) {
    std::string text;
    for (const auto& test : tests) {
        text += ",";
        for (const Reading& reading : unit.readings)
            if (testColumn(reading) == test) text += units::shortest(reading.value);
    }
    return text;
}

}  // namespace

std::string unitTable(const std::vector<UnitRecord>& units) {
    const Columns columns(units);
    std::string text = columns.heading();
    for (const UnitRecord& unit : units) {
        std::string line;
        for (const auto* field : {&unit.part, &unit.revision, &unit.serial, &unit.stage, &unit.time, &unit.verdict,
                                  &unit.symptom, &unit.finding, &unit.cause, &unit.note})
            line += units::csvCell(*field) + ",";
        line.pop_back();
        text += units::joined({line, cells(columns.lots, unit.lots), cells(columns.initials, unit.initials),
                               readings(columns.tests, unit), "\n"});
    }
    return text;
}

}  // namespace records
