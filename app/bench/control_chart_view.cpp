// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/control_chart_view.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "bench/figure_words.h"
#include "bench/language.h"
#include "bench/theme.h"
#include "editors/labels.h"
#include "plots/result_words.h"
#include "units/figure.h"
#include "units/text.h"

namespace bench {

namespace {

/// A line across the chart with its name and value beyond its right end.
struct ChartLine {
    double value;
    QString name;
    QPen pen;
};

}  // namespace

QString recordedText(const std::string& unit, double value) {
    const auto kind = units::kindOfUnit(unit);
    std::string text = units::write(kind, value, 4);
    if (kind == units::Kind::Number && !unit.empty()) text += " " + unit;
    return plots::shownNumber(text);
}

QString recordedTest(const std::string& test) {
    constexpr std::string_view answer = ".yes";
    const std::string name = units::dotted(test);
    if (!name.ends_with(answer)) return figureText(name);
    return translated("%1, yes (1) or no (0)").arg(figureText(name.substr(0, name.size() - answer.size())));
}

ControlChartView::ControlChartView(QWidget* parent) : PointedPicture(parent) {
    showStudy({});
}

QSize ControlChartView::sizeHint() const {
    return {30 * fontMetrics().height(), 12 * fontMetrics().height()};
}
QSize ControlChartView::minimumSizeHint() const {
    return {16 * fontMetrics().height(), 8 * fontMetrics().height()};
}

const TestStudy* ControlChartView::shown() const {
    return study_ && study_->test && study_->test->chart ? &*study_->test : nullptr;
}

int ControlChartView::count() const {
    return shown() ? static_cast<int>(shown()->series.values.size()) : 0;
}

void ControlChartView::showStudy(UnitStudyPtr study) {
    study_ = std::move(study);
    forget();
    setAccessibleName(tr("Control chart"));
    QString words = tr("A chart needs two readings or more.");
    if (const auto* test = shown()) {
        const auto& line = test->chart->line;
        scale();
        setAccessibleName(tr("Control chart of %1").arg(recordedTest(test->test)));
        words = tr("%1 readings, centre %2, control limits %3 to %4, signals: %5")
                    .arg(count())
                    .arg(recordedText(test->series.unit, line.centre), recordedText(test->series.unit, line.low),
                         recordedText(test->series.unit, line.high))
                    .arg(test->chart->out.size());
    }
    setAccessibleDescription(words);
    update();
}

void ControlChartView::scale() {
    const auto& test = *shown();
    low_ = std::min(test.summary.least, test.chart->line.low);
    high_ = std::max(test.summary.greatest, test.chart->line.high);
    const double spread = high_ > low_ ? high_ - low_ : std::max(std::abs(high_), 1e-12) * 0.1;
    // A limit that is near belongs into the picture; one far off would squeeze the points.
    if (test.limits)
        for (const auto& limit : {test.limits->low, test.limits->high})
            if (limit && *limit > low_ - 1.5 * spread && *limit < high_ + 1.5 * spread) {
                low_ = std::min(low_, *limit);
                high_ = std::max(high_, *limit);
            }
    low_ -= 0.08 * spread;
    high_ += 0.08 * spread;
}

QString ControlChartView::pointWords(int point) const {
    if (point < 0 || point >= count()) return {};
    const auto& test = *shown();
    const auto k = static_cast<std::size_t>(point);
    QString words = tr("%1, %2: %3")
                        .arg(editors::text(test.series.serials[k]), editors::text(test.series.times[k]),
                             recordedText(test.series.unit, test.series.values[k]));
    for (const auto& out : test.chart->out)
        if (out.point == k) words += QStringLiteral(", ") + translated(std::string(measured::words(out.signal)));
    return words;
}

QRectF ControlChartView::room() const {
    const double line = fontMetrics().height();
    return QRectF(rect()).adjusted(8, 0.6 * line, -11 * line, -2.4 * line);
}

double ControlChartView::across(double point) const {
    return room().left() + room().width() * (point + 0.5) / std::max(1, count());
}
double ControlChartView::up(double value) const {
    return room().bottom() - room().height() * (value - low_) / (high_ - low_);
}

int ControlChartView::at(const QPointF& place) const {
    const QRectF all = room();
    if (count() == 0 || !all.contains(place)) return -1;
    return std::clamp(static_cast<int>((place.x() - all.left()) / all.width() * count()), 0, count() - 1);
}

void ControlChartView::paint(QPainter& painter) const {
    paintPlanLimits(painter);
    paintPoints(painter);
    paintLines(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    paintSignals(painter);
    paintFoot(painter);
}

/// What the plan forbids is shaded from its limit outward.
void ControlChartView::paintPlanLimits(QPainter& painter) const {
    if (!shown()->limits) return;
    const QBrush away(colour(Token::Broken), Qt::BDiagPattern);
    const QRectF all = room();
    if (const auto& limit = shown()->limits->high; limit && *limit < high_)
        painter.fillRect(QRectF(all.topLeft(), QPointF(all.right(), up(*limit))), away);
    if (const auto& limit = shown()->limits->low; limit && *limit > low_)
        painter.fillRect(QRectF(QPointF(all.left(), up(*limit)), all.bottomRight()), away);
}

/// A name that would stand on another moves down beneath it.
void ControlChartView::paintLines(QPainter& painter) const {
    const auto& test = *shown();
    const auto& chart = test.chart->line;
    std::vector<ChartLine> lines{{chart.high, tr("upper"), QPen(colour(Token::Text), 0, Qt::DashLine)},
                                 {chart.centre, tr("centre"), QPen(colour(Token::Text), 0)},
                                 {chart.low, tr("lower"), QPen(colour(Token::Text), 0, Qt::DashLine)}};
    const QPen plan(colour(Token::Broken), 2);
    if (test.limits && test.limits->high) lines.push_back({*test.limits->high, tr("at most"), plan});
    if (test.limits && test.limits->low) lines.push_back({*test.limits->low, tr("at least"), plan});
    std::erase_if(lines, [this](const auto& one) { return one.value < low_ || one.value > high_; });
    std::stable_sort(lines.begin(), lines.end(), [](const auto& a, const auto& b) { return a.value > b.value; });
    const QRectF all = room();
    const double height = fontMetrics().height();
    double free = 0;
    for (const auto& one : lines) {
        painter.setPen(one.pen);
        painter.drawLine(QPointF(all.left(), up(one.value)), QPointF(all.right(), up(one.value)));
        const double top = std::max(free, up(one.value) - height / 2);
        free = top + height;
        painter.drawText(QRectF(all.right() + 6, top, width() - all.right() - 8, height),
                         Qt::AlignLeft | Qt::AlignVCenter,
                         one.name + QLatin1Char(' ') + recordedText(test.series.unit, one.value));
    }
}

void ControlChartView::paintPoints(QPainter& painter) const {
    const auto& values = shown()->series.values;
    painter.setPen(QPen(colour(Token::Accent), 1));
    const auto columns = static_cast<std::size_t>(std::max(1.0, room().width()));
    if (values.size() <= columns) {
        QPolygonF line;
        for (std::size_t k = 0; k < values.size(); ++k) line << QPointF(across(static_cast<double>(k)), up(values[k]));
        painter.drawPolyline(line);
        if (values.size() > columns / 6) return;
        painter.setBrush(colour(Token::Accent));
        for (const QPointF& at : line) painter.drawEllipse(at, 2, 2);
        painter.setBrush(Qt::NoBrush);
        return;
    }
    for (std::size_t column = 0; column < columns; ++column) {
        const std::size_t from = values.size() * column / columns, to = values.size() * (column + 1) / columns;
        const auto [least, greatest] = std::minmax_element(values.begin() + static_cast<std::ptrdiff_t>(from),
                                                           values.begin() + static_cast<std::ptrdiff_t>(to));
        const double x = room().left() + static_cast<double>(column);
        painter.drawLine(QPointF(x, up(*least)), QPointF(x, up(*greatest)));
    }
}

void ControlChartView::paintSignals(QPainter& painter) const {
    constexpr double radius = 4.5, most = 2000;
    const auto& test = *shown();
    painter.setPen(QPen(colour(Token::Broken), 1.5));
    painter.setBrush(Qt::NoBrush);
    if (static_cast<double>(test.chart->out.size()) <= most)
        for (const auto& out : test.chart->out) {
            const QPointF at(across(static_cast<double>(out.point)), up(test.series.values[out.point]));
            painter.drawEllipse(at, radius, radius);
            painter.drawLine(at + QPointF(-radius, radius), at + QPointF(radius, -radius));
        }
    if (point() < 0) return;
    const QPointF at(across(point()), up(test.series.values[static_cast<std::size_t>(point())]));
    painter.setPen(QPen(colour(Token::Accent), 0, Qt::DashLine));
    painter.drawLine(QPointF(at.x(), room().top()), QPointF(at.x(), room().bottom()));
    painter.setBrush(colour(Token::Accent));
    painter.drawEllipse(at, 3.5, 3.5);
}

void ControlChartView::paintFoot(QPainter& painter) const {
    const auto& times = shown()->series.times;
    const double line = fontMetrics().height();
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(colour(Token::Line), 1));
    painter.drawLine(room().bottomLeft(), room().bottomRight());
    painter.setPen(colour(Token::Muted));
    const QRectF dates(room().left(), room().bottom() + 3, room().width(), line);
    constexpr qsizetype day = 10;  // characters
    painter.drawText(dates, Qt::AlignLeft | Qt::AlignVCenter, editors::text(times.front()).left(day));
    painter.drawText(dates, Qt::AlignRight | Qt::AlignVCenter, editors::text(times.back()).left(day));
    paintFootWords(painter, dates.bottom());
}

}  // namespace bench
