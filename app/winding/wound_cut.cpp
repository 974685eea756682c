// SPDX-License-Identifier: GPL-3.0-or-later
#include "winding/wound_cut.h"

#include <QPainter>
#include <cmath>

#include "bench/theme.h"
#include "cut/cut_painter.h"

namespace winding {

using bench::Token;

namespace {

constexpr double guideLength = 14, guideHalf = 5;  // painter units

/// An arrow that points at the coil from outside, at the height of the guide.
void paintGuide(QPainter& painter, const cut::Frame& frame, const Proof& proof, const replay::Progress& progress) {
    if (!std::isfinite(progress.guide.traverse)) return;
    // A machine without a depth axis has its guide outside the flanges.
    const double depth = std::isfinite(progress.guide.depth) ? progress.guide.depth : proof.expected.around.flangeTop;
    const bool right = proof.leg == 2;
    const QPointF tip = frame.point(right ? proof.build.windowWidth - depth : depth, progress.guide.traverse);
    const double back = right ? -guideLength : guideLength;
    const QPolygonF arrow{{tip, tip + QPointF(back, -guideHalf), tip + QPointF(back, guideHalf)}};
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(bench::colour(Token::Base), 1));
    painter.setBrush(bench::colour(Token::Accent));
    painter.drawPolygon(arrow);
}

}  // namespace

WoundCut::WoundCut(QWidget* parent) : QWidget(parent) {
    setAccessibleName(tr("Coil as it is wound"));
    setAccessibleDescription(tr("The cut with what is wound up to the block that is shown; an arrow is the guide"));
}

void WoundCut::showProof(std::shared_ptr<const Proof> proof, design::DesignPtr design) {
    proof_ = std::move(proof);
    design_ = std::move(design);
    progress_ = {};
    update();
}

void WoundCut::showProgress(const replay::Progress& progress) {
    progress_ = progress;
    update();
}

void WoundCut::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), bench::colour(Token::Base));
    if (!proof_) return;
    cut::PaintOptions options;
    options.dark = bench::isDark();
    options.font = font();
    options.ends = false;
    // The whole coil's frame, so that the drawing stands still while the coil grows.
    options.frame = cut::fittedFrame(rect(), proof_->build, *design_, options);
    analysis::Answer wound;
    wound.build = std::make_shared<const coil::CoilBuild>(
        replay::woundSoFar(proof_->build, proof_->expected, progress_, proof_->leg));
    cut::paintCut(painter, rect(), wound, *design_, options);
    paintGuide(painter, *options.frame, *proof_, progress_);
}

}  // namespace winding
