// SPDX-License-Identifier: GPL-3.0-or-later
// The words and numbers of a Touchstone file, line by line, and what its head says.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "measured/network_data.h"

namespace exchange::detail {

/// A word with the line it stands in, counted from 1; without comments, in small letters.
struct TouchstoneWord {
    std::string text;
    int line = 0;
};
enum class TouchstoneLineKind { Options, Keyword, Data };
/// A line that says something. Of a keyword, `keyword` is what stands in brackets and `words` what stands behind.
struct TouchstoneLine {
    TouchstoneLineKind kind = TouchstoneLineKind::Data;
    int number = 0;
    std::string keyword;
    std::vector<TouchstoneWord> words;
};
/// All lines but comments and empty ones. Throws units::BadInput for a character that no text has.
[[nodiscard]] std::vector<TouchstoneLine> touchstoneLines(std::string_view text, const std::string& file);

enum class PairForm { RealImaginary, MagnitudeAngle, DecibelAngle };
struct TouchstoneOptions {
    double hertz = 1e9;  ///< of the unit of frequency
    measured::Parameter parameter = measured::Parameter::S;
    PairForm form = PairForm::MagnitudeAngle;
    std::vector<double> reference{50};  ///< one, or one a port
};
[[nodiscard]] TouchstoneOptions touchstoneOptions(const TouchstoneLine& line, const std::string& file);

/// "F: line 3".
[[nodiscard]] std::string touchstonePlace(const std::string& file, int line);
[[nodiscard]] double touchstoneNumber(const TouchstoneWord& word, const std::string& file);
/// A whole number from 1 to `most`, the only word behind a keyword.
[[nodiscard]] int touchstoneCount(const TouchstoneLine& line, int most, const std::string& file);

}  // namespace exchange::detail
