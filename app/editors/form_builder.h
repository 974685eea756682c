// SPDX-License-Identifier: GPL-3.0-or-later
// Builds a form out of a record's field table: a row a field, nested records and lists beneath their own headings.
#pragma once

#include <QFormLayout>
#include <QPushButton>

#include "editors/parts.h"
#include "json/text.h"
#include "units/fault.h"
#include "units/text.h"

namespace editors {

/// Rows of one form. Lists and optional parts get buttons that add and remove; each is one undo step.
class FormBuilder {
public:
    FormBuilder(document::Document& document, QWidget* host, QFormLayout* rows, std::function<void(QString)> say)
        : document_(document), host_(host), rows_(rows), say_(std::move(say)) {}

    /// Only these fields of the record that `find` leads to, in the table's order.
    template <class Record>
    void addOnly(const Find<Record>& find, const QString& owner, std::vector<std::string> keys) {
        addRows<Record>(find, owner, std::move(keys), true);
    }
    /// All fields of the record that `find` leads to, except keys in `left`.
    template <class Record>
    void add(const Find<Record>& find, const QString& owner, std::vector<std::string> left = {}) {
        addRows<Record>(find, owner, std::move(left), false);
    }
    void heading(const QString& text);
    [[nodiscard]] const std::vector<Field*>& fields_() const { return made_; }

private:
    template <class Record>
    void addRows(const Find<Record>& find, const QString& owner, std::vector<std::string> keys, bool only) {
        const Record* now = seen(find, *document_.design());
        if (now == nullptr) return;
        Record copy = *now;
        Rows<Record> rows{*this, find, owner, std::move(keys), only};
        fields(rows, copy);
    }

    template <class Record>
    struct Rows {
        FormBuilder& form;
        Find<Record> find;
        QString owner;
        std::vector<std::string> keys;
        bool only;  ///< the keys are those shown, not those left out
        template <class T>
        void need(const char* key, T& value, const json::Allowed& allowed = {}) {
            if ((std::find(keys.begin(), keys.end(), key) != keys.end()) == only)
                form.row(memberOf<T>(find, key), value, key, owner, allowed);
        }
        template <class T>
        void may(const char* key, T& value, const json::Allowed& allowed = {}) {
            need(key, value, allowed);
        }
    };

    template <class T>
    void row(const Find<T>& find, const T& value, const std::string& key, const QString& owner,
             const json::Allowed& allowed) {
        using namespace json::detail;
        if constexpr (std::is_same_v<T, bool>)
            put(new CheckField(document_, flagPart(find, key, owner), host_), true);
        else if constexpr (std::is_same_v<T, std::string>)
            put(new TextField(document_, textPart(find, key, owner), host_));
        else if constexpr (std::is_enum_v<T>)
            put(new ChoiceField(document_, enumPart(find, key, owner), host_));
        else if constexpr (std::is_same_v<T, units::Quantity> || std::is_same_v<T, double> || std::is_same_v<T, int> ||
                           std::is_same_v<T, std::optional<double>>)
            put(new TextField(document_, numberPart(find, key, owner, allowed), host_));
        else if constexpr (std::is_same_v<T, std::vector<std::string>>)
            put(new TextField(document_, listPart(find, key, owner), host_));
        else if constexpr (std::is_same_v<T, std::vector<std::vector<std::string>>>)
            put(new TextField(document_, groupsPart(find, key, owner), host_));
        else if constexpr (requires { value.own; })
            put(new ChoiceField(document_, catalogPart(find, key, owner, document_.shop()), host_));
        else if constexpr (IsOptional<T>::value)
            optionalRow(find, value, key, owner);
        else if constexpr (IsVector<T>::value)
            listRows(find, value, key, owner);
        else if constexpr (Record<T>)
            nested(find, key, owner);
    }

    template <class T>
    void nested(const Find<T>& find, const std::string& key, const QString& owner) {
        heading(labelOf(key));
        add(find, owner);
    }

