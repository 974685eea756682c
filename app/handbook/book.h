// SPDX-License-Identifier: GPL-3.0-or-later
// All pages of the handbook as one PDF.
#pragma once

#include <QByteArray>
#include <QString>

#include "papers/paper.h"

namespace handbook {

/// Pages follow each other as the index has them, each on a sheet of its own; where a page points to another it says on
/// which sheet. `date` as "2026-03-14". Throws units::BadInput as `pages`.
[[nodiscard]] QByteArray paintedBook(const QString& folder, papers::Format format, const std::string& date);

}  // namespace handbook
