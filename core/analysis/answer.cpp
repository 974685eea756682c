// SPDX-License-Identifier: GPL-3.0-or-later
// The door wires the stages and holds no formula.
#include "analysis/answer.h"

#include "analysis/distortion.h"
#include "analysis/figure_making.h"
#include "analysis/promise.h"
#include "analysis/stages.h"
#include "analysis/trace_making.h"

namespace analysis {

const units::Figure* Answer::figure(std::string_view name) const {
    for (const auto& f : figures)
        if (f.name == name) return &f;
    return nullptr;
}

const Trace* Answer::trace(std::string_view name) const {
    for (const auto& t : traces)
        if (t->name == name) return t.get();
    return nullptr;
}

namespace {

std::vector<std::string> assumptionWords(const design::Design& design) {
    const auto& a = design.assumptions;
    const auto on = [](bool yes, const char* what) { return std::string(what) + (yes ? ": on" : ": off"); };
    return {std::string("ends: ") + (a.ends == design::Ends::Beyond ? "beyond" : "walled"),
            on(a.foilEddies, "foil eddies"),
            on(a.proximity, "proximity"),
            on(a.dielectricLoss, "dielectric loss"),
            on(a.leadOuts, "lead-outs"),
            design.conditions.filled ? "filled" : "dry",
            "small-signal permeability; an unearthed core has 1 pF to earth"};
}

void addHookUp(Pipeline& pipeline, const design::Design& design, const design::HookUp& hookUp, bool shown,
               Answer& answer) {
    const auto solved = pipeline.solve(hookUp);
    if (pipeline.stopped()) return;
    const std::string suffix = shown ? "" : "@" + hookUp.name;
    const HookUpContext context{design, *solved, pipeline.stages(), suffix};
    for (const auto& family : hookUpFamilies()) family(context, answer.figures);
}

/// Figures of the design as a whole read fields, core, windings and the first hook-up's earths.
void addDesignFigures(Pipeline& pipeline, const design::Design& design, const catalog::Catalog& shop,
                      Answer::Stages& kept, Answer& answer) {
    const auto* old = pipeline.previous();
    if (pipeline.sameFields() && old->design->hookUps.front() == design.hookUps.front()) {
        kept.windingFigures = old->windingFigures;
    } else {
        pipeline.note(Stage::Figures);
        const DesignContext context{design, shop, pipeline};
        for (const auto& family : designFamilies()) family(context, kept.windingFigures);
    }
    answer.figures = kept.windingFigures;
}

void addTraces(Pipeline& pipeline, const design::Design& design, const Question& question, const design::HookUp& hookUp,
               const Answer* previous, Answer& answer) {
    const auto frequencies =
        question.frequencies.empty() ? logarithmicGrid(lowestFrequency, highestFrequency, 600) : question.frequencies;
    pipeline.note(Stage::Traces);
    const Solved& solved = *pipeline.stages().solved.at(hookUp.name);
    const auto carried = [&](const TraceEntry& entry) -> std::shared_ptr<const Trace> {
        if (!question.quick || !entry.slow || previous == nullptr) return nullptr;
        for (const auto& trace : previous->traces)
            if (trace->name == entry.kind.name && trace->hookUp == hookUp.name) return trace;
        return nullptr;
    };
    std::optional<LargeSignal> large;
    TraceContext context{design, solved, pipeline.stages(), frequencies, nullptr};
    for (const auto& entry : traceTable()) {
        if (pipeline.stopped()) return;
        if (auto trace = carried(entry)) {
            answer.traces.push_back(std::move(trace));
            answer.carried = true;
            continue;
        }
        if (entry.slow && !large && drivesCore(solved)) {
            large.emplace(design, solved, pipeline.stages(), true, pipeline.stopToken());
            context.large = &*large;
        }
        if (auto trace = entry.make(context)) answer.traces.push_back(std::move(trace));
    }
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
    addDesignFigures(pipeline, design, shop, *kept, *result);
    addHookUp(pipeline, design, hookUp, true, *result);
    for (const auto& other : design.hookUps) {
        if (!question.everyHookUp || other.name == hookUp.name) continue;
        const bool wait = question.quick && previous && !pipeline.known(other);
        if (!wait || !carryHookUp(*previous, other, *result)) addHookUp(pipeline, design, other, false, *result);
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
