// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright replay F --winder NAME [--against DESIGN [--leg 1|2]]
#include "commands/arguments.h"
#include "commands/verb.h"
#include "commands/winding.h"
#include "exchange/read_file.h"
#include "exchange/winding_program.h"
#include "units/fault.h"
#include "units/joined.h"
#include "units/text.h"
#include "winding/proof.h"

namespace commands {

Judgement replayed(const std::vector<std::string>& typed) {
    const Arguments arguments = sorted(typed, {{"PROGRAM"}, {}, {"--winder", "--against", "--leg"}});
    const std::string& file = arguments.operands.front();
    const std::string design = arguments.option("--against");
    if (design.empty() && !arguments.option("--leg").empty())
        refuse("--leg", "no design beside it", "it beside --against DESIGN");
    const exchange::OpenedWinder winder = openWinder(arguments.option("--winder"));
    const replay::Machine machine = replay::readMachine(winder.text, winder.file);
    const replay::Program program = replay::readProgram(exchange::readFile(file), file);
    replay::Run run = replay::run(program, machine);
    Judgement said;
    said.text = units::joined({file, ", on ", machine.title, "\n"});
    for (const std::string& line : exchange::windingCaution()) said.text += line + '\n';
    for (const std::string& line : winding::runWords(run, machine)) said.text += line + '\n';
    std::vector<std::string> words;
    if (design.empty()) {
        words = winding::remarkWords(run);
        if (words.empty()) said.text += "within the machine's limits; no design to compare with\n";
    } else {
        const Opened opened = openDesign(design);
        const int leg = legOf(*opened.design, arguments.option("--leg"), program.name);
        const winding::Proof proof = winding::proven(std::move(run), machine, *opened.design, opened.shop, leg);
        said.text += units::joined({"wire ", units::write(units::Kind::Length, proof.wire), ", all strands, a coil\n"});
        words = proof.faults;
        if (words.empty()) said.text += units::joined({"winds ", design, " ", winding::provenWords(machine), "\n"});
    }
    for (const std::string& one : words) said.text += one + ".\n";
    said.same = words.empty();
    return said;
}

}  // namespace commands
