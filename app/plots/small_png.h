// SPDX-License-Identifier: GPL-3.0-or-later
// A picture in few bytes.
#pragma once

#include <QImage>
#include <string>

namespace plots {

/// As PNG with a palette: its 256 most frequent colours, every other one as the nearest of these. Windows, plots and
/// papers have few; what changes is in the edges of letters.
[[nodiscard]] std::string smallPng(const QImage& picture);

}  // namespace plots
