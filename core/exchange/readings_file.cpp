// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/readings_file.h"

#include <algorithm>
#include <cmath>

#include "units/fault.h"
#include "units/joined.h"
#include "units/kind.h"
#include "units/most_faults.h"
#include "units/text.h"

namespace exchange {

namespace {

using units::joined;

constexpr std::size_t mostReadings = 200, shownOfALine = 60;

std::string_view withoutBlanks(std::string_view text) {
    const auto first = text.find_first_not_of(" \t\r");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t\r") - first + 1);
}

std::string shown(std::string_view text) {
    return joined({"\"", std::string(text.substr(0, shownOfALine)), "\""});
}

/// A quantity of `kind`; a fault there is told with what was typed.
double quantity(units::Kind kind, std::string_view text, const std::string& place) {
    double value = 0;
    try {
        value = units::read(kind, text);
    } catch (const units::BadInput& bad) {
        units::refuse(place, shown(text), bad.faults.front().allowed);
    }
    if (!std::isfinite(value)) units::refuse(place, shown(text), "a number");
    return value;
}

class ReadingsReader {
public:
    ReadingsReader(const std::string& file, const std::vector<units::Figure>& known) : file_(file), known_(known) {}

    std::vector<spread::FigureRead> read(std::string_view text) {
        if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
        while (!text.empty() && faults_.size() < units::mostFaults) {
            const std::size_t end = std::min(text.find('\n'), text.size());
            ++line_;
            take(withoutBlanks(text.substr(0, end)));
            text.remove_prefix(std::min(end + 1, text.size()));
        }
        if (all_.empty() && faults_.empty()) fault("no reading", "a line FIGURE,VALUE");
        if (!faults_.empty()) throw units::BadInput(std::move(faults_));
        return std::move(all_);
    }

private:
    [[nodiscard]] std::string place() const { return joined({file_, ": line ", std::to_string(line_)}); }
    void fault(const std::string& found, const std::string& allowed) { faults_.push_back({place(), found, allowed}); }

    void take(std::string_view line) {
        if (line.empty() || line.front() == '#') return;
        if (!begun_ && (line == "figure,value" || line == "figure,value,doubt")) {
            begun_ = true;
            return;
        }
        begun_ = true;
        const std::size_t first = line.find(',');
        if (first == std::string_view::npos) return fault(shown(line), "FIGURE,VALUE or FIGURE,VALUE,DOUBT");
        const std::size_t second = std::min(line.find(',', first + 1), line.size());
        const std::string name(withoutBlanks(line.substr(0, first)));
        const auto figure =
            std::find_if(known_.begin(), known_.end(), [&](const units::Figure& f) { return f.name == name; });
        if (figure == known_.end() || !std::isfinite(figure->value))
            return fault(shown(name), "a figure that the design has, as `coilwright figures` names it");
        if (std::any_of(all_.begin(), all_.end(), [&](const auto& r) { return r.figure == name; }))
            return fault(joined({shown(name), " a second time"}), "each once");
        if (all_.size() >= mostReadings) return fault("more readings", "up to 200");
        const auto value = withoutBlanks(line.substr(first + 1, second - first - 1));
        const bool doubted = second < line.size();
        const auto doubt = doubted ? withoutBlanks(line.substr(second + 1)) : std::string_view();
        if (doubted && doubt.empty()) return fault(shown(doubt), "a doubt above 0");
        try {
            all_.push_back(readReading(*figure, value, doubt, place()));
        } catch (const units::BadInput& bad) {
            faults_.push_back(bad.faults.front());
        }
    }
    const std::string& file_;
    const std::vector<units::Figure>& known_;
    std::vector<spread::FigureRead> all_;
    std::vector<units::Fault> faults_;
    std::size_t line_ = 0;
    bool begun_ = false;
};

}  // namespace

spread::FigureRead readReading(const units::Figure& figure, std::string_view value, std::string_view doubt,
                               const std::string& place) {
    spread::FigureRead reading{figure.name, quantity(units::kindOfUnit(figure.unit), value, place), 0};
    if (doubt.empty()) return reading;
    const bool share = doubt.ends_with('%') && !units::inDecibels(figure.unit);
    reading.doubt = quantity(share                  ? units::Kind::Share
                             : figure.unit == "dBu" ? units::Kind::Decibel
                                                    : units::kindOfUnit(figure.unit),
                             doubt, place);
    if (share) reading.doubt *= std::abs(reading.value);
    if (!(reading.doubt > 0)) units::refuse(place, "a doubt of nothing", "a doubt above 0");
    return reading;
}

std::string doubtText(const units::Figure& figure, const spread::FigureRead& reading) {
    if (!(reading.doubt > 0)) return {};
    if (units::inDecibels(figure.unit)) return units::writeExact(units::Kind::Decibel, reading.doubt);
    return units::writeExact(units::kindOfUnit(figure.unit), reading.doubt);
}

std::string writeReadings(const std::vector<spread::FigureRead>& readings, const std::vector<units::Figure>& known) {
    std::string text = "figure,value,doubt\n";
    for (const auto& reading : readings) {
        const auto figure =
            std::find_if(known.begin(), known.end(), [&](const auto& f) { return f.name == reading.figure; });
        if (figure == known.end()) continue;
        text += joined({reading.figure, ",", units::writeExact(units::kindOfUnit(figure->unit), reading.value)});
        if (reading.doubt > 0) text += joined({",", doubtText(*figure, reading)});
        text += '\n';
    }
    return text;
}

std::vector<spread::FigureRead> readReadings(std::string_view text, const std::string& file,
                                             const std::vector<units::Figure>& known) {
    return ReadingsReader(file, known).read(text);
}

}  // namespace exchange
