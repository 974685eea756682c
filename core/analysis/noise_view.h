// SPDX-License-Identifier: GPL-3.0-or-later
// Noise of one solved hook-up.
#pragma once

#include <optional>

#include "analysis/noise.h"
#include "analysis/stages.h"

namespace analysis {

/// What the noise of a hook-up is read from.
class NoiseView {
public:
    /// Nothing where no differential drive or nothing observed is in the hook-up.
    [[nodiscard]] static std::optional<NoiseView> of(const design::Design& design, const Solved& solved);

    /// Noise density at the observed terminals, V/sqrt(Hz), with the amplifier there.
    [[nodiscard]] double density(double frequency) const;
    /// The same at another port, by its index in the circuit, with the amplifier that is said to be there.
    [[nodiscard]] double densityAt(int port, double frequency) const;
    /// Noise figure against the driven port's own resistance, dB; not a number where the source has none.
    [[nodiscard]] double figure(double frequency) const;
    /// The same with the source replaced by each of these resistances. The source of the hook-up must have impedance.
    [[nodiscard]] std::vector<double> figuresFor(const std::vector<double>& sourceOhms, double frequency) const;
    /// By which factor the ratio from source to observed port should be multiplied for the amplifier,
    /// sqrt((e_n/i_n) / |Z|), Z between the observed terminals; nothing without both of the amplifier's noises.
    [[nodiscard]] std::optional<double> ratioFactor(double frequency) const;
    [[nodiscard]] double kelvin() const noexcept { return kelvin_; }
    [[nodiscard]] std::vector<std::string> ports() const;
    [[nodiscard]] std::string source() const;

private:
    NoiseView(const Solved& solved, double kelvin, Amplifier amplifier)
        : solved_(&solved), kelvin_(kelvin), amplifier_(amplifier) {}
    const Solved* solved_;
    double kelvin_;
    Amplifier amplifier_;
};

}  // namespace analysis
