// SPDX-License-Identifier: GPL-3.0-or-later
// What every verb is given, and the table of verbs.
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

#include "commands/places.h"
#include "design/design.h"

namespace commands {

/// A verb returns what goes to standard output. It throws units::BadInput, exchange::WriteFailed or another
/// std::exception whose text is one sentence.
using Verb = std::string (*)(const std::vector<std::string>& typed);

[[nodiscard]] std::string figures(const std::vector<std::string>& typed);
[[nodiscard]] std::string traces(const std::vector<std::string>& typed);
[[nodiscard]] std::string write(const std::vector<std::string>& typed);
[[nodiscard]] std::string picture(const std::vector<std::string>& typed);
[[nodiscard]] std::string pair(const std::vector<std::string>& typed);
[[nodiscard]] std::string revisions(const std::vector<std::string>& typed);
[[nodiscard]] std::string field(const std::vector<std::string>& typed);
[[nodiscard]] std::string lot(const std::vector<std::string>& typed);
[[nodiscard]] std::string winders(const std::vector<std::string>& typed);
[[nodiscard]] std::string spreadUnits(const std::vector<std::string>& typed);
[[nodiscard]] std::string seekDesigns(const std::vector<std::string>& typed);
[[nodiscard]] std::string begin(const std::vector<std::string>& typed);
[[nodiscard]] std::string askCustomer(const std::vector<std::string>& typed);
[[nodiscard]] std::string compareMeasured(const std::vector<std::string>& typed);
[[nodiscard]] std::string unitRecords(const std::vector<std::string>& typed);
[[nodiscard]] std::string likelyCause(const std::vector<std::string>& typed);
[[nodiscard]] std::string fitMeasured(const std::vector<std::string>& typed);
[[nodiscard]] std::string matchReadings(const std::vector<std::string>& typed);
[[nodiscard]] std::string handbookBook(const std::vector<std::string>& typed);
[[nodiscard]] std::string gather(const std::vector<std::string>& typed);

/// What a verb that judges found: the exit status is 0 if `same`, else 1.
struct Judgement {
    std::string text;
    bool same = true;
};
/// As a verb; throws likewise.
using Judge = Judgement (*)(const std::vector<std::string>& typed);
[[nodiscard]] Judgement replayed(const std::vector<std::string>& typed);

/// A design and the catalog it was read against.
struct Opened {
    design::DesignPtr design;
    std::string digest;  ///< of the design's canonical text
    catalog::Catalog shop;
};
/// Reads a design against a catalog. Throws units::BadInput with every fault.
[[nodiscard]] design::DesignPtr readDesign(const std::string& path, const catalog::Catalog& shop);
/// Reads catalog and design. Throws units::BadInput with every fault.
[[nodiscard]] Opened openDesign(const std::string& path);

/// Creates `folder` and those above it. Throws units::BadInput if it cannot be.
void makeFolder(const std::string& folder);

/// "coilwright 0.1.0"
[[nodiscard]] std::string programName();

}  // namespace commands
