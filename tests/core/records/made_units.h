// SPDX-License-Identifier: GPL-3.0-or-later
// Invented unit records and a folder that goes with the test.
#pragma once

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <random>
#include <string>
#include <vector>

#include "records/unit_record.h"

namespace made {

/// `count` invented units from serial `from` on: four readings, lots, a twentieth of them failed with a cause.
inline std::vector<records::UnitRecord> units(int from, int count) {
    std::mt19937 random(static_cast<unsigned>(from));
    std::normal_distribution<double> draw;
    std::vector<records::UnitRecord> all;
    for (int k = from; k < from + count; ++k) {
        records::UnitRecord unit;
        unit.part = "T-" + std::to_string(k % 5);
        unit.revision = "A";
        unit.serial = "S" + std::to_string(k);
        unit.stage = "potted";
        char time[32];
        std::snprintf(time, sizeof time, "2026-%02d-%02dT%02d:%02d", 1 + k / 8640 % 12, 1 + k / 288 % 28, k / 12 % 24,
                      5 * (k % 12));
        unit.time = time;
        unit.verdict = random() % 20 == 0 ? "fail" : "pass";
        if (unit.verdict == "fail") unit.cause = random() % 3 == 0 ? "gap" : "shorted turn";
        unit.lots = {{"sheets", "L" + std::to_string(k / 500)}, {"wire", "W" + std::to_string(k / 2000)}};
        unit.initials = {{"wind", k % 2 == 0 ? "ab" : "cd"}};
        unit.readings = {{"dcr P", "ohm", 45 + 0.3 * draw(random)},
                         {"ratio", "", 4 + 0.002 * draw(random)},
                         {"inductance P", "H", 12 + draw(random)},
                         {"thd 20 Hz", "%", 0.1 + 0.01 * draw(random)}};
        all.push_back(std::move(unit));
    }
    return all;
}

class Folder {
public:
    Folder() {
        std::string name = (std::filesystem::temp_directory_path() / "coilwright-records-XXXXXX").string();
        if (mkdtemp(name.data()) == nullptr) std::abort();
        path_ = name;
    }
    ~Folder() {
        std::error_code error;
        std::filesystem::remove_all(path_, error);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    [[nodiscard]] std::string in(const std::string& name) const { return path_ + "/" + name; }

private:
    std::string path_;
};

/// Whether everything is to be run, not a sample.
inline bool full() {
    return std::getenv("COILWRIGHT_FULL") != nullptr;
}

}  // namespace made
