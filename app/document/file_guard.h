// SPDX-License-Identifier: GPL-3.0-or-later
// Guards the open design's file: against a second window that would save over it, and against changes from outside that
// go unseen.
#pragma once

#include <QFileSystemWatcher>
#include <QLockFile>
#include <QObject>
#include <QString>
#include <QTimer>
#include <memory>

namespace document {

class FileGuard : public QObject {
    Q_OBJECT
public:
    explicit FileGuard(QObject* parent = nullptr);

    /// Takes hold of `path`, whose bytes have `digest`, and lets go of the file before; "" holds none. False if another
    /// window has it; `holder` then says which.
    bool hold(const QString& path, const QString& digest);
    /// The file's bytes are ours again: saved, or the difference was seen and accepted.
    void setKnown(const QString& digest);
    /// False: another window has the file, so it is not to be saved over here.
    [[nodiscard]] bool mine() const { return holder_.isEmpty(); }
    /// "process 4711 on the machine winding-2"; "" if the file is ours.
    [[nodiscard]] const QString& holder() const { return holder_; }
    /// Whether another window has `path`, in words; "" if none. For saving under another name.
    [[nodiscard]] static QString holderOf(const QString& path);
    /// Whether the bytes are other ones than those known. A file that is gone is no change that could be lost.
    [[nodiscard]] bool changedNow() const;
    /// Digest of a file's bytes; "" if it cannot be read.
    [[nodiscard]] static QString digestOf(const QString& path);

signals:
    void changedOutside();  ///< once a change

private:
    void look();
    void watch();

    QString path_, known_, told_, holder_;
    std::unique_ptr<QLockFile> lock_;
    QFileSystemWatcher watcher_;
    QTimer wait_;
};

}  // namespace document
