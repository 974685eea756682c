// SPDX-License-Identifier: GPL-3.0-or-later
// How the units of a production spread about one figure.
#pragma once

#include <optional>

#include "bench/pointed_picture.h"
#include "spread/summary.h"

namespace bench {

/// Bars of units, with the nominal, the promise's limits, and the places of 5 and 95 %.
class HistogramView : public PointedPicture {
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
    [[nodiscard]] int barAt(const QPointF& at) const;   ///< -1: none
    [[nodiscard]] int bar() const { return chosen(); }  ///< that is told
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    [[nodiscard]] int count() const override;
    [[nodiscard]] int at(const QPointF& place) const override { return barAt(place); }
    [[nodiscard]] QString wordsOf(int bar) const override { return barWords(bar); }
    [[nodiscard]] bool isEmpty() const override { return !shown_ || shown_->summary.occurs == 0; }
    void paint(QPainter& painter) const override;

private:
    [[nodiscard]] QRectF room() const;
    [[nodiscard]] double place(double value) const;  ///< x in pixels
    void paintBars(QPainter& painter) const;
    void paintLimit(QPainter& painter, double limit, bool least) const;
    void paintMarks(QPainter& painter) const;
    void paintAxis(QPainter& painter) const;

    std::optional<Shown> shown_;
    double from_ = 0, to_ = 1;  ///< of the axis
};

}  // namespace bench
