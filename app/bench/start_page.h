// SPDX-License-Identifier: GPL-3.0-or-later
// The first page: demo designs as drawings, and what was open last.
#pragma once

#include <QAbstractButton>
#include <QStringList>
#include <QWidget>

#include "analysis/answer.h"

namespace bench {

/// A design as a card: its cut, drawn small, its name and what its note says first.
class DesignCard : public QAbstractButton {
    Q_OBJECT
public:
    DesignCard(design::DesignPtr design, const catalog::Catalog& shop, QWidget* parent);
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    design::DesignPtr design_;
    std::shared_ptr<const analysis::Answer> laidOut_;  ///< the coil build alone
};

/// One design offered on the page.
struct Offer {
    QString path;
    design::DesignPtr design;
};

class StartPage : public QWidget {
    Q_OBJECT
public:
    StartPage(const std::vector<Offer>& demos, const QStringList& recent, const catalog::Catalog& shop,
              QWidget* parent = nullptr);

signals:
    void demoChosen(const QString& path);
    void fileChosen(const QString& path);
    void openAsked();
    void closed();  ///< on to the bench as it is

protected:
    void keyPressEvent(QKeyEvent* event) override;
};

}  // namespace bench
