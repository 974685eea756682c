// SPDX-License-Identifier: GPL-3.0-or-later
// Design files. What is accepted is laid out, and saved so that it opens again as the same.
#include "altered.h"
#include "coil/coil_build.h"
#include "exchange/design_json.h"
#include "reader.h"

namespace {

void read(std::string_view bytes) {
    const std::string text = fuzz::givenText(bytes, "tests/faults/sample.coilwright");
    const auto opened = fuzz::unlessRefused("f", [&] { return exchange::readDesign(text, "f", {}); });
    if (!opened) return;
    const std::string saved = exchange::writeDesign(*opened->design, {});
    const auto again = exchange::readDesign(saved, "f", {});
    fuzz::require(exchange::writeDesign(*again.design, {}) == saved, "a design that is saved as another");
    static_cast<void>(coil::layOut(*opened->design, {}));
}

const fuzz::Registered design("design", read);

}  // namespace
