// SPDX-License-Identifier: GPL-3.0-or-later
#include "seek/stock.h"

#include <algorithm>

namespace seek {

namespace {

// Below the first wire is wound wild, above the second it is hard to wind round a small bobbin (common practice, no
// source).
constexpr double thinnest = 0.06e-3, thickest = 0.8e-3;
constexpr double sameSize = 0.01;

bool priced(const std::string& key, const shop::Prices* prices) {
    if (prices == nullptr || prices->parts.contains(key)) return true;
    const std::string within = ' ' + key + ' ';
    return std::any_of(prices->parts.begin(), prices->parts.end(),
                       [&](const auto& part) { return part.first.find(within) != std::string::npos; });
}

template <class Part>
std::vector<std::string> currentOf(const std::map<std::string, Part>& all, const shop::Prices* prices) {
    std::vector<std::string> keys;
    for (const auto& [key, part] : all)
        if (part.standing == catalog::Standing::Current && priced(key, prices)) keys.push_back(key);
    return keys;
}

std::vector<std::string> wiresOf(const catalog::Catalog& shop, const shop::Prices* prices) {
    auto keys = currentOf(shop.wires, prices);
    const auto bare = [&](const std::string& key) { return shop.wires.at(key).bareDiameter.value; };
    std::erase_if(keys, [&](const auto& key) { return bare(key) < thinnest || bare(key) > thickest; });
    std::stable_sort(keys.begin(), keys.end(), [&](const auto& a, const auto& b) { return bare(a) > bare(b); });
    std::vector<std::string> sizes;
    for (const auto& key : keys) {
        const double outer = shop.wires.at(key).overallDiameter;
        if (sizes.empty() || bare(key) < bare(sizes.back()) * (1 - sameSize))
            sizes.push_back(key);
        else if (outer < shop.wires.at(sizes.back()).overallDiameter)
            sizes.back() = key;
    }
    return sizes;
}

}  // namespace

Stock stockOf(const catalog::Catalog& shop, const shop::Prices* prices) {
    Stock stock;
    stock.wires = wiresOf(shop, prices);
    stock.alloys = currentOf(shop.alloys, prices);
    stock.bobbins = currentOf(shop.bobbins, prices);
    std::erase_if(stock.bobbins, [&](const auto& key) {
        const auto& bobbin = shop.bobbins.at(key);
        const auto sheet = shop.sheets.find(bobbin.fits);
        return bobbin.chambers.size() != 1 || sheet == shop.sheets.end() || sheet->second.cut == catalog::SheetCut::UI;
    });
    std::size_t most = 0;
    for (const auto& key : currentOf(shop.insulation, prices)) {
        const auto& entry = shop.insulation.at(key);
        if (entry.form != catalog::InsulationForm::Film) continue;
        if (key.find("tape") != std::string::npos) stock.tape = key;
        if (entry.thicknesses.size() <= most) continue;
        most = entry.thicknesses.size();
        stock.film = key;
    }
    if (stock.tape.empty()) stock.tape = stock.film;
    return stock;
}

}  // namespace seek
