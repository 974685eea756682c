// SPDX-License-Identifier: GPL-3.0-or-later
// What was typed and could not be taken: the window's own, not the design's.
#pragma once

#include <QString>
#include <optional>
#include <string>
#include <vector>

#include "design/design.h"

namespace editors {

/// Texts by the path of their field. They outlive forms and follow their field when the design changes around it; a
/// text whose field is gone waits for the field to come back (undo).
class WrongTexts {
public:
    /// `in`: the design that `path` belongs to.
    void keep(const std::string& path, const QString& text, const design::DesignPtr& in);
    void drop(const std::string& path);
    void clear() { texts_.clear(); }
    [[nodiscard]] std::optional<QString> at(const std::string& path) const;
    [[nodiscard]] int count() const;  ///< of fields that exist
    /// Where the fields stand in another design.
    void follow(const design::DesignPtr& to);

private:
    struct Kept {
        std::string path;
        QString text;
        design::DesignPtr in;  ///< the last design that had the field
        bool there = true;     ///< in today's design too
    };
    std::vector<Kept> texts_;
};

}  // namespace editors
