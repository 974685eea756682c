// SPDX-License-Identifier: GPL-3.0-or-later
// Text of a paper's content as Qt paints it.
#pragma once

#include <QString>
#include <string>

namespace papers {

[[nodiscard]] inline QString qt(const std::string& text) {
    return QString::fromStdString(text);
}

}  // namespace papers
