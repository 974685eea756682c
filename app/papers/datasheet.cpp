// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/datasheet.h"

#include <QBuffer>
#include <QDateTime>
#include <algorithm>

#include "exchange/design_json.h"
#include "exchange/write_file.h"
#include "papers/chart_painter.h"
#include "papers/drawings.h"

namespace papers {

namespace {

constexpr double footHeight = 13, columnGap = 8, rowHeight = 4.5;

QString qt(const std::string& text) {
    return QString::fromStdString(text);
}

/// One datasheet on its way onto paper.
class Painting {
public:
    Painting(Paper& paper, const shop::Datasheet& sheet) : paper_(paper), sheet_(sheet) {}

    void paint() {
        const std::size_t left = firstPage();
        nextPage();
        secondPage();
        if (left > 0) {
            nextPage();
            continued(left);
        }
        title();
    }
    [[nodiscard]] int pages() const { return paper_.page(); }
    void setPages(int pages) { pages_ = pages; }

private:
    [[nodiscard]] QRectF body() const { return paper_.content().adjusted(0, 0, 0, -footHeight - 3); }
    void nextPage() {
        title();
        paper_.newPage();
    }

    /// The title block at the foot.
    void title() {
        const QRectF all = paper_.content();
        const QRectF foot(all.left(), all.bottom() - footHeight, all.width(), footHeight);
        paper_.box(foot, 0.35);
        struct Cell {
            const char* head;
            QString words;
            double width;
        };
        const double rest = foot.width() - 30 - 20 - 25 - 27 - 16;
        const std::vector<Cell> cells{{"name", qt(sheet_.title), rest},
                                      {"part", qt(sheet_.partNumber), 30},
                                      {"revision", qt(sheet_.revision), 20},
                                      {"date", qt(sheet_.date), 25},
                                      {"design", qt(sheet_.digest), 27},
                                      {"page", QStringLiteral("%1 of %2").arg(paper_.page()).arg(pages_), 16}};
        double x = foot.left();
        for (const Cell& cell : cells) {
            if (x > foot.left()) paper_.line({x, foot.top()}, {x, foot.bottom()});
            paper_.text({x + 1.5, foot.top() + 1, cell.width - 3, 4}, QString::fromLatin1(cell.head),
                        {7, false, Paper::muted(), Qt::AlignLeft});
            paper_.text({x + 1.5, foot.top() + 5.5, cell.width - 3, 6},
                        cell.words.isEmpty() ? QStringLiteral("–") : cell.words, {9, false, {}, Qt::AlignLeft});
            x += cell.width;
        }
    }

    /// Heading of a page; returns where the body begins.
    double heading(double top) {
        const QRectF all = paper_.content();
        const Type name{14, true, {}, Qt::AlignLeft};
        const double partWidth = std::min(60.0, paper_.width(qt(sheet_.partNumber), name) + 4);
        double y = top;
        y += paper_.paragraph({all.left(), y, all.width() - partWidth, 20}, qt(sheet_.title), name);
        paper_.text({all.right() - partWidth, top, partWidth, Paper::lineHeight(name)}, qt(sheet_.partNumber),
                    {14, true, Paper::accent(), Qt::AlignRight});
        if (!sheet_.use.empty())
            y += paper_.paragraph({all.left(), y, all.width(), 10}, qt(sheet_.use),
                                  {9, false, Paper::muted(), Qt::AlignLeft});
        paper_.line({all.left(), y + 1.5}, {all.right(), y + 1.5}, 0.6, Paper::accent());
        return y + 5;
    }
    double heading2(const QRectF& column, double y, const QString& words) {
        paper_.text({column.left(), y, column.width(), 5}, words, {10, true, Paper::accent(), Qt::AlignLeft});
        return y + 5.8;
    }
    void rule(const QRectF& column, double y) {
        paper_.line({column.left(), y}, {column.right(), y}, hairline, QColor(0xB8, 0xB8, 0xB8));
    }

    double pinout(const QRectF& column, double y) {
        y = heading2(column, y, QStringLiteral("Pinout"));
        double name = 10, where = 14;
        for (const shop::PinoutRow& row : sheet_.pinout) {
            name = std::max(name, std::min(20.0, paper_.width(qt(row.terminal), {9, true, {}, {}}) + 3));
            where = std::max(where, std::min(32.0, paper_.width(qt(row.where)) + 3));
        }
        for (const shop::PinoutRow& row : sheet_.pinout) {
            const QRectF words(column.left() + name + where, y + 0.4, column.width() - name - where - 4, 0);
            const double height = std::max(rowHeight, paper_.paragraphHeight(words.width(), qt(row.function)) + 0.6);
            paper_.text({column.left(), y, name - 1, rowHeight}, qt(row.terminal), {9, true, {}, Qt::AlignLeft});
            paper_.text({column.left() + name, y, where - 1, rowHeight}, qt(row.where));
            paper_.paragraph(words, qt(row.function));
            if (row.dot) paper_.circle({column.right() - 1.5, y + rowHeight / 2}, 0.7, true);
            y += height;
            rule(column, y);
        }
        return y + 3;
    }

