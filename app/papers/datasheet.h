// SPDX-License-Identifier: GPL-3.0-or-later
// The datasheet for a customer as a PDF.
#pragma once

#include <string>

#include "analysis/answer.h"
#include "catalog/catalog.h"
#include "design/design.h"
#include "papers/pdf.h"
#include "shop/datasheet.h"

namespace papers {

/// The day that a paper says: SOURCE_DATE_EPOCH if it is set, else today, as "2026-03-14" (UTC).
[[nodiscard]] std::string paperDate();

[[nodiscard]] Printed printed(const shop::Datasheet& sheet, Format format);

/// Paints the datasheet of a checked design and writes it to `path`. Throws exchange::WriteFailed.
void writeDatasheet(const design::Design& design, const analysis::Answer& answer, const catalog::Catalog& shop,
                    const std::string& path, Format format = Format::A4);

}  // namespace papers
