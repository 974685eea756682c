// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/bench_window.h"

#include <QCloseEvent>
#include <QSplitter>
#include <QStackedWidget>
#include <QStatusBar>
#include <QToolBar>
#include <QVBoxLayout>

#include "bench/measured_window.h"
#include "bench/undo_keys.h"
#include "cut/cut_view.h"
#include "cut/order_strip.h"
#include "editors/form_pane.h"

namespace bench {

BenchWindow::BenchWindow(const std::shared_ptr<const catalog::Catalog>& shop, design::DesignPtr start,
                         std::vector<std::string> demos, std::vector<std::string> resources)
    : document_(shop, std::move(start)),
      solver_(shop),
      demos_(std::move(demos)),
      resources_(std::move(resources)),
      study_(std::make_unique<SpreadStudy>(document_, resources_)),
      memory_(recalled()) {
    setAcceptDrops(true);
    new UndoKeys(this);
    actions_ = new Actions(*menuBar(), this);
    assemble();
    buildHead();
    connectActions();
    connectDocument();
    connectStudy();
    showDemos();
    showRecent();
    showLanguages();
    showHookUps();
    showState();
    wear(memory_.look);
    resize(1280, 800);
    if (!memory_.geometry.isEmpty()) restoreGeometry(memory_.geometry);
    ask();
}

BenchWindow::~BenchWindow() {
    // A field that loses the focus puts its text into the document, which must still be there.
    hide();
    guard_.reset();
    delete takeCentralWidget();
}

void BenchWindow::assemble() {
    auto* across = new QSplitter(Qt::Horizontal);
    auto* left = new QSplitter(Qt::Vertical);
    cut_ = new cut::CutView(document_, selection_, left);
    left->addWidget(cut_);
    auto* lower = new QWidget;
    auto* column = new QVBoxLayout(lower);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    auto* strip = new cut::OrderStrip(document_, selection_, lower);
    column->addWidget(strip);
    forms_ = new editors::FormPane(document_, selection_, lower);
    column->addWidget(forms_, 1);
    connect(cut_, &cut::CutView::message, this, &BenchWindow::say);
    connect(strip, &cut::OrderStrip::message, this, &BenchWindow::say);
    const auto toForm = [this] { forms_->setFocus(Qt::ShortcutFocusReason); };
    connect(cut_, &cut::CutView::formRequested, this, toForm);
    connect(strip, &cut::OrderStrip::formRequested, this, toForm);
    left->addWidget(lower);
    left->setStretchFactor(0, 3);
    left->setStretchFactor(1, 2);
    left->setSizes({360, 260});

    auto* right = new QSplitter(Qt::Vertical);
    plots_ = new plots::PlotGrid(right);
    right->addWidget(plots_);
    auto* results = new QSplitter(Qt::Horizontal);
    promises_ = new PromiseStrip(results);
    figures_ = new FiguresTable(results);
    results->addWidget(promises_);
    results->addWidget(figures_);
    results->setSizes({420, 380});
    right->addWidget(results);
    right->setStretchFactor(0, 4);
    right->setStretchFactor(1, 1);
    right->setSizes({500, 170});

    across->addWidget(left);
    across->addWidget(right);
    across->setStretchFactor(0, 2);
    across->setStretchFactor(1, 3);
    across->setSizes({480, 800});
    for (QSplitter* splitter : {across, left, right, results}) splitter->setChildrenCollapsible(false);
    auto* whole = new QWidget;
    auto* rows = new QVBoxLayout(whole);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(0);
    changes_ = new ChangeStrip(document_, whole);
    notices_ = new NoticeBar(whole);
    rows->addWidget(notices_);
    rows->addWidget(across, 1);
    rows->addWidget(changes_);
    pages_ = new QStackedWidget;
    pages_->addWidget(whole);
    setCentralWidget(pages_);
    assembleFoot();
}

void BenchWindow::assembleFoot() {
    message_ = new ElidedLabel;
    message_->setContentsMargins(8, 0, 8, 0);
    statusBar()->addWidget(message_, 1);
    faulty_ = new QLabel;
    faulty_->setVisible(false);
    statusBar()->addPermanentWidget(faulty_);
    busy_ = new QLabel(tr("computing…"));
    busy_->setVisible(false);
    statusBar()->addPermanentWidget(busy_);
    busyWait_.setSingleShot(true);
    busyWait_.setInterval(300);  // shorter work is seen in the plots themselves
    connect(&busyWait_, &QTimer::timeout, busy_, &QWidget::show);
    statusBar()->setSizeGripEnabled(false);
}

void BenchWindow::buildHead() {
    QToolBar* head = addToolBar(tr("Head"));
    head->setMovable(false);
    head->setToolButtonStyle(Qt::ToolButtonTextOnly);
    name_ = new ElidedLabel;
    QFont strong = font();
    strong.setWeight(QFont::DemiBold);
    if (strong.pointSizeF() > 0) strong.setPointSizeF(strong.pointSizeF() + 2);
    name_->setFont(strong);
    name_->setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Fixed);
    lastAct_ = new ElidedLabel;
    lastAct_->setColourRole(QPalette::PlaceholderText);
    lastAct_->setContentsMargins(12, 0, 0, 0);
    head->addWidget(name_);
    head->addWidget(lastAct_);
    hookUps_ = new QComboBox;
    hookUps_->setAccessibleName(tr("Hook-up"));
    hookUps_->setToolTip(tr("How the unit is connected: curves and plots are of this hook-up"));
    hookUps_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    head->addWidget(hookUps_);
    for (const Act act : {Act::Undo, Act::Redo, Act::Hold, Act::Pair, Act::Datasheet})
        head->addAction(&(*actions_)[act]);
}

