// SPDX-License-Identifier: GPL-3.0-or-later
// One item of the winding order as a chip.
#pragma once

#include <QAbstractButton>

#include "document/selection.h"

namespace cut {

/// What a chip shows before its text.
enum class ChipSign { None, Winding, Earth, Paper };

/// A focusable chip: mark, text, and a frame in the accent when selected.
class Chip : public QAbstractButton {
    Q_OBJECT
public:
    Chip(document::Selected part, const QString& text, ChipSign sign, int winding, QWidget* parent);
    [[nodiscard]] const document::Selected& part() const { return part_; }
    [[nodiscard]] const design::ItemIndex* item() const { return std::get_if<design::ItemIndex>(&part_); }
    void setSelected(bool selected);
    [[nodiscard]] bool isSelected() const { return selected_; }
    [[nodiscard]] QSize sizeHint() const override;

signals:
    void walked(int key, bool move);  ///< Left, Right, Home or End; with Ctrl
    void removed();
    void formRequested();
    void menuRequested(QPoint global);
    void dragged(QPoint global);
    void dropped();
    void dragCancelled();

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;

private:
    [[nodiscard]] double signWidth() const;
    void paintSign(QPainter& painter, const QRectF& area) const;

    document::Selected part_;
    ChipSign sign_;
    int winding_;
    bool selected_ = false;
    bool moving_ = false;
    QPoint pressed_;
};

}  // namespace cut
