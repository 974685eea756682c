// SPDX-License-Identifier: GPL-3.0-or-later
// What differs between two revisions of a design, and which promises move. Two papers: one for the shop with all of it,
// one for the customer with what is seen from outside.
#pragma once

#include <string>
#include <vector>

#include "analysis/answer.h"
#include "shop/form.h"

namespace shop {

/// A revision with its answer in the first hook-up.
struct RevisionAnswered {
    const design::Design& design;
    const analysis::Answer& answer;
    std::string digest;  ///< of the design, in full
};

/// How a promise stood and stands.
struct MovedPromise {
    std::string what;           ///< in words, with its limit
    std::string before, after;  ///< values
    std::string stood, stands;  ///< kept, thin, broken, not computed; "" where there was or is no such promise
    bool operator==(const MovedPromise&) const = default;
};

/// From an old revision to the one that the head names.
struct ChangeNotice {
    PaperHead head;
    std::string customer;
    std::string oldRevision, oldDate, oldDigest, digest;  ///< digests short
    std::string reason;                                   ///< inside
    std::string notice;                                   ///< what the customer is told of it
    std::vector<std::string> differences;                 ///< inside: of the designs, every one
    std::vector<std::string> outside;                     ///< pins, leads and sizes that differ
    std::vector<MovedPromise> promises;                   ///< all of either brief
    std::vector<std::string> figures;                     ///< inside: every figure that moves by 0.1 % or more
    bool operator==(const ChangeNotice&) const = default;
};

/// What the shop says of the change besides.
struct ChangeWhy {
    std::string oldDate, reason, notice;
};

/// Answers the earlier revision with what a notice reads: figures and promises. Slow traces are made only where its
/// brief has a mask. `after`: of the later one, whose stages it may share.
[[nodiscard]] analysis::AnswerPtr answeredForNotice(const design::Design& before, const analysis::Answer& after,
                                                    const catalog::Catalog& shop);
[[nodiscard]] ChangeNotice changeNotice(const RevisionAnswered& before, const RevisionAnswered& after,
                                        const catalog::Catalog& shop, const ChangeWhy& why, const Issue& issue);

/// As the shop prints it.
[[nodiscard]] Form insideForm(const ChangeNotice& notice);
/// As the customer gets it: no differences of the designs, no reason, no figures but the promised ones.
[[nodiscard]] Form outsideForm(const ChangeNotice& notice);

}  // namespace shop
