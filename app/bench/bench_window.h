// SPDX-License-Identifier: GPL-3.0-or-later
// The main window: assembles the panes and hands designs and answers between
// them. It owns no physics.
#pragma once

#include <QComboBox>
#include <QLabel>
#include <QMainWindow>
#include <QPointer>
#include <QTimer>
#include <functional>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "bench/actions.h"
#include "bench/change_strip.h"
#include "bench/elided_label.h"
#include "bench/figures_table.h"
#include "bench/memory.h"
#include "bench/notice_bar.h"
#include "bench/promise_strip.h"
#include "bench/spread_study.h"
#include "design/enquiry.h"
#include "document/document.h"
#include "document/file_guard.h"
#include "document/journal.h"
#include "document/selection.h"
#include "plots/plot_grid.h"
#include "solver/aside.h"
#include "solver/latest_wins.h"

class QStackedWidget;
namespace analysis {
struct Lever;
}
namespace cut {
class CutView;
}
namespace editors {
class FormPane;
}

namespace bench {

class MeasuredWindow;

class BenchWindow : public QMainWindow {
    Q_OBJECT
public:
    /// `demos`: paths of designs offered under "New from demo". `resources`: folders of data that may hold `winders`,
    /// the shop's own last.
    BenchWindow(const std::shared_ptr<const catalog::Catalog>& shop, design::DesignPtr start,
                std::vector<std::string> demos, std::vector<std::string> resources = {});
    ~BenchWindow() override;

    /// Opens without asking. A file that cannot be read leaves the open design as
    /// it is and says why in the message line.
    bool openFile(const QString& path);
    bool newFrom(const QString& demo);
    /// A blank design of a kind of unit, drawn up aside; without asking.
    void newOf(const std::string& kind);
    bool saveTo(const QString& path);
    bool writeDatasheet(const QString& path);
    void say(const QString& sentence);
    /// The start page over the bench, until something is opened or Esc.
    void showStart();
    void showKeys();
    /// At a page, "index.md" unless told; it stays open beside the bench.
    void showHandbook(const QString& page = QStringLiteral("index.md"));
    /// From here on unsaved work is kept safe, files are locked and watched, and work that a killed window left is
    /// offered. Not for pictures, which must leave no trace.
    void guardWork();

    [[nodiscard]] document::Document& document() { return document_; }
    [[nodiscard]] document::Selection& selection() { return selection_; }
    [[nodiscard]] plots::PlotGrid& plotGrid() { return *plots_; }
    [[nodiscard]] FiguresTable& figures() { return *figures_; }
    [[nodiscard]] PromiseStrip& promises() { return *promises_; }
    [[nodiscard]] ChangeStrip& changes() { return *changes_; }
    [[nodiscard]] QComboBox& hookUps() { return *hookUps_; }
    [[nodiscard]] Actions& actions() { return *actions_; }
    [[nodiscard]] NoticeBar& notices() { return *notices_; }
    [[nodiscard]] document::Journal* journal() { return journal_.get(); }
    [[nodiscard]] const analysis::AnswerPtr& answer() const { return answer_; }
    [[nodiscard]] const QString& message() const { return message_->text(); }
    [[nodiscard]] bool computing() const { return solver_.busy(); }
    [[nodiscard]] bool ranking() const { return governing_.busy(); }
    [[nodiscard]] bool drawing() const { return drawing_.busy(); }
    [[nodiscard]] SpreadStudy& spreadStudy() { return *study_; }

protected:
    void closeEvent(QCloseEvent* event) override;
    bool event(QEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    void assemble();
    void assembleFoot();
    void buildHead();
    void connectActions();
    void connectDocument();
    void ask();
    [[nodiscard]] analysis::Question question(const design::Design& design) const;
    void showAnswer(const analysis::AnswerPtr& answer, const design::DesignPtr& design);
    void showState();
    void showHookUps();
    void showDemos();
    void showRecent();
    void point(const analysis::PromiseState& promise);
    void govern(const std::string& figure);
    void governMask(const analysis::PromiseState& promise);
    void rank(const QString& name, const QString& source, units::Kind kind, solver::Aside::Job job);
    void selectPart(const analysis::Lever& lever);
    void showBench();
    void askForNew();
    void drawUp();
    /// Draws up a first design aside and gives it to `take`; what is in the way is said.
    void drawUp(design::DesignPtr sketch, std::function<void(const design::DesignPtr&)> take);
    [[nodiscard]] std::map<std::string, design::Enquiry> kindsOfUnit();
    void showFaults();
    void chooseFile();
    bool save();
    bool saveAs();
    void choosePair();
    void chooseDatasheet();
    void wear(Look look);
    void showLanguages();
    void speak(const std::string& language);
    [[nodiscard]] bool mayLeave();
    [[nodiscard]] QString folder() const;
    /// Null if it cannot be read; the message line then says why. `note`: what the reader should know of the file.
    /// `digest`: of its bytes.
    design::DesignPtr read(const QString& path, QString& note, QString& digest);
    void hold(const QString& digest);
    void offer(const document::LeftWork& work);
    void recover(const document::LeftWork& work);
    void takeFromFile();
    [[nodiscard]] bool maySaveTo(const QString& path);
    void showPair(const QString& path);
    void showPair(const design::DesignPtr& other);
    void showRevisions();
    void showSeek();
    void showRespin();
    void showSpread();
    void connectStudy();
    /// Yields, bands and tips are what the study found.
    void takeSpread();
    void lookAtBands();
    void showUnits();
    void showWindingProgram();
    void showPapers();
    /// The window of measured curves; null where nothing is computed yet.
    MeasuredWindow* showMeasured();
    void layOver(const plots::OverlaysPtr& overlays);
    void tellOutside();

    document::Document document_;
    document::Selection selection_;
    solver::LatestWins solver_;
    solver::Aside governing_;  ///< ranks what governs a promise
    solver::Aside drawing_;    ///< draws up first designs
    std::vector<std::string> demos_, resources_;
    std::unique_ptr<SpreadStudy> study_;  ///< of a production of the open design
    Memory memory_;
    analysis::AnswerPtr answer_;
    std::string hookUp_;
    plots::OverlaysPtr overlays_;                 ///< measured curves over the plots; null: none
    QPointer<MeasuredWindow> measured_;           ///< null while it is closed
    std::unique_ptr<document::Journal> journal_;  ///< null: work is not guarded
    std::unique_ptr<document::FileGuard> guard_;  ///< null: work is not guarded

    Actions* actions_ = nullptr;
    cut::CutView* cut_ = nullptr;
    editors::FormPane* forms_ = nullptr;
    plots::PlotGrid* plots_ = nullptr;
    FiguresTable* figures_ = nullptr;
    PromiseStrip* promises_ = nullptr;
    ChangeStrip* changes_ = nullptr;
    NoticeBar* notices_ = nullptr;
    QComboBox* hookUps_ = nullptr;
    ElidedLabel* name_ = nullptr;
    ElidedLabel* lastAct_ = nullptr;
    ElidedLabel* message_ = nullptr;
    QLabel* busy_ = nullptr;
    QLabel* faulty_ = nullptr;
    QStackedWidget* pages_ = nullptr;
    QTimer busyWait_;
};

}  // namespace bench
