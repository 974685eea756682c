// SPDX-License-Identifier: GPL-3.0-or-later
// Which part of the design is selected: shared by the cut, the chips and the forms.
#pragma once

#include <QObject>
#include <string>
#include <variant>

#include "design/coil.h"

namespace document {

/// Parts that have a form of their own.
struct WholePart {
    enum class Which { Brief, Core, Bobbin, Terminals, HookUps, Conditions, Tolerances } which = Which::Core;
    bool operator==(const WholePart&) const = default;
};
/// A winding by name.
struct WindingPart {
    std::string name;
    bool operator==(const WindingPart&) const = default;
};
/// Nothing, an item of the coil, a winding, or another part.
using Selected = std::variant<std::monostate, design::ItemIndex, WindingPart, WholePart>;

class Selection : public QObject {
    Q_OBJECT
public:
    using QObject::QObject;
    [[nodiscard]] const Selected& selected() const noexcept { return selected_; }
    [[nodiscard]] const design::ItemIndex* item() const noexcept { return std::get_if<design::ItemIndex>(&selected_); }
    void select(Selected part) {
        if (part == selected_) return;
        selected_ = std::move(part);
        emit changed();
    }

signals:
    void changed();

private:
    Selected selected_;
};

}  // namespace document
