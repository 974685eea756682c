// SPDX-License-Identifier: GPL-3.0-or-later
// Selecting, dragging and panning with the mouse.
#include <QApplication>
#include <QMouseEvent>
#include <utility>

#include "cut/cut_view.h"

namespace cut {

using design::ItemIndex;

namespace {

/// Half of the least width, in pixels, that can be pointed at.
constexpr double slackPixels = 3;

}  // namespace

document::Selected CutView::under(const QPointF& at) const {
    if (!answer_) return {};
    const Frame f = frame();
    return hit(*answer_->build, shapes_, f.x(at.x()), f.y(at.y()), slackPixels / f.scale);
}

document::Selected CutView::whatToSelect(const QPointF& at) const {
    if (!answer_) return {};
    const Frame f = frame();
    const double x = f.x(at.x()), y = f.y(at.y());
    const auto all = f.rect(extent(*answer_->build));
    auto found = hit(*answer_->build, shapes_, x, y, slackPixels / f.scale, selection_.selected());
    // Beside the drawing nothing is meant, not the iron.
    if (std::holds_alternative<document::WholePart>(found) && !all.contains(at)) return {};
    return found;
}

std::optional<Landing> CutView::landing(const QPointF& at) const {
    if (!answer_) return std::nullopt;
    const Frame f = frame();
    return landingAt(*answer_->build, *drawn_, shapes_, f.x(at.x()), f.y(at.y()));
}

void CutView::mousePressEvent(QMouseEvent* event) {
    if (drag_ || edge_) return;  // another button while dragging
    if (event->button() == Qt::MiddleButton || (event->button() == Qt::LeftButton && space_)) {
        panFrom_ = event->position();
        setCursor(Qt::ClosedHandCursor);
        return;
    }
    if (event->button() != Qt::LeftButton) return;
    if (const auto handle = handleAt(event->position())) {
        edge_ = EdgeDrag{*handle, event->position(), frame().scale, handle->value};
        return;
    }
    const auto found = under(event->position());
    const auto next = whatToSelect(event->position());
    const auto* now = selection_.item();
    const auto* other = std::get_if<ItemIndex>(&next);
    // Pressing on what is selected may begin a drag: only a plain click passes on to what shares its place.
    passOn_.reset();
    if (now != nullptr && other != nullptr && *other != *now) {
        const auto* a = shapeOf(shapes_, *now);
        const auto* b = shapeOf(shapes_, *other);
        if (a != nullptr && b != nullptr && a->box == b->box) passOn_ = *other;
    }
    if (!passOn_) selection_.select(next);
    const auto* held = passOn_ ? selection_.item() : std::get_if<ItemIndex>(&next);
    if (held != nullptr && std::holds_alternative<ItemIndex>(found))
        drag_ = Drag{*held, event->position(), event->position(), false, {}};
}

void CutView::mouseMoveEvent(QMouseEvent* event) {
    if (panFrom_) {
        Frame f = frame();
        f.origin += event->position() - *panFrom_;
        panFrom_ = event->position();
        own_ = f;
        update();
        return;
    }
    if (edge_) return dragEdge(event->position());
    if (event->buttons() == Qt::NoButton && !space_) {
        if (const auto handle = handleAt(event->position()))
            setCursor(handle->edge == Handle::Edge::Thickness ? Qt::SizeHorCursor : Qt::SizeVerCursor);
        else
            unsetCursor();
    }
    if (!drag_ || !(event->buttons() & Qt::LeftButton)) return;
    const double far = (event->position() - drag_->pressed).manhattanLength();
    if (!drag_->moving && far < QApplication::startDragDistance()) return;
    drag_->moving = true;
    passOn_.reset();
    setCursor(Qt::ClosedHandCursor);
    dragTo(event->position());
}

std::optional<Handle> CutView::handleAt(const QPointF& at) const {
    constexpr double reach = 2;
    for (const Handle& handle : handles())
        if (handle.at.adjusted(-reach, -reach, reach, reach).contains(at)) return handle;
    return std::nullopt;
}

void CutView::dragEdge(const QPointF& at) {
    const double value = valueAfter(edge_->handle, at - edge_->pressed, edge_->scale);
    if (value == edge_->value) return;
    edge_->value = value;
    edits_->tryEdge(edge_->handle, value);
    update();
}

void CutView::dragTo(const QPointF& at) {
    drag_->now = at;
    const auto before = drag_->landing;
    drag_->landing = landing(at);
    if (drag_->landing && (!before || before->before != drag_->landing->before))
        edits_->tryMove(drag_->item, drag_->landing->before);
    update();
}

void CutView::drop() {
    const Drag done = *drag_;
    drag_.reset();
    unsetCursor();
    const auto before = document_.design();
    if (done.landing)
        edits_->move(done.item, done.landing->before);
    else
        edits_->cancel();
    if (arrived_ && document_.design() != before) take(std::exchange(arrived_, {}));
    arrived_.reset();
    update();
}

void CutView::cancelDrag() {
    drag_.reset();
    edge_.reset();
    arrived_.reset();
    unsetCursor();
    edits_->cancel();
    update();
}

void CutView::mouseReleaseEvent(QMouseEvent* event) {
    if (panFrom_ && (event->button() == Qt::MiddleButton || event->button() == Qt::LeftButton)) {
        panFrom_.reset();
        if (space_)
            setCursor(Qt::OpenHandCursor);
        else
            unsetCursor();
        return;
    }
    if (event->button() != Qt::LeftButton) return;
    if (edge_) {
        dragEdge(event->position());
        const EdgeDrag done = *edge_;
        edge_.reset();
        if (done.value != done.handle.value)
            edits_->setEdge(done.handle, done.value);
        else
            edits_->cancel();
        // A click without a drag means what lies beneath the handle.
        if (event->position() == done.pressed) selection_.select(whatToSelect(done.pressed));
        return update();
    }
    if (dragging()) {
        dragTo(event->position());
        drop();
    }
    drag_.reset();
    if (passOn_) selection_.select(*passOn_);
    passOn_.reset();
}

void CutView::mouseDoubleClickEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) return;
    const auto found = whatToSelect(event->position());
    if (std::holds_alternative<std::monostate>(found)) return fit();
    if (std::holds_alternative<ItemIndex>(found)) emit formRequested();
}

}  // namespace cut
