// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/seek_window.h"

#include <QVBoxLayout>
#include <any>
#include <cmath>

#include "bench/figure_words.h"
#include "bench/language.h"
#include "bench/named_field.h"
#include "design/edit.h"
#include "editors/labels.h"
#include "seek/candidate_words.h"
#include "units/fault.h"
#include "units/text.h"

namespace bench {

namespace {

struct Outcome {
    seek::ShortList list;
    QString why;  ///< what was in the way
};

}  // namespace

SeekWindow::SeekWindow(document::Document& document, QWidget* parent)
    : QDialog(parent), document_(document), aside_(this) {
    setWindowTitle(tr("Designs for the brief of %1").arg(editors::text(document_.design()->name)));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(12, 12, 12, 12);
    column->setSpacing(8);
    column->addLayout(holding());
    prices_ = new PriceChoice(tr("No prices: cost is taken to go with the mass of copper and sheets."));
    column->addWidget(prices_);
    shelf_ = new CardShelf(tr("Candidates, the one with the strongest weakest promise first"));
    column->addWidget(shelf_, 3);
    words_ = readOnlyWords(
        tr("The chosen candidate"),
        tr("Seek draws up cores, turns, wires and orders from brief and hook-ups, computes them in full, and shows the "
           "best above as small cuts. What is held stays as it is in the open design."));
    column->addWidget(words_, 2);
    column->addLayout(foot());
    for (QPushButton* button : findChildren<QPushButton*>()) button->setAutoDefault(false);
    connect(shelf_, &CardShelf::chosenChanged, this, &SeekWindow::showChosen);
    connect(prices_, &PriceChoice::refused, state_, &QLabel::setText);
    connect(&aside_, &solver::Aside::failed, state_, &QLabel::setText);
    connect(&aside_, &solver::Aside::failed, this, &SeekWindow::showEnabled);
    resize(900, 620);
    showEnabled();
}

SeekWindow::~SeekWindow() {
    enough_.request_stop();
}

QLayout* SeekWindow::holding() {
    auto* row = new QHBoxLayout;
    row->addWidget(new QLabel(tr("Hold as they are:")));
    const auto box = [&](const QString& label, const QString& tip) {
        auto* made = new QCheckBox(label);
        made->setToolTip(tip);
        row->addWidget(made);
        return made;
    };
    core_ = box(tr("&core"), tr("Sheet, stack, alloys, gap and bobbin of the open design"));
    turns_ = box(tr("&turns"), tr("Turns of every winding"));
    wires_ = box(tr("&wires"), tr("Wire and wires in hand of every winding"));
    order_ = box(tr("&order"), tr("Sections in their order, shields and insulation where they lie"));
    insulation_ = box(tr("&insulation"), tr("Thickness of all insulation; only with the order"));
    connect(order_, &QCheckBox::toggled, this, &SeekWindow::showEnabled);
    row->addStretch(1);
    seek_ = new QPushButton(tr("&Seek"));
    connect(seek_, &QPushButton::clicked, this, &SeekWindow::seekOrEnough);
    row->addWidget(seek_);
    return row;
}

QLayout* SeekWindow::foot() {
    auto* row = new QHBoxLayout;
    takeUp_ = new QPushButton(tr("Take it &up"));
    takeUp_->setToolTip(tr("The chosen candidate comes to the bench as an act that can be undone"));
    beside_ = new QPushButton(tr("Put &beside"));
    beside_->setToolTip(tr("The chosen candidate beside the open design"));
    row->addWidget(takeUp_);
    row->addWidget(beside_);
    state_ = new QLabel;
    state_->setObjectName(QStringLiteral("seekState"));
    state_->setWordWrap(true);
    row->addWidget(state_, 1);
    connect(takeUp_, &QPushButton::clicked, this, &SeekWindow::takeUp);
    connect(beside_, &QPushButton::clicked, this, &SeekWindow::putBeside);
    return row;
}

seek::Held SeekWindow::held() const {
    seek::Held held;
    held.core = core_->isChecked();
    held.turns = turns_->isChecked();
    held.wires = wires_->isChecked();
    held.order = order_->isChecked();
    held.insulation = held.order && insulation_->isChecked();
    if (held.core || held.turns || held.wires || held.order) held.from = document_.design();
    return held;
}

void SeekWindow::seekOrEnough() {
    if (!aside_.busy()) return start();
    enough_.request_stop();
    seek_->setEnabled(false);
    state_->setText(tr("Making a list of what was found…"));
}

void SeekWindow::start() {
    enough_ = std::stop_source();
    seek::Plan plan;
    plan.held = held();
    plan.enough = enough_.get_token();
    const seek::Progress progress = [this](std::size_t tried) {
        QMetaObject::invokeMethod(
            this, [this, tried] { tell(tried); }, Qt::QueuedConnection);
    };
    aside_.start(
        [plan, progress, prices = prices_->prices(), design = document_.design(),
         shop = document_.shop()](const std::stop_token& stop) -> std::any {
            try {
                auto priced = plan;
                priced.prices = prices.get();
                return Outcome{seek::sought(seek::needOf(*design, design->name), *shop, priced, stop, progress), {}};
            } catch (const units::BadInput& bad) {
                return Outcome{{}, translated(bad.what())};
            }
        },
        [this, prices = prices_->prices()](const std::any& result) {
            const auto& outcome = std::any_cast<const Outcome&>(result);
            if (outcome.why.isEmpty()) {
                priced_ = prices;
                showList(outcome.list);
            } else {
                state_->setText(outcome.why);
            }
            showEnabled();
        });
    tell(0);
    showEnabled();
}

void SeekWindow::tell(std::size_t tried) {
    if (aside_.busy() && !enough_.stop_requested()) state_->setText(tr("%1 designs computed…").arg(tried));
}

void SeekWindow::showList(const seek::ShortList& list) {
    shelf_->clear();
    candidates_ = list.candidates;
    for (const auto& c : candidates_)
        shelf_->add(c.design, *document_.shop(), translated(c.order), promiseText(seek::weakestWords(c)),
                    translated(seek::coreWords(*c.design)));
    const QString found = candidates_.empty() ? tr("Nothing was found that can be wound.")
                          : list.kept         ? tr("%1 designs keep every promise.").arg(candidates_.size())
                                      : tr("None keeps every promise; these %1 come nearest.").arg(candidates_.size());
    state_->setText(found + QLatin1Char(' ') +
                    tr("%1 were computed; closed forms left %2 cores and %3 orders.")
                        .arg(list.tried)
                        .arg(list.cores)
                        .arg(list.orders));
    shelf_->chooseFirst();
    showChosen();
}

const seek::Candidate* SeekWindow::chosen() const {
    const auto at = shelf_->chosen();
    return at && *at < candidates_.size() ? &candidates_[*at] : nullptr;
}

void SeekWindow::showChosen() {
    const auto* c = chosen();
    QStringList lines;
    if (c) {
        lines << translated(seek::coreWords(*c->design)) << translated(c->order)
              << translated(seek::windingWords(*c->design)) << translated(seek::burdenWords(c->burden, priced_.get()));
        if (const auto weakest = seek::weakestWords(*c); !weakest.empty())
            lines << tr("weakest: %1").arg(promiseText(weakest));
        if (std::isfinite(c->distortion))
            lines << tr("distorts %1 at 20 Hz and the operating level")
                         .arg(editors::text(units::write(units::Kind::Share, c->distortion, 2)));
        for (const auto& words : c->givesUp) lines << tr("gives up: %1").arg(promiseText(words));
    }
    words_->setPlainText(lines.join(QLatin1Char('\n')));
    showEnabled();
}

void SeekWindow::takeUp() {
    const auto* c = chosen();
    if (!c) return;
    const design::Design& open = *document_.design();
    try {
        document_.replace(design::changed(*c->design,
                                          [&](design::Design& d) {
                                              d.name = open.name;
                                              d.revision = open.revision;
                                              d.note = open.note;
                                          }),
                          tr("candidate %1 taken up").arg(*shelf_->chosen() + 1));
        state_->setText(tr("Candidate %1 is on the bench.").arg(*shelf_->chosen() + 1));
    } catch (const std::exception& failure) {
        state_->setText(translated(failure.what()));
    }
}

void SeekWindow::putBeside() {
    if (const auto* c = chosen()) emit besideAsked(c->design);
}

void SeekWindow::showEnabled() {
    const bool busy = aside_.busy();
    seek_->setEnabled(true);
    seek_->setText(busy ? tr("&Enough") : tr("&Seek"));
    seek_->setToolTip(busy ? tr("Try no more, and show the best of what was found")
                           : tr("Seek cores, turns, wires and orders that keep every promise; takes a minute or more"));
    insulation_->setEnabled(order_->isChecked());
    const bool any = chosen() != nullptr;
    takeUp_->setEnabled(any);
    beside_->setEnabled(any);
}

}  // namespace bench
