// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/pdf.h"

#include <QBuffer>
#include <QPageSize>
#include <QPdfWriter>
#include <cmath>
#include <deque>

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

class PdfSheets : public Sheets {
public:
    PdfSheets(QPdfWriter& writer, Format format) : writer_(writer) {
        writer_.setResolution(resolution);
        writer_.setPageSize(QPageSize(format == Format::A4 ? QPageSize::A4 : QPageSize::Letter));
        writer_.setPageMargins(QMarginsF(0, 0, 0, 0));
    }
    void begin(QPainter& painter) override { painter.begin(&writer_); }
    void next(QPainter& /*painter*/) override { writer_.newPage(); }
    [[nodiscard]] QPaintDevice* device() override { return &writer_; }

private:
    QPdfWriter& writer_;
};

/// Pages as pictures: the painter counts the paper's dots, the picture has fewer.
class PictureSheets : public Sheets {
public:
    PictureSheets(Format format, double dotsPerInch) : scale_(dotsPerInch / resolution) {
        const QSizeF dots = sizeOf(format) * dotsPerInch / units::millimetresPerInch;
        size_ = QSize(static_cast<int>(std::lround(dots.width())), static_cast<int>(std::lround(dots.height())));
    }
    void begin(QPainter& painter) override {
        images.emplace_back(size_, QImage::Format_RGB32);
        images.back().fill(Qt::white);
        painter.begin(&images.back());
        painter.scale(scale_, scale_);
    }
    void next(QPainter& painter) override {
        painter.end();
        begin(painter);
    }
    [[nodiscard]] QPaintDevice* device() override { return &images.back(); }
    std::deque<QImage> images;  // a painter keeps its page's address

private:
    double scale_;
    QSize size_;
};

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
        PdfSheets sheets(writer, file.format);
        Paper paper(sheets, file.format);
        counted = paint(paper, pages);
    }
    setCreationDate(bytes, file.date);
    return bytes;
}

}  // namespace

QByteArray paintedPdf(const Printed& printed) {
    int pages = 0;
    QByteArray bytes = painted(printed.file, printed.paint, printed.guess, pages);
    if (pages != printed.guess) bytes = painted(printed.file, printed.paint, pages, pages);
    return bytes;
}

std::vector<PagePicture> pagePictures(const Printed& printed, double dotsPerInch) {
    int pages = printed.guess;
    for (;;) {
        PictureSheets sheets(printed.file.format, dotsPerInch);
        QStringList words;
        int counted = 0;
        {
            Paper paper(sheets, printed.file.format);
            counted = printed.paint(paper, pages);
            words = paper.said();
        }
        if (counted != pages) {
            pages = counted;
            continue;
        }
        std::vector<PagePicture> all;
        for (std::size_t k = 0; k < sheets.images.size(); ++k)
            all.push_back({std::move(sheets.images[k]), words.value(static_cast<qsizetype>(k))});
        return all;
    }
}

}  // namespace papers
