// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/respin_window.h"

#include <QFileDialog>
#include <QFileInfo>
#include <QVBoxLayout>

#include "bench/figure_words.h"
#include "bench/language.h"
#include "bench/named_field.h"
#include "editors/labels.h"
#include "exchange/load_tolerances.h"
#include "exchange/read_file.h"
#include "exchange/readings_file.h"
#include "exchange/write_file.h"
#include "seek/candidate_words.h"
#include "seek/respin_words.h"
#include "units/fault.h"

namespace bench {

namespace {

struct SpinOutcome {
    seek::ReadSample sample;
    seek::RespinList list;
    QString why;  ///< what was in the way
};

QStringList linesOf(const std::vector<std::string>& all) {
    QStringList lines;
    for (const auto& words : all) lines << translated(words);
    return lines;
}

}  // namespace

RespinWindow::RespinWindow(document::Document& document, const analysis::AnswerPtr& answer,
                           std::vector<std::string> folders, QWidget* parent)
    : QDialog(parent), document_(document), recipe_(document.design()), folders_(std::move(folders)), aside_(this) {
    setWindowTitle(tr("A sample of %1, to be spun again").arg(editors::text(recipe_->name)));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(12, 12, 12, 12);
    column->setSpacing(8);
    readings_ = new ReadingsTable(answer->figures);
    column->addLayout(reading());
    column->addWidget(readings_, 3);
    prices_ = new PriceChoice(tr("No prices: the bill's lines are without costs."));
    column->addWidget(prices_);
    shelf_ = new CardShelf(tr("Changes that bring the promises back, the one that alters the fewest lines first"));
    column->addWidget(shelf_, 3);
    words_ = readOnlyWords(
        tr("The sample, and the chosen change"),
        tr("Type what was read of the sample in the column “read”. The unit that most likely reads so is then "
           "worked out within the shop's tolerances, and one change at a time is tried on it: paper, turns, order, gap "
           "or shares of sheets, until every promise is kept again."));
    column->addWidget(words_, 3);
    column->addLayout(foot());
    for (QPushButton* button : findChildren<QPushButton*>()) button->setAutoDefault(false);
    connect(&readings_->model(), &ReadingsModel::refused, state_, &QLabel::setText);
    connect(&readings_->model(), &ReadingsModel::changed, this, [this] {
        state_->clear();
        showEnabled();
    });
    connect(prices_, &PriceChoice::refused, state_, &QLabel::setText);
    connect(shelf_, &CardShelf::chosenChanged, this, &RespinWindow::showChosen);
    connect(&aside_, &solver::Aside::failed, state_, &QLabel::setText);
    connect(&aside_, &solver::Aside::failed, this, &RespinWindow::showEnabled);
    resize(900, 760);
    readings_->setFocus();
    showEnabled();
}

QLayout* RespinWindow::reading() {
    auto* row = new QHBoxLayout;
    auto* label = new QLabel(tr("&What was read of the sample:"));
    label->setBuddy(readings_);
    row->addWidget(label);
    row->addStretch(1);
    open_ = new QPushButton(tr("Read from &file…"));
    open_->setToolTip(tr("A file of lines FIGURE,VALUE or FIGURE,VALUE,DOUBT"));
    keep_ = new QPushButton(tr("&Keep readings…"));
    keep_->setToolTip(tr("Writes the readings to a file that is read again here and by the command line"));
    seek_ = new QPushButton(tr("&Seek"));
    for (auto* button : {open_, keep_, seek_}) row->addWidget(button);
    connect(open_, &QPushButton::clicked, this, &RespinWindow::chooseReadings);
    connect(keep_, &QPushButton::clicked, this, &RespinWindow::chooseKept);
    connect(seek_, &QPushButton::clicked, this, &RespinWindow::seekOrStop);
    return row;
}

QLayout* RespinWindow::foot() {
    auto* row = new QHBoxLayout;
    takeUp_ = new QPushButton(tr("Take it &up"));
    takeUp_->setToolTip(tr("What is to be wound now comes to the bench as an act that can be undone"));
    beside_ = new QPushButton(tr("Put &beside"));
    beside_->setToolTip(tr("What is to be wound now beside the open design"));
    row->addWidget(takeUp_);
    row->addWidget(beside_);
    state_ = new QLabel;
    state_->setObjectName(QStringLiteral("respinState"));
    state_->setWordWrap(true);
    row->addWidget(state_, 1);
    connect(takeUp_, &QPushButton::clicked, this, &RespinWindow::takeUp);
    connect(beside_, &QPushButton::clicked, this, &RespinWindow::putBeside);
    return row;
}

void RespinWindow::chooseReadings() {
    const QString path = QFileDialog::getOpenFileName(this, tr("Readings of one sample"), QFileInfo(file_).path(),
                                                      tr("Readings (*.csv)"));
    if (!path.isEmpty()) takeReadings(path);
}

void RespinWindow::takeReadings(const QString& path) {
    try {
        const std::string name = path.toStdString();
        readings_->model().take(exchange::readReadings(exchange::readFile(name), name, readings_->model().figures()));
        file_ = path;
        state_->setText(tr("Readings taken from %1: %2.")
                            .arg(QFileInfo(path).fileName())
                            .arg(readings_->model().readings().size()));
    } catch (const units::BadInput& bad) {
        state_->setText(translated(bad.what()));
    }
}

void RespinWindow::chooseKept() {
    const QString path = QFileDialog::getSaveFileName(this, tr("Keep the readings as"), file_, tr("Readings (*.csv)"));
    if (!path.isEmpty()) keepReadings(path);
}

void RespinWindow::keepReadings(const QString& path) {
    try {
        exchange::writeFile(path.toStdString(),
                            exchange::writeReadings(readings_->model().readings(), readings_->model().figures()));
        file_ = path;
        state_->setText(tr("Readings kept in %1.").arg(QFileInfo(path).fileName()));
    } catch (const std::exception& failure) {
        state_->setText(translated(failure.what()));
    }
}

void RespinWindow::seekOrStop() {
    if (!aside_.busy()) return start();
    aside_.stop();
    state_->setText(tr("Stopped."));
    showEnabled();
}

void RespinWindow::start() {
    const seek::RespinProgress progress = [this](std::size_t tried) {
        QMetaObject::invokeMethod(
            this, [this, tried] { tell(tried); }, Qt::QueuedConnection);
    };
    aside_.start(
        [progress, recipe = recipe_, shop = document_.shop(), folders = folders_, prices = prices_->prices(),
         readings = readings_->model().readings(),
         figures = readings_->model().figures()](const std::stop_token& stop) -> std::any {
            try {
                SpinOutcome found;
                found.sample =
                    seek::readSample(recipe, *shop, exchange::loadTolerances(folders), readings, figures, stop);
                if (!found.sample.sample.unit) return found;
                seek::RespinPlan plan;
                plan.prices = prices.get();
                found.list = seek::respun(found.sample.sample, *shop, plan, stop, progress);
                return found;
            } catch (const units::BadInput& bad) {
                return SpinOutcome{{}, {}, translated(bad.what())};
            }
        },
        [this](const std::any& result) {
            const auto& found = std::any_cast<const SpinOutcome&>(result);
            if (found.why.isEmpty()) {
                sample_ = found.sample;
                list_ = found.list;
                showFound();
            } else {
                state_->setText(found.why);
            }
            showEnabled();
        });
    state_->setText(tr("The sample is worked out from its readings…"));
    showEnabled();
}

void RespinWindow::tell(std::size_t tried) {
    if (aside_.busy()) state_->setText(tr("%1 changes computed…").arg(tried));
}

void RespinWindow::showFound() {
    shelf_->clear();
    for (const auto& r : list_.respins)
        shelf_->add(r.sample.recipe, *document_.shop(), translated(seek::headWords(r)),
                    tr("lines altered: %1").arg(r.lines.size()), translated(seek::windingWords(*r.sample.recipe)));
    const QString found = list_.broken.empty()    ? tr("The sample keeps every promise: nothing needs to be changed.")
                          : list_.respins.empty() ? tr("Nothing of the design can be changed alone so that it fits.")
                          : list_.kept ? tr("Changes that bring every promise back: %1.").arg(list_.respins.size())
                                       : tr("No change alone brings every promise back; this one comes nearest.");
    state_->setText(list_.broken.empty() ? found : found + QLatin1Char(' ') + tr("Computed: %1.").arg(list_.tried));
    shelf_->chooseFirst();
    showChosen();
}

const seek::Respin* RespinWindow::chosen() const {
    const auto at = shelf_->chosen();
    return at && *at < list_.respins.size() ? &list_.respins[*at] : nullptr;
}

void RespinWindow::showChosen() {
    QStringList lines;
    if (const auto* r = chosen()) {
        lines << translated(seek::headWords(*r)) << linesOf(seek::respinWords(*r, list_.broken)) << QString();
    }
    lines << tr("The sample") << linesOf(sample_.readings)
          << tr("Likeliest with these readings, in standard deviations of what the shop's tolerances allow:")
          << linesOf(sample_.deviations) << linesOf(sample_.doubts);
    if (!list_.broken.empty()) lines << tr("It breaks");
    for (const auto& p : list_.broken) lines << promiseText(seek::promiseWords(p));
    words_->setPlainText(lines.join(QLatin1Char('\n')));
    showEnabled();
}

void RespinWindow::takeUp() {
    const auto* r = chosen();
    if (!r) return;
    try {
        document_.replace(r->sample.recipe, tr("spun again: %1").arg(translated(seek::headWords(*r))));
        state_->setText(tr("The change is on the bench."));
    } catch (const std::exception& failure) {
        state_->setText(translated(failure.what()));
    }
}

void RespinWindow::putBeside() {
    if (const auto* r = chosen()) emit besideAsked(r->sample.recipe);
}

void RespinWindow::showEnabled() {
    const bool busy = aside_.busy();
    const bool any = !readings_->model().readings().empty();
    seek_->setText(busy ? tr("&Stop") : tr("&Seek"));
    seek_->setToolTip(tr("The unit that most likely reads so, and the smallest change that keeps every promise"));
    seek_->setEnabled(busy || any);
    keep_->setEnabled(any);
    takeUp_->setEnabled(chosen() != nullptr);
    beside_->setEnabled(chosen() != nullptr);
}

}  // namespace bench
