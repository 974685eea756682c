// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright winders [NAME or FILE]: which winders there are; whether a description is sound.
#include "commands/arguments.h"
#include "commands/places.h"
#include "commands/verb.h"
#include "commands/winding.h"
#include "units/fault.h"
#include "units/joined.h"

namespace commands {

std::string winders(const std::vector<std::string>& typed) {
    if (typed.size() > 1 || (typed.size() == 1 && typed.front().starts_with("-")))
        refuse("winders", '"' + typed.back() + '"', "nothing, or one name or path of a description");
    std::vector<std::string> names = typed;
    if (names.empty()) names = exchange::winderNames(resourceFolders(places()));
    std::string text;
    for (const std::string& name : names) {
        const exchange::OpenedWinder one = openWinder(name);
        text += units::joined({name, ": ", one.winder.title, ", ", one.file, "\n"});
    }
    return text;
}

}  // namespace commands
