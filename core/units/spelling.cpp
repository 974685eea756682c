// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/spelling.h"

#include <array>
#include <span>

namespace units {

namespace {

enum class Prefixes { None, Allowed };

struct Word {
    std::string_view text;
    Suffix means;
    Prefixes prefixes = Prefixes::None;
};

struct Prefix {
    std::string_view text;
    int exponent;
};

constexpr std::array<Prefix, 11> prefixes{{{"f", -15},
                                           {"p", -12},
                                           {"n", -9},
                                           {"u", -6},
                                           {"\u00B5", -6},
                                           {"\u03BC", -6},
                                           {"m", -3},
                                           {"k", 3},
                                           {"K", 3},
                                           {"M", 6},
                                           {"G", 9}}};

constexpr Suffix ten(int exponent, int power = 1) {
    return {exponent, 1, 0, Sort::Amount, power, 0};
}
constexpr Suffix times(long double factor, int power = 1) {
    return {0, factor, 0, Sort::Amount, power, 0};
}
constexpr long double inch = 0.0254L;
constexpr long double dbvInDbu = 2.21848749616356367491L;  // 20 lg(1 V / sqrt(0.6) V)

constexpr std::array lengthWords{Word{"m", ten(0)},
                                 Word{"cm", ten(-2)},
                                 Word{"mm", ten(-3)},
                                 Word{"um", ten(-6)},
                                 Word{"\u00B5m", ten(-6)},
                                 Word{"\u03BCm", ten(-6)},
                                 Word{"nm", ten(-9)},
                                 Word{"km", ten(3)},
                                 Word{"in", times(inch)},
                                 Word{"inch", times(inch)},
                                 Word{"inches", times(inch)},
                                 Word{"\"", times(inch)},
                                 Word{"\u2033", times(inch)},
                                 Word{"mil", times(inch / 1000)},
                                 Word{"mils", times(inch / 1000)}};
constexpr std::array areaWords{Word{"m2", ten(0, 2)},
                               Word{"m\u00B2", ten(0, 2)},
                               Word{"cm2", ten(-4, 2)},
                               Word{"cm\u00B2", ten(-4, 2)},
                               Word{"mm2", ten(-6, 2)},
                               Word{"mm\u00B2", ten(-6, 2)},
                               Word{"um2", ten(-12, 2)},
                               Word{"\u00B5m\u00B2", ten(-12, 2)},
                               Word{"in2", times(inch* inch, 2)},
                               Word{"in\u00B2", times(inch* inch, 2)},
                               Word{"m", ten(0)},
                               Word{"cm", ten(-2)},
                               Word{"mm", ten(-3)},
                               Word{"in", times(inch)}};
constexpr std::array massWords{Word{"kg", ten(0)}, Word{"g", ten(-3)}, Word{"mg", ten(-6)}};
constexpr std::array resistanceWords{
    Word{"ohm", ten(0), Prefixes::Allowed},    Word{"ohms", ten(0), Prefixes::Allowed},
    Word{"Ohm", ten(0), Prefixes::Allowed},    Word{"R", ten(0), Prefixes::Allowed},
    Word{"\u03A9", ten(0), Prefixes::Allowed}, Word{"\u2126", ten(0), Prefixes::Allowed}};
constexpr std::array inductanceWords{Word{"H", ten(0), Prefixes::Allowed}};
constexpr std::array capacitanceWords{Word{"F", ten(0), Prefixes::Allowed}};
constexpr std::array frequencyWords{Word{"Hz", ten(0), Prefixes::Allowed}};
constexpr std::array timeWords{Word{"s", ten(0), Prefixes::Allowed}};
constexpr std::array voltageWords{Word{"V", ten(0), Prefixes::Allowed}};
constexpr std::array currentWords{Word{"A", ten(0), Prefixes::Allowed}};
constexpr std::array fluxWords{Word{"T", ten(0), Prefixes::Allowed}};
constexpr std::array fieldWords{Word{"A/m", ten(0), Prefixes::Allowed}};
constexpr std::array temperatureWords{Word{"degC", ten(0)}, Word{"\u00B0C", ten(0)}, Word{"\u2103", ten(0)},
                                      Word{"C", ten(0)}};
constexpr std::array levelWords{Word{"dBu", {0, 1, 0, Sort::Level, 1, 0}},
                                Word{"dBV", {0, 1, dbvInDbu, Sort::Level, 1, 0}},
                                Word{"dB", {0, 1, 0, Sort::Gain, 1, 0}}, Word{"V", ten(0), Prefixes::Allowed}};
constexpr std::array decibelWords{Word{"dB", ten(0)}};
constexpr std::array angleWords{Word{"deg", ten(0)}, Word{"degrees", ten(0)}, Word{"degree", ten(0)},
                                Word{"\u00B0", ten(0)}};
constexpr std::array voltageNoiseWords{
    Word{"V/\u221AHz", ten(0), Prefixes::Allowed}, Word{"V/rtHz", ten(0), Prefixes::Allowed},
    Word{"V/sqrt(Hz)", ten(0), Prefixes::Allowed}, Word{"V", ten(0), Prefixes::Allowed}};
constexpr std::array currentNoiseWords{
    Word{"A/\u221AHz", ten(0), Prefixes::Allowed}, Word{"A/rtHz", ten(0), Prefixes::Allowed},
    Word{"A/sqrt(Hz)", ten(0), Prefixes::Allowed}, Word{"A", ten(0), Prefixes::Allowed}};
constexpr std::array turnWords{Word{"turns", ten(0)}, Word{"turn", ten(0)}};
constexpr std::array shareWords{Word{"%", ten(-2)}};

struct Habit {
    Kind kind;
    std::span<const Word> words;
    bool barePrefix;  ///< "4k7" and "10k" without a unit
    int shopExponent;
    std::string_view noun, unitWords, example;
};

const std::array<Habit, 22> habits{
    {{Kind::Count, {}, true, 0, "a whole number", "", "\"12\" or \"1200/2\""},
     {Kind::Turns, turnWords, true, 0, "a number of whole or half turns", "", "\"1200\", \"12.5\" or \"1200/2\""},
     {Kind::Number, shareWords, true, 0, "a number", "", "\"0.25\" or \"1/4\""},
     {Kind::Share, shareWords, false, 0, "a share from 0 to 1 or from 0 % to 100 %", "", "\"0.2\" or \"20 %\""},
     {Kind::Length, lengthWords, false, -3, "a length", "m, cm, mm, um, in, mil or AWG",
      "\"0.1 mm\", \"1/2 in\" or \"38 AWG\""},
     {Kind::Area, areaWords, false, 0, "an area", "m2, cm2, mm2 or in2", "\"120 mm2\" or \"10 mm * 12 mm\""},
     {Kind::Mass, massWords, false, 0, "a mass", "kg, g or mg", "\"120 g\""},
     {Kind::Resistance, resistanceWords, true, 0, "a resistance", "ohm, R or \u03A9, with a prefix p n u m k M G",
      "\"4k7\" or \"4.7 k\u03A9\""},
     {Kind::Inductance, inductanceWords, true, 0, "an inductance", "H, with a prefix p n u m k M G", "\"2.2 mH\""},
     {Kind::Capacitance, capacitanceWords, true, 0, "a capacitance", "F, with a prefix p n u m k M G",
      "\"2n2\" or \"2.2 nF\""},
     {Kind::Frequency, frequencyWords, true, 0, "a frequency", "Hz, with a prefix p n u m k M G", "\"20 kHz\""},
     {Kind::Time, timeWords, true, 0, "a time", "s, with a prefix p n u m k M G", "\"1.5 ms\""},
     {Kind::Voltage, voltageWords, true, 0, "a voltage", "V, with a prefix p n u m k M G", "\"775 mV\""},
     {Kind::Current, currentWords, true, 0, "a current", "A, with a prefix p n u m k M G", "\"0.5 mA\""},
     {Kind::Flux, fluxWords, true, 0, "a flux density", "T, with a prefix p n u m k M G", "\"0.7 T\""},
     {Kind::Field, fieldWords, true, 0, "a field strength", "A/m, with a prefix p n u m k M G", "\"2.5 A/m\""},
     {Kind::Temperature, temperatureWords, false, 0, "a temperature", "\u00B0C or degC", "\"20\" or \"40 \u00B0C\""},
     {Kind::LevelDbu, levelWords, false, 0, "a level", "dBu, dBV, V or mV, and dB for a difference",
      "\"+4 dBu\", \"-10 dBV\" or \"775 mV\""},
     {Kind::Decibel, decibelWords, false, 0, "a number of decibels", "dB", "\"-3 dB\""},
     {Kind::Angle, angleWords, false, 0, "an angle in degrees", "\u00B0 or deg", "\"45\" or \"45\u00B0\""},
     {Kind::VoltageNoise, voltageNoiseWords, true, 0, "a noise voltage", "V/\u221AHz, with a prefix p n u m k M G",
      "\"1.2 nV/\u221AHz\""},
     {Kind::CurrentNoise, currentNoiseWords, true, 0, "a noise current", "A/\u221AHz, with a prefix p n u m k M G",
      "\"1 pA/\u221AHz\""}}};

const Habit& habit(Kind kind) noexcept {
    return habits.at(static_cast<std::size_t>(kind));
}

bool endsHere(std::string_view unit, std::string_view rest) noexcept {
    const bool isWord = isLetter(unit.back()) && unit != "\u00B0" && unit != "\u2033";
    return rest.empty() || !isWord || !(isLetter(rest.front()) || isDigit(rest.front()) || rest.front() == '^') ||
           rest.starts_with("\u00D7") || rest.starts_with("\u00F7") || rest.starts_with("\u2212") ||
           rest.starts_with("\u00A0");
}

void keepLonger(std::optional<Suffix>& best, Suffix found, std::size_t length) {
    found.length = length;
    if (!best || length > best->length) best = found;
}

bool wholeKind(Kind kind) noexcept {
    return kind == Kind::Count || kind == Kind::Turns;
}

}  // namespace

std::optional<Suffix> suffix(Kind kind, std::string_view text) {
    std::optional<Suffix> best;
    for (const Word& word : habit(kind).words) {
        if (text.starts_with(word.text) && endsHere(word.text, text.substr(word.text.size())))
            keepLonger(best, word.means, word.text.size());
        if (word.prefixes == Prefixes::None) continue;
        for (const Prefix& prefix : prefixes) {
            if (!text.starts_with(prefix.text)) continue;
            const std::string_view unit = text.substr(prefix.text.size());
            if (!unit.starts_with(word.text) || !endsHere(word.text, unit.substr(word.text.size()))) continue;
            Suffix both = word.means;
            both.exponent += prefix.exponent;
            keepLonger(best, both, prefix.text.size() + word.text.size());
        }
    }
    if (!habit(kind).barePrefix) return best;
    for (const Prefix& prefix : prefixes)
        if (text.starts_with(prefix.text) && endsHere(prefix.text, text.substr(prefix.text.size())) &&
            (prefix.exponent > 0 || !wholeKind(kind)))
            keepLonger(best, ten(prefix.exponent), prefix.text.size());
    return best;
}

std::optional<Suffix> decimalLetter(Kind kind, std::string_view text) {
    if (!habit(kind).barePrefix) return {};
    std::optional<Suffix> best;
    for (const Prefix& prefix : prefixes)
        if (text.starts_with(prefix.text) && (prefix.exponent > 0 || !wholeKind(kind)))
            keepLonger(best, ten(prefix.exponent), prefix.text.size());
    if (kind == Kind::Resistance && text.starts_with("R")) keepLonger(best, ten(0), 1);
    return best;
}

std::string_view noun(Kind kind) noexcept {
    return habit(kind).noun;
}
std::string_view unitWords(Kind kind) noexcept {
    return habit(kind).unitWords;
}
std::string_view example(Kind kind) noexcept {
    return habit(kind).example;
}
int shopExponent(Kind kind) noexcept {
    return habit(kind).shopExponent;
}

bool bareIsPlain(Kind kind) noexcept {
    return kind != Kind::Length && kind != Kind::Area && kind != Kind::Mass && kind != Kind::LevelDbu;
}

std::size_t characterLength(std::string_view text) noexcept {
    const auto lead = static_cast<unsigned char>(text.front());
    std::size_t length = 1;
    if (lead >= 0xC2 && lead < 0xE0)
        length = 2;
    else if (lead >= 0xE0 && lead < 0xF0)
        length = 3;
    else if (lead >= 0xF0 && lead < 0xF5)
        length = 4;
    if (length > text.size()) return 1;
    for (std::size_t i = 1; i < length; ++i)
        if ((static_cast<unsigned char>(text[i]) & 0xC0) != 0x80) return 1;
    return length;
}

}  // namespace units
