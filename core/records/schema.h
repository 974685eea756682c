// SPDX-License-Identifier: GPL-3.0-or-later
// What stands in a file of unit records, and how older files become today's.
#pragma once

#include "records/database.h"

namespace records {

/// "Coil", in SQLite's application_id: what tells a file of unit records from any other database.
inline constexpr std::int64_t applicationId = 0x436F696C;
/// In SQLite's user_version. Version n becomes n + 1 by one step of `schema.cpp`.
inline constexpr std::int64_t schemaVersion = 2;

/// Opens unit records, made if `create` and there are none, and brings older ones up to today, in
/// one transaction. Throws units::BadInput, place `path`: no such file, no database, somebody else's database, or one
/// of a newer version. A file that is refused is not written to.
[[nodiscard]] Database openRecords(const std::string& path, bool create);

/// What makes a file of `version` from an empty one: for tests of the steps.
[[nodiscard]] std::string schemaOf(std::int64_t version);

}  // namespace records
