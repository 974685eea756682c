// SPDX-License-Identifier: GPL-3.0-or-later
// The cut's items as a list, for screen readers.
#include <QAccessible>

#include "cut/cut_view.h"
#include "cut/item_words.h"

namespace cut {

using design::ItemIndex;

int CutView::itemCount() const {
    int count = 0;
    for (const auto& place : document_.shown()->coil) count += static_cast<int>(place.order.size());
    return count;
}

ItemIndex CutView::itemIndexAt(int index) const {
    int place = 0;
    for (const auto& one : document_.shown()->coil) {
        const int size = static_cast<int>(one.order.size());
        if (index < size) return {place, index};
        index -= size;
        ++place;
    }
    return {-1, -1};
}

QString CutView::itemSentenceAt(int index) const {
    return itemSentence(*document_.shown(), itemIndexAt(index));
}

QString CutView::itemTipAt(int index) const {
    const auto* shape = shapeOf(shapes_, itemIndexAt(index));
    return shape != nullptr ? withEffects(itemTip(*shape, *document_.shown()), itemIndexAt(index)) : QString();
}

int CutView::selectedItem() const {
    const auto* selected = selection_.item();
    if (selected == nullptr) return -1;
    for (int k = 0; k < itemCount(); ++k)
        if (itemIndexAt(k) == *selected) return k;
    return -1;
}

void CutView::selectItem(int index) {
    if (index >= 0 && index < itemCount()) selection_.select(itemIndexAt(index));
}

void CutView::announceSelection() {
    const int index = selectedItem();
    if (index < 0 || !hasFocus()) return;
    QAccessibleEvent focus(this, QAccessible::Focus);
    focus.setChild(index);
    QAccessible::updateAccessibility(&focus);
}

}  // namespace cut
