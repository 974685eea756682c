// SPDX-License-Identifier: GPL-3.0-or-later
#include "seek/candidate_words.h"

#include "units/joined.h"
#include "units/text.h"

namespace seek {

using units::joined;
using units::Kind;

std::string coreWords(const design::Design& d) {
    std::string text = d.core.sheet.key;
    for (const auto& part : d.core.stack) {
        text += joined({&part == &d.core.stack.front() ? ", " : " and ", part.alloy.key});
        if (part.share < 1) text += joined({" ", units::write(Kind::Share, part.share, 2)});
    }
    return joined({text, ", sheets of ", units::write(Kind::Length, d.core.stack.front().thickness), ", stack ",
                   units::write(Kind::Length, d.core.height), ", bobbin ", d.bobbin.key});
}

std::string windingWords(const design::Design& d) {
    std::string text;
    for (const auto& w : d.windings) {
        if (!text.empty()) text += "; ";
        text += joined({w.name, " ", units::shortest(design::conductorTurns(d, w)), " turns of "});
        if (w.strands > 1) text += joined({std::to_string(w.strands), " wires "});
        text += w.foil ? "foil" : w.wire.key;
    }
    return text;
}

std::string burdenWords(const Burden& b, const shop::Prices* prices) {
    std::string text;
    if (b.priced && prices != nullptr)
        text = joined({units::significant(b.cost, 4), " ", prices->currency, " each at 100; "});
    return joined({text, "copper ", units::write(Kind::Mass, b.copper), ", sheets ", units::write(Kind::Mass, b.iron),
                   "; ", units::write(Kind::Length, b.width), " x ", units::write(Kind::Length, b.length), " x ",
                   units::write(Kind::Length, b.height)});
}

std::string weakestWords(const Candidate& candidate) {
    for (const auto& p : candidate.promises)
        if (p.text == candidate.weakestPromise)
            return joined({p.text, ", ", analysis::word(p.standing), " by ", units::write(p.kind, p.margin)});
    return {};
}

}  // namespace seek
