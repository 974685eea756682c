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
    void fault(const std::string& found, const std::string& allowed) {
        faults_.push_back({joined({file_, ": line ", std::to_string(line_)}), found, allowed});
    }
    static std::string shown(std::string_view text) {
        return joined({"\"", std::string(text.substr(0, shownOfALine)), "\""});
    }

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
        spread::FigureRead reading{name, 0, 0};
        if (!number(figure->unit, withoutBlanks(line.substr(first + 1, second - first - 1)), reading.value)) return;
        if (second < line.size()) {
            if (!doubt(figure->unit, withoutBlanks(line.substr(second + 1)), reading)) return;
            if (!(reading.doubt > 0)) return fault("a doubt of nothing", "a doubt above 0");
        }
        all_.push_back(reading);
    }
    bool number(const std::string& unit, std::string_view text, double& value) {
        try {
            value = units::read(units::kindOfUnit(unit), text);
            if (std::isfinite(value)) return true;
            fault(shown(text), "a number");
        } catch (const units::BadInput& bad) {
            fault(shown(text), bad.faults.front().allowed);
        }
        return false;
    }
    bool doubt(const std::string& unit, std::string_view text, spread::FigureRead& reading) {
        const bool share = text.ends_with('%') && unit != "dB" && unit != "dBu";
        double read = 0;
        try {
            read = units::read(share           ? units::Kind::Share
                               : unit == "dBu" ? units::Kind::Decibel
                                               : units::kindOfUnit(unit),
                               text);
        } catch (const units::BadInput& bad) {
            fault(shown(text), bad.faults.front().allowed);
            return false;
        }
        reading.doubt = share ? read * std::abs(reading.value) : read;
        return true;
    }

    const std::string& file_;
    const std::vector<units::Figure>& known_;
    std::vector<spread::FigureRead> all_;
    std::vector<units::Fault> faults_;
    std::size_t line_ = 0;
    bool begun_ = false;
};

}  // namespace

std::vector<spread::FigureRead> readReadings(std::string_view text, const std::string& file,
                                             const std::vector<units::Figure>& known) {
    return ReadingsReader(file, known).read(text);
}

}  // namespace exchange
