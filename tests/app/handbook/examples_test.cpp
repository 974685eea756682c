// SPDX-License-Identifier: GPL-3.0-or-later
// Every file that the handbook shows is read as it stands, by the readers of the program.
#include <gtest/gtest.h>

#include <QFile>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <map>

#include "exchange/load_catalog.h"
#include "exchange/load_tolerances.h"
#include "exchange/lot_entry.h"
#include "exchange/read_file.h"
#include "exchange/winder.h"
#include "shop/prices.h"

namespace examples_test {

/// Files shown in pages, "```json sheets.json", by their name.
std::map<std::string, std::string> shown(const char* page) {
    const QString text =
        QString::fromStdString(exchange::readFile(std::string(COILWRIGHT_SOURCE_DIR "/resources/handbook/") + page));
    const QRegularExpression form("```(?:json|csv) (\\S+)\n(.*?)```", QRegularExpression::DotMatchesEverythingOption);
    std::map<std::string, std::string> files;
    for (auto match = form.globalMatch(text); match.hasNext();) {
        const auto one = match.next();
        EXPECT_TRUE(files.emplace(one.captured(1).toStdString(), one.captured(2).toStdString()).second);
    }
    return files;
}

class HandbookExamples : public testing::Test {
protected:
    std::map<std::string, std::string> files = shown("parts.md");
    QTemporaryDir own;

    void SetUp() override {
        for (const auto& [name, text] : files) {
            QFile file(own.filePath(QString::fromStdString(name)));
            ASSERT_TRUE(file.open(QIODevice::WriteOnly));
            file.write(QByteArray::fromStdString(text));
        }
    }
    [[nodiscard]] std::vector<std::string> folders() const {
        return {COILWRIGHT_SOURCE_DIR "/resources", own.path().toStdString()};
    }
};

TEST_F(HandbookExamples, PartsLoadBesideTheProgramsOwn) {
    const catalog::Catalog shop = exchange::loadCatalog(folders());
    EXPECT_DOUBLE_EQ(shop.sheets.at("our-EI50").tongue.value, 0.0167);
    EXPECT_EQ(shop.alloys.at("nickel-50-lot7").curve.size(), 9U);
    EXPECT_DOUBLE_EQ(shop.wires.at("reel 31").overallDiameter.value, 0.000118);
    EXPECT_EQ(shop.bobbins.at("our-EI48-2").chambers.size(), 2U);
    EXPECT_EQ(shop.insulation.at("our-paper").thicknesses.size(), 2U);
    EXPECT_DOUBLE_EQ(shop.fittings.at("our-frame-EI48").strip.value, 0.006);
    EXPECT_EQ(shop.sundries.at("our-lead").colours.size(), 2U);
    EXPECT_TRUE(shop.sheets.contains("EI48"));
}

TEST_F(HandbookExamples, AToleranceRulesOverTheProgramsOwn) {
    const catalog::Tolerances before = exchange::loadTolerances({COILWRIGHT_SOURCE_DIR "/resources"});
    const catalog::Tolerances now = exchange::loadTolerances(folders());
    EXPECT_EQ(now.size(), before.size());
    EXPECT_DOUBLE_EQ(now.at("joint_gap").plusMinus, 0.35);
    EXPECT_NE(before.at("joint_gap").plusMinus, 0.35);
}

TEST_F(HandbookExamples, ALotIsFittedAndLoads) {
    const catalog::Catalog shop = exchange::loadCatalog({COILWRIGHT_SOURCE_DIR "/resources"});
    const exchange::FittedLot fitted =
        exchange::fittedLot(files.at("lot.csv"), "lot.csv", "nickel-50-lot8", "lot 8", shop.alloys.at("nickel-50"));
    QFile entry(own.filePath("alloys.json"));
    ASSERT_TRUE(entry.open(QIODevice::WriteOnly));
    entry.write(QByteArray::fromStdString(fitted.entry));
    entry.close();
    // The invented table follows 5200 and 11000 m/A with 1.48 T beyond air; 4.4 A/m is said.
    const catalog::Alloy lot = exchange::loadCatalog(folders()).alloys.at("nickel-50-lot8");
    EXPECT_NEAR(lot.initialPermeability.value, 5200, 300);
    EXPECT_NEAR(lot.coercivity.value, 4.4, 0.3);
}

TEST_F(HandbookExamples, PricesAreRead) {
    const shop::Prices prices = shop::readPrices(files.at("prices.csv"), "prices.csv");
    EXPECT_EQ(prices.currency, "EUR");
    EXPECT_DOUBLE_EQ(prices.labour, 45);
    EXPECT_EQ(prices.parts.size(), 3U);
}

TEST_F(HandbookExamples, TheWinderIsSound) {
    const auto winders = shown("winders.md");
    ASSERT_EQ(winders.size(), 1U);
    const exchange::Winder winder = exchange::readWinder(winders.begin()->second, "winder.json");
    EXPECT_EQ(winder.title, "Bench winder with traverse");
    EXPECT_DOUBLE_EQ(winder.spindle.highestRpm, 2500);
}

TEST_F(HandbookExamples, NoneIsLeftOut) {
    EXPECT_EQ(files.size(), 10U);
}

}  // namespace examples_test
