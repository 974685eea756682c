// SPDX-License-Identifier: GPL-3.0-or-later
// One value of a design as a person sees and types it.
#pragma once

#include <QString>
#include <QStringList>
#include <functional>
#include <string>

#include "design/design.h"

namespace editors {

/// One value of a design as text: how to read it out, and how to make another design of what was typed. `with` throws
/// units::BadInput with a sentence's parts when the text cannot be taken.
struct Part {
    enum class Kind { Number, Text, Choice, Flag };
    std::string path;  ///< JSON pointer of the value in a design's file; two forms that show it share it
    Kind kind = Kind::Text;
    QString label;
    QString tip;
    QString hint;  ///< what it means to leave the field empty; shown in it while it is
    QString act;   ///< "turns of P.a": names the undo step and the control
    std::function<QString(const design::Design&)> text;
    std::function<design::DesignPtr(const design::Design&, const QString&)> with;
    /// The value `steps` up or down as text, for arrows and wheel; null where stepping makes no sense.
    std::function<QString(const design::Design&, int steps, double factor)> stepped;
    std::function<QStringList(const design::Design&)> choices;  ///< for a choice: what there is
};

}  // namespace editors
