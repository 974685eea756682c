// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/datasheet.h"

#include <QBuffer>
#include <QDateTime>

#include "exchange/design_json.h"
#include "exchange/write_file.h"
#include "papers/datasheet_pages.h"

namespace papers {

namespace {

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
    // Behind the digits stands the offset of this machine's clock from UTC: "+00'00'" or "Z".
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
        counted = paintDatasheetPages(paper, sheet, pages);
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
