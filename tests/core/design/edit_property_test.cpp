// SPDX-License-Identifier: GPL-3.0-or-later
// What random edits may never change, whatever their sequence.
#include <gtest/gtest.h>

#include <map>
#include <random>

#include "design/check.h"
#include "design/difference.h"
#include "design/edit.h"
#include "sample_design.h"

namespace design {
namespace edit_property_test {

class RandomEdits : public testing::TestWithParam<unsigned> {
protected:
    int below(std::size_t n) { return static_cast<int>(random_() % n); }
    ItemIndex anItem(const Design& d) {
        int place = below(d.coil.size());
        if (d.coil[static_cast<std::size_t>(place)].order.empty()) place = 1 - place;
        return {place, below(d.coil[static_cast<std::size_t>(place)].order.size())};
    }
    ItemIndex aGap(const Design& d) {
        const int place = below(d.coil.size());
        return {place, below(d.coil[static_cast<std::size_t>(place)].order.size() + 1)};
    }
    std::mt19937 random_{GetParam()};
};

using Series = std::map<std::string, std::vector<std::string>>;

Series series(const Design& d) {
    Series all;
    for (const Winding& w : d.windings)
        for (const Section* s : sectionsOf(d, w)) all[w.name].push_back(s->name);
    return all;
}

std::map<std::string, double> turns(const Design& d) {
    std::map<std::string, double> all;
    for (const Winding& w : d.windings) all[w.name] = seriesTurns(d, w);
    return all;
}

TEST_P(RandomEdits, MovesKeepSeriesOrderTurnsAndTheOriginal) {
    DesignPtr d = std::make_shared<Design>(sampleDesign());
    const Series before = series(*d);
    const auto turnsBefore = turns(*d);
    for (int n = 0; n < 60; ++n) {
        const Design original = *d;
        const DesignPtr next = moveItem(*d, anItem(*d), aGap(*d));
        ASSERT_EQ(*d, original);
        ASSERT_EQ(series(*next), before);
        ASSERT_EQ(turns(*next), turnsBefore);
        ASSERT_TRUE(check(*next, sampleShop(), "s").empty());
        ASSERT_EQ(differences(*d, *next).empty(), *d == *next);
        d = next;
    }
}

TEST_P(RandomEdits, AMoveHasItsInverse) {
    DesignPtr d = std::make_shared<Design>(sampleDesign());
    for (int n = 0; n < 60; ++n) {
        const ItemIndex from = anItem(*d), to = aGap(*d);
        const DesignPtr next = moveItem(*d, from, to);
        // Where the item came to lie, and the gap that it left, counted without it.
        const bool same = from.place == to.place;
        const ItemIndex lies{to.place, same && to.item > from.item ? to.item - 1 : to.item};
        const ItemIndex left{from.place, same && lies.item < from.item ? from.item + 1 : from.item};
        ASSERT_EQ(moveItem(*next, lies, left)->coil, d->coil);
        ASSERT_EQ(series(*moveItem(*next, lies, left)), series(*d));
        d = next;
    }
}

TEST_P(RandomEdits, SplittingAndJoiningKeepTheTurns) {
    DesignPtr d = std::make_shared<Design>(sampleDesign());
    const auto before = turns(*d);
    for (int n = 0; n < 60; ++n) {
        const ItemIndex at = anItem(*d);
        const DesignPtr split = splitSection(*d, at);
        ASSERT_EQ(turns(*split), before);
        ASSERT_TRUE(check(*split, sampleShop(), "s").empty());
        if (*split != *d) {
            ASSERT_EQ(series(*joinSection(*split, at)), series(*d));
        }
        const DesignPtr joined = joinSection(*d, anItem(*d));
        ASSERT_EQ(turns(*joined), before);
        d = moveItem(n % 2 ? *split : *joined, anItem(n % 2 ? *split : *joined), {n % 2, 0});
    }
}

TEST_P(RandomEdits, InsertingAndRemovingAgainIsNothing) {
    DesignPtr d = std::make_shared<Design>(sampleDesign());
    for (int n = 0; n < 60; ++n) {
        d = moveItem(*d, anItem(*d), aGap(*d));
        const ItemIndex gap = aGap(*d);
        ASSERT_EQ(*removeItem(*insertItem(*d, gap, barrierItem(1e-5)), gap), *d);
        ASSERT_EQ(*removeItem(*insertItem(*d, gap, shieldItem("SX")), gap), *d);
        const DesignPtr fuller = insertItem(*d, gap, sectionItem("P", "z", 3));
        ASSERT_EQ(turns(*fuller)["P"], turns(*d)["P"] + 3);
        ASSERT_EQ(series(*removeItem(*fuller, gap)), series(*d));
    }
}

INSTANTIATE_TEST_SUITE_P(Seeds, RandomEdits, testing::Values(1U, 2U, 3U, 4U, 5U));

}  // namespace edit_property_test
}  // namespace design
