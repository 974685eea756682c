// SPDX-License-Identifier: GPL-3.0-or-later
// What stands at the head or foot of every paper of the shop.
#pragma once

#include <memory>
#include <string>
#include <utility>

#include "design/design.h"
#include "shop/lengths.h"
#include "shop/words.h"

namespace shop {

/// How a paper is worded.
struct Manner {
    Lengths in;
    std::shared_ptr<const Words> words;  ///< null: English
    bool operator==(const Manner&) const = default;
    [[nodiscard]] const Words& say() const;
};

/// What the shop adds that the design does not say.
struct Issue {
    std::string date;    ///< as it is printed: "2026-03-14"
    std::string digest;  ///< of the design, in full
    Manner manner = {};
};

/// Something to know, and what it is about. Empty words: to be written in by hand.
struct Fact {
    Fact() = default;
    Fact(std::string about, std::string text) : what(std::move(about)), words(std::move(text)) {}
    std::string what, words;
    bool operator==(const Fact&) const = default;
};

inline constexpr std::size_t digestDigits = 10;  ///< of the design's digest, as papers print it

struct PaperHead {
    std::string paper;  ///< "Winding sheet"
    std::string title, partNumber, revision, date;
    std::string digest;  ///< short
    Manner manner = {};
    bool operator==(const PaperHead&) const = default;
    /// What the square code says: part (its name where it has none), revision and digest, a space between.
    [[nodiscard]] std::string code() const;
};
[[nodiscard]] PaperHead paperHead(const std::string& paper, const design::Design& design, const Issue& issue);

}  // namespace shop
