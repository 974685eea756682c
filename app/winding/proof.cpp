// SPDX-License-Identifier: GPL-3.0-or-later
#include "winding/proof.h"

#include <charconv>
#include <cmath>
#include <set>

#include "units/joined.h"
#include "units/text.h"

namespace winding {

using units::joined;

Proof proven(replay::Run run, const replay::Machine& machine, const design::Design& design,
             const catalog::Catalog& shop, int leg) {
    Proof proof;
    proof.machine = machine;
    proof.run = std::move(run);
    proof.leg = leg;
    proof.build = coil::layOut(design, shop);
    proof.expected = replay::expected(design, proof.build, shop, machine, leg);
    const replay::Comparison compared = replay::compare(proof.run, proof.expected, machine);
    proof.wire = compared.wire;
    proof.faults = remarkWords(proof.run);
    proof.faults.insert(proof.faults.end(), compared.differences.begin(), compared.differences.end());
    return proof;
}

std::vector<std::string> linesOf(const std::string& text) {
    std::vector<std::string> lines;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        std::string line = text.substr(at, end - at);
        if (!line.empty() && line.back() == '\r') line.pop_back();
        lines.push_back(std::move(line));
        at = end + 1;
    }
    return lines;
}

std::vector<std::string> remarkWords(const replay::Run& run) {
    std::vector<std::string> words;
    words.reserve(run.remarks.size());
    for (const replay::Remark& remark : run.remarks)
        words.push_back(remark.line > 0 ? joined({"line ", std::to_string(remark.line), ": ", remark.words})
                                        : remark.words);
    return words;
}

std::string timeText(double seconds) {
    const long long all = std::llround(seconds);
    return joined({std::to_string(all / 60), " min ", std::to_string(all % 60), " s"});
}

std::vector<std::string> runWords(const replay::Run& run, const replay::Machine& machine) {
    return {joined({std::to_string(run.blocks), " blocks, ", std::to_string(run.stepLines.size()), " steps, ",
                    units::shortest(std::round(run.turns() * 1e4) / 1e4), " turns, ", std::to_string(run.halts.size()),
                    " stops, ", std::to_string(run.wraps.size()), " pins wrapped by the machine"}),
            joined({"cycle ", timeText(run.cycle(machine)), ": winding and moves ", timeText(run.moving),
                    ", stops and wraps ", timeText(run.waiting), ", loading ", timeText(machine.loadSeconds), "; ",
                    std::to_string(run.unitsADay(machine)), " units a day of ", units::shortest(machine.shiftHours),
                    " h on ", std::to_string(machine.spindles), machine.spindles > 1 ? " spindles" : " spindle",
                    " (kinematic model; stops as the winder's description says)"})};
}

std::string provenWords(const replay::Machine& machine) {
    return machine.traverse ? "as it is laid out"
                            : "in turns, sense and stops; side, pitch and place of each turn are the winder's hand";
}

std::vector<int> woundLegs(const design::Design& design) {
    std::set<int> wound;
    for (const auto& place : design.coil)
        for (const auto& item : place.order)
            if (item.section() != nullptr) wound.insert(place.leg);
    return {wound.begin(), wound.end()};
}

int lineOf(const Proof& proof, const std::string& fault) {
    static constexpr std::string_view word = "line ";
    if (const std::size_t at = fault.rfind(word); at != std::string::npos) {
        int line = 0;
        const char* from = fault.data() + at + word.size();
        if (std::from_chars(from, fault.data() + fault.size(), line).ec == std::errc{}) return line;
    }
    for (std::size_t k = 0; k < std::min(proof.expected.steps.size(), proof.run.stepLines.size()); ++k)
        if (fault.starts_with(proof.expected.steps[k].name + ":")) return proof.run.stepLines[k];
    return 0;
}

}  // namespace winding