    template <class T>
    void optionalRow(const Find<std::optional<T>>& find, const std::optional<T>& value, const std::string& key,
                     const QString& owner) {
        heading(labelOf(key));
        if (!value) {
            button(tr("Add %1").arg(labelOf(key)), tr("add %1 to %2").arg(labelOf(key), owner),
                   [find, shop = document_.shop()](design::Design& d) {
                       if (auto* v = find(d)) *v = freshItem<T>({}, *shop);
                   });
            return;
        }
        add<T>(
            [find](design::Design& d) -> T* {
                auto* v = find(d);
                return v != nullptr && v->has_value() ? &**v : nullptr;
            },
            owner);
        button(tr("Remove %1").arg(labelOf(key)), tr("remove %1 of %2").arg(labelOf(key), owner),
               [find](design::Design& d) {
                   if (auto* v = find(d)) v->reset();
               });
    }

    template <class T>
    void listRows(const Find<std::vector<T>>& find, const std::vector<T>& value, const std::string& key,
                  const QString& owner) {
        if constexpr (json::detail::SelfReading<T>) {
            put(new TextField(document_, numbersPart(find, key, owner), host_));
        } else {
            for (std::size_t k = 0; k < value.size(); ++k) {
                heading(labelOf(key) + ' ' + QString::number(k + 1));
                add<T>(
                    [find, k](design::Design& d) -> T* {
                        auto* v = find(d);
                        return v != nullptr && k < v->size() ? &(*v)[k] : nullptr;
                    },
                    owner.isEmpty() ? labelOf(key) : owner);
                button(tr("Remove %1 %2").arg(labelOf(key)).arg(k + 1), tr("remove %1 %2").arg(labelOf(key)).arg(k + 1),
                       [find, k](design::Design& d) {
                           if (auto* v = find(d); v != nullptr && k < v->size())
                               v->erase(v->begin() + static_cast<std::ptrdiff_t>(k));
                       });
            }
            button(tr("Add to %1").arg(labelOf(key)), tr("add to %1").arg(labelOf(key)),
                   [find, shop = document_.shop()](design::Design& d) {
                       if (auto* v = find(d)) v->push_back(freshItem<T>(*v, *shop));
                   });
        }
    }

    /// A list of number lists, as in a file: [[20, -0.5, 0.5], [20000, -0.5, 0.5]].
    template <class T>
    static Part numbersPart(const Find<std::vector<T>>& find, const std::string& key, const QString& owner) {
        Part part = namedPart(key, owner);
        part.text = [find](const design::Design& d) {
            const auto* v = seen(find, d);
            if (v == nullptr) return QString();
            json::Value all = json::Value::array();
            for (const auto& item : *v) all.push_back(item.writeSelf());
            return QString::fromStdString(all.dump());
        };
        part.with = [find](const design::Design& d, const QString& text) {
            std::vector<units::Fault> faults;
            const json::Value list = json::read(text.toStdString(), "field");
            const json::Value holder = json::Value::object();
            std::vector<T> items;
            json::Reader(holder, "field", "", faults).value(list, "list", items, {});
            if (!faults.empty()) throw units::BadInput(std::move(faults));
            return design::changed(d, [&](design::Design& copy) {
                if (auto* v = find(copy)) *v = items;
            });
        };
        return part;
    }

    /// Something new to stand in a list: like the last one, under another name, or with the catalog's first entry.
    template <class T>
    static T freshItem(const std::vector<T>& others, const catalog::Catalog& shop) {
        T item = others.empty() ? T{} : others.back();
        if constexpr (requires { item.name; }) item.name = item.name.empty() ? "new" : item.name + " new";
        if constexpr (requires { item.pin; }) item.pin = 0;
        if constexpr (requires { item.insulation; })
            if (item.insulation.empty() && !shop.insulation.empty()) item.insulation = shop.insulation.begin()->first;
        if constexpr (requires { item.compound; })
            if (item.compound.empty() && shop.insulation.contains("epoxy")) item.compound = "epoxy";
        if constexpr (std::is_same_v<T, design::StackPart>) {
            if (!others.empty())
                item.share = 0;
            else if (!shop.alloys.empty())
                item.alloy = shop.alloys.begin()->first;
        }
        if constexpr (std::is_same_v<T, design::Promise>)
            if (others.empty()) {
                item.figure = "high_3dB_first";
                item.atLeast = 20e3;
            }
        return item;
    }

    void put(Field* field, bool own = false);
    void button(const QString& text, const QString& act, std::function<void(design::Design&)> change);
    static QString tr(const char* text) { return QCoreApplication::translate("editors", text); }

    document::Document& document_;
    QWidget* host_;
    QFormLayout* rows_;
    std::function<void(QString)> say_;
    std::vector<Field*> made_;
};

}  // namespace editors
