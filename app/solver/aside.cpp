// SPDX-License-Identifier: GPL-3.0-or-later
#include "solver/aside.h"

#include <QUnhandledException>
#include <QtConcurrentRun>
#include <utility>

namespace solver {

Aside::Aside(QObject* parent) : QObject(parent) {
    pool_.setMaxThreadCount(1);
    pool_.setThreadPriority(QThread::LowestPriority);
    connect(&watcher_, &QFutureWatcherBase::finished, this, &Aside::take);
}

Aside::~Aside() {
    watcher_.disconnect(this);
    stop_.request_stop();
    pool_.waitForDone();
}

void Aside::start(Job job, Done done) {
    next_ = {std::move(job), std::move(done)};
    if (running_)
        stop_.request_stop();
    else
        startNext();
}

void Aside::stop() {
    next_ = {};
    stop_.request_stop();
}

void Aside::startNext() {
    running_ = true;
    stop_ = std::stop_source{};
    current_ = std::exchange(next_, {});
    watcher_.setFuture(
        QtConcurrent::run(&pool_, [job = current_.job, token = stop_.get_token()] { return job(token); }));
}

void Aside::take() {
    running_ = false;
    const Work done = std::exchange(current_, {});
    const bool stopped = stop_.stop_requested();
    try {
        const std::any result = watcher_.result();
        if (!stopped) done.done(result);
    } catch (const std::exception&) {
        if (!stopped) emit failed(tr("A comparison in the background failed; the curves are not touched by it."));
    }
    if (next_.job && !running_) startNext();
}

}  // namespace solver
