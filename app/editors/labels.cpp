// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/labels.h"

#include <QCoreApplication>
#include <map>

namespace editors {

namespace {

struct Words {
    const char* key;
    const char* label;
    const char* tip;
};

constexpr Words fieldWords[]{
    {"name", "name", "What people call it; everything that names it follows when it is changed."},
    {"part_number", "part number", "The shop's number for this part."},
    {"revision", "revision", "Letter or number of this revision."},
    {"note", "note", "Anything worth keeping; it is printed on no outside paper."},
    {"customer", "customer", "Who asks for the unit."},
    {"use", "use", "What the unit is for, in the customer's words."},
    {"subject", "on", "What was asked about: a word of the check-list, or any other."},
    {"words", "said", "What the customer said on it, in his own words; empty: still to ask."},
    {"operating_level_dBu", "operating level", "Level that headroom is counted from."},
    {"level_at", "level stated at",
     "Where operating and maximum level are meant: source EMF, input terminals or output."},
    {"distortion_percent", "distortion, %", "Maximum level ends where total harmonic distortion reaches this."},
    {"saturation_knee", "saturation knee", "Maximum level ends at the core's saturation knee."},
    {"source_level_dBu", "source's greatest EMF", "Maximum level ends where the source gives no more."},
    {"temperature_rise", "temperature rise, K",
     "Maximum level ends where loss warms the unit by this; for amplifiers and direct current."},
    {"feed_voltage", "feed voltage", "Of the phantom supply, before its resistors."},
    {"feed_resistance", "feed resistance", "Of the resistor in each leg of the phantom supply."},
    {"feed_mismatch", "feed mismatch", "Greatest difference of the two resistors over their mean."},
    {"feed_current", "microphone current", "Direct current that the microphone draws, half from each leg."},
    {"centre_tap", "centre tap", "Terminal that the supply comes in at; empty: a resistor to each leg."},
    {"after_short", "leg was shorted", "Computes the core as a shorted leg of the phantom supply leaves it."},
    {"isolation", "isolation", "What the customer asks of the insulation."},
    {"length", "length", "Outer size that the unit may have; 0 leaves it free."},
    {"width", "width", "Width; 0 leaves it to the section."},
    {"height", "height", "Closed height: sets iron section and turn length."},
    {"figure", "figure", "Key of the figure that is promised; the tips of the table of figures tell it."},
    {"hook_up", "hook-up", "In which hook-up; empty: the first."},
    {"port", "port", "At which port; empty where the figure needs none."},
    {"at_least", "at least", "Lower limit, in the unit of the figure; empty: none."},
    {"at_most", "at most", "Upper limit, in the unit of the figure; empty: none."},
    {"frequency", "frequency", "Where this corner or line stands."},
    {"mask_low", "not below", "The curve stays above this; empty: no limit."},
    {"mask_high", "not above", "The curve stays below this; empty: no limit."},
    {"real_part", "real part", "Resistance at this frequency."},
    {"imaginary_part", "imaginary part", "Reactance at this frequency: above 0 inductive, below 0 capacitive."},
    {"conductor", "conductor", "Enamelled wire, or foil as wide as its section with one turn a layer."},
    {"hanging", "load", "Parts in series, a measured impedance, or nothing at all."},
    {"trace", "trace", "Curve that the mask lies on."},
    {"kind", "core kind", "Shell: one coil on the tongue. Two-leg: a coil on each leg."},
    {"sheet", "sheet", "Lamination: sets tongue, window and magnetic path."},
    {"pattern", "pattern", "How sheets of several alloys follow each other in the stack."},
    {"stacking_factor", "stacking factor", "Metal share of the stack height."},
    {"joint", "joint", "Interleaved sheets have a small gap, butt joints a larger one."},
    {"gap", "gap", "Total air in the magnetic path: lowers inductance, steadies it."},
    {"alloy", "alloy", "Material of these sheets: permeability, saturation, eddy currents."},
    {"thickness", "thickness", "Thickness: of a sheet it sets eddy currents, of insulation capacitance and leakage."},
    {"share", "share", "Share of the stack height; shares add up to 1."},
    {"permeability_factor", "permeability factor",
     "For anneal, handling, clamping and varnish; 1: as the catalog says."},
    {"bobbin", "bobbin", "Former: wall, flanges, chambers and pins."},
    {"pin", "pin", "Bobbin pin number; 0: a flexible lead."},
    {"lead_colour", "lead colour", "Colour of the lead's insulation."},
    {"lead_inductance", "inductance of its lead",
     "Wire from the shield to its terminal: some 20 nH for 25 mm; 0: none."},
    {"over_ends", "folded over the ends",
     "A box: the foil also covers both ends of what lies between it and the next shield further in."},
    {"diameter", "diameter", "Outer diameter of the can."},
    {"permeability", "permeability", "Relative permeability of the annealed sheet in weak fields."},
    {"fitting", "fitting", "Frame, can, clip, cup, clamp or bolt: outer size, mass, price, and loops of metal."},
    {"count", "how many", "How many of them go on a unit."},
    {"insulated", "insulated", "A bush, washer or gap breaks every loop that its metal could close."},
    {"lead", "lead wire", "Of every terminal that is a lead; empty: what the shop has."},
    {"sleeving", "sleeving", "On ends that are brought out; empty: what the shop has."},
    {"tape", "tape", "Over ends and round the finished coil; empty: what the shop has."},
    {"lead_length", "lead length", "Length of the lead outside the unit."},
    {"wire", "wire", "Enamelled wire: resistance, build and capacitance."},
    {"strands", "wires in hand", "Wires wound side by side and joined in parallel."},
    {"connection", "sections joined", "How the sections of this winding are joined."},
    {"start", "start", "Terminal at the start; empty: by the winding's order."},
    {"finish", "finish", "Terminal at the finish; empty: by the winding's order."},
    {"order", "electrical order", "Sections from start to finish, with commas; empty: in coil order."},
    {"resistance_factor", "resistance factor", "Wire stretched in winding has more resistance; 1: none."},
    {"turns", "turns", "Turns: ratio, inductance and resistance follow."},
    {"terminal", "terminal", "Terminal where it comes out."},
    {"winding", "winding", "The winding that this belongs to."},
    {"lay", "lay", "In layers above each other, nested into the grooves, or wound wild."},
    {"turns_per_layer", "turns a layer", "0: as many as fit."},
    {"margin_low", "margin, low end", "Kept free at the low end of the chamber."},
    {"margin_high", "margin, high end", "Kept free at the high end of the chamber."},
    {"starts", "starts at", "End of the chamber where the first turn lies."},
    {"traverse", "traverse", "Layers to and fro, or every one from the same end: sets voltage between layers."},
    {"reversed", "wound in the opposite sense", "Turns count against those of other sections."},
    {"last_layer", "last layer", "A part-filled last layer keeps its pitch or spreads over the width."},
    {"interlayer", "between layers", "Insulation between the layers of this section."},
    {"layer_factor", "layer factor", "Radial room of a layer in overall diameters."},
    {"pitch_factor", "pitch factor", "Least pitch in overall diameters."},
    {"hand", "hand", "Neighbouring sections with the same word are wound together."},
    {"insulation", "insulation", "Material: permittivity and loss."},
    {"form", "form", "Foil with insulated overlap, or an open winding."},
    {"plus", "plus terminal", "Terminal that counts as positive."},
    {"minus", "minus terminal", "The other terminal."},
    {"role", "role", "Driven, observed, or only terminated."},
    {"earthing", "earthing", "How what hangs on the port stands to earth."},
    {"mode", "drive", "EMF between the terminals, or on both alike."},
    {"amplifier_voltage_noise", "amplifier's voltage noise", "e_n at the observed port, as \"1.2 nV/√Hz\"; 0: none."},
    {"amplifier_current_noise", "amplifier's current noise", "i_n at the observed port, as \"1 pA/√Hz\"; 0: none."},
    {"resistance", "resistance", "Resistance in series with the EMF, or the load itself."},
    {"inductance", "inductance", "Inductance in series; 0: none fitted."},
    {"capacitance", "capacitance", "In series; 0: none fitted."},
    {"straps", "straps", "Nodes joined together, as in 2+3; 10+11."},
    {"earths", "earthed", "Nodes tied to earth, with commas: terminals, shields, core."},
    {"temperature", "temperature", "At which resistances and noise are computed."},
    {"filled", "filled with the compound", "Capacitances with varnish or compound between the wires, or dry."},
    {"current", "direct current", "Through the winding from start to finish."},
    {"compound", "varnish or compound", "What the coil is soaked in."},
    {"hard_potted", "hard potted", "Cured hard: presses on the sheets."},
    {"ends", "field beyond the window",
     "Beyond: the tongue as one iron wall. Walled: window walls all round the turn."},
    {"foil_eddies", "foil eddies", "Eddy currents in foil: shields and windings of foil."},
    {"proximity", "alternating-current resistance", "Skin and proximity effect in the wire."},
    {"dielectric_loss", "dielectric loss", "Losses of enamel, paper, bobbin and varnish."},
    {"plus_minus", "within ±",
     "Half width, as \"2 %\" or as \"0.05 mm\"; of a normal spread two standard deviations; empty: as the shop's."},
    {"distribution", "spread", "Normal about the value, uniform between the ends, or triangular."},
    {"lead_outs", "lead-outs", "Resistance and inductance of the leads."},
};

const std::map<std::string, Words>& table() {
    static const std::map<std::string, Words> byKey = [] {
        std::map<std::string, Words> all;
        for (const Words& one : fieldWords) all.emplace(one.key, one);
        return all;
    }();
    return byKey;
}

/// Choices whose word in files is not what people say.
const std::map<std::string, const char*>& words() {
    static const std::map<std::string, const char*> all{
        {"emf", "source EMF"},
        {"input", "input terminals"},
        {"layers", "in layers"},
        {"random", "random-wound"},
        {"low", "low end"},
        {"high", "high end"},
        {"back-and-forth", "back and forth"},
        {"same-side", "always from the same end"},
        {"close", "keeps its pitch"},
        {"spread", "spreads over the width"},
        {"series", "in series"},
        {"parallel", "in parallel"},
        {"winding", "open winding"},
        {"minus-earthed", "minus earthed"},
        {"plus-earthed", "plus earthed"},
        {"differential", "between the terminals"},
        {"common", "on both alike"},
        {"beyond", "open beyond the window"},
        {"walled", "walled all round"},
        {"drive", "driven"},
        {"observe", "observed"},
        {"load", "only terminated"},
        {"butt", "butt-stacked"},
    };
    return all;
}

QString retiredMark() {
    return QStringLiteral(" · ") + tr("retired");
}

}  // namespace

QString tr(const char* words) {
    return QCoreApplication::translate("editors", words);
}

QString labelOf(const std::string& key) {
    const auto at = table().find(key);
    if (at != table().end()) return tr(at->second.label);
    return QString::fromStdString(key).replace('_', ' ');
}

QString tipOf(const std::string& key) {
    const auto at = table().find(key);
    return at != table().end() ? tr(at->second.tip) : labelOf(key);
}

QString hintOf(const std::string& key) {
    static const std::map<std::string, const char*> hints{
        {"hook_up", "the first"},
        {"port", "none needed"},
        {"order", "in coil order"},
        {"at_least", "no limit"},
        {"at_most", "no limit"},
        {"mask_low", "no limit"},
        {"mask_high", "no limit"},
        {"hand", "wound alone"},
        {"plus_minus", "as the shop's"},
        {"distribution", "as the shop's"},
        {"straps", "none"},
        {"earths", "none"},
        {"terminal", "none"},
        {"centre_tap", "none"},
        {"distortion_percent", "not asked"},
        {"source_level_dBu", "not asked"},
        {"temperature_rise", "not asked"},
        {"start", "by the winding's order"},
        {"finish", "by the winding's order"},
    };
    const auto at = hints.find(key);
    return at != hints.end() ? tr(at->second) : QString();
}

QString wordOf(const std::string& word) {
    const auto at = words().find(word);
    return at != words().end() ? tr(at->second) : tr(word.c_str());
}

int textRoom(const std::string& key) {
    constexpr int notes = 1000, sentences = 200, names = 80;
    if (key == "note") return notes;
    return key == "customer" || key == "use" || key == "isolation" || key == "words" ? sentences : names;
}

QString catalogWord(const std::string& key, bool current) {
    return QString::fromStdString(key) + (current ? QString() : retiredMark());
}

std::string catalogKey(const QString& word) {
    QString key = word.trimmed();
    if (key.endsWith(retiredMark())) key.chop(retiredMark().size());
    return key.toStdString();
}

QString ownEntry() {
    return tr("own entry");
}

}  // namespace editors
