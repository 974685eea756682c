// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <string>
#include <unordered_set>
#include <vector>

#include "json/guard.h"
#include "json/syntax.h"
#include "json/text.h"
#include "units/fault.h"

namespace json {

namespace {

constexpr std::size_t mostFaults = 20;

/// Builds the value from the parser's events. An object's keys are kept in a set of their own, so that a file with
/// very many keys costs no more than its size.
class Builder : public nlohmann::json_sax<Value> {
public:
    Builder(std::string_view text, std::string file) : text_(text), file_(std::move(file)) {}

    bool null() override { return put(nullptr); }
    bool boolean(bool value) override { return put(value); }
    bool number_integer(number_integer_t value) override { return put(value); }
    bool number_unsigned(number_unsigned_t value) override { return put(value); }
    bool number_float(number_float_t value, const string_t&) override { return put(value); }
    bool string(string_t& value) override { return put(std::move(value)); }
    bool binary(binary_t&) override { return false; }
    bool start_object(std::size_t) override { return open(Value::object()); }
    bool start_array(std::size_t) override { return open(Value::array()); }
    bool end_object() override { return close(); }
    bool end_array() override { return close(); }

    bool key(string_t& name) override {
        Level& level = levels_.back();
        level.doubled = !level.keys.insert(name).second;
        if (level.doubled && faults.size() < mostFaults)
            faults.push_back({file_ + ": " + pointer() + "/" + name, "this key twice", "each key once in an object"});
        level.name = std::move(name);
        return true;
    }

    /// The syntax was checked before, so that only a number too large is left.
    bool parse_error(std::size_t position, const std::string& token, const Value::exception&) override {
        const std::size_t at = position - std::min(position, token.size());
        faults.assign(1, {file_ + ": " + lineAndColumn(text_, at), token, "a finite number"});
        return false;
    }

    Value result;
    std::vector<units::Fault> faults;

private:
    struct Level {
        Value* value;
        std::unordered_set<std::string> keys;
        std::string name;
        bool doubled = false;
    };

    [[nodiscard]] std::string pointer() const {
        std::string text;
        for (std::size_t i = 0; i + 1 < levels_.size(); ++i) {
            const Level& level = levels_[i];
            text.append("/").append(level.value->is_array() ? std::to_string(level.value->size() - 1) : level.name);
        }
        return text;
    }

    Value* add(Value value) {
        if (levels_.empty()) {
            result = std::move(value);
            return &result;
        }
        Level& level = levels_.back();
        if (level.value->is_array()) {
            level.value->push_back(std::move(value));
            return &level.value->back();
        }
        auto& object = level.value->get_ref<Value::object_t&>();
        if (level.doubled) {
            spare_ = std::move(value);
            return &spare_;
        }
        object.push_back({level.name, std::move(value)});
        return &object.back().second;
    }
    bool put(Value value) {
        add(std::move(value));
        return true;
    }
    bool open(Value value) {
        Value* where = add(std::move(value));
        levels_.push_back({where, {}, {}});
        return true;
    }
    bool close() {
        levels_.pop_back();
        return true;
    }

    std::string_view text_;
    std::string file_;
    std::vector<Level> levels_;
    Value spare_;  // where the value of a doubled key goes
};

}  // namespace

Value read(std::string_view text, const std::string& file) {
    guard(text, file);
    checkSyntax(text, file);
    Builder builder(text, file);
    Value::sax_parse(text.begin(), text.end(), &builder);
    if (!builder.faults.empty()) throw units::BadInput(std::move(builder.faults));
    return std::move(builder.result);
}

}  // namespace json
