// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/load_catalog.h"

#include <filesystem>

#include "exchange/read_file.h"

namespace exchange {

catalog::Catalog loadCatalog(const std::vector<std::string>& folders) {
    std::vector<catalog::CatalogFile> files;
    for (const std::string& folder : folders)
        for (const char* name : {"sheets.json", "alloys.json", "wires.json", "bobbins.json", "insulation.json"}) {
            const auto path = std::filesystem::path(folder) / name;
            std::error_code unreadable;  // reported by the reading below, with the path
            if (std::filesystem::exists(path, unreadable)) files.push_back({path.string(), readFile(path.string())});
        }
    return catalog::load(files);
}

}  // namespace exchange
