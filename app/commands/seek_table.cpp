// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/seek_table.h"

#include <cmath>

#include "seek/candidate_words.h"
#include "units/joined.h"
#include "units/text.h"

namespace commands {

namespace {

using units::joined;
using units::Kind;

void add(std::string& text, const char* what, const std::string& words) {
    if (!words.empty()) text += joined({"    ", what, words, "\n"});
}

std::string block(std::size_t number, const seek::Candidate& c, const shop::Prices* prices, const std::string& path) {
    std::string text = joined({std::to_string(number), "   ", seek::coreWords(*c.design), "\n"});
    add(text, "order     ", c.order);
    add(text, "windings  ", seek::windingWords(*c.design));
    add(text, "weakest   ", seek::weakestWords(c));
    add(text, "takes     ", seek::burdenWords(c.burden, prices));
    if (std::isfinite(c.distortion))
        add(text, "distorts  ", units::significant(100 * c.distortion, 2) + " % at 20 Hz and the operating level");
    for (const auto& words : c.givesUp) add(text, "gives up  ", words);
    add(text, "file      ", path);
    return text;
}

}  // namespace

std::string seekTable(const seek::Need& need, const seek::ShortList& list, const seek::Plan& plan,
                      const std::vector<std::string>& paths) {
    std::string text = joined({need.frame.name, plan.held.from ? ": with a part held, " : ": from the brief alone, ",
                               std::to_string(list.candidates.size()),
                               list.kept ? " designs that keep every promise\n" : " designs that come nearest\n",
                               std::to_string(list.tried), " designs computed; closed forms left ",
                               std::to_string(list.cores), " cores and ", std::to_string(list.orders), " orders\n"});
    if (plan.prices == nullptr) text += "no prices given: cost is taken to go with the mass of copper and sheets\n";
    for (std::size_t k = 0; k < list.candidates.size(); ++k)
        text += "\n" + block(k + 1, list.candidates[k], plan.prices, k < paths.size() ? paths[k] : "");
    return text;
}

std::string dampingTable(const seek::Damping& found, bool flat, const std::string& path) {
    if (!found.resonant) return joined({found.hookUp, ": no peak above 1 kHz to tame\n"});
    const auto frequency = [](double f) { return f > 0 ? units::write(Kind::Frequency, f) : "above 1 MHz"; };
    const Kind measure = flat ? Kind::Decibel : Kind::Time;
    std::string text =
        joined({found.hookUp, ": across ", found.port, " ", units::write(Kind::Resistance, found.branch.resistance),
                " in series with ", units::write(Kind::Capacitance, found.branch.capacitance), "\n"});
    const auto row = [&](const char* what, const std::string& before, const std::string& after) {
        text += joined({"    ", what, before, " without, ", after, " with\n"});
    };
    row("greatest peak above 1 kHz      ", units::write(Kind::Decibel, found.peakBefore),
        units::write(Kind::Decibel, found.peakAfter));
    row(flat ? "greatest deviation to its top  " : "area between step and its end  ",
        units::write(measure, found.deviationBefore), units::write(measure, found.deviationAfter));
    row("-3 dB                          ", frequency(found.highBefore), frequency(found.highAfter));
    if (!path.empty()) text += path + "\n";
    return text;
}

}  // namespace commands
