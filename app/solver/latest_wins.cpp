// SPDX-License-Identifier: GPL-3.0-or-later
#include "solver/latest_wins.h"

#include <QUnhandledException>
#include <QtConcurrentRun>
#include <exception>
#include <utility>

namespace solver {

LatestWins::LatestWins(std::shared_ptr<const catalog::Catalog> shop, Compute compute, QObject* parent)
    : QObject(parent), shop_(std::move(shop)), compute_(std::move(compute)) {
    pool_.setMaxThreadCount(1);
    connect(&watcher_, &QFutureWatcherBase::finished, this, &LatestWins::take);
    patience_.setSingleShot(true);
    patience_.setInterval(2000);
    connect(&patience_, &QTimer::timeout, this, [this] {
        if (next_.design) stop_.request_stop();
    });
}

LatestWins::~LatestWins() {
    watcher_.disconnect(this);
    stop_.request_stop();
    pool_.waitForDone();
}

void LatestWins::ask(design::DesignPtr design, analysis::Question question) {
    next_ = {std::move(design), std::move(question)};
    if (!current_.design) return startNext();
    // Never two stops in a row: a drag asks faster than an answer takes, and would starve the plots.
    if (!lastWasStopped_ || !patience_.isActive()) stop_.request_stop();
}

void LatestWins::startNext() {
    const bool wasIdle = !current_.design;
    patience_.start();
    stop_ = std::stop_source{};
    current_ = std::exchange(next_, {});
    watcher_.setFuture(QtConcurrent::run(
        &pool_, [compute = compute_, request = current_, before = latest_, shop = shop_, stop = stop_.get_token()] {
            return compute(*request.design, *shop, before, stop, request.question);  // values only: no this, no widget
        }));
    if (wasIdle) emit busyChanged(true);
}

void LatestWins::take() {
    analysis::AnswerPtr answer;
    QString sentence;
    try {
        answer = watcher_.result();
    } catch (const QUnhandledException& wrapped) {
        sentence = tr("The computation failed; the curves show the design before.");
        try {
            if (wrapped.exception()) std::rethrow_exception(wrapped.exception());
        } catch (const std::exception& cause) {
            sentence += QStringLiteral(" (") + QString::fromUtf8(cause.what()) + QStringLiteral(")");
        } catch (...) {
            sentence += tr(" (no reason given)");
        }
    }
    const Request done = std::exchange(current_, {});
    lastWasStopped_ = answer && answer->stopped;
    if (answer && !answer->stopped) latest_ = answer;
    // Start before telling: the thread works while the window paints.
    const bool more = next_.design != nullptr;
    if (more) startNext();
    if (!sentence.isEmpty())
        emit failed(sentence, done.design);
    else if (answer && !answer->stopped)
        emit answered(answer, done.design);
    if (!busy()) emit busyChanged(false);
}

}  // namespace solver
