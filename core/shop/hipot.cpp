// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/hipot.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "shop/sheet_words.h"
#include "units/fault.h"
#include "units/text.h"

namespace shop {

namespace {

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

/// The end of a number that begins at `from`.
std::size_t numberEnd(const std::string& words, std::size_t from) {
    std::size_t at = from;
    while (at < words.size() && (isDigit(words[at]) || ((words[at] == '.' || words[at] == ',') &&
                                                        at + 1 < words.size() && isDigit(words[at + 1]))))
        ++at;
    return at;
}

/// The unit's end if volts stand at `at`, else `at`.
std::size_t voltsEnd(const std::string& words, std::size_t at) {
    std::size_t end = at;
    while (end < words.size() && words[end] == ' ') ++end;
    if (end < words.size() && words[end] == 'k') ++end;
    if (end >= words.size() || words[end] != 'V') return at;
    ++end;
    // "V", "Vrms", "VAC" and "VDC" are volts, "VA" is not.
    const std::string rest = words.substr(end, 3);
    const bool another = !rest.empty() && ((rest[0] >= 'a' && rest[0] <= 'z') || (rest[0] >= 'A' && rest[0] <= 'Z'));
    if (another && rest != "rms" && rest.substr(0, 2) != "AC" && rest.substr(0, 2) != "DC" &&
        rest.substr(0, 2) != "ac" && rest.substr(0, 2) != "dc")
        return at;
    return end;
}

/// One conductor of the winding order, while walking outward.
struct Conductor {
    std::string name;
    double margin = 0;
    bool shield = false;
};

Conductor conductorOf(const design::Item& item) {
    if (const auto* section = item.section())
        return {section->winding, std::min<double>(section->marginLow, section->marginHigh), false};
    const auto* shield = item.shield();
    return {shield->name, std::min<double>(shield->marginLow, shield->marginHigh), true};
}

}  // namespace

std::vector<double> statedVoltages(const std::string& words) {
    std::vector<double> all;
    for (std::size_t k = 0; k < words.size();) {
        const bool begins =
            isDigit(words[k]) && (k == 0 || !(std::isalpha(static_cast<unsigned char>(words[k - 1])) != 0));
        if (!begins) {
            ++k;
            continue;
        }
        const std::size_t end = numberEnd(words, k), unit = voltsEnd(words, end);
        if (unit > end) {
            std::string number = words.substr(k, end - k);
            const bool kilo = words.find('k', end) < unit;
            try {
                all.push_back(units::read(units::Kind::Voltage, number + (kilo ? " kV" : " V")));
            } catch (const units::BadInput&) {
                // Grouped digits, as in "1,500.0 V", are no number here: whoever reads the row sees the words.
            }
        }
        k = std::max(unit, end);
    }
    return all;
}

std::vector<BarrierBetween> barriersOf(const design::Design& design, const catalog::Catalog& shop) {
    std::vector<BarrierBetween> all;
    for (const auto& place : design.coil) {
        std::optional<Conductor> before;
        BarrierBetween between;
        for (const auto& item : place.order) {
            if (const auto* barrier = item.barrier()) {
                between.thickness += barrier->ply.thickness;
                ++between.plies;
                between.material = titleOf(design, barrier->ply.insulation, shop);
                continue;
            }
            const Conductor now = conductorOf(item);
            const bool worth = before && before->name != now.name && !(before->shield && now.shield);
            if (worth) {
                between.a = before->name;
                between.b = now.name;
                between.margin = std::min(before->margin, now.margin);
                all.push_back(between);
            }
            before = now;
            between = {};
        }
    }
    return all;
}

const BarrierBetween* weakestOf(const std::vector<BarrierBetween>& all, const std::string& winding) {
    const BarrierBetween* weakest = nullptr;
    for (const auto& one : all) {
        if (one.a != winding && one.b != winding) continue;
        const bool weaker = weakest == nullptr || one.thickness < weakest->thickness ||
                            (one.thickness == weakest->thickness && one.margin < weakest->margin);
        if (weaker) weakest = &one;
    }
    return weakest;
}

}  // namespace shop
