// SPDX-License-Identifier: GPL-3.0-or-later
//
// Length of a facing: the turn at the middle of the gap; tongue to first conductor: the mean of the core's perimeter
// and the turn at the conductor's inner face (all four sides: beyond the window the tongue's sides face the coil too).
#include "field/facing_pairs.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

namespace field {

namespace {

using Complex = std::complex<double>;

constexpr double rounding = 1e-8;  // m: edges nearer than this are one edge

std::vector<double> cutsOf(const Scene& scene) {
    std::vector<double> cuts;
    double low = 1e9, high = -1e9;
    for (const auto& s : scene.solids()) {
        cuts.insert(cuts.end(), {s.box.y0, s.box.y1});
        low = std::min(low, s.box.y0);
        high = std::max(high, s.box.y1);
    }
    for (const auto& d : scene.dielectrics())
        for (const double y : {d.box.y0, d.box.y1})
            if (y > low && y < high) cuts.push_back(y);
    std::sort(cuts.begin(), cuts.end());
    const auto same = [](double a, double b) { return b - a < rounding; };
    cuts.erase(std::unique(cuts.begin(), cuts.end(), same), cuts.end());
    return cuts;
}

class Radial {
public:
    Radial(Scene& scene, std::vector<Facing>& facings) : scene_(scene), facings_(facings) {}

    bool run() {
        const auto cuts = cutsOf(scene_);
        for (std::size_t k = 1; k < cuts.size(); ++k) {
            y0_ = cuts[k - 1];
            y1_ = cuts[k];
            legs_.clear();
            for (int leg = 1; leg <= scene_.build().legs; ++leg) legs_.push_back(columnsAt(leg));
            for (int leg = 1; leg <= scene_.build().legs; ++leg) faceWithin(leg);
            faceOutward();
        }
        return inside_;
    }

private:
    double middle() const { return (y0_ + y1_) / 2; }
    double width() const { return y1_ - y0_; }

    std::vector<Column> columnsAt(int leg) const {
        std::vector<const Solid*> here;
        for (const auto& s : scene_.solids())
            if (s.leg == leg && s.box.y0 < middle() && middle() < s.box.y1) here.push_back(&s);
        return columnsOf(std::move(here));
    }

    void faceWithin(int leg) {
        const auto& columns = legs_[static_cast<std::size_t>(leg - 1)];
        for (std::size_t i = 0; i < columns.size(); ++i) {
            if (i == 0)
                faceTongue(columns[0], leg);
            else
                face(columns[i - 1], columns[i], leg);
            faceInHand(columns[i]);
        }
    }

    void faceTongue(const Column& column, int leg) {
        const double gap = column.x0();
        const auto path = scene_.radialPath(leg, 0, gap, middle());
        const double core = 2 * (scene_.build().tongue + scene_.build().stack);
        for (const auto* m : column.members)
            add({}, m->body, toPlane(column, *m, gap, path) * (core + m->lengthAt(gap)) / 2.0 * column.share(*m));
    }

    Complex toPlane(const Column& column, const Solid& member, double gap, const Path& path) {
        auto cell = scene_.cellFrom(member, column.wirePitch(member));
        cell.distance = gap + member.depth();
        cell.sheet = path.sheet;
        cell.sheetPermittivity = path.permittivity;
        return scene_.areal(cell);
    }

    Complex between(const Column& a, const Solid& m, const Column& b, const Solid& n, double gap, const Path& path) {
        auto cell = scene_.cellFrom(m, a.wirePitch(m));
        Scene::setOther(cell, n, b.wirePitch(n));
        cell.distance = gap + m.depth() + n.depth();
        cell.nested = n.nested;
        cell.sheet = path.sheet;
        cell.sheetPermittivity = path.permittivity;
        if (!m.random || !n.random || path.sheet > 0) return scene_.areal(cell);
        // Strokes of a wild winding lie on each other anyhow: between wire on wire and wire in the hollow, half and
        // half.
        const auto onWire = scene_.areal(cell);
        cell.nested = true;
        cell.distance = 0;  // as near as wires come
        return (onWire + scene_.areal(cell)) / 2.0;
    }

