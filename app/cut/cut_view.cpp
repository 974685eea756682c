// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut/cut_view.h"

#include <QAccessible>
#include <QPainter>

#include "cut/cut_accessible.h"
#include "cut/hatch.h"
#include "cut/item_words.h"

namespace cut {

using bench::Token;
using design::ItemIndex;

CutView::CutView(document::Document& document, document::Selection& selection, QWidget* parent)
    : QWidget(parent), document_(document), selection_(selection), edits_(new CoilEdits(document, selection, this)) {
    announceCuts();
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);  // the pointer tells what can be taken
    setAccessibleName(tr("Cut through the window"));
    setWhatsThis(
        tr("Click selects, drag moves, digits change turns, arrows walk, Ctrl+arrows move, Delete removes, Enter opens "
           "the form."));
    connect(edits_, &CoilEdits::message, this, &CutView::message);
    connect(&selection_, &document::Selection::changed, this, [this] {
        describe();
        announceSelection();
        update();
    });
    connect(&document_, &document::Document::shownChanged, this, &CutView::describe);
    describe();
}

void CutView::showAnswer(analysis::AnswerPtr answer) {
    if (!answer || !answer->build) return;
    // While something is dragged the drawing holds still under the hand.
    if (dragging())
        arrived_ = std::move(answer);
    else
        take(std::move(answer));
}

void CutView::take(analysis::AnswerPtr answer) {
    const auto* before = answer_ ? answer_->build.get() : nullptr;
    const auto* now = answer->build.get();
    if (before != nullptr && (before->windowWidth != now->windowWidth || before->windowHeight != now->windowHeight))
        own_.reset();
    answer_ = std::move(answer);
    drawn_ = document_.shown();
    shapes_ = shapesOf(*answer_->build, *drawn_);
    takeState();
    update();
}

void CutView::takeState() {
    state_.reset();
    if (answer_ && (ampereTurns_ || layerVolts_))
        state_ = std::make_shared<const analysis::CoilState>(analysis::coilState(*drawn_, *answer_));
}

void CutView::showAmpereTurns(bool on) {
    ampereTurns_ = on;
    takeState();
    update();
}

void CutView::showInch(bool on) {
    inch_ = on;
    update();
}

void CutView::showLayerVolts(bool on) {
    layerVolts_ = on;
    takeState();
    update();
}

PaintOptions CutView::options() const {
    PaintOptions options;
    options.dark = bench::isDark();
    options.font = font();
    options.frame = own_;
    options.selected = selection_.selected();
    options.state = state_;
    options.inch = inch_;
    options.ampereTurns = ampereTurns_;
    options.layerVolts = layerVolts_;
    return options;
}

Frame CutView::frame() const {
    if (own_) return *own_;
    if (!answer_) return {};
    return fittedFrame(rect(), *answer_->build, *drawn_, options());
}

QRectF CutView::itemRect(ItemIndex item) const {
    const auto* shape = shapeOf(shapes_, item);
    return shape != nullptr ? frame().rect(shape->box) : QRectF();
}

void CutView::fit() {
    own_.reset();
    update();
}

void CutView::describe() {
    const auto& design = *document_.shown();
    QString words = coilSentence(design);
    if (const auto* item = selection_.item())
        if (const QString sentence = itemSentence(design, *item); !sentence.isEmpty())
            words.prepend(tr("Selected: %1. ").arg(sentence));
    if (words == accessibleDescription()) return;
    setAccessibleDescription(words);
    QAccessibleEvent changed(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&changed);
}

void CutView::paintNothing(QPainter& painter) const {
    painter.setPen(bench::colour(Token::Muted));
    painter.drawText(rect(), Qt::AlignCenter, tr("The coil is being laid out"));
}

void CutView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), bench::colour(Token::Base));
    if (!answer_) return paintNothing(painter);
    paintCut(painter, rect(), *answer_, *drawn_, options());
    if (dragging())
        paintDrag(painter);
    else
        paintHandles(painter);
    if (hasFocus()) {
        painter.setPen(QPen(bench::colour(Token::Accent), 0));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(rect().adjusted(0, 0, -1, -1));
    }
}

std::vector<Handle> CutView::handles() const {
    if (!answer_) return {};
    return handlesOf(frame(), *document_.shown(), shapes_, selection_.selected());
}

void CutView::paintHandles(QPainter& painter) const {
    const QColor accent = bench::colour(Token::Accent), base = bench::colour(Token::Base);
    painter.setPen(QPen(accent, 0));
    painter.setBrush(base);
    for (const Handle& handle : handles())
        if (rect().contains(handle.at.toAlignedRect())) painter.drawRect(handle.at);
    if (!edge_) return;
    const QString words = handleWords(*document_.shown(), edge_->handle) + QLatin1Char(' ') + lengthWords(edge_->value);
    QRectF plate(0, 0, fontMetrics().horizontalAdvance(words) + 8, fontMetrics().height() + 2);
    plate.moveTopLeft(QPointF(8, 8));
    painter.drawRect(plate);
    painter.setPen(bench::colour(Token::Text));
    painter.drawText(plate, Qt::AlignCenter, words);
}

void CutView::paintDrag(QPainter& painter) const {
    const auto* shape = shapeOf(shapes_, drag_->item);
    if (shape == nullptr) return;
    const QColor accent = bench::colour(Token::Accent), base = bench::colour(Token::Base);
    const Frame f = frame();
    if (drag_->landing) {
        const QPointF low = f.point(drag_->landing->x, drag_->landing->y0),
                      high = f.point(drag_->landing->x, drag_->landing->y1);
        painter.setPen(QPen(accent, 3));
        painter.drawLine(low, high);
        for (const double side : {-4.0, 4.0}) {
            painter.drawLine(low, low + QPointF(side, 4));
            painter.drawLine(high, high + QPointF(side, -4));
        }
    }
    QRectF ghost = f.rect(shape->box).translated(drag_->now - drag_->pressed);
    if (ghost.width() < 4) ghost = QRectF(ghost.center().x() - 2, ghost.top(), 4, ghost.height());
    painter.setOpacity(0.6);
    if (shape->kind == Shape::Kind::Section) {
        const Canvas canvas{painter, f, rect(), options(), *drawn_};
        const int index = canvas.windingIndex(shape->winding);
        paintWindingMark(painter, ghost, bench::windingColour(index), base, bench::windingBrushStyle(index));
    } else {
        painter.fillRect(ghost, bench::colour(shape->kind == Shape::Kind::Shield ? Token::Foil : Token::Paper));
    }
    painter.setOpacity(1);
    painter.setPen(QPen(accent, 0));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(ghost);
    const auto* item = itemAt(*drawn_, drag_->item);
    if (item == nullptr) return;
    const QString words = itemName(*item);
    QRectF plate(0, 0, fontMetrics().horizontalAdvance(words) + 8, fontMetrics().height() + 2);
    plate.moveTopLeft(drag_->now + QPointF(12, 12));
    painter.fillRect(plate, base);
    painter.drawRect(plate);
    painter.setPen(bench::colour(Token::Text));
    painter.drawText(plate, Qt::AlignCenter, words);
}

}  // namespace cut
