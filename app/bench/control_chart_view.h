// SPDX-License-Identifier: GPL-3.0-or-later
// Readings of one test in the order of time, with the limits of the process and those of the plan.
#pragma once

#include "bench/pointed_picture.h"
#include "bench/unit_study.h"

namespace bench {

/// A point a reading; where there are more than the picture has columns, the least to the greatest of each column.
/// Points out of control are open rings with a bar.
class ControlChartView : public PointedPicture {
    Q_OBJECT
public:
    explicit ControlChartView(QWidget* parent = nullptr);
    /// Shows nothing where the study is null or has no chart.
    void showStudy(UnitStudyPtr study);
    [[nodiscard]] const TestStudy* shown() const;
    /// "S12, 2026-11-27T14:05: 45.1 Ω, outside the limits"; "" without a point.
    [[nodiscard]] QString pointWords(int point) const;
    [[nodiscard]] int point() const { return chosen(); }  ///< that is told; -1: none
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    [[nodiscard]] int count() const override;
    [[nodiscard]] int at(const QPointF& place) const override;
    [[nodiscard]] QString wordsOf(int point) const override { return pointWords(point); }
    [[nodiscard]] bool isEmpty() const override { return shown() == nullptr; }
    void paint(QPainter& painter) const override;

private:
    void scale();
    [[nodiscard]] QRectF room() const;
    [[nodiscard]] double across(double point) const;
    [[nodiscard]] double up(double value) const;
    void paintPlanLimits(QPainter& painter) const;
    void paintLines(QPainter& painter) const;
    void paintPoints(QPainter& painter) const;
    void paintSignals(QPainter& painter) const;
    void paintFoot(QPainter& painter) const;

    UnitStudyPtr study_;
    double low_ = 0, high_ = 1;  ///< of the axis
};

/// A recorded number as it is shown, with its unit.
[[nodiscard]] QString recordedText(const std::string& unit, double value);
/// A recorded test in the language of the window.
[[nodiscard]] QString recordedTest(const std::string& test);

}  // namespace bench
