// SPDX-License-Identifier: GPL-3.0-or-later
// Points against those of another program (tests/references/sobol.json), and what a shift must leave as it is.
#include "spread/sobol.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "exchange/read_file.h"
#include "json/text.h"
#include "spread/normal.h"

namespace sobol_test {

json::Value reference() {
    const std::string path = COILWRIGHT_SOURCE_DIR "/tests/references/sobol.json";
    return json::read(exchange::readFile(path), path);
}

// Source: scipy.stats.qmc.Sobol of Debian's python3-scipy 1.10.1, unscrambled, 32 bits: seen. Exact fractions of 2^32.
TEST(Sobol, HasThePublishedPoints) {
    const json::Value all = reference();
    const spread::Sobol sobol(spread::sobolDimensions);
    for (std::size_t i = 0; i < all["points"].size(); ++i)
        for (std::size_t d = 0; d < all["dimensions"].size(); ++d)
            EXPECT_EQ(
                sobol.bits(all["points"][i].get<std::uint64_t>(), all["dimensions"][d].get<std::size_t>()) * 0x1p-32,
                all["values"][i][d].get<double>())
                << "point " << all["points"][i] << ", dimension " << all["dimensions"][d];
}

// Source: scipy.stats.norm.ppf of the same: seen, doubles.
TEST(Normal, HasThePublishedQuantiles) {
    for (const json::Value& pair : reference()["normal_quantiles"]) {
        const double p = pair[0].get<double>(), x = pair[1].get<double>();
        EXPECT_NEAR(spread::normalQuantile(p), x, 1e-13 * std::max(1.0, std::abs(x)) / std::min(1.0, 1e3 * (1 - p)))
            << p;
        EXPECT_NEAR(spread::normalProbability(spread::normalQuantile(p)), p, 1e-15 + 1e-12 * p);
    }
}

TEST(EvenPoints, EveryStretchOfASixtyFourthHasOnePointOfSixtyFour) {
    const spread::EvenPoints points(7, 40);
    for (std::size_t d = 0; d < 40; ++d) {
        std::vector<int> hits(64, 0);
        for (std::uint64_t k = 128; k < 192; ++k) ++hits[static_cast<std::size_t>(points.at(k, d) * 64)];
        EXPECT_EQ(hits, std::vector<int>(64, 1)) << d;
    }
}

TEST(EvenPoints, FollowTheSeedAndTheNumberAlone) {
    const spread::EvenPoints one(1, 200), again(1, 200), other(2, 200);
    for (const std::uint64_t k : {0ULL, 5ULL, 99999ULL})
        for (const std::size_t d : {0UL, 160UL, 161UL, 199UL}) {
            EXPECT_EQ(one.at(k, d), again.at(k, d));
            EXPECT_NE(one.at(k, d), other.at(k, d));
            EXPECT_GT(one.at(k, d), 0);
            EXPECT_LT(one.at(k, d), 1);
        }
}

}  // namespace sobol_test
