// SPDX-License-Identifier: GPL-3.0-or-later
// Where labels go: inside their section, upright or turned, or led out above the drawing without crossing lines.
#pragma once

#include <QFontMetricsF>
#include <QRectF>
#include <QString>
#include <vector>

namespace cut {

/// A label to be placed: its text, and the visible part of what it names.
struct LabelWish {
    QString text;
    QRectF body;
    bool thin = false;   ///< never inside: a shield's line
    double sign = 0;     ///< room kept before the text for a sign
    bool below = false;  ///< led out downward: what lies in the lower chamber of several
};

/// A placed label.
struct Label {
    enum class Where { Inside, Turned, LedOut } where = Where::Inside;
    QString text;
    QRectF box;        ///< of the text as read (turned: before turning, about its centre)
    int row = 0;       ///< led out: counted from the drawing upward
    double x = 0;      ///< led out: where its line comes up
    double start = 0;  ///< led out: where its line starts
    bool below = false;
    int wish = 0;  ///< index of its wish
};

/// Places labels for the bodies in `wishes`. Led-out labels stand in rows, chosen from right to left so that no line
/// crosses a label, and to the left of `right`; their boxes count from 0, as `settle` then moves them.
[[nodiscard]] std::vector<Label> placeLabels(const std::vector<LabelWish>& wishes, const QFontMetricsF& metrics,
                                             double right);
/// Moves led-out labels to stand above `top` or below `bottom`.
void settle(std::vector<Label>& labels, double top, double bottom);
/// Rows of led-out labels above or below.
[[nodiscard]] int ledOutRows(const std::vector<Label>& labels, bool below) noexcept;
/// Height of a row.
[[nodiscard]] double rowHeight(const QFontMetricsF& metrics) noexcept;

}  // namespace cut
