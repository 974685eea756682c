// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/start_page.h"

#include <QFileInfo>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "bench/design_card.h"

namespace bench {

namespace {

constexpr int columns = 3;

}  // namespace

StartPage::StartPage(const std::vector<Offer>& demos, const std::vector<Blank>& blanks, const QStringList& recent,
                     const catalog::Catalog& shop, QWidget* parent)
    : QWidget(parent) {
    setAutoFillBackground(true);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(32, 24, 32, 24);
    column->setSpacing(16);
    if (!blanks.empty()) {
        auto* anew = new QLabel(tr("Begin a new design: what will it be?"), this);
        anew->setFont(strong(font(), 2));
        column->addWidget(anew);
        column->addLayout(blankRow(blanks));
    }
    auto* title = new QLabel(blanks.empty() ? tr("Begin with a demo design, or open one of your own")
                                            : tr("Or begin with a demo design, or open one of your own"),
                             this);
    title->setFont(strong(font(), 2));
    column->addWidget(title);
    auto* grid = new QGridLayout;
    grid->setSpacing(16);
    for (int k = 0; k < static_cast<int>(demos.size()); ++k) {
        const Offer& offer = demos[static_cast<std::size_t>(k)];
        auto* card = new DesignCard(offer.design, shop, QString::fromStdString(offer.design->name),
                                    QString::fromStdString(offer.design->brief.use), this);
        card->setAccessibleName(tr("New from the demo %1").arg(card->text()));
        card->setToolTip(QString::fromStdString(offer.design->note));
        connect(card, &QAbstractButton::clicked, this, [this, path = offer.path] { emit demoChosen(path); });
        grid->addWidget(card, k / columns, k % columns);
    }
    column->addLayout(grid, 1);
    auto* row = new QHBoxLayout;
    row->setSpacing(8);
    auto* open = new QPushButton(tr("&Open a design…"), this);
    open->setToolTip(tr("A design file of your own"));
    connect(open, &QPushButton::clicked, this, &StartPage::openAsked);
    row->addWidget(open);
    for (const QString& path : recent.mid(0, columns)) {
        auto* button = new QPushButton(QFileInfo(path).completeBaseName(), this);
        button->setToolTip(path);
        button->setAccessibleName(tr("Open %1").arg(path));
        connect(button, &QPushButton::clicked, this, [this, path] { emit fileChosen(path); });
        row->addWidget(button);
    }
    row->addStretch(1);
    auto* bench = new QPushButton(tr("To the &bench"), this);
    bench->setToolTip(tr("On with the design that is open (Esc)"));
    connect(bench, &QPushButton::clicked, this, &StartPage::closed);
    row->addWidget(bench);
    column->addLayout(row);
}

QLayout* StartPage::blankRow(const std::vector<Blank>& blanks) {
    auto* row = new QHBoxLayout;
    row->setSpacing(8);
    for (const Blank& blank : blanks) {
        auto* button = new QPushButton(blank.title, this);
        button->setToolTip(blank.tip);
        button->setAccessibleName(tr("New design: %1").arg(blank.title));
        connect(button, &QPushButton::clicked, this, [this, key = blank.key] { emit blankChosen(key); });
        row->addWidget(button);
        if (!firstBlank_) firstBlank_ = button;
    }
    row->addStretch(1);
    return row;
}

void StartPage::pointAtBlanks() {
    if (firstBlank_) firstBlank_->setFocus(Qt::TabFocusReason);
}

void StartPage::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) return emit closed();
    QWidget::keyPressEvent(event);
}

}  // namespace bench
