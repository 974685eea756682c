// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/respin.h"

#include "commands/search_options.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "exchange/readings_file.h"
#include "exchange/write_file.h"
#include "seek/read_sample.h"
#include "seek/respin_words.h"
#include "units/fault.h"
#include "units/joined.h"

namespace commands {

namespace {

using units::joined;

/// A sample, and how it came to be known.
struct Known {
    seek::Sample sample;
    std::string words;
};

Known fromReadings(const std::string& text, const std::string& file, const Opened& opened) {
    const auto answer = analysis::answer(*opened.design, opened.shop);
    const auto readings = exchange::readReadings(text, file, answer->figures);
    const auto read = seek::readSample(opened.design, opened.shop, shopTolerances(places()), readings, answer->figures);
    Known known{read.sample, "the sample\n"};
    for (const auto& words : read.readings) known.words += joined({"    ", words, "\n"});
    known.words += "likeliest with these readings, in standard deviations of what the shop's tolerances allow\n";
    for (const auto& words : read.deviations) known.words += joined({"    ", words, "\n"});
    for (const auto& words : read.doubts) known.words += words + "\n";
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

std::string respinBlock(std::size_t number, const seek::Respin& r, const std::vector<analysis::PromiseState>& broken,
                        const std::string& path) {
    std::string text = joined({std::to_string(number), "   ", seek::headWords(r), "\n"});
    for (const auto& words : seek::respinWords(r, broken)) text += joined({"    ", words, "\n"});
    if (!path.empty()) text += joined({"    file      ", path, "\n"});
    return text;
}

std::string respinTable(const seek::RespinList& list, const std::vector<std::string>& paths) {
    std::string text = "the sample breaks\n";
    for (const auto& p : list.broken) text += joined({"    ", seek::promiseWords(p), "\n"});
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
            refuse("--respin", std::string(other) + " beside it", "--keep, --prices and --to beside it");
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
