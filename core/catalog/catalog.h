// SPDX-License-Identifier: GPL-3.0-or-later
// Everything that can be bought, by key.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "catalog/alloy.h"
#include "catalog/bobbin.h"
#include "catalog/fitting.h"
#include "catalog/insulation.h"
#include "catalog/sheet.h"
#include "catalog/sundry.h"
#include "catalog/wire.h"

namespace catalog {

/// All parts by key; also the copies that a saved design carries.
struct Catalog {
    std::map<std::string, Sheet> sheets;
    std::map<std::string, Alloy> alloys;
    std::map<std::string, Wire> wires;
    std::map<std::string, Bobbin> bobbins;
    std::map<std::string, Insulation> insulation;
    std::map<std::string, Fitting> fittings;
    std::map<std::string, Sundry> sundries;
    bool operator==(const Catalog&) const = default;
};

/// The map that holds parts of type `Part`.
template <class Part>
const std::map<std::string, Part>& partsOf(const Catalog& c);
template <>
inline const std::map<std::string, Sheet>& partsOf<Sheet>(const Catalog& c) {
    return c.sheets;
}
template <>
inline const std::map<std::string, Alloy>& partsOf<Alloy>(const Catalog& c) {
    return c.alloys;
}
template <>
inline const std::map<std::string, Wire>& partsOf<Wire>(const Catalog& c) {
    return c.wires;
}
template <>
inline const std::map<std::string, Bobbin>& partsOf<Bobbin>(const Catalog& c) {
    return c.bobbins;
}
template <>
inline const std::map<std::string, Insulation>& partsOf<Insulation>(const Catalog& c) {
    return c.insulation;
}
template <>
inline const std::map<std::string, Fitting>& partsOf<Fitting>(const Catalog& c) {
    return c.fittings;
}
template <>
inline const std::map<std::string, Sundry>& partsOf<Sundry>(const Catalog& c) {
    return c.sundries;
}

/// The entry that `ref` means: its own, else `stored` (a design's copies), else `catalog`; null if there is none.
template <class Part>
[[nodiscard]] const Part* find(const PartRef<Part>& ref, const Catalog& stored, const Catalog& shop) {
    if (ref.own) return ref.own.get();
    for (const Catalog* where : {&stored, &shop})
        if (const auto it = partsOf<Part>(*where).find(ref.key); it != partsOf<Part>(*where).end()) return &it->second;
    return nullptr;
}

/// One catalog file's text: "sheets.json" and so on, with the name for messages.
struct CatalogFile {
    std::string name;  ///< file name; its stem says which kind of part: sheets alloys wires bobbins insulation fittings
                       ///< sundries
    std::string text;
};

/// Newest format of catalog files that `load` reads.
inline constexpr int newestFormat = 1;

/// Reads catalog files in order; an entry of a later file replaces one of the same key (a shop's own folder comes
/// last). Each file: {"format": 1, "note": text, "sources": {key: text}, "entries": {key: entry}}. Each entry passes
/// its own `check`; every source that a number names must be a key of its file's "sources", and the "fits" of
/// a bobbin or fitting a sheet. In the result the key is replaced by the source's text, so that a copy of an entry says
/// by itself where its numbers come from. Throws BadInput with all faults of all files.
[[nodiscard]] Catalog load(const std::vector<CatalogFile>& files);

}  // namespace catalog
