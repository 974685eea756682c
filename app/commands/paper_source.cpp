// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/paper_source.h"

#include <charconv>

#include "commands/learned.h"
#include "commands/search_options.h"
#include "exchange/design_json.h"
#include "exchange/revision_store.h"
#include "papers/datasheet.h"
#include "papers/paper_words.h"
#include "spread/summary.h"
#include "units/fault.h"

namespace commands {

namespace {

bool inchOf(const std::string& measures) {
    if (measures.empty() || measures == "mm") return false;
    if (measures == "inch") return true;
    refuse("--measures", '"' + measures + '"', "mm or inch");
}

/// A whole number, all of `text`; 0 where it is none.
std::uint64_t wholeNumber(const std::string& text) {
    std::uint64_t number = 0;
    const auto read = std::from_chars(text.data(), text.data() + text.size(), number);
    return read.ec == std::errc() && read.ptr == text.data() + text.size() ? number : 0;
}

/// The share of units that are predicted to keep every promise; 1 where nothing is promised.
double predictedYield(const design::Design& design, const catalog::Catalog& shop, std::uint64_t units) {
    spread::Plan plan;
    plan.units = units;
    const spread::Study study(design, shop, shopTolerances(places()), plan);
    const spread::Batch batch = study.run(0, units);
    const spread::Summary summary = spread::summed(spread::headOf(design, {}, programName(), study), {batch});
    if (!summary.together || summary.together->judged == 0) return 1;
    return static_cast<double>(summary.together->kept) / static_cast<double>(summary.together->judged);
}

}  // namespace

PaperSource::PaperSource(const Arguments& arguments, const Opened& opened, papers::Format format)
    : arguments_(arguments),
      opened_(opened),
      hookUp_(knownHookUp(*opened.design, arguments.option("--hook-up"))),
      source_{opened.design, opened.shop, {papers::paperDate(), opened.digest, {}}, format} {
    source_.issue.manner.in.inch = inchOf(arguments.option("--measures"));
    source_.issue.manner.words =
        papers::paperWords(arguments.option("--language"), resourceFolders(places()), "command line: --language");
    source_.text = exchange::writeDesign(*opened.design, opened.shop);
    source_.answer = [this] {
        if (!answer_) {
            analysis::Question question;
            question.hookUp = hookUp_;
            answer_ = analysis::answer(*opened_.design, opened_.shop, {}, {}, question);
        }
        return answer_;
    };
    source_.fixture = [this] { return fixtureAsked(arguments_); };
    source_.tolerances = [] { return shopTolerances(places()); };
    constexpr std::uint64_t leastUnits = 100, mostUnits = 1000000;
    if (const std::string typed = arguments.option("--yield"); !typed.empty()) {
        units_ = wholeNumber(typed);
        if (units_ < leastUnits || units_ > mostUnits) refuse("--yield", '"' + typed + '"', "100 to 1000000 units");
        if (arguments.option("--prices").empty()) refuse("--yield", "no prices", "it beside --prices F.csv");
    }
}

papers::Before PaperSource::before() const {
    const std::string since = arguments_.option("--since");
    papers::Before before;
    before.why = {{}, arguments_.option("--reason"), arguments_.option("--notice")};
    if (const std::uint64_t number = wholeNumber(since); number > 0) {
        const auto kept = exchange::openRevision(
            arguments_.operands.front(), static_cast<int>(std::min<std::uint64_t>(number, 1000000)), opened_.shop);
        before.design = kept.design;
        before.why.oldDate = kept.entry.date;
    } else {
        before.design = readDesign(since, opened_.shop);
    }
    before.digest = exchange::digestOf(*before.design, opened_.shop);
    return before;
}

const papers::Source& PaperSource::of(const papers::PaperKind& kind) {
    if (const std::string file = arguments_.option("--prices"); !file.empty() && !priced_) {
        priced_ = true;
        source_.prices = pricesOf(arguments_);
        source_.pricesFile = file;
        if (units_ > 0) source_.yield = predictedYield(*opened_.design, opened_.shop, units_);
    }
    if (kind.compares && !source_.before && !arguments_.option("--since").empty()) source_.before = before();
    return source_;
}

}  // namespace commands
