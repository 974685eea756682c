// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/units_window.h"

#include <QFileDialog>
#include <QFileInfo>
#include <QVBoxLayout>

#include "bench/language.h"
#include "editors/labels.h"
#include "units/fault.h"

namespace bench {

namespace {

struct PlanOutcome {
    UnitPlanPtr plan;
    QString why;  ///< what was in the way
};

}  // namespace

UnitsWindow::UnitsWindow(document::Document& document, std::vector<std::string> folders, const QString& file,
                         QWidget* parent)
    : QDialog(parent), document_(document), aside_(this), file_(file) {
    setWindowTitle(tr("Built units of %1, revision %2")
                       .arg(editors::text(document_.design()->name), editors::text(document_.design()->revision)));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(12, 12, 12, 12);
    column->setSpacing(8);
    column->addLayout(head());
    pages_ = new QTabWidget;
    pages_->setDocumentMode(true);
    entry_ = new UnitEntry;
    list_ = new UnitList;
    pages_->addTab(entry_, tr("&Test"));
    pages_->addTab(list_, tr("Rec&ords"));
    column->addWidget(pages_, 1);
    state_ = new QLabel;
    state_->setObjectName(QStringLiteral("unitsState"));
    state_->setWordWrap(true);
    state_->setMinimumHeight(fontMetrics().height());
    column->addWidget(state_);
    for (QPushButton* button : findChildren<QPushButton*>()) button->setAutoDefault(false);
    connect(entry_, &UnitEntry::told, this, &UnitsWindow::say);
    connect(entry_, &UnitEntry::keepAsked, this, &UnitsWindow::keep);
    connect(list_, &UnitList::told, this, &UnitsWindow::say);
    connect(&aside_, &solver::Aside::failed, this, &UnitsWindow::say);
    connect(&document_, &document::Document::changed, this, [this] {
        say(tr(
            "The design was changed since: this plan is of the design before. Open the window anew for the new one."));
    });
    resize(1100, 720);
    list_->choosePart(editors::text(recordedPart(*document_.design())));
    showFile();
    list_->setFile(QFileInfo::exists(file_) ? file_ : QString());
    makePlan(std::move(folders));
}

QLayout* UnitsWindow::head() {
    auto* row = new QHBoxLayout;
    fileName_ = new ElidedLabel;
    choose_ = new QPushButton(tr("Choose a fil&e…"));
    choose_->setToolTip(
        tr("The shop's file of unit records, remembered; a name that is not there yet begins a new one"));
    row->addWidget(fileName_, 1);
    row->addWidget(choose_);
    connect(choose_, &QPushButton::clicked, this, &UnitsWindow::chooseFile);
    return row;
}

void UnitsWindow::makePlan(std::vector<std::string> folders) {
    say(tr("The test plan is being made…"));
    aside_.start(
        [design = document_.design(), shop = document_.shop(),
         folders = std::move(folders)](const std::stop_token&) -> std::any {
            try {
                return PlanOutcome{unitPlan(design, shop, folders), {}};
            } catch (const std::exception& failure) {
                return PlanOutcome{{}, translated(failure.what())};
            }
        },
        [this](const std::any& result) {
            const auto& made = std::any_cast<const PlanOutcome&>(result);
            // A disk that is not there must not become a second file unseen.
            const bool lost = !file_.isEmpty() && !QFileInfo::exists(file_);
            say(!made.why.isEmpty() ? made.why
                : lost ? tr("%1 is not there: the first record that is kept would begin it anew.").arg(file_)
                       : QString());
            if (!made.plan) return;
            entry_->show(made.plan);
            list_->setPlan(made.plan);
        });
}

void UnitsWindow::showFile() {
    fileName_->setText(file_.isEmpty() ? tr("No file of records is chosen yet.")
                                       : tr("Records in %1").arg(QFileInfo(file_).absoluteFilePath()));
}

void UnitsWindow::chooseFile() {
    const QString path =
        QFileDialog::getSaveFileName(this, tr("The shop's unit records"), file_, tr("Unit records (*.records)"),
                                     nullptr, QFileDialog::DontConfirmOverwrite);
    if (!path.isEmpty()) takeFile(path);
}

void UnitsWindow::takeFile(const QString& path) {
    try {
        if (QFileInfo::exists(path)) (void)records::Store(path.toStdString());  // is it one?
    } catch (const std::exception& failure) {
        return say(translated(failure.what()));
    }
    file_ = path;
    showFile();
    say(QFileInfo::exists(path) ? QString() : tr("The first record that is kept makes the file."));
    list_->setFile(QFileInfo::exists(path) ? path : QString());
    emit fileTaken(path);
}

void UnitsWindow::keep() {
    try {
        const auto unit = entry_->record();
        if (file_.isEmpty()) chooseFile();
        if (file_.isEmpty()) return say(tr("Not kept: no file of records is chosen."));
        records::Store store(file_.toStdString(), true);
        if (store.add({unit}).added == 0)
            return say(tr("Not kept: there is a record of that part, serial, stage and time already."));
        records::Filter same;
        same.part = unit.part;
        same.serial = unit.serial;
        same.stage = unit.stage;
        const auto visits = store.count(same).units;
        const bool more = entry_->moreToKeep();
        entry_->next();
        list_->setFile(file_);
        QString kept =
            tr("Kept: %1, %2, %3.").arg(editors::text(unit.serial), stageText(unit.stage), verdictText(unit.verdict));
        if (more) kept += QLatin1Char(' ') + tr("What was read of it at this stage is still to be kept.");
        say(visits > 1 ? kept + QLatin1Char(' ') +
                             tr("It is record number %1 of this serial at this stage; the earlier stay.").arg(visits)
                       : kept);
    } catch (const std::exception& failure) {
        say(translated(failure.what()));
    }
}

void UnitsWindow::say(const QString& sentence) {
    state_->setText(sentence);
}

}  // namespace bench
