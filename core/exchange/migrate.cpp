// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/migrate.h"

#include <algorithm>
#include <cassert>

namespace exchange {

const std::vector<MigrationStep>& migrationSteps() {
    static const std::vector<MigrationStep> steps;
    return steps;
}

json::Value migrate(json::Value file, int from, int to, const std::vector<MigrationStep>& steps,
                    std::vector<std::string>& notes) {
    for (int format = from; format < to; ++format) {
        const auto step = std::find_if(steps.begin(), steps.end(), [&](const auto& s) { return s.from == format; });
        assert(step != steps.end() && step->apply);
        file = step->apply(std::move(file), notes);
        file["coilwright"] = format + 1;
    }
    return file;
}

}  // namespace exchange
