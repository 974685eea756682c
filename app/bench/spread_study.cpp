// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/spread_study.h"

#include <QCoreApplication>
#include <algorithm>
#include <any>
#include <atomic>
#include <thread>

#include "bench/language.h"
#include "exchange/load_tolerances.h"
#include "units/fault.h"

namespace bench {

namespace {

constexpr std::uint64_t bandUnits = 200;  // each has fields of its own

std::string nameOfHookUp(const design::Design& design, const std::string& name) {
    const auto* hookUp = design::hookUp(design, name);
    return hookUp != nullptr ? hookUp->name : design.hookUps.front().name;
}

/// What a first job made, or why not.
struct MadeUnits {
    std::shared_ptr<SpreadFound> found;
    QString why;
};

MadeUnits unitsOf(const design::DesignPtr& design, const std::shared_ptr<const catalog::Catalog>& shop,
                  const std::vector<std::string>& folders, const SpreadAsked& asked, unsigned threads,
                  const spread::Study::Progress& progress, const std::stop_token& stop) {
    try {
        spread::Plan plan;
        plan.units = asked.units;
        plan.seed = asked.seed;
        plan.lotSize = asked.lotSize;
        if (asked.everyFigure)
            for (const auto& figure : analysis::answer(*design, *shop, {}, stop)->figures)
                plan.wanted.figures.push_back(figure.name);
        auto found = std::make_shared<SpreadFound>();
        found->design = design;
        found->shop = shop;
        const auto study =
            std::make_shared<const spread::Study>(*design, *shop, exchange::loadTolerances(folders), plan, stop);
        const auto batch = study->run(0, plan.units, stop, progress, threads);
        if (batch.stopped) return {};
        const std::string program =
            (QCoreApplication::applicationName() + QLatin1Char(' ') + QCoreApplication::applicationVersion())
                .toStdString();
        found->head = spread::headOf(*design, "", program, *study);
        found->summary = spread::summed(found->head, {batch});
        found->study = study;
        return {found, {}};
    } catch (const units::BadInput& bad) {
        return {{}, translated(bad.what())};
    }
}

}  // namespace

SpreadStudy::SpreadStudy(document::Document& document, std::vector<std::string> folders, QObject* parent)
    : QObject(parent),
      document_(document),
      folders_(std::move(folders)),
      aside_(this),
      threads_(std::max(2U, std::thread::hardware_concurrency()) - 1) {
    connect(&document_, &document::Document::shownChanged, this, &SpreadStudy::designChanged);
    connect(&aside_, &solver::Aside::failed, this, [this](const QString& sentence) {
        why_ = sentence;
        end();
    });
}

SpreadStudy::~SpreadStudy() = default;

/// Told in steps of a hundredth: the window has nothing to gain from more.
spread::Study::Progress SpreadStudy::progress(std::uint64_t all) {
    constexpr std::uint64_t steps = 100;
    const auto told = std::make_shared<std::atomic<std::uint64_t>>(0);
    return [this, all, told](std::uint64_t done) {
        if (all == 0 || told->exchange(done * steps / all) == done * steps / all) return;
        QMetaObject::invokeMethod(
            this,
            [this, all, done] {
                if (!busy()) return;
                share_ = static_cast<double>(done) / static_cast<double>(all);
                emit progressed();
            },
            Qt::QueuedConnection);
    };
}

void SpreadStudy::begin(Phase phase) {
    phase_ = phase;
    share_ = 0;
    emit changed();
    emit progressed();
}

void SpreadStudy::end() {
    asked_.reset();
    begin(Phase::None);
}

void SpreadStudy::start(const SpreadAsked& asked) {
    asked_ = document_.design();
    why_.clear();
    aside_.start(
        [asked, design = asked_, shop = document_.shop(), folders = folders_, threads = threads_,
         told = progress(asked.units)](const std::stop_token& stop) -> std::any {
            return unitsOf(design, shop, folders, asked, threads, told, stop);
        },
        [this](const std::any& result) {
            const auto& units = std::any_cast<const MadeUnits&>(result);
            why_ = units.why;
            if (!units.found) return end();
            found_ = units.found;
            wasCurrent_ = current();
            startSlopes();
        });
    begin(Phase::Units);
}

void SpreadStudy::startSlopes() {
    aside_.start(
        [study = found_->study, shop = found_->shop, threads = threads_,
         told = progress(found_->study->variation().all.size())](const std::stop_token& stop) -> std::any {
            return spread::sensitivities(*study, stop, told, threads);
        },
        [this](const std::any& result) {
            auto next = std::make_shared<SpreadFound>(*found_);
            next->slopes = std::any_cast<const std::vector<std::vector<spread::Slope>>&>(result);
            found_ = next;
            startBands();
        });
    begin(Phase::Slopes);
}

std::vector<std::string> SpreadStudy::tracesMissing() const {
    std::vector<std::string> missing;
    if (!found_) return missing;
    const std::string hookUp = nameOfHookUp(*found_->design, hookUp_);
    for (const auto& trace : traces_)
        if (std::none_of(found_->bands.begin(), found_->bands.end(),
                         [&](const auto& b) { return b.trace == trace && b.hookUp == hookUp; }) &&
            std::find(missing.begin(), missing.end(), trace) == missing.end())
            missing.push_back(trace);
    return missing;
}

void SpreadStudy::startBands() {
    const auto missing = tracesMissing();
    if (missing.empty()) return end();
    asked_ = found_->design;
    const auto units = std::min(bandUnits, found_->head.units);
    aside_.start(
        [study = found_->study, shop = found_->shop, hookUp = nameOfHookUp(*found_->design, hookUp_), missing, units,
         threads = threads_, told = progress(units)](const std::stop_token& stop) -> std::any {
            const auto nominal =
                analysis::answer(*study->variation().base, *shop, {}, stop, {hookUp, {}, false, false});
            auto made = spread::bands(*study, *shop, *nominal, missing, units, stop, told, threads);
            // A trace that this design does not have is known not to be there.
            for (const auto& trace : missing)
                if (std::none_of(made.begin(), made.end(), [&](const auto& b) { return b.trace == trace; }))
                    made.push_back({trace, hookUp, {}, {}, {}});
            return made;
        },
        [this](const std::any& result) {
            auto next = std::make_shared<SpreadFound>(*found_);
            for (const auto& band : std::any_cast<const std::vector<spread::TraceBand>&>(result))
                next->bands.push_back(band);
            found_ = next;
            startBands();  // another plot or hook-up may have been looked at in the meantime
        });
    begin(Phase::Bands);
}

void SpreadStudy::lookAt(const std::string& hookUp, const std::vector<std::string>& traces) {
    hookUp_ = hookUp;
    traces_ = traces;
    if (!busy() && current()) startBands();
}

void SpreadStudy::cancel() {
    aside_.stop();
    end();
}

void SpreadStudy::designChanged() {
    // What is only being tried out does not end a study: it may be given up again.
    const bool other = busy() && asked_ && document_.design() != asked_;
    if (other) return cancel();
    if (const bool now = current(); now != wasCurrent_) {
        wasCurrent_ = now;
        emit changed();
    }
}

}  // namespace bench
