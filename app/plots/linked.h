// SPDX-License-Identifier: GPL-3.0-or-later
// Plots that move together: one cursor, one mark, one band of frequencies, one way back.
#pragma once

#include <QObject>
#include <vector>

#include "plots/plot.h"

namespace plots {

class Linked : public QObject {
    Q_OBJECT
public:
    using QObject::QObject;
    /// From here on `plot` follows the others. It must live as long as this.
    void add(Plot& plot);
    [[nodiscard]] double cursor() const { return cursor_; }  ///< Hz; 0: none
    [[nodiscard]] double mark() const { return mark_; }      ///< Hz; 0: none
    void placeCursor(double frequency);
    void placeMark(double frequency);
    /// The last view of the axes before a zoom or fit by hand; nothing happens without one.
    void back();
    void fitAll();

private:
    void showBand(const QCPRange& band);
    void keepZoom();

    std::vector<Plot*> plots_;
    std::vector<std::vector<Plot::Zoom>> before_;  ///< newest last, a zoom a plot
    double cursor_ = 0, mark_ = 0;
};

}  // namespace plots
