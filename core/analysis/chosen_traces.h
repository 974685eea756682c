// SPDX-License-Identifier: GPL-3.0-or-later
// Some traces of a design that stands near another.
#pragma once

#include <memory>
#include <stop_token>
#include <string>
#include <vector>

#include "analysis/answer.h"

namespace analysis {

/// The traces named by `names`, as many as there are of this design, in that order, in the hook-up that `nominal`
/// shows; `frequencies` in Hz, rising. In the calling thread alone; many threads may ask at once. Layers that are as
/// many as the nominal's are cut into as many pieces, so that curves do not jump. Stopped, it is empty.
[[nodiscard]] std::vector<std::shared_ptr<const Trace>> chosenTraces(
    const design::Design& design, const catalog::Catalog& shop, const Answer& nominal,
    const std::vector<std::string>& names, const std::vector<double>& frequencies, const std::stop_token& stop = {});

}  // namespace analysis
