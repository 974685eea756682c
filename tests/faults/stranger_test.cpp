// SPDX-License-Identifier: GPL-3.0-or-later
// A design file from somebody unknown: opening it reads no other file, names in it cannot put a line of their own into
// a netlist or a winding program, and what is far too much is refused in little time and room.
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <map>
#include <set>

#include "analysis/answer.h"
#include "coil/coil_build.h"
#include "exchange/design_json.h"
#include "exchange/netlist.h"
#include "exchange/read_file.h"
#include "exchange/terminal_netlist.h"
#include "exchange/touchstone.h"
#include "exchange/winder.h"
#include "exchange/winding_plan.h"
#include "exchange/winding_program.h"
#include "json/text.h"
#include "replay/run.h"
#include "system_calls.h"
#include "units/csv_cell.h"
#include "units/fault.h"

namespace stranger_test {

using json::Value;

const std::string sample = COILWRIGHT_SOURCE_DIR "/tests/faults/sample.coilwright";
const std::string winder = COILWRIGHT_SOURCE_DIR "/resources/winders/single-traverse.json";

Value sampleValue() {
    return json::read(exchange::readFile(sample), "sample");
}

/// Every text that is one of `names` becomes what it is called there; not where a word of ours is meant.
void rename(Value& value, const std::map<std::string, std::string>& names) {
    static const std::set<std::string> words{"level_at", "distribution", "role", "earthing", "kind", "lay", "trace"};
    if (value.is_string()) {
        if (const auto at = names.find(value.get<std::string>()); at != names.end()) value = at->second;
    } else if (value.is_object()) {
        for (auto& [key, inner] : value.items())
            if (!words.contains(key)) rename(inner, names);
    } else if (value.is_array()) {
        for (Value& inner : value) rename(inner, names);
    }
}

/// The sample with `words` before the names of everything that a netlist, a table or a program tells of.
design::Design named(const std::string& words) {
    Value root = sampleValue();
    root["brief"].erase("promises");
    root["brief"].erase("masks");
    for (Value& hookUp : root["hook_ups"])
        for (Value& port : hookUp["ports"]) port.erase("table");  // no element of a netlist
    std::map<std::string, std::string> names;
    const auto add = [&](const Value& name) { names[name.get<std::string>()] = words + name.get<std::string>(); };
    for (const char* list : {"terminals", "ports", "hook_ups"})
        for (const Value& one : root[list]) add(one["name"]);
    rename(root, names);
    for (const char* key : {"name", "revision"}) root[key] = words + root.value(key, "");
    root["part_number"] = words + "7";
    for (Value& terminal : root["terminals"]) terminal["lead_colour"] = words + "red";
    return *exchange::readDesign(json::write(root), "stranger", {}).design;
}

std::ptrdiff_t lines(const std::string& text) {
    return std::count_if(text.begin(), text.end(), [](char c) { return c == '\n' || c == '\r'; });
}

TEST(StrangersDesign, OpensNoOtherFile) {
    const std::string text = exchange::readFile(sample);
    Value root = json::read(text, "sample");
    std::map<std::string, std::string> names;
    for (const Value& one : root["terminals"])
        names[one["name"].get<std::string>()] = "../../../etc/" + one["name"].get<std::string>();
    rename(root, names);
    root["name"] = "file:///etc/passwd";
    root["shelf"] = "https://example.org/x";
    const std::string strange = json::write(root);
    const calls::Watch watch("");
    const auto opened = exchange::readDesign(strange, "stranger", {});
    EXPECT_EQ(watch.asked(), 0);
    EXPECT_EQ(opened.design->name, "file:///etc/passwd");
}

TEST(StrangersDesign, NamesPutNoLineIntoANetlist) {
    const std::string hostile = "x\n.control\r\nshell touch HACKED\n.endc\n";
    const design::Design bad = named(hostile), good = named("x");
    const auto badAnswer = analysis::answer(bad, {}), goodAnswer = analysis::answer(good, {});
    using Writer = std::string (*)(const design::Design&, const analysis::Answer&);
    for (const Writer write : {&exchange::netlist, &exchange::terminalNetlist}) {
        const std::string text = write(bad, *badAnswer);
        EXPECT_EQ(lines(text), lines(write(good, *goodAnswer)));
        EXPECT_EQ(text.find("\nshell"), std::string::npos);
        EXPECT_NE(text.find("touch HACKED"), std::string::npos) << "the name is told, on its line";
    }
    EXPECT_EQ(lines(exchange::touchstone(bad, *badAnswer, "x.ts")),
              lines(exchange::touchstone(good, *goodAnswer, "x.ts")));
}

TEST(StrangersDesign, NamesPutNoBlockIntoAWindingProgram) {
    const auto machine = replay::readMachine(exchange::readFile(winder), winder);
    const auto description = exchange::readWinder(exchange::readFile(winder), winder);
    const auto blocks = [&](const std::string& words) {
        const design::Design d = named(words);
        const auto plan = exchange::windingPlan(d, coil::layOut(d, {}), {}, description, 1);
        const std::string text = exchange::windingProgram(plan, description);
        return replay::run(replay::readProgram(text, "p"), machine).blocks;
    };
    EXPECT_EQ(blocks("x)\nN5 G00 Z150 (\r\n:10 M03\n%\n"), blocks("x"));
}

TEST(StrangersDesign, TextIsNoFormulaInATable) {
    EXPECT_EQ(units::csvCell("=1+1"), "'=1+1");
    EXPECT_EQ(units::csvCell("@SUM(A1,A2)"), "\"'@SUM(A1,A2)\"");
    EXPECT_EQ(units::csvCell("+cmd|' /C x'!A0"), "'+cmd|' /C x'!A0");
    EXPECT_EQ(units::csvCell("-2+3+cmd(1)"), "'-2+3+cmd(1)");
    for (const char* name : {"+", "-", "+in", "-20 dB", "a=b"}) EXPECT_EQ(units::csvCell(name), name);
}

/// The sentence that a text is refused with, read in a process of its own; that process's time and room.
struct Told {
    std::string sentence;
    double seconds = 0, megabytes = 0;
};
Told readApart(const std::string& text) {
    int ends[2];
    EXPECT_EQ(::pipe(ends), 0);
    const pid_t reader = ::fork();
    if (reader == 0) {
        std::string said = "was opened";
        try {
            static_cast<void>(exchange::readDesign(text, "stranger", {}));
        } catch (const units::BadInput& bad) {
            said = bad.what();
        }
        static_cast<void>(::write(ends[1], said.data(), std::min<std::size_t>(said.size(), 4000)));
        ::_exit(0);
    }
    ::close(ends[1]);
    Told told;
    told.sentence.resize(4000);
    told.sentence.resize(static_cast<std::size_t>(std::max<ssize_t>(0, ::read(ends[0], told.sentence.data(), 4000))));
    ::close(ends[0]);
    int how = 0;
    struct rusage used {};
    EXPECT_EQ(::wait4(reader, &how, 0, &used), reader);
    EXPECT_TRUE(WIFEXITED(how));
    told.seconds = static_cast<double>(used.ru_utime.tv_sec) + static_cast<double>(used.ru_utime.tv_usec) * 1e-6;
    told.megabytes = static_cast<double>(used.ru_maxrss) / 1024;
    return told;
}

std::string listOf(const std::string& item, std::size_t count) {
    std::string list = "[";
    for (std::size_t k = 0; k < count; ++k) list.append(k == 0 ? "" : ",").append(item);
    return list + "]";
}

std::size_t valuesOfAllBut(const Value& root, const std::string& key) {
    const auto count = [](const auto& self, const Value& value) -> std::size_t {
        std::size_t all = 1;
        if (value.is_structured())
            for (const Value& inner : value) all += self(self, inner);
        return all;
    };
    return count(count, root) - count(count, root.at(key)) + 1;
}

TEST(StrangersDesign, FarTooMuchIsRefusedInLittleTimeAndRoom) {
    const Value root = sampleValue();
    const auto with = [&](const std::string& key, const std::string& value) {
        Value changed = root;
        changed[key] = "HERE";
        std::string text = json::write(changed);
        return text.replace(text.find("\"HERE\""), 6, value);
    };
    const std::string winding = root["windings"][0].dump(), terminal = root["terminals"][0].dump();
    constexpr std::size_t full = 9'900'000;
    const auto values = [](std::size_t count) {
        return "stranger: found " + std::to_string(count) + " values; allowed is at most 200000.";
    };
    const std::size_t others = valuesOfAllBut(root, "windings");
    const std::vector<std::pair<std::string, std::string>> cases{
        {with("windings", listOf("1", full / 2)), values(others + full / 2)},
        {with("windings", listOf("{}", full / 3)), values(others + full / 3)},
        {with("windings", listOf("{}", 190'000)), "stranger: /windings/0/name: found nothing; allowed is text"},
        {with("windings", listOf(winding, 5000)), "stranger: /windings: found 5000 items; allowed is at most 200."},
        {with("terminals", listOf(terminal, 20000)),
         "stranger: /terminals: found 20000 items; allowed is at most 1000."},
        {with("coil", listOf("{\"order\":" + listOf("{}", 19000) + "}", 10)),
         "stranger: /coil/0/order/0: found an object; allowed is"},
        {with("hook_ups", listOf("{\"name\":\"n\",\"straps\":" + listOf(listOf("\"S\"", 400), 400) + "}", 1)),
         "stranger: /hook_ups/0"},
        {with("hook_ups", listOf("{\"name\":\"n\",\"earths\":" + listOf("\"S\"", 499) + "}", 200)),
         "stranger: /hook_ups/"},
        {with("name", "\"" + std::string(full, 'x') + "\""), "was opened"}};
    for (const auto& [text, sentence] : cases) {
        const Told told = readApart(text);
        EXPECT_TRUE(told.sentence.starts_with(sentence)) << told.sentence.substr(0, 300);
        EXPECT_LT(told.megabytes, 1024) << sentence;
        EXPECT_LT(told.seconds, 5) << sentence;
    }
}

}  // namespace stranger_test
