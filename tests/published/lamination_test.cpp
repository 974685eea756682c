// SPDX-License-Identifier: GPL-3.0-or-later
// Lamination sheets of the catalog against their standards' dimensions and the relations between them.
//
// Sources: DIN 41302 / IEC 60740-1 for EI, M and UI (memory; the scrapless rule gives the rest of EI and UI);
// W. T. McLyman, Transformer and Inductor Design Handbook, 3rd ed. 2004, ch. 3 for the inch sizes (dimensions memory,
// values derived).
#include <gtest/gtest.h>

#include <algorithm>
#include <ostream>
#include <string>

#include "read_resources.h"

namespace lamination_test {

constexpr double mm = 1e-3, cm = 1e-2, cm2 = 1e-4;

const catalog::Sheet& sheetOf(const std::string& key) {
    return shopCatalog().sheets.at(key);
}

struct Scrapless {
    const char* key;
    double tongue, windowWidth, windowHeight, width, height, path, windowArea;  // mm, mm2
};
void PrintTo(const Scrapless& s, std::ostream* out) {
    *out << "L-" << s.key;
}
class PublishedScrapless : public testing::TestWithParam<Scrapless> {};

TEST_P(PublishedScrapless, Dimensions) {
    const Scrapless& row = GetParam();
    const catalog::Sheet& sheet = sheetOf(row.key);
    EXPECT_NEAR(sheet.tongue, row.tongue * mm, 1e-9);
    EXPECT_NEAR(sheet.windowWidth, row.windowWidth * mm, 1e-9);
    EXPECT_NEAR(sheet.windowHeight, row.windowHeight * mm, 1e-9);
    EXPECT_NEAR(catalog::overallWidth(sheet), row.width * mm, 1e-9);
    EXPECT_NEAR(catalog::overallHeight(sheet), row.height * mm, 1e-9);
    EXPECT_NEAR(catalog::pathLength(sheet), row.path * mm, 1e-9);
    EXPECT_NEAR(catalog::windowArea(sheet), row.windowArea * mm * mm, 1e-12);
}

// IEC 60740-1 YEI 1 / DIN 41302 EI (memory, high); path and window area follow from the tongue.
INSTANTIATE_TEST_SUITE_P(
    Rows, PublishedScrapless,
    testing::Values(Scrapless{"EI30", 10, 5, 15, 30, 25, 60, 75},
                    Scrapless{"EI38", 12.8, 6.4, 19.2, 38.4, 32, 76.8, 122.88},
                    Scrapless{"EI42", 14, 7, 21, 42, 35, 84, 147}, Scrapless{"EI48", 16, 8, 24, 48, 40, 96, 192},
                    Scrapless{"EI54", 18, 9, 27, 54, 45, 108, 243}, Scrapless{"EI60", 20, 10, 30, 60, 50, 120, 300},
                    Scrapless{"EI66", 22, 11, 33, 66, 55, 132, 363}, Scrapless{"EI78", 26, 13, 39, 78, 65, 156, 507},
                    Scrapless{"EI84", 28, 14, 42, 84, 70, 168, 588},
                    Scrapless{"UI30", 10, 10, 30, 30, 50, 120, 300}));  // DIN 41302 (memory, medium)

TEST(PublishedLaminations, EveryScraplessSheetKeepsItsRule) {
    // Scrapless: two E and two I come from one strip, so the window is a/2 by 3a/2 and the path 6a (geometry).
    int count = 0;
    for (const auto& [key, sheet] : shopCatalog().sheets) {
        if (sheet.title.find(", scrapless") == std::string::npos) continue;
        const bool shell = sheet.cut == catalog::SheetCut::EI;
        const double a = sheet.tongue;
        EXPECT_NEAR(catalog::pathLength(sheet), (shell ? 6 : 12) * a, 2e-9) << key;
        EXPECT_NEAR(catalog::overallWidth(sheet), 3 * a, 2e-9) << key;
        EXPECT_NEAR(catalog::overallHeight(sheet), (shell ? 2.5 : 5) * a, 3e-9) << key;
        ++count;
    }
    EXPECT_GE(count, 30);
}

struct OnePiece {
    const char* key;
    double tongue, windowWidth, windowHeight, leg, overall, path, pathTolerance;  // mm; tolerance relative
};
void PrintTo(const OnePiece& s, std::ostream* out) {
    *out << "L-" << s.key;
}
class PublishedOnePiece : public testing::TestWithParam<OnePiece> {};

TEST_P(PublishedOnePiece, Dimensions) {
    const OnePiece& row = GetParam();
    const catalog::Sheet& sheet = sheetOf(row.key);
    EXPECT_EQ(sheet.cut, catalog::SheetCut::M);
    EXPECT_NEAR(sheet.tongue, row.tongue * mm, 1e-9);
    EXPECT_NEAR(sheet.windowWidth, row.windowWidth * mm, 1e-9);
    EXPECT_NEAR(sheet.windowHeight, row.windowHeight * mm, 1e-9);
    EXPECT_NEAR(sheet.outerLeg, row.leg * mm, 1e-9);
    EXPECT_NEAR(catalog::overallWidth(sheet), row.overall * mm, 1e-9);   // f + 2w + 2c
    EXPECT_NEAR(catalog::overallHeight(sheet), row.overall * mm, 1e-9);  // e + 2c
    EXPECT_NEAR(catalog::pathLength(sheet), row.path * mm, row.pathTolerance * row.path * mm);
}

// DIN 41302 M (memory, high; M 20 and M 30 low). Printed paths round to 1 mm.
INSTANTIATE_TEST_SUITE_P(
    Rows, PublishedOnePiece,
    testing::Values(OnePiece{"M20", 5, 4, 13, 3.5, 20, 47, 0.02}, OnePiece{"M30", 7, 6.5, 20, 5, 30, 71.5, 0.02},
                    OnePiece{"M42", 12, 9, 30, 6, 42, 102, 0.01}, OnePiece{"M55", 17, 10.5, 38, 8.5, 55, 131, 0.01},
                    OnePiece{"M65", 20, 12.5, 45, 10, 65, 155, 0.01}, OnePiece{"M74", 23, 14, 51, 11.5, 74, 176, 0.01},
                    OnePiece{"M85", 29, 13.5, 56, 14.5, 85, 197, 0.01},
                    OnePiece{"M102", 34, 17, 68, 17, 102, 238, 0.01}));

struct InchSheet {
    const char* key;
    double path, windowArea, section;  // cm, cm2, cm2 of a square stack filled to 0.95
};
void PrintTo(const InchSheet& s, std::ostream* out) {
    *out << "L-" << s.key;
}
class PublishedInchSheet : public testing::TestWithParam<InchSheet> {};

TEST_P(PublishedInchSheet, PathWindowAndSection) {
    const InchSheet& row = GetParam();
    const catalog::Sheet& sheet = sheetOf(row.key);
    EXPECT_NEAR(catalog::pathLength(sheet), row.path * cm, 5e-3 * row.path * cm);
    EXPECT_NEAR(catalog::windowArea(sheet), row.windowArea * cm2, 5e-3 * row.windowArea * cm2);
    EXPECT_NEAR(sheet.tongue * sheet.tongue * 0.95, row.section * cm2, 5e-3 * row.section * cm2);
}

// McLyman ch. 3, design and dimensional data for EI laminations (dimensions memory, values derived; 0.5 %, as the
// handbook prints three digits).
INSTANTIATE_TEST_SUITE_P(
    Rows, PublishedInchSheet,
    testing::Values(InchSheet{"EI-0.375in", 7.303, 1.5121, 0.8619}, InchSheet{"EI-0.500in", 8.255, 1.6381, 1.5323},
                    InchSheet{"EI-0.625in", 9.525, 1.8901, 2.3941}, InchSheet{"EI-0.750in", 11.430, 2.7218, 3.4476},
                    InchSheet{"EI-0.875in", 13.335, 3.7046, 4.6925}, InchSheet{"EI-1.000in", 15.240, 4.8387, 6.1290}));

TEST(PublishedLaminations, ThicknessesOfTelecommunicationCores) {
    // L-TH, IEC 61021-1 in a stored secondary article (seen): 0.10 to 0.35 mm.
    const auto& sheet = sheetOf("EI48");
    EXPECT_EQ(sheet.thicknesses.front(), 0.10 * mm);
    EXPECT_NE(std::find(sheet.thicknesses.begin(), sheet.thicknesses.end(), 0.35 * mm), sheet.thicknesses.end());
}

}  // namespace lamination_test
