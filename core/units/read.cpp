// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>

#include "units/decimal.h"
#include "units/expression.h"
#include "units/fault.h"
#include "units/text.h"

namespace units {

namespace {

constexpr std::size_t longestText = 400;  // bytes
constexpr std::size_t longestQuote = 40;  // characters
constexpr double nearlyWhole = 1e-9;      // relative; what rounding may leave of a product such as 0.1*30
constexpr double thickestGauge = -3, finestGauge = 60;

/// The text in quotes: cut when long, with "?" for what is no character that one can see.
std::string quoted(std::string_view text) {
    std::string result = "\"";
    for (std::size_t count = 0; !text.empty(); ++count) {
        if (count == longestQuote) return result + "…\"";
        const std::size_t length = characterLength(text);
        const auto lead = static_cast<unsigned char>(text.front());
        const bool visible = length > 1 || (lead >= 0x20 && lead < 0x7F);
        result += visible ? text.substr(0, length) : std::string_view("?");
        text.remove_prefix(length);
    }
    return result + "\"";
}

bool isSpaceAt(std::string_view text, std::size_t& length) {
    for (const std::string_view space : {" ", "\t", "\u00A0", "\u2009", "\u202F"})
        if (text.starts_with(space)) {
            length = space.size();
            return true;
        }
    return false;
}

std::string_view withoutTail(std::string_view text) {
    while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
    return text;
}

char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

}  // namespace

double read(Kind kind, std::string_view text) {
    return Expression(kind, text).result();
}

void Expression::fail(std::string found, std::string allowed) const {
    refuse("", std::move(found), std::move(allowed));
}

void Expression::failUsual(std::string found) const {
    std::string allowed(noun(kind_));
    if (!unitWords(kind_).empty() && kind_ != Kind::Angle) allowed.append(" in ").append(unitWords(kind_));
    allowed.append(", such as ").append(example(kind_));
    fail(std::move(found), std::move(allowed));
}

std::string Expression::quotedFrom(std::size_t start) const {
    const bool isRest = start == at_ && start > 0;
    const std::string_view part =
        isRest ? word() : text_.substr(start, at_ > start ? at_ - start : std::string_view::npos);
    return quoted(withoutTail(part));
}

void Expression::checkText() const {
    std::size_t start = 0;
    for (std::size_t length = 0; isSpaceAt(text_.substr(start), length);) start += length;
    if (start == text_.size()) failUsual("nothing");
    if (text_.size() > longestText) fail("more than 400 characters", "at most 400 characters");
    if (text_.find('.') != std::string_view::npos && text_.find(',') != std::string_view::npos)
        fail(quoted(withoutTail(text_.substr(start))), "either \".\" or \",\" as decimal sign, and no grouping sign");
}

void Expression::checkNothingLeft() {
    skipSpace();
    if (atEnd()) return;
    const char c = text_[at_];
    if (c == ')') fail("\")\" without \"(\"", "as many \"(\" as \")\"");
    if (isDigit(c) || c == '(' || c == '.' || c == ',')
        fail(quotedFrom(at_) + " without an operator before it",
             kind_ == Kind::Length ? "+, -, * or / between two numbers, as in \"(1+1/2) in\""
                                   : "+, -, * or / between two numbers");
    failUsual(quotedFrom(at_));
}

double Expression::inRange(double value) const {
    if (!std::isfinite(value)) fail(quotedFrom(0), "a number between 1e-300 and 1e300");
    const double step = kind_ == Kind::Count ? 1 : 0.5;
    if (kind_ == Kind::Count || kind_ == Kind::Turns) {
        const double near = std::round(value / step) * step;
        if (std::abs(value - near) > nearlyWhole * std::max(1.0, std::abs(value))) failUsual(quotedFrom(0));
        return near;
    }
    if (kind_ == Kind::Share && !(value >= 0 && value <= 1)) failUsual(quotedFrom(0));
    return value;
}

std::string_view Expression::word() const {
    std::size_t length = 0;
    const std::string_view left = rest();
    while (length < left.size()) {
        const char c = left[length];
        std::size_t space = 0;
        if (isSpaceAt(left.substr(length), space) || c == '(' || c == ')' || c == '+' || c == '-' || c == '*' ||
            c == '/')
            break;
        length += characterLength(left.substr(length));
    }
    return left.substr(0, length > 0 ? length : characterLength(left));
}

std::string_view Expression::takeDigits() {
    const std::size_t start = at_;
    while (!atEnd() && isDigit(text_[at_])) ++at_;
    return text_.substr(start, at_ - start);
}

bool Expression::takeOperator(char ascii, std::string_view sign) {
    if (atEnd()) return false;
    if (text_[at_] == ascii)
        ++at_;
    else if (rest().starts_with(sign))
        at_ += sign.size();
    else
        return false;
    return true;
}

void Expression::skipSpace() {
    for (std::size_t length = 0; !atEnd() && isSpaceAt(rest(), length);) at_ += length;
}

bool Expression::takeAwg() {
    const std::string_view left = rest();
    if (left.size() < 3 || lower(left[0]) != 'a' || lower(left[1]) != 'w' || lower(left[2]) != 'g') return false;
    if (left.size() > 3 && isLetter(left[3])) return false;
    at_ += 3;
    return true;
}

std::optional<Term> Expression::gauge() {
    if (kind_ != Kind::Length) return {};
    const std::size_t start = at_;
    const bool first = takeAwg();
    skipSpace();
    const bool minus = first && takeOperator('-', "\u2212");
    const std::size_t sizeStart = at_;
    const bool digits = !takeDigits().empty();
    if (digits && !atEnd() && (text_[at_] == '.' || text_[at_] == ',')) {
        ++at_;
        takeDigits();
    }
    const std::string_view size = text_.substr(sizeStart, at_ - sizeStart);
    const bool aught = digits && rest().starts_with("/0") && !(rest().size() > 2 && isDigit(rest()[2]));
    if (aught) at_ += 2;
    if (!first) skipSpace();
    if (first || (digits && takeAwg())) {
        if (!digits || minus) fail(quotedFrom(start), "a gauge from 4/0 to 60, such as \"38 AWG\"");
        return gaugeTerm(start, size, aught);
    }
    at_ = start;
    return {};
}

Term Expression::gaugeTerm(std::size_t start, std::string_view size, bool aught) const {
    std::string text(size);
    for (char& c : text)
        if (c == ',') c = '.';
    if (text.back() == '.') text.pop_back();
    const bool zeros = !aught && text.find_first_not_of('0') == std::string::npos;  // 000 is 3/0
    double gauge = zeros ? 1.0 - static_cast<double>(text.size()) : nearest<double>(text, 0).value_or(1e9);
    if (aught) gauge = gauge >= 1 ? 1 - gauge : 1e9;
    if (gauge < thickestGauge || gauge > finestGauge)
        fail(quotedFrom(start), "a gauge from 4/0 to 60, such as \"38 AWG\"");
    Term term;
    term.value = static_cast<long double>(awgDiameter(gauge));
    term.exact = awgDiameter(gauge);
    term.sort = Sort::Amount;
    term.power = 1;
    term.plain = false;
    term.gauge = true;
    return term;
}

}  // namespace units
