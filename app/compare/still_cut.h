// SPDX-License-Identifier: GPL-3.0-or-later
// The cut of one design as a picture: to look at, not to edit.
#pragma once

#include <QWidget>

#include "analysis/answer.h"
#include "design/design.h"

namespace compare {

class StillCut : public QWidget {
    Q_OBJECT
public:
    /// `letter` is how the pair calls this design: "A".
    explicit StillCut(QString letter, QWidget* parent = nullptr);
    /// What was computed of this design.
    void showAnswer(analysis::AnswerPtr answer, design::DesignPtr design);
    [[nodiscard]] QSize sizeHint() const override { return {300, 420}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {160, 200}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QString letter_;
    design::DesignPtr design_;
    analysis::AnswerPtr answer_;
};

}  // namespace compare
