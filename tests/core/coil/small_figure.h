// SPDX-License-Identifier: GPL-3.0-or-later
// A figure of a design that is put together from the small catalog.
#pragma once

#include <gtest/gtest.h>

#include <cmath>

#include "analysis/answer.h"
#include "small_transformer.h"

namespace small {

/// Its value, computed from nothing; not a number where there is none. It must be within validity.
inline double validFigure(const design::Design& d, const char* name) {
    const auto answer = analysis::answer(d, shop());
    const auto* found = answer->figure(name);
    if (found == nullptr) return std::nan("");
    EXPECT_TRUE(found->valid) << name << ": " << found->why;
    return found->value;
}

}  // namespace small
