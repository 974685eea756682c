// SPDX-License-Identifier: GPL-3.0-or-later
//
// Seen along the axis, the ends of a chamber's layers are again a row of wires, their pitch the layers' radial
// distance: the same cell serves, each layer with the share of the radius up to half-way to its neighbours. An end
// behind a neighbour's by more than that share is screened. In the window's corners the bend between face and end is
// added, with the mean permittivity of both. A foil folded over ends (a box shield) faces them instead of the yoke or
// the next chamber, all round the turn, and is itself what those see. Outside the window an end has no yoke: its field
// to the tongue's sides is left out.
#include "field/edge_window.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace field {

namespace {

using Complex = std::complex<double>;

/// One column's end on one side of a chamber.
struct End {
    Column column;          ///< members that end here
    double y = 0;           ///< where their wires' cells end
    double x0 = 0, x1 = 0;  ///< share of the radius
    bool screened = false;
    const Solid* cover = nullptr;  ///< foil folded over it
    double share() const noexcept { return x1 - x0; }
};

struct Chamber {
    int leg, number;
    double low = 1e9, high = -1e9;
    std::vector<const Solid*> solids{};
    std::array<std::vector<End>, 2> ends{};     ///< low side, high side
    std::array<std::vector<End>, 2> covered{};  ///< those that a folded foil covers
};

std::vector<Chamber> chambersOf(const Scene& scene) {
    std::vector<Chamber> chambers;
    for (const auto& s : scene.solids()) {
        auto at = std::find_if(chambers.begin(), chambers.end(),
                               [&](const Chamber& c) { return c.leg == s.leg && c.number == s.chamber; });
        if (at == chambers.end()) {
            chambers.push_back({s.leg, s.chamber});
            at = chambers.end() - 1;
        }
        at->low = std::min(at->low, s.box.y0);
        at->high = std::max(at->high, s.box.y1);
        at->solids.push_back(&s);
    }
    std::sort(chambers.begin(), chambers.end(),
              [](const Chamber& a, const Chamber& b) { return a.leg != b.leg ? a.leg < b.leg : a.low < b.low; });
    return chambers;
}

/// Ends of a chamber's columns; `side` 0 low, 1 high.
std::vector<End> endsOf(const Chamber& chamber, int side) {
    const auto edge = [side](const Solid& s) { return side == 0 ? -s.box.y0 : s.box.y1; };  // outward is greater
    std::vector<End> ends;
    for (auto& whole : columnsOf(chamber.solids)) {
        End end;
        double out = -1e9;
        for (const auto* m : whole.members) out = std::max(out, edge(*m));
        for (const auto* m : whole.members)
            if (out - edge(*m) < (m->flat ? 1e-6 : m->pitch)) end.column.members.push_back(m);
        end.y = side == 0 ? -out : out;
        end.x0 = end.column.x0();
        end.x1 = end.column.x1();
        ends.push_back(std::move(end));
    }
    for (std::size_t i = 1; i < ends.size(); ++i) {
        const double half = (ends[i - 1].x1 + ends[i].x0) / 2;
        ends[i - 1].x1 = ends[i].x0 = half;
    }
    return ends;
}

/// Marks ends that lie behind a neighbour's.
void screen(std::vector<End>& ends, int side) {
    const auto behind = [&](const End& me, const End& neighbour) {
        return (side == 0 ? me.y - neighbour.y : neighbour.y - me.y) > me.share();
    };
    for (std::size_t i = 0; i < ends.size(); ++i)
        ends[i].screened =
            (i > 0 && behind(ends[i], ends[i - 1])) || (i + 1 < ends.size() && behind(ends[i], ends[i + 1]));
}

/// Ends of a side that look outward, and apart from them those that a folded foil covers; the foil looks out for them.
std::vector<End> takeCovered(std::vector<End>& ends) {
    std::vector<End> covered, open;
    for (const End& foil : ends) {
        const Solid& solid = *foil.column.members.front();
        if (solid.foldedTo <= 0) continue;
        for (auto& end : ends)
            if (end.column.x0() >= solid.foldedTo - 1e-9 && end.column.x1() <= solid.box.x0 + 1e-9) end.cover = &solid;
    }
    for (const auto& end : ends) (end.cover != nullptr ? covered : open).push_back(end);
    for (auto& end : open) end.x0 = std::min(end.x0, end.column.members.front()->endsFrom());
    for (std::size_t i = 1; i < open.size(); ++i) open[i - 1].x1 = std::min(open[i - 1].x1, open[i].x0);
    ends = std::move(open);
    return covered;
}

/// Radial distance of a member's wires at an end.
double radialPitch(const End& end, const Solid& member) {
    return member.random ? member.pitch : end.share();
}

/// The cell of an end looking along the axis; distance still without the other side.
RowCell cellOf(const Scene& scene, const End& end, const Solid& member, double gap) {
    auto cell = scene.cellFrom(member, radialPitch(end, member));
    cell.distance = gap + (member.flat ? 0 : end.column.wirePitch(member) / 2);
    return cell;
}

void setPath(RowCell& cell, const Path& path) {
    cell.sheet = path.sheet;
    cell.sheetPermittivity = path.permittivity;
}

class Edges {
public:
    Edges(Scene& scene, std::vector<Facing>& facings) : scene_(scene), facings_(facings) {}