    /// How high a row is; drawn at y if `draw`.
    double valueRow(const QRectF& column, double y, const shop::ValueRow& row, bool draw) {
        const QString what = qt(row.what), value = qt(row.value) + (row.doubtful ? QStringLiteral(" †") : QString());
        const Type right{9, true, {}, Qt::AlignRight}, soft{8, false, Paper::muted(), Qt::AlignLeft};
        const double whatWidth = paper_.width(what), valueWidth = paper_.width(value, right);
        const double conditionWidth = row.condition.empty() ? 0 : paper_.width(qt(row.condition), soft) + 2.5;
        double height = rowHeight;
        // The condition goes below where it does not fit beside, and the value below that.
        const bool beside = whatWidth + conditionWidth + valueWidth + 3 <= column.width();
        const bool valueOnTop = whatWidth + valueWidth + 3 <= column.width();
        if (draw) paper_.text({column.left(), y, column.width(), rowHeight}, what);
        if (beside || valueOnTop) {
            if (draw) paper_.text({column.right() - valueWidth - 1, y, valueWidth + 1, rowHeight}, value, right);
        }
        if (beside) {
            if (draw)
                paper_.text({column.left() + whatWidth + 2.5, y, conditionWidth, rowHeight}, qt(row.condition), soft);
            return height;
        }
        const double room = valueOnTop ? column.width() : column.width() - std::min(valueWidth, column.width()) - 3;
        if (!row.condition.empty() && (valueOnTop || room >= conditionWidth)) {
            if (draw) paper_.text({column.left(), y + height - 0.4, room, 4}, qt(row.condition), soft);
            if (valueOnTop) return height + 3.8;
        } else if (!row.condition.empty()) {
            if (draw)
                paper_.text({column.left() + whatWidth + 2.5, y, column.width() - whatWidth - 2.5, rowHeight},
                            qt(row.condition), soft);
        }
        const Type long_{9, true, {}, valueWidth <= column.width() ? Qt::AlignRight : Qt::AlignLeft};
        const QRectF rest(column.left(), y + height - 0.3, column.width(), 0);
        return height +
               (draw ? paper_.paragraph(rest, value, long_) : paper_.paragraphHeight(rest.width(), value, long_));
    }

    /// Rows from `from` until `bottom`; returns how many were drawn and moves y.
    std::size_t values(const QRectF& column, double& y, double bottom, const std::vector<shop::ValueRow>& rows,
                       std::size_t from) {
        std::size_t k = from;
        for (; k < rows.size(); ++k) {
            const double height = valueRow(column, y, rows[k], false);
            if (y + height > bottom) break;
            valueRow(column, y, rows[k], true);
            y += height;
            rule(column, y);
        }
        return k - from;
    }

    /// Returns how many typical values did not find room.
    std::size_t firstPage() {
        const QRectF all = body();
        const double top = heading(all.top());
        const double outlineHeight = sheet_.outline.width > 0 ? std::min(78.0, 0.31 * all.height()) : 0;
        const double bottom = all.bottom() - outlineHeight - (outlineHeight > 0 ? 9 : 0);
        const double half = (all.width() - columnGap) / 2;
        const QRectF left(all.left(), top, half - 2, bottom - top),
            right(left.right() + columnGap, top, half + 2, bottom - top);
        double y = pinout(left, top);
        y = heading2(left, y, QStringLiteral("Circuit"));
        paintSchematic(paper_, {left.left(), y, left.width(), std::max(20.0, std::min(bottom - y, 110.0))},
                       sheet_.schematic);
        double r = top;
        if (!sheet_.agreed.empty()) {
            r = heading2(right, r, QStringLiteral("Agreed limits"));
            values(right, r, bottom, sheet_.agreed, 0);
            r += 3;
        }
        r = heading2(right, r, QStringLiteral("Typical values (predicted)"));
        r += paper_.paragraph({right.left(), r, right.width(), 0}, qt(sheet_.conditions),
                              {7.5, false, Paper::muted(), Qt::AlignLeft}) +
             1;
        const std::size_t drawn = values(right, r, bottom, sheet_.typical, 0);
        if (outlineHeight > 0) {
            const double at = heading2(all, bottom + 3, QStringLiteral("Outline and pins"));
            paintOutline(paper_, {all.left(), at, all.width(), all.bottom() - at}, sheet_.outline);
        }
        return sheet_.typical.size() - drawn;
    }

