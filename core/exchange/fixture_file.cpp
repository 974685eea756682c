// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/fixture_file.h"

#include <chrono>
#include <filesystem>

#include "exchange/value_text.h"
#include "json/text.h"
#include "units/text.h"

namespace exchange {

namespace {

/// Whether text is a day of the calendar, as "2026-05-31" (ISO 8601).
bool isDay(const std::string& text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
    int numbers[3] = {0, 0, 0};
    for (std::size_t k = 0, number = 0; k < text.size(); ++k) {
        if (k == 4 || k == 7)
            ++number;
        else if (text[k] < '0' || text[k] > '9')
            return false;
        else
            numbers[number] = 10 * numbers[number] + (text[k] - '0');
    }
    const std::chrono::year_month_day day{std::chrono::year(numbers[0]),
                                          std::chrono::month(static_cast<unsigned>(numbers[1])),
                                          std::chrono::day(static_cast<unsigned>(numbers[2]))};
    return day.ok();
}

void check(const design::Fixture& fixture, const std::string& file, std::vector<units::Fault>& faults) {
    const auto fault = [&](const std::string& at, const std::string& found, const std::string& allowed) {
        faults.push_back({file + ": " + at, found, allowed});
    };
    const auto rising = [&](const std::string& at, double low, double high, const std::string& what) {
        if (!(low < high)) fault(at, units::shortest(high), "more than " + what + ", " + units::shortest(low));
    };
    rising("/generator/highest_frequency", fixture.generator.lowest, fixture.generator.highest, "the lowest");
    rising("/upkeep/room_highest", fixture.upkeep.roomLow, fixture.upkeep.roomHigh, "the lowest");
    const design::PlugIns& parts = fixture.plugIns;
    if (parts.highestResistance > 0)
        rising("/plug_in/highest_resistance", parts.lowestResistance, parts.highestResistance, "the lowest");
    if (parts.highestCapacitance > 0)
        rising("/plug_in/highest_capacitance", parts.lowestCapacitance, parts.highestCapacitance, "the lowest");
    const auto told = [&](const std::string& name, const design::Doubt& doubt) {
        if (!(doubt.at(1) > 0))
            fault("/uncertainty/" + name, "0", "a share or a least part above 0: no instrument is without doubt");
    };
    told("resistance", fixture.doubts.resistance);
    told("ratio", fixture.doubts.ratio);
    told("inductance", fixture.doubts.inductance);
    told("capacitance", fixture.doubts.capacitance);
    told("frequency", fixture.doubts.frequency);
    told("impedance", fixture.doubts.impedance);
    const auto& all = fixture.upkeep.calibrations;
    if (all.empty()) fault("/upkeep/calibrations", "none", "at least one instrument with its day");
    for (std::size_t k = 0; k < all.size(); ++k)
        if (!isDay(all[k].until))
            fault("/upkeep/calibrations/" + std::to_string(k) + "/until", '"' + all[k].until + '"',
                  "a day as \"2026-05-31\"");
}

}  // namespace

design::Fixture readFixture(const std::string& text, const std::string& file) {
    const json::Value value = json::read(text, file);
    if (!value.is_object()) units::refuse(file, json::foundWords(value), "an object in curly brackets");
    std::vector<units::Fault> faults;
    auto fixture = json::readRecord<design::Fixture>(value, file, "", faults);
    if (faults.empty()) check(fixture, file, faults);
    if (!faults.empty()) throw units::BadInput(faults);
    return fixture;
}

std::string writeFixture(const design::Fixture& fixture) {
    return valueText(json::writeRecord(fixture));
}

std::string fixtureFile(const std::vector<std::string>& folders) {
    std::error_code unreadable;  // reported by the reading that follows, with the path
    for (auto folder = folders.rbegin(); folder != folders.rend(); ++folder) {
        const auto path = std::filesystem::path(*folder) / "fixtures" / "bench.json";
        if (std::filesystem::exists(path, unreadable)) return path.string();
    }
    units::refuse("command line: --fixture", "no fixtures/bench.json in the shop's folders", "--fixture F.json");
}

}  // namespace exchange
