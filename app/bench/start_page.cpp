// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/start_page.h"

#include <QFileInfo>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "bench/theme.h"
#include "cut/cut_painter.h"

namespace bench {

namespace {

constexpr int columns = 3, inside = 12;

QFont strong(const QFont& font, double more) {
    QFont made = font;
    made.setWeight(QFont::DemiBold);
    if (made.pointSizeF() > 0) made.setPointSizeF(made.pointSizeF() + more);
    return made;
}

}  // namespace

DesignCard::DesignCard(design::DesignPtr design, const catalog::Catalog& shop, QWidget* parent)
    : QAbstractButton(parent), design_(std::move(design)) {
    auto laid = std::make_shared<analysis::Answer>();
    laid->build = std::make_shared<const coil::CoilBuild>(coil::layOut(*design_, shop));
    laidOut_ = std::move(laid);
    setText(QString::fromStdString(design_->name));
    setAccessibleName(tr("New from the demo %1").arg(text()));
    setAccessibleDescription(QString::fromStdString(design_->brief.use));
    setToolTip(QString::fromStdString(design_->note));
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::PointingHandCursor);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

QSize DesignCard::sizeHint() const {
    return {15 * fontMetrics().height(), 14 * fontMetrics().height()};
}

void DesignCard::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const bool lit = hasFocus() || underMouse();
    painter.fillRect(rect(), colour(Token::Base));
    painter.setPen(QPen(colour(lit ? Token::Accent : Token::Line), lit ? 2 : 0));
    painter.drawRect(rect().adjusted(0, 0, -1, -1));
    const int line = fontMetrics().height();
    const QRect words = rect().adjusted(inside, height() - 4 * line - inside, -inside, -inside);
    cut::PaintOptions options;
    options.dark = isDark();
    options.font = font();
    options.rulers = options.labels = options.ends = false;
    painter.save();
    const QRectF drawing = rect().adjusted(inside, inside, -inside, -4 * line - 2 * inside);
    painter.setClipRect(drawing);
    cut::paintCut(painter, drawing, *laidOut_, *design_, options);
    painter.restore();
    painter.setFont(strong(font(), 0));
    painter.setPen(colour(Token::Text));
    painter.drawText(words, Qt::AlignLeft | Qt::AlignTop,
                     QFontMetrics(painter.font()).elidedText(text(), Qt::ElideRight, words.width()));
    painter.setFont(font());
    painter.setPen(colour(Token::Muted));
    painter.drawText(words.adjusted(0, line + 2, 0, 0), Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap,
                     QString::fromStdString(design_->brief.use));
}

StartPage::StartPage(const std::vector<Offer>& demos, const QStringList& recent, const catalog::Catalog& shop,
                     QWidget* parent)
    : QWidget(parent) {
    setAutoFillBackground(true);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(32, 24, 32, 24);
    column->setSpacing(16);
    auto* title = new QLabel(tr("Begin with a demo design, or open one of your own"), this);
    title->setFont(strong(font(), 2));
    column->addWidget(title);
    auto* grid = new QGridLayout;
    grid->setSpacing(16);
    for (int k = 0; k < static_cast<int>(demos.size()); ++k) {
        const Offer& offer = demos[static_cast<std::size_t>(k)];
        auto* card = new DesignCard(offer.design, shop, this);
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

void StartPage::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) return emit closed();
    QWidget::keyPressEvent(event);
}

}  // namespace bench
