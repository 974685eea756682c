// SPDX-License-Identifier: GPL-3.0-or-later
// Colours of the bench: every token in one place, in a light and a dark set.
#pragma once

#include <QBrush>
#include <QColor>

namespace bench {

enum class Token { Window, Base, Text, Muted, Line, Accent, Kept, Thin, Broken, Iron, Bobbin, Paper, Foil, MaskArea };

/// Which set is used: the desktop's choice, or one of ours.
enum class Look { Desktop, Light, Dark };

/// Puts the Fusion style and the chosen set on the application. `Desktop` is dark where the desktop's window text is
/// lighter than its window.
void applyLook(Look look);
[[nodiscard]] Look look() noexcept;
[[nodiscard]] bool isDark() noexcept;

/// The token in the set in use; with `dark` given, in that set (papers use the light one).
[[nodiscard]] QColor colour(Token token);
[[nodiscard]] QColor colour(Token token, bool dark);

/// Hue of the winding or trace with this index, counted from 0; hues repeat, then the hatch tells them apart.
[[nodiscard]] QColor windingColour(int index);
[[nodiscard]] QColor windingColour(int index, bool dark);
/// Hatch of the winding with this index: neighbouring indices differ in hue and in hatch.
[[nodiscard]] Qt::BrushStyle windingBrushStyle(int index);

/// A colour between two, `share` of the way from `a` to `b`: instead of translucency, which papers cannot print.
[[nodiscard]] QColor mixed(const QColor& a, const QColor& b, double share);

}  // namespace bench