void BenchWindow::connectDocument() {
    connect(&document_, &document::Document::shownChanged, this, &BenchWindow::ask);
    connect(&document_, &document::Document::opened, this, [this] {
        if (measured_) measured_->close();
        layOver(nullptr);  // what was measured was another unit
    });
    connect(&document_, &document::Document::changed, this, &BenchWindow::showHookUps);
    connect(&document_, &document::Document::changed, this, [this] { say({}); });  // what was said of an act before
    connect(&document_, &document::Document::stateChanged, this, &BenchWindow::showState);
    connect(&solver_, &solver::LatestWins::answered, this, &BenchWindow::showAnswer);
    connect(&solver_, &solver::LatestWins::failed, this, &BenchWindow::say);
    connect(&solver_, &solver::LatestWins::busyChanged, this, [this](bool busy) {
        if (busy) return busyWait_.start();
        busyWait_.stop();
        busy_->hide();
    });
    connect(&document_, &document::Document::shownChanged, this, [this] { governing_.stop(); });
    connect(&governing_, &solver::Aside::failed, this, &BenchWindow::say);
    connect(forms_, &editors::FormPane::faultsChanged, this, &BenchWindow::showFaults);
    connect(plots_, &plots::PlotGrid::said, this, &BenchWindow::say);
    connect(promises_, &PromiseStrip::pointed, this, &BenchWindow::point);
    connect(hookUps_, &QComboBox::activated, this, [this](int index) {
        hookUp_ = hookUps_->itemText(index).toStdString();
        ask();
        lookAtBands();
    });
}

analysis::Question BenchWindow::question(const design::Design& design) const {
    analysis::Question question;
    if (design::hookUp(design, hookUp_)) question.hookUp = hookUp_;
    return question;
}

void BenchWindow::ask() {
    auto first = question(*document_.shown());
    first.quick = true;
    solver_.ask(document_.shown(), first);
}

void BenchWindow::showAnswer(const analysis::AnswerPtr& answer, const design::DesignPtr& design) {
    answer_ = answer;
    plots_->showAnswer(answer, document_.shown());
    promises_->showAnswer(answer);
    figures_->showAnswer(answer);
    cut_->showAnswer(answer);
    forms_->showAnswer(answer);
    changes_->showAnswer(answer, design);
    if (measured_) measured_->showDistances();
    // The edit's curves stand; now what waited for them.
    if (!answer->carried || solver_.busy()) return;
    auto next = question(*design);
    if (answer->loop != analysis::LoopKind::Static) {
        next.quick = true;
        next.loop = analysis::LoopKind::Static;
    }
    solver_.ask(design, next);
}

void BenchWindow::showState() {
    const design::Design& design = *document_.design();
    const QString name = QString::fromStdString(design.name);
    const QString revision = tr("revision %1").arg(QString::fromStdString(design.revision));
    setWindowTitle(name + QStringLiteral(" · ") + revision + (document_.modified() ? tr(" · modified") : QString()) +
                   (guard_ && !guard_->mine() ? tr(" · read only") : QString()) +
                   (forms_->wrongTexts().count() > 0 ? tr(" · a field is wrong") : QString()) +
                   QStringLiteral(" – Coilwright"));
    name_->setText(name + QStringLiteral(" · ") + revision);
    lastAct_->setText(document_.canUndo() ? document_.undoText() : QString());
    QAction& undo = (*actions_)[Act::Undo];
    QAction& redo = (*actions_)[Act::Redo];
    undo.setEnabled(document_.canUndo());
    redo.setEnabled(document_.canRedo());
    undo.setText(document_.canUndo() ? tr("&Undo: %1").arg(document_.undoText()) : tr("&Undo"));
    redo.setText(document_.canRedo() ? tr("&Redo: %1").arg(document_.redoText()) : tr("&Redo"));
    undo.setIconText(tr("Undo"));
    redo.setIconText(tr("Redo"));
}

void BenchWindow::showHookUps() {
    const design::Design& design = *document_.design();
    QStringList names;
    for (const design::HookUp& h : design.hookUps) names << QString::fromStdString(h.name);
    QStringList before;
    for (int i = 0; i < hookUps_->count(); ++i) before << hookUps_->itemText(i);
    // The hook-up that is shown was renamed: it is shown still.
    const qsizetype was = before.indexOf(QString::fromStdString(hookUp_));
    if (was >= 0 && names.size() == before.size() && !names.contains(before[was])) hookUp_ = names[was].toStdString();
    if (names != before) {
        hookUps_->clear();
        hookUps_->addItems(names);
    }
    const qsizetype chosen = names.indexOf(QString::fromStdString(hookUp_));
    if (chosen < 0) hookUp_.clear();
    hookUps_->setCurrentIndex(static_cast<int>(std::max<qsizetype>(chosen, 0)));
}

void BenchWindow::say(const QString& sentence) {
    message_->setText(sentence);
}

void BenchWindow::wear(Look look) {
    memory_.look = look;
    applyLook(look);
    QPalette warning = faulty_->palette();
    warning.setColor(QPalette::WindowText, colour(Token::Broken));
    faulty_->setPalette(warning);
    (*actions_)[look == Look::Light  ? Act::LookLight
                : look == Look::Dark ? Act::LookDark
                                     : Act::LookDesktop]
        .setChecked(true);
}

bool BenchWindow::event(QEvent* event) {
    // The desktop changed its colours: follow, if that is what was chosen.
    if (event->type() == QEvent::ThemeChange && memory_.look == Look::Desktop) applyLook(Look::Desktop);
    return QMainWindow::event(event);
}

void BenchWindow::closeEvent(QCloseEvent* event) {
    if (!mayLeave()) return event->ignore();
    memory_.geometry = saveGeometry();
    keep(memory_);
    if (journal_) journal_->forget();
    event->accept();
}

}  // namespace bench
