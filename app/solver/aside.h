// SPDX-License-Identifier: GPL-3.0-or-later
// Work beside the answer that the window waits for: it gives way to everything else.
#pragma once

#include <QFutureWatcher>
#include <QObject>
#include <QThreadPool>
#include <any>
#include <functional>
#include <stop_token>

namespace solver {

/// Runs one job at a time at the lowest priority. A newer one stops and replaces it; only the newest is told.
class Aside : public QObject {
    Q_OBJECT
public:
    /// Runs in another thread: values only, no widget. Polls the token; what it returns after a stop is dropped.
    using Job = std::function<std::any(std::stop_token)>;
    /// Runs in this thread, unless the job was stopped, replaced, or threw.
    using Done = std::function<void(const std::any&)>;
    explicit Aside(QObject* parent = nullptr);
    ~Aside() override;

    void start(Job job, Done done);
    void stop();
    [[nodiscard]] bool busy() const { return running_ || next_.job; }

signals:
    void failed(const QString& sentence);  ///< our fault: the job threw

private:
    struct Work {
        Job job;
        Done done;
    };
    void startNext();
    void take();

    QThreadPool pool_;
    QFutureWatcher<std::any> watcher_;
    std::stop_source stop_;
    Work current_, next_;
    bool running_ = false;
};

}  // namespace solver
