// SPDX-License-Identifier: GPL-3.0-or-later
// A form as a value: what stands on it, line by line, before there is any widget.
#pragma once

#include <optional>
#include <variant>
#include <vector>

#include "analysis/answer.h"
#include "document/selection.h"
#include "editors/parts.h"

namespace editors {

/// A button. `reason`: one line beside it that says what it does, or why it cannot.
struct Act {
    std::string path;  ///< its own name among the form's controls
    QString text;
    QString reason;
    QString name;  ///< of the undo step, and for screen readers
    std::function<design::DesignPtr(const design::Design&)> make;
    std::string focus;  ///< path of the field that has the keyboard afterwards; empty: as before
    bool enabled = true;
    /// What is selected afterwards in the design that came of it; none: as before.
    std::function<document::Selected(const design::Design&)> select = {};
};
struct Heading {
    QString text;
    int level = 1;     ///< a heading's lines go on to the next heading of its own level or a higher one (1 is highest)
    std::string fold;  ///< what it is called in the memory of what is folded; empty: it cannot be folded
    bool folded = false;  ///< until the designer says otherwise
};
/// Rows of fields under captions. A long record takes several lines: cell `i` stands in column `i % columns`.
struct Table {
    struct Row {
        std::vector<Part> cells;
        std::optional<Act> remove;
    };
    QStringList captions;  ///< one a cell; its size is a multiple of `columns`
    int columns = 1;
    std::vector<Row> rows;
};
/// A sentence about what is computed, renewed with every answer; nothing is shown where it is empty.
struct Said {
    std::function<QString(const analysis::Answer&)> sentence;
};

using Line = std::variant<Heading, Part, Act, Table, Said>;
using Form = std::vector<Line>;

/// The form of a part of the design. Nothing selected: the core's.
[[nodiscard]] Form formOf(const design::Design& design, const document::Selected& part, const Shop& shop);
/// What makes one form another: paths, headings, buttons. Forms of the same shape differ in values only.
[[nodiscard]] QString shapeOf(const Form& form);

/// The part of a form that a function adds to. `owner` names the record in acts: "section S1.a".
struct FormPen {
    const design::Design& design;
    const Shop& shop;
    Form form = {};

    void heading(const QString& text, int level = 1) { form.emplace_back(Heading{text, level, {}, false}); }
    void fold(const QString& text, const std::string& name, bool folded = true, int level = 1) {
        form.emplace_back(Heading{text, level, name, folded});
    }
    /// Fields of a record in the order given.
    template <class Record>
    void fields(const Where<Record>& record, const QString& owner, std::initializer_list<const char*> keys) {
        for (const char* key : keys) form.emplace_back(partOf(record, key, owner, shop));
    }
    /// Short fields side by side under their labels.
    void row(std::vector<Part> parts) {
        Table table{{}, static_cast<int>(parts.size()), {}};
        for (const Part& part : parts) table.captions << part.label;
        table.rows.push_back({std::move(parts), {}});
        form.emplace_back(std::move(table));
    }
    template <class Record>
    void row(const Where<Record>& record, const QString& owner, std::initializer_list<const char*> keys) {
        std::vector<Part> parts;
        for (const char* key : keys) parts.push_back(partOf(record, key, owner, shop));
        row(std::move(parts));
    }
    void field(Part part) { form.emplace_back(std::move(part)); }
    void button(Act act) { form.emplace_back(std::move(act)); }
    void table(Table table) { form.emplace_back(std::move(table)); }
    void said(std::function<QString(const analysis::Answer&)> sentence) {
        form.emplace_back(Said{std::move(sentence)});
    }
};

// The forms, a file each.
void writeBrief(FormPen& pen);
void writePromises(FormPen& pen);
void writeMasks(FormPen& pen);
void writeCore(FormPen& pen);
void writeFittings(FormPen& pen);
void writeBobbin(FormPen& pen);
void writeWinding(FormPen& pen, const std::string& winding);
void writeItem(FormPen& pen, const design::ItemIndex& at);
void writeTerminals(FormPen& pen);
void writeHookUps(FormPen& pen);
void writePortUse(FormPen& pen, std::size_t hookUp, std::size_t use);
void writeConditions(FormPen& pen);
void writeTolerances(FormPen& pen);
/// "Make the other end hot" for a port of a hook-up, with the line that says what it does.
[[nodiscard]] Act hotEndButton(const design::Design& d, const design::HookUp& h, const design::Port& port);

/// Buttons that put something into a list and take it out again.
template <class T>
[[nodiscard]] Act addTo(const Where<std::vector<T>>& list, const QString& text, T fresh, std::size_t at,
                        const std::string& firstField) {
    Act act;
    act.path = list.path + "/add";
    act.text = text;
    act.name = text;
    act.focus = list.path + "/" + std::to_string(at) + firstField;
    act.make = [list, fresh](const design::Design& d) {
        return design::changed(d, [&](design::Design& copy) {
            if (auto* v = list.find(copy)) v->push_back(fresh);
        });
    };
    return act;
}
template <class T>
[[nodiscard]] Act removeFrom(const Where<std::vector<T>>& list, std::size_t k, const QString& name) {
    Act act;
    act.path = list.path + "/" + std::to_string(k) + "/remove";
    act.text = QStringLiteral("×");
    act.name = name;
    act.focus = list.path + "/add";
    act.make = [list, k](const design::Design& d) {
        return design::changed(d, [&](design::Design& copy) {
            if (auto* v = list.find(copy); v != nullptr && k < v->size())
                v->erase(v->begin() + static_cast<std::ptrdiff_t>(k));
        });
    };
    return act;
}
/// "new", "new 2"…: the first that nothing in the list is called.
template <class Things>
[[nodiscard]] std::string freeName(const Things& things, const std::string& stem) {
    for (int n = 1;; ++n) {
        std::string name = n == 1 ? stem : stem + " " + std::to_string(n);
        if (std::none_of(things.begin(), things.end(), [&](const auto& t) { return t.name == name; })) return name;
    }
}

}  // namespace editors
