// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/respin.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "commands/search_options.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "exchange/readings_file.h"
#include "exchange/write_file.h"
#include "seek/respin.h"
#include "spread/likeliest.h"
#include "units/fault.h"
#include "units/joined.h"
#include "units/kind.h"
#include "units/text.h"

namespace commands {

namespace {

using units::joined;

constexpr double farOff = 3;  // standard deviations, where a tolerance hardly explains a deviation

/// A sample, and how it came to be known.
struct Known {
    seek::Sample sample;
    std::string words;
};

std::string readingWords(const spread::FigureRead& reading, const std::vector<units::Figure>& figures,
                         double computed) {
    const auto figure =
        std::find_if(figures.begin(), figures.end(), [&](const units::Figure& f) { return f.name == reading.figure; });
    const units::Kind kind = units::kindOfUnit(figure->unit);
    return joined({"    ", reading.figure, "  read ", units::write(kind, reading.value), ", designed ",
                   units::write(kind, figure->value), ", as the sample is taken to be ", units::write(kind, computed),
                   "\n"});
}

Known fromReadings(const std::string& text, const std::string& file, const Opened& opened) {
    const auto answer = analysis::answer(*opened.design, opened.shop);
    const auto readings = exchange::readReadings(text, file, answer->figures);
    const auto unit = spread::likeliestUnit(*opened.design, opened.shop, shopTolerances(places()), readings);
    Known known{{opened.design, unit.design}, "the sample\n"};
    for (std::size_t k = 0; k < readings.size(); ++k)
        known.words += readingWords(readings[k], answer->figures, unit.figures[k]);
    known.words += "likeliest with these readings, in standard deviations of what the shop's tolerances allow\n";
    constexpr std::size_t most = 5;
    constexpr double least = 0.2;
    bool far = false;
    for (std::size_t k = 0; k < std::min(most, unit.deviated.size()); ++k) {
        const auto& d = unit.deviated[k];
        if (std::abs(d.deviate) < least) break;
        far = far || std::abs(d.deviate) > farOff;
        const auto& v = unit.variation.all[d.varying];
        known.words += joined({"    ", v.name, "  ", d.deviate < 0 ? "" : "+", units::significant(d.deviate, 2), ": ",
                               units::significant(d.value, 3), " for ", units::significant(v.nominal, 3), "\n"});
    }
    if (far)
        known.words +=
            "more than three: no tolerance explains this; look for what went wrong before it is spun again\n";
    if (unit.furthest > 1)
        known.words += joined({"the readings do not agree with any unit of this design: one is off by ",
                               units::significant(unit.furthest, 2), " times its doubt\n"});
    return known;
}

Known knownFrom(const std::string& file, const Opened& opened) {
    const std::string text = exchange::readFile(file);
    if (const auto first = text.find_first_not_of(" \t\r\n"); first == std::string::npos || text[first] != '{')
        return fromReadings(text, file, opened);
    const auto unit = exchange::readDesign(text, file, opened.shop).design;
    auto judged = std::make_shared<design::Design>(*unit);
    judged->brief = opened.design->brief;
    Known known{{opened.design, std::move(judged)}, joined({"the sample is as ", file, "\n"})};
    seek::refuseUnlike(known.sample, file);
    return known;
}

std::string promiseWords(const analysis::PromiseState& p) {
    return joined({p.text, ": ", std::isfinite(p.now) ? units::write(p.kind, p.now) : std::string("none"), ", ",
                   std::string(analysis::word(p.standing))});
}

std::string lineWords(const shop::AlteredLine& line) {
    if (line.before.empty()) return joined({"        ", line.place, ": new: ", line.after, "\n"});
    if (line.after.empty()) return joined({"        ", line.place, ": gone: ", line.before, "\n"});
    return joined({"        ", line.place, ": ", line.before, " → ", line.after, "\n"});
}

std::string respinBlock(std::size_t number, const seek::Respin& r, const std::vector<analysis::PromiseState>& broken,
                        const std::string& path) {
    std::string text = joined({std::to_string(number), "   ", std::string(seek::word(r.change)), ": ", r.what, "\n"});
    for (const auto& words : r.words) text += joined({"    change    ", words, "\n"});
    for (const auto& b : broken)
        for (const auto& p : r.promises)
            if (p.index == b.index && p.mask == b.mask) text += joined({"    then      ", promiseWords(p), "\n"});
    text += joined({"    weakest   ", r.weakestPromise, "\n"});
    text += joined({"    alters ", std::to_string(r.lines.size()), " lines\n"});
    for (const auto& line : r.lines) text += lineWords(line);
    if (!path.empty()) text += joined({"    file      ", path, "\n"});
    return text;
}

std::string respinTable(const seek::RespinList& list, const std::vector<std::string>& paths) {
    std::string text = "the sample breaks\n";
    for (const auto& p : list.broken) text += joined({"    ", promiseWords(p), "\n"});
    text += joined({std::to_string(list.tried), " changes computed, one thing at a time; ",
                    list.kept ? "these bring every promise back, that which alters the fewest lines first\n"
                              : "none brings every promise back; this comes nearest\n"});
    for (std::size_t k = 0; k < list.respins.size(); ++k)
        text += "\n" + respinBlock(k + 1, list.respins[k], list.broken, k < paths.size() ? paths[k] : "");
    return text;
}

}  // namespace

std::string respinFound(const Arguments& arguments, const Opened& opened) {
    for (const char* other : {"--hold", "--damping", "--hook-up"})
        if (arguments.options.contains(other))
            throw units::BadInput(units::Fault{"command line: --respin", std::string(other) + " beside it",
                                               "--keep, --prices and --to beside it"});
    const Known known = knownFrom(arguments.option("--respin"), opened);
    const auto prices = pricesOf(arguments);
    seek::RespinPlan plan;
    plan.keep = keptOf(arguments, plan.keep);
    plan.prices = prices ? &*prices : nullptr;
    const auto list = seek::respun(known.sample, opened.shop, plan, {}, toldOnATerminal("changes"));
    if (list.broken.empty()) return known.words + "it keeps every promise: there is nothing to spin again\n";
    std::vector<std::string> paths;
    if (arguments.options.contains("--to")) {
        const std::string folder = arguments.option("--to");
        makeFolder(folder);
        for (std::size_t k = 0; k < list.respins.size(); ++k) {
            paths.push_back(folder + "/respin-" + std::to_string(k + 1) + ".coilwright");
            exchange::writeFile(paths.back(), exchange::writeDesign(*list.respins[k].sample.recipe, opened.shop));
        }
    }
    return known.words + respinTable(list, paths);
}

}  // namespace commands
