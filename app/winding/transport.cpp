// SPDX-License-Identifier: GPL-3.0-or-later
#include "winding/transport.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QSignalBlocker>
#include <algorithm>

namespace winding {

namespace {
constexpr int frameTime = 40;  // ms between two pictures of a program that plays
}

Transport::Transport(QWidget* parent) : QWidget(parent) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(button(tr("&First"), tr("To the first block (Home)"), &Transport::first));
    row->addWidget(button(tr("Bac&k"), tr("One block back (←)"), &Transport::back));
    row->addWidget(button(tr("&Next"), tr("One block onward (→)"), &Transport::next));
    row->addWidget(
        button(tr("Next &step"), tr("To the next section, paper or shield (Page down)"), &Transport::nextStep));
    play_ = button(tr("Pl&ay"), tr("Let the program run, or halt it (Space)"), &Transport::play);
    row->addWidget(play_);
    auto* paceName = new QLabel(tr("Pac&e"));
    pace_ = new QComboBox;
    pace_->setAccessibleName(tr("Pace"));
    pace_->setToolTip(tr("How much faster than the machine"));
    pace_->setFocusPolicy(Qt::StrongFocus);
    paceName->setBuddy(pace_);
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

QPushButton* Transport::button(const QString& text, const QString& tip, void (Transport::*act)()) {
    auto* made = new QPushButton(text);
    made->setToolTip(tip);
    made->setAutoDefault(false);
    connect(made, &QPushButton::clicked, this, act);
    return made;
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
    switch (key) {
        case Qt::Key_Left:
            back();
            return true;
        case Qt::Key_Right:
            next();
            return true;
        case Qt::Key_Home:
            first();
            return true;
        case Qt::Key_PageDown:
            nextStep();
            return true;
        case Qt::Key_Space:
            play();
            return true;
        default:
            return false;
    }
}

}  // namespace winding
