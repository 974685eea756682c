// SPDX-License-Identifier: GPL-3.0-or-later
// The first page: kinds of unit to begin with, demo designs as drawings, and what was open last.
#pragma once

#include <QAbstractButton>
#include <QStringList>
#include <QWidget>

#include "catalog/catalog.h"
#include "design/design.h"

namespace bench {

/// One design offered on the page.
struct Offer {
    QString path;
    design::DesignPtr design;
};

/// A kind of unit that a blank design may begin as.
struct Blank {
    QString key, title, tip;
};

class StartPage : public QWidget {
    Q_OBJECT
public:
    StartPage(const std::vector<Offer>& demos, const std::vector<Blank>& blanks, const QStringList& recent,
              const catalog::Catalog& shop, QWidget* parent = nullptr);
    /// The keyboard goes to the first kind of blank design.
    void pointAtBlanks();

signals:
    void blankChosen(const QString& key);
    void demoChosen(const QString& path);
    void fileChosen(const QString& path);
    void openAsked();
    void closed();  ///< on to the bench as it is

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    QLayout* blankRow(const std::vector<Blank>& blanks);
    QAbstractButton* firstBlank_ = nullptr;
};

}  // namespace bench
