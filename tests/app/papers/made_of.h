// SPDX-License-Identifier: GPL-3.0-or-later
// What every paper of a design can be made of, for tests.
#pragma once

#include <QTemporaryDir>
#include <fstream>

#include "exchange/design_json.h"
#include "exchange/fixture_file.h"
#include "exchange/load_tolerances.h"
#include "exchange/read_file.h"
#include "papers/paper_kinds.h"
#include "shop/bill.h"
#include "winding_cases.h"

namespace made_of {

inline const std::vector<std::string> folders{COILWRIGHT_SOURCE_DIR "/resources"};

/// The example prices and one for every part that they lack.
inline ::shop::Prices pricesFor(const design::Design& design) {
    const std::string file = folders.front() + "/prices/example.csv";
    ::shop::Prices prices = ::shop::readPrices(exchange::readFile(file), file);
    for (const auto& line : ::shop::bill(design, winding_cases::shop(), {}, &prices).lines)
        if (!line.price) prices.parts[line.part] = {line.unit, 10, 0};
    return prices;
}

inline papers::Source sourceOf(const design::Design& given) {
    const auto design = std::make_shared<const design::Design>(given);
    papers::Source source{
        design, winding_cases::shop(), {"2026-03-14", exchange::digestOf(*design, winding_cases::shop()), {}}};
    source.text = exchange::writeDesign(*design, winding_cases::shop());
    source.answer = [design, answer = analysis::AnswerPtr()]() mutable {
        if (!answer) answer = analysis::answer(*design, winding_cases::shop());
        return answer;
    };
    source.prices = pricesFor(*design);
    source.pricesFile = "p.csv";
    source.fixture = [] {
        const std::string file = exchange::fixtureFile(folders);
        return exchange::readFixture(exchange::readFile(file), file);
    };
    source.tolerances = [] { return exchange::loadTolerances(folders); };
    auto old = std::make_shared<design::Design>(given);
    old->revision = "0";
    old->core.height = 0.95 * old->core.height;
    source.before =
        papers::Before{old, exchange::digestOf(*old, winding_cases::shop()), {"2025-01-31", "the stack is higher", ""}};
    return source;
}

inline QString saved(const QTemporaryDir& folder, const std::string& name, const QByteArray& bytes) {
    const QString path = folder.filePath(QString::fromStdString(name) + ".pdf");
    std::ofstream(path.toStdString(), std::ios::binary).write(bytes.constData(), bytes.size());
    return path;
}

}  // namespace made_of
