// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/file_guard.h"

#include <QFileInfo>

#include "exchange/read_file.h"
#include "json/digest.h"

namespace document {

namespace {

constexpr int calm = 150;  // ms: a program that saves touches the folder several times

std::unique_ptr<QLockFile> lockOf(const QString& path) {
    const QFileInfo file(path);
    auto lock = std::make_unique<QLockFile>(file.absolutePath() + QStringLiteral("/.") + file.fileName() +
                                            QStringLiteral(".lock"));
    lock->setStaleLockTime(0);  // free as soon as its process is gone, however long it lived
    return lock;
}

/// Who holds a lock that was not got; "" where the folder cannot be written, as then nobody can save there.
QString holderOfLock(const QLockFile& lock) {
    if (lock.error() != QLockFile::LockFailedError) return {};
    qint64 process = 0;
    QString machine, program;
    if (!lock.getLockInfo(&process, &machine, &program)) return FileGuard::tr("another window");
    return FileGuard::tr("process %1 on the machine %2").arg(process).arg(machine);
}

}  // namespace

FileGuard::FileGuard(QObject* parent) : QObject(parent) {
    wait_.setSingleShot(true);
    wait_.setInterval(calm);
    connect(&wait_, &QTimer::timeout, this, &FileGuard::look);
    // A file that is replaced by renaming is lost to the watcher; the folder tells of it.
    connect(&watcher_, &QFileSystemWatcher::fileChanged, &wait_, qOverload<>(&QTimer::start));
    connect(&watcher_, &QFileSystemWatcher::directoryChanged, &wait_, qOverload<>(&QTimer::start));
}

bool FileGuard::hold(const QString& path, const QString& digest) {
    const QString whole = path.isEmpty() ? QString() : QFileInfo(path).absoluteFilePath();
    if (whole != path_ || !mine()) {
        lock_.reset();
        holder_.clear();
        path_ = whole;
        if (!path_.isEmpty()) {
            lock_ = lockOf(path_);
            if (!lock_->tryLock(0)) holder_ = holderOfLock(*lock_);
        }
    }
    setKnown(digest);
    watch();
    return mine();
}

void FileGuard::setKnown(const QString& digest) {
    known_ = told_ = digest;
}

QString FileGuard::holderOf(const QString& path) {
    const auto lock = lockOf(path);
    return lock->tryLock(0) ? QString() : holderOfLock(*lock);
}

QString FileGuard::digestOf(const QString& path) {
    try {
        return QString::fromStdString(json::digest(exchange::readFile(path.toStdString())));
    } catch (const std::exception&) {
        return {};
    }
}

bool FileGuard::changedNow() const {
    if (path_.isEmpty() || known_.isEmpty()) return false;
    const QString now = digestOf(path_);
    return !now.isEmpty() && now != known_;
}

void FileGuard::watch() {
    if (const QStringList before = watcher_.files() + watcher_.directories(); !before.isEmpty())
        watcher_.removePaths(before);
    if (!path_.isEmpty()) watcher_.addPaths({path_, QFileInfo(path_).absolutePath()});
}

void FileGuard::look() {
    if (path_.isEmpty()) return;
    if (!watcher_.files().contains(path_) && QFileInfo::exists(path_)) watcher_.addPath(path_);
    const QString now = digestOf(path_);
    if (now.isEmpty() || now == told_) return;
    told_ = now;
    if (now != known_) emit changedOutside();
}

}  // namespace document
