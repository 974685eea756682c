// SPDX-License-Identifier: GPL-3.0-or-later
// The entry that libFuzzer calls, in a program with one reader.
#include <cstddef>
#include <cstdint>

#include "reader.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    fuzz::readers().front().read({reinterpret_cast<const char*>(data), size});
    return 0;
}
