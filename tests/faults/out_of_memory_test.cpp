// SPDX-License-Identifier: GPL-3.0-or-later
// Memory that runs out at any one allocation, of C++ or of the C library, while a design is read or computed: an
// exception, nothing lost, and the same result when there is memory again. A hundredth of the places here, 2000 of each
// with COILWRIGHT_FULL in the environment (target `full`).
#include <gtest/gtest.h>

#include <atomic>
#include <cstdlib>
#include <iostream>
#include <new>

#include "analysis/answer.h"
#include "exchange/design_json.h"
#include "exchange/load_catalog.h"
#include "exchange/read_file.h"

namespace {

std::atomic<long> until = 0;  // allocations until one fails; 0: none will
std::atomic<long> made = 0;

bool failsNow() {
    ++made;
    return until.load() > 0 && until.fetch_sub(1) == 1;
}

}  // namespace

extern "C" {
void* __real_malloc(std::size_t size);   // NOLINT(bugprone-reserved-identifier)
void* __wrap_malloc(std::size_t size) {  // NOLINT(bugprone-reserved-identifier)
    return failsNow() ? nullptr : __real_malloc(size);
}
}

void* operator new(std::size_t size) {
    void* place = failsNow() ? nullptr : __real_malloc(size == 0 ? 1 : size);
    if (place == nullptr) throw std::bad_alloc();
    return place;
}
void* operator new(std::size_t size, std::align_val_t alignment) {
    const auto wide = static_cast<std::size_t>(alignment);
    void* place = failsNow() ? nullptr : std::aligned_alloc(wide, (size + wide - 1) / wide * wide);
    if (place == nullptr) throw std::bad_alloc();
    return place;
}
void operator delete(void* place) noexcept {
    std::free(place);
}
void operator delete(void* place, std::size_t) noexcept {
    std::free(place);
}
void operator delete(void* place, std::align_val_t) noexcept {
    std::free(place);
}
void operator delete(void* place, std::size_t, std::align_val_t) noexcept {
    std::free(place);
}

namespace out_of_memory_test {

const std::string demo = COILWRIGHT_SOURCE_DIR "/demo-projects/microphone-input/microphone-input.coilwright";

/// How often something allocates.
template <class Work>
long allocations(const Work& work) {
    made = 0;
    work();
    return made;
}

/// The n-th allocation fails; whether that came to an exception.
template <class Work>
bool failing(long n, const Work& work) {
    until = n;
    bool thrown = false;
    try {
        work();
    } catch (const std::exception&) {
        thrown = true;
    }
    until = 0;
    return thrown;
}

long places() {
    return std::getenv("COILWRIGHT_FULL") != nullptr ? 2000 : 20;
}

/// Half of the places one behind the other from the first on, half evenly over all.
template <class Work>
void everywhere(const Work& work, const char* what) {
    const long all = allocations(work), half = places() / 2;
    long thrown = 0;
    for (long k = 1; k <= half; ++k) {
        thrown += failing(std::min(k, all), work) ? 1 : 0;
        thrown += failing(std::max(1L, all * k / (half + 1)), work) ? 1 : 0;
    }
    std::cout << what << ": " << all << " allocations, " << 2 * half << " of them made to fail, " << thrown
              << " told by an exception\n";
    EXPECT_GT(thrown, half);  // where one is made good by another way there is none
}

const catalog::Catalog& shop() {
    static const catalog::Catalog all = exchange::loadCatalog({COILWRIGHT_SOURCE_DIR "/resources"});
    return all;
}

TEST(OutOfMemory, WhileADesignIsReadNothingIsLost) {
    const std::string text = exchange::readFile(demo);
    const auto whole = exchange::readDesign(text, demo, shop()).design;
    everywhere([&] { (void)exchange::readDesign(text, demo, shop()); }, "reading a design");
    EXPECT_EQ(*exchange::readDesign(text, demo, shop()).design, *whole);
}

TEST(OutOfMemory, WhileTheCatalogIsReadNothingIsLost) {
    const auto count = shop().wires.size();
    everywhere([] { (void)exchange::loadCatalog({COILWRIGHT_SOURCE_DIR "/resources"}); }, "reading the catalog");
    EXPECT_EQ(exchange::loadCatalog({COILWRIGHT_SOURCE_DIR "/resources"}).wires.size(), count);
}

TEST(OutOfMemory, WhileADesignIsComputedNothingIsLost) {
    const auto design = exchange::readDesign(exchange::readFile(demo), demo, shop()).design;
    const auto whole = analysis::answer(*design, shop());
    everywhere([&] { (void)analysis::answer(*design, shop()); }, "computing a design");
    const auto again = analysis::answer(*design, shop());
    EXPECT_EQ(again->figures, whole->figures);
    // An answer that was begun from another one leaves that whole.
    everywhere([&] { (void)analysis::answer(*design, shop(), whole); }, "computing a design again");
    EXPECT_EQ(again->figures, whole->figures);
}

}  // namespace out_of_memory_test
