// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/stage_json.h"

#include "analysis/stages.h"
#include "field/wire_cell.h"
#include "json/record.h"
#include "json/text.h"

namespace exchange {

namespace {

enum class WindowEnds { Closed, Open };
constexpr std::array<std::pair<const char*, WindowEnds>, 2> names(WindowEnds) {
    return {{{"closed", WindowEnds::Closed}, {"open", WindowEnds::Open}}};
}
enum class CellNesting { Square, Hex, Plane };
constexpr std::array<std::pair<const char*, CellNesting>, 3> names(CellNesting) {
    return {{{"square", CellNesting::Square}, {"hex", CellNesting::Hex}, {"plane", CellNesting::Plane}}};
}

struct WindowSection {
    double x0 = 0, x1 = 0, y0 = 0, y1 = 0, turns = 1;
};
template <class Visitor>
void fields(Visitor& visit, WindowSection& s) {
    const auto place = json::within(0, 10).in("m");
    visit.need("x0", s.x0, place);
    visit.need("x1", s.x1, place);
    visit.need("y0", s.y0, place);
    visit.need("y1", s.y1, place);
    visit.may("turns", s.turns, json::aboveUpTo(0, 1e6));
}

struct Cell {
    double d = 0, overall = 0, pitch = 0, sheet = 0, enamel = 3.5, sheetEps = 3, filler = 1;
    CellNesting nesting = CellNesting::Square;
};
template <class Visitor>
void fields(Visitor& visit, Cell& c) {
    const auto length = json::aboveUpTo(0, 0.1).in("m");
    const auto permittivity = json::within(1, 100);
    visit.need("d", c.d, length);
    visit.need("d_o", c.overall, length);
    visit.need("pitch", c.pitch, length);
    visit.may("sheet", c.sheet, json::within(0, 0.1).in("m"));
    visit.may("eps_enamel", c.enamel, permittivity);
    visit.may("eps_sheet", c.sheetEps, permittivity);
    visit.may("eps_filler", c.filler, permittivity);
    visit.may("nesting", c.nesting);
}

struct Question {
    std::optional<double> width, height;
    WindowEnds ends = WindowEnds::Closed;
    std::vector<WindowSection> sections;
    std::vector<Cell> cells;
};
template <class Visitor>
void fields(Visitor& visit, Question& q) {
    visit.may("w", q.width, json::aboveUpTo(0, 10).in("m"));
    visit.may("h", q.height, json::aboveUpTo(0, 10).in("m"));
    visit.may("ends", q.ends);
    visit.may("sections", q.sections);
    visit.may("cells", q.cells);
}

json::Value asRows(const Eigen::MatrixXd& matrix) {
    json::Value rows = json::Value::array();
    for (Eigen::Index i = 0; i < matrix.rows(); ++i) {
        json::Value row = json::Value::array();
        for (Eigen::Index k = 0; k < matrix.cols(); ++k) row.push_back(matrix(i, k));
        rows.push_back(std::move(row));
    }
    return rows;
}

void checkSections(const Question& q, const std::string& file, std::vector<units::Fault>& faults) {
    if (q.sections.empty()) return;
    if (!q.width || !q.height) {
        faults.push_back(
            {file + ": /w and /h", "nothing", "the window's width and height in m, where there are sections"});
        return;
    }
    for (std::size_t k = 0; k < q.sections.size(); ++k) {
        const auto& s = q.sections[k];
        const bool inside =
            s.x0 < s.x1 && s.y0 < s.y1 && s.x1 <= *q.width * (1 + 1e-9) && s.y1 <= *q.height * (1 + 1e-9);
        if (!inside)
            faults.push_back(
                {file + ": /sections/" + std::to_string(k), "x0, x1, y0, y1", "x0 < x1 and y0 < y1 inside the window"});
    }
}

json::Value windowAnswer(const Question& q) {
    std::vector<field::CurrentBox> boxes;
    Eigen::VectorXd turns(static_cast<Eigen::Index>(q.sections.size()));
    for (const auto& s : q.sections) {
        turns(static_cast<Eigen::Index>(boxes.size())) = s.turns;
        boxes.push_back({{s.x0, s.x1, s.y0, s.y1}, 1});
    }
    const auto around = q.ends == WindowEnds::Closed ? field::Surroundings::Closed : field::Surroundings::Open;
    const Eigen::MatrixXd perTurn = field::windowMatrix(boxes, {*q.width, *q.height}, around);
    json::Value answer;
    answer["lambda_H_per_m"] = asRows(field::pairLambda(perTurn));
    answer["matrix_H_per_m"] = asRows(turns.asDiagonal() * perTurn * turns.asDiagonal());
    return answer;
}

double cellAnswer(const Cell& c) {
    field::RowCell cell;
    cell.bare = c.d;
    cell.overall = c.overall;
    cell.pitch = c.pitch;
    cell.sheet = c.sheet;
    cell.enamel = c.enamel;
    cell.sheetPermittivity = c.sheetEps;
    cell.filler = c.filler;
    cell.distance = c.overall / 2 + c.sheet;
    if (c.nesting != CellNesting::Plane) {
        cell.otherBare = c.d;
        cell.otherOverall = c.overall;
        cell.otherPitch = c.pitch;
        cell.otherEnamel = c.enamel;
        cell.distance = c.overall + c.sheet;
        cell.nested = c.nesting == CellNesting::Hex;
    }
    return field::rowCapacitance(cell).real();
}

std::string nameOf(const field::Body& body, const coil::CoilBuild& build) {
    if (body.kind == field::Body::Kind::Core) return "core";
    if (body.kind == field::Body::Kind::Foil) return build.foils[static_cast<std::size_t>(body.index)].name;
    const auto& layer = build.layers[static_cast<std::size_t>(body.index)];
    return layer.winding + "." + layer.section + "/" + std::to_string(layer.number);
}

}  // namespace

json::Value fieldJson(std::string_view text, const std::string& file) {
    const json::Value object = json::read(text, file);
    std::vector<units::Fault> faults;
    if (!object.is_object()) units::refuse(file, json::foundWords(object), "an object in curly brackets");
    const auto question = json::readRecord<Question>(object, file, "", faults);
    checkSections(question, file, faults);
    if (question.sections.empty() && question.cells.empty() && faults.empty())
        faults.push_back({file, "neither sections nor cells", "a list of one or the other"});
    for (std::size_t k = 0; k < question.cells.size(); ++k)
        if (question.cells[k].overall < question.cells[k].d || question.cells[k].pitch < question.cells[k].overall)
            faults.push_back({file + ": /cells/" + std::to_string(k), "d, d_o, pitch", "d <= d_o <= pitch"});
    if (!faults.empty()) throw units::BadInput(std::move(faults));
    json::Value answer = question.sections.empty() ? json::Value::object() : windowAnswer(question);
    for (const auto& cell : question.cells) answer["capacitance_F_per_m2"].push_back(cellAnswer(cell));
    return answer;
}

json::Value layersJson(const analysis::Answer& answer) {
    const auto& stages = *answer.stages;
    const auto& build = *stages.build;
    json::Value all;
    all["layers"] = json::Value::array();
    for (std::size_t k = 0; k < build.layers.size(); ++k) {
        const auto& layer = build.layers[k];
        json::Value one;
        one["name"] = nameOf({field::Body::Kind::Layer, static_cast<int>(k)}, build);
        one["leg"] = layer.leg;
        one["chamber"] = layer.chamber;
        one["turns"] = layer.sense * layer.turns;
        one["x_m"] = {layer.box.x0, layer.box.x1};
        one["y_m"] = {layer.box.y0, layer.box.y1};
        one["turn_length_m"] = layer.turnLength;
        one["resistance20_ohm"] = layer.resistance20;
        all["layers"].push_back(std::move(one));
    }
    // One branch a layer, whatever the network uses.
    const auto leakage = field::leakageMatrix(build, stages.design->assumptions.ends);
    Eigen::MatrixXd perTurn = leakage.matrix;
    for (Eigen::Index i = 0; i < perTurn.rows(); ++i)
        for (Eigen::Index k = 0; k < perTurn.cols(); ++k) {
            const auto &a = build.layers[static_cast<std::size_t>(i)], &b = build.layers[static_cast<std::size_t>(k)];
            perTurn(i, k) /= a.sense * a.turns * b.sense * b.turns;
        }
    all["lambda_H_per_turn2"] = asRows(field::pairLambda(perTurn));
    all["capacitances"] = json::Value::array();
    for (const auto& facing : stages.capacitance->facings) {
        json::Value one;
        one["a"] = nameOf(facing.a, build);
        one["b"] = nameOf(facing.b, build);
        one["y_m"] = {facing.y0, facing.y1};
        one["F"] = facing.total.real();
        one["loss_factor"] = facing.total.real() > 0 ? -facing.total.imag() / facing.total.real() : 0.0;
        all["capacitances"].push_back(std::move(one));
    }
    return all;
}

}  // namespace exchange
