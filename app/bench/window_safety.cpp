// SPDX-License-Identifier: GPL-3.0-or-later
// What keeps work from being lost: recovery after a kill, a file open in two windows, a file changed from outside.
#include <QFileInfo>
#include <QLocale>

#include "bench/bench_window.h"
#include "bench/language.h"
#include "design/difference.h"
#include "exchange/design_json.h"

namespace bench {

namespace {

const QString outside = QStringLiteral("outside"), twice = QStringLiteral("twice");
constexpr int mostLines = 12;

/// Lines for a tip, cut where they get too many.
QString lines(const std::vector<std::string>& all) {
    QStringList some;
    for (const std::string& line : all) {
        if (some.size() == mostLines) {
            some << QStringLiteral("…");
            break;
        }
        some << translated(line);
    }
    return some.join(QLatin1Char('\n'));
}

}  // namespace

void BenchWindow::guardWork() {
    if (journal_) return;
    const std::vector<document::LeftWork> left = document::leftWork(document::recoveryFolder());
    guard_ = std::make_unique<document::FileGuard>();
    connect(guard_.get(), &document::FileGuard::changedOutside, this, &BenchWindow::tellOutside);
    journal_ = std::make_unique<document::Journal>(document_, document::recoveryFolder());
    connect(journal_.get(), &document::Journal::failed, this, &BenchWindow::say);
    for (const document::LeftWork& work : left) offer(work);
}

void BenchWindow::hold(const QString& digest) {
    notices_->drop(outside);
    notices_->drop(twice);
    if (!guard_) return;
    journal_->setBase(digest);
    if (!guard_->hold(document_.path(), digest)) {
        const QString file = QFileInfo(document_.path()).fileName();
        notices_->post({twice,
                        tr("%1 is open in another window, %2. It can be worked on here, and saved under another name.")
                            .arg(file, guard_->holder()),
                        {{tr("Save &as…"), tr("Save the design to another file"), [this] { saveAs(); }},
                         {tr("&Look on"), tr("Leave this notice"), {}}}});
    }
    showState();
}

void BenchWindow::offer(const document::LeftWork& work) {
    try {
        const auto kept = exchange::readDesign(work.text, work.file.toStdString(), *document_.shop()).design;
        QString tip = tr("It was in no file yet.");
        QString note, digest;
        if (!work.path.isEmpty()) {
            const auto inFile = QFileInfo::exists(work.path) ? read(work.path, note, digest) : nullptr;
            const auto differ = inFile ? design::differences(*inFile, *kept) : std::vector<std::string>{};
            if (inFile && differ.empty() && exchange::writeDesign(*inFile, *document_.shop()) == work.text)
                return document::giveUp(work);  // it was saved after all
            tip = inFile ? lines(differ) : tr("Its file %1 cannot be read any more.").arg(work.path);
            if (inFile && digest != work.base)
                tip.prepend(tr("The file was changed since. From the file to the work:") + QLatin1Char('\n'));
        }
        notices_->post({work.file,
                        tr("Work on %1 of %2 was not saved when its window ended.")
                            .arg(QString::fromStdString(kept->name),
                                 QLocale().toString(work.at.toLocalTime(), QLocale::ShortFormat)),
                        {{tr("&Take it up"), tip, [this, work] { recover(work); }},
                         {tr("&Later"), tr("It is offered again at the next start"), [work] { work.lock->unlock(); }},
                         {tr("&Give it up"), tr("The unsaved work is deleted"), [work] { document::giveUp(work); }}}});
    } catch (const std::exception& failure) {
        say(tr("Unsaved work could not be read: %1").arg(translated(failure.what())));
    }
}

void BenchWindow::recover(const document::LeftWork& work) {
    if (!mayLeave()) return offer(work);
    QString note, digest;
    const auto inFile = !work.path.isEmpty() && QFileInfo::exists(work.path) ? read(work.path, note, digest) : nullptr;
    const auto kept = exchange::readDesign(work.text, work.file.toStdString(), *document_.shop()).design;
    selection_.select({});
    document_.open(inFile ? inFile : kept, work.path);
    if (inFile)
        document_.replace(kept, tr("work taken up again"));
    else
        document_.setUnsaved();
    showBench();
    // The version that the work began from: a file that has moved on since is told before it is saved over.
    hold(work.base);
    if (guard_->changedNow()) tellOutside();
    journal_->flush();
    document::giveUp(work);
    say(tr("The unsaved work is here again; it is in no file yet."));
}

void BenchWindow::tellOutside() {
    const QString path = document_.path();
    notices_->post({outside,
                    tr("%1 was changed outside this window.").arg(QFileInfo(path).fileName()),
                    {{tr("&Take the file's"), tr("What stands in the file comes here; it can be undone"),
                      [this] { takeFromFile(); }},
                     {tr("Com&pare"), tr("The file beside what is open here"),
                      [this, path] {
                          tellOutside();
                          showPair(path);
                      }},
                     {tr("&Keep mine"), tr("Saving will put what is open here over what stands in the file"),
                      [this, path] { guard_->setKnown(document::FileGuard::digestOf(path)); }}}});
}

void BenchWindow::takeFromFile() {
    QString note, digest;
    const auto inFile = read(document_.path(), note, digest);
    if (!inFile) return;
    document_.adopt(inFile, tr("what stood in the file"));
    hold(digest);
    say(tr("What stands in the file is open; undo brings back what was open before.") + note);
}

bool BenchWindow::maySaveTo(const QString& path) {
    if (!guard_) return true;
    const QString file = QFileInfo(path).fileName();
    const bool own = !document_.path().isEmpty() &&
                     QFileInfo(path).absoluteFilePath() == QFileInfo(document_.path()).absoluteFilePath();
    const QString holder = own ? guard_->holder() : document::FileGuard::holderOf(path);
    if (!holder.isEmpty()) {
        say(tr("%1 was not saved: it is open in another window, %2; save it under another name.").arg(file, holder));
        return false;
    }
    if (own && guard_->changedNow()) {
        tellOutside();
        say(tr("%1 was not saved: it was changed outside this window. Say above what is to stand.").arg(file));
        return false;
    }
    return true;
}

}  // namespace bench
