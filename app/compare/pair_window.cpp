// SPDX-License-Identifier: GPL-3.0-or-later
#include "compare/pair_window.h"

#include <QMenu>
#include <QSplitter>
#include <QVBoxLayout>

#include "bench/headed.h"
#include "bench/language.h"
#include "design/difference.h"

namespace compare {

namespace {

constexpr int inside = 12, between = 8;

QString named(const design::Design& design) {
    return PairWindow::tr("%1, revision %2")
        .arg(QString::fromStdString(design.name), QString::fromStdString(design.revision));
}

/// A widget with its heading above.
QWidget* under(const QString& words, QWidget* what) {
    auto* heading = new bench::ElidedLabel;
    heading->setText(words);
    return bench::headed(heading, what);
}

/// Parts beside or above each other with these shares of the room.
QSplitter* split(Qt::Orientation orientation, const QList<QWidget*>& parts, const QList<int>& shares) {
    auto* splitter = new QSplitter(orientation);
    splitter->setChildrenCollapsible(false);
    for (qsizetype k = 0; k < parts.size(); ++k) {
        splitter->addWidget(parts[k]);
        splitter->setStretchFactor(static_cast<int>(k), shares[k]);
    }
    QList<int> sizes;
    for (const int share : shares) sizes << 1000 * share;
    splitter->setSizes(sizes);
    return splitter;
}

}  // namespace

PairWindow::PairWindow(design::DesignPtr a, design::DesignPtr b, const std::shared_ptr<const catalog::Catalog>& shop,
                       QWidget* parent)
    : QWidget(parent, parent ? Qt::Window : Qt::WindowFlags()), designs_{std::move(a), std::move(b)} {
    layOut();
    showDifferences();
    for (int which : {0, 1}) {
        solvers_[which] = new solver::LatestWins(shop, analysis::answer, this);
        connect(solvers_[which], &solver::LatestWins::answered, this,
                [this, which](const analysis::AnswerPtr& answer, const design::DesignPtr& design) {
                    take(which, answer, design);
                });
        connect(solvers_[which], &solver::LatestWins::failed, this, &PairWindow::say);
        solvers_[which]->ask(designs_[which]);
    }
}

void PairWindow::setFirst(design::DesignPtr a) {
    if (a == designs_[0]) return;
    designs_[0] = std::move(a);
    message_->setVisible(false);
    showDifferences();
    solvers_[0]->ask(designs_[0]);
}

void PairWindow::say(const QString& sentence) {
    message_->setText(sentence);
    message_->setVisible(true);
}

void PairWindow::showDifferences() {
    setWindowTitle(tr("Pair: %1 · %2").arg(named(*designs_[0]), named(*designs_[1])));
    for (int which : {0, 1})
        headings_[which]->setText((which == 0 ? tr("A: %1") : tr("B: %1")).arg(named(*designs_[which])));
    words_->clear();
    for (const std::string& line : design::differences(*designs_[0], *designs_[1]))
        words_->addItem(bench::translated(line));
    if (words_->count() == 0) words_->addItem(tr("The designs are the same."));
    take_->menu()->clear();
    for (const design::Portion& portion : design::differingPortions(*designs_[0], *designs_[1]))
        connect(
            take_->menu()->addAction(bench::translated(portion.words())), &QAction::triggered, this,
            [this, portion] { emit portionAsked(portion); },
            Qt::QueuedConnection);  // the menu is made anew on what follows
    take_->setEnabled(!take_->menu()->isEmpty());
}

QWidget* PairWindow::cutsSide() {
    QList<QWidget*> both;
    for (int which : {0, 1}) {
        cuts_[which] = new StillCut(which == 0 ? tr("A") : tr("B"), this);
        headings_[which] = new bench::ElidedLabel;
        both << bench::headed(headings_[which], cuts_[which]);
    }
    words_ = new QListWidget(this);
    words_->setAccessibleName(tr("Differences"));
    words_->setAccessibleDescription(tr("What differs between the two designs, a line a difference"));
    words_->setFrameShape(QFrame::NoFrame);
    words_->setWordWrap(true);
    words_->setSelectionMode(QAbstractItemView::ExtendedSelection);
    take_ = new QToolButton(this);
    take_->setText(tr("&Take from B"));
    take_->setAccessibleName(tr("Take from B"));
    take_->setToolTip(tr("Put a part of B into the open design, as an act that can be undone"));
    take_->setPopupMode(QToolButton::InstantPopup);
    take_->setFocusPolicy(Qt::StrongFocus);
    take_->setMenu(new QMenu(take_));
    auto* lower = new QWidget(this);
    auto* column = new QVBoxLayout(lower);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(under(tr("From A to B"), words_), 1);
    column->addWidget(take_, 0, Qt::AlignLeft);
    return split(Qt::Vertical, {split(Qt::Horizontal, both, {1, 1}), lower}, {4, 1});
}

QWidget* PairWindow::resultsSide() {
    overlay_ = new plots::PlotPane({"response", {}, {}}, 0, this);
    difference_ = new plots::PlotPane({"difference", "magnitude_dB", {}}, 0, this);
    table_ = new bench::ResultTable(tr("Figures of both"), tr("Every figure of A and of B, and B less A"), this);
    table_->setModel(&figures_);
    table_->fitColumns(PairFigures::Name);
    auto* plotColumn = split(Qt::Vertical, {under(tr("B drawn; A held, dashed"), overlay_), difference_}, {1, 1});
    return split(Qt::Vertical, {plotColumn, under(tr("Figures"), table_)}, {9, 4});
}

void PairWindow::layOut() {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(inside, inside, inside, inside);
    column->setSpacing(between);
    message_ = new bench::ElidedLabel(this);
    message_->setVisible(false);
    QSplitter* halves = split(Qt::Horizontal, {cutsSide(), resultsSide()}, {5, 6});
    halves->setHandleWidth(2 * between);
    column->addWidget(message_);
    column->addWidget(halves, 1);
    resize(1280, 800);
    // One frequency axis and one cursor for both plots.
    for (plots::PlotPane* pane : {overlay_, difference_}) linked_.add(pane->plot());
}

void PairWindow::take(int which, const analysis::AnswerPtr& answer, const design::DesignPtr& design) {
    answers_[which] = answer;
    cuts_[which]->showAnswer(answer, design);
    if (ready()) showBoth();
}

void PairWindow::showBoth() {
    overlay_->showAnswer(answers_[1], designs_[1]);
    overlay_->plot().hold(answers_[0]);
    auto less = std::make_shared<analysis::Answer>();
    less->hookUp = answers_[1]->hookUp;
    if (auto trace = differenceTrace(*answers_[0], *answers_[1], "response")) less->traces.push_back(std::move(trace));
    difference_->showAnswer(less, designs_[1]);
    figures_.show(answers_[0], answers_[1]);
    emit shown();
}

QStringList PairWindow::differences() const {
    QStringList lines;
    for (int row = 0; row < words_->count(); ++row) lines << words_->item(row)->text();
    return lines;
}

}  // namespace compare
