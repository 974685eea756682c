// SPDX-License-Identifier: GPL-3.0-or-later
// The winding sheet, with finishing and cautions, as a paper.
#pragma once

#include "papers/pdf.h"
#include "shop/winding_sheet.h"

namespace papers {

/// `design` is the text of the design file, which goes along as an attachment.
[[nodiscard]] Printed printed(const shop::WindingSheet& sheet, Format format, const std::string& design);

}  // namespace papers
