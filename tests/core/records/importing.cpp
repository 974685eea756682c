// SPDX-License-Identifier: GPL-3.0-or-later
// An import that a test kills: importing FILE FROM COUNT BATCH. Standard output: a line with the number of units that
// are committed, after each batch.
#include <cstdio>
#include <exception>

#include "made_units.h"
#include "records/store.h"

int main(int count, char** words) {
    if (count != 5) return 2;
    try {
        records::Store store(words[1], true);
        const auto units = made::units(std::atoi(words[2]), std::atoi(words[3]));
        store.add(units, static_cast<std::size_t>(std::atoi(words[4])), [](std::size_t committed) {
            std::printf("%zu\n", committed);
            std::fflush(stdout);
        });
    } catch (const std::exception& failure) {
        std::fprintf(stderr, "%s\n", failure.what());
        return 1;
    }
    return 0;
}
