// SPDX-License-Identifier: GPL-3.0-or-later
#include "json/syntax.h"

#include <algorithm>

#include "json/guard.h"
#include "units/fault.h"

namespace json {

namespace {

constexpr std::string_view blanks = " \t\r\n", wordEnds = " \t\r\n,:[]{}\"";
constexpr const char* numberWords = "a number as in JSON, with digits on both sides of the point";
constexpr const char* escapeWords = "an escape such as \\n, \\\" or \\u00B5";

class Syntax {
public:
    Syntax(std::string_view text, const std::string& file) : text_(text), file_(file) {}

    void document() {
        value();
        skipBlanks();
        if (at_ < text_.size()) fail("the end of the text after the value");
    }

private:
    void value() {
        skipBlanks();
        switch (const char c = here()) {
            case '{':
                return object();
            case '[':
                return array();
            case '"':
                return string();
            default:
                if (isDigit(c) || c == '-' || c == '+' || c == '.') return number();
                for (const std::string_view word : {"true", "false", "null"})
                    if (thisWord() == word) {
                        at_ += word.size();
                        return;
                    }
                fail(atEnd() ? "a JSON value" : "true, false, null, a number or text in quotes");
        }
    }

    void object() {
        ++at_;
        if (take('}')) return;
        do {
            skipBlanks();
            if (here() != '"') fail("a key in quotes");
            string();
            if (!take(':')) fail("a colon after the key");
            value();
        } while (take(','));
        if (!take('}')) fail("a comma or \"}\"");
    }

    void array() {
        ++at_;
        if (take(']')) return;
        do value();
        while (take(','));
        if (!take(']')) fail("a comma or \"]\"");
    }

    void number() {
        const std::size_t start = at_;
        if (here() == '-') ++at_;
        const std::size_t first = at_;
        const std::size_t whole = digits();
        bool good = whole == 1 || (whole > 1 && text_[first] != '0');
        if (here() == '.') {
            ++at_;
            good = digits() > 0 && good;
        }
        if (here() == 'e' || here() == 'E') {
            ++at_;
            if (here() == '-' || here() == '+') ++at_;
            good = digits() > 0 && good;
        }
        if (good && (atEnd() || wordEnds.find(here()) != std::string_view::npos)) return;
        at_ = start;
        fail(numberWords);
    }

    void string() {
        const std::size_t start = at_++;
        while (here() != '"' || atEnd()) {
            if (atEnd()) {
                at_ = start;
                fail("a quote at the end of the text");
            }
            if (static_cast<unsigned char>(here()) < 0x20)
                fault(at_, here() == '\n' ? "a line break in quotes" : "a control character in quotes",
                      "an escape for it");
            if (here() == '\\')
                escape();
            else
                ++at_;
        }
        ++at_;
    }

    void escape() {
        const std::size_t start = at_++;
        const char kind = here();
        ++at_;
        if (kind != 'u') {
            if (kind == '\0' || std::string_view("\"\\/bfnrt").find(kind) == std::string_view::npos)
                failEscape(start, 2);
            return;
        }
        const unsigned unit = fourHexadecimal(start);
        if (unit < 0xD800 || unit > 0xDFFF) return;
        if (unit > 0xDBFF || !text_.substr(at_).starts_with("\\u")) failEscape(start, 6);
        at_ += 2;
        const unsigned low = fourHexadecimal(start);
        if (low < 0xDC00 || low > 0xDFFF) failEscape(start, 12);
    }

    unsigned fourHexadecimal(std::size_t start) {
        unsigned unit = 0;
        for (int i = 0; i < 4; ++i, ++at_) {
            const char c = here();
            if (isDigit(c))
                unit = unit * 16 + static_cast<unsigned>(c - '0');
            else if (c >= 'a' && c <= 'f')
                unit = unit * 16 + static_cast<unsigned>(c - 'a' + 10);
            else if (c >= 'A' && c <= 'F')
                unit = unit * 16 + static_cast<unsigned>(c - 'A' + 10);
            else
                failEscape(start, at_ - start);
        }
        return unit;
    }

    std::size_t digits() {
        const std::size_t start = at_;
        while (isDigit(here())) ++at_;
        return at_ - start;
    }

    bool take(char c) {
        skipBlanks();
        if (here() != c) return false;
        ++at_;
        return true;
    }

    void skipBlanks() {
        while (!atEnd() && blanks.find(here()) != std::string_view::npos) ++at_;
    }

    /// What stands here: a bracket or sign, a text with its quotes, or a word; cut when long.
    [[nodiscard]] std::string_view thisWord() const {
        constexpr std::size_t most = 60;
        const std::string_view left = text_.substr(at_);
        std::size_t length = left.find_first_of(wordEnds);
        if (length == 0) {
            length = left.front() == '"' ? left.find_first_of("\"\n", 1) : 1;
            if (left.front() == '"' && length != std::string_view::npos && left[length] == '"') ++length;
        }
        length = std::min({length, most, left.size()});
        while (length > 0 && length < left.size() && (static_cast<unsigned char>(left[length]) & 0xC0) == 0x80)
            --length;
        return left.substr(0, length);
    }

    [[noreturn]] void fail(const char* allowed) const {
        fault(at_, atEnd() ? "the end of the text" : std::string(thisWord()), allowed);
    }
    [[noreturn]] void failEscape(std::size_t start, std::size_t length) const {
        fault(start, std::string(text_.substr(start, length)), escapeWords);
    }
    [[noreturn]] void fault(std::size_t where, std::string found, const char* allowed) const {
        units::refuse(file_ + ": " + lineAndColumn(text_, where), std::move(found), allowed);
    }

    static bool isDigit(char c) { return c >= '0' && c <= '9'; }
    [[nodiscard]] bool atEnd() const { return at_ >= text_.size(); }
    [[nodiscard]] char here() const { return atEnd() ? '\0' : text_[at_]; }

    std::string_view text_;
    const std::string& file_;
    std::size_t at_ = 0;
};

}  // namespace

void checkSyntax(std::string_view text, const std::string& file) {
    Syntax(text, file).document();
}

}  // namespace json
