// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/figure_names.h"

#include <algorithm>
#include <array>

#include "analysis/answer.h"
#include "units/joined.h"

namespace analysis {

namespace {

using units::Kind;

/// What a quantity is a figure of.
enum class Of { HookUp, Coil, Winding, Ratio, Leakage, Capacitance, Port, FarPort };

struct Quantity {
    std::string_view name;
    Kind kind;
    Of of;
};

constexpr std::array quantities{
    Quantity{"low_3dB", Kind::Frequency, Of::HookUp},
    Quantity{"high_3dB_first", Kind::Frequency, Of::HookUp},
    Quantity{"high_3dB_smoothed", Kind::Frequency, Of::HookUp},
    Quantity{"peak_frequency", Kind::Frequency, Of::HookUp},
    Quantity{"peak_level", Kind::Decibel, Of::HookUp},
    Quantity{"maximum_level_20Hz", Kind::LevelDbu, Of::HookUp},
    Quantity{"headroom_20Hz", Kind::Decibel, Of::HookUp},
    Quantity{"inductance_20Hz_direct", Kind::Inductance, Of::HookUp},
    Quantity{"second_harmonic_20Hz", Kind::Decibel, Of::HookUp},
    Quantity{"phantom_current", Kind::Current, Of::HookUp},
    Quantity{"phantom_short_current", Kind::Current, Of::HookUp},
    Quantity{"remanence_after_short", Kind::Flux, Of::HookUp},
    Quantity{"inductance_after_short", Kind::Inductance, Of::HookUp},
    Quantity{"demagnetising_level", Kind::LevelDbu, Of::HookUp},
    Quantity{"output_noise_20kHz", Kind::LevelDbu, Of::HookUp},
    Quantity{"output_noise_A", Kind::LevelDbu, Of::HookUp},
    Quantity{"noise_figure_1kHz", Kind::Decibel, Of::HookUp},
    Quantity{"rejection_1kHz", Kind::Decibel, Of::HookUp},
    Quantity{"rejection_20kHz", Kind::Decibel, Of::HookUp},
    Quantity{"rejection_10ohm_1kHz", Kind::Decibel, Of::HookUp},
    Quantity{"rejection_10ohm_20kHz", Kind::Decibel, Of::HookUp},
    Quantity{"output_balance_1kHz", Kind::Decibel, Of::HookUp},
    Quantity{"hum_1uT_50Hz", Kind::LevelDbu, Of::HookUp},
    Quantity{"hum_cancelled", Kind::Decibel, Of::HookUp},
    Quantity{"screening_50Hz", Kind::Decibel, Of::HookUp},
    Quantity{"best_ratio_factor", Kind::Number, Of::HookUp},
    Quantity{"gain_1kHz", Kind::Decibel, Of::FarPort},
    Quantity{"insertion_loss", Kind::Decibel, Of::FarPort},
    Quantity{"impedance_20Hz", Kind::Resistance, Of::Port},
    Quantity{"impedance_1kHz", Kind::Resistance, Of::Port},
    Quantity{"impedance_20kHz", Kind::Resistance, Of::Port},
    Quantity{"input_capacitance", Kind::Capacitance, Of::Port},
    Quantity{"dcr", Kind::Resistance, Of::Winding},
    Quantity{"wire_length", Kind::Length, Of::Winding},
    Quantity{"copper_mass", Kind::Mass, Of::Winding},
    Quantity{"inductance_10Hz", Kind::Inductance, Of::Winding},
    Quantity{"inductance_1kHz", Kind::Inductance, Of::Winding},
    Quantity{"ratio", Kind::Number, Of::Ratio},
    Quantity{"leakage_10kHz", Kind::Inductance, Of::Leakage},
    Quantity{"capacitance", Kind::Capacitance, Of::Capacitance},
    Quantity{"fill", Kind::Number, Of::Coil},
    Quantity{"build", Kind::Length, Of::Coil},
    Quantity{"outer_length", Kind::Length, Of::Coil},
    Quantity{"outer_width", Kind::Length, Of::Coil},
    Quantity{"outer_height", Kind::Length, Of::Coil},
};

void addPairs(const std::string& stem, const std::vector<std::string>& owners, std::vector<std::string>& names) {
    for (std::size_t a = 0; a < owners.size(); ++a)
        for (std::size_t b = a + 1; b < owners.size(); ++b) names.push_back(stem + "." + owners[a] + "." + owners[b]);
}

std::vector<std::string> windingNames(const design::Design& d) {
    std::vector<std::string> all;
    for (const auto& w : d.windings) all.push_back(w.name);
    return all;
}

/// Windings, shields and the core, as capacitances are named.
std::vector<std::string> electrodes(const design::Design& d) {
    auto all = windingNames(d);
    for (const auto& place : d.coil)
        for (const auto& item : place.order)
            if (const auto* s = item.shield()) all.push_back(s->name);
    all.emplace_back("core");
    return all;
}

}  // namespace

std::vector<std::string> figureNames(const design::Design& design) {
    std::vector<std::string> names;
    const auto windings = windingNames(design);
    for (const Quantity& q : quantities) {
        const std::string stem(q.name);
        if (q.of == Of::HookUp || q.of == Of::Coil || q.of == Of::Port || q.of == Of::FarPort) names.push_back(stem);
        if (q.of == Of::Port || q.of == Of::FarPort)
            for (const auto& p : design.ports) names.push_back(stem + "." + p.name);
        if (q.of == Of::Winding)
            for (const auto& w : windings) names.push_back(units::joined({stem, ".", w}));
        if (q.of == Of::Ratio)
            for (std::size_t w = 1; w < windings.size(); ++w)
                names.push_back(stem + "." + windings[0] + "." + windings[w]);
        if (q.of == Of::Leakage) addPairs(stem, windings, names);
        if (q.of == Of::Capacitance) addPairs(stem, electrodes(design), names);
    }
    return names;
}

units::Kind kindOfFigure(std::string_view name) {
    const std::string_view quantity = name.substr(0, name.find('.'));
    const auto at =
        std::find_if(quantities.begin(), quantities.end(), [&](const auto& q) { return q.name == quantity; });
    return at == quantities.end() ? Kind::Number : at->kind;
}

units::Kind kindOfTrace(std::string_view trace) {
    for (const auto& known : traceKinds())
        if (known.name == trace) return known.kind;
    return Kind::Number;
}

}  // namespace analysis
