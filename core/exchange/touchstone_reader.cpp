// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/touchstone_reader.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <numbers>
#include <optional>

#include "exchange/touchstone_words.h"
#include "units/fault.h"
#include "units/joined.h"
#include "units/text.h"

namespace exchange {

namespace {

using namespace detail;
using measured::Complex;
using measured::Parameter;

enum class MatrixFormat { Full, Lower, Upper };

class TouchstoneReader {
public:
    TouchstoneReader(std::string_view text, const std::string& file)
        : file_(file), lines_(touchstoneLines(text, file)) {}

    measured::NetworkData read() {
        if (lines_.empty()) refuse(1, "nothing", "a Touchstone file, with an option line that begins with #");
        second_ = lines_.front().kind == TouchstoneLineKind::Keyword;
        if (second_) version(lines_.front());
        for (const TouchstoneLine& line : lines_) {
            if (line.kind == TouchstoneLineKind::Keyword) keyword(line);
            if (line.kind == TouchstoneLineKind::Options && !options_) options_ = touchstoneOptions(line, file_);
            if (line.kind == TouchstoneLineKind::Data) data(line);
            if (ended_) break;
        }
        if (!options_) refuse(lines_.back().number, "no option line", "a line that begins with #, as # MHz S RI R 50");
        settle();
        matrices();
        return std::move(made_);
    }

private:
    [[noreturn]] void refuse(int line, std::string found, std::string allowed) const {
        units::refuse(touchstonePlace(file_, line), std::move(found), std::move(allowed));
    }
    static std::string quoted(std::string_view text) { return units::joined({"\"", text.substr(0, 60), "\""}); }

    void version(const TouchstoneLine& line) const {
        if (line.keyword != "version") refuse(line.number, quoted(line.keyword), "[Version] 2.0 ahead of all else");
        const std::string found = line.words.empty() ? "nothing" : line.words.front().text;
        if (line.words.size() != 1 || (found != "2.0" && found != "2.1"))
            refuse(line.number, quoted(found), "version 2.0 or 2.1; older files have no [Version]");
    }

    void keyword(const TouchstoneLine& line) {
        if (!second_) refuse(line.number, quoted(line.keyword), "no keyword in a file without [Version]");
        inReference_ = inInformation_ = false;
        if (line.keyword == "number of ports") {
            made_.ports = touchstoneCount(line, mostMeasuredPorts, file_);
            portsKnown_ = true;
        } else if (line.keyword == "number of frequencies") {
            stated_ = touchstoneCount(line, static_cast<int>(mostMeasuredFrequencies), file_);
        } else if (line.keyword == "two port data order") {
            twoPortOrder(line);
        } else if (line.keyword == "matrix format") {
            matrixFormat(line);
        } else if (line.keyword == "reference") {
            inReference_ = true;
            references(line);
        } else if (line.keyword == "network data") {
            inData_ = true;
        } else if (line.keyword == "noise data") {
            inData_ = false;
            inNoise_ = true;
        } else if (line.keyword == "end") {
            ended_ = true;
        } else if (line.keyword == "begin information") {
            inInformation_ = true;
        } else if (line.keyword == "mixed mode order") {
            refuse(line.number, "parameters of mixed modes", "parameters of single ports");
        } else if (line.keyword != "version" && line.keyword != "end information" &&
                   line.keyword != "number of noise frequencies") {
            refuse(line.number, quoted(line.keyword), "a keyword of version 2.0");
        }
    }
    void twoPortOrder(const TouchstoneLine& line) {
        const std::string found = line.words.empty() ? "nothing" : line.words.front().text;
        if (found != "12_21" && found != "21_12") refuse(line.number, quoted(found), "12_21 or 21_12");
        columnFirst_ = found == "21_12";
    }
    void matrixFormat(const TouchstoneLine& line) {
        const std::string found = line.words.empty() ? "nothing" : line.words.front().text;
        if (found == "full") return;
        if (found != "lower" && found != "upper") refuse(line.number, quoted(found), "Full, Lower or Upper");
        format_ = found == "lower" ? MatrixFormat::Lower : MatrixFormat::Upper;
    }
    void references(const TouchstoneLine& line) {
        for (const TouchstoneWord& word : line.words) {
            reference_.push_back(touchstoneNumber(word, file_));
            if (!(reference_.back() > 0)) refuse(word.line, quoted(word.text), "a resistance above 0 ohm");
        }
    }

