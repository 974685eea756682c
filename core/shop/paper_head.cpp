// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/paper_head.h"

#include "units/joined.h"

namespace shop {

std::string PaperHead::code() const {
    return units::joined({partNumber.empty() ? title : partNumber, " ", revision, " ", digest});
}

PaperHead paperHead(const std::string& paper, const design::Design& design, const Issue& issue) {
    return {paper, design.name, design.partNumber, design.revision, issue.date, issue.digest.substr(0, digestDigits)};
}

}  // namespace shop
