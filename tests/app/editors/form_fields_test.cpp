// SPDX-License-Identifier: GPL-3.0-or-later
// No value of a design is without a field: the forms together show every key of every record.
#include <set>

#include "editors/form.h"
#include "forms_fixture.h"

namespace form_fields_test {

/// Every leaf of the field tables that a design of the widest shape has, as path with list positions left out.
struct Leaves {
    std::set<std::string>& all;
    std::string at;
    template <class T>
    void need(const char* key, T& value, const json::Allowed& = {}) {
        step(at + "/" + key, value);
    }
    template <class T>
    void may(const char* key, T& value, const json::Allowed& = {}) {
        need(key, value);
    }
    template <class T>
    void step(const std::string& path, T& value) {
        using namespace json::detail;
        if constexpr (std::is_same_v<T, design::Item>) {
            std::visit([&](auto& what) { record(path + kindOf(what), what); }, value.what);
        } else if constexpr (IsVector<T>::value) {
            if constexpr (Record<typename T::value_type> || std::is_same_v<typename T::value_type, design::Item>) {
                for (auto& item : value) step(path + "/#", item);
            } else if constexpr (SelfReading<typename T::value_type>) {
                for (const char* column : {"/#/0", "/#/1", "/#/2"}) all.insert(path + column);
            } else {
                all.insert(path);
            }
        } else if constexpr (IsOptional<T>::value) {
            if constexpr (Record<typename T::value_type>)
                step(path, value ? *value : value.emplace());
            else
                all.insert(path);
        } else if constexpr (Record<T>) {
            record(path, value);
        } else {
            all.insert(path);
        }
    }
    template <class T>
    void record(const std::string& path, T& value) {
        Leaves inner{all, path};
        fields(inner, value);
    }
    static std::string kindOf(const design::Section&) { return "/section"; }
    static std::string kindOf(const design::Barrier&) { return "/barrier"; }
    static std::string kindOf(const design::Shield&) { return "/shield"; }
};

std::string generic(const std::string& path) {
    std::string out;
    for (std::size_t i = 0; i < path.size();) {
        const std::size_t next = std::min(path.find('/', i + 1), path.size());
        const std::string step = path.substr(i, next - i);
        const bool number = step.size() > 1 && step.find_first_not_of("0123456789", 1) == std::string::npos;
        const bool column = out.ends_with("/points/#") || out.ends_with("/table/#");
        out += number && !column ? "/#" : step;
        i = next;
    }
    return out;
}

struct Shown {
    std::set<std::string>& all;
    void operator()(const editors::Part& part) { all.insert(generic(part.path)); }
    void operator()(const editors::Table& table) {
        for (const auto& row : table.rows)
            for (const auto& cell : row.cells) (*this)(cell);
    }
    template <class Line>
    void operator()(const Line&) {}
};

void showAll(const design::Design& d, std::set<std::string>& shown) {
    using document::WholePart;
    using Which = WholePart::Which;
    std::vector<document::Selected> parts;
    for (const auto which :
         {Which::Brief, Which::Core, Which::Bobbin, Which::Terminals, Which::HookUps, Which::Conditions})
        parts.emplace_back(WholePart{which});
    for (const auto& w : d.windings) parts.emplace_back(document::WindingPart{w.name});
    for (int i = 0; i < static_cast<int>(d.coil[0].order.size()); ++i) parts.emplace_back(design::ItemIndex{0, i});
    Shown visit{shown};
    for (const auto& part : parts)
        for (const auto& line : editors::formOf(d, part, demoShop())) std::visit(visit, line);
}

/// A demo with one of everything in it.
design::Design widest() {
    design::Design d = *demo("splitter");
    d.windings[0].taps.emplace_back();
    d.conditions.directCurrents.emplace_back();
    d.conditions.phantom.emplace();
    d.filling.emplace();
    d.fittings.emplace_back();
    d.core.stack.push_back(d.core.stack[0]);
    d.hookUps[0].ports[1].across.emplace_back();
    return d;
}

TEST(FormFields, ShowEveryValueOfADesign) {
    design::Design d = widest();
    std::set<std::string> there, shown;
    showAll(d, shown);
    // The other conductor, the other shield and the other way to hang something on a port.
    d.windings[0].foil.emplace();
    d.hookUps[0].ports[0].through.reset();
    d.hookUps[0].ports[0].table = {{1000, 50, 0}};
    for (auto& item : d.coil[0].order)
        if (auto* s = item.shield()) s->form = design::ShieldForm::Winding;
    showAll(d, shown);
    Leaves leaves{there, ""};
    fields(leaves, d);
    // A section stays with its winding, and a place with its leg and chamber: the cut moves items between places.
    for (const char* key : {"/coil/#/leg", "/coil/#/chamber", "/coil/#/order/#/section/winding"}) there.erase(key);
    EXPECT_GT(there.size(), 90U);
    for (const auto& path : there) EXPECT_TRUE(shown.contains(path)) << path;
}

}  // namespace form_fields_test
