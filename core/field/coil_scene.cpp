// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/coil_scene.h"

#include <algorithm>
#include <cmath>

namespace field {

namespace {

using Complex = std::complex<double>;

long long rounded(double value, double unit) {
    return std::llround(value / unit);
}
long long lengthKey(double length) {
    return rounded(std::min(length, 1e3), 1e-10);
}

/// Where boxes overlap by more than half of the thinner one, they share a radial position.
bool sideBySide(const coil::Box& a, const coil::Box& b) {
    const double common = std::min(a.x1, b.x1) - std::max(a.x0, b.x0);
    return common > 0.5 * std::min(a.width(), b.width());
}

}  // namespace

double Column::x0() const {
    double x = members.front()->box.x0;
    for (const auto* m : members) x = std::min(x, m->box.x0);
    return x;
}

double Column::x1() const {
    double x = members.front()->box.x1;
    for (const auto* m : members) x = std::max(x, m->box.x1);
    return x;
}

double Column::share(const Solid& member) const {
    double all = 0;
    for (const auto* m : members) all += m->strands;
    return member.strands / all;
}

double Column::wirePitch(const Solid& member) const {
    return member.pitch * share(member) / member.strands;
}

std::vector<Column> columnsOf(std::vector<const Solid*> solids) {
    std::sort(solids.begin(), solids.end(), [](const Solid* a, const Solid* b) {
        return a->box.middle() != b->box.middle() ? a->box.middle() < b->box.middle() : a->body < b->body;
    });
    std::vector<Column> columns;
    for (const auto* s : solids) {
        if (!columns.empty() && sideBySide(columns.back().members.front()->box, s->box))
            columns.back().members.push_back(s);
        else
            columns.push_back({{s}});
    }
    return columns;
}

Scene::Scene(const coil::CoilBuild& build, bool lossy) : build_(build), lossy_(lossy) {
    filler_ = relative(build.fillPermittivity, build.fillLoss);
    const auto take = [&](Solid s, const coil::Conductor& c) {
        s.flat = c.foil || c.bare <= 0;
        s.bare = c.bare;
        s.overall = std::max(c.overall, c.bare);
        s.strands = std::max(1, c.strands);
        s.pitch = std::max(s.pitch, s.overall * s.strands);
        s.enamel = relative(c.enamelPermittivity, c.enamelLoss);
        solids_.push_back(s);
    };
    for (std::size_t i = 0; i < build.layers.size(); ++i) {
        const auto& l = build.layers[i];
        Solid s{{Body::Kind::Layer, static_cast<int>(i)}, l.leg, l.chamber, l.box};
        s.nested = l.nested;
        s.random = l.random;
        s.pitch = l.pitch;
        s.turnLength = l.turnLength;
        take(s, l.conductor);
    }
    for (std::size_t i = 0; i < build.foils.size(); ++i) {
        const auto& f = build.foils[i];
        Solid s{{Body::Kind::Foil, static_cast<int>(i)}, f.leg, f.chamber, f.box};
        s.turnLength = f.turnLength;
        if (f.isFolded()) s.foldedTo = f.foldedTo;
        take(s, f.conductor);
        if (!f.winding) solids_.back().flat = true;
    }
    dielectrics_ = build.dielectrics;
    const bool walled = std::any_of(dielectrics_.begin(), dielectrics_.end(), [](const auto& d) { return d.bobbin; });
    if (!walled && build.bobbinWall > 0)
        for (int leg = 1; leg <= build.legs; ++leg)
            dielectrics_.push_back({{build.clearance, build.clearance + build.bobbinWall, 0, build.windowHeight},
                                    build.bobbinPermittivity,
                                    build.bobbinLoss,
                                    leg,
                                    0,
                                    true,
                                    "bobbin wall"});
}

Complex Scene::relative(double permittivity, double loss) const {
    return {permittivity, lossy_ ? -permittivity * loss : 0.0};
}

Path Scene::path(int leg, double from, double to, double across, bool radial) const {
    double sheet = 0;
    Complex reduced = 0;  // sum of thickness / permittivity
    for (const auto& d : dielectrics_) {
        if (d.leg != leg) continue;
        const double low = radial ? d.box.y0 : d.box.x0, high = radial ? d.box.y1 : d.box.x1;
        if (across < low || across > high) continue;
        const double thick = std::min(to, radial ? d.box.x1 : d.box.y1) - std::max(from, radial ? d.box.x0 : d.box.y0);
        if (thick <= 0) continue;
        sheet += thick;
        reduced += thick / relative(d.permittivity, d.loss);
    }
    if (sheet <= 0) return {};
    return {sheet, sheet / reduced};
}

Path Scene::radialPath(int leg, double x0, double x1, double y) const {
    return path(leg, x0, x1, y, true);
}
Path Scene::axialPath(int leg, double y0, double y1, double x) const {
    return path(leg, y0, y1, x, false);
}

Path Scene::inSeries(const Path& a, const Path& b) {
    const double sheet = a.sheet + b.sheet;
    if (sheet <= 0) return {};
    return {sheet, sheet / (a.sheet / a.permittivity + b.sheet / b.permittivity)};
}

RowCell Scene::cellFrom(const Solid& solid, double pitch) const {
    RowCell cell;
    cell.filler = filler_;
    cell.enamel = solid.enamel;
    if (solid.flat) return cell;
    cell.bare = solid.bare;
    cell.overall = solid.overall;
    cell.pitch = pitch;
    return cell;
}

void Scene::setOther(RowCell& cell, const Solid& solid, double pitch) {
    cell.otherEnamel = solid.enamel;
    if (solid.flat) return;
    cell.otherBare = solid.bare;
    cell.otherOverall = solid.overall;
    cell.otherPitch = pitch;
}

Complex Scene::areal(const RowCell& c) {
    const auto unit = [](double v) { return rounded(v, 1e-9); };
    const Key key{lengthKey(c.bare),
                  lengthKey(c.overall),
                  lengthKey(c.pitch),
                  lengthKey(c.otherBare),
                  lengthKey(c.otherOverall),
                  lengthKey(c.otherPitch),
                  lengthKey(c.sheet),
                  lengthKey(c.distance),
                  c.nested ? 1 : 0,
                  unit(c.enamel.real()),
                  unit(c.otherEnamel.real()),
                  unit(c.sheetPermittivity.real()),
                  unit(c.enamel.imag()) + 31 * unit(c.otherEnamel.imag()),
                  unit(c.sheetPermittivity.imag())};
    const auto [place, fresh] = rows_.try_emplace(key);
    if (fresh) place->second = rowCapacitance(c);
    return place->second;
}

Complex Scene::turnToTurn(double bare, double overall, double pitch, Complex enamel) {
    const Key key{lengthKey(bare), lengthKey(overall), lengthKey(pitch), rounded(enamel.real(), 1e-9),
                  rounded(enamel.imag(), 1e-9)};
    const auto [place, fresh] = turns_.try_emplace(key);
    if (fresh) place->second = turnCapacitance(bare, overall, pitch, enamel, filler_);
    return place->second;
}

}  // namespace field
