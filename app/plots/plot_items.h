// SPDX-License-Identifier: GPL-3.0-or-later
// What a plot draws besides its curves: the brief's mask and the names at the ends of the curves.
#pragma once

#include <qcustomplot.h>

#include <QString>
#include <vector>

#include "design/brief.h"

namespace plots {

/// The areas that a mask forbids, each with a solid edge.
class MaskArea : public QCPAbstractItem {
public:
    explicit MaskArea(QCustomPlot* plot);
    /// Limits are `points` shifted up by `offset` (a response mask is relative to 1 kHz).
    void show(std::vector<design::MaskPoint> points, double offset);
    double selectTest(const QPointF&, bool, QVariant* = nullptr) const override { return -1; }
    [[nodiscard]] const std::vector<design::MaskPoint>& points() const { return points_; }

protected:
    void draw(QCPPainter* painter) override;

private:
    void drawSide(QCPPainter* painter, const QCPRange& band, bool low) const;
    std::vector<design::MaskPoint> points_;
    double offset_ = 0;
};

/// A name beside the right end of each curve, moved apart where two would overlap.
class EndLabels : public QCPAbstractItem {
public:
    struct Label {
        QString text;
        QColor colour;
        QCPAxis* valueAxis = nullptr;
        std::vector<double> frequency, y;
    };
    explicit EndLabels(QCustomPlot* plot);
    void show(std::vector<Label> labels) { labels_ = std::move(labels); }
    double selectTest(const QPointF&, bool, QVariant* = nullptr) const override { return -1; }
    struct Placed {
        QRectF rect;   ///< empty for a curve that is out of sight
        QString text;  ///< broken into lines where it stands in the margin
    };
    /// Where each label stands now, in pixels.
    [[nodiscard]] std::vector<Placed> places(const QFontMetricsF& metrics) const;

protected:
    void draw(QCPPainter* painter) override;

private:
    [[nodiscard]] Placed place(const Label& label, const QFontMetricsF& metrics) const;
    std::vector<Label> labels_;
};

}  // namespace plots
