// SPDX-License-Identifier: GPL-3.0-or-later
#include "design/revision.h"

#include <algorithm>
#include <charconv>

#include "json/enum_word.h"
#include "units/joined.h"

namespace design {

namespace {

using units::refuse;

std::string inQuotes(const std::string& text) {
    return text.empty() ? "nothing" : units::joined({"\"", text, "\""});
}

bool blank(const std::string& text) {
    return text.find_first_not_of(" \t\n") == std::string::npos;
}

int numberIn(const std::string& text, std::size_t from, std::size_t count) {
    int number = -1;
    const char* end = text.data() + from + count;
    const auto read = std::from_chars(text.data() + from, end, number);
    return read.ec == std::errc() && read.ptr == end ? number : -1;
}

/// Whether `text` is a day of the calendar, written year-month-day.
bool isDate(const std::string& text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
    const int year = numberIn(text, 0, 4), month = numberIn(text, 5, 2), day = numberIn(text, 8, 2);
    if (year < 1900 || month < 1 || month > 12 || day < 1) return false;
    const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    constexpr std::array<int, 12> days{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    return day <= days[static_cast<std::size_t>(month - 1)] + (month == 2 && leap ? 1 : 0);
}

void needDate(const std::string& place, const std::string& date) {
    if (!isDate(date)) refuse(place + ": date", inQuotes(date), "a day as 2026-11-25");
}

Revision& known(Register& all, int number) {
    for (Revision& r : all.revisions)
        if (r.number == number) return r;
    refuse("revision " + std::to_string(number), "no such revision",
           all.revisions.empty() ? "none, as none was kept yet"
                                 : "a number from 1 to " + std::to_string(all.revisions.back().number));
}

}  // namespace

std::string word(Issue issue) {
    return json::wordOf(issue);
}

const Revision* Register::find(int number) const {
    const auto at =
        std::find_if(revisions.begin(), revisions.end(), [number](const Revision& r) { return r.number == number; });
    return at == revisions.end() ? nullptr : &*at;
}

Register withRevision(const Register& all, Revision next) {
    next.number = all.revisions.empty() ? 1 : all.revisions.back().number + 1;
    const std::string place = "revision " + std::to_string(next.number);
    needDate(place, next.date);
    if (blank(next.reason)) refuse(place + ": reason", "nothing", "one sentence on why it is kept");
    if (!all.revisions.empty() && all.revisions.back().digest == next.digest)
        refuse(place, "the same design as revision " + std::to_string(all.revisions.back().number),
               "a design that differs from it");
    for (const Revision& r : all.revisions)
        if (r.mark == next.mark && r.issue() != Issue::Draft)
            refuse(place,
                   "the mark " + inQuotes(next.mark) + ", under which revision " + std::to_string(r.number) +
                       " was issued (" + word(r.issue()) + ")",
                   "another mark in the design's field revision");
    Register more = all;
    more.revisions.push_back(std::move(next));
    return more;
}

Register withStep(const Register& all, int number, const IssueStep& step) {
    Register more = all;
    Revision& revision = known(more, number);
    const std::string place = "revision " + std::to_string(number);
    if (step.issue <= revision.issue())
        refuse(place + ": state", word(step.issue) + " after " + word(revision.issue()),
               "a state further on: draft, sample, released, retired");
    needDate(place, step.date);
    if (step.issue == Issue::Released && blank(step.by)) refuse(place + ": by", "nobody", "who approves the release");
    revision.steps.push_back(step);
    return more;
}

Register withFirstLot(const Register& all, int number, const std::string& lot) {
    Register more = all;
    Revision& revision = known(more, number);
    const std::string place = "revision " + std::to_string(number) + ": first lot";
    if (blank(lot)) refuse(place, "nothing", "the lot's name");
    if (revision.issue() != Issue::Released) refuse(place, word(revision.issue()), "a revision that is released");
    if (!revision.firstLot.empty())
        refuse(place, inQuotes(lot) + " after " + inQuotes(revision.firstLot), "one first lot");
    revision.firstLot = lot;
    return more;
}

Register withVariant(const Register& all, const Variant& variant) {
    Register more = all;
    (void)known(more, variant.number);
    if (blank(variant.partNumber)) refuse("part number", "nothing", "a part number");
    for (const Variant& v : all.variants)
        if (v.partNumber == variant.partNumber)
            refuse("part number", inQuotes(variant.partNumber), "one that is not taken by another variant");
    more.variants.push_back(variant);
    return more;
}

}  // namespace design
