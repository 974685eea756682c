// SPDX-License-Identifier: GPL-3.0-or-later
#include "winding/transport.h"

#include <QHBoxLayout>
#include <QSignalBlocker>
#include <algorithm>
#include <array>

#include "winding/controls.h"

namespace winding {

namespace {
constexpr int frameTime = 40;  // ms between two pictures of a program that plays
}

Transport::Transport(QWidget* parent) : QWidget(parent) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(actButton(this, tr("&First"), tr("To the first block (Home)"), &Transport::first));
    row->addWidget(actButton(this, tr("Bac&k"), tr("One block back (←)"), &Transport::back));
    row->addWidget(actButton(this, tr("&Next"), tr("One block onward (→)"), &Transport::next));
    row->addWidget(actButton(this, tr("Next &step"), tr("To the next section, paper or shield (Page down)"),
                             &Transport::nextStep));
    play_ = actButton(this, tr("Pl&ay"), tr("Let the program run, or halt it (Space)"), &Transport::play);
    row->addWidget(play_);
    auto* paceName = new QLabel(tr("Pac&e"));
    pace_ = namedChoice(*paceName, tr("How much faster than the machine"));
    for (const int factor : {1, 10, 60, 300}) pace_->addItem(tr("%1 ×").arg(factor), factor);
    pace_->setCurrentIndex(2);
    row->addWidget(paceName);
    row->addWidget(pace_);
    slider_ = new QSlider(Qt::Horizontal);
    slider_->setAccessibleName(tr("Block"));
    slider_->setToolTip(tr("Through the program, a block a step"));
    connect(slider_, &QSlider::valueChanged, this, [this](int value) { go(static_cast<std::size_t>(value)); });
    row->addWidget(slider_, 1);
    clock_.setInterval(frameTime);
    connect(&clock_, &QTimer::timeout, this, &Transport::tick);
    setEnabled(false);
}

void Transport::take(std::shared_ptr<const replay::Run> run) {
    halt();
    run_ = std::move(run);
    setEnabled(true);
    const QSignalBlocker quiet(slider_);
    slider_->setRange(0, static_cast<int>(run_->events.size()) - 1);
    go(0);
}

void Transport::go(std::size_t event) {
    if (!run_) return;
    progress_ = replay::progressBehind(*run_, event);
    tell();
}

void Transport::goToLine(int line) {
    if (!run_) return;
    const auto at = std::lower_bound(run_->events.begin(), run_->events.end(), line,
                                     [](const replay::Event& event, int wanted) { return event.line < wanted; });
    go(static_cast<std::size_t>(at - run_->events.begin()));
}

void Transport::nextStep() {
    if (!run_) return;
    const auto& begins = run_->stepLines;
    for (std::size_t k = progress_.event + 1; k < run_->events.size(); ++k)
        if (std::binary_search(begins.begin(), begins.end(), run_->events[k].line)) return go(k);
    go(run_->events.size() - 1);
}

void Transport::play() {
    if (!run_) return;
    if (playing()) return halt();
    if (progress_.event + 1 >= run_->events.size()) go(0);
    sinceTick_.start();
    clock_.start();
    play_->setText(tr("H&alt"));
}

void Transport::halt() {
    clock_.stop();
    play_->setText(tr("Pl&ay"));
}

void Transport::tick() {
    const double passed = static_cast<double>(sinceTick_.restart()) / 1000 * pace_->currentData().toInt();
    progress_ = replay::progressAt(*run_, progress_.seconds + passed);
    tell();
    if (progress_.seconds >= run_->events.back().seconds) halt();
}

void Transport::tell() {
    const QSignalBlocker quiet(slider_);
    slider_->setValue(static_cast<int>(progress_.event));
    emit moved(progress_);
}

bool Transport::press(int key) {
    struct Press {
        int key;
        void (Transport::*act)();
    };
    static constexpr std::array<Press, 5> presses{{{Qt::Key_Left, &Transport::back},
                                                   {Qt::Key_Right, &Transport::next},
                                                   {Qt::Key_Home, &Transport::first},
                                                   {Qt::Key_PageDown, &Transport::nextStep},
                                                   {Qt::Key_Space, &Transport::play}}};
    const auto* at = std::find_if(presses.begin(), presses.end(), [key](const Press& one) { return one.key == key; });
    if (at == presses.end()) return false;
    (this->*at->act)();
    return true;
}

}  // namespace winding
