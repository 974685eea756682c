// SPDX-License-Identifier: GPL-3.0-or-later
// A trace as comma-separated text: the command line and the plots' own menu write the same.
#pragma once

#include <string>

#include "analysis/answer.h"

namespace plots {

/// First line the names of the axis ("frequency_Hz") and of the curves; then one line a place on it. A value that is
/// not finite is left empty. Text with a comma, quote or line break stands in quotes.
[[nodiscard]] std::string traceCsv(const analysis::Trace& trace);

/// "frequency_Hz,level_dBu,thd_percent,h2_dB, … h7_dB"; harmonics that are not there are left empty.
[[nodiscard]] std::string distortionCsv(const std::vector<analysis::DistortionRow>& rows);

}  // namespace plots
