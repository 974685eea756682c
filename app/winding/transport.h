// SPDX-License-Identifier: GPL-3.0-or-later
// Steps through a program's blocks, or lets it run faster than the machine.
#pragma once

#include <QComboBox>
#include <QElapsedTimer>
#include <QPushButton>
#include <QSlider>
#include <QTimer>
#include <QWidget>
#include <memory>

#include "replay/progress.h"

namespace winding {

class Transport : public QWidget {
    Q_OBJECT
public:
    explicit Transport(QWidget* parent = nullptr);
    /// From here on `run` is stepped through, from its first block. It must have blocks.
    void take(std::shared_ptr<const replay::Run> run);
    [[nodiscard]] const replay::Progress& progress() const { return progress_; }
    [[nodiscard]] bool playing() const { return clock_.isActive(); }
    void go(std::size_t event);
    /// Behind the block on this line of the program, or the next one that has a block.
    void goToLine(int line);
    /// What a key does, pressed anywhere in the window; false: nothing.
    bool press(int key);

signals:
    void moved(const replay::Progress& progress);

private:
    QPushButton* button(const QString& text, const QString& tip, void (Transport::*act)());
    void first() { go(0); }
    void back() { go(progress_.event == 0 ? 0 : progress_.event - 1); }
    void next() { go(progress_.event + 1); }
    void nextStep();
    void play();
    void halt();
    void tick();
    void tell();

    std::shared_ptr<const replay::Run> run_;
    replay::Progress progress_;
    QTimer clock_;
    QElapsedTimer sinceTick_;
    QPushButton* play_ = nullptr;
    QComboBox* pace_ = nullptr;
    QSlider* slider_ = nullptr;
};

}  // namespace winding
