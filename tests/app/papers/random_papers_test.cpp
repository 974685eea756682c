// SPDX-License-Identifier: GPL-3.0-or-later
// Papers of random valid designs: a sample here, 1000 with COILWRIGHT_FULL in the environment (target `full`), from
// design COILWRIGHT_FROM on where a run was broken off. All papers twice, the same bytes; every PDF sound, all vector,
// its text inside the margins and apart; turns, sheets and terminals counted anew.
#include <QTemporaryDir>
#include <cmath>
#include <cstdio>
#include <cstdlib>

#include "made_of.h"
#include "pdf_tools.h"
#include "random_designs.h"
#include "shop/winding_sheet.h"

using namespace pdf_tools;

namespace random_papers_test {

using winding_cases::shop;

/// Turns that the spindle makes: wires in one hand go round together.
double spindleTurns(const design::Design& design) {
    double all = 0;
    for (const auto& place : design.coil) {
        std::string hand;
        double most = 0;
        for (const auto& item : place.order) {
            const auto* s = item.section();
            const bool joins = s != nullptr && !s->hand.empty() && s->hand == hand;
            hand = s != nullptr ? s->hand : "";
            if (!joins) {
                all += most;
                most = 0;
            }
            if (s != nullptr) most = std::max(most, s->turns.value);
        }
        all += most;
    }
    return all;
}

void expectCounts(const design::Design& design, const ::shop::WindingSheet& sheet) {
    double turns = 0;
    for (const auto& step : sheet.steps) {
        double layers = 0;
        for (const auto& layer : step.layers) layers += layer.turns;
        if (!step.layers.empty()) {
            EXPECT_NEAR(layers, step.turns, 1e-6) << step.number;
        }
        if (step.kind == ::shop::StepKind::Wire) turns += step.turns;
    }
    EXPECT_NEAR(turns, spindleTurns(design), 1e-6);
    for (const auto& terminal : design.terminals) {
        const std::string place = terminal.pin > 0 ? "pin " + std::to_string(terminal.pin) : "(" + terminal.name + ")";
        bool served = false;
        for (const auto& step : sheet.steps)
            for (const auto& action : step.actions) served = served || action.words.find(place) != std::string::npos;
        EXPECT_TRUE(served) << terminal.name;
    }
}

TEST(RandomPapers, AreSoundAlikeTwiceAndCountWhatTheDesignHas) {
    const bool full = std::getenv("COILWRIGHT_FULL") != nullptr;
    const int count = full ? 1000 : 4;
    const char* from = std::getenv("COILWRIGHT_FROM");
    const int first = from == nullptr ? 0 : std::atoi(from);
    ASSERT_LT(first, count) << "COILWRIGHT_FROM leaves no design";
    winding_cases::RandomDesigns designs(77);
    const ::shop::Issue issue{"2026-03-14", std::string(64, 'b')};
    for (int k = 0; k < count && !testing::Test::HasFailure(); ++k) {
        SCOPED_TRACE("design " + std::to_string(k));
        design::Design design = designs.next();
        if (k < first) continue;
        if (k % 3 == 1) design.name = "A name of sixty letters that a customer has thought of, and more";
        const auto format = k % 2 == 0 ? papers::Format::A4 : papers::Format::Letter;
        expectCounts(design, ::shop::windingSheet(design, shop(), issue));
        papers::Source source = made_of::sourceOf(design);
        source.format = format;
        source.issue.manner.in.inch = k % 4 == 1;
        const auto all = [&] {
            std::vector<QByteArray> made;
            // The plan's prediction is a spread of units of its own; its paper is tried on the demo designs.
            for (const auto& kind : papers::paperKinds())
                if (std::string_view(kind.key) != "test-plan")
                    made.push_back(papers::paintedPdf(papers::made(kind, source).printed));
            return made;
        };
        const std::vector<QByteArray> once = all(), twice = all();
        const QTemporaryDir folder;
        for (std::size_t p = 0; p < once.size(); ++p) {
            SCOPED_TRACE("paper " + std::to_string(p));
            EXPECT_EQ(once[p], twice[p]);
            const QString path = made_of::saved(folder, "paper", once[p]);
            expectSoundVectors(path);
            expectApartAndInside(pagesOf(path));
        }
        constexpr int told = 25;
        if (full && (k + 1) % told == 0) {
            std::printf("%d designs\n", k + 1);
            std::fflush(stdout);
        }
    }
}

}  // namespace random_papers_test
