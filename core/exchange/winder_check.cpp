// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/winder_check.h"

#include <algorithm>
#include <map>
#include <set>

#include "units/joined.h"
#include "units/text.h"

namespace exchange {

namespace {

class WinderCheck {
public:
    WinderCheck(const Winder& winder, const std::string& file, std::vector<units::Fault>& faults)
        : winder_(winder), file_(file), faults_(faults) {}

    void all() {
        letters();
        axes();
        limits();
        stops();
        codes();
        if (!plain(winder_.messageWord))
            fault("/message_word", '"' + winder_.messageWord + '"', "up to 12 of the letters A to Z and digits");
    }

private:
    void fault(const std::string& at, const std::string& found, const std::string& allowed) {
        faults_.push_back({units::joined({file_, ": ", at}), found, allowed});
    }
    static bool plain(const std::string& word) {
        return word.size() <= 12 && std::all_of(word.begin(), word.end(), [](char c) {
                   return (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
               });
    }
    void letter(const std::string& at, const std::string& text, std::string_view choice) {
        if (text.size() != 1 || choice.find(text.front()) == std::string_view::npos)
            return fault(at, '"' + text + '"', units::joined({"one letter of ", choice}));
        const auto [where, fresh] = used_.emplace(text.front(), at);
        if (!fresh) fault(at, '"' + text + '"', "a letter that does not stand at " + where->second + " already");
    }
    void letters() {
        // Which letter may be what: the addresses of ISO 6983-1 (dimensions, interpolation and feed, tool and those
        // without a fixed meaning); G, M and N are taken.
        constexpr std::string_view dimensions = "ABCPQRUVWXYZ", parameters = "IJKF", settings = "DEHLT";
        letter("/counter/letter", winder_.counter.letter, dimensions);
        if (!winder_.spindle.letter.empty()) letter("/spindle/letter", winder_.spindle.letter, "S");
        if (winder_.traverse) letter("/traverse/letter", winder_.traverse->letter, dimensions);
        if (winder_.depth) letter("/depth/letter", winder_.depth->letter, dimensions);
        if (winder_.cross) letter("/cross/letter", winder_.cross->letter, dimensions);
        if (winder_.traverse || !winder_.pitchLetter.empty()) letter("/pitch_letter", winder_.pitchLetter, parameters);
        if (winder_.tension) letter("/tension/letter", winder_.tension->letter, settings);
        if (!winder_.reasonLetter.empty()) letter("/reason_letter", winder_.reasonLetter, settings);
        if (winder_.pinWrap) letter("/pin_wrap/count_letter", winder_.pinWrap->countLetter, settings);
    }
    void axes() {
        const auto& w = winder_;
        if (w.pinWrap && !(w.traverse && w.depth && w.cross))
            fault("/pin_wrap", "a pin wrap without all three axes", "it beside traverse, depth and cross");
        if (w.cross && !w.depth) fault("/cross", "a cross axis without a depth", "it beside traverse and depth");
        if (w.depth && !w.traverse) fault("/depth", "a depth without a traverse", "it beside a traverse");
    }
    void rising(const std::string& at, double low, double high, const std::string& unit) {
        if (!(low < high))
            fault(at, units::shortest(high),
                  units::joined({"more than the lowest, ", units::shortest(low), " ", unit}));
    }
    void limits() {
        const auto& s = winder_.spindle;
        rising("/spindle/highest_rpm", s.lowestRpm, s.highestRpm, "turns a minute");
        if (s.slowRpm < s.lowestRpm || s.slowRpm > s.highestRpm)
            fault("/spindle/slow_rpm", units::shortest(s.slowRpm),
                  units::joined({"from ", units::shortest(s.lowestRpm), " to ", units::shortest(s.highestRpm),
                                 " turns a minute, the spindle's limits"}));
        if (winder_.traverse) rising("/traverse/high", winder_.traverse->low, winder_.traverse->high, "m");
        if (winder_.depth) rising("/depth/high", winder_.depth->low, winder_.depth->high, "m");
        if (winder_.cross) rising("/cross/high", winder_.cross->low, winder_.cross->high, "m");
        if (winder_.tension) rising("/tension/highest", winder_.tension->lowest, winder_.tension->highest, "N");
    }
    void stops() {
        std::set<std::string> words;
        std::set<int> numbers;
        for (const StopKind kind : allStops) {
            const StopCode& stop = winder_.stops.of(kind);
            const std::string at = units::joined({"/stops/", stopName(kind)});
            if (stop.word.empty() || !plain(stop.word))
                fault(at + "/word", '"' + stop.word + '"', "1 to 12 of the letters A to Z and digits");
            else if (!words.insert(stop.word).second)
                fault(at + "/word", '"' + stop.word + '"', "a word that no other stop has");
            if (!winder_.reasonLetter.empty() && !numbers.insert(stop.number).second)
                fault(at + "/number", std::to_string(stop.number), "a number that no other stop has");
        }
    }
    void codes() {
        const auto& c = winder_.codes;
        distinct(
            "G",
            {{"rapid", c.rapid}, {"wind", c.wind}, {"inch", c.inch}, {"metric", c.metric}, {"absolute", c.absolute}});
        std::vector<std::pair<const char*, int>> auxiliary{{"stop", c.stop},
                                                           {"clockwise", c.clockwise},
                                                           {"counterclockwise", c.counterclockwise},
                                                           {"spindle_stop", c.spindleStop},
                                                           {"end", c.end}};
        if (winder_.pinWrap) auxiliary.emplace_back("pin wrap", winder_.pinWrap->code);
        distinct("M", auxiliary);
        if (c.end != 2 && c.end != 30) fault("/codes/end", std::to_string(c.end), "2 or 30, the ends of ISO 6983-1");
    }
    void distinct(const char* letter, const std::vector<std::pair<const char*, int>>& list) {
        std::map<int, const char*> seen;
        for (const auto& [name, code] : list) {
            const auto [where, fresh] = seen.emplace(code, name);
            if (!fresh)
                fault(units::joined({"/codes/", name}), std::to_string(code),
                      units::joined({"another ", letter, " code than that of ", where->second}));
        }
    }

    const Winder& winder_;
    const std::string& file_;
    std::vector<units::Fault>& faults_;
    std::map<char, std::string> used_;
};

}  // namespace

void checkWinder(const Winder& winder, const std::string& file, std::vector<units::Fault>& faults) {
    WinderCheck(winder, file, faults).all();
}

}  // namespace exchange
