// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/verb.h"

#include <filesystem>

#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "units/fault.h"

namespace commands {

design::DesignPtr readDesign(const std::string& path, const catalog::Catalog& shop) {
    return exchange::readDesign(exchange::readFile(path), path, shop).design;
}

Opened openDesign(const std::string& path) {
    Opened opened;
    opened.shop = shopCatalog(places());
    opened.design = readDesign(path, opened.shop);
    opened.digest = exchange::digestOf(*opened.design, opened.shop);
    return opened;
}

void makeFolder(const std::string& folder) {
    std::error_code failure;
    std::filesystem::create_directories(folder, failure);
    if (failure || !std::filesystem::is_directory(folder))
        units::refuse(folder, failure ? failure.message() : "a file of that name",
                      "a folder that exists or can be created");
}

std::string programName() {
    return "coilwright " COILWRIGHT_VERSION;
}

}  // namespace commands
