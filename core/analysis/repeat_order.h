// SPDX-License-Identifier: GPL-3.0-or-later
// The check before a part is ordered again: whether each material can still be had, and what stands in for it.
#pragma once

#include <string>
#include <vector>

#include "analysis/answer.h"

namespace analysis {

enum class Supply { Current, Replaced, Retired, Gone };
/// "current", "replaced: the catalog has other numbers under this name", "retired", "no longer in the catalog"
[[nodiscard]] std::string_view word(Supply supply) noexcept;

/// How far a stand-in moves one promise.
struct PromiseMove {
    std::string text;        ///< the promise, in words
    Standing before, after;  ///< kept, thin, broken
    double byShare = 0;      ///< change of the margin, in the promise's limits (dB: in dB)
};

/// Another material in place of one that cannot be had as it was.
struct StandIn {
    std::string key, title;
    design::DesignPtr design;        ///< the design with it
    std::vector<PromiseMove> moves;  ///< the worst first; promises that stay where they are left out
    /// The largest loss of margin, as a positive share; 0: no promise loses.
    [[nodiscard]] double worst() const;
};

/// One material of a design.
struct Material {
    std::string kind;  ///< "sheet", "alloy", "wire", "bobbin", "insulation"
    std::string key, title;
    Supply supply = Supply::Current;
    std::vector<StandIn> standIns;  ///< for one that is not current: the one that takes the least from a promise first
};

/// Every material that a checked design names by key, against today's catalog. What a design carries as its own entry
/// is no matter of the catalog. Stand-ins are current entries of the same kind that fit: the same material with today's
/// numbers; wires within 6 % of the bare diameter; alloys of the same family; insulations of the same form; bobbins for
/// the same sheet; sheets whose window and tongue are within 2 % (limits of our own; common practice, no source). Those
/// with which the design has a fault are left out. Polls `stop`; the list is then cut short.
[[nodiscard]] std::vector<Material> repeatOrder(const design::Design& design, const catalog::Catalog& shop,
                                                const AnswerPtr& now, const std::stop_token& stop = {});

/// "AWG 38 heavy: thickest loss of margin 4 %: high_3dB_first …", or that no promise moves.
[[nodiscard]] std::string sentence(const StandIn& standIn);

}  // namespace analysis
