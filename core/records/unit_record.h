// SPDX-License-Identifier: GPL-3.0-or-later
// What was measured on one built transformer, once.
#pragma once

#include <string>
#include <vector>

namespace records {

/// A reading of one test, in the test's unit.
struct Reading {
    std::string test;  ///< "dcr P"
    std::string unit;  ///< ASCII SI: "ohm"
    double value = 0;
    bool operator==(const Reading&) const = default;
};
/// Of what lot something in the unit is: "wire", "sheets"; or whose initials stand at a step: "wind", "test".
struct Named {
    std::string what, name;
    bool operator==(const Named&) const = default;
};

/// One visit to the test bench, or one return from a customer. Part, serial, stage and time together are unique.
struct UnitRecord {
    std::string part, revision, serial;
    std::string stage;    ///< "wound", "laminated", "potted", "return"
    std::string time;     ///< ISO 8601: "2026-11-27T14:05", or a day alone
    std::string verdict;  ///< "pass", "fail" or ""
    std::string symptom, finding, cause, note;
    std::vector<Named> lots, initials;
    std::vector<Reading> readings;
    bool operator==(const UnitRecord&) const = default;
};

}  // namespace records
