// SPDX-License-Identifier: GPL-3.0-or-later
// Edits of the winding order by hand, shared by the cut and the strip of chips: one named step each.
#pragma once

#include <QObject>
#include <functional>
#include <optional>

#include "cut/handles.h"
#include "document/document.h"
#include "document/selection.h"

class QMenu;

namespace cut {

/// Every function makes one undo step with a name, moves the selection along, and says in `message` why an edit was
/// refused.
class CoilEdits : public QObject {
    Q_OBJECT
public:
    CoilEdits(document::Document& document, document::Selection& selection, QObject* parent = nullptr);

    void step(design::ItemIndex item, int steps);  ///< +1 outward, -1 inward
    void move(design::ItemIndex from, design::ItemIndex to);
    void remove(design::ItemIndex item);
    void split(design::ItemIndex section);
    void join(design::ItemIndex section);
    void swapHotEnd(design::ItemIndex section);
    void insertInsulation(design::ItemIndex before);
    void insertShield(design::ItemIndex before);

    /// Shows the move without a step, until `move` or `cancel`.
    void tryMove(design::ItemIndex from, design::ItemIndex to);
    void cancel();

    /// Shows an edge's value without a step, and makes it one; see handles.h.
    void tryEdge(const Handle& handle, double value);
    void setEdge(const Handle& handle, double value);

    /// Reads and shows turns of a section without a step; returns what is wrong with the text, or nothing.
    [[nodiscard]] QString tryTurns(design::ItemIndex section, const QString& text);
    /// The same as a step.
    [[nodiscard]] QString setTurns(design::ItemIndex section, const QString& text);

    /// Fills `menu` with what can be done with `item` (or none) and at the place `before` (or none).
    void fill(QMenu& menu, std::optional<design::ItemIndex> item, std::optional<design::ItemIndex> before);

signals:
    void message(QString sentence);

private:
    using Make = std::function<design::DesignPtr(const design::Design&)>;
    bool commit(const QString& act, const Make& make);
    void movedTo(design::ItemIndex item);
    [[nodiscard]] QString turnsFault(design::ItemIndex section, const QString& text, bool step);
    [[nodiscard]] bool canJoin(design::ItemIndex section) const;

    document::Document& document_;
    document::Selection& selection_;
};

}  // namespace cut
