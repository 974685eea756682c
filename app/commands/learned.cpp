// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/learned.h"

#include "analysis/answer.h"
#include "commands/places.h"
#include "exchange/fixture_file.h"
#include "exchange/read_file.h"
#include "records/unit_table.h"
#include "units/fault.h"

namespace commands {

design::Fixture fixtureAsked(const Arguments& arguments) {
    std::string file = arguments.option("--fixture");
    if (file.empty()) file = exchange::fixtureFile(resourceFolders(places()));
    return exchange::readFixture(exchange::readFile(file), file);
}

Planned plannedFor(const design::Design& design, const catalog::Catalog& shop, const Arguments& arguments) {
    Planned all;
    all.fixture = fixtureAsked(arguments);
    const auto answer = analysis::answer(design, shop);
    all.prediction = shop::planPrediction(design, answer, shop, shopTolerances(places()), all.fixture);
    all.plan = shop::testPlan(design, *answer, all.prediction, shop, all.fixture, {});
    return all;
}

std::vector<ReadUnit> readUnitsOf(const std::string& path, const std::string& serial) {
    std::vector<ReadUnit> all;
    for (const auto& record : records::readUnits(exchange::readFile(path), path)) {
        if (!serial.empty() && record.serial != serial) continue;
        ReadUnit unit{record.serial, record.stage, {}};
        for (const auto& reading : record.readings) unit.readings[reading.test] = reading.value;
        all.push_back(std::move(unit));
    }
    if (all.empty())
        units::refuse(path, serial.empty() ? "no unit" : "no unit \"" + serial + '"',
                      "a line for each unit, as the verb units imports it");
    return all;
}

}  // namespace commands