    void data(const TouchstoneLine& line) {
        if (inReference_) return references(line);
        if (inInformation_ || inNoise_) {
            noise_ += inNoise_ ? 1 : 0;
            return;
        }
        if (second_ && !inData_) refuse(line.number, quoted(line.words.front().text), "data behind [Network Data]");
        if (!options_) refuse(line.number, "numbers", "an option line, as # MHz S RI R 50, ahead of them");
        if (numbers_.empty()) firstLine_ = line.words.size();
        for (const TouchstoneWord& word : line.words) {
            numbers_.push_back(touchstoneNumber(word, file_));
            where_.push_back(line.number);
        }
        begins_.resize(numbers_.size(), false);
        begins_[numbers_.size() - line.words.size()] = true;
    }

    /// Number of ports, order and references, once all lines are seen.
    void settle() {
        if (!second_) {
            made_.ports = portsOfVersion1();
            columnFirst_ = made_.ports == 2;
        } else if (!portsKnown_) {
            refuse(lines_.back().number, "no [Number of Ports]", "[Number of Ports] with 1 to 32");
        }
        const auto ports = static_cast<std::size_t>(made_.ports);
        made_.parameter = options_->parameter;
        if (made_.ports != 2 && (made_.parameter == Parameter::H || made_.parameter == Parameter::G))
            refuse(lines_.front().number, "hybrid parameters of " + std::to_string(ports) + " ports", "two ports");
        made_.reference = reference_.empty() ? options_->reference : reference_;
        if (made_.reference.size() == 1) made_.reference.resize(ports, made_.reference.front());
        if (made_.reference.size() != ports)
            refuse(lines_.front().number, std::to_string(made_.reference.size()) + " reference resistances",
                   "one, or one for each of the " + std::to_string(ports) + " ports");
    }
    [[nodiscard]] int portsOfVersion1() const {
        const auto dot = file_.rfind('.');
        const std::string ending = dot == std::string::npos ? "" : file_.substr(dot + 1);
        if (ending.size() >= 3 && (ending.front() == 's' || ending.front() == 'S') &&
            (ending.back() == 'p' || ending.back() == 'P')) {
            int ports = 0;
            const char* end = ending.data() + ending.size() - 1;
            if (std::from_chars(ending.data() + 1, end, ports).ptr == end && ports >= 1 && ports <= mostMeasuredPorts)
                return ports;
        }
        constexpr std::size_t onePort = 3, twoPorts = 9;
        if (firstLine_ == onePort) return 1;
        if (firstLine_ == twoPorts && !fourPortsFollow()) return 2;
        if (firstLine_ >= 7 && firstLine_ % 2 == 1 && firstLine_ <= twoPorts)
            return static_cast<int>(firstLine_ - 1) / 2;
        refuse(where_.empty() ? 1 : where_.front(), "a name from which the number of ports cannot be told",
               "an ending as .s2p");
    }
    /// Nine numbers are two ports' line or the first row of four: then the next line has eight.
    [[nodiscard]] bool fourPortsFollow() const {
        constexpr std::size_t row = 8;
        return numbers_.size() > firstLine_ + row && begins_[firstLine_ + row] && !begins_[firstLine_ + row - 1];
    }

