// SPDX-License-Identifier: GPL-3.0-or-later
// The grammar of what people type into a field of one kind:
//
//     sum     = product { ("+" | "-") product }
//     product = factor [suffix] { ("*" | "/") factor [suffix] }
//     factor  = { "+" | "-" } ( number | code | gauge | "(" sum ")" )
//     number  = digits, one decimal sign "." or ",", perhaps an exponent "e-3"
//     code    = number with a prefix or R in the place of the decimal sign (IEC 60062): 4k7, 4R7, R47
//     gauge   = "38 AWG" | "AWG 38" | "4/0 AWG"
//     suffix  = [prefix] unit, or a prefix alone where the kind has one unit only
//
// A suffix behind a product of bare numbers belongs to the whole product: 1/2 in is half an inch.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "units/spelling.h"

namespace units {

/// A number on its way through the grammar.
struct Term {
    long double value = 0;
    Sort sort = Sort::Bare;
    int power = 0;                ///< of the unit, for an Amount
    bool plain = true;            ///< no unit was met
    bool gauge = false;           ///< a gauge, which takes no minus sign
    std::string digits;           ///< of a single literal, so that a prefix is applied to the text; else ""
    std::optional<double> exact;  ///< of a single literal, rounded once
};

/// Reads one text; every member throws BadInput with one fault.
class Expression {
public:
    Expression(Kind kind, std::string_view text) : kind_(kind), text_(text) {}
    [[nodiscard]] double result();

private:
    Term sum(int depth);
    Term product(int depth);
    Term factor(int depth);
    Term primary(int depth);
    Term number();
    std::optional<Term> code();
    std::optional<Term> gauge();
    Term gaugeTerm(std::size_t start, std::string_view size, bool aught) const;
    void takeSuffix(Term& term);
    [[nodiscard]] Term added(const Term& left, const Term& right, bool minus, std::size_t start) const;
    [[nodiscard]] Term multiplied(const Term& left, const Term& right, bool divide, std::size_t start) const;
    [[nodiscard]] double inShopUnit(const Term& term) const;
    [[nodiscard]] double finished(const Term& term) const;
    [[nodiscard]] double inRange(double value) const;
    void checkText() const;
    void checkNothingLeft();

    std::string_view takeDigits();
    std::string_view takeExponent();
    bool takeOperator(char ascii, std::string_view sign);
    bool takeAwg();
    void skipSpace();
    [[nodiscard]] std::string_view rest() const { return text_.substr(at_); }
    [[nodiscard]] bool atEnd() const { return at_ >= text_.size(); }
    [[nodiscard]] std::string_view word() const;
    [[nodiscard]] std::string quotedFrom(std::size_t start) const;
    [[noreturn]] void fail(std::string found, std::string allowed) const;
    [[noreturn]] void failUsual(std::string found) const;

    Kind kind_;
    std::string_view text_;
    std::size_t at_ = 0;
};

}  // namespace units
