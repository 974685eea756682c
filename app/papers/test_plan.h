// SPDX-License-Identifier: GPL-3.0-or-later
// The test plan as a paper.
#pragma once

#include "papers/pdf.h"
#include "shop/test_plan.h"

namespace papers {

/// `design` is the text of the design file, which goes along as an attachment.
[[nodiscard]] Printed printed(const shop::TestPlan& plan, Format format, const std::string& design);

/// Generator, unit with its terminals, analyser, and what is earthed; returns the height used, mm.
double paintWiring(Paper& paper, const QRectF& rect, const shop::PlanWiring& wiring);

}  // namespace papers
