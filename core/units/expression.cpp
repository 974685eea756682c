// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/expression.h"

#include <cmath>

#include "units/decimal.h"
#include "units/text.h"

namespace units {

namespace {
constexpr int deepest = 32;
constexpr std::string_view minusSign = "\u2212", timesSign = "\u00D7", divisionSign = "\u00F7";
}  // namespace

double Expression::result() {
    checkText();
    const Term term = sum(0);
    checkNothingLeft();
    return inRange(finished(term));
}

Term Expression::sum(int depth) {
    skipSpace();
    const std::size_t start = at_;
    Term left = product(depth);
    while (true) {
        skipSpace();
        const bool plus = takeOperator('+', "+");
        if (!plus && !takeOperator('-', minusSign)) return left;
        const Term right = product(depth);
        left = added(left, right, !plus, start);
    }
}

Term Expression::product(int depth) {
    skipSpace();
    const std::size_t start = at_;
    Term left = factor(depth);
    takeSuffix(left);
    while (true) {
        skipSpace();
        const bool divide = takeOperator('/', divisionSign);
        if (!divide && !takeOperator('*', timesSign)) return left;
        Term right = factor(depth);
        if (left.plain && right.plain) {
            left = multiplied(left, right, divide, start);
            takeSuffix(left);
        } else {
            takeSuffix(right);
            left = multiplied(left, right, divide, start);
        }
    }
}

Term Expression::factor(int depth) {
    skipSpace();
    const std::size_t start = at_;
    bool negative = false;
    while (true) {
        skipSpace();
        if (takeOperator('-', minusSign))
            negative = !negative;
        else if (!takeOperator('+', "+"))
            break;
    }
    Term term = primary(depth);
    if (!negative) return term;
    if (term.sort == Sort::Level) fail(quotedFrom(start), "the minus sign with the number, as in \"-10 dBu\"");
    if (term.gauge) fail(quotedFrom(start), "a gauge from 4/0 to 60, such as \"38 AWG\"");
    term.value = -term.value;
    if (term.exact) term.exact = -*term.exact;
    if (!term.digits.empty()) term.digits.insert(0, 1, '-');
    return term;
}

Term Expression::primary(int depth) {
    if (atEnd()) failUsual("the end where a number should stand");
    if (text_[at_] == '(') {
        if (depth >= deepest) fail("parentheses nested deeper than 32", "at most 32 levels of parentheses");
        ++at_;
        Term inside = sum(depth + 1);
        skipSpace();
        if (atEnd()) fail("\"(\" without \")\"", "as many \")\" as \"(\"");
        if (text_[at_] != ')') checkNothingLeft();
        ++at_;
        inside.digits.clear();
        return inside;
    }
    if (const auto wire = gauge()) return *wire;
    if (const auto letters = code()) return *letters;
    const char c = text_[at_];
    if (isDigit(c) || c == '.' || c == ',') return number();
    failUsual(quotedFrom(at_));
}

Term Expression::number() {
    const std::size_t start = at_;
    std::string digits(takeDigits());
    if (!atEnd() && (text_[at_] == '.' || text_[at_] == ',')) {
        ++at_;
        const std::string_view decimals = takeDigits();
        if (digits.empty() && decimals.empty()) fail(quotedFrom(start), "digits with the decimal sign, as in \"0.5\"");
        if (digits.empty()) digits.assign(1, '0');
        if (!decimals.empty()) digits.append(".").append(decimals);
        if (!atEnd() && (text_[at_] == '.' || text_[at_] == ',')) {
            at_ += word().size();
            fail(quotedFrom(start), "one decimal sign in a number, and no grouping sign");
        }
    }
    digits.append(takeExponent());
    const auto exact = nearest<double>(digits, 0);
    const auto value = nearest<long double>(digits, 0);
    if (!exact || !value) fail(quotedFrom(start), "a number between 1e-300 and 1e300");
    Term term;
    term.value = *value;
    term.exact = exact;
    term.digits = digits;
    return term;
}

std::string_view Expression::takeExponent() {
    if (atEnd() || (text_[at_] != 'e' && text_[at_] != 'E')) return {};
    const std::size_t start = at_, sign = at_ + 1;
    const bool isSigned = sign < text_.size() && (text_[sign] == '-' || text_[sign] == '+');
    const std::size_t first = sign + (isSigned ? 1 : 0);
    if (first >= text_.size() || !isDigit(text_[first])) return {};
    at_ = first;
    takeDigits();
    return text_.substr(start, at_ - start);
}

std::optional<Term> Expression::code() {
    const std::size_t start = at_;
    const std::string before(takeDigits());
    const auto letter = decimalLetter(kind_, rest());
    if (letter && at_ + letter->length < text_.size() && isDigit(text_[at_ + letter->length])) {
        at_ += letter->length;
        Term term;
        std::string digits(before.empty() ? 1 : 0, '0');
        digits.append(before);
        digits.append(".").append(takeDigits());
        const auto exact = nearest<double>(digits, letter->exponent);
        const auto value = nearest<long double>(digits, letter->exponent);
        if (!exact || !value) fail(quotedFrom(start), "a number between 1e-300 and 1e300");
        term.value = *value;
        term.exact = exact;
        term.sort = Sort::Amount;
        term.power = 1;
        term.plain = false;
        const std::size_t mark = at_;
        skipSpace();
        const auto unit = atEnd() ? std::nullopt : suffix(kind_, rest());
        at_ = unit && unit->exponent == 0 ? at_ + unit->length : mark;  // the unit may follow, a second prefix may not
        return term;
    }
    at_ = start;
    return {};
}

void Expression::takeSuffix(Term& term) {
    const std::size_t mark = at_;
    skipSpace();
    const auto found = atEnd() ? std::nullopt : suffix(kind_, rest());
    if (!found) {
        at_ = mark;
        return;
    }
    if (!term.plain) fail(quotedFrom(at_), "one unit for each number");
    at_ += found->length;
    const bool moved = found->factor == 1 && found->offset == 0;
    term.exact.reset();
    if (!term.digits.empty()) {
        const bool negative = term.digits.front() == '-';
        const auto digits = std::string_view(term.digits).substr(negative ? 1 : 0);
        const auto exact = nearest<double>(digits, found->exponent);
        const auto value = nearest<long double>(digits, found->exponent);
        if (!exact || !value) fail(quotedFrom(0), "a number between 1e-300 and 1e300");
        term.value = negative ? -*value : *value;
        if (moved) term.exact = negative ? -*exact : *exact;
    } else {
        term.value *= std::pow(10.0L, static_cast<long double>(found->exponent));
    }
    term.value = term.value * found->factor + found->offset;
    term.sort = found->sort;
    term.power = found->power;
    term.plain = false;
    term.digits.clear();
}

Term Expression::added(const Term& left, const Term& right, bool minus, std::size_t start) const {
    Term result;
    result.value = minus ? left.value - right.value : left.value + right.value;
    result.plain = left.plain && right.plain;
    result.sort = left.sort;
    result.power = left.power;
    const bool alike = left.sort == right.sort && left.power == right.power && left.sort != Sort::Level;
    const bool shifted = left.sort == Sort::Level && right.sort == Sort::Gain;
    if (alike || shifted) return result;
    if (left.sort == Sort::Gain && right.sort == Sort::Level && !minus) {
        result.sort = Sort::Level;
        return result;
    }
    const Term& amount = left.sort == Sort::Bare ? right : left;
    const Term& bare = left.sort == Sort::Bare ? left : right;
    if (bareIsPlain(kind_) && bare.sort == Sort::Bare && amount.sort == Sort::Amount && amount.power == 1) {
        result.sort = Sort::Amount;
        result.power = 1;
        return result;
    }
    if (kind_ == Kind::LevelDbu) fail(quotedFrom(start), "a level plus or minus decibels, as in \"4 dBu + 6 dB\"");
    fail(quotedFrom(start), "numbers with a unit on both sides of \"+\" or \"-\"");
}

Term Expression::multiplied(const Term& left, const Term& right, bool divide, std::size_t start) const {
    if (left.sort == Sort::Level || right.sort == Sort::Level)
        fail(quotedFrom(start), "a level plus or minus decibels, as in \"4 dBu + 6 dB\"");
    if (right.sort == Sort::Gain || (left.sort == Sort::Gain && right.sort != Sort::Bare))
        fail(quotedFrom(start), "decibels times or divided by a bare number");
    if (divide && right.value == 0) fail(quotedFrom(start), "a divisor other than zero");
    Term result;
    result.value = divide ? left.value / right.value : left.value * right.value;
    result.plain = left.plain && right.plain;
    result.sort = left.sort;
    if (left.sort == Sort::Gain) return result;
    result.power = divide ? left.power - right.power : left.power + right.power;
    result.sort = result.power == 0 ? Sort::Bare : Sort::Amount;
    return result;
}

double Expression::inShopUnit(const Term& term) const {
    const int shop = shopExponent(kind_);
    if (!term.digits.empty()) {
        const bool negative = term.digits.front() == '-';
        const auto exact = nearest<double>(std::string_view(term.digits).substr(negative ? 1 : 0), shop);
        if (exact) return negative ? -*exact : *exact;
    }
    if (shop == 0 && term.exact) return *term.exact;
    return static_cast<double>(term.value * std::pow(10.0L, static_cast<long double>(shop)));
}

double Expression::finished(const Term& term) const {
    const int target = kind_ == Kind::Area ? 2 : 1;
    if (term.sort == Sort::Bare && !term.plain && !unit(kind_).empty())
        failUsual("the ratio " + quotedFrom(0) + ", which has no unit");
    if (term.sort == Sort::Bare) return inShopUnit(term);
    if (term.sort == Sort::Gain) fail(quotedFrom(0), "a level in dBu, dBV or V, since dB says a difference only");
    if (term.sort == Sort::Level) return term.exact ? *term.exact : static_cast<double>(term.value);
    if (term.power != target) failUsual(quotedFrom(0));
    if (kind_ == Kind::LevelDbu) {
        if (!(term.value > 0)) fail(quotedFrom(0), "a voltage above 0 V");
        return dbuOfVolts(static_cast<double>(term.value));
    }
    return term.exact ? *term.exact : static_cast<double>(term.value);
}

}  // namespace units
