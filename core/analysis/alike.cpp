// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/alike_known.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "analysis/figure_making.h"
#include "analysis/promise.h"
#include "analysis/trace_making.h"
#include "network/in_parallel.h"

namespace analysis {

namespace {

constexpr double reference = 1000;  // Hz

std::string suffixOf(const design::Design& design, std::size_t hookUp) {
    return hookUp == 0 ? "" : "@" + design.hookUps[hookUp].name;
}

std::size_t indexOf(const design::Design& design, const std::string& name) {
    for (std::size_t k = 0; k < design.hookUps.size(); ++k)
        if (design.hookUps[k].name == name) return k;
    return 0;
}

bool anyNamed(const std::vector<units::Figure>& figures, const std::set<std::string>& names) {
    return std::any_of(figures.begin(), figures.end(), [&](const auto& f) { return names.contains(f.name); });
}

/// Every name that a promise's figure may have in an answer.
std::set<std::string> namesOf(const design::Design& design, const Wanted& wanted) {
    std::set<std::string> names(wanted.figures.begin(), wanted.figures.end());
    for (const auto& promise : design.brief.promises) {
        const std::string own = promise.figure + (promise.port.empty() ? "" : "." + promise.port);
        names.insert(own + suffixOf(design, indexOf(design, promise.hookUp)));
        names.insert(promise.figure);
    }
    return names;
}

/// Frequencies of a mask's trace: the usual grid as far as the mask goes, its corners, and 1 kHz.
std::vector<double> maskGrid(const design::Mask& mask) {
    std::vector<double> grid{reference};
    double low = std::numeric_limits<double>::infinity(), high = 0;
    for (const auto& point : mask.points) {
        low = std::min(low, point.frequency);
        high = std::max(high, point.frequency);
        grid.push_back(point.frequency);
    }
    for (const double f : logarithmicGrid(lowestFrequency, highestFrequency, 600))
        if (f > low && f < high) grid.push_back(f);
    std::sort(grid.begin(), grid.end());
    grid.erase(std::unique(grid.begin(), grid.end()), grid.end());
    return grid;
}

}  // namespace

/// Where the nominal's band ends and peaks, with room for those near it; whole where one of these does not occur.
void Alike::Known::takeRange(const Answer& answer) {
    constexpr double usualLow = 10, usualHigh = 50e3, room = 1.6;
    double low = usualLow, high = usualHigh;
    const auto take = [&](double f) {
        low = std::min(low, f);
        high = std::max(high, f);
    };
    for (const auto& figure : answer.figures) {
        if (figure.name.starts_with("low_3dB"))
            take(std::isfinite(figure.value) ? figure.value / room : lowestFrequency);
        if (figure.name.starts_with("high_3dB") || figure.name.starts_with("peak_frequency"))
            take(std::isfinite(figure.value) ? figure.value * room : highestFrequency);
    }
    for (const double f : wanted.response) take(f);
    for (const auto& mask : nominal->design->brief.masks)
        for (const auto& point : mask.points) take(point.frequency);
    from = std::max(low, lowestFrequency);
    to = std::min(high, highestFrequency);
}

/// Every figure that is wanted.
Answer Alike::Known::answerTo(const design::Design& design, Pipeline& pipeline, std::vector<double>* response) const {
    Answer answer;
    answer.hookUp = design.hookUps.front().name;
    const DesignContext whole{design, shop, pipeline};
    for (const auto k : designFamilies) analysis::designFamilies()[k](whole, answer.figures);
    for (const auto& one : asked) {
        const auto solved = pipeline.solve(design.hookUps[one.hookUp]);
        if (pipeline.stopped()) return answer;
        const HookUpContext context{design, *solved, pipeline.stages(), suffixOf(design, one.hookUp)};
        for (const auto k : one.families) hookUpFamilies()[k](context, answer.figures);
        if (response == nullptr || one.hookUp != 0 || solved->driven() < 0 || solved->observed() < 0) continue;
        const int output = solved->network.layout().voltage(solved->driven(), solved->observed());
        const double there = std::abs(solved->at(reference, output));
        for (const double f : wanted.response)
            response->push_back(20 * std::log10(std::abs(solved->at(f, output)) / there));
    }
    return answer;
}

std::shared_ptr<const Trace> Alike::Known::maskTrace(const design::Design& design, Pipeline& pipeline,
                                                     const design::Mask& mask, const design::HookUp& hookUp) const {
    const auto solved = pipeline.stages().solved.find(hookUp.name);
    if (solved == pipeline.stages().solved.end()) return nullptr;
    const auto grid = maskGrid(mask);
    const TraceContext context{design, *solved->second, pipeline.stages(), grid, nullptr};
    if (mask.trace == "response") return responseLevelTrace(context);
    for (const auto& entry : traceTable())
        if (entry.kind.name == mask.trace) return entry.make(context);
    return nullptr;
}

/// States of the promises in the brief's order, then of the masks, each judged in its own hook-up.
std::vector<PromiseState> Alike::Known::states(const design::Design& design, Pipeline& pipeline,
                                               const Answer& answer) const {
    auto all = statesInOrder(design, answer);
    const std::size_t promises = design.brief.promises.size();
    for (std::size_t k = 0; k < design.brief.masks.size(); ++k) {
        const auto& mask = design.brief.masks[k];
        const auto& hookUp = design.hookUps[indexOf(design, mask.hookUp)];
        Answer own;
        own.hookUp = hookUp.name;
        if (auto trace = maskTrace(design, pipeline, mask, hookUp)) own.traces.push_back(std::move(trace));
        design::Design judged;
        judged.hookUps = {hookUp};
        judged.brief.masks = {mask};
        all[promises + k] = statesInOrder(judged, own).front();
        all[promises + k].index = static_cast<int>(k);
    }
    return all;
}

namespace {

constexpr double none = std::numeric_limits<double>::quiet_NaN();

std::optional<double> finite(double value) {
    return std::isfinite(value) ? std::optional(value) : std::nullopt;
}

std::vector<Column> columnsOf(const design::Design& design, const Wanted& wanted, const Answer& answer,
                              const std::vector<PromiseState>& states) {
    std::vector<Column> columns;
    for (const auto& state : states) {
        const auto* figure = answer.figure(state.figure);
        if (figure == nullptr && !state.mask)
            figure = answer.figure(design.brief.promises[static_cast<std::size_t>(state.index)].figure);
        Column column;
        column.name = figure != nullptr ? figure->name : state.figure;
        column.text = state.text;
        column.unit = std::string(figure != nullptr ? figure->unit : units::unit(state.kind));
        column.promise = state.index;
        column.mask = state.mask;
        column.nominal = finite(state.mask ? state.margin : figure != nullptr ? figure->value : none);
        columns.push_back(std::move(column));
    }
    std::vector<units::Fault> faults;
    for (const auto& name : wanted.figures) {
        const auto* figure = answer.figure(name);
        if (figure == nullptr)
            faults.push_back({"figure", "\"" + name + "\"", "a figure of this design, as `figures` names them"});
        else
            columns.push_back({name, "", figure->unit, -1, false, finite(figure->value)});
    }
    if (!faults.empty()) throw units::BadInput(std::move(faults));
    return columns;
}

/// Which families make one of the names.
template <class Families, class Context>
std::vector<std::size_t> makers(const Families& families, const Context& context, const std::set<std::string>& names) {
    std::vector<std::size_t> all;
    for (std::size_t k = 0; k < families.size(); ++k) {
        std::vector<units::Figure> figures;
        families[k](context, figures);
        if (anyNamed(figures, names)) all.push_back(k);
    }
    return all;
}

}  // namespace

Alike::Alike(const design::Design& nominal, const catalog::Catalog& shop, Wanted wanted) {
    const auto names = namesOf(nominal, wanted);
    Pipeline pipeline(nominal, shop, nullptr, {});
    pipeline.layOut();
    pipeline.computeFields();
    auto known = std::make_unique<Known>(Known{shop, std::move(wanted), {}, {}, {}, {}});
    const DesignContext whole{nominal, shop, pipeline};
    known->designFamilies = makers(designFamilies(), whole, names);
    for (std::size_t k = 0; k < nominal.hookUps.size(); ++k) {
        const auto& hookUp = nominal.hookUps[k];
        Asked asked{k, {}, false};
        for (const auto& mask : nominal.brief.masks) asked.masks |= indexOf(nominal, mask.hookUp) == k;
        const auto solved = pipeline.solve(hookUp);
        const HookUpContext context{nominal, *solved, pipeline.stages(), suffixOf(nominal, k)};
        asked.families = makers(hookUpFamilies(), context, names);
        const bool seen = k == 0 && !known->wanted.response.empty();
        if (!asked.families.empty() || asked.masks || seen) known->asked.push_back(std::move(asked));
    }
    const Answer answer = known->answerTo(nominal, pipeline, nullptr);
    known->columns = columnsOf(nominal, known->wanted, answer, known->states(nominal, pipeline, answer));
    known->nominal = pipeline.take();
    known->takeRange(answer);
    known_ = std::move(known);
}

Alike::~Alike() = default;

Found Alike::found(const design::Design& design, const std::stop_token& stop) const {
    const network::Alone alone;
    Pipeline pipeline(design, known_->shop, known_->nominal.get(), stop);
    pipeline.layOut();
    pipeline.computeFields(known_->nominal->cut.pieces);
    pipeline.reach(known_->from, known_->to);
    return pipeline.stopped() ? Found{} : told(design, pipeline);
}

/// What is wanted of a design whose fields are there.
Found Alike::told(const design::Design& design, Pipeline& pipeline) const {
    Found found;
    const Answer answer = known_->answerTo(design, pipeline, &found.response);
    if (pipeline.stopped()) return {};
    const auto states = known_->states(design, pipeline, answer);
    const auto& columns = known_->columns;
    for (std::size_t k = 0; k < columns.size(); ++k) {
        const auto* figure = answer.figure(columns[k].name);
        const bool judged = k < states.size();
        const double value = judged && columns[k].mask ? states[k].margin : figure != nullptr ? figure->value : none;
        found.values.push_back(std::isfinite(value) ? value : none);
        found.standings.push_back(judged ? states[k].standing : Standing::Unknown);
    }
    return found;
}

const std::vector<Column>& Alike::columns() const noexcept {
    return known_->columns;
}

const coil::CoilBuild& Alike::build() const noexcept {
    return *known_->nominal->build;
}

}  // namespace analysis
