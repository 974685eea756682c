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

/// Wire, papers and turns a layer divided so that each of the four sections has `times` as many layers, 4 at first,
/// in the same room.
design::DesignPtr finer(const design::Design& from, int times) {
    return design::changed(from, [times](design::Design& d) {
        for (design::Winding& w : d.windings) {
            auto thin = std::make_shared<catalog::Wire>(*w.wire.own);
            thin->bareDiameter = thin->bareDiameter / times;
            thin->overallDiameter = thin->overallDiameter / times;
            w.wire.own = thin;
        }
        for (design::Place& place : d.coil)
            for (design::Item& item : place.order)
                if (design::Section* s = item.section()) {
                    s->turnsPerLayer *= times;
                    s->turns = 4 * times * s->turnsPerLayer;
                    if (s->interlayer) s->interlayer->thickness = s->interlayer->thickness / times;
                }
    });
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
    const design::DesignPtr four = read(root / "tests/references/open_2_interleaved_line.coilwright");
    for (const int times : {1, 2, 4, 8}) all.push_back({std::to_string(16 * times) + "_layers", finer(*four, times)});
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
