// SPDX-License-Identifier: GPL-3.0-or-later
// The short list of a search as text.
#pragma once

#include <string>
#include <vector>

#include "seek/damping.h"
#include "seek/search.h"

namespace commands {

/// `paths`: where the candidates were written; empty: nowhere.
[[nodiscard]] std::string seekTable(const seek::Need& need, const seek::ShortList& list, const seek::Plan& plan,
                                    const std::vector<std::string>& paths);

/// A series RC and what it does, as text; `path`: where the damped design was written, "" nowhere.
[[nodiscard]] std::string dampingTable(const seek::Damping& found, bool flat, const std::string& path);

}  // namespace commands
