// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench_designs.h"

#include <algorithm>
#include <filesystem>

#include "design/edit.h"
#include "exchange/design_json.h"
#include "exchange/load_catalog.h"
#include "exchange/read_file.h"

namespace benchmarks {

namespace {

namespace fs = std::filesystem;
const fs::path root = COILWRIGHT_SOURCE_DIR;

design::DesignPtr read(const fs::path& path) {
    return exchange::readDesign(exchange::readFile(path.string()), path.filename().string(), shop()).design;
}

/// Every design in a folder and those below it, sorted by path.
std::vector<Subject> designsIn(const char* folder) {
    std::vector<fs::path> files;
    for (const auto& entry : fs::recursive_directory_iterator(root / folder))
        if (entry.path().extension() == ".coilwright") files.push_back(entry.path());
    std::sort(files.begin(), files.end());
    std::vector<Subject> all;
    for (const fs::path& file : files) all.push_back({file.stem().string(), read(file)});
    return all;
}

}  // namespace

const catalog::Catalog& shop() {
    static const catalog::Catalog all = exchange::loadCatalog({(root / "resources").string()});
    return all;
}

std::vector<Subject> demoDesigns() {
    return designsIn("demo-projects");
}

std::vector<Subject> subjects() {
    std::vector<Subject> all = designsIn("tests/references");
    for (Subject& demo : demoDesigns()) all.push_back(std::move(demo));
    for (const int layers : {16, 24, 32, 64, 128}) {
        const std::string name = std::to_string(layers) + "_layers";
        all.push_back({name, read(root / "tests/benchmarks" / (name + ".coilwright"))});
    }
    return all;
}

design::DesignPtr withTurns(const design::Design& design, double by) {
    return design::changed(design, [by](design::Design& d) {
        for (design::Place& place : d.coil)
            for (design::Item& item : place.order)
                if (design::Section* s = item.section()) {
                    s->turns = s->turns + by;
                    return;
                }
    });
}

}  // namespace benchmarks
