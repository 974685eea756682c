// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/card_shelf.h"

namespace bench {

CardShelf::CardShelf(const QString& accessibleName, QWidget* parent) : QScrollArea(parent) {
    auto* shelf = new QWidget;
    row_ = new QHBoxLayout(shelf);
    row_->setContentsMargins(0, 0, 0, 0);
    row_->setSpacing(8);
    setWidgetResizable(true);
    setWidget(shelf);
    setAccessibleName(accessibleName);
    setFocusPolicy(Qt::NoFocus);
    group_ = new QButtonGroup(this);
    connect(group_, &QButtonGroup::idClicked, this, &CardShelf::chosenChanged);
}

void CardShelf::clear() {
    for (DesignCard* card : cards()) delete card;
}

void CardShelf::add(const design::DesignPtr& design, const catalog::Catalog& shop, const QString& name,
                    const QString& words, const QString& tip) {
    const int number = row_->count() + 1;
    auto* card = new DesignCard(design, shop, tr("%1: %2").arg(number).arg(name), words, nullptr);
    card->setCheckable(true);
    card->setToolTip(tip);
    row_->addWidget(card);
    group_->addButton(card, number);
}

void CardShelf::chooseFirst() {
    if (cards().isEmpty()) return;
    cards().constFirst()->setChecked(true);
    cards().constFirst()->setFocus();
}

QList<DesignCard*> CardShelf::cards() const {
    QList<DesignCard*> all;
    for (int k = 0; k < row_->count(); ++k)
        if (auto* card = qobject_cast<DesignCard*>(row_->itemAt(k)->widget())) all << card;
    return all;
}

std::optional<std::size_t> CardShelf::chosen() const {
    const int id = group_->checkedId();
    return id > 0 && id <= row_->count() ? std::optional(static_cast<std::size_t>(id) - 1) : std::nullopt;
}

}  // namespace bench