    void face(const Column& inner, const Column& outer, int leg) {
        const double x0 = inner.x1(), x1 = outer.x0();
        const auto path = scene_.radialPath(leg, x0, x1, middle());
        for (const auto* m : inner.members)
            for (const auto* n : outer.members)
                add(m->body, n->body,
                    between(inner, *m, outer, *n, x1 - x0, path) * m->lengthAt((x0 + x1) / 2) * inner.share(*m) *
                        outer.share(*n));
    }

    /// Wires wound in one hand lie in turn side by side: turn-to-turn capacitance on every gap between two of them.
    void faceInHand(const Column& column) {
        const auto& m = column.members;
        if (m.size() < 2 || m.front()->flat) return;
        const std::size_t gaps = m.size() == 2 ? 1 : m.size();
        for (std::size_t i = 0; i < gaps; ++i) {
            const Solid& a = *m[i];
            const Solid& b = *m[(i + 1) % m.size()];
            const auto perMetre = scene_.turnToTurn((a.bare + b.bare) / 2, (a.overall + b.overall) / 2,
                                                    column.wirePitch(a), (a.enamel + b.enamel) / 2.0);
            const double turns = (m.size() == 2 ? 2 : 1) / a.pitch;  // gaps a metre of axis
            add(a.body, b.body, perMetre * turns * (a.turnLength + b.turnLength) / 2.0);
        }
    }

    void faceOutward() {
        const auto& build = scene_.build();
        const double w = build.windowWidth;
        if (legs_.size() == 2 && !legs_[0].empty() && !legs_[1].empty()) {
            const auto& a = legs_[0].back();
            const auto& b = legs_[1].back();
            const double gap = w - a.x1() - b.x1();
            if (gap <= 0) {
                inside_ = false;
                return;
            }
            const auto path = Scene::inSeries(scene_.radialPath(1, a.x1(), w - b.x1(), middle()),
                                              scene_.radialPath(2, b.x1(), w - a.x1(), middle()));
            for (const auto* m : a.members)
                for (const auto* n : b.members)
                    add(m->body, n->body,
                        between(a, *m, b, *n, gap, path) * scene_.windowPart() * a.share(*m) * b.share(*n));
            return;
        }
        for (std::size_t leg = 0; leg < legs_.size(); ++leg) {
            if (legs_[leg].empty()) continue;
            const auto& last = legs_[leg].back();
            const double gap = w - last.x1();
            if (gap <= 0) {
                inside_ = false;
                continue;
            }
            const auto path = scene_.radialPath(static_cast<int>(leg) + 1, last.x1(), w, middle());
            for (const auto* m : last.members)
                add(m->body, {}, toPlane(last, *m, gap, path) * scene_.windowPart() * last.share(*m));
        }
    }

    /// Adds `perAxis` F/m over this stretch, to the pair's last stretch where it only goes on.
    void add(Body a, Body b, Complex perAxis) {
        const auto known = last_.find({a, b});
        if (known != last_.end()) {
            auto& f = facings_[known->second];
            const auto before = f.total / (f.y1 - f.y0);
            if (std::abs(y0_ - f.y1) < rounding && std::abs(before - perAxis) < 1e-6 * std::abs(perAxis)) {
                f.y1 = y1_;
                f.total += perAxis * width();
                return;
            }
        }
        last_[{a, b}] = facings_.size();
        facings_.push_back({a, b, y0_, y1_, perAxis * width()});
    }

    Scene& scene_;
    std::vector<Facing>& facings_;
    std::map<std::pair<Body, Body>, std::size_t> last_;
    std::vector<std::vector<Column>> legs_;  // columns of each leg in this stretch
    double y0_ = 0, y1_ = 0;
    bool inside_ = true;
};

}  // namespace

bool addRadialFacings(Scene& scene, std::vector<Facing>& facings) {
    return Radial(scene, facings).run();
}

}  // namespace field
