// SPDX-License-Identifier: GPL-3.0-or-later
#include "savings.h"

#include <stdlib.h>

#include <filesystem>

#include "design/edit.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "exchange/revision_store.h"
#include "exchange/write_file.h"

namespace savings {

namespace {

namespace fs = std::filesystem;

const std::string sample = COILWRIGHT_SOURCE_DIR "/tests/faults/sample.coilwright";

design::DesignPtr oldDesign() {
    static const design::DesignPtr kept = exchange::readDesign(exchange::readFile(sample), sample, {}).design;
    return kept;
}
design::DesignPtr newDesign() {
    static const design::DesignPtr made =
        design::changed(*oldDesign(), [](design::Design& d) { d.name += ", mended"; });
    return made;
}
const std::string& oldText() {
    static const std::string text = exchange::writeDesign(*oldDesign(), {});
    return text;
}
const std::string& newText() {
    static const std::string text = exchange::writeDesign(*newDesign(), {});
    return text;
}
std::string designIn(const std::string& folder) {
    return folder + "/unit.coilwright";
}

Found textFound(const std::string& folder) {
    if (!fs::exists(designIn(folder))) return Found::Torn;
    const std::string text = exchange::readFile(designIn(folder));
    return text == newText() ? Found::New : text == oldText() ? Found::Old : Found::Torn;
}

void keep(const std::string& folder, const design::DesignPtr& design, const std::string& reason) {
    units::Figure figure;
    figure.name = "turns_ratio";
    figure.value = 10;
    exchange::keepRevision(designIn(folder), *design, {}, {figure}, {"2026-11-25", reason, "coilwright", ""});
}

/// How many revisions open again, each as its digest says; -1 if one does not.
int revisionsThatOpen(const std::string& folder) {
    const design::Register all = exchange::readRegister(designIn(folder));
    for (const design::Revision& revision : all.revisions)
        static_cast<void>(exchange::openRevision(designIn(folder), revision.number, {}));
    return static_cast<int>(all.revisions.size());
}
std::function<Found(const std::string&)> revisionsFound(int before) {
    return [before](const std::string& folder) {
        const int count = revisionsThatOpen(folder);
        return count == before + 1 ? Found::New : count == before ? Found::Old : Found::Torn;
    };
}

void writeOld(const std::string& folder) {
    exchange::writeFile(designIn(folder), oldText());
}
void writeNew(const std::string& folder) {
    exchange::writeFile(designIn(folder), newText());
}

void note(const std::string& folder) {
    design::Register all = exchange::readRegister(designIn(folder));
    all.revisions.at(0).firstLot = "lot 7";
    exchange::writeRegister(designIn(folder), all);
}
Found noteFound(const std::string& folder) {
    if (revisionsThatOpen(folder) != 1) return Found::Torn;
    return exchange::readRegister(designIn(folder)).revisions.at(0).firstLot == "lot 7" ? Found::New : Found::Old;
}

}  // namespace

const std::vector<Saving>& all() {
    static const std::vector<Saving> list{
        {"DesignOverOlder", writeOld, writeNew, textFound},
        {"FirstDesign", [](const std::string&) {}, writeNew,
         [](const std::string& folder) { return fs::exists(designIn(folder)) ? textFound(folder) : Found::Old; }},
        {"DesignBehindALink",
         [](const std::string& folder) {
             fs::create_directory(folder + "/real");
             exchange::writeFile(folder + "/real/kept.coilwright", oldText());
             fs::create_symlink("real/kept.coilwright", designIn(folder));
         },
         writeNew,
         [](const std::string& folder) { return fs::is_symlink(designIn(folder)) ? textFound(folder) : Found::Torn; }},
        {"FirstRevision", writeOld, [](const std::string& folder) { keep(folder, oldDesign(), "first"); },
         revisionsFound(0)},
        {"SecondRevision",
         [](const std::string& folder) {
             writeOld(folder);
             keep(folder, oldDesign(), "first");
         },
         [](const std::string& folder) { keep(folder, newDesign(), "second"); }, revisionsFound(1)},
        {"NoteOnARevision",
         [](const std::string& folder) {
             writeOld(folder);
             keep(folder, oldDesign(), "first");
         },
         note, noteFound}};
    return list;
}

Scratch::Scratch() {
    std::string pattern = fs::temp_directory_path() / "coilwright-saving-XXXXXX";
    if (::mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("no folder could be made");
    path_ = pattern;
}

Scratch::~Scratch() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
}

void Scratch::empty() const {
    for (const auto& entry : fs::directory_iterator(path_)) fs::remove_all(entry.path());
}

}  // namespace savings
