// SPDX-License-Identifier: GPL-3.0-or-later
// A sheet of paper measured in millimetres, with the few things that our papers draw on it.
#pragma once

#include <QColor>
#include <QFontMetricsF>
#include <QHash>
#include <QPainter>
#include <QRectF>
#include <QString>
#include <QStringList>
#include <QTextDocument>
#include <map>
#include <set>
#include <utility>
#include <vector>

#include "units/inch.h"

namespace papers {

enum class Format { A4, Letter };

/// How text stands; the size is in points.
struct Type {
    double size = 9;
    bool bold = false;
    QColor colour;  ///< not valid: ink
    Qt::Alignment align = Qt::AlignLeft;
};

inline constexpr int resolution = 1200;                                    ///< dots an inch
inline constexpr double hairline = 0.25 * units::millimetresPerInch / 72;  ///< 0.25 pt, mm
inline constexpr double margin = 15;                                       ///< mm

[[nodiscard]] QSizeF sizeOf(Format format);  ///< mm

/// What the pages of a paper are painted on: `resolution` dots an inch to the painter, whatever it has itself.
class Sheets {
public:
    virtual ~Sheets() = default;
    virtual void begin(QPainter& painter) = 0;
    virtual void next(QPainter& painter) = 0;
    /// What measures text.
    [[nodiscard]] virtual QPaintDevice* device() = 0;
};

/// Pages, top left is (0, 0). Text is of one family and lines are vectors.
class Paper {
public:
    /// Paints onto `sheets` until it is deleted.
    Paper(Sheets& sheets, Format format);

    [[nodiscard]] QRectF content() const;  ///< inside the margins, mm
    void newPage();
    [[nodiscard]] int page() const { return page_; }

    [[nodiscard]] static QColor ink() { return Qt::black; }
    [[nodiscard]] static QColor muted();
    [[nodiscard]] static QColor accent();

    void line(const QPointF& a, const QPointF& b, double width = hairline, const QColor& colour = ink());
    void polyline(const std::vector<QPointF>& points, double width, const QColor& colour,
                  const QVector<double>& dashes = {});
    void box(const QRectF& rect, double width = hairline, const QColor& fill = {}, const QColor& colour = ink());
    /// Rectangles of one ink, without outlines.
    void fill(const std::vector<QRectF>& rects, const QColor& colour = ink());
    void circle(const QPointF& middle, double radius, bool filled, double width = hairline);
    void polygon(const std::vector<QPointF>& points, const QColor& fill);
    void arc(const QPointF& middle, double radius, double fromDegrees, double spanDegrees, double width = hairline);
    /// Draws only inside `rect` until `unclip`.
    void clip(const QRectF& rect);
    void unclip();

    /// One line of text in the middle of `rect`'s height, cut with an ellipsis where it is too long.
    void text(const QRectF& rect, const QString& words, const Type& type = {});
    /// The same, reading upward along the left side of `rect`'s middle line.
    void textUpward(const QRectF& rect, const QString& words, const Type& type = {});
    /// Lines of text broken at spaces, at most `most` of them; returns their height in mm.
    double paragraph(const QRectF& rect, const QString& words, const Type& type = {}, int most = 1000);
    [[nodiscard]] double paragraphHeight(double width, const QString& words, const Type& type = {}) const;
    [[nodiscard]] double width(const QString& words, const Type& type = {}) const;  ///< mm
    /// Sets a document of text on sheets of this size, mm; then paints one of its sheets, counted from 0, into `rect`.
    void layOut(QTextDocument& text, const QSizeF& size) const;
    void page(const QTextDocument& text, int sheet, const QRectF& rect);
    [[nodiscard]] static double lineHeight(const Type& type) {
        return type.size * units::millimetresPerInch / 72 * 1.35;
    }

    /// Characters that were asked for and that the family does not have; each is printed as an empty square.
    [[nodiscard]] const std::set<char32_t>& missing() const { return missing_; }
    [[nodiscard]] QString printable(const QString& words) const;
    /// Everything that was set as text, a page each, its lines in the order of painting.
    [[nodiscard]] const QStringList& said() const { return said_; }

private:
    /// A type's font with its measures, made once.
    struct Face {
        QFont font;
        QFontMetricsF metrics;
        mutable QHash<QString, double> widths = {};  // mm, of what was measured: a text is broken, counted and painted
    };
    [[nodiscard]] const Face& face(const Type& type) const;
    [[nodiscard]] bool has(char32_t character) const;
    [[nodiscard]] QStringList broken(double width, const QString& words, const Type& type) const;
    [[nodiscard]] QPen pen(double width, const QColor& colour) const;
    [[nodiscard]] static double dots(double mm) { return mm * resolution / units::millimetresPerInch; }
    [[nodiscard]] static QPointF dots(const QPointF& mm) { return {dots(mm.x()), dots(mm.y())}; }
    [[nodiscard]] static QRectF dots(const QRectF& mm) {
        return {dots(mm.topLeft()), mm.size() * resolution / units::millimetresPerInch};
    }

    Sheets& sheets_;
    QPainter painter_;
    QSizeF size_;
    int page_ = 1;
    QStringList said_{QString()};
    mutable std::set<char32_t> missing_;
    mutable std::map<std::pair<int, bool>, Face> faces_;  // by size in dots, and bold
    mutable std::map<char32_t, bool> known_;
};

}  // namespace papers
