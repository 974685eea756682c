// SPDX-License-Identifier: GPL-3.0-or-later
// The datasheet as a JSON value. Outside as the paper is: what stands here is read by customers.
#include <cmath>

#include "json/record.h"
#include "shop/paper_content.h"

namespace shop {

template <class Visitor>
void fields(Visitor& visit, PinoutRow& r) {
    visit.need("terminal", r.terminal);
    visit.need("where", r.where);
    visit.need("function", r.function);
    visit.need("dot", r.dot);
}
template <class Visitor>
void fields(Visitor& visit, PinSpot& r) {
    visit.need("number", r.number);
    visit.need("x", r.x);
    visit.need("y", r.y);
    visit.need("used", r.used);
}
template <class Visitor>
void fields(Visitor& visit, Outline& r) {
    visit.need("width", r.width);
    visit.need("length", r.length);
    visit.need("height", r.height);
    visit.need("pins", r.pins);
    visit.need("pitch", r.pitch);
    visit.need("row_distance", r.rowDistance);
}
template <class Visitor>
void fields(Visitor& visit, ValueRow& r) {
    visit.need("what", r.what);
    visit.need("condition", r.condition);
    visit.need("value", r.value);
    visit.need("doubtful", r.doubtful);
}
template <class Visitor>
void fields(Visitor& visit, ChartAxis& r) {
    visit.need("label", r.label);
    visit.need("unit", r.unit);
    visit.need("logarithmic", r.logarithmic);
}

namespace {

struct Notes {
    std::string heading;
    std::vector<std::string> words;
};
template <class Visitor>
void fields(Visitor& visit, Notes& r) {
    visit.need("heading", r.heading);
    visit.need("words", r.words);
}

struct Point {
    double frequency = 0, y = 0;
};
template <class Visitor>
void fields(Visitor& visit, Point& r) {
    visit.need("frequency", r.frequency);
    visit.need("y", r.y);
}

struct Line {
    std::string label;
    bool right = false;
    std::vector<Point> points;  ///< where the line is; JSON has no number for what is not
};
template <class Visitor>
void fields(Visitor& visit, Line& r) {
    visit.need("label", r.label);
    visit.need("right", r.right);
    visit.need("points", r.points);
}

struct Drawn {
    Chart chart;
    std::vector<Line> lines;
};
template <class Visitor>
void fields(Visitor& visit, Drawn& r) {
    visit.need("title", r.chart.title);
    visit.need("left", r.chart.left);
    visit.need("right", r.chart.right);
    visit.need("lines", r.lines);
    visit.need("valid", r.chart.valid);
    visit.need("valid_from", r.chart.validFrom);
    visit.need("valid_to", r.chart.validTo);
}

/// The sheet with what a table of fields can hold.
struct Content {
    Datasheet sheet;
    std::vector<Drawn> charts;
    std::vector<Notes> notes;
};
template <class Visitor>
void fields(Visitor& visit, Content& r) {
    visit.need("title", r.sheet.title);
    visit.need("part_number", r.sheet.partNumber);
    visit.need("revision", r.sheet.revision);
    visit.need("date", r.sheet.date);
    visit.need("digest", r.sheet.digest);
    visit.need("use", r.sheet.use);
    visit.need("pinout", r.sheet.pinout);
    visit.need("outline", r.sheet.outline);
    visit.need("conditions", r.sheet.conditions);
    visit.need("agreed", r.sheet.agreed);
    visit.need("typical", r.sheet.typical);
    visit.need("charts", r.charts);
    visit.need("notes", r.notes);
}

Drawn drawn(const Chart& chart) {
    Drawn all{chart, {}};
    for (const ChartLine& line : chart.lines) {
        Line one{line.label, line.right, {}};
        for (std::size_t k = 0; k < line.y.size() && k < chart.frequency.size(); ++k)
            if (std::isfinite(line.y[k])) one.points.push_back({chart.frequency[k], line.y[k]});
        all.lines.push_back(std::move(one));
    }
    return all;
}

}  // namespace

json::Value contentOf(const Datasheet& sheet) {
    Content content{sheet, {}, {}};
    for (const Chart& chart : sheet.charts) content.charts.push_back(drawn(chart));
    for (const auto& [heading, words] : sheet.notes) content.notes.push_back({heading, words});
    return json::writeRecord(content);
}

}  // namespace shop
