// SPDX-License-Identifier: GPL-3.0-or-later
// Within what the curves of a production lie, behind those of the design.
#pragma once

#include <qcustomplot.h>

#include <vector>

namespace plots {

/// Filled between low and high with thin edges; old ones have dotted edges alone.
class BandArea : public QCPAbstractItem {
public:
    struct Band {
        QColor colour;
        QCPAxis* valueAxis = nullptr;
        std::vector<double> at, low, high;  ///< not a number: no band there
    };
    explicit BandArea(QCustomPlot* plot);
    void show(std::vector<Band> bands, bool old);
    [[nodiscard]] const std::vector<Band>& bands() const { return bands_; }
    [[nodiscard]] bool old() const { return old_; }
    double selectTest(const QPointF&, bool, QVariant* = nullptr) const override { return -1; }

protected:
    void draw(QCPPainter* painter) override;

private:
    void drawBand(QCPPainter* painter, const Band& band) const;
    std::vector<Band> bands_;
    bool old_ = false;
};

}  // namespace plots
