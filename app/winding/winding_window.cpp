// SPDX-License-Identifier: GPL-3.0-or-later
#include "winding/winding_window.h"

#include <QFontDatabase>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QSignalBlocker>
#include <QSplitter>
#include <QVBoxLayout>
#include <cmath>

#include "bench/headed.h"
#include "bench/language.h"
#include "exchange/read_file.h"
#include "exchange/winding_program.h"
#include "winding/controls.h"

namespace winding {

namespace {

QListWidget* list(const QString& name, const QString& what) {
    auto* made = new QListWidget;
    made->setAccessibleName(name);
    made->setAccessibleDescription(what);
    made->setFrameShape(QFrame::NoFrame);
    made->setSelectionMode(QAbstractItemView::SingleSelection);
    return made;
}

QString joined(const std::vector<std::string>& all, const QString& between) {
    QStringList list;
    for (const std::string& one : all) list << bench::translated(one);
    return list.join(between);
}

}  // namespace

WindingWindow::WindingWindow(document::Document& document, std::vector<std::string> folders, QWidget* parent)
    : QDialog(parent), document_(document), folders_(std::move(folders)) {
    build();
    for (const std::string& name : exchange::winderNames(folders_)) winder_->addItem(QString::fromStdString(name));
    if (winder_->count() == 0) say(tr("There is no description of a winder in any folder of winders."));
    // The one that guides the wire itself shows most.
    if (const int traverse = winder_->findText(QStringLiteral("single-traverse")); traverse >= 0)
        winder_->setCurrentIndex(traverse);
    const auto again = [this] { opened_.isEmpty() ? writeAnew() : openProgram(opened_); };
    connect(winder_, &QComboBox::currentIndexChanged, this, again);
    connect(leg_, &QComboBox::currentIndexChanged, this, again);
    connect(&document_, &document::Document::changed, this, [this, again] {
        showLegs();
        again();
    });
    showLegs();
    writeAnew();
    resize(1080, 760);
    blocks_->setFocus();  // so that the keys of stepping work at once
}

void WindingWindow::build() {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(12, 12, 12, 12);
    column->setSpacing(8);
    column->addLayout(choices());
    caution_ = new QLabel(joined(exchange::windingCaution(), QStringLiteral("; ")));
    caution_->setWordWrap(true);
    caution_->setAccessibleName(tr("Caution"));
    column->addWidget(caution_);
    message_ = new bench::ElidedLabel;
    message_->setVisible(false);
    column->addWidget(message_);
    auto* halves = new QSplitter(Qt::Horizontal);
    halves->setChildrenCollapsible(false);
    cut_ = new WoundCut;
    halves->addWidget(cut_);
    halves->addWidget(listing());
    halves->setStretchFactor(0, 3);
    halves->setStretchFactor(1, 4);
    halves->setSizes({460, 620});
    halves->setHandleWidth(12);
    column->addWidget(halves, 1);
    where_ = new bench::ElidedLabel;
    column->addWidget(where_);
    transport_ = new Transport;
    connect(transport_, &Transport::moved, this, &WindingWindow::showProgress);
    column->addWidget(transport_);
    run_ = new QLabel;
    run_->setWordWrap(true);
    run_->setAccessibleName(tr("Time and count"));
    column->addWidget(run_);
}

QLayout* WindingWindow::choices() {
    auto* row = new QHBoxLayout;
    auto* winderName = new QLabel(tr("Winder"));
    winder_ = namedChoice(*winderName, tr("The machine the program is for; a shop's own descriptions are offered too"));
    winder_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    legName_ = new QLabel(tr("Leg"));
    leg_ = namedChoice(*legName_, tr("A coil on each leg has a program of its own"));
    for (QWidget* one : {static_cast<QWidget*>(winderName), static_cast<QWidget*>(winder_),
                         static_cast<QWidget*>(legName_), static_cast<QWidget*>(leg_)})
        row->addWidget(one);
    row->addStretch(1);
    row->addWidget(actButton(this, tr("&Open a program…"), tr("A program that was changed by hand: run it, compare it"),
                             &WindingWindow::chooseOpen));
    own_ = actButton(this, tr("The &design's own"), tr("The program that the design gives"), &WindingWindow::writeAnew);
    row->addWidget(own_);
    row->addWidget(actButton(this, tr("Write &program…"), tr("ISO 6983 blocks, for the shop: they hold the recipe"),
                             &WindingWindow::chooseProgramFile));
    row->addWidget(actButton(this, tr("Write step &table…"), tr("The same as a table, for winders that take one"),
                             &WindingWindow::chooseTableFile));
    return row;
}

QWidget* WindingWindow::listing() {
    auto* parts = new QSplitter(Qt::Vertical);
    parts->setChildrenCollapsible(false);
    blocks_ = list(tr("Blocks"), tr("The program's lines; choose one to see the coil behind it"));
    blocks_->setFont(QFontDatabase::systemFont(QFontDatabase::FixedFont));
    blocks_->setTextElideMode(Qt::ElideNone);  // a long message is scrolled to, not cut
    blocks_->installEventFilter(this);
    connect(blocks_, &QListWidget::currentRowChanged, this, [this](int row) {
        if (row >= 0) transport_->goToLine(row + 1);
    });
    faults_ = list(tr("Proof"), tr("Where the program winds something else than the design, or leaves the machine's "
                                   "limits; choose one to see its block"));
    faults_->setWordWrap(true);
    connect(faults_, &QListWidget::itemActivated, this, [this](const QListWidgetItem* item) {
        const int line = proof_ ? lineOf(*proof_, item->text().toStdString()) : 0;
        if (line > 0) transport_->goToLine(line);
    });
    connect(faults_, &QListWidget::itemClicked, faults_, &QListWidget::itemActivated);
    verdict_ = new bench::ElidedLabel;
    auto* proofs = new QWidget;
    auto* column = new QVBoxLayout(proofs);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    column->addWidget(verdict_);
    column->addWidget(faults_, 1);
    column->addStretch(0);  // without faults the verdict stands at the top
    auto* heading = new QLabel(tr("&Blocks"));
    heading->setBuddy(blocks_);
    parts->addWidget(bench::headed(heading, blocks_));
    parts->addWidget(proofs);
    parts->setStretchFactor(0, 4);
    parts->setStretchFactor(1, 1);
    parts->setSizes({420, 110});
    return parts;
}

bool WindingWindow::tried(const std::function<void()>& act) {
    try {
        act();
        return true;
    } catch (const std::exception& failure) {
        say(bench::translated(failure.what()));
        return false;
    }
}

void WindingWindow::say(const QString& sentence) {
    message_->setText(sentence);
    message_->setVisible(true);
}

void WindingWindow::showLegs() {
    const QSignalBlocker quiet(leg_);
    const int before = leg_->currentData().toInt();
    leg_->clear();
    for (const int leg : woundLegs(*document_.design())) leg_->addItem(QString::number(leg), leg);
    leg_->setCurrentIndex(std::max(0, leg_->findData(before)));
    leg_->setVisible(leg_->count() > 1);
    legName_->setVisible(leg_->count() > 1);
}

exchange::OpenedWinder WindingWindow::winder() const {
    return exchange::openWinder(winder_->currentText().toStdString(), folders_);
}

std::string WindingWindow::made(const exchange::Winder& machine, Making making) const {
    const design::Design& design = *document_.design();
    const catalog::Catalog& shop = *document_.shop();
    return making(exchange::windingPlan(design, coil::layOut(design, shop), shop, machine, leg()), machine);
}

void WindingWindow::writeAnew() {
    tried([this] {
        const exchange::OpenedWinder on = winder();
        take(made(on.winder, exchange::windingProgram), {}, on);
    });
}

void WindingWindow::openProgram(const QString& path) {
    tried([&] { take(exchange::readFile(path.toStdString()), path, winder()); });
}

void WindingWindow::take(const std::string& text, const QString& path, const exchange::OpenedWinder& on) {
    const QString named = path.isEmpty() ? tr("the design's program") : path;
    const replay::Machine machine = replay::readMachine(on.text, on.file);
    replay::Run run = replay::run(replay::readProgram(text, named.toStdString()), machine);
    if (run.events.empty()) return say(tr("%1 has no blocks.").arg(named));
    auto proof =
        std::make_shared<Proof>(proven(std::move(run), machine, *document_.design(), *document_.shop(), leg()));
    proof->lines = linesOf(text);
    proof_ = std::move(proof);
    opened_ = path;
    message_->setVisible(false);
    setWindowTitle(tr("Winding program of %1: %2").arg(QString::fromStdString(document_.design()->name), named));
    showProof();
}

void WindingWindow::showProof() {
    own_->setEnabled(!opened_.isEmpty());
    cut_->showProof(proof_, document_.design());
    {
        const QSignalBlocker quiet(blocks_);
        blocks_->clear();
        for (std::size_t k = 0; k < proof_->lines.size(); ++k)
            blocks_->addItem(QString::number(k + 1).rightJustified(5) + QStringLiteral("  ") +
                             QString::fromStdString(proof_->lines[k]));
    }
    faults_->clear();
    for (const std::string& words : proof_->faults) faults_->addItem(bench::translated(words) + QLatin1Char('.'));
    const QString machine = bench::translated(proof_->machine.title);
    const auto count = proof_->faults.size();
    verdict_->setText(
        count == 0
            ? tr("✓ Run on %1, it winds the design %2.").arg(machine, bench::translated(provenWords(proof_->machine)))
        : count == 1 ? tr("✗ Run on %1, it differs in one place:").arg(machine)
                     : tr("✗ Run on %1, it differs in %2 places:").arg(machine).arg(count));
    faults_->setVisible(count > 0);
    run_->setText(joined(runWords(proof_->run, proof_->machine), QStringLiteral("\n")));
    transport_->take({proof_, &proof_->run});
}

void WindingWindow::showProgress(const replay::Progress& progress) {
    cut_->showProgress(progress);
    {
        const QSignalBlocker quiet(blocks_);
        blocks_->setCurrentRow(proof_->run.events[progress.event].line - 1);
    }
    QStringList words{tr("block %1 of %2").arg(progress.event + 1).arg(proof_->run.events.size())};
    const auto step = static_cast<std::size_t>(progress.step);
    if (step < proof_->expected.steps.size()) {
        const replay::DueStep& due = proof_->expected.steps[step];
        words << bench::translated(due.name);
        if (due.turns > 0) words << tr("%1 of %2 turns").arg(progress.turns, 0, 'f', 1).arg(due.turns, 0, 'f', 1);
    }
    if (std::isfinite(progress.guide.traverse))
        words << tr("guide at %1 mm").arg(1000 * progress.guide.traverse, 0, 'f', 2);
    words << tr("%1 from the beginning").arg(bench::translated(timeText(progress.seconds)));
    where_->setText(words.join(QStringLiteral(" · ")));
}

void WindingWindow::keyPressEvent(QKeyEvent* event) {
    if (!transport_->press(event->key())) QDialog::keyPressEvent(event);
}

bool WindingWindow::eventFilter(QObject* watched, QEvent* event) {
    if (watched != blocks_ || event->type() != QEvent::KeyPress) return QDialog::eventFilter(watched, event);
    return transport_->press(static_cast<QKeyEvent*>(event)->key());
}

}  // namespace winding
