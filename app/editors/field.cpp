// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/field.h"

#include <QFocusEvent>
#include <QKeyEvent>
#include <QPainter>
#include <QScopedValueRollback>
#include <QVBoxLayout>

#include "bench/language.h"
#include "bench/theme.h"
#include "design/check.h"
#include "editors/check_field.h"
#include "editors/choice_field.h"
#include "editors/text_field.h"
#include "units/fault.h"

namespace editors {

namespace {

constexpr int markHeight = 2;

bool isUndo(const QEvent* event) {
    const auto* key = static_cast<const QKeyEvent*>(event);
    return key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo) ||
           (key->key() == Qt::Key_Y && key->modifiers() == Qt::ControlModifier);
}

}  // namespace

bool byChoice(const QEvent* event) {
    switch (static_cast<const QFocusEvent*>(event)->reason()) {
        case Qt::MouseFocusReason:
        case Qt::TabFocusReason:
        case Qt::BacktabFocusReason:
        case Qt::ShortcutFocusReason:
            return true;
        default:
            return false;
    }
}

bool handsOnUndo(QEvent* event) {
    if (event->type() != QEvent::ShortcutOverride && event->type() != QEvent::KeyPress) return false;
    if (!isUndo(event)) return false;
    event->ignore();
    return true;
}

Field::Field(FieldHome home, Part part, FaultLine* line, QWidget* parent)
    : QWidget(parent), home_(home), part_(std::move(part)), line_(line) {
    connect(&document(), &document::Document::changed, this, [this] {
        if (!taking_) designChanged();
    });
    connect(&document(), &document::Document::shownChanged, this, [this] {
        if (!taking_) showDesign();
    });
}

void Field::retire() {
    disconnect(&document(), nullptr, this, nullptr);
}

void Field::place(QWidget* editor) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, markHeight);
    layout->setSpacing(0);
    layout->addWidget(editor);
    editor->setAccessibleName(part_.act);
    editor->setAccessibleDescription(part_.tip);
    editor->setToolTip(part_.tip);
    setFocusProxy(editor);
}

void Field::explain(const QString& sentence) {
    fault_ = sentence;
    line_->say(this, sentence);
    if (focusProxy()) {
        focusProxy()->setAccessibleDescription(sentence.isEmpty() ? part_.tip : sentence);
        focusProxy()->setToolTip(sentence.isEmpty() ? part_.tip : sentence);
    }
    update();
    emit faultChanged();
}

void Field::clearFault() {
    home_.wrong.drop(part_.path);
    explain({});
}

std::optional<QString> Field::leftOver() {
    auto kept = home_.wrong.at(part_.path);
    if (!kept) return {};
    refused_ = *kept;
    try {
        const auto next = part_.with(*document().design(), *kept);
        auto faults = design::check(*next, *document().shop(), "");
        if (!faults.empty()) throw units::BadInput(std::move(faults));
        explain(tr("Not taken so far. By now it could be: Return takes it, Escape drops it."));
    } catch (const units::BadInput& bad) {
        explain(sentence(bad));
    }
    return kept;
}

/// The fault at this field's own place, if there is one among them, else the first.
QString Field::sentence(const units::BadInput& bad) const {
    const auto own = std::find_if(bad.faults.begin(), bad.faults.end(),
                                  [&](const units::Fault& f) { return f.place.ends_with(": " + part_.path); });
    const units::Fault& fault = own == bad.faults.end() ? bad.faults.front() : *own;
    return tr("Found %1; allowed is %2.").arg(bench::translated(fault.found), bench::translated(fault.allowed));
}

void Field::paintEvent(QPaintEvent*) {
    if (faulty())
        QPainter(this).fillRect(0, height() - markHeight, width(), markHeight, bench::colour(bench::Token::Broken));
}

bool Field::take(const QString& typed, bool commit) {
    const QScopedValueRollback own(taking_, true);
    try {
        auto next = part_.with(*document().design(), typed);
        if (commit)
            document().replace(std::move(next), part_.act);
        else
            document().preview(std::move(next));
        clearFault();
        return true;
    } catch (const units::BadInput& bad) {
        home_.wrong.keep(part_.path, typed, document().design());
        refused_ = typed;
        explain(sentence(bad));
        document().endPreview();
        return false;
    }
}

Field* makeField(FieldHome home, const Part& part, FaultLine* line, QWidget* parent) {
    switch (part.kind) {
        case Part::Kind::Choice:
            return new ChoiceField(home, part, line, parent);
        case Part::Kind::Flag:
            return new CheckField(home, part, line, parent);
        case Part::Kind::Number:
        case Part::Kind::Text:
            break;
    }
    return new TextField(home, part, line, parent);
}

}  // namespace editors
