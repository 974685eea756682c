// SPDX-License-Identifier: GPL-3.0-or-later
// A design as a card to choose.
#pragma once

#include <QAbstractButton>
#include <QString>

#include "analysis/answer.h"

namespace bench {

/// Its cut, its name, and a few words beneath.
class DesignCard : public QAbstractButton {
    Q_OBJECT
public:
    DesignCard(design::DesignPtr design, const catalog::Catalog& shop, const QString& name, QString words,
               QWidget* parent);
    [[nodiscard]] const design::DesignPtr& design() const { return design_; }
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    design::DesignPtr design_;
    QString words_;
    std::shared_ptr<const analysis::Answer> laidOut_;  ///< the coil build alone
};

/// A font with more weight and size than `font`.
[[nodiscard]] QFont strong(const QFont& font, double morePoints);

}  // namespace bench
