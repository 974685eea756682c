// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/prices.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>
#include <vector>

#include "units/fault.h"
#include "units/joined.h"
#include "units/most_faults.h"
#include "units/text.h"

namespace shop {

namespace {

using units::joined;

enum Column { Kind, Name, Unit, Value, Minimum, Note, Columns };
constexpr const char* header = "kind,name,unit,value,minimum,note";
constexpr double mostPrice = 1e9;

/// The cells of a line; text in double quotes may hold commas, a doubled quote is one.
std::vector<std::string> cells(std::string_view line) {
    std::vector<std::string> all(1);
    bool quoted = false;
    for (std::size_t k = 0; k < line.size(); ++k) {
        const char c = line[k];
        if (c == '"' && quoted && k + 1 < line.size() && line[k + 1] == '"') {
            all.back() += line[k++];
        } else if (c == '"') {
            quoted = !quoted;
        } else if (c == ',' && !quoted) {
            all.emplace_back();
        } else if (c != '\r') {
            all.back() += c;
        }
    }
    return all;
}

class PriceReader {
public:
    explicit PriceReader(std::string file) : file_(std::move(file)) {}

    Prices read(std::string_view text) {
        if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
        bool head = false;
        while (!text.empty() && faults_.size() < units::mostFaults) {
            const std::size_t end = std::min(text.find('\n'), text.size());
            const std::string_view line = text.substr(0, end);
            text.remove_prefix(std::min(end + 1, text.size()));
            ++line_;
            if (line.find_first_not_of(" \r,") == std::string_view::npos || line.front() == '#') continue;
            const auto row = cells(line);
            if (!head && !isHeader(line)) fault(std::string(line.substr(0, 60)), joined({"the line ", header}));
            if (head) take(row);
            head = true;
        }
        if (!head) fault("no line of headings", header);
        if (prices_.currency.empty()) fault("no currency", "a line currency,EUR,,,,");
        if (!prices_.surcharges.empty() && prices_.surchargeDay.empty())
            fault("a surcharge without its day", "a line surcharge day,2027-01-15,,,,");
        if (!faults_.empty()) throw units::BadInput(std::move(faults_));
        return std::move(prices_);
    }

private:
    static bool isHeader(std::string_view line) {
        while (line.ends_with('\r')) line.remove_suffix(1);
        return line == header;
    }
    void fault(const std::string& found, const std::string& allowed) {
        faults_.push_back({joined({file_, ": line ", std::to_string(line_)}), found, allowed});
    }
    double number(const std::string& text, double low, double high) {
        try {
            const double value = units::read(units::Kind::Number, text);
            if (value >= low && value <= high) return value;
        } catch (const units::BadInput&) {  // said below, with the line
        }
        fault(joined({"\"", text, "\""}),
              joined({"a number from ", units::shortest(low), " to ", units::shortest(high)}));
        return 0;
    }
    bool unitIs(const std::string& unit, const std::set<std::string>& known) {
        if (known.contains(unit)) return true;
        std::string list;
        for (const auto& one : known) list.append(list.empty() ? "" : " or ").append(one);
        fault(joined({"unit \"", unit, "\""}), list);
        return false;
    }

    void take(const std::vector<std::string>& row) {
        if (row.size() > Columns || row.size() <= Value)
            return fault(joined({std::to_string(row.size()), " cells"}), header);
        if (!said_.insert(row[Kind] + "/" + row[Name]).second)
            return fault(joined({row[Kind], " \"", row[Name], "\" a second time"}), "each once");
        if (row[Kind] == "currency") {
            prices_.currency = row[Name];
        } else if (row[Kind] == "valid") {
            prices_.validUntil = row[Name];
        } else if (row[Kind] == "part") {
            if (!unitIs(row[Unit], {"kg", "m", "m2", "piece"})) return;
            Price price{row[Unit], number(row[Value], 0, mostPrice), 0};
            if (row.size() > Minimum && !row[Minimum].empty()) price.minimum = number(row[Minimum], 0, mostPrice);
            prices_.parts[row[Name]] = price;
        } else if (row[Kind] == "labour") {
            if (unitIs(row[Unit], {"h"})) prices_.labour = number(row[Value], 0, mostPrice);
        } else if (row[Kind] == "tooling") {
            prices_.tooling = number(row[Value], 0, mostPrice);
        } else if (row[Kind] == "scrap") {
            constexpr double percent = 100, mostLost = 90;
            if (unitIs(row[Unit], {"%"})) prices_.scrap = number(row[Value], 0, mostLost) / percent;
        } else if (row[Kind] == "margin") {
            constexpr double percent = 100, mostMargin = 1000;
            if (unitIs(row[Unit], {"%"})) prices_.margin = number(row[Value], 0, mostMargin) / percent;
        } else if (row[Kind] == "surcharge") {
            if (unitIs(row[Unit], {"kg"})) prices_.surcharges[row[Name]] = number(row[Value], 0, mostPrice);
        } else if (row[Kind] == "surcharge day") {
            prices_.surchargeDay = row[Name];
        } else if (row[Kind] == "time") {
            if (unitIs(row[Unit], {"min"})) takeTime(row[Name], number(row[Value], 0, mostPrice));
        } else {
            fault(joined({"kind \"", row[Kind], "\""}),
                  "currency, valid, part, labour, time, tooling, scrap, margin, surcharge or surcharge day");
        }
    }
    void takeTime(const std::string& name, double minutes) {
        WorkTimes& t = prices_.times;
        const std::vector<std::pair<const char*, double*>> known{
            {"set-up", &t.setUp}, {"unit", &t.unit},     {"thousand turns", &t.thousandTurns},
            {"wrap", &t.wrap},    {"shield", &t.shield}, {"end", &t.end},
            {"sheet", &t.sheet},  {"test", &t.test}};
        std::string list;
        for (const auto& [word, to] : known) {
            if (name == word) {
                *to = minutes;
                return;
            }
            list.append(list.empty() ? "" : ", ").append(word);
        }
        fault(joined({"time \"", name, "\""}), list);
    }

    std::string file_;
    int line_ = 0;
    Prices prices_;
    std::set<std::string> said_;
    std::vector<units::Fault> faults_;
};

}  // namespace

Prices readPrices(std::string_view text, const std::string& file) {
    return PriceReader(file).read(text);
}

}  // namespace shop
