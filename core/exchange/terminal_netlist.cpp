// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/terminal_netlist.h"

#include <algorithm>
#include <cmath>

#include "analysis/stages.h"
#include "exchange/hook_up_response.h"
#include "exchange/netlist_example.h"
#include "exchange/terminal_model.h"
#include "units/joined.h"
#include "units/text.h"

namespace exchange {

namespace {

using Eigen::Index;

/// Sizes that would tell something.
std::vector<Index> tellingSizes(const design::Design& design, const analysis::Answer::Stages& stages,
                                const network::Circuit& unit) {
    std::vector<Index> all{unit.turns.size(), static_cast<Index>(stages.build->layers.size())};
    Index sections = 0;
    for (const auto& w : design.windings) sections += static_cast<Index>(design::sectionsOf(design, w).size());
    all.push_back(sections);
    return all;
}

/// The smallest model that does what the fitted unit does within 0.004 dB and 0.03 degrees in every hook-up.
TerminalModel smallEnough(const FittedUnit& fitted, const SolvedHookUps& hookUps, const std::vector<Index>& avoid) {
    constexpr double level = 0.004, angle = 0.03, finest = 1e-7;
    const auto wanted = hookUps.voltages([&](double f) { return fitted.admittance(f); });
    const Reduction reduction(fitted);
    for (double share = 1e-3;; share /= 3) {
        TerminalModel model = reduction.model(share, avoid);
        const auto got = hookUps.voltages([&](double f) { return model.admittance(f); });
        Deviation off;
        for (std::size_t k = 0; k < got.size(); ++k) off.take(got[k], wanted[k]);
        if ((off.level < level && off.angle < angle) || share < finest) return model;
    }
}

class ModelWriter {
public:
    ModelWriter(const TerminalModel& model, const std::vector<Pin>& pins) : model_(model) {
        text_ = ".subckt unit";
        for (const auto& pin : pins) {
            nodes_.push_back(pin.outside);
            text_ += " " + pin.outside;
        }
        text_ += "\n";
        for (Index k = model.pins; k < model.capacitance.rows(); ++k)
            nodes_.push_back("n" + std::to_string(k - model.pins + 1));
    }

    std::string write() {
        const auto& c = model_.capacitance;
        const double least = 1e-9 * c.diagonal().head(model_.pins).minCoeff();
        for (Index i = 0; i < c.rows(); ++i) {
            if (const double toEarth = c.row(i).sum(); std::abs(toEarth) > least) element("c", i, "0", toEarth);
            if (model_.conductance(i) > 0) element("r", i, "0", 1 / model_.conductance(i));
            for (Index k = i + 1; k < c.cols(); ++k)
                if (std::abs(c(i, k)) > least) element("c", i, nodes_[static_cast<std::size_t>(k)], -c(i, k));
        }
        for (Index m = 0; m < model_.coupling.cols(); ++m) writeBranch(m);
        return text_ + ".ends unit\n";
    }

private:
    void element(const std::string& letter, Index from, const std::string& to, double value) {
        line(letter, nodes_[static_cast<std::size_t>(from)] + " " + to, value);
    }
    void line(const std::string& letter, const std::string& ends, double value) {
        text_ += letter + std::to_string(++count_) + " " + ends + " " + units::shortest(value) + "\n";
    }
    void writeBranch(Index m) {
        const std::string own = "i" + std::to_string(m + 1);
        line("c", own + " 0", model_.inductance(m));
        line("r", own + " 0", 1 / std::max(1e-12, model_.resistance(m)));
        for (Index k = 0; k < model_.coupling.rows(); ++k) {
            const double a = model_.coupling(k, m);
            if (std::abs(a) < 1e-13) continue;
            const auto& node = nodes_[static_cast<std::size_t>(k)];
            line("g", units::joined({node, " 0 ", own, " 0"}), a);
            line("g", units::joined({"0 ", own, " ", node, " 0"}), a);
        }
    }

    const TerminalModel& model_;
    std::vector<std::string> nodes_;
    std::string text_;
    int count_ = 0;
};

}  // namespace

std::string terminalNetlist(const design::Design& design, const analysis::Answer& answer) {
    const auto unit = analysis::unitCircuit(design, *answer.stages);
    const ReachedPins reached = reachedPins(design, unit);
    const std::string examples = exampleCircuits(design, answer, reached.pins);
    const SolvedHookUps hookUps(design, answer, reached.names);
    const UnitLosses losses = unitLosses(unit, false);
    const FittedUnit fitted(unit, losses, reached.nodes);
    const TerminalModel model = smallEnough(fitted, hookUps, tellingSizes(design, *answer.stages, unit));
    std::string text = outsideTitle(design, "* ") + "* What the unit does at its terminals, for small signals.\n";
    text += hookUps.words([&](double f) { return model.admittance(f); });
    for (const auto& pin : reached.pins) text += "* " + pin.outside + ": " + pin.words + "\n";
    return text + ModelWriter(model, reached.pins).write() + examples;
}

}  // namespace exchange
