// SPDX-License-Identifier: GPL-3.0-or-later
// The outline of a PDF: the list of headings that a reader shows beside the pages.
#pragma once

#include <QByteArray>
#include <QString>
#include <vector>

namespace papers {

/// A heading, in the order of pages. One of level n belongs to the last of a lower level before it.
struct OutlineEntry {
    QString title;
    int page = 1;   ///< from 1
    int level = 0;  ///< 0: outermost; at most one more than the entry's before it
};

/// The document with an outline, shown when it is opened: an incremental update (ISO 32000-1, 7.5.6 and 12.3.3) of a
/// file with a plain cross-reference table and one flat list of pages, as Qt writes it. The bytes before stay as they
/// are. Throws std::runtime_error for any other file, or a page that it has not.
[[nodiscard]] QByteArray withOutline(const QByteArray& pdf, const std::vector<OutlineEntry>& entries);

}  // namespace papers
