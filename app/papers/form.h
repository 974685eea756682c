// SPDX-License-Identifier: GPL-3.0-or-later
// A form as a paper: paragraphs, facts and tables one below the other.
#pragma once

#include "papers/pdf.h"
#include "shop/form.h"

namespace papers {

/// `design`, the text of the design file, goes along as an attachment unless the form is for a customer.
[[nodiscard]] Printed printed(const shop::Form& form, Format format, const std::string& design);

}  // namespace papers
