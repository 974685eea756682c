// SPDX-License-Identifier: GPL-3.0-or-later
// A line above the bench that says what happened to a file and offers what can be done; nothing waits for it.
#pragma once

#include <QWidget>
#include <deque>
#include <functional>
#include <vector>

#include "bench/elided_label.h"

class QHBoxLayout;
class QPushButton;

namespace bench {

/// One notice: a sentence and the answers to it. An answer ends the notice.
struct Notice {
    struct Answer {
        QString text, tip;
        std::function<void()> act;  ///< empty: nothing but ends it
    };
    QString about;  ///< a later notice about the same thing takes its place
    QString sentence;
    std::vector<Answer> answers;
};

class NoticeBar : public QWidget {
    Q_OBJECT
public:
    explicit NoticeBar(QWidget* parent = nullptr);
    /// Shows it, after those that wait already.
    void post(Notice notice);
    /// Drops the notices about something that is settled otherwise.
    void drop(const QString& about);
    [[nodiscard]] QString sentence() const;
    [[nodiscard]] const std::vector<QPushButton*>& buttons() const { return buttons_; }

private:
    void showFirst();
    void answer(std::size_t which);

    std::deque<Notice> waiting_;
    ElidedLabel* words_ = nullptr;
    QHBoxLayout* row_ = nullptr;
    std::vector<QPushButton*> buttons_;
};

}  // namespace bench
