// SPDX-License-Identifier: GPL-3.0-or-later
// The shop's price file for what is reckoned with costs.
#pragma once

#include <QLabel>
#include <QPushButton>
#include <memory>

#include "shop/prices.h"

namespace bench {

class PriceChoice : public QWidget {
    Q_OBJECT
public:
    /// `without`: what stands for cost where there are no prices, a sentence.
    explicit PriceChoice(QString without, QWidget* parent = nullptr);
    /// What is amiss with the file is told by `refused`, and the prices stay as they were.
    void take(const QString& path);
    /// Null: none chosen.
    [[nodiscard]] const std::shared_ptr<const shop::Prices>& prices() const { return prices_; }

signals:
    void refused(const QString& sentence);

private:
    void choose();
    void show();

    QString without_, file_;
    std::shared_ptr<const shop::Prices> prices_;
    QPushButton *choose_ = nullptr, *none_ = nullptr;
    QLabel* words_ = nullptr;
};

}  // namespace bench
