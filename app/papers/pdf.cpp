// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/pdf.h"

#include <QBuffer>

namespace papers {

namespace {

/// Puts the paper's day in place of the moment of painting; the same length, so that no offset moves.
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

QByteArray painted(const PdfFile& file, const Pages& paint, int pages, int& counted) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setPdfVersion(QPagedPaintDevice::PdfVersion_1_6);
        writer.setTitle(QString::fromStdString(file.title));
        writer.setCreator(QStringLiteral("Coilwright"));
        if (file.attachment)
            writer.addFileAttachment(file.attachment->name, file.attachment->content,
                                     QStringLiteral("application/json"));
        Paper paper(writer, file.format);
        counted = paint(paper, pages);
    }
    setCreationDate(bytes, file.date);
    return bytes;
}

}  // namespace

QByteArray paintedPdf(const PdfFile& file, const Pages& paint, int guess) {
    int pages = 0;
    QByteArray bytes = painted(file, paint, guess, pages);
    if (pages != guess) bytes = painted(file, paint, pages, pages);
    return bytes;
}

}  // namespace papers
