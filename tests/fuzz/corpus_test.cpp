// SPDX-License-Identifier: GPL-3.0-or-later
// What the fuzzers keep: the seeds, and every input that was once a find. Each reader must read or refuse each of its
// own, and quickly.
#include <gtest/gtest.h>

#include <ctime>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "reader.h"

namespace fuzz {
void PrintTo(const Reader& reader, std::ostream* out) {
    *out << reader.name;
}
}  // namespace fuzz

namespace {

namespace fs = std::filesystem;

class Corpus : public testing::TestWithParam<fuzz::Reader> {};

TEST_P(Corpus, IsReadOrRefused) {
    constexpr std::clock_t longest = CLOCKS_PER_SEC;  // of the processor
    const fs::path folder = fs::path(COILWRIGHT_SOURCE_DIR "/tests/fuzz/corpus") / GetParam().name;
    ASSERT_TRUE(fs::is_directory(folder)) << folder;
    int files = 0;
    for (const auto& entry : fs::directory_iterator(folder)) {
        std::ifstream file(entry.path(), std::ios::binary);
        const std::string bytes{std::istreambuf_iterator<char>(file), {}};
        const std::clock_t start = std::clock();
        EXPECT_NO_THROW(GetParam().read(bytes)) << entry.path();
        EXPECT_LT(std::clock() - start, longest) << entry.path();
        ++files;
    }
    EXPECT_GE(files, 2) << "a corpus holds something sound and something that is not";
}

INSTANTIATE_TEST_SUITE_P(Readers, Corpus, testing::ValuesIn(fuzz::readers()),
                         [](const auto& of) { return of.param.name; });

}  // namespace
