// SPDX-License-Identifier: GPL-3.0-or-later
#include "reader.h"

#include <algorithm>

#include "units/characters.h"

namespace fuzz {

namespace {

std::vector<Reader>& list() {
    static std::vector<Reader> all;
    return all;
}

bool isUtf8(std::string_view text) {
    while (!text.empty()) {
        const std::size_t length = units::characterBytes(text);
        if (length == 0) return false;
        text.remove_prefix(length);
    }
    return true;
}

}  // namespace

const std::vector<Reader>& readers() {
    return list();
}

Registered::Registered(const char* name, void (*read)(std::string_view bytes)) {
    list().push_back({name, read});
}

void require(bool holds, const char* what) {
    if (!holds) throw Find(what);
}

void requireSentences(const units::BadInput& refusal, const std::string& file) {
    constexpr std::size_t longest = 2000, most = 100000;
    require(!refusal.faults.empty(), "a refusal without a fault");
    require(refusal.faults.size() <= most, "a refusal that goes on for ever");
    for (const units::Fault& fault : refusal.faults) {
        const std::string said = units::sentence(fault);
        require(fault.place.starts_with(file), "a fault that does not name its file");
        require(!fault.found.empty() && !fault.allowed.empty(),
                "a fault that does not say what was found or is allowed");
        require(said.size() <= longest, "a sentence too long to be shown");
        require(isUtf8(said), "a sentence that is not UTF-8");
        require(std::none_of(said.begin(), said.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20; }),
                "a sentence with a control character");
    }
}

}  // namespace fuzz
