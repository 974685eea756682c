// SPDX-License-Identifier: GPL-3.0-or-later
#include "compare/pair_window.h"

#include <QSplitter>
#include <QVBoxLayout>

#include "bench/headed.h"
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
    setWindowTitle(tr("Pair: %1 · %2").arg(named(*designs_[0]), named(*designs_[1])));
    layOut();
    for (const std::string& line : design::differences(*designs_[0], *designs_[1]))
        words_->addItem(QString::fromStdString(line));
    if (words_->count() == 0) words_->addItem(tr("The designs are the same."));
    for (int which : {0, 1}) {
        solvers_[which] = new solver::LatestWins(shop, analysis::answer, this);
        connect(solvers_[which], &solver::LatestWins::answered, this,
                [this, which](const analysis::AnswerPtr& answer) { take(which, answer); });
        connect(solvers_[which], &solver::LatestWins::failed, this, [this](const QString& sentence) {
            message_->setText(sentence);
            message_->setVisible(true);
        });
        solvers_[which]->ask(designs_[which]);
    }
}

QWidget* PairWindow::cutsSide() {
    QList<QWidget*> both;
    for (int which : {0, 1}) {
        const QString letter = which == 0 ? tr("A") : tr("B");
        cuts_[which] = new StillCut(letter, designs_[which], this);
        both << under(letter + QStringLiteral(": ") + named(*designs_[which]), cuts_[which]);
    }
    words_ = new QListWidget(this);
    words_->setAccessibleName(tr("Differences"));
    words_->setAccessibleDescription(tr("What differs between the two designs, a line a difference"));
    words_->setFrameShape(QFrame::NoFrame);
    words_->setWordWrap(true);
    words_->setSelectionMode(QAbstractItemView::ExtendedSelection);
    return split(Qt::Vertical, {split(Qt::Horizontal, both, {1, 1}), under(tr("From A to B"), words_)}, {4, 1});
}

QWidget* PairWindow::resultsSide() {
    overlay_ = new plots::PlotPane({"response", {}, {}}, false, this);
    difference_ = new plots::PlotPane({"difference", "magnitude_dB", {}}, false, this);
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
    plots::Plot &above = overlay_->plot(), &below = difference_->plot();
    for (plots::Plot* plot : {&above, &below}) {
        const auto both = {&above, &below};
        connect(plot, &plots::Plot::cursorAsked, this, [both = std::vector<plots::Plot*>(both)](double f) {
            for (plots::Plot* one : both) one->placeCursor(f);
        });
        connect(plot, &plots::Plot::bandAsked, this, [both = std::vector<plots::Plot*>(both)](const QCPRange& band) {
            for (plots::Plot* one : both) one->showBand(band);
        });
        connect(plot, &plots::Plot::fitAsked, this, [both = std::vector<plots::Plot*>(both)] {
            for (plots::Plot* one : both) one->fit();
        });
    }
}

void PairWindow::take(int which, const analysis::AnswerPtr& answer) {
    answers_[which] = answer;
    cuts_[which]->showAnswer(answer);
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
