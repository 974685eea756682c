// SPDX-License-Identifier: GPL-3.0-or-later
// One located fault in something that a person wrote, and the exception that carries all of them.
#pragma once

#include <stdexcept>
#include <string>
#include <vector>

namespace units {

/// One fault in a file or field: where it stands, what was found there, what is allowed.
struct Fault {
    std::string place;    ///< "step-up.coilwright: /windings/1/turns"
    std::string found;    ///< "-40"
    std::string allowed;  ///< "a whole number from 1 to 20000"
    bool operator==(const Fault&) const = default;
};

/// The fault as one sentence: "PLACE: found FOUND; allowed is ALLOWED."
[[nodiscard]] std::string sentence(const Fault& fault);

/// Thrown by readers only, with every fault found (at least one), not just the first.
class BadInput : public std::runtime_error {
public:
    explicit BadInput(std::vector<Fault> all) : std::runtime_error(sentence(all.at(0))), faults(std::move(all)) {}
    explicit BadInput(Fault one) : BadInput(std::vector<Fault>{std::move(one)}) {}
    const std::vector<Fault> faults;
};

/// Throws BadInput with that one fault.
[[noreturn]] void refuse(std::string place, std::string found, std::string allowed);

}  // namespace units
