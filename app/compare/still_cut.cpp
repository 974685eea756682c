// SPDX-License-Identifier: GPL-3.0-or-later
#include "compare/still_cut.h"

#include <QPainter>

#include "bench/theme.h"
#include "cut/cut_painter.h"

namespace compare {

StillCut::StillCut(QString letter, design::DesignPtr design, QWidget* parent)
    : QWidget(parent), letter_(std::move(letter)), design_(std::move(design)) {
    setAccessibleName(tr("Cut of %1").arg(letter_));
    setAccessibleDescription(tr("The window of %1, drawn to scale").arg(QString::fromStdString(design_->name)));
}

void StillCut::showAnswer(analysis::AnswerPtr answer) {
    answer_ = std::move(answer);
    update();
}

void StillCut::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), bench::colour(bench::Token::Base));
    if (!answer_ || !answer_->build) return;
    cut::PaintOptions options;
    options.dark = bench::isDark();
    options.font = font();
    cut::paintCut(painter, rect(), *answer_, *design_, options);
}

}  // namespace compare
