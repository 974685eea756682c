// SPDX-License-Identifier: GPL-3.0-or-later
// Which points of a connected unit are one and the same node.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "design/design.h"

namespace network {

/// Names joined by straps, earths, port earthing and shield terminals. "earth" is the reference.
class Nodes {
public:
    Nodes(const design::Design& design, const design::HookUp& hookUp);
    void join(const std::string& a, const std::string& b);
    /// Index of the node that `name` belongs to, made on first use; -1 for earth.
    int index(const std::string& name);
    [[nodiscard]] const std::vector<std::string>& names() const noexcept { return names_; }

private:
    std::string root(const std::string& name);
    std::map<std::string, std::string> parent_;
    std::map<std::string, int> index_;
    std::vector<std::string> names_;
};

}  // namespace network
