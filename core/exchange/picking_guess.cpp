// SPDX-License-Identifier: GPL-3.0-or-later
// Which columns of a table are frequency, value and angle, from the names above them.
#include <algorithm>
#include <array>

#include "exchange/measured_table.h"
#include "exchange/table_lines.h"
#include "json/text.h"
#include "units/csv_cell.h"
#include "units/fault.h"
#include "units/joined.h"

namespace exchange {

namespace {

using measured::CurveKind;

/// A column's name in small letters, cut into words of letters and signs of units: "|Z| [kohm]" is |z|, kohm.
class NameWords {
public:
    explicit NameWords(std::string_view name) {
        bool inside = false;
        for (std::size_t k = 0; k < name.size(); ++k) {
            const char c = name[k];
            const bool part = isWordPart(c);
            if (part && !inside) words_.emplace_back();
            if (part) words_.back() += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
            inside = part;
        }
    }
    template <std::size_t N>
    [[nodiscard]] bool hasOneOf(const std::array<std::string_view, N>& known) const {
        return std::any_of(words_.begin(), words_.end(), [&](const std::string& word) {
            return std::find(known.begin(), known.end(), word) != known.end();
        });
    }
    [[nodiscard]] bool has(std::string_view word) const { return hasOneOf(std::array<std::string_view, 1>{word}); }

private:
    static bool isWordPart(char c) {
        const auto byte = static_cast<unsigned char>(c);
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '%' || c == '|' ||
               byte >= 0x80;
    }
    std::vector<std::string> words_;
};

constexpr std::array<std::string_view, 5> frequencyWords{"frequency", "freq", "f", "frequenz", "hertz"};
constexpr std::array<std::string_view, 4> hertzWords{"hz", "khz", "mhz", "ghz"};
constexpr std::array<std::string_view, 8> angleWords{"phase", "angle", "deg", "degree", "degrees", "rad", "theta", "°"};
constexpr std::array<std::string_view, 6> imaginaryWords{"im", "imag", "imaginary", "x", "reactance", "xs"};
constexpr std::array<std::string_view, 6> realWords{"re", "real", "r", "resistance", "rs", "esr"};
constexpr std::array<std::string_view, 10> ohmWords{"ohm", "ohms", "kohm", "mohm",      "Ω",
                                                    "kΩ",  "Ω",    "|z|",  "impedance", "z"};
constexpr std::array<std::string_view, 5> distortionWords{"thd", "distortion", "thdn", "%", "percent"};
constexpr std::array<std::string_view, 4> noiseWords{"noise", "rthz", "√hz", "vrthz"};
constexpr std::array<std::string_view, 11> voltWords{"v",    "mv",    "uv",    "µv",   "μv",   "nv",
                                                     "vrms", "mvrms", "uvrms", "volt", "volts"};
constexpr std::array<std::string_view, 3> ratioWords{"ratio", "linear", "lin"};
constexpr std::array<std::string_view, 9> levelWords{"db",        "dbv",       "dbu", "gain",    "level",
                                                     "magnitude", "amplitude", "mag", "response"};

bool tellsValue(const NameWords& words) {
    return words.hasOneOf(noiseWords) || words.hasOneOf(distortionWords) || words.hasOneOf(ohmWords) ||
           words.hasOneOf(voltWords) || words.hasOneOf(ratioWords) || words.hasOneOf(levelWords);
}
/// Whether a name says anything of what is below it.
bool tells(const NameWords& words) {
    return tellsValue(words) || words.hasOneOf(frequencyWords) || words.hasOneOf(hertzWords) ||
           words.hasOneOf(angleWords) || words.hasOneOf(imaginaryWords) || words.hasOneOf(realWords);
}

double prefixOf(const NameWords& words) {
    if (words.hasOneOf(std::array<std::string_view, 4>{"mv", "mvrms", "mohm", "millivolt"})) return 1e-3;
    if (words.hasOneOf(std::array<std::string_view, 4>{"uv", "µv", "μv", "uvrms"})) return 1e-6;
    if (words.hasOneOf(std::array<std::string_view, 2>{"nv", "nvrms"})) return 1e-9;
    if (words.hasOneOf(std::array<std::string_view, 3>{"kohm", "kΩ", "kv"})) return 1e3;
    return 1;
}

double hertzOf(const NameWords& words) {
    constexpr std::array<double, 4> factors{1, 1e3, 1e6, 1e9};
    for (std::size_t k = 0; k < hertzWords.size(); ++k)
        if (words.has(hertzWords[k])) return factors[k];
    return 1;
}

/// Kind and form that a name tells.
void tellValue(const NameWords& words, Picking& p) {
    p.factor = prefixOf(words);
    const bool decibel = words.has("db");
    if (words.hasOneOf(noiseWords)) {
        p.kind = CurveKind::Noise;
        p.form = ValueForm::VoltPerRootHertz;
    } else if (words.hasOneOf(distortionWords)) {
        p.kind = CurveKind::Distortion;
        p.form = decibel ? ValueForm::Decibel : ValueForm::Percent;
    } else if (words.hasOneOf(ohmWords)) {
        p.kind = CurveKind::Impedance;
        p.form = ValueForm::Ohm;
    } else if (words.has("dbv")) {
        p.form = ValueForm::LevelDbv;
    } else if (words.has("dbu")) {
        p.form = ValueForm::LevelDbu;
    } else if (!decibel && words.hasOneOf(voltWords)) {
        p.form = ValueForm::Volt;
    } else if (!decibel && words.hasOneOf(ratioWords)) {
        p.form = ValueForm::Ratio;
    }
}

/// The first column whose name fits and that is not taken.
template <std::size_t N>
std::optional<std::size_t> find(const std::vector<NameWords>& names, const std::array<std::string_view, N>& words,
                                const std::vector<std::optional<std::size_t>>& taken) {
    for (std::size_t k = 0; k < names.size(); ++k)
        if (names[k].hasOneOf(words) && std::find(taken.begin(), taken.end(), k) == taken.end()) return k;
    return {};
}

void pickColumns(const std::vector<NameWords>& names, const PickingWish& wish, Picking& p) {
    auto frequency = wish.frequency;
    if (!frequency) frequency = find(names, frequencyWords, {wish.value, wish.second});
    if (!frequency) frequency = find(names, hertzWords, {wish.value, wish.second});
    p.frequency = frequency.value_or(0);
    const auto imaginary = find(names, imaginaryWords, {p.frequency, wish.value});
    const auto real = find(names, realWords, {p.frequency, wish.second});
    if (!wish.value && !wish.second && imaginary && real) {
        p.value = real;
        p.second = imaginary;
        return;
    }
    p.second = wish.second ? wish.second : find(names, angleWords, {p.frequency, wish.value});
    p.value = wish.value;
    const auto free = [&](std::size_t k) { return !p.value && k != p.frequency && p.second != k; };
    for (std::size_t k = 0; k < names.size(); ++k)
        if (free(k) && tellsValue(names[k])) p.value = k;
    for (std::size_t k = 0; k < names.size(); ++k)
        if (free(k)) p.value = k;
    // Three columns of which no name says anything: level and phase.
    const bool nameless = std::none_of(names.begin(), names.end(), tells);
    if (!p.second && !wish.value && !wish.frequency && nameless && names.size() == 3) p.second = 2;
}

/// What the column beside the value holds; `first` is the value's name, null if there is no value.
void tellSecond(const NameWords& second, const NameWords* first, Picking& p) {
    if (second.hasOneOf(angleWords) || !second.hasOneOf(imaginaryWords)) {
        p.angle = second.has("rad") || second.has("radian") ? AngleForm::Radian : AngleForm::Degree;
        return;
    }
    p.angle = AngleForm::Imaginary;
    if (first == nullptr) return;
    const bool ohm = first->hasOneOf(ohmWords) || second.hasOneOf(ohmWords) ||
                     second.hasOneOf(std::array<std::string_view, 3>{"x", "reactance", "xs"});
    p.kind = ohm ? CurveKind::Impedance : CurveKind::Response;
    p.form = ValueForm::Real;
}

void checkSize(std::string_view text, const std::string& file) {
    if (text.size() > json::maximumBytes) units::refuse(file, "more than 10 MB", "10 MB at most");
    if (text.find('\0') != std::string_view::npos)
        units::refuse(file, "bytes that are no text", "text in ASCII or UTF-8");
}

}  // namespace

namespace detail {

std::vector<std::string> columnNames(const std::vector<std::string_view>& lines, const Picking& picking) {
    const auto count = units::csvCells(lines[picking.firstRow], picking.delimiter).size();
    std::vector<std::string> names;
    for (std::size_t k = picking.firstRow, seen = 0; k-- > 0 && seen < 2;) {
        std::string_view line = lines[k];
        if (isBlankLine(line)) continue;
        while (isRemark(line)) line.remove_prefix(line.find_first_not_of(" \t") + 1);
        auto cells = units::csvCells(line, picking.delimiter);
        if (cells.size() != count && picking.delimiter == ' ') cells = units::csvCells(line, ',');
        if (cells.size() != count) break;
        ++seen;
        if (names.empty()) {
            names = std::move(cells);
        } else {
            for (std::size_t c = 0; c < count; ++c)
                names[c] = names[c].empty() ? cells[c] : units::joined({cells[c], " [", names[c], "]"});
        }
    }
    names.resize(count);
    for (std::size_t c = 0; c < count; ++c)
        if (names[c].empty()) names[c] = "column " + std::to_string(c + 1);
    return names;
}

}  // namespace detail

Picking guessedPicking(std::string_view text, const std::string& file, const PickingWish& wish) {
    checkSize(text, file);
    const auto lines = units::csvLines(text);
    const detail::TableShape shape = detail::tableShape(lines);
    if (shape.rows == 0)
        units::refuse(file, "no line of two numbers or more",
                      "a table with comma, semicolon, tab or blank between its columns");
    if (shape.columns > mostTableColumns)
        units::refuse(file, std::to_string(shape.columns) + " columns", "200 columns at most");
    Picking p;
    p.delimiter = shape.delimiter;
    p.decimalComma = shape.decimalComma;
    p.firstRow = shape.firstRow;
    std::vector<NameWords> names;
    for (const auto& name : detail::columnNames(lines, p)) names.emplace_back(name);
    pickColumns(names, wish, p);
    // A column that a person asked for may not be there; the reader says so.
    const NameWords* value = p.value && *p.value < names.size() ? &names[*p.value] : nullptr;
    if (p.frequency < names.size()) p.hertz = hertzOf(names[p.frequency]);
    if (value != nullptr) tellValue(*value, p);
    if (p.second && *p.second < names.size()) tellSecond(names[*p.second], value, p);
    if (wish.kind) p.kind = *wish.kind;
    if (wish.form) p.form = *wish.form;
    if (wish.angle) p.angle = *wish.angle;
    if (wish.emf) p.emf = *wish.emf;
    return p;
}

}  // namespace exchange
