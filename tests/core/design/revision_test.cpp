// SPDX-License-Identifier: GPL-3.0-or-later
#include "design/revision.h"

#include <gtest/gtest.h>

namespace revision_test {

using design::Issue;

design::Revision kept(const std::string& mark, const std::string& digest) {
    design::Revision r;
    r.mark = mark;
    r.date = "2026-11-25";
    r.reason = "the customer wants 2 dB more";
    r.digest = digest;
    r.figuresDigest = "f" + digest;
    return r;
}

template <class Act>
std::string refusal(const Act& act) {
    try {
        (void)act();
    } catch (const units::BadInput& bad) {
        return bad.what();
    }
    return "taken";
}

TEST(Revision, NumbersFollowAndTheSameDesignIsNotKeptTwice) {
    design::Register all = design::withRevision({}, kept("A", "1"));
    all = design::withRevision(all, kept("A", "2"));
    ASSERT_EQ(all.revisions.size(), 2u);
    EXPECT_EQ(all.revisions[1].number, 2);
    EXPECT_EQ(all.revisions[1].issue(), Issue::Draft);
    EXPECT_EQ(refusal([&] { return design::withRevision(all, kept("A", "2")); }),
              "revision 3: found the same design as revision 2; allowed is a design that differs from it.");
}

TEST(Revision, NeedsAReasonAndADay) {
    auto none = kept("A", "1");
    none.reason = "  ";
    EXPECT_NE(refusal([&] { return design::withRevision({}, none); }).find("reason"), std::string::npos);
    for (const char* date : {"", "2026-13-01", "2026-02-29", "26-01-01", "2026-11-25 ", "2026/11/25"}) {
        auto dated = kept("A", "1");
        dated.date = date;
        EXPECT_NE(refusal([&] { return design::withRevision({}, dated); }).find("a day as"), std::string::npos) << date;
    }
    auto leap = kept("A", "1");
    leap.date = "2028-02-29";
    EXPECT_EQ(refusal([&] { return design::withRevision({}, leap); }), "taken");
}

TEST(Revision, GoesOnwardOnlyAndAReleaseHasAnApprover) {
    design::Register all = design::withRevision({}, kept("A", "1"));
    EXPECT_NE(refusal([&] {
                  return design::withStep(all, 1, {Issue::Released, "2026-11-26", "", "", {}});
              }).find("who approves the release"),
              std::string::npos);
    all = design::withStep(all, 1, {Issue::Sample, "2026-11-25", "", "", {}});
    all = design::withStep(all, 1, {Issue::Released, "2026-11-26", "head of test", "", {}});
    EXPECT_EQ(all.find(1)->issue(), Issue::Released);
    EXPECT_NE(refusal([&] {
                  return design::withStep(all, 1, {Issue::Sample, "2026-11-27", "x", "", {}});
              }).find("sample after released"),
              std::string::npos);
    EXPECT_NE(refusal([&] {
                  return design::withStep(all, 4, {Issue::Retired, "2026-11-27", "x", "", {}});
              }).find("a number from 1 to 1"),
              std::string::npos);
}

TEST(Revision, AnIssuedMarkIsNotGivenTwice) {
    design::Register all = design::withRevision({}, kept("A", "1"));
    all = design::withStep(all, 1, {Issue::Sample, "2026-11-25", "", "", {}});
    EXPECT_NE(refusal([&] { return design::withRevision(all, kept("A", "2")); }).find("another mark"),
              std::string::npos);
    EXPECT_EQ(refusal([&] { return design::withRevision(all, kept("B", "2")); }), "taken");
}

TEST(Revision, FirstLotOnceOfAReleasedOneAndVariantsOnce) {
    design::Register all = design::withRevision({}, kept("A", "1"));
    EXPECT_NE(refusal([&] { return design::withFirstLot(all, 1, "L7"); }).find("released"), std::string::npos);
    all = design::withStep(all, 1, {Issue::Released, "2026-11-26", "head of test", "", {}});
    all = design::withFirstLot(all, 1, "L7");
    EXPECT_EQ(all.find(1)->firstLot, "L7");
    EXPECT_NE(refusal([&] { return design::withFirstLot(all, 1, "L8"); }).find("one first lot"), std::string::npos);
    all = design::withVariant(all, {"T-100-L", 1, "leads 300 mm", {}});
    EXPECT_NE(refusal([&] {
                  return design::withVariant(all, {"T-100-L", 1, "", {}});
              }).find("not taken"),
              std::string::npos);
    EXPECT_NE(refusal([&] {
                  return design::withVariant(all, {"T-101", 2, "", {}});
              }).find("no such revision"),
              std::string::npos);
}

}  // namespace revision_test
