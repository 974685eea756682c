// SPDX-License-Identifier: GPL-3.0-or-later
// What stands at the head or foot of every paper of the shop.
#pragma once

#include <string>
#include <utility>

#include "design/design.h"

namespace shop {

/// What the shop adds that the design does not say.
struct Issue {
    std::string date;    ///< as it is printed: "2026-03-14"
    std::string digest;  ///< of the design, in full
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
    bool operator==(const PaperHead&) const = default;
    /// What the square code says: part (its name where it has none), revision and digest, a space between.
    [[nodiscard]] std::string code() const;
};
[[nodiscard]] PaperHead paperHead(const std::string& paper, const design::Design& design, const Issue& issue);

}  // namespace shop
