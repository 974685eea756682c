// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright field F.json [--json]
#include "commands/arguments.h"
#include "commands/verb.h"
#include "exchange/read_file.h"
#include "exchange/stage_json.h"
#include "json/text.h"

namespace commands {

std::string field(const std::vector<std::string>& typed) {
    const Arguments arguments = sorted(typed, {{"FILE"}, {"--json"}, {}});
    const std::string& path = arguments.operands.front();
    return json::write(exchange::fieldJson(exchange::readFile(path), path));
}

}  // namespace commands
