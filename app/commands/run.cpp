// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/run.h"

#include <array>
#include <ostream>

#include "commands/verb.h"
#include "units/fault.h"

namespace commands {

namespace {

struct Named {
    const char* name;
    Verb verb;
    Judge judge = nullptr;  // instead of the verb
};
constexpr std::array<Named, 21> verbs{
    {{"figures", figures},          {"traces", traces},       {"write", write},        {"pair", pair},
     {"picture", picture},          {"revisions", revisions}, {"field", field},        {"lot", lot},
     {"replay", nullptr, replayed}, {"winders", winders},     {"spread", spreadUnits}, {"gather", gather},
     {"seek", seekDesigns},         {"begin", begin},         {"ask", askCustomer},    {"compare", compareMeasured},
     {"units", unitRecords},        {"cause", likelyCause},   {"fit", fitMeasured},    {"match", matchReadings},
     {"handbook", handbookBook}}};

constexpr const char* help =
    "coilwright                          the window, with a demo design\n"
    "coilwright DESIGN                   the window, with this design\n"
    "coilwright figures DESIGN           every figure, as text\n"
    "    --json                          as JSON, with uncertainty and source\n"
    "    --layers                        with --json: each layer, and the fields between them\n"
    "    --shields                       with and without each shield, side by side: leakage, capacitance, rejection\n"
    "    --hook-up NAME                  of this hook-up only\n"
    "coilwright traces DESIGN --to DIR   every curve, a CSV file a kind\n"
    "    --hook-up NAME                  of this hook-up instead of the first\n"
    "    --from HZ --to HZ --points N    other frequencies than 600 from 0.1 Hz to 1 MHz\n"
    "    --at FILE                       at the frequencies in a file, one a line\n"
    "    --pictures                      a PNG of each plot as well\n"
    "coilwright write DESIGN --datasheet F.pdf\n"
    "                                    the datasheet for a customer\n"
    "    --paper a4 | letter             size of its pages, of every paper\n"
    "    --measures mm | inch            in what lengths are printed, on every paper\n"
    "    --language en | de              of papers for a customer, whatever the program speaks\n"
    "coilwright write DESIGN --quotation F.pdf --prices F.csv\n"
    "                                    for a customer: prices at 1, 10, 100, 1000, until when, of which revision and "
    "digest\n"
    "    --yield UNITS                   scrap by the yield that so many random units predict\n"
    "coilwright write DESIGN --customer-notice F.pdf --since N | DESIGN [--notice WORDS]\n"
    "                                    for a customer: which promises, terminals and sizes a new revision moves\n"
    "coilwright write DESIGN --change-notice F.pdf --since N | DESIGN [--reason WORDS]\n"
    "                                    for the shop: the same, and everything that differs in the design\n"
    "coilwright write DESIGN --first-article F.pdf [--deviation-permit F.pdf] [--return-report F.pdf]\n"
    "                                    for the shop: forms of single lots and units, what is expected filled in\n"
    "coilwright write DESIGN --netlist F.cir\n"
    "                                    the unit for ngspice, with an example circuit; for the shop, it holds the "
    "design\n"
    "    --terminals-only                for a customer: what it does at its terminals, nothing of the coil\n"
    "coilwright write DESIGN --touchstone F.sNp\n"
    "                                    scattering parameters of the hook-up's ports, 50 ohm, for a customer\n"
    "    --hook-up NAME                  for each: this hook-up instead of the first\n"
    "coilwright write DESIGN --winding-sheet F.pdf [--traveller F.pdf] [--bill F.csv]\n"
    "                                    for the shop, they hold the recipe: how it is wound and finished, the sheet "
    "that\n"
    "                                    goes with a lot, bill of materials; F.json has the content, F.pdf the paper\n"
    "    --prices F.csv                  what a shop pays and how long its work takes: cost at 1, 10, 100, 1000\n"
    "coilwright write DESIGN --test-plan F.pdf [--limits F.csv]\n"
    "                                    for the shop: what is measured at each stage, in which order and within which "
    "limits;\n"
    "                                    F.json has the content, F.csv the limits for a sequencer\n"
    "    --fixture F.json                the test fixture, else fixtures/bench.json of the shop's folder or the "
    "example\n"
    "coilwright write DESIGN --program F --winder NAME\n"
    "                                    the winding program in ISO 6983 blocks; for the shop, it holds the recipe\n"
    "    --step-table F.csv              the same as a table of steps, beside the program or instead of it\n"
    "    --leg 1 | 2                     which coil of a two-leg core\n"
    "    --winder NAME                   hand-guided, single-traverse, six-spindle, one of the shop's own, or a path\n"
    "coilwright replay F --winder NAME   runs a winding program on a model of the machine: limits, time, units a day\n"
    "    --against DESIGN [--leg 1 | 2]  and says where it winds something else; exit status 1 if so\n"
    "coilwright winders [NAME or FILE]   the winders there are, or whether a description of one is sound\n"
    "coilwright pair A B --to DIR        what differs between two designs: differences.txt, figures.csv, response.csv\n"
    "    --hook-up NAME, --from, --to, --points, --at as above\n"
    "coilwright picture DESIGN --to F.png\n"
    "                                    the window as a picture: --size 1280x800, --dark\n"
    "    --language de                   in German, or in a language of the shop's own table\n"
    "                                    --spread: after a production was made\n"
    "    --part NAME                     of it alone: cut, figures, plots, promises, winding for the winding "
    "program,\n"
    "                                    papers for the papers as pages, spread for a production,\n"
    "                                    units for built units\n"
    "coilwright revisions DESIGN         what is kept of a design, in DESIGN's folder NAME.revisions\n"
    "    --keep REASON                   keep it as it is; --notice WORDS for a customer, --date 2026-11-25\n"
    "    --open N [--to F.coilwright]    open one again, and say whether its figures are as they were stored\n"
    "    --state sample | released | retired --of N --by NAME [--note WORDS]\n"
    "    --lot LOT --of N                the first lot that was wound of it\n"
    "    --variant PART-NUMBER --of N    another part number with the same coil; --note what is different\n"
    "    --check [--of N]                before a repeat order: each material, and what stands in for it\n"
    "coilwright spread DESIGN            what a production will do: yield and spread of each promise, and what causes "
    "it\n"
    "    --units N --seed S --lot L      1000 units in lots of 20 from seed 1, unless told\n"
    "    --figures NAME,NAME             other figures as well\n"
    "    --json                          everything as JSON; --sensitivity: each promise's slopes instead of units\n"
    "    --exact                         every unit's fields anew, instead of by expansion about the nominal\n"
    "    --part K/M --to F               part K of M of the run, into a file\n"
    "coilwright gather F...              all parts of a run together, as spread --json prints it in one\n"
    "coilwright seek DESIGN              designs from its brief alone: what keeps every promise, and what each gives "
    "up\n"
    "    --keep N --to DIR               six of them unless told; each as a design of its own in DIR\n"
    "    --prices F.csv                  only parts that have a price, and cost at 100 instead of mass\n"
    "    --hold core,turns,wires,order,insulation\n"
    "                                    keep these of the design as they are, and seek the rest\n"
    "    --damping flat | step           instead: the best series RC across the observed port of --hook-up NAME\n"
    "    --respin F                      instead: the smallest change that brings a sample's broken promises back; F "
    "its\n"
    "                                    readings, FIGURE,VALUE[,DOUBT] a line, or a design as the sample is\n"
    "coilwright begin [KIND F.coilwright]\n"
    "                                    a blank design of a kind of unit with first choices; alone, the kinds there "
    "are\n"
    "coilwright ask DESIGN               what a customer must say, and what he said; --open: only what he has not\n"
    "coilwright compare DESIGN MEASURED   measured curves against the design's: largest difference, where, mean and "
    "rms\n"
    "                                    a table in CSV, its columns told by their names, or a Touchstone file F.sNp\n"
    "    --hook-up NAME, --port NAME     in this hook-up; impedance at this port instead of the driven one\n"
    "    --curve response | phase | impedance | angle | distortion | noise\n"
    "    --columns F,V,A                 columns of frequency, value and angle, counted from 1\n"
    "    --emf VOLT                      what levels in V, dBV and dBu are told from instead of 1 V\n"
    "    --relative-to HZ                both told from their value at this frequency\n"
    "    --csv F.csv                     frequency, measured, predicted, difference\n"
    "coilwright cause DESIGN READINGS.csv\n"
    "                                    of each unit of such a table as units imports, tests named as in the limits "
    "of its\n"
    "                                    plan: no fault, the likely cause, or causes that these readings cannot tell "
    "apart\n"
    "                                    and the next reading that would; --serial S: of this unit alone\n"
    "    --good F.csv                    readings of good units: then the model's own doubt does not count\n"
    "    --fixture F.json                as for the test plan\n"
    "coilwright fit DESIGN MEASURED      permeability, joint gap, thickness of paper, permittivity, tightness and "
    "stretch\n"
    "                                    of wire adjusted to a measured curve or a unit's readings; nothing is "
    "changed\n"
    "    --to F.coilwright               unless the design with what was learned is to be written here\n"
    "    --readings F.csv, --serial S    a unit's readings beside the curve; of this unit\n"
    "    --only permeability,joint_gap,sheet_thickness,permittivity,tightness,wire_stretch\n"
    "                                    these alone; --fixture, and --hook-up, --port, --curve, --columns, --emf,\n"
    "                                    --relative-to as for compare\n"
    "coilwright match DESIGN | FOLDER READINGS [--keep N]\n"
    "                                    which designs a unit can be of that is known by its readings alone, what "
    "they\n"
    "                                    leave open, and the reading that would part them\n"
    "coilwright units F.records import F.csv\n"
    "                                    records of built units into a file, which is made if there is none; columns\n"
    "                                    part, revision, serial, stage, time, verdict, symptom, finding, cause, note,\n"
    "                                    lot WHAT, initials STEP, and tests with their unit, as \"dcr P [ohm]\"\n"
    "coilwright units F.records list     the records as such a table: --part, --revision, --serial, --stage, --lot,\n"
    "                                    --verdict pass | fail, --cause, --from DAY, --before DAY, --limit N\n"
    "coilwright units F.records report   yield, causes, and of each test distribution and control chart; the same\n"
    "                                    choice as list\n"
    "    --test NAME --at-least X --at-most Y\n"
    "                                    of one test, with Cp and Cpk; --limits F.csv: of every test, by the plan's\n"
    "    --subgroup N                    chart of means of N; --reference SERIAL: how the reference unit drifts\n"
    "    --outside                       for a customer: no causes and no serials\n"
    "coilwright units F.records copy --to F\n"
    "                                    a whole copy, while others go on writing\n"
    "coilwright field F.json             leakage of rectangles in a window, capacitance of wire cells, as JSON\n"
    "coilwright lot F.csv --from ALLOY --name NAME --to F.json\n"
    "                                    a lot of sheets measured in a test frame, fitted as an alloy of the shop's "
    "own\n"
    "    --table F.csv                   the points with the fit over them\n"
    "                                    columns field_A_per_m,flux_T, or current_A or voltage_V with inductance_H "
    "and\n"
    "                                    lines \"# turns: N\", path_m, section_m2, frequency_Hz; thickness_m,\n"
    "                                    coercivity_A_per_m and remanence_T where they are known\n"
    "coilwright handbook --to F.pdf      the handbook as one PDF; --paper a4 | letter\n"
    "coilwright --help | --version\n"
    "\n"
    "Exit status: 0, or 2 with one sentence on standard error; replay: 1 for what it found.\n"
    "COILWRIGHT_RESOURCES names another folder of sheets, alloys, wires, bobbins, insulation, tolerances and "
    "winders; a shop's own\n"
    "entries stand in coilwright under XDG_DATA_HOME.\n";

const Named* verbOf(const std::vector<std::string>& arguments) {
    if (arguments.empty()) return nullptr;
    for (const Named& named : verbs)
        if (arguments.front() == named.name) return &named;
    return nullptr;
}

Judgement result(const std::vector<std::string>& arguments) {
    if (const Named* named = verbOf(arguments)) {
        const std::vector<std::string> typed(arguments.begin() + 1, arguments.end());
        return named->judge != nullptr ? named->judge(typed) : Judgement{named->verb(typed)};
    }
    if (arguments.size() == 1 && arguments.front() == "--help") return {help};
    if (arguments.size() == 1 && arguments.front() == "--version") return {programName() + "\n"};
    std::string allowed;
    for (const Named& one : verbs) allowed.append(one.name).append(", ");
    units::refuse("command line", arguments.empty() ? "nothing" : '"' + arguments.front() + '"',
                  allowed + "--help, --version, or one design to open");
}

}  // namespace

std::string verbNames() {
    std::string names;
    for (std::size_t k = 0; k < verbs.size(); ++k)
        names += (k == 0 ? "" : k + 1 == verbs.size() ? " and " : ", ") + std::string(verbs[k].name);
    return names;
}

bool isCommand(const std::vector<std::string>& arguments) {
    return arguments.size() > 1 || (arguments.size() == 1 && (verbOf(arguments) || arguments.front().starts_with("-")));
}

bool needsApplication(const std::vector<std::string>& arguments) {
    return verbOf(arguments) != nullptr;
}

int run(const std::vector<std::string>& arguments, std::ostream& out, std::ostream& err) {
    try {
        const Judgement judged = result(arguments);
        out << judged.text;
        out.flush();
        if (!out) {
            err << "standard output: the result could not be written; free some room there.\n";
            return 2;
        }
        return judged.same ? 0 : 1;
    } catch (const std::exception& failure) {
        err << failure.what() << '\n';
        return 2;
    }
}

}  // namespace commands
