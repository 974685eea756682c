// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/notice_bar.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <algorithm>

namespace bench {

NoticeBar::NoticeBar(QWidget* parent) : QWidget(parent), words_(new ElidedLabel(this)), row_(new QHBoxLayout(this)) {
    row_->setContentsMargins(8, 4, 8, 4);
    row_->setSpacing(8);
    row_->addWidget(words_, 1);
    setAccessibleName(tr("Notice"));
    hide();
}

QString NoticeBar::sentence() const {
    return waiting_.empty() ? QString() : waiting_.front().sentence;
}

void NoticeBar::post(Notice notice) {
    const auto same =
        std::find_if(waiting_.begin(), waiting_.end(), [&](const Notice& n) { return n.about == notice.about; });
    if (same != waiting_.end())
        *same = std::move(notice);
    else
        waiting_.push_back(std::move(notice));
    showFirst();
}

void NoticeBar::drop(const QString& about) {
    std::erase_if(waiting_, [&](const Notice& n) { return n.about == about; });
    showFirst();
}

void NoticeBar::showFirst() {
    for (QPushButton* button : buttons_) {
        row_->removeWidget(button);
        button->hide();
        button->deleteLater();  // it may be what is calling
    }
    buttons_.clear();
    setVisible(!waiting_.empty());
    if (waiting_.empty()) return;
    const Notice& notice = waiting_.front();
    words_->setText(notice.sentence);
    setAccessibleDescription(notice.sentence);
    buttons_.reserve(notice.answers.size());
    for (std::size_t k = 0; k < notice.answers.size(); ++k) {
        auto* button = new QPushButton(notice.answers[k].text, this);
        button->setToolTip(notice.answers[k].tip);
        connect(button, &QPushButton::clicked, this, [this, k] { answer(k); });
        row_->addWidget(button);
        buttons_.push_back(button);
    }
}

void NoticeBar::answer(std::size_t which) {
    const std::function<void()> act = waiting_.front().answers[which].act;
    waiting_.pop_front();
    showFirst();
    if (act) act();
}

}  // namespace bench
