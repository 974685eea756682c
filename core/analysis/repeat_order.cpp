// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/repeat_order.h"

#include <algorithm>
#include <cmath>

#include "design/check.h"
#include "design/edit.h"
#include "design/walk.h"
#include "units/joined.h"
#include "units/text.h"

namespace analysis {

namespace {

using design::Design;
using design::DesignPtr;

bool near(double a, double b, double share) {
    return std::abs(a - b) <= share * std::abs(b);
}

bool fits(const catalog::Wire& a, const catalog::Wire& old) {
    return near(a.bareDiameter.value, old.bareDiameter.value, 0.06);
}
bool fits(const catalog::Alloy& a, const catalog::Alloy& old) {
    return a.family == old.family;
}
bool fits(const catalog::Insulation& a, const catalog::Insulation& old) {
    return a.form == old.form;
}
bool fits(const catalog::Bobbin& a, const catalog::Bobbin& old) {
    return a.fits == old.fits && a.chambers.size() == old.chambers.size();
}
bool fits(const catalog::Sheet& a, const catalog::Sheet& old) {
    return a.cut == old.cut && near(a.tongue.value, old.tongue.value, 0.02) &&
           near(a.windowWidth.value, old.windowWidth.value, 0.02) &&
           near(a.windowHeight.value, old.windowHeight.value, 0.02);
}

bool fits(const catalog::Fitting& a, const catalog::Fitting& old) {
    return a.form == old.form && a.fits == old.fits && a.conducts() == old.conducts();
}
bool fits(const catalog::Sundry& a, const catalog::Sundry& old) {
    return a.form == old.form;
}

std::string kindOf(const catalog::Sheet&) {
    return "sheet";
}
std::string kindOf(const catalog::Alloy&) {
    return "alloy";
}
std::string kindOf(const catalog::Wire&) {
    return "wire";
}
std::string kindOf(const catalog::Bobbin&) {
    return "bobbin";
}
std::string kindOf(const catalog::Insulation&) {
    return "insulation";
}
std::string kindOf(const catalog::Fitting&) {
    return "fitting";
}
std::string kindOf(const catalog::Sundry&) {
    return "sundry";
}

std::map<std::string, catalog::Sheet>& own(catalog::Catalog& c, const catalog::Sheet&) {
    return c.sheets;
}
std::map<std::string, catalog::Alloy>& own(catalog::Catalog& c, const catalog::Alloy&) {
    return c.alloys;
}
std::map<std::string, catalog::Wire>& own(catalog::Catalog& c, const catalog::Wire&) {
    return c.wires;
}
std::map<std::string, catalog::Bobbin>& own(catalog::Catalog& c, const catalog::Bobbin&) {
    return c.bobbins;
}
std::map<std::string, catalog::Insulation>& own(catalog::Catalog& c, const catalog::Insulation&) {
    return c.insulation;
}
std::map<std::string, catalog::Fitting>& own(catalog::Catalog& c, const catalog::Fitting&) {
    return c.fittings;
}
std::map<std::string, catalog::Sundry>& own(catalog::Catalog& c, const catalog::Sundry&) {
    return c.sundries;
}

/// Puts another key in place of one, wherever the design names that kind of part.
template <class Wanted>
struct Rekey {
    const std::string& from;
    const std::string& to;
    template <class T>
    void record(const std::string&, T&) {}
    template <class T>
    void operator()(const std::string&, T&, const json::Allowed&) {}
    void operator()(const std::string&, catalog::PartRef<Wanted>& ref, const json::Allowed&) {
        if (!ref.own && ref.key == from) ref.key = to;
    }
};

template <class Part>
DesignPtr withKey(const Design& d, const std::string& from, const std::string& to, const Part& today) {
    return design::changed(d, [&](Design& copy) {
        Rekey<Part> leaf{from, to};
        design::Walk<Rekey<Part>> all("", leaf);
        fields(all, copy);
        own(copy.parts, today)[to] = today;
        if (from != to) own(copy.parts, today).erase(from);
    });
}

/// Collects the parts a design names, each once.
class Check {
public:
    Check(const Design& d, const catalog::Catalog& shop, const AnswerPtr& now, const std::stop_token& stop)
        : design_(d), shop_(shop), now_(now), stop_(stop) {}

