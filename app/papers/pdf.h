// SPDX-License-Identifier: GPL-3.0-or-later
// A PDF from what paints its pages; the same bytes for the same content.
#pragma once

#include <QByteArray>
#include <QImage>
#include <QString>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "papers/paper.h"

namespace papers {

/// A file inside the file. Inside papers only: it is the design.
struct Attachment {
    QString name;
    QByteArray content;
};

struct PdfFile {
    std::string title, date;  ///< date as "2026-03-14": it stands in the file as the day of its making
    Format format = Format::A4;
    std::optional<Attachment> attachment;
};

/// Paints all pages, told how many there will be, and returns how many there were.
using Pages = std::function<int(Paper& paper, int pages)>;

/// A paper that is ready to be painted, as often as one likes and on what one likes.
struct Printed {
    PdfFile file;
    Pages paint;
    int guess = 1;  ///< pages; painted twice where there turn out to be others
};

/// The PDF's bytes.
[[nodiscard]] QByteArray paintedPdf(const Printed& printed);

/// A page on the screen, and what it says.
struct PagePicture {
    QImage image;
    QString words;  ///< line by line, in the order of painting
};
/// All pages as pictures of so many dots an inch.
[[nodiscard]] std::vector<PagePicture> pagePictures(const Printed& printed, double dotsPerInch);

}  // namespace papers
