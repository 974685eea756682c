// SPDX-License-Identifier: GPL-3.0-or-later
// Wheel, keys, tips and the menu of the cut.
#include <QContextMenuEvent>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMenu>
#include <QPainter>
#include <QToolTip>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "cut/cut_view.h"
#include "cut/item_words.h"
#include "cut/ladders.h"

namespace cut {

using design::ItemIndex;

namespace {

/// How far in one can go, pixels a metre: a wire of 0.01 mm as a circle of 40 pixels.
constexpr double closest = 4e6;

}  // namespace

void CutView::zoom(double factor, const QPointF& fixed) {
    if (!answer_) return;
    auto whole = options();
    whole.frame.reset();
    const double least = fittedFrame(rect(), *answer_->build, *drawn_, whole).scale / 4;
    const Frame f = frame();
    const double scale = std::clamp(f.scale * factor, least, closest);
    own_ = f.zoomed(scale / f.scale, fixed);
    update();
}

void CutView::wheelEvent(QWheelEvent* event) {
    const int delta = event->angleDelta().y();
    if (delta == 0) return event->ignore();
    zoom(std::pow(1.2, delta / 120.0), event->position());
    event->accept();
}

void CutView::walk(int key, bool move) {
    const auto* item = selection_.item();
    const auto& design = *document_.shown();
    const bool upright = key == Qt::Key_Up || key == Qt::Key_Down;
    const int direction = key == Qt::Key_Right || key == Qt::Key_Up ? 1 : -1;
    const bool known = item != nullptr && itemAt(design, *item) != nullptr;
    if (upright) {
        if (!known || !answer_) return;
        const auto next = acrossChambers(design, shapes_, *item, direction);
        if (!next) return;
        if (move)
            edits_->move(*item, *next);
        else
            selection_.select(*next);
        return;
    }
    if (move) {
        if (!known) return;
        const bool mirrored = design.coil[static_cast<std::size_t>(item->place)].leg == 2;
        edits_->step(*item, mirrored ? -direction : direction);
        return;
    }
    if (const auto next = beside(design, known ? *item : ItemIndex{-1, -1}, direction)) selection_.select(*next);
}

void CutView::openTurns(const QString& typed) {
    const auto* item = selection_.item();
    const auto* what = item != nullptr ? itemAt(*document_.design(), *item) : nullptr;
    if (what == nullptr || what->section() == nullptr) return;
    if (turns_) turns_->close();
    turns_ = new TurnsEditor(*edits_, *item, itemName(*what), this);
    const QRectF at = itemRect(*item) & QRectF(rect());
    turns_->open((at.isEmpty() ? QRectF(rect()) : at).center().toPoint(), typed);
}

bool CutView::handleKey(const QKeyEvent& event) {
    const bool control = event.modifiers() & Qt::ControlModifier;
    const auto* item = selection_.item();
    switch (event.key()) {
        case Qt::Key_Left:
        case Qt::Key_Right:
        case Qt::Key_Up:
        case Qt::Key_Down:
            walk(event.key(), control);
            return true;
        case Qt::Key_Escape:
            if (!drag_ && !edge_) return false;
            cancelDrag();
            return true;
        case Qt::Key_Delete:
        case Qt::Key_Backspace:
            if (item == nullptr) return false;
            edits_->remove(*item);
            return true;
        case Qt::Key_Return:
        case Qt::Key_Enter:
            emit formRequested();
            return true;
        case Qt::Key_F:
        case Qt::Key_Home:
            if (control) return false;
            fit();
            return true;
        case Qt::Key_Plus:
            zoom(1.2, rect().center());
            return true;
        case Qt::Key_Minus:
            zoom(1 / 1.2, rect().center());
            return true;
        default:
            break;
    }
    const QString typed = event.text();
    if (control || typed.size() != 1 || !typed[0].isDigit() || drag_ || edge_) return false;
    openTurns(typed);
    return true;
}

void CutView::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Space && !event->isAutoRepeat() && !drag_) {
        space_ = true;
        if (!panFrom_) setCursor(Qt::OpenHandCursor);
        return;
    }
    if (!handleKey(*event)) QWidget::keyPressEvent(event);
}

