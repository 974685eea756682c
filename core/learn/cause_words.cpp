// SPDX-License-Identifier: GPL-3.0-or-later
#include "learn/cause.h"
#include "learn/numbers.h"
#include "units/joined.h"
#include "units/text.h"

namespace learn {

using units::joined;

namespace {

std::string likelyLine(const Likely& one) {
    std::string text = joined({"  ", one.words});
    if (!one.size.empty()) text += joined({", ", one.size});
    return text + joined({": ", one.probability < 0.001 ? "below 0.1 %" : percentWords(one.probability), ", ",
                          units::significant(one.distance, 3), " standard deviations away\n"});
}

std::string readingWords(const Deviation& one, double reading) {
    return one.unit == units::Kind::Number ? units::significant(reading, 5) : units::write(one.unit, reading, 4);
}

std::string deviationLines(const Finding& finding) {
    constexpr std::size_t most = 5;
    std::string text = "readings that stand out most, beside what good units read\n";
    for (std::size_t k = 0; k < std::min(most, finding.deviations.size()); ++k) {
        const auto& one = finding.deviations[k];
        text += joined({"  ", one.words, " (", one.name, "): ", readingWords(one, one.read), ", expected ",
                        readingWords(one, one.expected), ", ", units::significant(one.deviations, 2),
                        " standard deviations\n"});
    }
    return text;
}

}  // namespace

std::string percentWords(double share) {
    return units::significant(100 * share, share < 0.1 ? 2 : 3) + " %";
}

std::string findingWords(const Finding& finding) {
    constexpr std::size_t mostOthers = 4;
    std::string text;
    if (!finding.faulty)
        text = "no fault: the readings are those of a good unit\n";
    else if (finding.group.size() == 1)
        text = "likely cause: " + finding.group.front().words + "\n";
    else
        text = "likely causes that these readings cannot tell apart\n";
    if (!finding.explained)
        text += "not even the likeliest of these makes such readings: look for something else, or measure again\n";
    for (const auto& one : finding.group) text += likelyLine(one);
    if (!finding.hidden.empty()) {
        text += "too small to be seen in these readings would be: ";
        for (std::size_t k = 0; k < finding.hidden.size(); ++k)
            text += joined({k == 0 ? "" : "; ", finding.hidden[k].words,
                            finding.hidden[k].size.empty() ? "" : ", " + finding.hidden[k].size});
        text += "\n";
    }
    if (finding.next)
        text += joined({"next reading that would part them: ", finding.next->words, " (",
                        units::significant(finding.next->parts, 2), " standard deviations apart",
                        finding.next->planned ? "" : "; not in the plan", ")\n"});
    else if (finding.group.size() > 1)
        text += "no further reading of this bench parts them\n";
    if (!finding.others.empty()) text += "less likely\n";
    for (std::size_t k = 0; k < std::min(mostOthers, finding.others.size()); ++k) text += likelyLine(finding.others[k]);
    if (!finding.deviations.empty()) text += deviationLines(finding);
    if (!finding.unknown.empty()) {
        text += "not used, since the cause finder does not compute them: ";
        for (std::size_t k = 0; k < finding.unknown.size(); ++k) text += (k == 0 ? "" : ", ") + finding.unknown[k];
        text += "\n";
    }
    return text;
}

}  // namespace learn
