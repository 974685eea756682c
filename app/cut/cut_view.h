// SPDX-License-Identifier: GPL-3.0-or-later
// The cut through the window, to scale, which is edited by hand.
#pragma once

#include <QPointer>
#include <QWidget>
#include <functional>
#include <optional>

#include "analysis/answer.h"
#include "cut/coil_edits.h"
#include "cut/cut_painter.h"
#include "cut/turns_editor.h"
#include "document/document.h"
#include "document/selection.h"

namespace cut {

/// Shows the coil build of the last answer. Click selects, drag moves an item, typing digits on a section changes its
/// turns, arrows walk, Ctrl+arrows move, Delete removes, Enter asks for the form, wheel zooms, Space or the middle
/// button pans, F shows all.
class CutView : public QWidget {
    Q_OBJECT
public:
    CutView(document::Document& document, document::Selection& selection, QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override { return {420, 560}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {220, 220}; }
    /// The frame in use, and where an item lies on the widget; empty if it is not drawn.
    [[nodiscard]] Frame frame() const;
    [[nodiscard]] QRectF itemRect(design::ItemIndex item) const;
    [[nodiscard]] bool dragging() const { return drag_ && drag_->moving; }
    /// Edges of what is selected that the hand can take.
    [[nodiscard]] std::vector<Handle> handles() const;

    /// The items as a list, from the core outward through all chambers, for screen readers.
    [[nodiscard]] int itemCount() const;
    [[nodiscard]] design::ItemIndex itemIndexAt(int index) const;
    [[nodiscard]] QString itemSentenceAt(int index) const;
    [[nodiscard]] QString itemTipAt(int index) const;
    /// What a part does to what is promised, for its tip; "" where that is not known.
    using Effects = std::function<QString(const document::Selected& part)>;
    void setEffects(Effects effects) { effects_ = std::move(effects); }
    [[nodiscard]] int selectedItem() const;  ///< -1: none
    void selectItem(int index);

public slots:
    void showAnswer(analysis::AnswerPtr answer);
    void fit();  ///< shows the whole drawing
    /// Which ladders stand on the borders between sections.
    void showAmpereTurns(bool on);
    void showLayerVolts(bool on);
    void showInch(bool on);  ///< rulers in inch

signals:
    void message(QString sentence);
    void formRequested();

protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void keyReleaseEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;

private:
    struct Drag {
        design::ItemIndex item;
        QPointF pressed, now;
        bool moving = false;
        std::optional<Landing> landing;
    };
    /// An edge under the hand.
    struct EdgeDrag {
        Handle handle;
        QPointF pressed;
        double scale = 1;  ///< of the drawing when it was taken
        double value = 0;  ///< m
    };
    [[nodiscard]] std::optional<Handle> handleAt(const QPointF& at) const;
    void dragEdge(const QPointF& at);
    void paintHandles(QPainter& painter) const;
    void announceSelection();
    [[nodiscard]] PaintOptions options() const;
    [[nodiscard]] document::Selected under(const QPointF& at) const;
    [[nodiscard]] document::Selected whatToSelect(const QPointF& at) const;
    [[nodiscard]] std::optional<Landing> landing(const QPointF& at) const;
    void take(analysis::AnswerPtr answer);
    void paintDrag(QPainter& painter) const;
    void paintNothing(QPainter& painter) const;
    void dragTo(const QPointF& at);
    void drop();
    void cancelDrag();
    void zoom(double factor, const QPointF& fixed);
    void walk(int key, bool move);
    bool handleKey(const QKeyEvent& event);
    void openTurns(const QString& typed);
    void takeState();
    /// `words`, and what the part does.
    [[nodiscard]] QString withEffects(const QString& words, const document::Selected& part) const;
    [[nodiscard]] QString ladderTip(const QPointF& at, QRect& area) const;
    void showTip(const QPoint& at, const QPoint& global);
    void describe();

    document::Document& document_;
    document::Selection& selection_;
    CoilEdits* edits_;
    analysis::AnswerPtr answer_;   ///< what is drawn
    analysis::AnswerPtr arrived_;  ///< came while something is dragged
    design::DesignPtr drawn_;      ///< the design that was shown when `answer_` came
    std::vector<Shape> shapes_;
    std::shared_ptr<const analysis::CoilState> state_;  ///< null: no ladder is asked for
    bool ampereTurns_ = false, layerVolts_ = false, inch_ = false;
    std::optional<Frame> own_;  ///< set once zoomed or panned
    std::optional<Drag> drag_;
    std::optional<EdgeDrag> edge_;
    std::optional<QPointF> panFrom_;
    std::optional<design::ItemIndex> passOn_;  ///< on release, the next of several sections in one place is selected
    bool space_ = false;
    QPointer<TurnsEditor> turns_;
    Effects effects_;
};

}  // namespace cut
