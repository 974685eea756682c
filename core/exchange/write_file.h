// SPDX-License-Identifier: GPL-3.0-or-later
// Saving so that the old or the new file is whole at any moment.
#pragma once

#include <stdexcept>
#include <string>
#include <string_view>

namespace exchange {

/// A file could not be written; `what()` is one sentence that names the file and the reason.
class WriteFailed : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

/// Writes `content` to the file at `path`, whole or not at all: into a temporary file in the same folder, flushed to
/// the disk, then renamed over the old one, and the folder flushed. A symbolic link is followed, so that it stays; the
/// permissions of an existing file are kept, a new one gets 0644 less the process's mask.
/// Throws WriteFailed; the old file is then as it was, except where the sentence says that only the last step failed.
void writeFile(const std::string& path, std::string_view content);

}  // namespace exchange
