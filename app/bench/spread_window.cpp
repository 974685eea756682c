// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/spread_window.h"

#include <QHBoxLayout>
#include <QScrollArea>
#include <QSplitter>
#include <QVBoxLayout>

#include "bench/named_field.h"

namespace bench {

namespace {

QSpinBox* countBox(QLayout& row, const QString& label, int least, int most, int value, const QString& tip) {
    auto* box = new QSpinBox;
    box->setRange(least, most);
    box->setValue(value);
    named(row, label, box, tip);
    return box;
}

}  // namespace

SpreadWindow::SpreadWindow(SpreadStudy& study, QWidget* parent) : QDialog(parent), study_(study) {
    setWindowTitle(tr("Spread of a production"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(12, 12, 12, 12);
    column->setSpacing(8);
    column->addLayout(asking());
    progress_ = new QProgressBar;
    progress_->setRange(0, 100);
    progress_->setAccessibleName(tr("How far the study is"));
    state_ = new QLabel;
    state_->setWordWrap(true);
    state_->setObjectName(QStringLiteral("spreadState"));
    column->addWidget(progress_);
    column->addWidget(state_);
    auto* across = new QSplitter(Qt::Horizontal);
    table_ = new SpreadTable;
    across->addWidget(table_);
    across->addWidget(picture());
    across->setStretchFactor(0, 4);
    across->setStretchFactor(1, 5);
    across->setChildrenCollapsible(false);
    across->setSizes({520, 560});
    column->addWidget(across, 1);
    for (QPushButton* button : findChildren<QPushButton*>()) button->setAutoDefault(false);
    connect(table_, &SpreadTable::chosen, this, &SpreadWindow::showColumn);
    connect(&study_, &SpreadStudy::changed, this, &SpreadWindow::showFound);
    connect(&study_, &SpreadStudy::progressed, this, &SpreadWindow::showState);
    resize(1100, 680);
    showFound();
}

QLayout* SpreadWindow::asking() {
    constexpr int mostUnits = 100000, mostSeed = 1000000000;
    auto* row = new QHBoxLayout;
    units_ = countBox(*row, tr("&Units"), 50, mostUnits, 1000, tr("How many are made and computed"));
    units_->setSingleStep(500);
    lot_ = countBox(*row, tr("in &lots of"), 1, mostUnits, 20,
                    tr("Units of a lot share wire, sheet and paper of one lot"));
    seed_ = countBox(*row, tr("s&eed"), 0, mostSeed, 1, tr("The same seed makes the same units"));
    every_ = new QCheckBox(tr("every &figure"));
    every_->setToolTip(tr("All figures, not only what is promised; takes ten to twenty times as long"));
    row->addWidget(every_);
    row->addStretch(1);
    run_ = new QPushButton(tr("&Make them"));
    connect(run_, &QPushButton::clicked, this, &SpreadWindow::startOrCancel);
    row->addWidget(run_);
    return row;
}

QWidget* SpreadWindow::picture() {
    auto* right = new QSplitter(Qt::Vertical);
    histogram_ = new HistogramView;
    right->addWidget(histogram_);
    auto* lower = new QWidget;
    auto* column = new QVBoxLayout(lower);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    auto* row = new QHBoxLayout;
    row->addWidget(new QLabel(tr("Bars:")));
    slopes_ = new QRadioButton(tr("what one standard &deviation does"));
    slopes_->setToolTip(tr("Each number one standard deviation more, all others as they are"));
    shares_ = new QRadioButton(tr("shares of the &variance"));
    shares_->setToolTip(tr("How much of the spread each cause makes, by lot and by unit"));
    slopes_->setChecked(true);
    row->addWidget(slopes_);
    row->addWidget(shares_);
    row->addStretch(1);
    column->addLayout(row);
    bars_ = new CauseBars;
    column->addWidget(bars_, 1);
    words_ = new QLabel;
    words_->setWordWrap(true);
    words_->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    words_->setObjectName(QStringLiteral("spreadWords"));
    words_->setMinimumHeight(4 * fontMetrics().height());
    column->addWidget(words_);
    right->addWidget(lower);
    right->setStretchFactor(0, 2);
    right->setStretchFactor(1, 3);
    right->setChildrenCollapsible(false);
    connect(slopes_, &QRadioButton::toggled, this, [this] { showColumn(column_); });
    connect(bars_, &CauseBars::told, this, &SpreadWindow::tell);
    connect(bars_, &CauseBars::partChosen, this, &SpreadWindow::partChosen);
    connect(histogram_, &HistogramView::told, this, &SpreadWindow::tell);
    return right;
}

CausesModel::Of SpreadWindow::barsOf() const {
    return slopes_->isChecked() ? CausesModel::Of::Slopes : CausesModel::Of::Shares;
}

void SpreadWindow::tell(const QString& words) {
    words_->setText(words.isEmpty()
                        ? tr("A bar under the mouse or chosen says here what its part does; Enter or a click "
                             "selects that part on the bench.")
                        : words);
}

void SpreadWindow::startOrCancel() {
    if (study_.busy()) return study_.cancel();
    SpreadAsked asked;
    asked.units = static_cast<std::uint64_t>(units_->value());
    asked.seed = static_cast<std::uint64_t>(seed_->value());
    asked.lotSize = static_cast<std::uint64_t>(lot_->value());
    asked.everyFigure = every_->isChecked();
    study_.start(asked);
}

void SpreadWindow::showFound() {
    shown_ = study_.shared();
    table_->showFound(shown_.get(), shown_ && !study_.current());
    showColumn(column_);
    showState();
}

void SpreadWindow::showState() {
    const bool busy = study_.busy();
    run_->setText(busy ? tr("&Cancel") : tr("&Make them"));
    run_->setToolTip(busy ? tr("Computes no more; what was found stays")
                          : tr("Makes and computes the units, then what causes their spread, then the plots' bands"));
    progress_->setEnabled(busy);
    progress_->setTextVisible(busy);
    progress_->setValue(static_cast<int>(100 * study_.share()));
    const auto* found = study_.found();
    QString words;
    switch (study_.phase()) {
        case SpreadStudy::Phase::Units:
            words = tr("Units are being computed; the window may be used meanwhile.");
            break;
        case SpreadStudy::Phase::Slopes:
            words = tr("What each number does is being computed.");
            break;
        case SpreadStudy::Phase::Bands:
            words = tr("Bands of the plots are being computed.");
            break;
        case SpreadStudy::Phase::None:
            if (!study_.why().isEmpty())
                words = study_.why();
            else if (found == nullptr)
                words = tr("Units are made as the shop would, each a little different, and computed.");
            break;
    }
    if (found != nullptr) {
        const QString made = tr("%1: %2 units in lots of %3, seed %4; %5 numbers vary.")
                                 .arg(QString::fromStdString(found->head.design))
                                 .arg(found->head.units)
                                 .arg(found->head.lotSize)
                                 .arg(found->head.seed)
                                 .arg(found->head.varying.size());
        words = study_.current() ? made + QLatin1Char(' ') + words
                                 : tr("Old: of a design before what is open now. %1 %2").arg(made, words);
    }
    state_->setText(words.trimmed());
}

void SpreadWindow::showColumn(int column) {
    column_ = column;
    const bool old = shown_ && !study_.current();
    std::optional<HistogramView::Shown> shown;
    if (shown_ && column >= 0 && static_cast<std::size_t>(column) < shown_->head.columns.size()) {
        const auto k = static_cast<std::size_t>(column);
        const auto& head = shown_->head;
        shown = HistogramView::Shown{
            head.columns[k], shown_->summary.columns[k], head.atLeast[k], head.atMost[k], head.units, old};
        if (head.columns[k].mask) shown->atLeast = 0;  // a margin
    }
    histogram_->showFigure(std::move(shown));
    bars_->showCauses(shown_.get(), column, barsOf());
}

}  // namespace bench
