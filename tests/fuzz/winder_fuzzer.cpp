// SPDX-License-Identifier: GPL-3.0-or-later
// Descriptions of winders, by both readers: of a description that the first accepts the second must make a machine.
#include "altered.h"
#include "exchange/winder.h"
#include "reader.h"
#include "replay/machine.h"

namespace {

void read(std::string_view bytes) {
    const std::string text = fuzz::givenText(bytes, "resources/winders/six-spindle.json");
    const auto winder = fuzz::unlessRefused("f", [&] { return exchange::readWinder(text, "f"); });
    const auto machine = fuzz::unlessRefused("f", [&] { return replay::readMachine(text, "f"); });
    fuzz::require(machine || !winder, "a winder that only one of the two readers accepts");
}

const fuzz::Registered winders("winder", read);

}  // namespace
