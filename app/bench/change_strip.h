// SPDX-License-Identifier: GPL-3.0-or-later
// Two lines beneath the bench: what the last change did, and what earthing the other end of a winding would do.
#pragma once

#include <QTimer>
#include <QWidget>
#include <vector>

#include "analysis/other_end.h"
#include "bench/elided_label.h"
#include "document/document.h"
#include "solver/aside.h"

namespace bench {

class ChangeStrip : public QWidget {
    Q_OBJECT
public:
    explicit ChangeStrip(const document::Document& document, QWidget* parent = nullptr);
    /// `design` is what was answered: what is being tried is compared with the design it is tried on, a committed one
    /// with the committed one before it.
    void showAnswer(const analysis::AnswerPtr& answer, const design::DesignPtr& design);

    [[nodiscard]] const QString& change() const { return change_->text(); }
    [[nodiscard]] const QString& otherEnd() const { return otherEnd_->text(); }
    /// The other ends of the design on screen are known.
    [[nodiscard]] bool settled() const { return !wait_.isActive() && !aside_.busy(); }

private:
    struct Answered {
        design::DesignPtr design;
        analysis::AnswerPtr answer;
    };
    struct Known {
        design::DesignPtr design;
        std::string hookUp;
        std::vector<analysis::OtherEndEffect> effects;
    };
    void noteAct();
    void showChange(const Answered& before, const analysis::AnswerPtr& now, const QString& act);
    void askOtherEnds();
    void showOtherEnds(const std::vector<analysis::OtherEndEffect>& effects);
    [[nodiscard]] const Known* known(const design::DesignPtr& design, const std::string& hookUp) const;

    const document::Document& document_;
    solver::Aside aside_;
    QTimer wait_;
    ElidedLabel* change_;
    ElidedLabel* otherEnd_;
    Answered shown_, committed_, before_;
    QString act_, undo_;       ///< what led to the committed design; what undo would have taken back before it
    std::vector<Known> kept_;  ///< newest last: undo, redo and an aborted drag come back to what was solved
};

}  // namespace bench