    double notesHeight(double width) const {
        double height = 0;
        for (const auto& [head, paragraphs] : sheet_.notes) {
            height += 5;
            for (const std::string& words : paragraphs)
                height += paper_.paragraphHeight(width - 3, qt(words), noteType) + 0.6;
            height += 1.5;
        }
        return height;
    }
    void note(const QRectF& column, double& y, const QString& words) {
        paper_.text({column.left(), y, 3, Paper::lineHeight(noteType)}, QStringLiteral("–"), noteType);
        y += paper_.paragraph({column.left() + 3, y, column.width() - 3, 0}, words, noteType) + 0.6;
    }
    void secondPage() {
        const QRectF all = body();
        const double half = (all.width() - columnGap) / 2;
        const double needed = notesHeight(half) / 2 + 16;
        const double charts = std::max(all.height() - needed, 0.5 * all.height());
        const double each = std::min(72.0, charts / std::max<double>(1, static_cast<double>(sheet_.charts.size())));
        double y = all.top();
        for (const shop::Chart& chart : sheet_.charts) {
            paintChart(paper_, {all.left(), y, all.width(), each - 3}, chart);
            y += each;
        }
        notes({all.left(), y, half, all.bottom() - y}, {all.left() + half + columnGap, y, half, all.bottom() - y});
    }
    /// Blocks of notes, the second column beginning where half of the height is used.
    void notes(const QRectF& left, const QRectF& right) {
        const double half = notesHeight(left.width()) / 2;
        QRectF column = left;
        double y = left.top();
        bool turned = false;
        for (const auto& [head, paragraphs] : sheet_.notes) {
            if (!turned && y - left.top() > half - 8) {
                turned = true;
                column = right;
                y = right.top();
            }
            y = heading2(column, y, qt(head)) - 0.6;
            for (const std::string& words : paragraphs) note(column, y, qt(words));
            y += 1.5;
        }
        const std::set<char32_t> missing = paper_.missing();
        if (missing.empty()) return;
        QString list;
        for (const char32_t one : missing)
            list += (list.isEmpty() ? QString() : QStringLiteral(", ")) +
                    QStringLiteral("U+%1").arg(static_cast<uint>(one), 4, 16, QLatin1Char('0')).toUpper();
        note(column, y,
             QStringLiteral("□ stands for a character that this paper's type does not have: ") + list +
                 QStringLiteral("."));
    }
    void continued(std::size_t left) {
        const QRectF all = body();
        double y = heading2(all, all.top(), QStringLiteral("Typical values (predicted), continued"));
        values(all.adjusted(0, 0, -all.width() / 3, 0), y, all.bottom(), sheet_.typical, sheet_.typical.size() - left);
    }

    static constexpr Type noteType{8.5, false, {}, Qt::AlignLeft};
    Paper& paper_;
    const shop::Datasheet& sheet_;
    int pages_ = 2;
};

/// Puts the sheet's day in place of the moment of painting; the same length, so that no offset moves.
void setCreationDate(QByteArray& pdf, const std::string& date) {
    QByteArray digits = QByteArray::fromStdString(date);
    digits.replace("-", "");
    digits.append("000000");
    const QByteArray key("/CreationDate (D:");
    constexpr qsizetype length = 14;
    const qsizetype at = pdf.indexOf(key);
    if (at < 0 || digits.size() != length) return;
    pdf.replace(at + key.size(), length, digits);
    // Behind the digits stands the offset of this machine's clock.
    const qsizetype zone = at + key.size() + length, end = pdf.indexOf(')', zone);
    if (end - zone == 7) pdf.replace(zone, 7, "+00'00'");
}

QByteArray painted(const shop::Datasheet& sheet, Format format, int pages, int& counted) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setPdfVersion(QPagedPaintDevice::PdfVersion_1_6);
        writer.setTitle(QString::fromStdString(sheet.title));
        writer.setCreator(QStringLiteral("Coilwright"));
        Paper paper(writer, format);
        Painting painting(paper, sheet);
        painting.setPages(pages);
        painting.paint();
        counted = painting.pages();
    }
    setCreationDate(bytes, sheet.date);
    return bytes;
}

}  // namespace

std::string paperDate() {
    bool set = false;
    const qlonglong seconds = qEnvironmentVariable("SOURCE_DATE_EPOCH").toLongLong(&set);
    const QDateTime moment = set ? QDateTime::fromSecsSinceEpoch(seconds, Qt::UTC) : QDateTime::currentDateTimeUtc();
    return moment.date().toString(Qt::ISODate).toStdString();
}

QByteArray paintedDatasheet(const shop::Datasheet& sheet, Format format) {
    int pages = 0;
    QByteArray bytes = painted(sheet, format, 2, pages);
    if (pages != 2) bytes = painted(sheet, format, pages, pages);
    return bytes;
}

void writeDatasheet(const design::Design& design, const analysis::Answer& answer, const catalog::Catalog& shop,
                    const std::string& path, Format format) {
    const shop::Datasheet sheet =
        shop::datasheet(design, answer, shop, {paperDate(), exchange::digestOf(design, shop)});
    const QByteArray bytes = paintedDatasheet(sheet, format);
    exchange::writeFile(path, std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())));
}

}  // namespace papers
