// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright picture DESIGN --to F.png [--size 1280x800] [--dark] [--spread] [--language de]
//     [--part cut | figures | plots | promises | winding | papers | spread | units]
#include <QApplication>
#include <QElapsedTimer>
#include <charconv>
#include <memory>

#include "bench/bench_window.h"
#include "bench/language.h"
#include "bench/paper_window.h"
#include "bench/spread_window.h"
#include "bench/theme.h"
#include "bench/units_window.h"
#include "commands/arguments.h"
#include "commands/verb.h"
#include "cut/cut_view.h"
#include "exchange/write_file.h"
#include "plots/small_png.h"
#include "winding/winding_window.h"

namespace commands {

namespace {

constexpr int patience = 20000;  // ms until the window must have its answer

[[noreturn]] void refuseSize(const std::string& found) {
    refuse("--size", '"' + found + '"', "width x height in pixels, 640x480 to 7680x4320");
}

/// "1280x800" as a size.
QSize sizeIn(const std::string& text) {
    int width = 0, height = 0;
    const char* const end = text.data() + text.size();
    const auto first = std::from_chars(text.data(), end, width);
    if (first.ec != std::errc() || first.ptr == end || *first.ptr != 'x') refuseSize(text);
    const auto second = std::from_chars(first.ptr + 1, end, height);
    if (second.ec != std::errc() || second.ptr != end) refuseSize(text);
    if (width < 640 || width > 7680 || height < 480 || height > 4320) refuseSize(text);
    return {width, height};
}

/// Lets the window lay itself out, compute and draw.
void settle(bench::BenchWindow& window) {
    QElapsedTimer clock;
    clock.start();
    do {
        QApplication::processEvents(QEventLoop::AllEvents, 50);
    } while ((window.computing() || !window.answer() || !window.changes().settled()) && clock.elapsed() < patience);
    if (!window.answer()) throw std::runtime_error("picture: the window had no answer within 20 seconds.");
    // Replots are queued once the answer has come.
    for (int round = 0; round < 10; ++round) QApplication::processEvents(QEventLoop::AllEvents, 20);
}

/// Has a production made, and waits for its yields, causes and bands.
void makeUnits(bench::BenchWindow& window) {
    constexpr int longest = 300000;  // ms
    bench::SpreadAsked asked;
    asked.units = 500;
    window.spreadStudy().start(asked);
    QElapsedTimer clock;
    clock.start();
    while (window.spreadStudy().busy() && clock.elapsed() < longest)
        QApplication::processEvents(QEventLoop::AllEvents | QEventLoop::WaitForMoreEvents, 50);
    if (window.spreadStudy().busy() || window.spreadStudy().found() == nullptr)
        throw std::runtime_error("picture: no spread within five minutes. " + window.spreadStudy().why().toStdString());
}

/// What of the window is in the picture; "" all of it.
QWidget* partOf(bench::BenchWindow& window, const std::string& name, const QSize& pixels) {
    if (name.empty()) return &window;
    if (name == "cut") return window.findChild<cut::CutView*>();
    if (name == "figures") return &window.figures();
    if (name == "plots") return &window.plotGrid();
    if (name == "promises") return &window.promises();
    if (name == "papers") {
        window.actions()[bench::Act::Papers].trigger();
        auto* papers = window.findChild<bench::PaperWindow*>();
        papers->resize(pixels);
        while (papers->busy()) QApplication::processEvents(QEventLoop::AllEvents, 50);
        return papers;
    }
    if (name == "spread") {
        window.actions()[bench::Act::Spread].trigger();
        auto* spread = window.findChild<bench::SpreadWindow*>();
        spread->resize(pixels);
        return spread;
    }
    if (name == "units") {
        window.actions()[bench::Act::Units].trigger();
        auto* built = window.findChild<bench::UnitsWindow*>();
        built->resize(pixels);
        while (built->busy()) QApplication::processEvents(QEventLoop::AllEvents, 50);
        return built;
    }
    if (name != "winding")
        refuse("--part", '"' + name + '"', "cut, figures, plots, promises, winding, papers, spread or units");
    window.actions()[bench::Act::WindingProgram].trigger();
    auto* winding = window.findChild<winding::WindingWindow*>();
    winding->resize(pixels);
    return winding;
}

}  // namespace

std::string picture(const std::vector<std::string>& typed) {
    const Arguments arguments =
        sorted(typed, {{"DESIGN"}, {"--dark", "--spread"}, {"--to", "--size", "--part", "--language"}});
    const std::string to = arguments.option("--to"), size = arguments.option("--size");
    if (to.empty()) refuse("--to", "no file", "the PNG file to write");
    const QSize pixels = size.empty() ? QSize(1280, 800) : sizeIn(size);
    const Opened opened = openDesign(arguments.operands.front());
    const std::string asked = arguments.option("--language");
    const auto language =
        bench::windowLanguage(asked.empty() ? "en" : asked, resourceFolders(places()), "command line: --language");
    if (language) QCoreApplication::installTranslator(language.get());
    bench::BenchWindow window(std::make_shared<const catalog::Catalog>(opened.shop), opened.design, {},
                              resourceFolders(places()));
    // After the window, which wears what it remembers.
    bench::applyLook(arguments.flags.contains("--dark") ? bench::Look::Dark : bench::Look::Light);
    window.openFile(QString::fromStdString(arguments.operands.front()));
    window.resize(pixels);
    window.show();
    settle(window);
    if (arguments.flags.contains("--spread") || arguments.option("--part") == "spread") makeUnits(window);
    QWidget* part = partOf(window, arguments.option("--part"), pixels);
    settle(window);
    exchange::writeFile(to, plots::smallPng(part->grab().toImage()));
    return to + '\n';
}

}  // namespace commands
