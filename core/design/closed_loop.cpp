// SPDX-License-Identifier: GPL-3.0-or-later
#include "design/closed_loop.h"

#include <numbers>

#include "json/enum_word.h"

namespace design {

namespace {

using catalog::Fitting;
using catalog::FittingForm;
using catalog::Round;

struct Iron {
    const char* words;
    double width;  ///< m
    double share;  ///< of the flux
};

/// What lies inside a part that goes round.
Iron ironIn(Round round, const Core& core, const catalog::Sheet& sheet) {
    const bool shell = core.kind == CoreKind::Shell;
    const double half = shell ? 0.5 : 1;
    switch (round) {
        case Round::Tongue:
            return {shell ? "the tongue" : "a leg", sheet.tongue, 1};
        case Round::OuterLeg:
            return {shell ? "an outer leg" : "a leg", sheet.outerLeg, half};
        case Round::Yoke:
            return {"a yoke", sheet.yoke, half};
        case Round::Nothing:
            break;
    }
    return {"", 0, 0};
}

class Loops {
public:
    Loops(const Design& design, const catalog::Catalog& shop, const catalog::Sheet& sheet)
        : design_(design), shop_(shop), sheet_(sheet) {}

    std::vector<ClosedLoop> all() const {
        std::vector<ClosedLoop> found;
        for (std::size_t k = 0; k < design_.fittings.size(); ++k) {
            const Fitting* fitting = bare(k);
            if (fitting == nullptr) continue;
            if (fitting->form == FittingForm::Bolt) {
                if (const Fitting* frame = bridge()) found.push_back(byBolt(k, *fitting, *frame));
            } else if (fitting->round != Round::Nothing) {
                found.push_back(byItself(k, *fitting));
            }
        }
        return found;
    }

private:
    /// The fitting if it conducts and nothing breaks its loop.
    const Fitting* bare(std::size_t k) const {
        const FittingUse& use = design_.fittings[k];
        const Fitting* fitting = part(design_, use.fitting, shop_);
        return fitting != nullptr && fitting->conducts() && !use.insulated ? fitting : nullptr;
    }
    /// What bolts close their loop by.
    const Fitting* bridge() const {
        for (std::size_t k = 0; k < design_.fittings.size(); ++k)
            if (const Fitting* f = bare(k);
                f != nullptr && f->strip > 0 && (f->form == FittingForm::Frame || f->form == FittingForm::Clamp))
                return f;
        return nullptr;
    }
    ClosedLoop byItself(std::size_t k, const Fitting& fitting) const {
        const Iron iron = ironIn(fitting.round, design_.core, sheet_);
        const double line = 2 * (iron.width + design_.core.height) + 4 * fitting.thickness;
        return {k, std::string("a ") + json::wordOf(fitting.form) + " that closes a loop round " + iron.words,
                iron.share, fitting.resistivity * line / (fitting.strip * fitting.thickness)};
    }
    ClosedLoop byBolt(std::size_t k, const Fitting& bolt, const Fitting& frame) const {
        const double height = design_.core.height, radius = bolt.thickness / 2;
        const double through = bolt.resistivity * height / (std::numbers::pi * radius * radius);
        const double back = frame.resistivity * (height + sheet_.yoke) / (frame.strip * frame.thickness);
        constexpr double outsideTheHole = 0.5;
        return {k, "a bolt that closes a loop round iron with the " + std::string(json::wordOf(frame.form)),
                outsideTheHole * ironIn(Round::Yoke, design_.core, sheet_).share, through + back};
    }

    const Design& design_;
    const catalog::Catalog& shop_;
    const catalog::Sheet& sheet_;
};

}  // namespace

std::vector<ClosedLoop> closedLoops(const Design& design, const catalog::Catalog& shop) {
    const catalog::Sheet* sheet = part(design, design.core.sheet, shop);
    return sheet != nullptr ? Loops(design, shop, *sheet).all() : std::vector<ClosedLoop>{};
}

double loadOf(const ClosedLoop& loop, double turns) noexcept {
    return turns * turns * loop.resistance / (loop.share * loop.share);
}

}  // namespace design
