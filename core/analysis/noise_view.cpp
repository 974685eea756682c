// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/noise_view.h"

#include <cmath>
#include <limits>

#include "network/legs.h"

namespace analysis {

namespace {

const network::CircuitPort& portOf(const network::Circuit& c, int index) {
    return c.ports[static_cast<std::size_t>(index)];
}

Amplifier amplifierOf(const Solved& solved, int port) {
    const auto& name = portOf(solved.network.circuit(), port).name;
    for (const auto& use : solved.hookUp.ports)
        if (use.port == name) return {use.amplifierVoltageNoise, use.amplifierCurrentNoise};
    return {};
}

}  // namespace

std::optional<NoiseView> NoiseView::of(const design::Design& design, const Solved& solved) {
    const int driven = solved.driven(), observed = solved.observed();
    if (driven < 0 || observed < 0 || portOf(solved.network.circuit(), driven).common) return {};
    return NoiseView(solved, design.conditions.temperature + 273.15, amplifierOf(solved, observed));
}

double NoiseView::density(double frequency) const {
    const int at = solved_->network.layout().totalImpedance(solved_->observed());
    return outputNoise(solved_->at(frequency, at), kelvin_, amplifier_);
}

double NoiseView::densityAt(int port, double frequency) const {
    const int at = solved_->network.layout().totalImpedance(port);
    return outputNoise(solved_->at(frequency, at), kelvin_, amplifierOf(*solved_, port));
}

double NoiseView::figure(double frequency) const {
    const auto& c = solved_->network.circuit();
    const double own = network::throughImpedance(c, solved_->driven(), frequency).real();
    if (!(own > 0)) return std::numeric_limits<double>::quiet_NaN();
    const int gain = solved_->network.layout().voltage(solved_->driven(), solved_->observed());
    return noiseFigure(density(frequency), kelvin_, own, std::abs(solved_->at(frequency, gain)));
}

std::vector<double> NoiseView::figuresFor(const std::vector<double>& sourceOhms, double frequency) const {
    const int driven = solved_->driven(), observed = solved_->observed();
    const network::Prepared network(network::withLegPorts(solved_->network.circuit(), driven, observed),
                                    network::Prepared::Currents::Branches);
    const auto& c = network.circuit();
    const network::Legs own = network::legs(c, network.solve(frequency), driven, observed, frequency);
    const network::Complex seen = network::throughImpedance(c, driven, frequency);
    const auto count = own.transfer.size();
    std::vector<double> figures;
    figures.reserve(sourceOhms.size());
    for (const double ohm : sourceOhms) {
        const network::ComplexVector added =
            network::ComplexVector::Constant(count, (ohm - seen) / static_cast<double>(count));
        const network::Legs other = network::withAdded(own, added);
        figures.push_back(
            noiseFigure(outputNoise(other.output, kelvin_, amplifier_), kelvin_, ohm, std::abs(other.differential)));
    }
    return figures;
}

std::optional<double> NoiseView::ratioFactor(double frequency) const {
    if (!(amplifier_.voltage > 0) || !(amplifier_.current > 0)) return {};
    const int at = solved_->network.layout().totalImpedance(solved_->observed());
    const double seen = std::abs(solved_->at(frequency, at));
    if (!(seen > 0)) return {};
    return std::sqrt(bestSource(amplifier_) / seen);
}

std::vector<std::string> NoiseView::ports() const {
    const auto& c = solved_->network.circuit();
    return {portOf(c, solved_->driven()).name, portOf(c, solved_->observed()).name};
}

std::string NoiseView::source() const {
    const bool quiet = amplifier_.voltage == 0 && amplifier_.current == 0;
    return std::string("4 k T Re Z at the observed terminals (Nyquist), all parts at one temperature, ") +
           (quiet ? "no amplifier" : "with the amplifier's voltage and current noise");
}

}  // namespace analysis
