// SPDX-License-Identifier: GPL-3.0-or-later
// What a shop pays and how long its work takes, from its own CSV file.
#pragma once

#include <map>
#include <string>
#include <string_view>

namespace shop {

struct Price {
    std::string unit;
    double value = 0;    ///< of one unit, in the file's currency
    double minimum = 0;  ///< smallest amount that can be bought; 0: any
};

/// Minutes of work.
struct WorkTimes {
    double setUp = 0;  ///< once for a lot
    double unit = 0;   ///< of every unit, whatever it is
    double thousandTurns = 0;
    double wrap = 0;  ///< of insulation
    double shield = 0;
    double end = 0;  ///< of a section, or a tap
    double sheet = 0;
    double test = 0;
};

struct Prices {
    std::string currency, validUntil, note;
    std::map<std::string, Price> parts;
    double labour = 0;   ///< of an hour
    double tooling = 0;  ///< once
    double scrap = 0;    ///< share of units that are lost, below 1
    double margin = 0;   ///< of a price over the cost, share
    /// What metals cost above the prices of parts, of a kg: "copper" (wire and foil) and alloys by their key.
    std::map<std::string, double> surcharges;
    std::string surchargeDay;  ///< on which they stood so
    WorkTimes times;
};

/// Reads a price file: columns kind,name,unit,value,minimum,note in that order; lines that begin with # are for people.
/// Kinds: currency (its name), valid (a day, its name), part, labour (unit h), time (unit min), tooling, scrap (unit
/// %), margin (unit %), surcharge (a metal, unit kg), surcharge day (a day, its name). Throws units::BadInput with
/// every fault and its line: a kind, unit, name or number that is not known or not allowed, a thing said twice, no
/// currency, a surcharge without its day.
[[nodiscard]] Prices readPrices(std::string_view text, const std::string& file);

}  // namespace shop
