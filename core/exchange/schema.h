// SPDX-License-Identifier: GPL-3.0-or-later
// The published schemas, generated from the tables of fields that read and write.
#pragma once

#include <string>

namespace exchange {

/// JSON Schema (draft 2020-12) of a design file, as canonical text: resources/schema/design.schema.json.
[[nodiscard]] std::string designSchema();
/// JSON Schema of a catalog file: resources/schema/catalog.schema.json.
[[nodiscard]] std::string catalogSchema();
/// JSON Schema of a winder's description: resources/schema/winder.schema.json.
[[nodiscard]] std::string winderSchema();

}  // namespace exchange
