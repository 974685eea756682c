// SPDX-License-Identifier: GPL-3.0-or-later
// The handbook's pages: markdown files in one folder, in the order in which index.md names them.
#pragma once

#include <QString>
#include <functional>
#include <string>
#include <vector>

namespace handbook {

struct Page {
    QString file;   ///< "leakage.md"
    QString title;  ///< its first heading
    QString text;   ///< all of it, as it lies in the file
};

/// A link from one page to another.
struct Link {
    QString words;
    QString file;
};
/// In the order they stand in.
[[nodiscard]] std::vector<Link> linksOf(const QString& text);

/// The index, then each page that it links to, once, in that order. Throws units::BadInput for a page that cannot be
/// read, or that has no heading.
[[nodiscard]] std::vector<Page> pages(const QString& folder);

/// `text` with each link to another page replaced by what `words` makes of it.
[[nodiscard]] QString withoutLinks(const QString& text, const std::function<QString(const Link&)>& words);

/// The folder of the handbook within the first of these that has one; empty if none has.
[[nodiscard]] QString folderIn(const std::vector<std::string>& resources);

}  // namespace handbook
