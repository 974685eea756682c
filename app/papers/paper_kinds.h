// SPDX-License-Identifier: GPL-3.0-or-later
// Every paper there is, by the name that the command line gives it: what it needs, and how it is made.
#pragma once

#include <functional>
#include <optional>

#include "analysis/answer.h"
#include "catalog/shop_tolerance.h"
#include "design/fixture.h"
#include "json/value.h"
#include "papers/pdf.h"
#include "shop/change_notice.h"
#include "shop/prices.h"

namespace papers {

/// The revision that a change notice begins from.
struct Before {
    design::DesignPtr design;
    std::string digest;
    shop::ChangeWhy why;
};

/// What several papers of one source are made of: computed when it is first asked for, and anew for other designs.
struct SharedWork {
    design::DesignPtr before, after;
    analysis::AnswerPtr beforeAnswer;  ///< of `before`, as a change notice from it to `after` asks
};

/// What papers are made of. What a paper does not need may be left out.
struct Source {
    design::DesignPtr design;
    const catalog::Catalog& shop;
    shop::Issue issue;
    Format format = Format::A4;
    std::string text = {};                             ///< of the design file, for inside papers
    std::function<analysis::AnswerPtr()> answer = {};  ///< of the hook-up that is shown
    std::optional<shop::Prices> prices = {};
    std::string pricesFile = {};
    double yield = 1;  ///< predicted; 1: not asked for
    std::function<design::Fixture()> fixture = {};
    std::function<catalog::Tolerances()> tolerances = {};
    std::optional<Before> before = {};
    std::shared_ptr<SharedWork> shared = std::make_shared<SharedWork>();
};

/// A paper ready to be painted, and its content for other programs.
struct Made {
    Printed printed;
    json::Value content;
    std::optional<std::string> table;  ///< CSV, where the paper is one
};

struct PaperKind {
    const char* key;    ///< "winding-sheet"
    const char* title;  ///< "Winding sheet"
    bool outside;       ///< for a customer: without the recipe
    bool translated;    ///< can be had in other languages than English
    bool compares;      ///< needs `Source::before`
    bool priced;        ///< needs `Source::prices`
    Made (*make)(const Source& source);
};

/// In the order in which a job needs them.
[[nodiscard]] const std::vector<PaperKind>& paperKinds();

/// Throws units::BadInput where the source lacks what the paper needs, or the language is one that it cannot be had in.
[[nodiscard]] Made made(const PaperKind& kind, const Source& source);

}  // namespace papers
