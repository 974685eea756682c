// SPDX-License-Identifier: GPL-3.0-or-later
#include "learn/fit.h"
#include "learn/numbers.h"
#include "units/joined.h"
#include "units/text.h"

namespace learn {

using units::joined;

namespace {

std::string learnedLine(const Learned& one) {
    std::string text = joined({"  ", one.words, ": times ", units::significant(one.factor, 4), " ±",
                               percentWords(one.halfWidth), " (95 %; before ±", percentWords(one.before), ")"});
    if (!one.told) text += "; the data do not tell it";
    if (!one.standIn.empty()) text += joined({"; told only together with ", one.standIn});
    if (one.atBound) text += "; at its bound";
    return text + "\n";
}

}  // namespace

std::string fittedWords(const Fitted& fitted) {
    std::string text =
        joined({"deviations of ", std::to_string(fitted.points),
                " measured numbers, root mean square in standard uncertainties: ", units::significant(fitted.before, 3),
                " before, ", units::significant(fitted.after, 3), " after\n"});
    if (!fitted.settled) text += "the search did not come to rest: take this with care\n";
    for (const auto& one : fitted.learned) text += learnedLine(one);
    if (fitted.scale > 1)
        text += joined({"half widths are widened by ", units::significant(fitted.scale, 3),
                        ", as the points scatter more than their uncertainties say\n"});
    for (const auto& name : fitted.left) text += joined({name, " stands in the design itself and was left as it is\n"});
    return text;
}

}  // namespace learn
