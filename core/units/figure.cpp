// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/figure.h"

#include <algorithm>

namespace units {

std::vector<std::string> nameParts(const std::string& figure) {
    const std::string name = figure.substr(0, figure.find('@'));
    std::vector<std::string> parts;
    std::size_t from = 0;
    for (std::size_t dot = name.find('.'); dot != std::string::npos; dot = name.find('.', from)) {
        parts.push_back(name.substr(from, dot - from));
        from = dot + 1;
    }
    parts.push_back(name.substr(from));
    return parts;
}

std::string dotted(std::string name) {
    std::replace(name.begin(), name.end(), ' ', '.');
    return name;
}

}  // namespace units
