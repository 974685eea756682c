// SPDX-License-Identifier: GPL-3.0-or-later
// Where revisions are kept: a folder beside the design's file, "unit.revisions" beside "unit.coilwright". In it
// "register.json", and of each revision "N.coilwright", a whole design file with the catalog entries it used, and
// "N.figures.json". The two are written once, read-only, and never again; saving the design never touches them, and an
// autosave need not carry them.
#pragma once

#include <string>
#include <vector>

#include "analysis/answer.h"
#include "design/revision.h"

namespace exchange {

/// The folder that belongs to a design file.
[[nodiscard]] std::string revisionsFolder(const std::string& designPath);

/// The kept revisions; none is no fault. Throws units::BadInput with every fault.
[[nodiscard]] design::Register readRegister(const std::string& designPath);

/// What a person says about a revision when it is kept.
struct KeptWhy {
    std::string date;     ///< "2026-11-25"
    std::string reason;   ///< one sentence
    std::string program;  ///< "coilwright 0.1.0"
    std::string notice;   ///< for the customer, where a material was substituted
};

/// Keeps a checked design with its figures (of every hook-up) and returns the register with it. Throws units::BadInput
/// (see design::withRevision) or WriteFailed; the register is then as it was.
design::Register keepRevision(const std::string& designPath, const design::Design& design, const catalog::Catalog& shop,
                              const std::vector<units::Figure>& figures, const KeptWhy& why);

/// Writes a register that came from `readRegister` by the functions of design/revision.h.
void writeRegister(const std::string& designPath, const design::Register& all);

/// A kept revision as it was.
struct KeptRevision {
    design::Revision entry;
    design::DesignPtr design;  ///< with the catalog entries stored in it, which rule
    std::vector<units::Figure> figures;
};
/// Opens one. Throws units::BadInput: no such revision, or a file that is not as its digest says.
[[nodiscard]] KeptRevision openRevision(const std::string& designPath, int number, const catalog::Catalog& shop);

}  // namespace exchange
