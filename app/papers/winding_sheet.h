// SPDX-License-Identifier: GPL-3.0-or-later
// The winding sheet, with finishing and cautions, as a PDF.
#pragma once

#include "papers/pdf.h"
#include "shop/winding_sheet.h"

namespace papers {

/// The PDF's bytes; `design` is the text of the design file, which goes along as an attachment.
[[nodiscard]] QByteArray paintedWindingSheet(const shop::WindingSheet& sheet, Format format, const std::string& design);

}  // namespace papers
