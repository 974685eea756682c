// SPDX-License-Identifier: GPL-3.0-or-later
// Computing in the background: the newest design wins.
#pragma once

#include <QFutureWatcher>
#include <QObject>
#include <QThreadPool>
#include <QTimer>
#include <functional>
#include <memory>
#include <stop_token>

#include "analysis/answer.h"

namespace solver {

/// Starts at once when idle; while computing, only the newest request is kept, and work that became stale is stopped.
class LatestWins : public QObject {
    Q_OBJECT
public:
    using Compute =
        std::function<analysis::AnswerPtr(const design::Design&, const catalog::Catalog&, const analysis::AnswerPtr&,
                                          std::stop_token, const analysis::Question&)>;
    /// `compute` is analysis::answer unless a test counts calls. It must be safe to call from another thread.
    explicit LatestWins(std::shared_ptr<const catalog::Catalog> shop, Compute compute = analysis::answer,
                        QObject* parent = nullptr);
    ~LatestWins() override;

    void ask(design::DesignPtr design, analysis::Question question = {});
    [[nodiscard]] bool busy() const { return next_.design || current_.design; }

signals:
    void answered(const analysis::AnswerPtr& answer, const design::DesignPtr& design);
    void failed(const QString& sentence, const design::DesignPtr& design);  ///< our fault: the computation threw
    void busyChanged(bool busy);

private:
    struct Request {
        design::DesignPtr design;
        analysis::Question question;
    };
    void startNext();
    void take();

    std::shared_ptr<const catalog::Catalog> shop_;
    Compute compute_;
    QThreadPool pool_;
    QFutureWatcher<analysis::AnswerPtr> watcher_;
    std::stop_source stop_;
    Request current_, next_;
    analysis::AnswerPtr latest_;
    bool lastWasStopped_ = false;
    QTimer patience_;  ///< runs while the current question may not be stopped for a newer one
};

}  // namespace solver
