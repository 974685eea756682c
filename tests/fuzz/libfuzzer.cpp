// SPDX-License-Identifier: GPL-3.0-or-later
// The entry that libFuzzer calls, in a program with one reader.
#include <cstddef>
#include <cstdint>
#include <ctime>

#include "reader.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    // Of the processor's time, not the clock's: a machine that does other things too is no find.
    constexpr std::clock_t longest = CLOCKS_PER_SEC;
    const std::clock_t start = std::clock();
    fuzz::readers().front().read({reinterpret_cast<const char*>(data), size});
    fuzz::require(std::clock() - start < longest, "a reader that takes more than a second");
    return 0;
}
