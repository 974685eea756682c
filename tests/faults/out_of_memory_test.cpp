// SPDX-License-Identifier: GPL-3.0-or-later
// Memory that runs out at any one allocation, of C++ or of the C library, while a design is read or computed: an
// exception, nothing lost, and the same result when there is memory again. A hundredth of the places here, 2000 of each
// with COILWRIGHT_FULL in the environment (target `full`).
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <atomic>
#include <csignal>
#include <cstdio>
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

/// How many attempts came to an exception, and how many ended the program.
struct Ends {
    long tried = 0, thrown = 0, aborted = 0;
};

/// The same in a process of its own, so that one that is ended counts. Any other signal is a failure.
template <class Work>
void failingAlone(long n, const Work& work, Ends& ends) {
    const pid_t child = fork();
    if (child == 0) {
        std::fclose(stderr);
        std::_Exit(failing(n, work) ? 1 : 0);
    }
    int status = 0;
    ASSERT_EQ(waitpid(child, &status, 0), child);
    ++ends.tried;
    ends.thrown += WIFEXITED(status) && WEXITSTATUS(status) == 1 ? 1 : 0;
    if (!WIFSIGNALED(status)) return;
    EXPECT_EQ(WTERMSIG(status), SIGABRT) << "allocation " << n;
    ++ends.aborted;
}

/// Half of the places one behind the other from the first on, half evenly over all.
std::vector<long> placesOf(long all) {
    const long half = places() / 2;
    std::vector<long> some;
    for (long k = 1; k <= half; ++k) {
        some.push_back(std::min(k, all));
        some.push_back(std::max(1L, all * k / (half + 1)));
    }
    return some;
}

template <class Work>
Ends everywhere(const Work& work, const char* what, bool alone = false) {
    const long all = allocations(work);
    Ends ends;
    for (const long n : placesOf(all)) {
        if (alone) {
            failingAlone(n, work, ends);
            continue;
        }
        ++ends.tried;
        ends.thrown += failing(n, work) ? 1 : 0;
    }
    std::cout << what << ": " << all << " allocations, " << ends.tried << " of them made to fail, " << ends.thrown
              << " told by an exception, " << ends.aborted << " ended the program\n";
    EXPECT_GT(ends.thrown, ends.tried / 2);  // where one is made good by another way there is none
    return ends;
}

const catalog::Catalog& shop() {
    static const catalog::Catalog all = exchange::loadCatalog({COILWRIGHT_SOURCE_DIR "/resources"});
    return all;
}

/// The library of JSON allocates in its destructors, which cannot tell that there was no memory: an allocation that
/// fails just there ends the program, and the work kept aside is offered on the next start. Nothing else does.
TEST(OutOfMemory, WhileADesignIsReadNothingIsLost) {
    const std::string text = exchange::readFile(demo);
    const auto whole = exchange::readDesign(text, demo, shop()).design;
    const auto read = [&] { (void)exchange::readDesign(text, demo, shop()); };
    const Ends ends = everywhere(read, "reading a design", true);
    EXPECT_LT(ends.aborted, ends.tried / 10);
    EXPECT_EQ(*exchange::readDesign(text, demo, shop()).design, *whole);
}

TEST(OutOfMemory, WhileTheCatalogIsReadNothingIsLost) {
    const auto count = shop().wires.size();
    const auto read = [] { (void)exchange::loadCatalog({COILWRIGHT_SOURCE_DIR "/resources"}); };
    const Ends ends = everywhere(read, "reading the catalog", true);
    EXPECT_LT(ends.aborted, ends.tried / 10);
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
