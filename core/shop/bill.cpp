// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/bill.h"

#include <algorithm>
#include <map>

#include "coil/hand.h"
#include "shop/practice.h"
#include "shop/sheet_words.h"
#include "units/csv_cell.h"
#include "units/joined.h"
#include "units/text.h"

namespace shop {

using units::joined;

namespace {

constexpr double minutesAnHour = 60;

class BillWriter {
public:
    BillWriter(const Materials& materials, const Prices* prices, Bill& bill)
        : m_(materials), prices_(prices), bill_(bill), in_(bill.head.manner.in) {}

    void write() {
        add({m_.bobbinKey}, joined({"bobbin ", m_.bobbinTitle}), m_.bobbins, "piece");
        for (const auto& use : m_.wires)
            add({use.key}, joined({"wire of ", use.winding, ", ", use.title, ", ", fixed(use.bought, 2), " m"}),
                use.mass, "kg", "copper");
        for (const auto& use : m_.foils)
            add({joined({"copper foil ", Lengths{}.thin(use.thickness)}), "copper foil"},
                joined({"foil of ", use.name, ", ", in_.size(use.width), " x ", in_.cut(use.length)}), use.mass, "kg",
                "copper");
        for (const auto& use : m_.films)
            add({joined({use.key, " ", Lengths{}.thin(use.thickness)}), use.key},
                joined({use.title, ", ", in_.thin(use.thickness), ", ", counted(use.turns, "turn")}), use.bought, "m2");
        addSheets();
        for (const auto& use : m_.leads) addLead(use);
        addReel(m_.sleeving, "sleeving");
        addReel(m_.tape, "tape");
        for (const auto& use : m_.pieces)
            add({use.key}, joined({use.form, ", ", use.title, massWords(use.mass)}), use.count, "piece");
        add({"solder"}, joined({"solder, ", counted(m_.joints, "joint")}), m_.solder, "kg");
        for (const auto& use : m_.compounds)
            if (use.mass > 0) add({use.key}, use.title, use.mass, "kg");
    }

private:
    static std::string massWords(double kg) {
        return kg > 0 ? ", " + units::write(units::Kind::Mass, kg) : std::string();
    }
    /// Under the reel's key with the colour, under the key, or as a lead of any kind.
    void addLead(const LeadUse& use) {
        const std::string& key = m_.lead.key;
        std::vector<std::string> names{joined({"lead ", use.colour}), "lead"};
        if (!key.empty()) names.insert(names.begin(), {joined({key, " ", use.colour}), key});
        std::string what = joined({"lead ", use.terminal, use.colour.empty() ? "" : ", " + use.colour});
        if (!m_.lead.title.empty()) what += ", " + m_.lead.title;
        add(names, what, use.cut, "m");
    }
    void addReel(const ReelUse& use, const char* kind) {
        if (!(use.length > 0)) return;
        std::vector<std::string> names{kind};
        if (!use.key.empty()) names.insert(names.begin(), use.key);
        add(names, use.title.empty() ? kind : joined({kind, ", ", use.title, massWords(use.mass)}), use.length, "m");
    }
    void addSheets() {
        for (const auto& use : m_.sheets) {
            std::string thickness = fixed(use.thickness * 1e3, 3);
            while (thickness.ends_with('0')) thickness.pop_back();
            add({joined({m_.sheetKey, " ", use.key, " ", thickness, " mm"}), use.key},
                joined(
                    {"sheets ", m_.sheetTitle, ", ", use.title, ", ", thickness, " mm, ", counted(use.count, "sheet")}),
                use.mass * (1 + sheetWaste), "kg", use.key);
        }
    }
    /// A line under the first of `names` that has a price, else under the first. `metal`: whose surcharge it bears.
    void add(const std::vector<std::string>& names, const std::string& what, double amount, const std::string& unit,
             const std::string& metal = {}) {
        BillLine line{names.front(), what, amount, unit, {}, {}, 0, 0};
        if (prices_ != nullptr) {
            if (const auto rate = prices_->surcharges.find(metal); rate != prices_->surcharges.end())
                line.surcharge = amount * rate->second;
            for (const auto& name : names)
                if (const auto found = prices_->parts.find(name); found != prices_->parts.end()) {
                    if (found->second.unit != unit) continue;
                    line.part = name;
                    line.price = found->second.value;
                    line.cost = amount * found->second.value;
                    line.minimum = found->second.minimum;
                    break;
                }
            if (!line.price) bill_.unpriced.push_back(joined({line.part, " (per ", unit, ")"}));
        }
        bill_.lines.push_back(std::move(line));
    }

