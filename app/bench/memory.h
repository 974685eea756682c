// SPDX-License-Identifier: GPL-3.0-or-later
// What the bench remembers between two runs: recent files, the look, where the window stood.
#pragma once

#include <QByteArray>
#include <QString>
#include <QStringList>
#include <string>

#include "bench/theme.h"
#include "plots/arrangement.h"

namespace bench {

struct Memory {
    QStringList recent;  ///< absolute paths, newest first
    Look look = Look::Desktop;
    std::string language;  ///< key of a table of sentences, "en"; "" is the desktop's
    QByteArray geometry;
    bool ampereTurns = true, layerVolts = true;  ///< ladders in the cut
    bool inch = false;                           ///< rulers
    plots::Arrangement plots;
    QString unitRecords;  ///< the shop's file of them; "" none chosen yet
    bool operator==(const Memory&) const = default;
};

inline constexpr int recentCount = 10;

/// "bench.json" in document::stateFolder().
[[nodiscard]] QString memoryPath();
/// What was kept; a file that is missing or damaged gives a fresh memory.
[[nodiscard]] Memory recalled();
/// Keeps it. A disk that refuses costs the memory, never the work: false then.
bool keep(const Memory& memory);
/// `path` moves to the head of the recent files.
void remember(Memory& memory, const QString& path);

}  // namespace bench
