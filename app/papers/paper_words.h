// SPDX-License-Identifier: GPL-3.0-or-later
// In which languages papers can be had.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "shop/words.h"

namespace papers {

/// Keys of the tables there are, "de" for `words/de.csv` in any of the folders, sorted; English is not among them.
[[nodiscard]] std::vector<std::string> paperLanguages(const std::vector<std::string>& folders);

/// The table of a language, the last folder's where several have one; null for "" and "en". Throws units::BadInput,
/// place `place`, where there is none, and for a table that is not sound.
[[nodiscard]] std::shared_ptr<const shop::Words> paperWords(const std::string& language,
                                                            const std::vector<std::string>& folders,
                                                            const std::string& place);

}  // namespace papers
