// SPDX-License-Identifier: GPL-3.0-or-later
// Many long pieces of work shared out over threads, each thread with a state of its own.
#pragma once

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <exception>
#include <mutex>
#include <stop_token>
#include <thread>
#include <vector>

namespace analysis {

/// Calls make() once a thread, and what it gives with each i below `count`, each once, on so many threads (0: as the
/// machine has). A thread that is free takes the next piece, so pieces may take unlike times; each writes to its own
/// place. Once `stop` is asked for no piece is begun. The first exception ends the run and is passed on.
template <class Make>
void inThreads(std::size_t count, unsigned threads, const std::stop_token& stop, const Make& make) {
    std::atomic<std::size_t> next = 0;
    std::mutex lock;
    std::exception_ptr failure;
    const auto run = [&] {
        try {
            auto work = make();
            for (std::size_t k; !stop.stop_requested() && (k = next++) < count;) work(k);
        } catch (...) {
            const std::lock_guard guard(lock);
            if (!failure) failure = std::current_exception();
            next = count;
        }
    };
    if (threads == 0) threads = std::max(1U, std::thread::hardware_concurrency());
    {
        std::vector<std::jthread> others;
        for (unsigned t = 1; t < threads && t < count; ++t) others.emplace_back(run);
        run();
    }
    if (failure) std::rethrow_exception(failure);
}

}  // namespace analysis
