// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/small_png.h"

#include <QBuffer>
#include <algorithm>
#include <unordered_map>
#include <vector>

namespace plots {

namespace {

constexpr std::size_t mostColours = 256;

/// Colours by how often they occur, the most frequent first; of equally many the smaller number first.
std::vector<QRgb> coloursOf(const QImage& picture) {
    std::unordered_map<QRgb, int> counts;
    for (int y = 0; y < picture.height(); ++y)
        for (int x = 0; x < picture.width(); ++x) ++counts[picture.pixel(x, y)];
    std::vector<std::pair<QRgb, int>> sorted(counts.begin(), counts.end());
    std::sort(sorted.begin(), sorted.end(), [](const auto& a, const auto& b) {
        return a.second != b.second ? a.second > b.second : a.first < b.first;
    });
    std::vector<QRgb> colours;
    colours.reserve(sorted.size());
    for (const auto& [colour, count] : sorted) colours.push_back(colour);
    return colours;
}

int apart(QRgb a, QRgb b) {
    const int red = qRed(a) - qRed(b), green = qGreen(a) - qGreen(b), blue = qBlue(a) - qBlue(b);
    return red * red + green * green + blue * blue;
}

}  // namespace

std::string smallPng(const QImage& picture) {
    const QImage full = picture.convertToFormat(QImage::Format_RGB32);
    const std::vector<QRgb> all = coloursOf(full);
    const std::vector<QRgb> kept(all.begin(), all.begin() + static_cast<long>(std::min(all.size(), mostColours)));
    std::unordered_map<QRgb, uint> places;
    for (const QRgb colour : all) {
        const auto nearest = std::min_element(kept.begin(), kept.end(),
                                              [&](QRgb a, QRgb b) { return apart(a, colour) < apart(b, colour); });
        places[colour] = static_cast<uint>(nearest - kept.begin());
    }
    QImage indexed(full.size(), QImage::Format_Indexed8);
    indexed.setColorTable(QList<QRgb>(kept.begin(), kept.end()));
    for (int y = 0; y < full.height(); ++y)
        for (int x = 0; x < full.width(); ++x) indexed.setPixel(x, y, places.at(full.pixel(x, y)));
    QBuffer png;
    png.open(QIODevice::WriteOnly);
    constexpr int smallest = 0;  // Qt's quality of a PNG is how little it is packed
    indexed.save(&png, "PNG", smallest);
    return png.data().toStdString();
}

}  // namespace plots
