// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut/labels.h"

#include <algorithm>

namespace cut {

namespace {

constexpr double clearance = 3;
constexpr double inset = 4;  // of a led-out text from its line, so that a line close by runs past it

QRectF centred(const QPointF& centre, double width, double height) {
    return {centre.x() - width / 2, centre.y() - height / 2, width, height};
}

/// The lowest row in which a label from `left` to `right` meets no other, whose line crosses none and is crossed by
/// none.
int freeRow(const std::vector<Label>& labels, const Label& label) {
    int row = 0;
    for (bool clear = false; !clear;) {
        clear = true;
        for (const auto& other : labels) {
            if (other.where != Label::Where::LedOut || other.below != label.below) continue;
            const bool sameRow = other.row == row && other.box.left() < label.box.right() + clearance &&
                                 label.box.left() < other.box.right() + clearance;
            const bool crossed =
                other.row >= row && other.x > label.box.left() - clearance && other.x < label.box.right() + clearance;
            if (!sameRow && !crossed) continue;
            row = other.row + 1;
            clear = false;
        }
    }
    return row;
}

}  // namespace

double rowHeight(const QFontMetricsF& metrics) noexcept {
    return metrics.height() + 3;
}

std::vector<Label> placeLabels(const std::vector<LabelWish>& wishes, const QFontMetricsF& metrics, double right) {
    std::vector<Label> labels;
    std::vector<Label> outside;
    const double height = metrics.height();
    for (int i = 0; i < static_cast<int>(wishes.size()); ++i) {
        const auto& wish = wishes[static_cast<std::size_t>(i)];
        if (wish.body.isEmpty() && !wish.thin) continue;
        Label label;
        label.text = wish.text;
        label.wish = i;
        const double width = metrics.horizontalAdvance(wish.text) + wish.sign;
        const QRectF room = wish.body.adjusted(clearance, clearance, -clearance, -clearance);
        label.box = centred(wish.body.center(), width, height);
        if (!wish.thin && width <= room.width() && height <= room.height()) {
            labels.push_back(label);
        } else if (!wish.thin && width <= room.height() && height <= room.width() + clearance) {
            label.where = Label::Where::Turned;
            labels.push_back(label);
        } else {
            label.where = Label::Where::LedOut;
            label.x = wish.body.center().x();
            label.below = wish.below;
            label.start = wish.below ? wish.body.bottom() : wish.body.top();
            label.box = {std::min(label.x + inset, std::max(0.0, right - width)), 0, width, height};
            outside.push_back(label);
        }
    }
    std::stable_sort(outside.begin(), outside.end(), [](const Label& a, const Label& b) { return a.x > b.x; });
    for (auto& label : outside) {
        label.row = freeRow(labels, label);
        const double away = 3 + label.row * rowHeight(metrics);
        if (label.below)
            label.box.moveTop(away);
        else
            label.box.moveBottom(-away);
        labels.push_back(label);
    }
    return labels;
}

void settle(std::vector<Label>& labels, double top, double bottom) {
    for (auto& label : labels)
        if (label.where == Label::Where::LedOut) label.box.translate(0, label.below ? bottom : top);
}

int ledOutRows(const std::vector<Label>& labels, bool below) noexcept {
    int rows = 0;
    for (const auto& label : labels)
        if (label.where == Label::Where::LedOut && label.below == below) rows = std::max(rows, label.row + 1);
    return rows;
}

}  // namespace cut