void CutView::keyReleaseEvent(QKeyEvent* event) {
    if (event->key() != Qt::Key_Space || event->isAutoRepeat()) return QWidget::keyReleaseEvent(event);
    space_ = false;
    if (!panFrom_ && !drag_) unsetCursor();
}

void CutView::focusOutEvent(QFocusEvent* event) {
    space_ = false;
    if (dragging() || edge_) cancelDrag();
    QWidget::focusOutEvent(event);
}

QString CutView::ladderTip(const QPointF& at, QRect& area) const {
    if (!state_) return {};
    const auto borders = bordersOf(*answer_->build, *drawn_, shapes_, *state_);
    QPainter none;
    const auto chosen = options();
    const Canvas canvas{none, frame(), drawingArea(rect(), *answer_->build, chosen), chosen, *drawn_};
    for (const auto& row : laddersFor(canvas, borders).rows) {
        if (!row.row.contains(at)) continue;
        area = row.row.toAlignedRect();
        return borderTip(borders[static_cast<std::size_t>(row.border)], *state_);
    }
    return {};
}

QString CutView::withEffects(const QString& words, const document::Selected& part) const {
    const QString effects = effects_ ? effects_(part) : QString();
    if (words.isEmpty() || effects.isEmpty()) return words + effects;
    return words + QLatin1Char('\n') + effects;
}

void CutView::showTip(const QPoint& at, const QPoint& global) {
    QRect ladder;
    if (const QString words = ladderTip(at, ladder); !words.isEmpty())
        return QToolTip::showText(global, words, this, ladder);
    const auto found = under(at);
    if (const auto* item = std::get_if<ItemIndex>(&found)) {
        if (const auto* shape = shapeOf(shapes_, *item)) {
            const QRect area = frame().rect(shape->box).toAlignedRect() & rect();
            const QString words = withEffects(itemTip(*shape, *drawn_), found);
            return QToolTip::showText(global, words, this, area.adjusted(-3, 0, 3, 0));
        }
    }
    if (const auto whole = whatToSelect(at); std::holds_alternative<document::WholePart>(whole))
        if (const QString words = withEffects({}, whole); !words.isEmpty())
            return QToolTip::showText(global, words, this);
    QToolTip::hideText();
}

bool CutView::event(QEvent* event) {
    if (event->type() == QEvent::ToolTip && answer_) {
        const auto* help = static_cast<QHelpEvent*>(event);
        showTip(help->pos(), help->globalPos());
        return true;
    }
    // Our own keys come before the window's shortcuts.
    if (event->type() == QEvent::ShortcutOverride) {
        const auto* key = static_cast<QKeyEvent*>(event);
        const bool plain = !(key->modifiers() & (Qt::ControlModifier | Qt::AltModifier));
        if (plain && (key->key() == Qt::Key_F || key->key() == Qt::Key_Delete || key->key() == Qt::Key_Space ||
                      (key->key() >= Qt::Key_0 && key->key() <= Qt::Key_9) ||
                      (key->key() == Qt::Key_Escape && (drag_ || edge_)))) {
            event->accept();
            return true;
        }
    }
    return QWidget::event(event);
}

void CutView::contextMenuEvent(QContextMenuEvent* event) {
    QPointF at = event->pos();
    const auto* now = selection_.item();
    if (event->reason() == QContextMenuEvent::Keyboard) {
        if (now != nullptr) at = itemRect(*now).center();
    } else {
        selection_.select(under(at));
        now = selection_.item();
    }
    const auto place = landing(at);
    auto* menu = new QMenu(this);
    menu->setAttribute(Qt::WA_DeleteOnClose);
    edits_->fill(*menu, now != nullptr ? std::optional(*now) : std::nullopt,
                 place ? std::optional(place->before) : std::nullopt);
    menu->popup(event->reason() == QContextMenuEvent::Keyboard ? mapToGlobal(at.toPoint()) : event->globalPos());
}

}  // namespace cut
