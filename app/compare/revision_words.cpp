// SPDX-License-Identifier: GPL-3.0-or-later
#include "compare/revision_words.h"

#include "analysis/repeat_order.h"
#include "analysis/reproduction.h"
#include "design/edit.h"
#include "units/joined.h"

namespace compare {

namespace {

using units::joined;

std::string movesText(const std::vector<analysis::Moved>& moved, const std::string& with) {
    if (moved.empty()) return joined({"Every figure is as it was stored, with ", with, ".\n"});
    std::string text = joined({std::to_string(moved.size()), moved.size() == 1 ? " figure is" : " figures are",
                               " not as stored, with ", with, ":\n"});
    for (const analysis::Moved& one : moved) text += joined({"  ", analysis::sentence(one), "\n"});
    return text;
}

}  // namespace

std::vector<units::Figure> everyFigure(const design::Design& design, const catalog::Catalog& shop,
                                       const std::stop_token& stop) {
    analysis::Question question;
    question.everyHookUp = true;
    return analysis::answer(design, shop, {}, stop, question)->figures;
}

std::string reproductionWords(const exchange::KeptRevision& kept, const catalog::Catalog& shop,
                              const std::stop_token& stop) {
    std::string text =
        movesText(analysis::moved(kept.figures, everyFigure(*kept.design, shop, stop)), "the materials stored in it");
    const auto today = design::takeTodaysParts(*kept.design, shop);
    if (!(today->parts == kept.design->parts))
        text += movesText(analysis::moved(kept.figures, everyFigure(*today, shop, stop)), "today's catalog");
    return text;
}

std::string repeatOrderWords(const design::Design& design, const catalog::Catalog& shop, const std::stop_token& stop) {
    const auto now = analysis::answer(design, shop, {}, stop);
    std::string text;
    bool all = true;
    for (const analysis::Material& m : analysis::repeatOrder(design, shop, now, stop)) {
        text += joined({m.kind, " ", m.key, ": ", word(m.supply), "\n"});
        if (m.supply == analysis::Supply::Current) continue;
        all = false;
        if (m.standIns.empty()) text += "  nothing in the catalog stands in for it\n";
        for (const analysis::StandIn& one : m.standIns) text += joined({"  ", analysis::sentence(one), "\n"});
    }
    return text + (all ? "Every material is current: the order may be repeated as it is.\n"
                       : "A stand-in is a new revision, with a reason and a notice to the customer.\n");
}

}  // namespace compare
