// SPDX-License-Identifier: GPL-3.0-or-later
#include <chrono>

#include "records/unit_table.h"

namespace records {

namespace {

/// The number in the digits from `at`; the form is known to have digits there.
int number(std::string_view text, std::size_t at, std::size_t digits) {
    int value = 0;
    for (const char c : text.substr(at, digits)) value = value * 10 + (c - '0');
    return value;
}

}  // namespace

std::optional<double> dayOf(std::string_view time) {
    constexpr std::string_view form = "dddd-dd-ddTdd:dd:dd";
    if (time.size() != 10 && time.size() != 16 && time.size() != 19) return {};
    for (std::size_t k = 0; k < time.size(); ++k) {
        const bool digit = time[k] >= '0' && time[k] <= '9';
        if (form[k] == 'd' ? !digit : time[k] != form[k]) return {};
    }
    using namespace std::chrono;
    const year_month_day date{year(number(time, 0, 4)), month(static_cast<unsigned>(number(time, 5, 2))),
                              day(static_cast<unsigned>(number(time, 8, 2)))};
    if (!date.ok()) return {};
    double seconds = 0;
    if (time.size() >= 16) {
        const int hour = number(time, 11, 2), minute = number(time, 14, 2);
        const int second = time.size() == 19 ? number(time, 17, 2) : 0;
        if (hour > 23 || minute > 59 || second > 60) return {};
        seconds = 3600.0 * hour + 60.0 * minute + second;
    }
    constexpr double secondsOfADay = 86400;
    return static_cast<double>(sys_days(date).time_since_epoch().count()) + seconds / secondsOfADay;
}

}  // namespace records
