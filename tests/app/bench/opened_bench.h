// SPDX-License-Identifier: GPL-3.0-or-later
// A window with a demo design on the bench.
#pragma once

#include <gtest/gtest.h>

#include <QTest>

#include "bench/bench_window.h"
#include "exchange/design_json.h"
#include "exchange/load_catalog.h"
#include "exchange/read_file.h"

namespace opened_bench {

inline const std::string resources = COILWRIGHT_SOURCE_DIR "/resources";
inline std::string demoFile(const std::string& name) {
    return COILWRIGHT_SOURCE_DIR "/demo-projects/" + name + "/" + name + ".coilwright";
}

class OpenedBench : public testing::Test {
protected:
    explicit OpenedBench(const std::string& name) : file(demoFile(name)) {}

    std::string file;
    std::shared_ptr<const catalog::Catalog> shop =
        std::make_shared<const catalog::Catalog>(exchange::loadCatalog({resources}));
    design::DesignPtr design = exchange::readDesign(exchange::readFile(file), file, *shop).design;
    bench::BenchWindow window{shop, design, {}, {resources}};

    void showWindow() {
        window.show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
        settle();
    }
    /// Until the whole answer stands.
    void settle() {
        ASSERT_TRUE(QTest::qWaitFor(
            [this] { return !window.drawing() && !window.computing() && window.answer() && !window.answer()->carried; },
            60000));
    }
};

}  // namespace opened_bench