    template <class T>
    void record(const std::string&, T&) {}
    template <class T>
    void operator()(const std::string&, T&, const json::Allowed&) {}
    template <class Part>
    void operator()(const std::string&, catalog::PartRef<Part>& ref, const json::Allowed&) {
        if (ref.own || ref.key.empty() || stop_.stop_requested()) return;
        const Part* used = catalog::find(ref, design_.parts, shop_);
        if (used == nullptr || known(kindOf(*used), ref.key)) return;
        add(ref.key, *used);
    }
    std::vector<Material> take() { return std::move(all_); }

private:
    [[nodiscard]] bool known(const std::string& kind, const std::string& key) const {
        return std::any_of(all_.begin(), all_.end(), [&](const Material& m) { return m.kind == kind && m.key == key; });
    }

    template <class Part>
    void add(const std::string& key, const Part& used) {
        const auto& today = catalog::partsOf<Part>(shop_);
        const auto at = today.find(key);
        Material material{kindOf(used), key, used.title, Supply::Current, {}};
        if (at == today.end())
            material.supply = Supply::Gone;
        else if (at->second.standing == catalog::Standing::Retired)
            material.supply = Supply::Retired;
        else if (!(at->second == used))
            material.supply = Supply::Replaced;
        if (material.supply != Supply::Current) {
            for (const auto& [other, part] : today) {
                const bool same = other == key;
                if (part.standing == catalog::Standing::Retired || !(same || fits(part, used))) continue;
                if (stop_.stop_requested()) break;
                try_(material, key, other, part);
            }
            std::stable_sort(material.standIns.begin(), material.standIns.end(),
                             [](const StandIn& a, const StandIn& b) { return a.worst() < b.worst(); });
        }
        all_.push_back(std::move(material));
    }

    template <class Part>
    void try_(Material& material, const std::string& key, const std::string& other, const Part& part) {
        StandIn standIn{other, part.title, withKey(design_, key, other, part), {}};
        if (!design::check(*standIn.design, shop_, "").empty()) return;
        Question question;
        question.hookUp = now_->hookUp;
        const AnswerPtr then = answer(*standIn.design, shop_, now_, stop_, question);
        if (then->stopped) return;
        standIn.moves = movesTo(*then);
        material.standIns.push_back(std::move(standIn));
    }

    [[nodiscard]] std::vector<PromiseMove> movesTo(const Answer& then) const {
        constexpr double tiny = 1e-6;
        std::vector<PromiseMove> moves;
        for (const PromiseState& before : now_->promises)
            for (const PromiseState& after : then.promises) {
                if (before.index != after.index || before.mask != after.mask) continue;
                const double by = after.marginShare - before.marginShare;
                if (before.standing != after.standing || std::abs(by) > tiny)
                    moves.push_back({before.text, before.standing, after.standing, by});
            }
        std::stable_sort(moves.begin(), moves.end(),
                         [](const PromiseMove& a, const PromiseMove& b) { return a.byShare < b.byShare; });
        return moves;
    }

    const Design& design_;
    const catalog::Catalog& shop_;
    const AnswerPtr& now_;
    const std::stop_token& stop_;
    std::vector<Material> all_;
};

}  // namespace

std::string_view word(Supply supply) noexcept {
    switch (supply) {
        case Supply::Current:
            return "current";
        case Supply::Replaced:
            return "replaced: the catalog has other numbers under this name";
        case Supply::Retired:
            return "retired";
        case Supply::Gone:
            return "no longer in the catalog";
    }
    return {};
}

double StandIn::worst() const {
    double worst = 0;
    for (const PromiseMove& move : moves) worst = std::max(worst, -move.byShare);
    return worst;
}

std::vector<Material> repeatOrder(const Design& d, const catalog::Catalog& shop, const AnswerPtr& now,
                                  const std::stop_token& stop) {
    Check check(d, shop, now, stop);
    design::walk(d, check);
    return check.take();
}

std::string sentence(const StandIn& standIn) {
    std::string words = standIn.key;
    if (standIn.moves.empty()) return words + ": moves no promise";
    const PromiseMove& first = standIn.moves.front();
    words += units::joined({": margin ", first.byShare < 0 ? "−" : "+",
                            units::write(units::Kind::Share, std::abs(first.byShare), 2), " on ", first.text});
    if (first.before != first.after) words += units::joined({", ", word(first.before), " → ", word(first.after)});
    return words;
}

}  // namespace analysis
