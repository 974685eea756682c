// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/load_tolerances.h"

#include "exchange/named_files.h"

namespace exchange {

catalog::Tolerances loadTolerances(const std::vector<std::string>& folders) {
    return catalog::loadTolerances(namedFiles(folders, {"tolerances.json"}));
}

}  // namespace exchange