    [[nodiscard]] Complex pair(std::size_t at) const {
        const double first = numbers_[at], second = numbers_[at + 1];
        if (options_->form == PairForm::RealImaginary) return {first, second};
        constexpr double mostDecibels = 6000;  // beyond it a double has no room
        if (options_->form == PairForm::DecibelAngle && std::abs(first) > mostDecibels)
            refuse(where_[at], units::shortest(first) + " dB", "a level within 6000 dB");
        const double size = options_->form == PairForm::DecibelAngle ? std::pow(10, first / 20) : first;
        const double angle = second * std::numbers::pi / 180;
        return {size * std::cos(angle), size * std::sin(angle)};
    }
    /// Where the k-th pair of a block stands in the matrix.
    [[nodiscard]] std::vector<std::pair<int, int>> places() const {
        std::vector<std::pair<int, int>> all;
        for (int i = 0; i < made_.ports; ++i) {
            const int from = format_ == MatrixFormat::Upper ? i : 0;
            const int to = format_ == MatrixFormat::Lower ? i + 1 : made_.ports;
            for (int k = from; k < to; ++k)
                all.push_back(columnFirst_ && format_ == MatrixFormat::Full ? std::pair{k, i} : std::pair{i, k});
        }
        return all;
    }
    void matrices() {
        const auto order = places();
        const std::size_t block = 1 + 2 * order.size();
        std::size_t at = 0;
        for (; at + block <= numbers_.size(); at += block) {
            const double frequency = numbers_[at] * options_->hertz;
            if (!made_.frequencies.empty() && !(frequency > made_.frequencies.back())) {
                if (isNoise(at)) return noiseRemark();
                refuse(where_[at], "frequency " + units::shortest(numbers_[at]) + " behind a higher one",
                       "rising frequencies, " + std::to_string(block) + " numbers each");
            }
            if (frequency < 0) refuse(where_[at], units::shortest(numbers_[at]), "a frequency from 0 up");
            if (made_.frequencies.size() == mostMeasuredFrequencies)
                refuse(where_[at], "more than 200000 frequencies", "200000 at most");
            made_.frequencies.push_back(frequency);
            made_.values.push_back(matrix(at + 1, order));
        }
        if (at < numbers_.size() && isNoise(at)) return noiseRemark();
        if (at < numbers_.size() || numbers_.empty())
            refuse(where_.empty() ? lines_.back().number : where_.back(),
                   std::to_string(numbers_.size() - at) + " numbers of a last frequency",
                   std::to_string(block) + " numbers for each frequency of " + std::to_string(made_.ports) +
                       (made_.ports == 1 ? " port" : " ports"));
        if (stated_ && static_cast<std::size_t>(*stated_) != made_.frequencies.size())
            refuse(where_.back(), std::to_string(made_.frequencies.size()) + " frequencies",
                   std::to_string(*stated_) + ", as [Number of Frequencies] says");
        if (noise_ > 0) noiseRemark();
    }
    /// In version 1 two ports' noise begins where the frequency falls; its lines have five numbers.
    [[nodiscard]] bool isNoise(std::size_t at) const {
        constexpr std::size_t noiseNumbers = 5;
        if (second_ || made_.ports != 2 || made_.frequencies.empty() || (numbers_.size() - at) % noiseNumbers != 0)
            return false;
        for (std::size_t k = at; k < numbers_.size(); k += noiseNumbers)
            if (!begins_[k]) return false;
        return numbers_[at] * options_->hertz <= made_.frequencies.back();
    }
    void noiseRemark() { made_.remarks.emplace_back("Noise parameters in the file are not read."); }
    [[nodiscard]] std::vector<Complex> matrix(std::size_t at, const std::vector<std::pair<int, int>>& order) const {
        const auto ports = static_cast<std::size_t>(made_.ports);
        std::vector<Complex> values(ports * ports);
        for (const auto& [row, column] : order) {
            const auto i = static_cast<std::size_t>(row), k = static_cast<std::size_t>(column);
            const Complex value = pair(at) * scale(i, k);
            values[i * ports + k] = value;
            if (format_ != MatrixFormat::Full) values[k * ports + i] = value;
            at += 2;
        }
        return values;
    }
    /// What version 1 normalised by. With a resistance for each port: Z by the root of both, Y by its inverse.
    [[nodiscard]] double scale(std::size_t row, std::size_t column) const {
        if (second_ || made_.parameter == Parameter::S) return 1;
        const double r = std::sqrt(made_.reference[row] * made_.reference[column]);
        const bool impedance = row == 0 && column == 0, admittance = row == 1 && column == 1;
        switch (made_.parameter) {
            case Parameter::Z:
                return r;
            case Parameter::Y:
                return 1 / r;
            case Parameter::H:
                return impedance ? r : admittance ? 1 / r : 1;
            case Parameter::G:
                return impedance ? 1 / r : admittance ? r : 1;
            default:
                return 1;
        }
    }

    const std::string& file_;
    std::vector<TouchstoneLine> lines_;
    measured::NetworkData made_;
    std::optional<TouchstoneOptions> options_;
    bool second_ = false, portsKnown_ = false, columnFirst_ = false;
    bool inReference_ = false, inInformation_ = false, inData_ = false, inNoise_ = false, ended_ = false;
    MatrixFormat format_ = MatrixFormat::Full;
    std::vector<double> reference_;
    std::optional<int> stated_;
    std::vector<double> numbers_;
    std::vector<int> where_;     ///< line of each number
    std::vector<bool> begins_;   ///< whether it begins its line
    std::size_t firstLine_ = 0;  ///< numbers in the first line of data
    int noise_ = 0;
};

}  // namespace

measured::NetworkData readTouchstone(std::string_view text, const std::string& file) {
    return TouchstoneReader(text, file).read();
}

}  // namespace exchange
