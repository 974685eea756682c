// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/wrong_texts.h"

#include <algorithm>

#include "editors/carried_path.h"

namespace editors {

void WrongTexts::keep(const std::string& path, const QString& text, const design::DesignPtr& in) {
    drop(path);
    texts_.push_back({path, text, in, true});
}

void WrongTexts::drop(const std::string& path) {
    std::erase_if(texts_, [&](const Kept& k) { return k.there && k.path == path; });
}

std::optional<QString> WrongTexts::at(const std::string& path) const {
    for (const Kept& k : texts_)
        if (k.there && k.path == path) return k.text;
    return {};
}

int WrongTexts::count() const {
    return static_cast<int>(std::count_if(texts_.begin(), texts_.end(), [](const Kept& k) { return k.there; }));
}

void WrongTexts::follow(const design::DesignPtr& to) {
    for (Kept& k : texts_) {
        if (k.in == to) {
            k.there = true;
            continue;
        }
        const auto path = carriedPath(*k.in, *to, k.path);
        k.there = path.has_value();
        if (!path) continue;
        k.path = *path;
        k.in = to;
    }
}

}  // namespace editors
