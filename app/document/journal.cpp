// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/journal.h"

#include <QDir>
#include <QFile>
#include <QUuid>
#include <algorithm>

#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "exchange/write_file.h"
#include "json/text.h"

namespace document {

namespace {

constexpr int journalFormat = 1;

std::unique_ptr<QLockFile> journalLock(const QString& file) {
    auto lock = std::make_unique<QLockFile>(file + QStringLiteral(".lock"));
    lock->setStaleLockTime(0);  // it is free as soon as its process is gone
    return lock;
}

}  // namespace

QString stateFolder() {
    const QString given = qEnvironmentVariable("XDG_STATE_HOME");
    const QString base = QDir::isAbsolutePath(given) ? given : QDir::homePath() + QStringLiteral("/.local/state");
    return base + QStringLiteral("/coilwright");
}

QString recoveryFolder() {
    return stateFolder() + QStringLiteral("/recovery");
}

Journal::Journal(const Document& document, const QString& folder, QObject* parent)
    : QObject(parent),
      document_(document),
      file_(folder + QLatin1Char('/') + QUuid::createUuid().toString(QUuid::WithoutBraces) + QStringLiteral(".json")),
      lock_(journalLock(file_)) {
    QDir().mkpath(folder);
    lock_->tryLock(0);
    connect(&document_, &Document::stateChanged, this, &Journal::note);
    worker_ = std::jthread([this](const std::stop_token& stop) { work(stop); });
    note();
}

Journal::~Journal() {
    flush();
    worker_.request_stop();
    worker_.join();
    lock_->unlock();
}

void Journal::setBase(const QString& digest) {
    base_ = digest;
    noted_.reset();
    note();
}

void Journal::note() {
    const design::DesignPtr now = document_.modified() ? document_.design() : nullptr;
    if (now == noted_ && now) return;
    noted_ = now;
    {
        const std::lock_guard guard(mutex_);
        next_ = Entry{now, document_.path(), base_};
    }
    wake_.notify_one();
}

void Journal::flush() {
    std::unique_lock guard(mutex_);
    idle_.wait(guard, [this] { return !next_ && !writing_; });
}

void Journal::forget() {
    noted_.reset();
    {
        const std::lock_guard guard(mutex_);
        next_ = Entry{};
    }
    wake_.notify_one();
    flush();
}

void Journal::work(const std::stop_token& stop) {
    std::unique_lock guard(mutex_);
    while (wake_.wait(guard, stop, [this] { return next_.has_value(); })) {
        const Entry entry = *std::exchange(next_, {});
        writing_ = true;
        guard.unlock();
        put(entry);
        guard.lock();
        writing_ = false;
        idle_.notify_all();
    }
}

void Journal::put(const Entry& entry) {
    if (!entry.design) {
        QFile::remove(file_);
        return;
    }
    try {
        json::Value all;
        all["journal"] = journalFormat;
        all["path"] = entry.path.toStdString();
        all["base"] = entry.base.toStdString();
        all["at"] = QDateTime::currentDateTimeUtc().toString(Qt::ISODateWithMs).toStdString();
        all["design"] = exchange::writeDesign(*entry.design, *document_.shop());
        exchange::writeFile(file_.toStdString(), json::write(all));
        told_ = false;
    } catch (const std::exception& failure) {
        if (!std::exchange(told_, true))
            emit failed(tr("Unsaved work is not being kept safe. %1").arg(QString::fromUtf8(failure.what())));
    }
}

std::vector<LeftWork> leftWork(const QString& folder) {
    std::vector<LeftWork> all;
    for (const QString& name : QDir(folder).entryList({QStringLiteral("*.json")}, QDir::Files)) {
        LeftWork work;
        work.file = folder + QLatin1Char('/') + name;
        work.lock = journalLock(work.file);
        if (!work.lock->tryLock(0)) continue;  // the window that works on it is open
        try {
            const json::Value copy = json::read(exchange::readFile(work.file.toStdString()), work.file.toStdString());
            if (copy.at("journal").get<int>() != journalFormat) continue;
            work.path = QString::fromStdString(copy.at("path").get<std::string>());
            work.base = QString::fromStdString(copy.at("base").get<std::string>());
            work.at =
                QDateTime::fromString(QString::fromStdString(copy.at("at").get<std::string>()), Qt::ISODateWithMs);
            work.text = copy.at("design").get<std::string>();
        } catch (const std::exception&) {
            continue;
        }
        all.push_back(std::move(work));
    }
    std::sort(all.begin(), all.end(), [](const LeftWork& a, const LeftWork& b) { return a.at > b.at; });
    return all;
}

void giveUp(const LeftWork& work) {
    QFile::remove(work.file);
    if (work.lock) work.lock->unlock();
}

}  // namespace document
