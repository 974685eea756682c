// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/paper_words.h"

#include "units/joined.h"
#include "units/text.h"

namespace shop {

using units::joined;

std::string checkWords(const ResistanceCheck& check) {
    const auto ohm = [](double value) { return units::write(units::Kind::Resistance, value); };
    return joined(
        {"Measure ", check.between, ": ", ohm(check.expected), " (", ohm(check.low), " to ", ohm(check.high), ")"});
}

std::string amountWords(const BillLine& line) {
    constexpr double squareCentimetres = 1e4;
    constexpr int digits = 3;
    if (line.unit == "kg") return units::write(units::Kind::Mass, line.amount);
    if (line.unit == "piece") return units::shortest(line.amount);
    if (line.unit == "m2") return units::significant(line.amount * squareCentimetres, digits) + " cm²";
    return joined({units::significant(line.amount, digits), " ", line.unit});
}

}  // namespace shop
