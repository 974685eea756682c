// SPDX-License-Identifier: GPL-3.0-or-later
// What every paper of the shop has in common as a file.
#pragma once

#include "papers/pdf.h"
#include "shop/paper_head.h"

namespace papers {

/// The file of a paper called `title`, with `design`, the text of the design file, attached.
[[nodiscard]] PdfFile shopFile(const shop::PaperHead& head, const std::string& title, Format format,
                               const std::string& design);
/// The same, called by its kind and title.
[[nodiscard]] PdfFile shopFile(const shop::PaperHead& head, Format format, const std::string& design);

}  // namespace papers
