// SPDX-License-Identifier: GPL-3.0-or-later
// Windows beside the bench: a pair, the kept revisions, designs sought, papers, the winding program.
#include <QFileDialog>

#include "bench/bench_window.h"
#include "bench/language.h"
#include "bench/paper_window.h"
#include "bench/respin_window.h"
#include "bench/revision_window.h"
#include "bench/seek_window.h"
#include "compare/pair_window.h"
#include "winding/winding_window.h"

namespace bench {

void BenchWindow::choosePair() {
    const QString path = QFileDialog::getOpenFileName(this, tr("Design to put beside this one"), folder(),
                                                      QStringLiteral("Coilwright (*.coilwright)"));
    if (!path.isEmpty()) showPair(path);
}

void BenchWindow::showPair(const QString& path) {
    QString note, digest;
    const design::DesignPtr other = read(path, note, digest);
    if (!other) return;
    showPair(other);
    if (!note.isEmpty()) say(note.trimmed());
}

void BenchWindow::showPair(const design::DesignPtr& other) {
    auto* pair = new compare::PairWindow(document_.design(), other, document_.shop(), this);
    pair->setAttribute(Qt::WA_DeleteOnClose);
    connect(&document_, &document::Document::changed, pair, [this, pair] { pair->setFirst(document_.design()); });
    connect(pair, &compare::PairWindow::portionAsked, this, [this, pair](const design::Portion& portion) {
        const QString words =
            tr("%1 of %2").arg(translated(portion.words()), QString::fromStdString(pair->second()->name));
        try {
            document_.replace(design::withPortion(*document_.design(), *pair->second(), portion), words);
            say(tr("Taken: %1. Undo takes it back.").arg(words));
        } catch (const units::BadInput& refused) {
            pair->say(tr("%1 was not taken: %2").arg(words, translated(refused.what())));
        }
    });
    pair->show();
}

void BenchWindow::showRevisions() {
    auto* revisions = new RevisionWindow(document_, this);
    revisions->setAttribute(Qt::WA_DeleteOnClose);
    connect(revisions, &RevisionWindow::besideAsked, this, [this](const design::DesignPtr& kept) { showPair(kept); });
    revisions->show();
}

void BenchWindow::showSeek() {
    auto* seek = new SeekWindow(document_, this);
    seek->setAttribute(Qt::WA_DeleteOnClose);
    connect(seek, &SeekWindow::besideAsked, this, [this](const design::DesignPtr& other) { showPair(other); });
    seek->show();
}

void BenchWindow::showRespin() {
    if (!answer_) return say(tr("The design's figures are not there yet."));
    auto* respin = new RespinWindow(document_, answer_, resources_, this);
    respin->setAttribute(Qt::WA_DeleteOnClose);
    connect(respin, &RespinWindow::besideAsked, this, [this](const design::DesignPtr& other) { showPair(other); });
    respin->show();
}

void BenchWindow::showWindingProgram() {
    auto* program = new winding::WindingWindow(document_, resources_, this);
    program->setAttribute(Qt::WA_DeleteOnClose);
    program->show();
}

void BenchWindow::showPapers() {
    auto* papers = new PaperWindow(
        document_, resources_, [this] { return question(*document_.design()); }, this);
    papers->setAttribute(Qt::WA_DeleteOnClose);
    papers->show();
}

}  // namespace bench
