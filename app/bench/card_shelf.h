// SPDX-License-Identifier: GPL-3.0-or-later
// Designs as cards in a row, one of them chosen.
#pragma once

#include <QButtonGroup>
#include <QHBoxLayout>
#include <QScrollArea>
#include <optional>

#include "bench/design_card.h"

namespace bench {

class CardShelf : public QScrollArea {
    Q_OBJECT
public:
    explicit CardShelf(const QString& accessibleName, QWidget* parent = nullptr);
    void clear();
    /// At the right end; numbered from 1 on before its name.
    void add(const design::DesignPtr& design, const catalog::Catalog& shop, const QString& name, const QString& words,
             const QString& tip);
    /// Chooses the first card, with the keys at it.
    void chooseFirst();
    [[nodiscard]] QList<DesignCard*> cards() const;
    [[nodiscard]] std::optional<std::size_t> chosen() const;  ///< from 0 on

signals:
    void chosenChanged();

private:
    QHBoxLayout* row_ = nullptr;
    QButtonGroup* group_ = nullptr;
};

}  // namespace bench
