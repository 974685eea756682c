// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/paper_head.h"

#include "units/joined.h"

namespace shop {

const Words& Manner::say() const {
    static const Words english;
    return words ? *words : english;
}

std::string PaperHead::code() const {
    return units::joined({partNumber.empty() ? title : partNumber, " ", revision, " ", digest});
}

PaperHead paperHead(const std::string& paper, const design::Design& design, const Issue& issue) {
    return {paper,           design.name, design.partNumber,
            design.revision, issue.date,  issue.digest.substr(0, digestDigits),
            issue.manner};
}

}  // namespace shop
