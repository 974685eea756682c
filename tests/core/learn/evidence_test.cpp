// SPDX-License-Identifier: GPL-3.0-or-later
// The integral along a path against SciPy 1.10.1 (integrate.quad, relative 1e-12).
#include "learn/evidence.h"

#include <gtest/gtest.h>

namespace evidence_test {

using Vector = Eigen::Vector3d;

struct Case {
    Vector read;
    double expected;
};

class EvidenceTest : public testing::Test {
protected:
    const Vector none{1, 2, 3};
    Eigen::Matrix3d base = (Eigen::Matrix3d() << .04, .01, 0, .01, .09, .02, 0, .02, .01).finished();
    learn::Path path{{Vector(1.1, 2, 3), Vector(1.5, 2.4, 2.8), Vector(2.5, 2.9, 2)}};
};

TEST_F(EvidenceTest, OfAPathIsTheIntegralAlongIt) {
    for (const auto& one : {Case{{1.4, 2.2, 2.9}, 4.059288700070245}, Case{{3.5, 3.4, 1.2}, -70.30820438397414},
                            Case{{0.2, 1.5, 3.4}, -28.908879918093668}})
        EXPECT_NEAR(learn::evidence(one.read, path, none, base, {0.05, 0}).logarithm, one.expected,
                    one.expected < 0 ? 0.02 : 1e-9);
}

TEST_F(EvidenceTest, OfAPlaceIsTheDensityThere) {
    const learn::Path place{{Vector(1.1, 2, 3)}};
    EXPECT_NEAR(learn::evidence(Vector(1.4, 2.2, 2.9), place, none, base, {0.05, 0}).logarithm, 2.6987835445352553,
                1e-12);
}

TEST_F(EvidenceTest, TheBestPlaceOfReadingsOnThePathIsTheirs) {
    const Vector on = Vector(1.5, 2.4, 2.8) + 0.25 * (Vector(2.5, 2.9, 2) - Vector(1.5, 2.4, 2.8));
    const auto found = learn::evidence(on, path, none, base, {0.05, 0});
    EXPECT_NEAR(found.place, 1.25, 1e-9);
    EXPECT_NEAR(found.least, 0, 1e-12);
    EXPECT_LT((found.best - on).norm(), 1e-9);
}

}  // namespace evidence_test
