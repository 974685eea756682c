// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright match DESIGNS READINGS [--keep N]
#include "learn/match.h"

#include <algorithm>
#include <filesystem>

#include "analysis/answer.h"
#include "commands/arguments.h"
#include "commands/search_options.h"
#include "commands/verb.h"
#include "design/difference.h"
#include "exchange/read_file.h"
#include "exchange/readings_file.h"
#include "units/csv_cell.h"
#include "units/fault.h"
#include "units/joined.h"
#include "units/kind.h"
#include "units/text.h"

namespace commands {

namespace {

using units::joined;

constexpr std::size_t mostDesigns = 2000;
constexpr std::size_t mostShown = 6;  // readings told of a design, furthest off first

/// A design that may be the one.
struct Candidate {
    design::DesignPtr design;
    learn::Known known;
};

std::vector<std::string> designFiles(const std::string& place) {
    namespace fs = std::filesystem;
    std::error_code none;
    if (!fs::is_directory(place, none)) return {place};
    std::vector<std::string> files;
    for (auto at = fs::recursive_directory_iterator(place, fs::directory_options::skip_permission_denied, none);
         !none && at != fs::recursive_directory_iterator(); at.increment(none))
        if (at->is_regular_file(none) && at->path().extension() == ".coilwright") files.push_back(at->path().string());
    std::sort(files.begin(), files.end());
    if (files.empty()) units::refuse(place, "no design", "a design, or a folder with designs in it");
    if (files.size() > mostDesigns) units::refuse(place, std::to_string(files.size()) + " designs", "up to 2000");
    return files;
}

/// What was read, against figures of these kinds: a unit on the desk has windings of other names.
std::vector<spread::FigureRead> readingsOf(const std::string& path, const std::vector<Candidate>& candidates) {
    const std::string text = exchange::readFile(path);
    std::vector<units::Figure> known;
    for (const auto line : units::csvLines(text)) {
        const auto cells = units::csvCells(line);
        if (cells.empty() || cells.front().empty()) continue;
        const std::string quantity = units::nameParts(cells.front()).front();
        for (const auto& candidate : candidates) {
            const auto& figures = candidate.known.figures;
            const auto at = std::find_if(figures.begin(), figures.end(),
                                         [&](const auto& f) { return units::nameParts(f.name).front() == quantity; });
            if (at == figures.end()) continue;
            units::Figure like = *at;
            like.name = cells.front();
            like.value = 1;
            known.push_back(std::move(like));
            break;
        }
    }
    return exchange::readReadings(text, path, known);
}

std::string heldLines(const learn::Match& match) {
    std::string text;
    for (std::size_t k = 0; k < std::min(mostShown, match.held.size()); ++k) {
        const auto& one = match.held[k];
        const auto kind = units::kindOfUnit(one.unit);
        text += joined({"    ", one.reading, "  read ", units::write(kind, one.read), ", computed ",
                        units::write(kind, one.computed), ", ", units::significant(one.deviations, 2),
                        " standard deviations\n"});
    }
    if (match.held.size() > mostShown)
        text += joined({"    ", std::to_string(match.held.size() - mostShown), " more lie nearer\n"});
    return text;
}

std::string namesLine(const learn::Match& match) {
    std::string text;
    for (const auto& [from, to] : match.names)
        if (from != to) text += joined({text.empty() ? "" : ", ", from, " is its ", to});
    return text.empty() ? text : "    " + text + "\n";
}

std::string lackingLine(const learn::Match& match) {
    std::string all;
    for (const auto& name : match.lacking) all += (all.empty() ? "" : ", ") + name;
    return all.empty() ? all : "    it has no " + all + "\n";
}

std::string block(std::size_t number, const learn::Match& match, const Candidate& candidate) {
    return joined({std::to_string(number), "   ", candidate.known.name, ": ", std::to_string(match.held.size()),
                   " readings compared, as far off or further in ", units::significant(100 * match.probability, 2),
                   " % of its units\n", namesLine(match), heldLines(match), lackingLine(match)});
}

/// What the readings leave open between the designs that fit.
std::string openLines(const std::vector<learn::Match>& fitting, const std::vector<Candidate>& candidates,
                      const std::vector<spread::FigureRead>& readings) {
    std::string text;
    for (std::size_t k = 1; k < fitting.size(); ++k) {
        const auto &first = candidates[fitting.front().known], &other = candidates[fitting[k].known];
        text += joined({"not told: ", first.known.name, " or ", other.known.name, "\n"});
        const auto differences = design::differences(*first.design, *other.design);
        for (std::size_t d = 0; d < std::min(mostShown, differences.size()); ++d)
            text += joined({"    ", differences[d], "\n"});
        if (differences.size() > mostShown)
            text += joined({"    and ", std::to_string(differences.size() - mostShown), " more differences\n"});
        if (const auto next = learn::parting(first.known, other.known, readings))
            text += joined({"    next reading that would part them: ", next->figure, ", ",
                            units::write(units::kindOfUnit(next->unit), next->first), " or ",
                            units::write(units::kindOfUnit(next->unit), next->second), "\n"});
        else
            text += "    no figure would part them\n";
    }
    return text;
}

}  // namespace

std::string matchReadings(const std::vector<std::string>& typed) {
    const Arguments arguments = sorted(typed, {{"DESIGNS", "READINGS"}, {}, {"--keep"}});
    constexpr std::size_t usual = 5;
    const std::size_t keep = keptOf(arguments, usual);
    const auto shop = shopCatalog(places());
    std::vector<Candidate> candidates;
    std::string passedOver;
    const auto files = designFiles(arguments.operands[0]);
    for (const auto& file : files) {
        try {
            auto design = readDesign(file, shop);
            const auto answer = analysis::answer(*design, shop);
            candidates.push_back({design, {file, answer->figures}});
        } catch (const units::BadInput& bad) {
            if (files.size() == 1) throw;
            passedOver += joined({"passed over: ", bad.what(), "\n"});
        }
    }
    if (candidates.empty()) units::refuse(arguments.operands[0], "no design that can be read", "one");
    const auto readings = readingsOf(arguments.operands[1], candidates);
    std::vector<learn::Known> known;
    known.reserve(candidates.size());
    for (const auto& candidate : candidates) known.push_back(candidate.known);
    const auto all = learn::matched(known, readings);
    std::vector<learn::Match> fitting;
    for (const auto& match : all)
        if (match.fits && fitting.size() < keep) fitting.push_back(match);
    std::string text = joined({std::to_string(readings.size()), " readings, ", std::to_string(candidates.size()),
                               candidates.size() == 1 ? " design; " : " designs; "});
    text += fitting.empty() ? "none fits; this comes nearest\n" : std::to_string(fitting.size()) + " can be the one\n";
    const auto shown = fitting.empty() ? std::vector<learn::Match>{all.front()} : fitting;
    for (std::size_t k = 0; k < shown.size(); ++k) text += "\n" + block(k + 1, shown[k], candidates[shown[k].known]);
    if (fitting.size() > 1) text += "\n" + openLines(fitting, candidates, readings);
    return text + passedOver;
}

}  // namespace commands
