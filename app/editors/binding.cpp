// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/binding.h"

#include <QScopedValueRollback>

#include "units/fault.h"

namespace editors {

Binding::Binding(document::Document& document, Part part, QObject* parent)
    : QObject(parent), document_(document), part_(std::move(part)) {
    connect(&document_, &document::Document::changed, this, [this] {
        if (!committing_ && fault_.isEmpty()) emit designChanged();
    });
}

QString Binding::committed() const {
    return QString::fromStdString(part_.text(*document_.design()).value_or(""));
}

bool Binding::exists() const {
    return part_.text(*document_.design()).has_value();
}

QString Binding::act() const {
    return part_.act(*document_.design());
}

template <class Do>
bool Binding::attempt(Do act) {
    const QScopedValueRollback own(committing_, true);
    try {
        act();
        explain({});
        return true;
    } catch (const units::BadInput& bad) {
        explain(sentenceBeside(bad.faults, part_.place));
        return false;
    }
}

bool Binding::preview(const QString& text) {
    return attempt([&] { document_.preview(part_.with(*document_.design(), text.toStdString())); });
}

bool Binding::commit(const QString& text) {
    const bool done = attempt([&] {
        if (text == committed()) return document_.endPreview();
        document_.replace(part_.with(*document_.design(), text.toStdString()), act());
    });
    if (!done) document_.endPreview();
    return done;
}

void Binding::restore() {
    document_.endPreview();
    explain({});
    emit designChanged();
}

void Binding::explain(const QString& sentence) {
    if (sentence == fault_) return;
    fault_ = sentence;
    emit faultChanged();
}

}  // namespace editors
