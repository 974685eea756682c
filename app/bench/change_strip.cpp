// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/change_strip.h"

#include <QVBoxLayout>
#include <algorithm>

#include "bench/language.h"

namespace bench {

namespace {

constexpr int calm = 250;  // ms without a new answer before work beside it begins
constexpr std::size_t mostKept = 16;

/// "leakage P–S 119 → 96 µH (−19 %), …": each figure is said in the language of the window, its numbers as they are.
QString movesText(const std::vector<analysis::Move>& moves) {
    QStringList parts;
    for (const analysis::Move& move : moves)
        parts << translated(move.what) + QString::fromStdString(analysis::sentence({move}).substr(move.what.size()));
    return parts.isEmpty() ? translated(analysis::sentence(moves)) : parts.join(QStringLiteral(", "));
}

}  // namespace

ChangeStrip::ChangeStrip(const document::Document& document, QWidget* parent)
    : QWidget(parent), document_(document), change_(new ElidedLabel(this)), otherEnd_(new ElidedLabel(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(8, 2, 8, 2);
    column->setSpacing(0);
    column->addWidget(change_);
    column->addWidget(otherEnd_);
    otherEnd_->setColourRole(QPalette::PlaceholderText);
    change_->setText(tr("What an edit moves is said here."));
    wait_.setSingleShot(true);
    wait_.setInterval(calm);
    connect(&wait_, &QTimer::timeout, this, &ChangeStrip::askOtherEnds);
    connect(&document_, &document::Document::changed, this, &ChangeStrip::noteAct);
    connect(&document_, &document::Document::shownChanged, this, [this] {
        wait_.stop();
        aside_.stop();
    });
    connect(&aside_, &solver::Aside::failed, this, [this](const QString& sentence) { otherEnd_->setText(sentence); });
}

void ChangeStrip::noteAct() {
    if (!document_.canUndo() && !document_.canRedo()) {  // another design was opened
        before_ = committed_ = shown_ = {};
        act_.clear();
        change_->setText(tr("What an edit moves is said here."));
    } else if (document_.canRedo() && document_.redoText() == undo_) {
        act_ = tr("undo %1").arg(undo_);
    } else {
        act_ = document_.undoText();
    }
    undo_ = document_.undoText();
}

void ChangeStrip::showAnswer(const analysis::AnswerPtr& answer, const design::DesignPtr& design) {
    const bool committed = design == document_.design();
    shown_ = {design, answer};
    if (committed && design != committed_.design) before_ = committed_;
    if (committed) {
        if (committed_.answer && committed_.answer->hookUp != answer->hookUp) before_ = {};
        committed_ = shown_;
        showChange(before_, answer, act_);
    } else {
        showChange(committed_, answer, tr("tried"));
    }
    if (const Known* there = known(design, answer->hookUp)) return showOtherEnds(there->effects);
    if (analysis::otherEnds(*design, answer->hookUp).empty()) return showOtherEnds({});
    otherEnd_->setText(tr("Other end to earth: being computed"));
    wait_.start();
}

void ChangeStrip::showChange(const Answered& before, const analysis::AnswerPtr& now, const QString& act) {
    if (!before.answer || before.answer->hookUp != now->hookUp) {
        change_->setText(tr("What an edit moves is said here."));
        return;
    }
    QString words = act.isEmpty() ? tr("changed") : act;
    words[0] = words[0].toUpper();
    change_->setText(words + QStringLiteral(": ") + movesText(analysis::moves(*before.answer, *now)));
}

void ChangeStrip::askOtherEnds() {
    const Answered asked = shown_;
    aside_.start(
        [asked, shop = document_.shop()](const std::stop_token& stop) -> std::any {
            return analysis::otherEndEffects(*asked.design, *shop, asked.answer, stop);
        },
        [this, asked](const std::any& result) {
            const auto& effects = std::any_cast<const std::vector<analysis::OtherEndEffect>&>(result);
            if (kept_.size() == mostKept) kept_.erase(kept_.begin());
            kept_.push_back({asked.design, asked.answer->hookUp, effects});
            if (asked.design == shown_.design && asked.answer == shown_.answer) showOtherEnds(effects);
        });
}

void ChangeStrip::showOtherEnds(const std::vector<analysis::OtherEndEffect>& effects) {
    QStringList parts;
    for (const auto& effect : effects)
        parts << translated(effect.words) + QStringLiteral(": ") + movesText(effect.moves);
    otherEnd_->setText(parts.isEmpty()
                           ? tr("Other end to earth: no winding of this hook-up has one end at earth and one free.")
                           : tr("Other end to earth, %1").arg(parts.join(QStringLiteral(" · "))));
}

const ChangeStrip::Known* ChangeStrip::known(const design::DesignPtr& design, const std::string& hookUp) const {
    const auto at = std::find_if(kept_.begin(), kept_.end(),
                                 [&](const Known& k) { return k.design == design && k.hookUp == hookUp; });
    return at == kept_.end() ? nullptr : &*at;
}

}  // namespace bench
