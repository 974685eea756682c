// SPDX-License-Identifier: GPL-3.0-or-later
// A PDF from what paints its pages; the same bytes for the same content.
#pragma once

#include <QByteArray>
#include <QString>
#include <functional>
#include <optional>
#include <string>

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

/// The PDF's bytes. Painted twice where there turn out to be other than `guess` pages.
[[nodiscard]] QByteArray paintedPdf(const PdfFile& file, const Pages& paint, int guess);

}  // namespace papers
