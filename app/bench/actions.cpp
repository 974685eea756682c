// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/actions.h"

#include <QActionGroup>
#include <QCoreApplication>
#include <array>

namespace bench {

namespace {

enum class Where { Design, Edit, Traces, Papers, View, Looks, Help };

struct Row {
    Act act;
    Where where;
    const char* text;
    const char* keys;  ///< set here, since a desktop without a theme leaves some standard keys empty
    const char* tip;
    bool checkable;
};
constexpr std::array<Row, 30> rows{{
    {Act::Start, Where::Design, QT_TRANSLATE_NOOP("bench", "S&tart page"), "",
     QT_TRANSLATE_NOOP("bench", "The demo designs as drawings, and what was open last"), false},
    {Act::New, Where::Design, QT_TRANSLATE_NOOP("bench", "&New…"), "Ctrl+N",
     QT_TRANSLATE_NOOP("bench", "Begin with a blank design of a kind of unit, or with a demo"), false},
    {Act::Open, Where::Design, QT_TRANSLATE_NOOP("bench", "&Open…"), "Ctrl+O",
     QT_TRANSLATE_NOOP("bench", "Open a design file"), false},
    {Act::Save, Where::Design, QT_TRANSLATE_NOOP("bench", "&Save"), "Ctrl+S",
     QT_TRANSLATE_NOOP("bench", "Save the design to its file"), false},
    {Act::SaveAs, Where::Design, QT_TRANSLATE_NOOP("bench", "Save &as…"), "Ctrl+Shift+S",
     QT_TRANSLATE_NOOP("bench", "Save the design to another file"), false},
    {Act::Revisions, Where::Design, QT_TRANSLATE_NOOP("bench", "&Revisions…"), "Ctrl+R",
     QT_TRANSLATE_NOOP("bench", "What was kept of this design, when and why; keep it, issue it, order it again"),
     false},
    {Act::Quit, Where::Design, QT_TRANSLATE_NOOP("bench", "&Quit"), "Ctrl+Q",
     QT_TRANSLATE_NOOP("bench", "Close the window"), false},
    {Act::Undo, Where::Edit, QT_TRANSLATE_NOOP("bench", "&Undo"), "Ctrl+Z",
     QT_TRANSLATE_NOOP("bench", "Take back the last act"), false},
    {Act::Redo, Where::Edit, QT_TRANSLATE_NOOP("bench", "&Redo"), "Ctrl+Shift+Z",
     QT_TRANSLATE_NOOP("bench", "Do again what was taken back"), false},
    {Act::DrawUp, Where::Edit, QT_TRANSLATE_NOOP("bench", "&Draw up anew from the brief"), "Ctrl+Shift+N",
     QT_TRANSLATE_NOOP("bench", "Core, bobbin, turns, wires and order anew, by closed forms from brief and hook-ups"),
     false},
    {Act::Seek, Where::Edit, QT_TRANSLATE_NOOP("bench", "&Seek designs for the brief…"), "Ctrl+F",
     QT_TRANSLATE_NOOP("bench", "Cores, turns, wires and orders that keep every promise, the best as small cuts"),
     false},
    {Act::Respin, Where::Edit, QT_TRANSLATE_NOOP("bench", "Spin a sample a&gain…"), "Ctrl+Shift+F",
     QT_TRANSLATE_NOOP("bench", "A sample that breaks a promise: type its readings, get the smallest change"), false},
    {Act::Hold, Where::Traces, QT_TRANSLATE_NOOP("bench", "&Hold"), "Ctrl+H",
     QT_TRANSLATE_NOOP("bench", "Keep the curves as they are beneath the moving ones, axes locked"), true},
    {Act::Pair, Where::Traces, QT_TRANSLATE_NOOP("bench", "&Pair…"), "Ctrl+P",
     QT_TRANSLATE_NOOP("bench", "Put a saved design beside this one"), false},
    {Act::Spread, Where::Traces, QT_TRANSLATE_NOOP("bench", "&Spread of a production…"), "Ctrl+T",
     QT_TRANSLATE_NOOP("bench", "Units made as the shop would: yields, histograms, what makes them spread, bands"),
     false},
    {Act::Measured, Where::Traces, QT_TRANSLATE_NOOP("bench", "M&easured curves…"), "Ctrl+M",
     QT_TRANSLATE_NOOP("bench", "Measured files laid over the curves, and how far they lie away"), false},
    {Act::Units, Where::Traces, QT_TRANSLATE_NOOP("bench", "&Built units…"), "Ctrl+U",
     QT_TRANSLATE_NOOP("bench", "The test plan to type readings into, returns, and what all unit records say together"),
     false},
    {Act::MorePlots, Where::Traces, QT_TRANSLATE_NOOP("bench", "&More plots"), "Ctrl+PgUp",
     QT_TRANSLATE_NOOP("bench", "One, two, four, six or eight plots side by side"), false},
    {Act::FewerPlots, Where::Traces, QT_TRANSLATE_NOOP("bench", "&Fewer plots"), "Ctrl+PgDown",
     QT_TRANSLATE_NOOP("bench", "Fewer plots, each with more room"), false},
    {Act::Datasheet, Where::Papers, QT_TRANSLATE_NOOP("bench", "&Datasheet…"), "Ctrl+D",
     QT_TRANSLATE_NOOP("bench", "Write the customer's datasheet as PDF; it never carries the recipe"), false},
    {Act::Papers, Where::Papers, QT_TRANSLATE_NOOP("bench", "&All papers…"), "Ctrl+Shift+D",
     QT_TRANSLATE_NOOP("bench", "Every paper as it will lie on the desk, for shop and customer; save it as PDF"),
     false},
    {Act::WindingProgram, Where::Papers, QT_TRANSLATE_NOOP("bench", "Winding &program…"), "Ctrl+Shift+P",
     QT_TRANSLATE_NOOP("bench", "The program for a winder, run block by block and proven against the design"), false},
    {Act::AmpereTurns, Where::View, QT_TRANSLATE_NOOP("bench", "&Ampere-turns in the cut"), "Ctrl+1",
     QT_TRANSLATE_NOOP("bench", "Ladders on the borders of sections: what the leakage field is made of"), true},
    {Act::LayerVolts, Where::View, QT_TRANSLATE_NOOP("bench", "Layer &volts in the cut"), "Ctrl+2",
     QT_TRANSLATE_NOOP("bench", "Ladders on the borders of sections: what charges the capacitances"), true},
    {Act::Inch, Where::View, QT_TRANSLATE_NOOP("bench", "Rulers in &inch"), "",
     QT_TRANSLATE_NOOP("bench", "Rulers beside the cut in inch instead of millimetres"), true},
    {Act::LookDesktop, Where::Looks, QT_TRANSLATE_NOOP("bench", "As the &desktop"), "",
     QT_TRANSLATE_NOOP("bench", "Light or dark as the desktop is"), true},
    {Act::LookLight, Where::Looks, QT_TRANSLATE_NOOP("bench", "&Light"), "",
     QT_TRANSLATE_NOOP("bench", "Dark ink on light paper"), true},
    {Act::LookDark, Where::Looks, QT_TRANSLATE_NOOP("bench", "Dar&k"), "",
     QT_TRANSLATE_NOOP("bench", "Light ink on dark paper"), true},
    {Act::Handbook, Where::Help, QT_TRANSLATE_NOOP("bench", "&Handbook"), "Shift+F1",
     QT_TRANSLATE_NOOP("bench", "The job from brief to lot, how to read what is shown, and what every figure rests on"),
     false},
    {Act::Keys, Where::Help, QT_TRANSLATE_NOOP("bench", "&Keys"), "F1",
     QT_TRANSLATE_NOOP("bench", "Every key of the window"), false},
}};

QString said(const char* text) {
    return QCoreApplication::translate("bench", text);
}

}  // namespace

Actions::Actions(QMenuBar& bar, QObject* parent) : QObject(parent) {
    const QMap<Where, QMenu*> menus{
        {Where::Design, bar.addMenu(said("&Design"))}, {Where::Edit, bar.addMenu(said("&Edit"))},
        {Where::Traces, bar.addMenu(said("&Traces"))}, {Where::Papers, bar.addMenu(said("&Papers"))},
        {Where::View, bar.addMenu(said("&View"))},     {Where::Help, bar.addMenu(said("&Help"))}};
    new_ = menus[Where::Design]->addMenu(said("New from de&mo"));
    auto* looks = new QActionGroup(this);
    for (const Row& row : rows) {
        auto* action = new QAction(said(row.text), this);
        if (row.act == Act::Save || row.act == Act::DrawUp || row.act == Act::MorePlots || row.act == Act::Revisions ||
            row.act == Act::Quit)
            menus[row.where]->addSeparator();
        action->setShortcut(QKeySequence(QString::fromLatin1(row.keys)));
        action->setCheckable(row.checkable);
        const QString keys = action->shortcut().toString(QKeySequence::NativeText);
        action->setToolTip(keys.isEmpty() ? said(row.tip)
                                          : said(row.tip) + QStringLiteral(" (") + keys + QLatin1Char(')'));
        action->setStatusTip(said(row.tip));
        if (row.where == Where::Looks) looks->addAction(action);
        if (row.act == Act::LookDesktop) menus[Where::View]->addSeparator();
        menus[row.where == Where::Looks ? Where::View : row.where]->addAction(action);
        if (row.act == Act::Open) recent_ = menus[row.where]->addMenu(said("Open &recent"));
        actions_.insert(row.act, action);
    }
    menus[Where::View]->addSeparator();
    language_ = menus[Where::View]->addMenu(said("Lan&guage"));
    actions_[Act::Keys]->setShortcuts({QKeySequence(QStringLiteral("F1")), QKeySequence(QStringLiteral("?"))});
    actions_[Act::Redo]->setShortcuts(
        {QKeySequence(QStringLiteral("Ctrl+Shift+Z")), QKeySequence(QStringLiteral("Ctrl+Y"))});
}

}  // namespace bench
