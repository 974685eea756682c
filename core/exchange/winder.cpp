// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/winder.h"

#include <filesystem>
#include <set>

#include "exchange/read_file.h"
#include "exchange/winder_check.h"
#include "json/amount.h"
#include "json/text.h"
#include "units/joined.h"

namespace exchange {

const StopCode& StopCodes::of(StopKind kind) const {
    const std::array<const StopCode*, 8> all{&paper, &shield, &tap, &pin, &wire, &lead, &splice, &foil};
    return *all.at(static_cast<std::size_t>(kind));
}

const char* stopName(StopKind kind) noexcept {
    constexpr std::array<const char*, 8> words{"paper", "shield", "tap", "pin", "wire", "lead", "splice", "foil"};
    return words[static_cast<std::size_t>(kind)];
}

Winder readWinder(const std::string& text, const std::string& file) {
    const json::Value value = json::read(text, file);
    json::limitAmount(value, file);
    if (!value.is_object()) units::refuse(file, json::foundWords(value), "an object in curly brackets");
    std::vector<units::Fault> faults;
    Winder winder = json::readRecord<Winder>(value, file, "", faults);
    if (faults.empty()) checkWinder(winder, file, faults);
    if (!faults.empty()) throw units::BadInput(faults);
    return winder;
}

std::vector<std::string> winderNames(const std::vector<std::string>& folders) {
    std::set<std::string> names;
    for (const std::string& folder : folders) {
        std::error_code unreadable;  // a folder that is not there has no winders
        std::filesystem::directory_iterator at(std::filesystem::path(folder) / "winders", unreadable);
        for (; at != std::filesystem::directory_iterator(); at.increment(unreadable))
            if (at->path().extension() == ".json") names.insert(at->path().stem().string());
    }
    return {names.begin(), names.end()};
}

std::string winderFile(const std::string& nameOrPath, const std::vector<std::string>& folders) {
    if (nameOrPath.find('/') != std::string::npos || nameOrPath.ends_with(".json")) return nameOrPath;
    std::error_code unreadable;  // reported by the reading that follows, with the path
    for (auto folder = folders.rbegin(); folder != folders.rend() && !nameOrPath.empty(); ++folder) {
        const auto path = std::filesystem::path(*folder) / "winders" / (nameOrPath + ".json");
        if (std::filesystem::exists(path, unreadable)) return path.string();
    }
    std::string known;
    for (const std::string& name : winderNames(folders)) known.append(name).append(", ");
    units::refuse("command line: --winder", nameOrPath.empty() ? "nothing" : '"' + nameOrPath + '"',
                  known + "or the path of a .json file");
}

OpenedWinder openWinder(const std::string& nameOrPath, const std::vector<std::string>& folders) {
    OpenedWinder opened;
    opened.file = winderFile(nameOrPath, folders);
    opened.text = readFile(opened.file);
    opened.winder = readWinder(opened.text, opened.file);
    return opened;
}

}  // namespace exchange
