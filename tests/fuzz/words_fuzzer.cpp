// SPDX-License-Identifier: GPL-3.0-or-later
// A table of the words that papers for customers are said in.
#include "reader.h"
#include "shop/words.h"

namespace {

void read(std::string_view bytes) {
    const auto words = fuzz::unlessRefused("f", [&] { return shop::readWords(bytes, "f"); });
    if (!words) return;
    fuzz::require(!words->language().empty(), "a table of no language");
    for (const auto& [phrase, said] : words->table()) {
        fuzz::require(!phrase.empty() && !said.empty(), "a phrase without words");
        // What a phrase has no part for is left as it stands.
        (void)(*words)(phrase);
        (void)(*words)(phrase, {"a", "b", "c", "d", "e", "f", "g", "h", "i"});
    }
    fuzz::require(words->missing().empty(), "a phrase of the table that it lacks");
    (void)words->number("-1.5 dB to 2.5 dB");
}

const fuzz::Registered words("words", read);

}  // namespace
