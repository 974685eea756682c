// SPDX-License-Identifier: GPL-3.0-or-later
// A loop shared out over the machine's cores.
#pragma once

#include <algorithm>
#include <cstddef>
#include <exception>
#include <thread>
#include <vector>

namespace network {

/// While one of these lives, this thread shares nothing out: it is itself one of many that compute side by side.
class Alone {
public:
    Alone() noexcept : before_(now()) { now() = true; }
    ~Alone() { now() = before_; }
    Alone(const Alone&) = delete;
    Alone& operator=(const Alone&) = delete;
    [[nodiscard]] static bool& now() noexcept {
        static thread_local bool alone = false;
        return alone;
    }

private:
    bool before_;
};

/// Calls work(i) for i = 0 … count - 1, each once, on up to four threads with interleaved shares; returns when all are
/// done. `work` must only read shared values and write to its own place, so the result does not depend on the number of
/// threads. The first exception is passed on. Under `Alone` the calling thread does it all.
template <class Work>
void inParallel(std::size_t count, const Work& work) {
    static const unsigned cores = std::max(1U, std::thread::hardware_concurrency());  // reads a file each time
    const std::size_t threads =
        Alone::now() ? std::min<std::size_t>(count, 1) : std::min<std::size_t>({count, 4, cores});
    std::vector<std::exception_ptr> failures(threads);
    const auto share = [&](std::size_t first) {
        try {
            for (std::size_t i = first; i < count; i += threads) work(i);
        } catch (...) {
            failures[first] = std::current_exception();
        }
    };
    {
        std::vector<std::jthread> others;
        for (std::size_t t = 1; t < threads; ++t) others.emplace_back(share, t);
        if (threads > 0) share(0);
    }
    for (const auto& failure : failures)
        if (failure) std::rethrow_exception(failure);
}

}  // namespace network
