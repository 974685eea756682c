// SPDX-License-Identifier: GPL-3.0-or-later
// One chart, mostly over frequency: curves of one trace, their held forerunners, masks and the cursor.
#pragma once

#include <qcustomplot.h>

#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "analysis/answer.h"
#include "design/design.h"
#include "plots/measured_overlay.h"
#include "spread/bands.h"

namespace plots {

class MaskArea;
class BandArea;
class EndLabels;

/// Which curves a plot shows.
struct View {
    std::string trace;      ///< "response"
    std::string curve;      ///< one curve by name; "": all of the unit of the trace's first
    std::string rightUnit;  ///< curves of this unit on a right axis; "": none
    bool operator==(const View&) const = default;
};

/// Bands of a production, shared by all plots.
using BandsPtr = std::shared_ptr<const std::vector<spread::TraceBand>>;

class Plot : public QCustomPlot {
    Q_OBJECT
public:
    /// How far the axes show.
    struct Zoom {
        QCPRange band;  ///< Hz, of all plots over frequency
        QCPRange x, left, right;
        bool byHand = false;
        std::string trace;  ///< a zoom of another trace says nothing of this one
        bool operator==(const Zoom&) const = default;
    };
    explicit Plot(View view, QWidget* parent = nullptr);

    [[nodiscard]] const View& view() const { return view_; }
    void setView(View view);
    /// Shows the answer; a plot whose curves and masks are the same as before is not drawn again. True if it changed.
    bool showAnswer(const analysis::AnswerPtr& answer, const design::DesignPtr& design);
    /// Keeps `held` beneath the moving curves, axes locked; null lets go.
    void hold(const analysis::AnswerPtr& held);
    [[nodiscard]] bool holding() const { return held_ != nullptr; }
    /// Shows the bands of its trace and hook-up behind the curves; null: none. `old`: of a design that is not the one
    /// whose curves are shown.
    void setBands(BandsPtr bands, bool old);
    /// Lays what was measured over the curves that it belongs to; null: nothing.
    void setMeasured(OverlaysPtr overlays);

    /// Whether it shares its axis with other plots over frequency; else cursor and band are its own.
    [[nodiscard]] bool overFrequency() const { return axis_.isFrequency(); }
    void placeCursor(double frequency);  ///< Hz; 0: no cursor. Nothing happens where frequency is not the axis
    /// A second place that values at the cursor are compared with; 0: none.
    void placeMark(double frequency);
    void showBand(const QCPRange& band);
    [[nodiscard]] const QCPRange& band() const { return band_; }
    [[nodiscard]] Zoom zoom() const;
    void setZoom(const Zoom& zoom);
    void fit();  ///< value axes to the curves in sight, an axis of its own to the whole trace
    void recolour();

    [[nodiscard]] const analysis::Trace* trace() const { return trace_.get(); }
    [[nodiscard]] QString title() const;
    [[nodiscard]] QString readout() const;     ///< values at the cursor, or the one-sentence summary without one
    [[nodiscard]] QString difference() const;  ///< to the held trace, in words; "" without one
    /// How far what was measured lies away; "" where nothing was.
    [[nodiscard]] const QString& measuredWords() const { return measuredWords_; }
    [[nodiscard]] QStringList shownCurves() const;  ///< labels, left axis first
    [[nodiscard]] const MaskArea* mask() const { return mask_; }
    [[nodiscard]] const BandArea* bands() const { return bandArea_; }

signals:
    void cursorAsked(double frequency);
    void markAsked(double frequency);
    void aboutToZoom();  ///< by hand
    void bandAsked(QCPRange band);
    void backAsked();
    void fitAsked();
    void aloneAsked();    ///< full size, or back among the others
    void wordsChanged();  ///< title, readout or difference

protected:
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    struct Shown {
        const analysis::Curve* curve = nullptr;
        bool right = false;
    };
    /// A measured curve with which of the shown ones it belongs to, levelled.
    struct Measured {
        const MeasuredOverlay* overlay = nullptr;
        std::size_t shown = 0;
        analysis::Curve curve;
    };
    void build();
    void drawCurves();
    void setAxis();
    void moveCursor(double place);  // NaN: no cursor
    void moveMark(double place);    // NaN: no mark
    void stand(QCPItemStraightLine* line, double place);
    void askCursor(double place);
    void toggleMark();
    bool moveByKey(const QKeyEvent& event);
    [[nodiscard]] bool hasCursor() const { return std::isfinite(cursorAt_); }
    [[nodiscard]] bool hasMark() const { return std::isfinite(markAt_); }
    [[nodiscard]] QString valuesAt(double place) const;
    [[nodiscard]] QString valuesSinceMark() const;
    void fill(const analysis::Trace& trace, const std::vector<Shown>& shown, bool held);
    void showMasks();
    void showBands();
    [[nodiscard]] const spread::TraceBand* traceBand() const;
    [[nodiscard]] QString bandAt(const analysis::Curve& curve, double place) const;
    [[nodiscard]] std::vector<Measured> measuredHere() const;
    [[nodiscard]] QString distances() const;
    void drawMeasured();
    void widenToMeasured();
    [[nodiscard]] QString measuredAt(const analysis::Curve& curve, double place) const;
    void describe();
    void showLabels();
    void setScale(QCPAxis* axis, const analysis::Curve* curve);
    void axisFonts();
    void zoomTo(const QRect& rect);
    [[nodiscard]] std::vector<Shown> choose(const analysis::Trace& trace) const;
    [[nodiscard]] std::vector<std::string> shownNames() const;
    [[nodiscard]] QColor hue(std::size_t index) const;

    View view_;
    analysis::AnswerPtr answer_, held_;
    std::shared_ptr<const analysis::Trace> trace_;
    std::vector<Shown> shown_;
    std::vector<design::MaskPoint> maskPoints_;
    design::DesignPtr design_;
    MaskArea* mask_ = nullptr;
    BandArea* bandArea_ = nullptr;
    BandsPtr bands_;
    bool bandsOld_ = false;
    OverlaysPtr overlays_;
    std::vector<Measured> measured_;  // over the shown curves, levelled when those are drawn
    QString measuredWords_;
    EndLabels* labels_ = nullptr;
    QCPItemStraightLine* cursor_ = nullptr;
    QCPItemStraightLine* markLine_ = nullptr;
    QCPItemText* unitLeft_ = nullptr;
    QCPItemText* unitRight_ = nullptr;
    analysis::Axis axis_;
    QCPRange band_;  // of frequency
    double cursorAt_ = std::numeric_limits<double>::quiet_NaN();
    double markAt_ = std::numeric_limits<double>::quiet_NaN();
    bool fitted_ = false;
    bool zoomedByHand_ = false;
};

/// The trace of that name in an answer, shared; null if there is none.
[[nodiscard]] std::shared_ptr<const analysis::Trace> traceOf(const analysis::Answer& answer, const std::string& name);

}  // namespace plots
