// SPDX-License-Identifier: GPL-3.0-or-later
// How each kind of value is read and written; included by record.h alone.
#pragma once

#include <algorithm>
#include <cmath>

#include "json/record.h"

namespace json {

namespace detail {

template <class T>
struct IsVector : std::false_type {};
template <class T>
struct IsVector<std::vector<T>> : std::true_type {};
template <class T>
struct IsOptional : std::false_type {};
template <class T>
struct IsOptional<std::optional<T>> : std::true_type {};
template <class T>
struct IsMap : std::false_type {};
template <class T>
struct IsMap<std::map<std::string, T>> : std::true_type {};
template <class T>
struct IsShared : std::false_type {};
template <class T>
struct IsShared<std::shared_ptr<const T>> : std::true_type {};

/// A record that is written as something else than an object of its fields has readSelf and writeSelf members.
template <class T>
concept SelfReading = requires(T& t, const Value& v, Reader& r) {
    {t.readSelf(v, std::string{}, r)};
    { std::as_const(t).writeSelf() } -> std::convertible_to<Value>;
};
template <class T>
concept KeepsExtra = requires(T& t) {
    { t.extra } -> std::convertible_to<const Value&>;
};

/// A visitor that does nothing, only to recognise records.
struct Probe {
    template <class T>
    void need(const char*, T&, const Allowed& = {}) {}
    template <class T>
    void may(const char*, T&, const Allowed& = {}) {}
};
template <class T>
concept Record = requires(Probe& p, T& t) {
    fields(p, t);
};

inline std::vector<std::string> keysOf(const Value& object) {
    std::vector<std::string> keys;
    for (const auto& [key, what] : object.items()) keys.push_back(key);
    return keys;
}

}  // namespace detail

template <class T>
void Reader::take(const char* key, T& to, const Allowed& allowed, bool needed) {
    asked_.emplace_back(key);
    const auto found = object_.find(key);
    if (found == object_.end()) {
        if (needed) {
            Value none;
            std::vector<units::Fault> what;
            Reader probe(object_, file_, pointer_, what);
            probe.value(none, key, to, allowed);
            faults_.push_back({place(key), "nothing", what.empty() ? "a value" : what.front().allowed});
        }
        return;
    }
    value(*found, key, to, allowed);
}

template <class T>
void Reader::value(const Value& from, const std::string& key, T& to, const Allowed& allowed) {
    using namespace detail;
    if constexpr (SelfReading<T>) {
        to.readSelf(from, key, *this);
    } else if constexpr (std::is_same_v<T, bool>) {
        if (from.is_boolean())
            to = from.get<bool>();
        else
            fault(key, &from, "true or false");
    } else if constexpr (std::is_same_v<T, std::string>) {
        if (from.is_string())
            to = from.get<std::string>();
        else
            fault(key, &from, "text in quotes");
    } else if constexpr (std::is_same_v<T, Value>) {
        to = from;
    } else if constexpr (std::is_enum_v<T>) {
        std::string words;
        for (const auto& [name, item] : names(T{})) {
            if (from.is_string() && from.get<std::string>() == name) {
                to = item;
                return;
            }
            words += (words.empty() ? "\"" : ", \"") + std::string(name) + "\"";
        }
        fault(key, &from, "one of " + words);
    } else if constexpr (std::is_same_v<T, double>) {
        number(from, key, to, allowed);
    } else if constexpr (std::is_integral_v<T>) {
        double whole = 0;
        const auto before = faults_.size();
        Allowed fits = allowed.whole();
        fits.low = std::max(fits.low, static_cast<double>(std::numeric_limits<T>::min()));
        fits.high = std::min(fits.high, sizeof(T) < sizeof(double) ? static_cast<double>(std::numeric_limits<T>::max())
                                                                   : 9007199254740992.0);  // what a double can count
        number(from, key, whole, fits);
        if (faults_.size() == before) to = static_cast<T>(whole);
    } else if constexpr (std::is_same_v<T, units::Quantity> || std::is_same_v<T, units::Datum>) {
        if (!from.is_object()) {
            number(from, key, to.value, allowed);
        } else {
            Reader inner(from, file_, pointer_ + "/" + key, faults_);
            inner.need("value", to.value, allowed);
            if constexpr (std::is_same_v<T, units::Quantity>) {
                inner.may("tolerance", to.tolerance);
                inner.may("note", to.note);
            } else {
                inner.may("source", to.source);
                inner.may("guaranteed", to.guaranteed);
            }
            const Value rest = inner.unknownKeys();
            for (const auto& [unknown, what] : rest.items()) inner.fault(unknown, &what, "no such key here");
        }
    } else if constexpr (IsVector<T>::value) {
        if (!from.is_array()) {
            fault(key, &from, "a list in square brackets");
            return;
        }
        to.clear();
        for (std::size_t i = 0; i < from.size(); ++i) {
            to.emplace_back();
            value(from[i], key + "/" + std::to_string(i), to.back(), allowed);
        }
    } else if constexpr (IsOptional<T>::value) {
        if (from.is_null()) {
            to.reset();
            return;
        }
        typename T::value_type inner{};
        value(from, key, inner, allowed);
        to = std::move(inner);
    } else if constexpr (IsMap<T>::value) {
        if (!from.is_object()) {
            fault(key, &from, "an object in curly brackets");
            return;
        }
        to.clear();
        for (const auto& [name, item] : from.items()) value(item, key + "/" + name, to[name], allowed);
    } else if constexpr (IsShared<T>::value) {
        auto inner = std::make_shared<std::remove_const_t<typename T::element_type>>();
        value(from, key, *inner, allowed);
        to = std::move(inner);
    } else {
        if (!from.is_object()) {
            fault(key, &from, "an object in curly brackets");
            return;
        }
        to = readRecord<T>(from, file_, pointer_ + "/" + key, faults_);
    }
}

template <class T>
Value Writer::asValue(T& from) {
    using namespace detail;
    using Plain = std::remove_const_t<T>;
    if constexpr (SelfReading<Plain>) {
        return std::as_const(from).writeSelf();
    } else if constexpr (std::is_same_v<Plain, double>) {
        // A whole number is written without a point, so that reading and writing agree.
        if (std::abs(from) < 1e15 && from == std::floor(from)) return static_cast<std::int64_t>(from);
        return from;
    } else if constexpr (std::is_same_v<Plain, bool> || std::is_same_v<Plain, std::string> ||
                         std::is_same_v<Plain, Value> || std::is_integral_v<Plain>) {
        return from;
    } else if constexpr (std::is_enum_v<Plain>) {
        for (const auto& [name, item] : names(Plain{}))
            if (item == from) return name;
        return nullptr;
    } else if constexpr (std::is_same_v<Plain, units::Quantity>) {
        if (!from.tolerance && from.note.empty()) return asValue(from.value);
        Writer inner;
        inner.need("value", from.value);
        inner.may("tolerance", from.tolerance);
        inner.may("note", from.note);
        return inner.object_;
    } else if constexpr (std::is_same_v<Plain, units::Datum>) {
        if (from.source.empty() && !from.guaranteed) return asValue(from.value);
        Writer inner;
        inner.need("value", from.value);
        inner.may("source", from.source);
        inner.may("guaranteed", from.guaranteed);
        return inner.object_;
    } else if constexpr (IsVector<Plain>::value) {
        Value list = Value::array();
        for (auto& item : from) list.push_back(asValue(item));
        return list;
    } else if constexpr (IsOptional<Plain>::value) {
        return from ? asValue(*from) : Value();
    } else if constexpr (IsMap<Plain>::value) {
        Value object = Value::object();
        for (auto& [name, item] : from) object[name] = asValue(item);
        return object;
    } else if constexpr (IsShared<Plain>::value) {
        return from ? writeRecord(*from) : Value();
    } else {
        return writeRecord(from);
    }
}

template <class T>
void Writer::may(const char* key, T& from, const Allowed&) {
    object_[key] = asValue(from);
}

/// A writer that knows what an untouched record says, and leaves that out.
class SparseWriter {
public:
    SparseWriter(Writer& out, const Value& untouched) : out_(out), untouched_(untouched) {}
    template <class T>
    void need(const char* key, T& from, const Allowed& = {}) {
        out_.need(key, from);
    }
    template <class T>
    void may(const char* key, T& from, const Allowed& = {}) {
        Value text = Writer::asValue(from);
        const auto usual = untouched_.find(key);
        if (usual == untouched_.end() ? !text.is_null() : text != *usual) out_.object_[key] = std::move(text);
    }

private:
    Writer& out_;
    const Value& untouched_;
};

template <class T>
T readRecord(const Value& object, const std::string& file, const std::string& pointer,
             std::vector<units::Fault>& faults) {
    T record{};
    Reader reader(object, file, pointer, faults);
    fields(reader, record);
    if constexpr (detail::KeepsExtra<T>) {
        record.extra = reader.unknownKeys();
    } else {
        const Value rest = reader.unknownKeys();
        for (const auto& [key, what] : rest.items()) reader.fault(key, &what, "no such key here");
    }
    return record;
}

template <class T>
Value writeRecord(const T& record) {
    static const Value untouched = [] {
        T fresh{};
        Writer all;
        fields(all, fresh);
        return all.object_;
    }();
    T copy = record;
    Writer out;
    SparseWriter sparse(out, untouched);
    fields(sparse, copy);
    if constexpr (detail::KeepsExtra<T>) {
        if (record.extra.is_object()) {
            auto& list = out.object_.get_ref<Value::object_t&>();
            const std::vector<std::string> known = detail::keysOf(out.object_);
            for (const auto& [key, what] : record.extra.items())
                if (std::find(known.begin(), known.end(), key) == known.end()) list.push_back({key, what});
        }
    }
    return out.object_;
}

}  // namespace json
