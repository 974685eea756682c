// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/form.h"

namespace editors {

using Which = document::WholePart::Which;

namespace {

void writeWhole(FormPen& pen, Which which) {
    switch (which) {
        case Which::Brief:
            return writeBrief(pen);
        case Which::Core:
            return writeCore(pen);
        case Which::Bobbin:
            return writeBobbin(pen);
        case Which::Terminals:
            return writeTerminals(pen);
        case Which::HookUps:
            return writeHookUps(pen);
        case Which::Conditions:
            return writeConditions(pen);
        case Which::Tolerances:
            return writeTolerances(pen);
    }
}

QString path(const std::string& text) {
    return QString::fromStdString(text);
}

struct Shape {
    QStringList all;
    void operator()(const Heading& h) { all << QStringLiteral("#") << h.text << path(h.fold); }
    void operator()(const Part& p) { all << path(p.path) << p.label; }
    void operator()(const Act& a) { all << path(a.path) << a.text << a.reason << QString::number(a.enabled); }
    void operator()(const Table& t) {
        all << t.captions;
        for (const auto& row : t.rows) {
            for (const auto& cell : row.cells) (*this)(cell);
            if (row.remove) (*this)(*row.remove);
        }
    }
    void operator()(const Said&) { all << QStringLiteral("said"); }
};

}  // namespace

Form formOf(const design::Design& design, const document::Selected& part, const Shop& shop) {
    FormPen pen{design, shop};
    if (const auto* at = std::get_if<design::ItemIndex>(&part))
        writeItem(pen, *at);
    else if (const auto* winding = std::get_if<document::WindingPart>(&part))
        writeWinding(pen, winding->name);
    else if (const auto* whole = std::get_if<document::WholePart>(&part))
        writeWhole(pen, whole->which);
    if (pen.form.empty()) writeCore(pen);  // nothing is selected, or it is not there any more
    return std::move(pen.form);
}

QString shapeOf(const Form& form) {
    Shape shape;
    for (const auto& line : form) std::visit(shape, line);
    return shape.all.join(QLatin1Char('\n'));
}

}  // namespace editors
