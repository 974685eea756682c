// SPDX-License-Identifier: GPL-3.0-or-later
// The door wires the stages and holds no formula.
#include "analysis/answer.h"

#include "analysis/distortion.h"
#include "analysis/figure_making.h"
#include "analysis/promise.h"
#include "analysis/stages.h"
#include "analysis/trace_making.h"
#include "network/in_parallel.h"

namespace analysis {

const units::Figure* Answer::figure(std::string_view name) const {
    for (const auto& f : figures)
        if (f.name == name) return &f;
    return nullptr;
}

std::shared_ptr<const Trace> Answer::sharedTrace(std::string_view name) const {
    for (const auto& t : traces)
        if (t->name == name) return t;
    return nullptr;
}

const Trace* Answer::trace(std::string_view name) const {
    return sharedTrace(name).get();
}

namespace {

std::vector<std::string> assumptionWords(const design::Design& design) {
    const auto& a = design.assumptions;
    const auto on = [](bool yes, const char* what) { return std::string(what) + (yes ? ": on" : ": off"); };
    std::vector<std::string> words{std::string("ends: ") + (a.ends == design::Ends::Beyond ? "beyond" : "walled"),
                                   on(a.foilEddies, "foil eddies"),
                                   on(a.proximity, "proximity"),
                                   on(a.dielectricLoss, "dielectric loss"),
                                   on(a.leadOuts, "lead-outs"),
                                   design.conditions.filled ? "filled" : "dry",
                                   "small-signal permeability; an unearthed core has 1 pF to earth"};
    for (const auto& place : design.coil)
        for (const auto& item : place.order)
            if (const auto* shield = item.shield(); shield != nullptr && shield->overEnds)
                words.push_back("eddy currents in the folded ends of " + shield->name +
                                ": left out (they would lower the leakage from some 40 kHz)");
    return words;
}

void addHookUp(Pipeline& pipeline, const design::Design& design, const design::HookUp& hookUp, bool shown,
               std::vector<units::Figure>& figures) {
    const auto solved = pipeline.solve(hookUp);
    if (pipeline.stopped()) return;
    const std::string suffix = shown ? "" : "@" + hookUp.name;
    const HookUpContext context{design, *solved, pipeline.stages(), suffix};
    for (const auto& family : hookUpFamilies())
        if (!pipeline.stopped()) family(context, figures);
}

/// Figures of the design as a whole and of the shown hook-up. The former read fields, core, windings and the first
/// hook-up's earths, and none of what the latter solves: they are computed side by side.
void addShownFigures(Pipeline& pipeline, const design::Design& design, const catalog::Catalog& shop,
                     const design::HookUp& hookUp, Answer::Stages& kept, Answer& answer) {
    const auto* old = pipeline.previous();
    const bool same = pipeline.sameFields() && old->design->hookUps.front() == design.hookUps.front();
    if (!same) pipeline.note(Stage::Figures);
    std::vector<units::Figure> shown;
    network::inParallel(2, [&](std::size_t part) {
        if (part == 0) {
            addHookUp(pipeline, design, hookUp, true, shown);
        } else if (same) {
            kept.windingFigures = old->windingFigures;
        } else {
            const DesignContext context{design, shop, pipeline};
            for (const auto& family : designFamilies())
                if (!pipeline.stopped()) family(context, kept.windingFigures);
        }
    });
    answer.figures = kept.windingFigures;
    answer.figures.insert(answer.figures.end(), shown.begin(), shown.end());
}

void addTraces(Pipeline& pipeline, const design::Design& design, const Question& question, const design::HookUp& hookUp,
               const Answer* previous, Answer& answer) {
    const auto frequencies =
        question.frequencies.empty() ? logarithmicGrid(lowestFrequency, highestFrequency, 600) : question.frequencies;
    pipeline.note(Stage::Traces);
    const Solved& solved = *pipeline.stages().solved.at(hookUp.name);
    // A slow trace that the previous answer lacks is not waited for either.
    const bool wait = question.quick && previous != nullptr && previous->hookUp == hookUp.name;
    const bool still = question.loop == LoopKind::Static;
    std::optional<LargeSignal> large;
    if ((!wait || still) && drivesCore(solved))
        large.emplace(design, solved, pipeline.stages(), true, pipeline.stopToken(), question.loop);
    std::optional<CoreNetwork> inTime;
    if (large && large->hasCore() && !still && !pipeline.stopped()) inTime.emplace(large->inTime());
    const auto waits = [&](const TraceEntry& entry) {
        return wait && entry.isSlow(design) && !(still && entry.behindEddies);
    };
    const TraceContext context{
        design, solved, pipeline.stages(), frequencies, large ? &*large : nullptr, inTime ? &*inTime : nullptr};
    const auto& table = traceTable();
    std::vector<std::shared_ptr<const Trace>> made(table.size());
    network::inParallel(table.size(), [&](std::size_t k) {
        if (!pipeline.stopped() && !waits(table[k])) made[k] = table[k].make(context);
    });
    for (std::size_t k = 0; k < table.size(); ++k) {
        if (waits(table[k])) {
            answer.carried = true;
            made[k] = previous->sharedTrace(table[k].kind.name);
        }
        if (made[k]) answer.traces.push_back(std::move(made[k]));
    }
    answer.loop = question.loop;
    answer.carried = answer.carried || still;
}

/// The previous answer's figures of a hook-up that is not the shown one; false if it has none.
bool carryHookUp(const Answer& previous, const design::HookUp& hookUp, Answer& answer) {
    const std::string suffix = "@" + hookUp.name;
    bool any = false;
    for (const auto& figure : previous.figures)
        if (figure.name.ends_with(suffix)) {
            answer.figures.push_back(figure);
            any = true;
        }
    answer.carried = answer.carried || any;
    return any;
}

AnswerPtr stoppedAnswer() {
    auto stopped = std::make_shared<Answer>();
    stopped->stopped = true;
    return stopped;
}

}  // namespace

AnswerPtr answer(const design::Design& design, const catalog::Catalog& shop, const AnswerPtr& previous,
                 std::stop_token stop, const Question& question) {
    const Answer::Stages* old = previous && previous->stages ? previous->stages.get() : nullptr;
    Pipeline pipeline(design, shop, old, std::move(stop));
    pipeline.layOut();
    pipeline.computeFields();
    if (pipeline.stopped()) return stoppedAnswer();
    auto result = std::make_shared<Answer>();
    auto kept = pipeline.take();
    result->build = kept->build;
    result->assumptions = assumptionWords(design);
    const auto* named = question.hookUp.empty() ? nullptr : design::hookUp(design, question.hookUp);
    const auto& hookUp = named != nullptr ? *named : design.hookUps.front();
    result->hookUp = hookUp.name;
    addShownFigures(pipeline, design, shop, hookUp, *kept, *result);
    for (const auto& other : design.hookUps) {
        if (!question.everyHookUp || other.name == hookUp.name) continue;
        const bool wait = question.quick && previous && !pipeline.known(other);
        if (!wait || !carryHookUp(*previous, other, *result))
            addHookUp(pipeline, design, other, false, result->figures);
    }
    if (pipeline.stopped()) return stoppedAnswer();
    addTraces(pipeline, design, question, hookUp, previous.get(), *result);
    if (pipeline.stopped()) return stoppedAnswer();
    result->promises = promiseStates(design, *result);
    result->ran = pipeline.ran();
    result->stages = kept;
    return result;
}

}  // namespace analysis
