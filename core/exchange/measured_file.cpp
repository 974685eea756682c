// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/measured_file.h"

#include <algorithm>
#include <cctype>

#include "exchange/touchstone_reader.h"
#include "measured/terminated.h"

namespace exchange {

bool isTouchstone(const std::string& path) {
    const auto dot = path.rfind('.');
    std::string ending = dot == std::string::npos ? "" : path.substr(dot + 1);
    std::transform(ending.begin(), ending.end(), ending.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return ending == "ts" || (ending.size() >= 3 && ending.front() == 's' && ending.back() == 'p' &&
                              ending.find_first_not_of("0123456789", 1) == ending.size() - 1);
}

MeasuredTable readMeasuredFile(std::string_view text, const std::string& path, const design::HookUp& hookUp,
                               const std::string& impedanceAt, const PickingWish& wish) {
    if (!isTouchstone(path)) return readMeasuredTable(text, path, guessedPicking(text, path, wish));
    const auto data = readTouchstone(text, path);
    return {measured::terminated(data, hookUp, impedanceAt, path).curves, data.remarks};
}

}  // namespace exchange
