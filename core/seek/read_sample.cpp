// SPDX-License-Identifier: GPL-3.0-or-later
#include "seek/read_sample.h"

#include <algorithm>
#include <cmath>

#include "spread/likeliest.h"
#include "units/joined.h"
#include "units/kind.h"
#include "units/text.h"

namespace seek {

namespace {

using units::joined;

constexpr double farOff = 3;        // standard deviations, where a tolerance hardly explains a deviation
constexpr double worthALine = 0.2;  // standard deviations that are worth a line
constexpr std::size_t mostDeviations = 5;

std::string readingWords(const spread::FigureRead& reading, const std::vector<units::Figure>& figures,
                         double computed) {
    const auto figure =
        std::find_if(figures.begin(), figures.end(), [&](const units::Figure& f) { return f.name == reading.figure; });
    const units::Kind kind = figure == figures.end() ? units::Kind::Number : units::kindOfUnit(figure->unit);
    const std::string designed = figure == figures.end() ? "nothing" : units::write(kind, figure->value);
    return joined({reading.figure, "  read ", units::write(kind, reading.value), ", designed ", designed,
                   ", as the sample is taken to be ", units::write(kind, computed)});
}

std::string deviationWords(const spread::Deviated& d, const spread::Varying& v) {
    return joined({v.name, "  ", d.deviate < 0 ? "" : "+", units::significant(d.deviate, 2), ": ",
                   units::significant(d.value, 3), " for ", units::significant(v.nominal, 3)});
}

}  // namespace

ReadSample readSample(const design::DesignPtr& recipe, const catalog::Catalog& shop,
                      const catalog::Tolerances& tolerances, const std::vector<spread::FigureRead>& readings,
                      const std::vector<units::Figure>& figures, const std::stop_token& stop) {
    const auto unit = spread::likeliestUnit(*recipe, shop, tolerances, readings, stop);
    ReadSample read{{recipe, unit.design}, {}, {}, {}};
    if (!unit.design) return read;
    for (std::size_t k = 0; k < readings.size(); ++k)
        read.readings.push_back(readingWords(readings[k], figures, unit.figures[k]));
    for (std::size_t k = 0; k < std::min(mostDeviations, unit.deviated.size()); ++k)
        if (const auto& d = unit.deviated[k]; std::abs(d.deviate) >= worthALine)
            read.deviations.push_back(deviationWords(d, unit.variation.all[d.varying]));
    if (!unit.deviated.empty() && std::abs(unit.deviated.front().deviate) > farOff)
        read.doubts.push_back(
            "more than three: no tolerance explains this; look for what went wrong before it is spun again");
    if (unit.furthest > 1)
        read.doubts.push_back(joined({"the readings do not agree with any unit of this design: one is off by ",
                                      units::significant(unit.furthest, 2), " times its doubt"}));
    return read;
}

}  // namespace seek
