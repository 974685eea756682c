// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/memory.h"

#include <QDir>
#include <QFileInfo>

#include "document/journal.h"
#include "exchange/read_file.h"
#include "exchange/write_file.h"
#include "json/text.h"

namespace bench {

namespace {

struct LookWord {
    Look look;
    const char* word;
};
constexpr std::array<LookWord, 3> looks{{{Look::Desktop, "desktop"}, {Look::Light, "light"}, {Look::Dark, "dark"}}};

json::Value written(const plots::Arrangement& plots) {
    json::Value views = json::Value::array();
    for (const plots::View& view : plots.views)
        views.push_back(json::Value{{"trace", view.trace}, {"curve", view.curve}, {"right", view.rightUnit}});
    return {{"count", plots.count}, {"views", views}};
}

plots::Arrangement plotsOf(const json::Value& all) {
    const auto found = all.find("plots");
    if (found == all.end()) return {};
    plots::Arrangement plots{found->at("count").get<int>(), {}};
    for (const json::Value& view : found->at("views"))
        plots.views.push_back({view.at("trace").get<std::string>(), view.at("curve").get<std::string>(),
                               view.at("right").get<std::string>()});
    return plots::sound(std::move(plots));
}

}  // namespace

QString memoryPath() {
    return document::stateFolder() + QStringLiteral("/bench.json");
}

Memory recalled() {
    Memory memory;
    const QString path = memoryPath();
    if (!QFileInfo::exists(path)) return memory;
    try {
        const json::Value all = json::read(exchange::readFile(path.toStdString()), path.toStdString());
        for (const json::Value& one : all.at("recent")) memory.recent << QString::fromStdString(one.get<std::string>());
        for (const LookWord& look : looks)
            if (all.at("look").get<std::string>() == look.word) memory.look = look.look;
        memory.language = all.value("language", memory.language);
        memory.ampereTurns = all.value("ampere_turns", memory.ampereTurns);
        memory.layerVolts = all.value("layer_volts", memory.layerVolts);
        memory.plots = plotsOf(all);
        memory.unitRecords = QString::fromStdString(all.value("unit_records", std::string()));
        memory.inch = all.value("inch", memory.inch);
        memory.geometry = QByteArray::fromBase64(QByteArray::fromStdString(all.at("geometry").get<std::string>()));
    } catch (const std::exception&) {
        return {};
    }
    return memory;
}

bool keep(const Memory& memory) {
    json::Value all;
    all["recent"] = json::Value::array();
    for (const QString& path : memory.recent) all["recent"].push_back(path.toStdString());
    for (const LookWord& look : looks)
        if (look.look == memory.look) all["look"] = look.word;
    all["language"] = memory.language;
    all["ampere_turns"] = memory.ampereTurns;
    all["layer_volts"] = memory.layerVolts;
    all["inch"] = memory.inch;
    all["unit_records"] = memory.unitRecords.toStdString();
    all["plots"] = written(memory.plots);
    all["geometry"] = memory.geometry.toBase64().toStdString();
    const QString path = memoryPath();
    if (!QDir().mkpath(QFileInfo(path).path())) return false;
    try {
        exchange::writeFile(path.toStdString(), json::write(all));
    } catch (const std::exception&) {
        return false;
    }
    return true;
}

void remember(Memory& memory, const QString& path) {
    const QString whole = QFileInfo(path).absoluteFilePath();
    memory.recent.removeAll(whole);
    memory.recent.prepend(whole);
    while (memory.recent.size() > recentCount) memory.recent.removeLast();
}

}  // namespace bench
