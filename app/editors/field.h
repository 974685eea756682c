// SPDX-License-Identifier: GPL-3.0-or-later
// A widget bound to one value of the open design, with room for a sentence on what is wrong.
#pragma once

#include <QWidget>

#include "document/document.h"
#include "editors/fault_line.h"
#include "editors/part.h"
#include "editors/wrong_texts.h"

namespace editors {

/// What every field of a form works on.
struct FieldHome {
    document::Document& document;
    WrongTexts& wrong;
};

/// What was typed is never lost: while a fault stands, a redraw leaves it alone, and another form finds it again.
class Field : public QWidget {
    Q_OBJECT
public:
    /// `line` is where the sentence goes; it may serve other fields too.
    Field(FieldHome home, Part part, FaultLine* line, QWidget* parent);
    [[nodiscard]] const Part& part() const noexcept { return part_; }
    [[nodiscard]] bool faulty() const { return !fault_.isEmpty(); }
    [[nodiscard]] const QString& fault() const { return fault_; }
    [[nodiscard]] FaultLine* faultLine() const { return line_; }
    /// Shows the design's value; does nothing while a fault stands.
    virtual void showDesign() = 0;
    /// What stands in the field.
    [[nodiscard]] virtual QString typed() const = 0;
    /// Takes what was typed as if the keyboard had left.
    virtual void finish() {}
    /// Its form is on the way out: it hears of no change any more, and what it had open beside itself is closed.
    virtual void retire();

signals:
    void faultChanged();  ///< a fault came, went or was said again

protected:
    void place(QWidget* editor);
    /// Tries `typed` without history (`commit` false) or as one undo step; shows what is wrong, if anything.
    bool take(const QString& typed, bool commit);
    /// Whether this very text was refused already: leaving the field does not ask again, Return does.
    [[nodiscard]] bool settled(const QString& typed) const { return faulty() && typed == refused_; }
    void askAgain() { refused_.clear(); }
    /// The field is right again: nothing is kept of what was typed.
    void clearFault();
    /// What another form left here that could not be taken, if anything. The field says again why.
    [[nodiscard]] std::optional<QString> leftOver();
    /// The committed design became another one by something else than this field.
    virtual void designChanged() { showDesign(); }
    void paintEvent(QPaintEvent* event) override;
    [[nodiscard]] document::Document& document() { return home_.document; }
    bool taking_ = false;

private:
    void explain(const QString& sentence);
    [[nodiscard]] QString sentence(const units::BadInput& bad) const;
    FieldHome home_;
    Part part_;
    FaultLine* line_;
    QString fault_, refused_;
};

/// The field that suits the part.
[[nodiscard]] Field* makeField(FieldHome home, const Part& part, FaultLine* line, QWidget* parent);

/// Whether the keyboard came here because the designer wanted it to: then the wheel may change the value.
[[nodiscard]] bool byChoice(const QEvent* event);
/// Undo and redo belong to the design, not to the letters in a field. True: the event was one and is handed on.
[[nodiscard]] bool handsOnUndo(QEvent* event);

}  // namespace editors
