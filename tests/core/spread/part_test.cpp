// SPDX-License-Identifier: GPL-3.0-or-later
// Parts of a run through files: together they are the run, and what does not belong together is told.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>

#include "exchange/load_tolerances.h"
#include "exchange/spread_json.h"
#include "exchange/spread_part.h"
#include "json/text.h"
#include "small_transformer.h"
#include "units/fault.h"

namespace part_test {

using exchange::SpreadPart;

struct Whole {
    design::Design design = small::transformer();
    catalog::Catalog shop = small::shop();
    spread::Study study;
    spread::Head head;
    explicit Whole(std::uint64_t seed = 1, std::uint64_t units = 30) : study(made(seed, units)) {
        head = spread::headOf(design, "0123456789abcdef", "program", study);
    }
    spread::Study made(std::uint64_t seed, std::uint64_t units) {
        design.core.gap = 4e-6;
        design.brief.promises.resize(2);
        design.brief.promises[0].figure = "dcr.S";
        design.brief.promises[0].atMost = 50;
        design.brief.promises[1].figure = "peak_frequency";  // does not occur in most units
        design.brief.promises[1].atLeast = 1000;
        spread::Plan plan;
        plan.units = units;
        plan.seed = seed;
        plan.lotSize = 4;
        plan.wanted.response = {20, 20000};
        return {design, shop, exchange::loadTolerances({COILWRIGHT_SOURCE_DIR "/resources"}), plan};
    }
    SpreadPart part(std::uint64_t k, std::uint64_t m) const {
        const auto range = spread::partOf(study.plan().units, k, m);
        return {head, k, m, study.run(range.first, range.last)};
    }
};

const Whole& whole() {
    static const Whole made;
    return made;
}

std::string refusal(std::vector<SpreadPart> parts) {
    std::vector<std::string> files;
    for (std::size_t k = 0; k < parts.size(); ++k) files.push_back("F" + std::to_string(k + 1));
    try {
        (void)exchange::gatheredParts(std::move(parts), files);
    } catch (const units::BadInput& bad) {
        return bad.what();
    }
    return "gathered";
}

std::string readRefusal(const std::string& text) {
    try {
        (void)exchange::readSpreadPart(text, "F");
    } catch (const units::BadInput& bad) {
        return bad.what();
    }
    return "read";
}

TEST(SpreadPart, PartsInAnyOrderAreTheRunBitForBit) {
    const auto& w = whole();
    const std::string once = json::write(exchange::spreadJson(w.head, spread::summed(w.head, {w.study.run(0, 30)})));
    for (const std::uint64_t m : {1U, 3U, 7U}) {
        std::vector<SpreadPart> parts;
        std::vector<std::string> files;
        for (std::uint64_t k = m; k >= 1; --k) {
            files.push_back("part " + std::to_string(k));
            parts.push_back(exchange::readSpreadPart(exchange::writeSpreadPart(w.part(k, m)), files.back()));
        }
        EXPECT_TRUE(parts.front().head == w.head);
        const auto batches = exchange::gatheredParts(std::move(parts), files);
        EXPECT_EQ(json::write(exchange::spreadJson(w.head, spread::summed(w.head, batches))), once) << m;
    }
    EXPECT_EQ(once.find("part "), std::string::npos);
}

/// 100 000 units in 16 parts in the target `full`, 1000 in a plain run.
TEST(SpreadPart, ThousandsInPartsAreTheRunBitForBit) {
    const bool full = std::getenv("COILWRIGHT_FULL") != nullptr;
    const std::uint64_t units = full ? 100000 : 1000, m = 16;
    const Whole w(3, units);
    const std::string once = json::write(exchange::spreadJson(w.head, spread::summed(w.head, {w.study.run(0, units)})));
    std::vector<SpreadPart> parts;
    std::vector<std::string> files;
    for (std::uint64_t k = 1; k <= m; ++k) {
        files.push_back("part " + std::to_string(k));
        parts.push_back(exchange::readSpreadPart(exchange::writeSpreadPart(w.part(k, m)), files.back()));
    }
    const auto batches = exchange::gatheredParts(std::move(parts), files);
    EXPECT_TRUE(json::write(exchange::spreadJson(w.head, spread::summed(w.head, batches))) == once);
}

TEST(SpreadPart, WhatDoesNotBelongTogetherIsTold) {
    const auto& w = whole();
    const auto part = [&](std::uint64_t k) { return w.part(k, 3); };
    EXPECT_EQ(refusal({part(1), part(3)}), "gather: found 2 of 3 parts; allowed is all of them; missing: 2.");
    EXPECT_EQ(refusal({part(1), part(2), part(2)}), "F3: found part 2 of 3 again; allowed is each part once.");
    EXPECT_EQ(refusal({part(1), w.part(2, 4)}), "F2: found a division into 4 parts; allowed is 3 parts, as in F1.");
    EXPECT_EQ(refusal({part(1), Whole(2).part(2, 3)}), "F2: found seed 2; allowed is seed 1, as in F1.");
    EXPECT_EQ(refusal({part(1), Whole(1, 31).part(2, 3)}),
              "F2: found a run of units: 31; allowed is a run of units: 30, as in F1.");
    auto other = part(2);
    other.head.designDigest = "fedcba9876543210";
    EXPECT_EQ(refusal({part(1), other}),
              "F2: found a part of the design \"small\", digest fedcba987654; allowed is \"small\", digest "
              "0123456789ab, as in F1.");
    auto varied = part(2);
    varied.head.varying.front().law.halfWidth *= 2;
    EXPECT_EQ(refusal({part(1), varied}),
              "F2: found other tolerances, figures or frequencies; allowed is the same, as in F1.");
}

TEST(SpreadPart, ADamagedFileIsRefused) {
    const std::string text = exchange::writeSpreadPart(whole().part(1, 3));
    EXPECT_EQ(readRefusal("{}"),
              "F: /coilwright_spread: found nothing; allowed is 1: a part of a spread, as `spread --to` writes it.");
    EXPECT_EQ(readRefusal("[]"), "F: /: found a list; allowed is a part of a spread, as `spread --to` writes it.");
    std::string changed = text;
    changed.replace(changed.find("\"seed\":1"), 8, "\"seed\":3");
    EXPECT_EQ(readRefusal(changed),
              "F: /sum: found a digest of something else; allowed is the file as it was written.");
    EXPECT_NE(readRefusal(text.substr(0, text.size() / 2)), "read");
}

TEST(SpreadPart, AnImpossiblePartIsRefused) {
    auto part = whole().part(1, 3);
    part.number = 5;
    part.parts = 4;
    EXPECT_EQ(readRefusal(exchange::writeSpreadPart(part)),
              "F: /part/0: found 5; allowed is a whole number from 1 to 4.");
}

}  // namespace part_test