    void run() {
        auto chambers = chambersOf(scene_);
        for (auto& c : chambers) {
            for (const int side : {0, 1}) {
                auto& ends = c.ends[static_cast<std::size_t>(side)];
                auto& covered = c.covered[static_cast<std::size_t>(side)];
                ends = endsOf(c, side);
                covered = takeCovered(ends);
                screen(ends, side);
                screen(covered, side);
                faceCovers(covered, side);
            }
        }
        for (std::size_t i = 0; i < chambers.size(); ++i) {
            const bool first = i == 0 || chambers[i - 1].leg != chambers[i].leg;
            const bool last = i + 1 == chambers.size() || chambers[i + 1].leg != chambers[i].leg;
            if (first) faceYoke(chambers[i], 0);
            if (last)
                faceYoke(chambers[i], 1);
            else
                faceChamber(chambers[i], chambers[i + 1]);
        }
    }

private:
    double wall(int side) const { return side == 0 ? 0 : scene_.build().windowHeight; }

    Path pathTo(int leg, double from, double to, double x) const {
        return scene_.axialPath(leg, std::min(from, to), std::max(from, to), x);
    }

    /// Ends beneath the foil that is folded over them.
    void faceCovers(const std::vector<End>& covered, int side) {
        for (const auto& end : covered) {
            const auto& foil = *end.cover;
            const double inner = side == 0 ? foil.box.y0 + foil.bare : foil.box.y1 - foil.bare;
            const double gap = side == 0 ? end.y - inner : inner - end.y;
            if (end.screened || gap < 1e-7) continue;
            const double middle = (end.x0 + end.x1) / 2;
            const auto path = pathTo(foil.leg, end.y, inner, middle);
            for (const auto* m : end.column.members) {
                auto cell = cellOf(scene_, end, *m, gap);
                setPath(cell, path);
                facings_.push_back({m->body, foil.body, end.y, end.y,
                                    scene_.areal(cell) * (end.share() * m->lengthAt(middle) * end.column.share(*m))});
            }
        }
    }

    void faceYoke(const Chamber& chamber, int side) {
        const auto& ends = chamber.ends[static_cast<std::size_t>(side)];
        for (std::size_t i = 0; i < ends.size(); ++i) {
            const auto& end = ends[i];
            const double gap = std::abs(end.y - wall(side));
            if (end.screened || gap < 1e-7) continue;
            const auto path = pathTo(chamber.leg, end.y, wall(side), (end.x0 + end.x1) / 2);
            for (const auto* m : end.column.members) {
                auto cell = cellOf(scene_, end, *m, gap);
                setPath(cell, path);
                const auto areal = scene_.areal(cell);
                auto perMetre = areal * end.share();
                if (i == 0) perMetre += corner(end, *m, areal, gap, 0, m->endsFrom());
                if (i + 1 == ends.size() && scene_.build().legs == 1)
                    perMetre += corner(end, *m, areal, gap, m->box.x1, scene_.build().windowWidth);
                facings_.push_back({m->body, {}, end.y, end.y, perMetre * scene_.windowPart() * end.column.share(*m)});
            }
        }
    }

    /// The bend between a face with its gap from x0 to x1 and an end with `gap` to the yoke, F per metre.
    Complex corner(const End& end, const Solid& member, Complex endAreal, double gap, double x0, double x1) {
        if (x1 - x0 < 1e-7) return 0;
        auto cell = scene_.cellFrom(member, end.column.wirePitch(member));
        cell.distance = x1 - x0 + member.depth();
        const double inside = end.y + (end.y < scene_.build().windowHeight / 2 ? 1e-6 : -1e-6);
        setPath(cell, scene_.radialPath(member.leg, x0, x1, inside));
        const double across = x1 - x0 + (member.overall - member.bare) / 2,
                     along = gap + (member.overall - member.bare) / 2;
        const auto permittivity = (scene_.areal(cell) * across + endAreal * along) / 2.0;
        return permittivity * cornerFringe(across, along);
    }

    void faceChamber(const Chamber& lower, const Chamber& upper) {
        for (const auto& a : lower.ends[1])
            for (const auto& b : upper.ends[0]) {
                const double x0 = std::max(a.x0, b.x0), x1 = std::min(a.x1, b.x1);
                const double gap = b.y - a.y;
                if (a.screened || b.screened || x1 <= x0 || gap < 1e-7) continue;
                const auto path = scene_.axialPath(lower.leg, a.y, b.y, (x0 + x1) / 2);
                for (const auto* m : a.column.members)
                    for (const auto* n : b.column.members) {
                        auto cell = cellOf(scene_, a, *m, gap);
                        Scene::setOther(cell, *n, radialPitch(b, *n));
                        cell.distance += n->flat ? 0 : b.column.wirePitch(*n) / 2;
                        setPath(cell, path);
                        const double length = m->lengthAt((x0 + x1) / 2);
                        const double y = (a.y + b.y) / 2;
                        facings_.push_back(
                            {m->body, n->body, y, y,
                             scene_.areal(cell) * ((x1 - x0) * length * a.column.share(*m) * b.column.share(*n))});
                    }
            }
    }

    Scene& scene_;
    std::vector<Facing>& facings_;
};

}  // namespace

double cornerFringe(double a, double b) {
    const double r = a / b;
    return 2 / std::numbers::pi * (r * std::atan(1 / r) + std::atan(r) / r + std::log((r + 1 / r) / 4));
}

void addEndFacings(Scene& scene, std::vector<Facing>& facings) {
    Edges(scene, facings).run();
}

}  // namespace field
