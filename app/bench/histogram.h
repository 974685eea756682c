// SPDX-License-Identifier: GPL-3.0-or-later
// How the units of a production spread about one figure.
#pragma once

#include <QWidget>
#include <optional>

#include "spread/summary.h"

namespace bench {

/// Bars of units, with the nominal, the promise's limits, and the places of 5 and 95 %. Left and right go from bar to
/// bar, and the mouse tells the bar under it.
class HistogramView : public QWidget {
    Q_OBJECT
public:
    explicit HistogramView(QWidget* parent = nullptr);

    struct Shown {
        analysis::Column column;
        spread::ColumnSummary summary;
        std::optional<double> atLeast, atMost;
        std::uint64_t units = 0;
        bool old = false;
    };
    void showFigure(std::optional<Shown> shown);
    [[nodiscard]] const std::optional<Shown>& shown() const { return shown_; }
    /// "137 of 1000 units from 18.1 to 18.3 Hz"; "" without a bar.
    [[nodiscard]] QString barWords(int bar) const;
    [[nodiscard]] int barAt(const QPointF& at) const;  ///< -1: none
    [[nodiscard]] int bar() const { return bar_; }     ///< that is told
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

signals:
    void told(const QString& words);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    void choose(int bar);
    [[nodiscard]] QRectF room() const;
    [[nodiscard]] double place(double value) const;  ///< x in pixels
    void paintBars(QPainter& painter) const;
    void paintLimit(QPainter& painter, double limit, bool least) const;
    void paintMarks(QPainter& painter) const;
    void paintAxis(QPainter& painter) const;

    std::optional<Shown> shown_;
    double from_ = 0, to_ = 1;  ///< of the axis
    int bar_ = -1;
};

}  // namespace bench
