// SPDX-License-Identifier: GPL-3.0-or-later
// Where a piece of a design lies: how to reach it, its pointer in a file, and whose it is in words.
#pragma once

#include <QString>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "design/design.h"

namespace editors {

/// A typed way to one piece of any design. It leads to null where a design has no such piece (any more).
template <class T>
class Where {
public:
    using Owner = std::function<QString(const design::Design&)>;

    /// `find` is called as find(Design&) and find(const Design&) and returns a pointer, null if there is nothing.
    template <class Find>
    Where(std::string place, Owner owner, Find find)
        : place_(std::move(place)),
          owner_(std::move(owner)),
          look_([find](const design::Design& d) -> const T* { return find(d); }),
          reach_([find](design::Design& d) -> T* { return find(d); }) {}

    [[nodiscard]] const T* at(const design::Design& d) const { return look_(d); }
    [[nodiscard]] T* at(design::Design& d) const { return reach_(d); }
    [[nodiscard]] const std::string& place() const noexcept { return place_; }  ///< "/coil/0/order/2/section"
    [[nodiscard]] const Owner& owner() const noexcept { return owner_; }
    /// The same piece, said to be somebody else's.
    [[nodiscard]] Where of(Owner owner) const {
        Where copy = *this;
        copy.owner_ = std::move(owner);
        return copy;
    }

    /// A member of the piece, under its key in files.
    template <class M, class Base>
    [[nodiscard]] Where<M> member(M Base::*which, const std::string& key) const {
        return {place_ + "/" + key, owner_, [self = *this, which](auto& d) {
                    auto* whole = self.at(d);
                    return whole ? &(whole->*which) : nullptr;
                }};
    }
    /// An item of the piece, which is a list.
    [[nodiscard]] auto item(std::size_t i) const {
        return Where<typename T::value_type>(place_ + "/" + std::to_string(i), owner_, [self = *this, i](auto& d) {
            auto* list = self.at(d);
            return list && i < list->size() ? &(*list)[i] : nullptr;
        });
    }
    /// What stands in the piece, which is an option.
    [[nodiscard]] auto inside() const {
        return Where<typename T::value_type>(place_, owner_, [self = *this](auto& d) {
            auto* option = self.at(d);
            return option && *option ? &**option : nullptr;
        });
    }

private:
    std::string place_;
    Owner owner_;
    std::function<const T*(const design::Design&)> look_;
    std::function<T*(design::Design&)> reach_;
};

/// The design itself; its owner is nobody in particular.
[[nodiscard]] inline Where<design::Design> wholeDesign() {
    return {"", [](const design::Design&) { return QString(); }, [](auto& d) { return &d; }};
}

}  // namespace editors
