// SPDX-License-Identifier: GPL-3.0-or-later
// A reader that is given any bytes: by a fuzzer for as long as it is let (cmake/fuzz.sh), and by corpus_test with the
// bytes that were kept. A new one is a file NAME_fuzzer.cpp with a `Registered`, and a folder corpus/NAME.
#pragma once

#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "units/fault.h"

namespace fuzz {

/// Something that no bytes may bring about.
class Find : public std::logic_error {
public:
    using std::logic_error::logic_error;
};

struct Reader {
    std::string name;  ///< of its corpus
    void (*read)(std::string_view bytes);
};

/// Every reader that is linked.
[[nodiscard]] const std::vector<Reader>& readers();
struct Registered {
    Registered(const char* name, void (*read)(std::string_view bytes));
};

/// Throws Find unless it holds.
void require(bool holds, const char* what);

/// A refusal must be of sentences that can be shown: each names the file, is UTF-8 on one line, and is of bounded
/// length.
void requireSentences(const units::BadInput& refusal, const std::string& file);

/// What `read` returns; nothing if it refuses with sentences about `file`.
template <class Read>
auto unlessRefused(const std::string& file, const Read& read) -> std::optional<decltype(read())> {
    try {
        return read();
    } catch (const units::BadInput& refusal) {
        requireSentences(refusal, file);
        return {};
    }
}

}  // namespace fuzz
