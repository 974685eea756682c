// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/named_files.h"

#include <filesystem>

#include "exchange/read_file.h"

namespace exchange {

std::vector<catalog::CatalogFile> namedFiles(const std::vector<std::string>& folders,
                                             std::initializer_list<const char*> names) {
    std::vector<catalog::CatalogFile> files;
    for (const std::string& folder : folders)
        for (const char* name : names) {
            const auto path = std::filesystem::path(folder) / name;
            std::error_code unreadable;  // reported by the reading below, with the path
            if (std::filesystem::exists(path, unreadable)) files.push_back({path.string(), readFile(path.string())});
        }
    return files;
}

}  // namespace exchange