    const Materials& m_;
    const Prices* prices_;
    Bill& bill_;
    Lengths in_;
};

CostAt costAt(const Bill& bill, const Prices& prices, int quantity) {
    CostAt cost;
    cost.quantity = quantity;
    struct Buy {
        double amount = 0, price = 0, minimum = 0;
    };
    std::map<std::string, Buy> buys;
    for (const auto& line : bill.lines) {
        cost.surcharge += line.surcharge;
        if (!line.cost) continue;
        cost.material += *line.cost;
        Buy& buy = buys[line.part];
        buy.amount += line.amount;
        buy.price = *line.price;
        buy.minimum = line.minimum;
    }
    for (const auto& [part, buy] : buys)
        cost.smallestBuys += std::max(0.0, buy.minimum - quantity * buy.amount) * buy.price / quantity;
    cost.labour = bill.minutes / minutesAnHour * prices.labour;
    cost.setUp = bill.setUpMinutes / minutesAnHour * prices.labour / quantity;
    cost.tooling = prices.tooling / quantity;
    cost.scrap = (cost.material + cost.labour + cost.surcharge) * bill.scrap / (1 - bill.scrap);
    cost.total =
        cost.material + cost.smallestBuys + cost.labour + cost.setUp + cost.tooling + cost.scrap + cost.surcharge;
    return cost;
}

}  // namespace

WorkCount workOf(const design::Design& design, const coil::CoilBuild& build, const Materials& materials) {
    WorkCount work;
    for (std::size_t p = 0; p < design.coil.size(); ++p) {
        const auto& order = design.coil[p].order;
        for (std::size_t i = 0; i < order.size(); ++i) {
            if (order[i].shield() != nullptr) ++work.shields;
            if (order[i].section() == nullptr) continue;
            const coil::Hand hand = coil::handAt(design, build, p, i);
            work.turns += hand.turns();
            for (const auto& moment : hand.moments)
                work.ends += moment.kind == coil::MomentKind::Finish ? 2 : moment.kind == coil::MomentKind::Tap ? 1 : 0;
            i = hand.last;
        }
    }
    for (const auto& use : materials.films) work.wraps += use.turns;
    for (const auto& use : materials.sheets) work.sheets += use.count;
    return work;
}

Bill bill(const design::Design& design, const catalog::Catalog& shop, const Issue& issue, const Prices* prices,
          double yield) {
    const coil::CoilBuild build = coil::layOut(design, shop);
    const Materials materials = materialsOf(design, build, shop);
    Bill bill;
    bill.head = paperHead("Bill of materials", design, issue);
    BillWriter(materials, prices, bill).write();
    if (prices == nullptr) return bill;
    const WorkCount work = workOf(design, build, materials);
    const WorkTimes& t = prices->times;
    constexpr double thousand = 1000;
    bill.minutes = t.unit + t.test + t.thousandTurns * work.turns / thousand + t.wrap * work.wraps +
                   t.shield * work.shields + t.end * work.ends + t.sheet * work.sheets;
    bill.setUpMinutes = t.setUp;
    bill.currency = prices->currency;
    bill.validUntil = prices->validUntil;
    bill.surchargeDay = prices->surchargeDay;
    constexpr double leastYield = 0.01;  // below that a cost says nothing
    bill.scrap = 1 - (1 - prices->scrap) * std::clamp(yield, leastYield, 1.0);
    for (const int quantity : lotSizes) bill.costs.push_back(costAt(bill, *prices, quantity));
    return bill;
}

std::string billCsv(const Bill& bill) {
    constexpr int digits = 6;
    const auto number = [](double value) { return units::significant(value, digits); };
    std::string text =
        joined({"# inside paper, carries the recipe, not for customers: ", bill.head.title, ", revision ",
                bill.head.revision, ", ", bill.head.date, ", design ", bill.head.digest, "\n"});
    if (!bill.currency.empty())
        text += joined(
            {"# costs in ", bill.currency, bill.validUntil.empty() ? "" : ", valid until " + bill.validUntil, "\n"});
    if (!bill.surchargeDay.empty()) text += joined({"# surcharge on metals as of ", bill.surchargeDay, "\n"});
    for (const auto& part : bill.unpriced) text += joined({"# not in the costs, no price: ", part, "\n"});
    text += "kind,part,what,amount,unit,price";
    for (const int n : lotSizes) text += joined({",cost_at_", std::to_string(n)});
    text += '\n';
    for (const auto& line : bill.lines) {
        text += joined({"part,", units::csvCell(line.part), ",", units::csvCell(line.what), ",", number(line.amount),
                        ",", line.unit, ",", line.price ? number(*line.price) : ""});
        for (std::size_t k = 0; k < lotSizes.size(); ++k) text += joined({",", line.cost ? number(*line.cost) : ""});
        text += '\n';
    }
    if (bill.costs.empty()) return text;
    const auto row = [&](const char* kind, const char* what, double amount, const char* unit, double CostAt::*of) {
        text += joined({kind, ",,", what, ",", amount > 0 ? number(amount) : "", ",", unit, ","});
        for (const CostAt& cost : bill.costs) text += joined({",", number(cost.*of)});
        text += '\n';
    };
    row("material", "all parts", 0, "", &CostAt::material);
    row("material", "smallest buys that are left over", 0, "", &CostAt::smallestBuys);
    row("work", "a unit", bill.minutes, "min", &CostAt::labour);
    row("work", "set-up of a lot", bill.setUpMinutes, "min", &CostAt::setUp);
    row("tooling", "once", 0, "", &CostAt::tooling);
    row("scrap", "units that are lost", 0, "", &CostAt::scrap);
    row("surcharge", "metals", 0, "", &CostAt::surcharge);
    row("total", "one unit", 0, "", &CostAt::total);
    return text;
}

}  // namespace shop
