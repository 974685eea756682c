// SPDX-License-Identifier: GPL-3.0-or-later
// Where a benchmark of the window runs, and how often.
#pragma once

#include <QTemporaryDir>
#include <charconv>
#include <cstdio>
#include <cstring>
#include <optional>

namespace bench_place {

/// Without a screen unless one is asked for, and with nothing of the user's own: all of it goes to `home`.
inline void prepare(const QTemporaryDir& home) {
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    for (const char* folder : {"XDG_STATE_HOME", "XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_RUNTIME_DIR"})
        qputenv(folder, home.path().toUtf8());
}

/// The count on the command line, or `usual`; nothing, and a sentence on standard error, where it is none. `program`
/// and `what` name what is wrong: "window_bench", "edits".
inline std::optional<int> countOf(int argc, char** argv, int usual, const char* program, const char* what) {
    if (argc < 2) return usual;
    int count = 0;
    const auto read = std::from_chars(argv[1], argv[1] + std::strlen(argv[1]), count);
    if (read.ec == std::errc() && count >= 1) return count;
    std::fprintf(stderr, "%s: allowed is one whole number of %s, at least 1.\n", program, what);
    return {};
}

}  // namespace bench_place
