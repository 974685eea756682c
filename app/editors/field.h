// SPDX-License-Identifier: GPL-3.0-or-later
// Widgets bound to one value of the open design.
#pragma once

#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>
#include <functional>

#include "document/document.h"
#include "editors/fault_line.h"

namespace editors {

/// One value of a design as text: how to read it out, and how to make another design of what was typed. `with` throws
/// units::BadInput with a sentence's parts when the text cannot be taken.
struct Part {
    QString label;
    QString tip;
    QString act;  ///< "turns of P.a": names the undo step
    std::function<QString(const design::Design&)> text;
    std::function<design::DesignPtr(const design::Design&, const QString&)> with;
    /// The value `steps` up or down as text, for arrows and wheel; null where stepping makes no sense.
    std::function<QString(const design::Design&, int steps, double factor)> stepped;
    std::function<QStringList()> choices;  ///< for a choice: what there is
};

/// A field with room beneath it for one sentence. What was typed is never lost: while a fault stands, a redraw leaves
/// it alone.
class Field : public QWidget {
    Q_OBJECT
public:
    Field(document::Document& document, Part part, QWidget* parent);
    [[nodiscard]] const Part& part() const noexcept { return part_; }
    [[nodiscard]] bool faulty() const { return !fault_->sentence().isEmpty(); }
    [[nodiscard]] QString fault() const { return fault_->sentence(); }
    /// The row for the sentence, to be laid out beneath the field.
    [[nodiscard]] FaultLine* faultLine() const { return fault_; }
    /// Shows the design's value; does nothing while a fault stands.
    virtual void showDesign() = 0;
    /// What stands in the field and is wrong, so that a form that is built anew can have it back; "" if nothing is.
    [[nodiscard]] virtual QString wrongText() const { return {}; }
    virtual void putBack(const QString&) {}

protected:
    void place(QWidget* editor);
    /// Tries `typed` without history (`commit` false) or as one undo step; shows what is wrong, if anything.
    bool take(const QString& typed, bool commit);
    void explain(const QString& sentence);
    /// The committed design became another one by something else than this field.
    virtual void designChanged() { showDesign(); }
    void paintEvent(QPaintEvent* event) override;
    [[nodiscard]] document::Document& document() { return document_; }
    bool taking_ = false;

private:
    document::Document& document_;
    Part part_;
    FaultLine* fault_;
};

/// Numbers with units, and text.
class TextField : public Field {
    Q_OBJECT
public:
    TextField(document::Document& document, Part part, QWidget* parent);
    void showDesign() override;
    [[nodiscard]] QLineEdit* line() { return line_; }
    [[nodiscard]] QString wrongText() const override { return faulty() ? line_->text() : QString(); }
    void putBack(const QString& typed) override;

protected:
    void designChanged() override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void step(int steps, Qt::KeyboardModifiers modifiers);
    bool keyPressed(int key, Qt::KeyboardModifiers modifiers);
    void restore();
    QLineEdit* line_;
    bool chosen_ = false;  // focus came by click or Tab: the wheel may step
    bool edited_ = false;
};

/// One out of a list; a long list is searched by typing any piece of a word.
class ChoiceField : public Field {
    Q_OBJECT
public:
    ChoiceField(document::Document& document, Part part, QWidget* parent);
    void showDesign() override;
    [[nodiscard]] QComboBox* box() { return box_; }
    [[nodiscard]] QString wrongText() const override { return faulty() ? box_->currentText() : QString(); }
    void putBack(const QString& typed) override;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void makeSearchable();
    void commit();
    void restore();
    QComboBox* box_;
    bool chosen_ = false;
};

/// Yes or no; its text is "true" or "false".
class CheckField : public Field {
    Q_OBJECT
public:
    CheckField(document::Document& document, Part part, QWidget* parent);
    void showDesign() override;

private:
    QCheckBox* box_;
};

}  // namespace editors
