// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/revision_window.h"

#include <QCoreApplication>
#include <QDate>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QVBoxLayout>

#include "bench/figure_words.h"
#include "bench/language.h"
#include "bench/named_field.h"
#include "compare/revision_words.h"
#include "exchange/revision_store.h"

namespace bench {

namespace {

QString todayText() {
    return QDate::currentDate().toString(Qt::ISODate);
}

QString program() {
    return QCoreApplication::applicationName() + QLatin1Char(' ') + QCoreApplication::applicationVersion();
}

}  // namespace

RevisionWindow::RevisionWindow(document::Document& document, QWidget* parent)
    : QDialog(parent), document_(document), aside_(this) {
    setWindowTitle(tr("Revisions of %1").arg(QString::fromStdString(document_.design()->name)));
    build();
    connect(&document_, &document::Document::stateChanged, this, &RevisionWindow::showEnabled);
    connect(&document_, &document::Document::opened, this, &RevisionWindow::showRegister);
    connect(&aside_, &solver::Aside::failed, words_, &QPlainTextEdit::setPlainText);
    resize(820, 520);
    showRegister();
}

void RevisionWindow::build() {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(12, 12, 12, 12);
    column->setSpacing(8);
    table_ = new QTableWidget(0, 6);
    table_->setHorizontalHeaderLabels(
        {tr("No."), tr("Revision"), tr("Kept on"), tr("State"), tr("Reason"), tr("Digest")});
    table_->setAccessibleName(tr("Kept revisions"));
    table_->setSelectionBehavior(QAbstractItemView::SelectRows);
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    table_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table_->setTabKeyNavigation(false);
    table_->verticalHeader()->hide();
    table_->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table_->horizontalHeader()->setSectionResizeMode(4, QHeaderView::Stretch);
    connect(table_, &QTableWidget::itemSelectionChanged, this, &RevisionWindow::showEnabled);
    column->addWidget(table_, 2);
    auto* row = new QHBoxLayout;
    takeUp_ = new QPushButton(tr("&Take it up"));
    takeUp_->setToolTip(
        tr("The revision comes to the bench as an undoable act; says whether its figures are as stored"));
    beside_ = new QPushButton(tr("Put &beside"));
    beside_->setToolTip(tr("The revision beside what is open"));
    check_ = new QPushButton(tr("Check &materials"));
    check_->setToolTip(tr("Before a repeat order: each material of the chosen revision, and what stands in for it"));
    for (QPushButton* button : {takeUp_, beside_, check_}) row->addWidget(button);
    row->addStretch(1);
    column->addLayout(row);
    column->addLayout(issuing());
    column->addLayout(keeping());
    words_ = readOnlyWords(tr("What came out"));
    column->addWidget(words_, 1);
    // Return in a line belongs to that line.
    for (QPushButton* button : findChildren<QPushButton*>()) button->setAutoDefault(false);
    connect(reason_, &QLineEdit::returnPressed, keep_, &QPushButton::click);
    connect(takeUp_, &QPushButton::clicked, this, &RevisionWindow::takeUp);
    connect(beside_, &QPushButton::clicked, this, &RevisionWindow::putBeside);
    connect(check_, &QPushButton::clicked, this, &RevisionWindow::checkMaterials);
}

QLayout* RevisionWindow::issuing() {
    auto* row = new QHBoxLayout;
    state_ = named(*row, tr("State"), new QComboBox, tr("A state only goes onward: draft, sample, released, retired"));
    for (const auto& [word, issue] : names(design::Issue{}))
        if (issue != design::Issue::Draft) state_->addItem(translated(word), static_cast<int>(issue));
    by_ = named(*row, tr("by"), new QLineEdit, tr("Who approves it; a release needs a name"));
    issue_ = new QPushButton(tr("&Set"));
    issue_->setToolTip(tr("Bring the chosen revision to this state"));
    row->addWidget(issue_);
    lot_ = named(*row, tr("First lot"), new QLineEdit, tr("The lot that was first wound of a released revision"));
    noteLot_ = new QPushButton(tr("&Note"));
    noteLot_->setToolTip(tr("Note the first lot of the chosen revision, once and for all"));
    row->addWidget(noteLot_);
    connect(issue_, &QPushButton::clicked, this, &RevisionWindow::issue);
    connect(noteLot_, &QPushButton::clicked, this, &RevisionWindow::noteLot);
    return row;
}

QLayout* RevisionWindow::keeping() {
    auto* row = new QHBoxLayout;
    reason_ = named(*row, tr("Reason"), new QLineEdit, tr("One sentence on why what is open is kept"));
    notice_ =
        named(*row, tr("Notice to the customer"), new QLineEdit, tr("Where a material was substituted; else nothing"));
    keep_ = new QPushButton(tr("&Keep what is open"));
    keep_->setToolTip(tr("The design as it stands on the bench, with its materials and figures, as a new revision"));
    row->addWidget(keep_);
    connect(reason_, &QLineEdit::textChanged, this, &RevisionWindow::showEnabled);
    connect(keep_, &QPushButton::clicked, this, &RevisionWindow::keep);
    return row;
}

template <class Act>
bool RevisionWindow::tried(const Act& act) {
    try {
        act();
        return true;
    } catch (const std::exception& failure) {
        words_->setPlainText(translated(failure.what()));
        return false;
    }
}

void RevisionWindow::showRegister() {
    all_ = {};
    const bool saved = !document_.path().isEmpty();
    if (saved) tried([this] { all_ = exchange::readRegister(path()); });
    const int before = chosen();
    table_->setRowCount(static_cast<int>(all_.revisions.size()));
    for (int k = 0; k < table_->rowCount(); ++k) {
        const design::Revision& r = all_.revisions[static_cast<std::size_t>(k)];
        QString state = translated(design::word(r.issue()));
        if (!r.steps.empty() && !r.steps.back().by.empty())
            state += tr(" by %1").arg(QString::fromStdString(r.steps.back().by));
        if (!r.firstLot.empty()) state += tr(", first lot %1").arg(QString::fromStdString(r.firstLot));
        const QStringList cells{QString::number(r.number),        QString::fromStdString(r.mark),
                                QString::fromStdString(r.date),   state,
                                QString::fromStdString(r.reason), QString::fromStdString(r.digest.substr(0, 12))};
        for (int c = 0; c < cells.size(); ++c) table_->setItem(k, c, new QTableWidgetItem(cells[c]));
    }
    if (table_->rowCount() > 0)
        table_->selectRow(before > 0 && before <= table_->rowCount() ? before - 1 : table_->rowCount() - 1);
    if (!saved) words_->setPlainText(tr("Revisions lie beside the design's file: save the design first."));
    showEnabled();
}

void RevisionWindow::showEnabled() {
    const bool saved = !document_.path().isEmpty(), one = chosen() > 0, idle = !aside_.busy();
    keep_->setEnabled(saved && idle && !reason_->text().trimmed().isEmpty());
    for (QPushButton* button : {takeUp_, beside_, check_, issue_, noteLot_}) button->setEnabled(one && idle);
}

int RevisionWindow::chosen() const {
    const QList<QTableWidgetItem*> items = table_->selectedItems();
    return items.isEmpty() ? 0 : items.front()->row() + 1;
}

void RevisionWindow::keep() {
    words_->setPlainText(tr("The figures of every hook-up are being computed."));
    aside_.start([design = document_.design(), shop = document_.shop()](
                     const std::stop_token& stop) -> std::any { return compare::everyFigure(*design, *shop, stop); },
                 [this, design = document_.design(), file = path()](const std::any& result) {
                     tried([&] {
                         exchange::keepRevision(file, *design, *document_.shop(),
                                                std::any_cast<const std::vector<units::Figure>&>(result),
                                                {todayText().toStdString(), reason_->text().toStdString(),
                                                 program().toStdString(), notice_->text().toStdString()});
                         reason_->clear();
                         notice_->clear();
                         words_->setPlainText(tr("The revision is kept."));
                     });
                     showRegister();
                 });
    showEnabled();
}

void RevisionWindow::issue() {
    tried([this] {
        const auto next = design::withStep(all_, chosen(),
                                           {static_cast<design::Issue>(state_->currentData().toInt()),
                                            todayText().toStdString(),
                                            by_->text().toStdString(),
                                            "",
                                            {}});
        exchange::writeRegister(path(), next);
        words_->setPlainText(tr("Revision %1 is now: %2.").arg(chosen()).arg(state_->currentText()));
        showRegister();
    });
}

void RevisionWindow::noteLot() {
    tried([this] {
        exchange::writeRegister(path(), design::withFirstLot(all_, chosen(), lot_->text().toStdString()));
        lot_->clear();
        showRegister();
    });
}

void RevisionWindow::takeUp() {
    tried([this] {
        const int number = chosen();
        const auto kept =
            std::make_shared<const exchange::KeptRevision>(exchange::openRevision(path(), number, *document_.shop()));
        document_.replace(kept->design, tr("revision %1 taken up").arg(number));
        words_->setPlainText(tr("Its figures are being computed again."));
        aside_.start(
            [kept, shop = document_.shop()](const std::stop_token& stop) -> std::any {
                return compare::reproductionWords(*kept, *shop, stop);
            },
            [this](const std::any& result) {
                words_->setPlainText(promiseText(std::any_cast<const std::string&>(result)));
                showEnabled();
            });
        showEnabled();
    });
}

void RevisionWindow::putBeside() {
    tried([this] { emit besideAsked(exchange::openRevision(path(), chosen(), *document_.shop()).design); });
}

void RevisionWindow::checkMaterials() {
    tried([this] {
        const auto kept = exchange::openRevision(path(), chosen(), *document_.shop()).design;
        words_->setPlainText(tr("Materials are being checked, and stand-ins solved."));
        aside_.start(
            [kept, shop = document_.shop()](const std::stop_token& stop) -> std::any {
                return compare::repeatOrderWords(*kept, *shop, stop);
            },
            [this](const std::any& result) {
                words_->setPlainText(promiseText(std::any_cast<const std::string&>(result)));
                showEnabled();
            });
        showEnabled();
    });
}

}  // namespace bench
