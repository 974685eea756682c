// SPDX-License-Identifier: GPL-3.0-or-later
// Puts the text of each source in the place of its key.
#pragma once

#include <concepts>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "json/record.h"
#include "units/datum.h"
#include "units/fault.h"

namespace catalog {

using Sources = std::map<std::string, std::string>;

/// A visitor of a record's fields: each Datum's source, and each text field named "…_source", becomes the text that
/// the file's sources hold under that key. A Datum's source that is no such key is a fault; text may stand for itself.
class SourceText {
public:
    SourceText(const Sources& sources, std::string place, std::vector<units::Fault>& faults)
        : sources_(sources), place_(std::move(place)), faults_(faults) {}

    template <class T>
    void need(const char* key, T& value, const json::Allowed& = {}) {
        visit(place_ + "/" + key, value);
    }
    template <class T>
    void may(const char* key, T& value, const json::Allowed& = {}) {
        visit(place_ + "/" + key, value);
    }

private:
    template <class T>
    void visit(const std::string& place, T& value) {
        if constexpr (std::same_as<T, units::Datum>) {
            number(place, value);
        } else if constexpr (std::same_as<T, std::string>) {
            if (std::string_view(place).ends_with("_source"))
                if (const auto found = sources_.find(value); found != sources_.end()) value = found->second;
        } else if constexpr (requires { fields(*this, value[0]); }) {
            for (std::size_t i = 0; i < value.size(); ++i) {
                SourceText item(sources_, place + "/" + std::to_string(i), faults_);
                fields(item, value[i]);
            }
        }
    }
    void number(const std::string& place, units::Datum& datum) {
        if (datum.source.empty()) return;
        if (const auto found = sources_.find(datum.source); found != sources_.end())
            datum.source = found->second;
        else
            faults_.push_back({place + "/source", "\"" + datum.source + "\"", "a key of this file's \"sources\""});
    }

    const Sources& sources_;
    std::string place_;
    std::vector<units::Fault>& faults_;
};

}  // namespace catalog
