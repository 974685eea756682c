// SPDX-License-Identifier: GPL-3.0-or-later
#include "compare/still_cut.h"

#include <QPainter>

#include "bench/theme.h"
#include "cut/cut_painter.h"

namespace compare {

StillCut::StillCut(QString letter, QWidget* parent) : QWidget(parent), letter_(std::move(letter)) {
    setAccessibleName(tr("Cut of %1").arg(letter_));
}

void StillCut::showAnswer(analysis::AnswerPtr answer, design::DesignPtr design) {
    answer_ = std::move(answer);
    design_ = std::move(design);
    setAccessibleDescription(tr("The window of %1, drawn to scale").arg(QString::fromStdString(design_->name)));
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
