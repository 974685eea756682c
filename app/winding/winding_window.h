// SPDX-License-Identifier: GPL-3.0-or-later
// The winding program of the open design: written, run block by block on a model of the machine, and proven.
#pragma once

#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <functional>
#include <memory>
#include <utility>

#include "bench/elided_label.h"
#include "document/document.h"
#include "exchange/winding_plan.h"
#include "winding/proof.h"
#include "winding/transport.h"
#include "winding/wound_cut.h"

namespace winding {

class WindingWindow : public QDialog {
    Q_OBJECT
public:
    /// `folders` may hold `winders`; the last that has a name rules.
    WindingWindow(document::Document& document, std::vector<std::string> folders, QWidget* parent);

    /// A program from a file instead of the design's own, run and compared; the sentence of a bad one is shown.
    void openProgram(const QString& path);
    /// The design's own program again.
    void writeAnew();
    [[nodiscard]] bool writeProgram(const QString& path);
    [[nodiscard]] bool writeTable(const QString& path);
    [[nodiscard]] const std::shared_ptr<const Proof>& proof() const { return proof_; }
    [[nodiscard]] Transport& transport() { return *transport_; }
    [[nodiscard]] QString message() const { return message_->text(); }

protected:
    void keyPressEvent(QKeyEvent* event) override;
    /// The list of blocks leaves the keys of stepping to the window.
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void build();
    QLayout* choices();
    QWidget* listing();
    QPushButton* button(const QString& text, const QString& tip, void (WindingWindow::*act)());
    void chooseProgramFile();
    void chooseTableFile();
    void chooseOpen();
    void showLegs();
    void take(const std::string& text, const std::string& file);
    void say(const QString& sentence);
    void showProof();
    void showProgress(const replay::Progress& progress);
    /// The machine and what it has to do for the chosen coil.
    [[nodiscard]] std::pair<exchange::Winder, exchange::WindingPlan> planned();
    [[nodiscard]] int leg() const { return std::max(1, leg_->currentData().toInt()); }
    /// Runs what may throw, and says its sentence.
    bool tried(const std::function<void()>& act);

    document::Document& document_;
    std::vector<std::string> folders_;
    std::string winderText_, winderFile_;
    QString opened_;  ///< the file that is shown; empty: the design's own program
    std::shared_ptr<const Proof> proof_;
    QComboBox *winder_ = nullptr, *leg_ = nullptr;
    QLabel *legName_ = nullptr, *caution_ = nullptr;
    QPushButton* own_ = nullptr;
    Transport* transport_ = nullptr;
    WoundCut* cut_ = nullptr;
    QListWidget *blocks_ = nullptr, *faults_ = nullptr;
    bench::ElidedLabel *verdict_ = nullptr, *where_ = nullptr, *message_ = nullptr;
    QLabel* run_ = nullptr;
};

}  // namespace winding
