// SPDX-License-Identifier: GPL-3.0-or-later
// Rejection of what drives both ends alike.
#pragma once

#include <optional>

#include "analysis/stages.h"
#include "network/legs.h"

namespace analysis {

/// Rejections of one hook-up at one frequency, dB.
struct Rejection {
    double balanced = 0;  ///< source as the hook-up has it
    double unequal = 0;   ///< worse of the two cases with 10 ohm more in one leg
    double output =
        0;  ///< voltage between the observed terminals over their mean to earth; not a number: one is earthed
};

/// A hook-up's common-mode test: the driven port becomes balanced, half of its source in each leg, and the EMF stands
/// in both legs alike; rejection is the differential gain over that gain, both from source EMF (method of IEC 60268-3,
/// from memory). There 10 ohm are put into one leg, then into the other, and the worse counts.
class CommonModeTest {
public:
    /// Nothing where the hook-up drives or observes nothing, the source has no impedance, or both ends of the driven
    /// port cannot move because one is earthed by the hook-up itself.
    [[nodiscard]] static std::optional<CommonModeTest> of(const design::Design& design, const Solved& solved,
                                                          const Answer::Stages& stages,
                                                          network::Prepared::Currents currents);
    [[nodiscard]] Rejection at(double frequency) const;
    /// At many, carried between few solved frequencies.
    [[nodiscard]] std::vector<Rejection> over(const std::vector<double>& frequencies,
                                              const std::stop_token& stop) const;
    [[nodiscard]] std::vector<std::string> ports() const;

private:
    CommonModeTest(network::Prepared network, int driven, int observed)
        : network_(std::move(network)), driven_(driven), observed_(observed) {}
    [[nodiscard]] Rejection read(const network::ComplexVector& outputs, double frequency) const;
    network::Prepared network_;
    int driven_, observed_;
};

/// 20 log of a gain over another; 300 dB where there is none of the second.
[[nodiscard]] double rejectionDecibels(network::Complex wanted, network::Complex unwanted) noexcept;

/// Rejection of the legs as they are, and the worse with `ohm` more in one of two.
[[nodiscard]] Rejection rejectionOf(const network::Legs& legs, double ohm = 10);

}  // namespace analysis
