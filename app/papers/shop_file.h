// SPDX-License-Identifier: GPL-3.0-or-later
// What papers have in common as a file.
#pragma once

#include "papers/pdf.h"
#include "shop/paper_head.h"

namespace papers {

/// The file of a paper called `title`, with `design`, the text of the design file, attached.
[[nodiscard]] PdfFile shopFile(const shop::PaperHead& head, const std::string& title, Format format,
                               const std::string& design);
/// The same, called by its kind and title.
[[nodiscard]] PdfFile shopFile(const shop::PaperHead& head, Format format, const std::string& design);

/// The file of a paper for a customer: nothing is attached.
[[nodiscard]] PdfFile customerFile(const shop::PaperHead& head, Format format);

}  // namespace papers
