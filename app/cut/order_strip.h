// SPDX-License-Identifier: GPL-3.0-or-later
// The winding order in words: chips from the core outward, for keyboard and screen readers as well as for the hand.
#pragma once

#include <QWidget>
#include <optional>
#include <vector>

#include "cut/chip.h"
#include "cut/coil_edits.h"
#include "document/document.h"
#include "document/selection.h"

namespace cut {

/// One row of chips a place, wrapped when long. Left and Right walk, Ctrl+Left and Ctrl+Right move, dragging a chip
/// moves it.
class OrderStrip : public QWidget {
    Q_OBJECT
public:
    OrderStrip(document::Document& document, document::Selection& selection, QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override { return {160, 2 * fontMetrics().height()}; }
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    /// The chip of an item, or null.
    [[nodiscard]] Chip* chip(design::ItemIndex item) const;

signals:
    void message(QString sentence);
    void formRequested();

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    struct Spot {
        Chip* chip;
        QPoint at;
    };
    struct Row {
        int place;
        QString heading;  ///< "leg 1, chamber 2" where there are several places
        std::vector<Chip*> chips;
    };
    void rebuild();
    Chip* addChip(document::Selected part, const QString& text, ChipSign sign, int winding, const QString& sentence);
    void addRow(int place);
    int arrange(int width, std::vector<Spot>* spots, std::vector<std::pair<QPoint, QString>>* headings) const;
    void showSelection();
    void walk(const Chip& from, int key, bool move);
    void dragTo(const Chip& chip, const QPoint& at);
    [[nodiscard]] std::optional<design::ItemIndex> landingAt(const QPoint& at) const;
    void endDrag(bool keep);

    document::Document& document_;
    document::Selection& selection_;
    CoilEdits* edits_;
    std::vector<Row> rows_;
    struct Drag {
        design::ItemIndex item;
        std::optional<design::ItemIndex> before;
    };
    std::optional<Drag> drag_;
    bool stale_ = false;  ///< the design changed while a chip was dragged
};

}  // namespace cut
