// SPDX-License-Identifier: GPL-3.0-or-later
// Figures of one sample as they were measured.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "spread/figure_read.h"
#include "units/figure.h"

namespace exchange {

/// Reads lines FIGURE,VALUE[,DOUBT]:
///
///     inductance_10Hz.P,3.1 H
///     leakage_10kHz.P.S,0.41 mH,2 %
///
/// FIGURE is one of `known`, as the design's figures are named; VALUE with its unit; DOUBT half the width within which
/// the true value lies, in the same unit or per cent of the value. Empty lines and those that begin with # are for
/// people, and so is a first line figure,value or figure,value,doubt. Throws units::BadInput with every fault: place
/// "F: line 3".
[[nodiscard]] std::vector<spread::FigureRead> readReadings(std::string_view text, const std::string& file,
                                                           const std::vector<units::Figure>& known);

/// One reading as a person types it: VALUE and DOUBT ("" not told) as above. Throws units::BadInput at `place`.
[[nodiscard]] spread::FigureRead readReading(const units::Figure& figure, std::string_view value,
                                             std::string_view doubt, const std::string& place);
/// A reading's doubt for editing, in the figure's unit; "" where it is not told.
[[nodiscard]] std::string doubtText(const units::Figure& figure, const spread::FigureRead& reading);
/// What `readReadings` reads back to the same readings. Those of figures that are not `known` are left out.
[[nodiscard]] std::string writeReadings(const std::vector<spread::FigureRead>& readings,
                                        const std::vector<units::Figure>& known);

}  // namespace exchange
