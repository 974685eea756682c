// SPDX-License-Identifier: GPL-3.0-or-later
// The traveller as a paper.
#pragma once

#include "papers/pdf.h"
#include "shop/traveller.h"

namespace papers {

/// `design` is the text of the design file, which goes along as an attachment.
[[nodiscard]] Printed printed(const shop::Traveller& traveller, Format format, const std::string& design);

}  // namespace papers
