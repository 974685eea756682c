// SPDX-License-Identifier: GPL-3.0-or-later
#include "replay/runner.h"

#include <algorithm>
#include <cmath>

#include "units/fault.h"
#include "units/inch.h"
#include "units/joined.h"
#include "units/text.h"

namespace replay {

using units::joined;

namespace {

std::string number(double value) {
    return units::shortest(value);
}

}  // namespace

/// The number of a word; without a decimal sign on a machine that wants none, its last digit is the last place.
double Runner::placed(const Word& word, int decimals) const {
    return m_.point || word.point ? word.value : word.value / std::pow(10.0, decimals);
}

double Runner::metres(const Word& word, int decimals) const {
    return placed(word, decimals) * (m_.inches ? units::millimetresPerInch : 1.0) / 1000;
}

void Runner::function(const Word& word, int line, Asked& asked) {
    const auto is = [&](char letter, int code) { return word.letter == letter && word.value == code; };
    if (is('G', m_.rapid)) {
        asked.rapid = true;
    } else if (is('G', m_.wind)) {
        asked.wind = true;
    } else if (is('G', m_.inches ? m_.inch : m_.metric)) {
        unitSaid_ = true;
    } else if (is('M', m_.stop)) {
        asked.stop = true;
    } else if (is('M', m_.clockwise)) {
        asked.sense = 1;
    } else if (is('M', m_.counterclockwise)) {
        asked.sense = -1;
    } else if (is('M', m_.spindleStop)) {
        asked.sense = 2;
    } else if (is('M', m_.end)) {
        asked.end = true;
    } else if (m_.wrapCode >= 0 && is('M', m_.wrapCode)) {
        asked.wrap = true;
    } else if (!is('G', m_.absolute)) {
        units::refuse(joined({file_, ": line ", std::to_string(line)}), '"' + word.text + '"',
                      joined({"a ", word.text.substr(0, 1), " code of ", m_.title}));
    }
}

void Runner::setting(const Word& word, int line, Asked& asked) {
    const char c = word.letter;
    if (c == m_.turnsLetter)
        asked.turns = placed(word, m_.turnsDecimals);
    else if (m_.traverse && c == m_.traverse->letter)
        asked.place.traverse = metres(word, m_.traverse->decimals);
    else if (m_.depth && c == m_.depth->letter)
        asked.place.depth = metres(word, m_.depth->decimals);
    else if (m_.cross && c == m_.cross->letter)
        asked.place.cross = metres(word, m_.cross->decimals);
    else if (m_.pitchLetter != 0 && c == m_.pitchLetter)
        asked.pitch = metres(word, m_.pitchDecimals);
    else if (m_.speedLetter != 0 && c == m_.speedLetter)
        asked.rpm = word.value;
    else if (m_.tensionLetter != 0 && c == m_.tensionLetter)
        asked.tension = word.value / 100;  // cN
    else if (m_.reasonLetter != 0 && c == m_.reasonLetter)
        asked.reason = static_cast<int>(word.value);
    else if (m_.wrapLetter != 0 && c == m_.wrapLetter)
        asked.wraps = static_cast<int>(word.value);
    else
        units::refuse(joined({file_, ": line ", std::to_string(line)}), '"' + word.text + '"',
                      "a letter of " + m_.title);
}

Runner::Asked Runner::sorted(const Block& block) {
    Asked asked;
    for (const Word& word : block.words)
        if (word.letter == 'G' || word.letter == 'M')
            function(word, block.line, asked);
        else
            setting(word, block.line, asked);
    return asked;
}

void Runner::take(const Block& block) {
    ++run_.blocks;
    if (ended_)
        units::refuse(joined({file_, ": line ", std::to_string(block.line)}), "a block behind the end",
                      "the end as the last block");
    if (block.main) {
        ++step_;
        count_ = 0;
        run_.stepLines.push_back(block.line);
        stands_ = true;
    }
    const Asked asked = sorted(block);
    if (step_ < 0 && (!std::isnan(asked.turns) || asked.stop || asked.wrap)) {
        step_ = 0;  // a program written by hand may have no main block at its head
        run_.stepLines.push_back(block.line);
    }
    if (asked.rapid || asked.wind) {
        rapid_ = asked.rapid;
        winding_ = asked.wind;
    }
    if (asked.sense == 2) stands_ = true;
    if (asked.sense == 1 || asked.sense == -1) sense_ = asked.sense;
    if (!std::isnan(asked.rpm)) rpm_ = asked.rpm;
    if (asked.tension < m_.tensionLow - 0.005 || asked.tension > m_.tensionHigh + 0.005)
        remark(block.line, joined({"a tension of ", number(asked.tension), " N, the machine has ",
                                   number(m_.tensionLow), " to ", number(m_.tensionHigh), " N"}));
    if (!std::isnan(asked.turns))
        wind(asked, block.line);
    else
        go(asked, block.line);
    if (asked.wrap) wrap(asked, block.line);
    if (asked.stop) halt(block, asked);
    if (asked.end) ended_ = true;
    run_.events.push_back({block.line, std::max(step_, 0), count_, run_.moving + run_.waiting, guide_});
}

void Runner::within(const std::optional<Travel>& axis, const char* name, double at, int line) {
    constexpr double rounding = 1e-6;
    if (!axis || std::isnan(at) || (at >= axis->low - rounding && at <= axis->high + rounding)) return;
    remark(line, joined({"the ", name, " goes to ", units::write(units::Kind::Length, at), ", the machine's travel is ",
                         units::write(units::Kind::Length, axis->low), " to ",
                         units::write(units::Kind::Length, axis->high)}));
}

/// Moves the guide with the spindle standing.
void Runner::go(const Asked& asked, int line) {
    const Guide from = guide_;
    double seconds = 0;
    const auto move = [&](double& place, double to, const std::optional<Travel>& axis, const char* name) {
        if (std::isnan(to) || !axis) return false;
        within(axis, name, to, line);
        if (!std::isnan(place)) seconds = std::max(seconds, std::abs(to - place) / axis->speed);
        place = to;
        return true;
    };
    bool moved = move(guide_.traverse, asked.place.traverse, m_.traverse, "traverse");
    moved = move(guide_.depth, asked.place.depth, m_.depth, "depth") || moved;
    moved = move(guide_.cross, asked.place.cross, m_.cross, "cross axis") || moved;
    if (!moved) return;
    if (!rapid_) remark(line, "a move without turns that is not a rapid one");
    if (!stands_) remark(line, "the guide moves while the spindle turns");
    run_.moves.push_back({line, from, guide_});
    run_.moving += seconds;
}

void Runner::wind(const Asked& asked, int line) {
    Stretch s;
    s.line = line;
    s.step = step_;
    s.first = count_;
    s.turns = m_.turnsRun ? asked.turns - count_ : asked.turns;
    s.from = s.to = guide_;
    s.sense = sense_;
    s.rpm = m_.speedLetter != 0 ? rpm_ : m_.highestRpm;
    s.stands = stands_;
    if (!winding_) remark(line, "turns without the code that winds");
    if (s.turns <= 0) {
        remark(line, joined({"a count of ", number(s.turns), " turns"}));
        return;
    }
    if (!std::isnan(asked.place.traverse)) s.to.traverse = asked.place.traverse;
    if (!std::isnan(asked.place.depth)) s.to.depth = asked.place.depth;
    if (!std::isnan(asked.place.cross)) s.to.cross = asked.place.cross;
    within(m_.traverse, "traverse", s.to.traverse, line);
    within(m_.depth, "depth", s.to.depth, line);
    if (m_.traverse && std::isnan(s.from.traverse)) remark(line, "turns before the guide has a place");
    if (asked.sense == 2 || (stands_ && asked.sense == 0)) remark(line, "turns with the spindle standing");
    if (s.rpm > m_.highestRpm + 1e-9 || s.rpm < m_.lowestRpm - 1e-9)
        remark(line, joined({"a speed of ", number(s.rpm), " turns a minute, the machine winds at ",
                             number(m_.lowestRpm), " to ", number(m_.highestRpm)}));
    checkPitch(s, asked.pitch);
    guide_ = s.to;
    count_ += s.turns;
    stands_ = false;
    run_.stretches.push_back(s);
}

void Runner::checkPitch(const Stretch& s, double pitch) {
    if (!m_.traverse || std::isnan(s.from.traverse)) return;
    const double unit = m_.inches ? units::millimetresPerInch / 1000 : 1e-3;
    const double pitchDigit = unit * std::pow(10.0, -m_.pitchDecimals),
                 digit = unit * std::pow(10.0, -m_.traverse->decimals);
    const double move = std::abs(s.to.traverse - s.from.traverse);
    if (std::isnan(pitch)) {
        // The same place may be rounded to neighbouring digits.
        if (move > digit * (1 + 1e-6)) remark(s.line, "a traverse without a pitch");
        return;
    }
    // Half a last digit of the pitch in every turn, and of the place at both ends.
    const double rounding = s.turns * pitchDigit / 2 + digit + 1e-9;
    if (std::abs(pitch * s.turns - move) > rounding)
        remark(s.line, joined({"a pitch of ", units::write(units::Kind::Length, pitch, 4), " in ", number(s.turns),
                               " turns is not the move of ", units::write(units::Kind::Length, move, 4)}));
    const double speed = pitch * s.rpm / 60;
    if (speed > m_.traverse->speed * (1 + 1e-3))
        remark(s.line, joined({"the traverse runs at ", number(std::round(speed * 1e5) / 100), " mm/s, it can do ",
                               number(m_.traverse->speed * 1000)}));
}

void Runner::halt(const Block& block, const Asked& asked) {
    Halt h{block.line, step_, count_, "", 0};
    std::string message = block.comment;
    if (!m_.messageWord.empty() && message.starts_with(m_.messageWord + " "))
        message.erase(0, m_.messageWord.size() + 1);
    const std::string word = message.substr(0, message.find_first_of(" ,."));
    for (const Reason& reason : m_.reasons)
        if (m_.reasonLetter != 0 ? reason.number == asked.reason : reason.word == word) {
            h.kind = reason.name;
            h.seconds = reason.seconds;
        }
    run_.waiting += h.seconds;
    run_.halts.push_back(h);
    stands_ = true;
}

void Runner::wrap(const Asked& asked, int line) {
    if (!stands_) remark(line, "a pin wrap while the spindle turns");
    run_.wraps.push_back({line, step_, count_, guide_, asked.wraps});
    run_.waiting += m_.wrapSeconds;
}

}  // namespace replay
