// SPDX-License-Identifier: GPL-3.0-or-later
// What keeps unsaved work safe from a kill or a power cut: after every edit the newest design goes to a file of its own
// under the state folder, written in another thread.
#pragma once

#include <QDateTime>
#include <QLockFile>
#include <QObject>
#include <QString>
#include <condition_variable>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

#include "document/document.h"

namespace document {

/// Writes the newest design of a document while it is in no file, and takes the copy away when it is saved, undone back
/// to the file, or given up. An edit is on the disk as soon as the write before it has ended: some milliseconds.
class Journal : public QObject {
    Q_OBJECT
public:
    /// `folder` is made. A folder that cannot be written is told by `failed`, once; the work goes on.
    Journal(const Document& document, const QString& folder, QObject* parent = nullptr);
    /// Waits for the last write; the copy stays if the work is in no file.
    ~Journal() override;

    /// The bytes of the document's file have this digest: which version the work began from.
    void setBase(const QString& digest);
    /// Waits until everything noted is on the disk.
    void flush();
    /// The work was given up or saved: no copy stays.
    void forget();
    [[nodiscard]] const QString& file() const { return file_; }

signals:
    void failed(const QString& sentence);

private:
    struct Entry {
        design::DesignPtr design;  ///< null: take the copy away
        QString path, base;
    };
    void note();
    void work(const std::stop_token& stop);
    void put(const Entry& entry);

    const Document& document_;
    QString file_, base_;
    std::unique_ptr<QLockFile>
        lock_;  ///< held while this process lives: tells work that was left from work that goes on
    design::DesignPtr noted_;
    bool told_ = false;
    std::mutex mutex_;
    std::condition_variable_any wake_, idle_;
    std::optional<Entry> next_;
    bool writing_ = false;
    std::jthread worker_;  ///< last: it uses the others
};

/// Work that a window left when it was killed. Holds it, so that no other window offers it too.
struct LeftWork {
    QString file;      ///< the copy
    QString path;      ///< of the design's own file; "" none
    QString base;      ///< digest of that file when the work began
    QDateTime at;      ///< of the last edit that was kept
    std::string text;  ///< the design as a design file
    std::shared_ptr<QLockFile> lock;
};

/// All work left in `folder`, newest first. A copy that cannot be read stays where it is and is left out.
[[nodiscard]] std::vector<LeftWork> leftWork(const QString& folder);
/// Takes the copy away for good.
void giveUp(const LeftWork& work);

/// "coilwright" under XDG_STATE_HOME (relative values are ignored, as the specification asks), else ~/.local/state.
[[nodiscard]] QString stateFolder();
/// Where copies of unsaved work lie: "recovery" in the state folder.
[[nodiscard]] QString recoveryFolder();

}  // namespace document
