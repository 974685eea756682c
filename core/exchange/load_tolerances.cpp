// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/load_tolerances.h"

#include <filesystem>

#include "exchange/read_file.h"

namespace exchange {

catalog::Tolerances loadTolerances(const std::vector<std::string>& folders) {
    std::vector<catalog::CatalogFile> files;
    files.reserve(folders.size());
    for (const std::string& folder : folders) {
        const auto path = std::filesystem::path(folder) / "tolerances.json";
        std::error_code unreadable;  // reported by the reading below, with the path
        if (std::filesystem::exists(path, unreadable)) files.push_back({path.string(), readFile(path.string())});
    }
    return catalog::loadTolerances(files);
}

}  // namespace exchange
