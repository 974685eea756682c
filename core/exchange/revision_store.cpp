// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/revision_store.h"

#include <sys/stat.h>

#include <cerrno>
#include <filesystem>
#include <system_error>

#include "exchange/design_json.h"
#include "exchange/figures_json.h"
#include "exchange/folder.h"
#include "exchange/read_file.h"
#include "exchange/write_file.h"
#include "json/amount.h"
#include "json/digest.h"
#include "json/record.h"
#include "json/text.h"

namespace exchange {

namespace {

constexpr int registerFormat = 1;
constexpr mode_t readOnly = 0444;

std::string fileOf(const std::string& designPath, const std::string& name) {
    return revisionsFolder(designPath) + "/" + name;
}

/// Writes a file that must not be there yet, and takes the right to write it away.
void writeOnce(const std::string& path, const std::string& text) {
    // A number that the register does not know was left by a write that was cut off before the register's own.
    std::error_code ignored;
    std::filesystem::remove(path, ignored);
    writeFile(path, text);
    (void)::chmod(path.c_str(), readOnly);  // a file system without permissions keeps the digest as its guard
}

std::string intact(const std::string& path, const std::string& digest) {
    std::string text = readFile(path);
    if (const std::string found = json::digest(text); found != digest)
        units::refuse(path, "digest " + found, digest + ", as it was kept: the file was altered");
    return text;
}

}  // namespace

std::string revisionsFolder(const std::string& designPath) {
    std::filesystem::path path(designPath);
    return path.replace_extension(".revisions").string();
}

design::Register readRegister(const std::string& designPath) {
    const std::string file = fileOf(designPath, "register.json");
    std::error_code unclear;  // where it cannot be told, reading says why: an empty register would be written over it
    if (!std::filesystem::exists(file, unclear) && !unclear) return {};
    json::Value root = json::read(readFile(file), file);
    json::limitAmount(root, file);
    if (!root.is_object() || root.value("register", json::Value()) != registerFormat)
        units::refuse(
            file + ": /register",
            root.is_object() && root.contains("register") ? json::foundWords(root["register"]) : std::string("nothing"),
            "the format number " + std::to_string(registerFormat));
    root.erase("register");
    std::vector<units::Fault> faults;
    auto all = json::readRecord<design::Register>(root, file, "", faults);
    for (std::size_t i = 0; faults.empty() && i < all.revisions.size(); ++i)
        if (all.revisions[i].number != static_cast<int>(i) + 1)
            faults.push_back({file + ": /revisions/" + std::to_string(i) + "/number",
                              std::to_string(all.revisions[i].number), std::to_string(i + 1)});
    if (!faults.empty()) throw units::BadInput(std::move(faults));
    return all;
}

void writeRegister(const std::string& designPath, const design::Register& all) {
    json::Value root = json::Value::object();
    root["register"] = registerFormat;
    const json::Value record = json::writeRecord(all);
    for (const auto& [key, value] : record.items()) root[key] = value;
    writeFile(fileOf(designPath, "register.json"), json::write(root));
}

design::Register keepRevision(const std::string& designPath, const design::Design& design, const catalog::Catalog& shop,
                              const std::vector<units::Figure>& figures, const KeptWhy& why) {
    const std::string text = writeDesign(design, shop);
    json::Value stored;
    stored["design"] = design.name;
    stored["digest"] = json::digest(text);
    stored["program"] = why.program;
    stored["figures"] = figuresJson(figures);
    const std::string figuresText = json::write(stored);
    design::Revision next;
    next.mark = design.revision;
    next.date = why.date;
    next.reason = why.reason;
    next.program = why.program;
    next.notice = why.notice;
    next.digest = json::digest(text);
    next.figuresDigest = json::digest(figuresText);
    design::Register all = design::withRevision(readRegister(designPath), std::move(next));
    makeFolder(revisionsFolder(designPath));
    const std::string number = std::to_string(all.revisions.back().number);
    writeOnce(fileOf(designPath, number + ".coilwright"), text);
    writeOnce(fileOf(designPath, number + ".figures.json"), figuresText);
    writeRegister(designPath, all);
    return all;
}

KeptRevision openRevision(const std::string& designPath, int number, const catalog::Catalog& shop) {
    const design::Register all = readRegister(designPath);
    const design::Revision* entry = all.find(number);
    if (entry == nullptr)
        units::refuse("revision " + std::to_string(number), "no such revision",
                      all.revisions.empty() ? std::string("none, as none was kept yet")
                                            : "a number from 1 to " + std::to_string(all.revisions.size()));
    KeptRevision kept;
    kept.entry = *entry;
    const std::string path = fileOf(designPath, std::to_string(number) + ".coilwright");
    kept.design = readDesign(intact(path, entry->digest), path, shop).design;
    const std::string figures = fileOf(designPath, std::to_string(number) + ".figures.json");
    const json::Value stored = json::read(intact(figures, entry->figuresDigest), figures);
    kept.figures = readFigures(stored.is_object() ? stored.value("figures", json::Value()) : stored, figures);
    return kept;
}

}  // namespace exchange
