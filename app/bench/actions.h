// SPDX-License-Identifier: GPL-3.0-or-later
// Every act of the window with its menu, words and keys, in one table.
#pragma once

#include <QAction>
#include <QMap>
#include <QMenu>
#include <QMenuBar>

namespace bench {

enum class Act {
    Start,
    New,
    Open,
    Save,
    SaveAs,
    Revisions,
    Quit,
    Undo,
    Redo,
    DrawUp,
    Seek,
    Respin,
    Hold,
    Pair,
    Spread,
    Measured,
    Units,
    MorePlots,
    FewerPlots,
    Datasheet,
    Papers,
    WindingProgram,
    AmpereTurns,
    LayerVolts,
    Inch,
    LookDesktop,
    LookLight,
    LookDark,
    Handbook,
    Keys
};

/// Makes the actions and fills the menu bar. The owner connects them.
class Actions : public QObject {
public:
    explicit Actions(QMenuBar& bar, QObject* parent);
    [[nodiscard]] QAction& operator[](Act act) const { return *actions_.value(act); }
    [[nodiscard]] QList<QAction*> all() const { return actions_.values(); }
    [[nodiscard]] QMenu& newMenu() const { return *new_; }
    [[nodiscard]] QMenu& recentMenu() const { return *recent_; }
    [[nodiscard]] QMenu& languageMenu() const { return *language_; }

private:
    QMap<Act, QAction*> actions_;
    QMenu* new_ = nullptr;
    QMenu* recent_ = nullptr;
    QMenu* language_ = nullptr;
};

}  // namespace bench
