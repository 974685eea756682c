// SPDX-License-Identifier: GPL-3.0-or-later
// Figures and promises in words where people read them: files name a figure by its key, "low_3dB".
#pragma once

#include <QString>
#include <string>

#include "analysis/alike.h"
#include "design/design.h"

namespace bench {

/// "leakage_10kHz.P.S" → "Leakage inductance, 10 kHz, P to S", in the language of the window; a hook-up behind "@" is
/// left out. A key that has no words stays as it is.
[[nodiscard]] QString figureText(const std::string& figure);
/// A sentence of core that names figures by their keys, as `analysis::PromiseState::text` does, with words for each and
/// in the language of the window: "−3 dB, low: at most 10 Hz".
[[nodiscard]] QString promiseText(const std::string& text);
/// A column of a study, as `spread::columnWords` says it.
[[nodiscard]] QString columnText(const analysis::Column& column);

}  // namespace bench
