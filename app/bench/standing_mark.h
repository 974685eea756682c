// SPDX-License-Identifier: GPL-3.0-or-later
// The shape that goes with a promise's word, so that colour is never the only sign.
#pragma once

#include <QIcon>
#include <QString>

#include "analysis/answer.h"
#include "bench/theme.h"

namespace bench {

[[nodiscard]] QColor standingColour(analysis::Standing standing);
/// Filled disc (kept), half disc (thin), open ring with a bar (broken), open ring (not computed).
[[nodiscard]] QIcon standingMark(analysis::Standing standing, int size);

}  // namespace bench
