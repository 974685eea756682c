// SPDX-License-Identifier: GPL-3.0-or-later
// The bill of materials as a PDF.
#pragma once

#include "papers/pdf.h"
#include "shop/bill.h"

namespace papers {

/// The PDF's bytes; `design` is the text of the design file, which goes along as an attachment.
[[nodiscard]] QByteArray paintedBill(const shop::Bill& bill, Format format, const std::string& design);

}  // namespace papers
