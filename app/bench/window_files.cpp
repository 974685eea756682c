// SPDX-License-Identifier: GPL-3.0-or-later
// The window's acts on files: new, open, save, papers, pair.
#include <QCoreApplication>
#include <QFileDialog>
#include <QFileInfo>
#include <QMessageBox>

#include "bench/bench_window.h"
#include "bench/language.h"
#include "cut/cut_view.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "json/digest.h"
#include "papers/datasheet.h"
#include "units/fault.h"

namespace bench {

namespace {

const QString designFiles = QStringLiteral("Coilwright (*.coilwright)");

QString words(const std::exception& failure) {
    QString sentence = translated(failure.what());
    if (const auto* bad = dynamic_cast<const units::BadInput*>(&failure); bad && bad->faults.size() > 1)
        sentence += QCoreApplication::translate("bench", " (and %1 more)").arg(bad->faults.size() - 1);
    return sentence;
}

}  // namespace

void BenchWindow::connectActions() {
    const Actions& act = *actions_;
    connect(&act[Act::Start], &QAction::triggered, this, &BenchWindow::showStart);
    connect(&act[Act::New], &QAction::triggered, this, &BenchWindow::askForNew);
    connect(&act[Act::DrawUp], &QAction::triggered, this, qOverload<>(&BenchWindow::drawUp));
    connect(&act[Act::Seek], &QAction::triggered, this, &BenchWindow::showSeek);
    connect(&act[Act::Respin], &QAction::triggered, this, &BenchWindow::showRespin);
    connect(&drawing_, &solver::Aside::failed, this, &BenchWindow::say);
    connect(&act[Act::Handbook], &QAction::triggered, this, [this] { showHandbook(); });
    connect(&act[Act::Keys], &QAction::triggered, this, &BenchWindow::showKeys);
    connect(&act[Act::Open], &QAction::triggered, this, &BenchWindow::chooseFile);
    connect(&act[Act::Save], &QAction::triggered, this, &BenchWindow::save);
    connect(&act[Act::SaveAs], &QAction::triggered, this, &BenchWindow::saveAs);
    connect(&act[Act::Revisions], &QAction::triggered, this, &BenchWindow::showRevisions);
    connect(&act[Act::Quit], &QAction::triggered, this, &QWidget::close);
    connect(&act[Act::Undo], &QAction::triggered, this, [this] { document_.undo(); });
    connect(&act[Act::Redo], &QAction::triggered, this, [this] { document_.redo(); });
    connect(&act[Act::Hold], &QAction::toggled, this, [this](bool on) { plots_->setHolding(on); });
    connect(&act[Act::MorePlots], &QAction::triggered, this, [this] { plots_->change(1); });
    connect(&act[Act::FewerPlots], &QAction::triggered, this, [this] { plots_->change(-1); });
    plots_->arrange(memory_.plots);
    connect(plots_, &plots::PlotGrid::arranged, this, [this] {
        memory_.plots = plots_->arrangement();
        keep(memory_);
        lookAtBands();
    });
    connect(&act[Act::Pair], &QAction::triggered, this, &BenchWindow::choosePair);
    connect(&act[Act::Spread], &QAction::triggered, this, &BenchWindow::showSpread);
    connect(&act[Act::Measured], &QAction::triggered, this, &BenchWindow::showMeasured);
    connect(&act[Act::Units], &QAction::triggered, this, &BenchWindow::showUnits);
    connect(&act[Act::Datasheet], &QAction::triggered, this, &BenchWindow::chooseDatasheet);
    connect(&act[Act::Papers], &QAction::triggered, this, &BenchWindow::showPapers);
    connect(&act[Act::WindingProgram], &QAction::triggered, this, &BenchWindow::showWindingProgram);
    connect(&act[Act::AmpereTurns], &QAction::toggled, this, [this](bool on) {
        memory_.ampereTurns = on;
        cut_->showAmpereTurns(on);
    });
    connect(&act[Act::LayerVolts], &QAction::toggled, this, [this](bool on) {
        memory_.layerVolts = on;
        cut_->showLayerVolts(on);
    });
    connect(&act[Act::Inch], &QAction::toggled, this, [this](bool on) {
        memory_.inch = on;
        cut_->showInch(on);
    });
    act[Act::Inch].setChecked(memory_.inch);
    act[Act::AmpereTurns].setChecked(memory_.ampereTurns);
    act[Act::LayerVolts].setChecked(memory_.layerVolts);
    connect(&act[Act::LookDesktop], &QAction::triggered, this, [this] { wear(Look::Desktop); });
    connect(&act[Act::LookLight], &QAction::triggered, this, [this] { wear(Look::Light); });
    connect(&act[Act::LookDark], &QAction::triggered, this, [this] { wear(Look::Dark); });
}

void BenchWindow::showDemos() {
    QMenu& menu = actions_->newMenu();
    for (const std::string& path : demos_) {
        const QString file = QString::fromStdString(path);
        QString label = QFileInfo(file).completeBaseName();
        label.replace(QLatin1Char('-'), QLatin1Char(' '));
        connect(menu.addAction(label), &QAction::triggered, this, [this, file] {
            if (mayLeave()) newFrom(file);
        });
    }
    menu.setEnabled(!demos_.empty());
}

void BenchWindow::showRecent() {
    QMenu& menu = actions_->recentMenu();
    menu.clear();
    for (const QString& path : memory_.recent)
        connect(menu.addAction(path), &QAction::triggered, this, [this, path] {
            if (mayLeave()) openFile(path);
        });
    menu.setEnabled(!memory_.recent.isEmpty());
}

design::DesignPtr BenchWindow::read(const QString& path, QString& note, QString& digest) {
    try {
        const std::string file = path.toStdString();
        const std::string text = exchange::readFile(file);
        exchange::Opened opened = exchange::readDesign(text, file, *document_.shop());
        digest = QString::fromStdString(json::digest(text));
        for (const std::string& one : opened.notes) note += QLatin1Char(' ') + QString::fromStdString(one);
        return opened.design;
    } catch (const std::exception& failure) {
        say(words(failure));
        return nullptr;
    }
}

bool BenchWindow::openFile(const QString& path) {
    QString note, digest;
    design::DesignPtr opened = read(path, note, digest);
    if (!opened) return false;
    selection_.select({});
    document_.open(std::move(opened), QFileInfo(path).absoluteFilePath());
    showBench();
    hold(digest);
    remember(memory_, path);
    keep(memory_);
    showRecent();
    say(tr("%1 is open.").arg(QFileInfo(path).fileName()) + note);
    return true;
}

bool BenchWindow::newFrom(const QString& demo) {
    QString note, digest;
    design::DesignPtr opened = read(demo, note, digest);
    if (!opened) return false;
    selection_.select({});
    document_.open(std::move(opened), {});
    showBench();
    hold({});
    say(tr("A new design from the demo %1; it has no file yet.").arg(QFileInfo(demo).completeBaseName()) + note);
    return true;
}

bool BenchWindow::saveTo(const QString& path) {
    if (!maySaveTo(path)) return false;
    try {
        document_.save(path);
    } catch (const std::exception& failure) {
        say(words(failure));
        return false;
    }
    hold(document::FileGuard::digestOf(path));
    remember(memory_, path);
    keep(memory_);
    showRecent();
    say(tr("%1 is saved.").arg(QFileInfo(path).fileName()));
    return true;
}

bool BenchWindow::save() {
    return document_.path().isEmpty() ? saveAs() : saveTo(document_.path());
}

QString BenchWindow::folder() const {
    if (!document_.path().isEmpty()) return QFileInfo(document_.path()).path();
    return memory_.recent.isEmpty() ? QString() : QFileInfo(memory_.recent.front()).path();
}

bool BenchWindow::saveAs() {
    QFileDialog dialog(this, tr("Save design"), folder(), designFiles);
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setDefaultSuffix(QStringLiteral("coilwright"));
    dialog.selectFile(QString::fromStdString(document_.design()->name) + QStringLiteral(".coilwright"));
    return dialog.exec() == QDialog::Accepted && saveTo(dialog.selectedFiles().constFirst());
}

void BenchWindow::chooseFile() {
    const QString path = QFileDialog::getOpenFileName(this, tr("Open design"), folder(), designFiles);
    if (!path.isEmpty() && mayLeave()) openFile(path);
}

bool BenchWindow::writeDatasheet(const QString& path) {
    // The paper is of the committed design; what is being tried out, or still being computed, is not printed.
    const design::DesignPtr design = document_.design();
    try {
        const auto answer = analysis::answer(*design, *document_.shop(), answer_, {}, question(*design));
        papers::writeDatasheet(*design, *answer, *document_.shop(), path.toStdString());
    } catch (const std::exception& failure) {
        say(words(failure));
        return false;
    }
    say(tr("The datasheet %1 is written.").arg(QFileInfo(path).fileName()));
    return true;
}

void BenchWindow::chooseDatasheet() {
    const QString path = QFileDialog::getSaveFileName(
        this, tr("Write datasheet"),
        folder() + QLatin1Char('/') + QString::fromStdString(document_.design()->name) + QStringLiteral(".pdf"),
        QStringLiteral("PDF (*.pdf)"));
    if (!path.isEmpty()) writeDatasheet(path);
}

bool BenchWindow::mayLeave() {
    if (!document_.modified()) return true;
    QMessageBox question(
        QMessageBox::Question, tr("Unsaved changes"),
        tr("%1 has changes that are in no file.").arg(QString::fromStdString(document_.design()->name)),
        QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, this);
    question.setDefaultButton(QMessageBox::Save);
    switch (question.exec()) {
        case QMessageBox::Save:
            return save();
        case QMessageBox::Discard:
            return true;
        default:
            return false;
    }
}

}  // namespace bench
