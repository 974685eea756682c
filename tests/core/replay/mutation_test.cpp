// SPDX-License-Identifier: GPL-3.0-or-later
// A valid program, spoilt in one place by a slip of the hand, is never taken for the design: the replay finds it and
// calls it by its name. Four slips of each of five kinds here, 200 of each with COILWRIGHT_FULL in the environment.
#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <functional>
#include <random>
#include <sstream>

#include "units/decimal.h"
#include "winding_cases.h"

namespace mutation_test {

using namespace winding_cases;

using Lines = std::vector<std::string>;

Lines linesOf(const std::string& text) {
    Lines lines;
    std::istringstream in(text);
    for (std::string one; std::getline(in, one);) lines.push_back(one);
    return lines;
}
std::string joinedLines(const Lines& lines) {
    std::string text;
    for (const auto& line : lines) text.append(line).append("\n");
    return text;
}

/// Where the number of a word begins and how long it is; nothing in comments.
std::pair<std::size_t, std::size_t> numberAt(const std::string& line, char letter) {
    const std::size_t end = std::min(line.find('('), line.size());
    const std::size_t at = line.find(std::string(" ") + letter);
    if (line.front() == '(' || line.front() == '%' || at == std::string::npos || at >= end) return {0, 0};
    return {at + 2, std::min(line.find(' ', at + 2), line.size()) - at - 2};
}
/// The word's number replaced by what `change` makes of it, written in the same form.
void changeNumber(std::string& line, char letter, const std::function<double(double)>& change) {
    const auto [at, length] = numberAt(line, letter);
    const std::string digits = line.substr(at, length);
    const std::size_t point = digits.find('.');
    const int decimals = point == std::string::npos ? 0 : static_cast<int>(digits.size() - point - 1);
    std::istringstream in(digits);
    in.imbue(std::locale::classic());
    double value = 0;
    in >> value;
    line.replace(at, length, units::fixedDecimals(change(value), decimals));
}

class Slips {
public:
    explicit Slips(unsigned seed) : dice_(seed) {}

    /// A program on a machine of its choice.
    void choose(bool guided) {
        name_ = demos[pick(5)];
        winder_ = winders[guided ? 1 + pick(2) : pick(3)];
        design_ = demo(name_);
        on_ = &both(winder_);
        lines_ = linesOf(program(design_, *on_));
    }
    [[nodiscard]] std::string said() const { return winding_cases::said(joinedLines(lines_), design_, *on_); }
    [[nodiscard]] std::string where() const { return name_ + " on " + winder_ + ": " + note_; }

    void turns() {
        choose(false);
        const char letter = on_->machine.turnsLetter;
        const double one = on_->machine.point ? 1 : std::pow(10.0, on_->machine.turnsDecimals);
        // A count that runs on is spoilt by its last block, the others by any.
        const bool runs = on_->machine.turnsRun;
        std::vector<std::size_t> with = having(letter);
        if (runs) std::erase_if(with, [&](std::size_t k) { return !lastOfStep(k, letter); });
        changeNumber(oneOf(with), letter,
                     [&](double value) { return value + one * (1 + static_cast<double>(pick(3))); });
    }
    void pitch() {
        choose(true);
        const char letter = on_->machine.pitchLetter;
        changeNumber(oneOf(having(letter)), letter, [&](double value) { return value * (pick(2) == 0 ? 1.4 : 0.6); });
    }
    void missingStop() {
        choose(false);
        std::vector<std::size_t> stops;
        for (std::size_t k = 0; k < lines_.size(); ++k)
            if (lines_[k].find(" M00 ") != std::string::npos || lines_[k].find(" M21 ") != std::string::npos)
                stops.push_back(k);
        const std::size_t gone = stops[pick(stops.size())];
        note_ = lines_[gone];
        lines_.erase(lines_.begin() + static_cast<std::ptrdiff_t>(gone));
    }
    /// A whole step wound from the other end.
    void wrongSide() {
        choose(true);
        const char letter = on_->machine.traverse->letter;
        const auto due = replay::expected(design_, coil::layOut(design_, shop()), shop(), on_->machine, 1);
        std::vector<std::size_t> wound;
        for (std::size_t k = 0; k < due.steps.size(); ++k)
            if (!due.steps[k].layers.empty()) wound.push_back(k);
        const std::size_t step = wound[pick(wound.size())];
        const double unit = (on_->machine.inches ? 25.4 : 1) / 1000 *
                            (on_->machine.point ? 1 : std::pow(10.0, -on_->machine.traverse->decimals));
        const double both = (due.steps[step].chamberLow + due.steps[step].chamberHigh) / unit;
        std::size_t at = 0;
        for (auto& line : lines_) {
            at += line.front() == ':' ? 1 : 0;
            const bool pinMove = line.find(" Y") != std::string::npos && line.find(" Y0 ") == std::string::npos;
            if (at == step + 1 && !pinMove && numberAt(line, letter).second > 0)
                changeNumber(line, letter, [&](double value) { return both - value; });
        }
        note_ = due.steps[step].name;
    }
    void overSpeed() {
        choose(true);
        const double highest = on_->machine.highestRpm;
        changeNumber(oneOf(having('S')), 'S',
                     [&](double) { return std::floor(highest * (1.1 + 0.1 * static_cast<double>(pick(9)))); });
    }

private:
    std::size_t pick(std::size_t below) { return std::uniform_int_distribution<std::size_t>(0, below - 1)(dice_); }
    std::vector<std::size_t> having(char letter) const {
        std::vector<std::size_t> with;
        for (std::size_t k = 0; k < lines_.size(); ++k)
            if (numberAt(lines_[k], letter).second > 0) with.push_back(k);
        return with;
    }
    bool lastOfStep(std::size_t k, char letter) const {
        for (++k; k < lines_.size() && lines_[k].front() != ':'; ++k)
            if (numberAt(lines_[k], letter).second > 0) return false;
        return true;
    }
    std::string& oneOf(const std::vector<std::size_t>& with) {
        const std::size_t k = with[pick(with.size())];
        note_ = lines_[k];
        return lines_[k];
    }

    std::mt19937 dice_;
    std::string name_, winder_, note_;
    design::Design design_;
    const Both* on_ = nullptr;
    Lines lines_;
};

struct Kind {
    const char* name;
    void (Slips::*slip)();
    const char* says;
    const char* orSays;
};
class RandomWindingSlips : public testing::TestWithParam<Kind> {};

TEST_P(RandomWindingSlips, AreFoundAndNamed) {
    const int count = std::getenv("COILWRIGHT_FULL") != nullptr ? 200 : 4;
    Slips slips(7);
    for (int k = 0; k < count; ++k) {
        (slips.*GetParam().slip)();
        const std::string said = slips.said();
        ASSERT_TRUE(said.find(GetParam().says) != std::string::npos ||
                    said.find(GetParam().orSays) != std::string::npos)
            << slips.where() << "\n"
            << said;
    }
}

INSTANTIATE_TEST_SUITE_P(All, RandomWindingSlips,
                         testing::Values(Kind{"Turns", &Slips::turns, "turns, the design has", "turns, the design has"},
                                         Kind{"Pitch", &Slips::pitch, "a pitch of", "a pitch of"},
                                         Kind{"MissingStop", &Slips::missingStop, "no stop for", "is not wrapped"},
                                         Kind{"WrongSide", &Slips::wrongSide, "from the wrong side",
                                              "from the wrong side"},
                                         Kind{"OverSpeed", &Slips::overSpeed, "a speed of", "a speed of"}),
                         [](const auto& one) { return std::string(one.param.name); });

}  // namespace mutation_test
