// SPDX-License-Identifier: GPL-3.0-or-later
// Winds one chamber: a cursor walks outward from the bobbin wall, item by item.
#pragma once

#include <string>
#include <vector>

#include "coil/coil_build.h"
#include "coil/winding_steps.h"

namespace coil {

/// Lays the items of one place of the design into the build, in order.
class ChamberWinder {
public:
    ChamberWinder(const design::Design& design, const catalog::Catalog& shop, CoilBuild& build, int placeIndex);
    /// `room`: from the bobbin wall outward, between the flanges. Adds layers, foils, sheets and the chamber's fill.
    void wind(const Box& room);

private:
    /// One wire of a hand: a section and how far it has got.
    struct Strand {
        const design::Section* section = nullptr;
        const design::Winding* winding = nullptr;
        Conductor conductor;
        double overallMaximum = 0;
        double done = 0;
        std::vector<TapPoint> taps;
        design::ItemIndex item;
    };
    /// What all layers of a hand have in common.
    struct LayerPlan {
        AxialRoom room;
        int perLayer = 1;
        double step = 0, stepMaximum = 0;  ///< radial room of a layer
        bool nested = false;
    };

    [[nodiscard]] AxialRoom roomBetween(double marginLow, double marginHigh) const;
    [[nodiscard]] double turnAt(double x) const;
    void problem(std::string text) { fill_.problems.push_back(std::move(text)); }
    void lay(const design::Ply& ply, const char* what);
    void lay(const design::Shield& shield);
    [[nodiscard]] Strand strandOf(std::size_t item) const;
    std::size_t layHand(std::size_t item);
    [[nodiscard]] LayerPlan planOf(const std::vector<Strand>& hand, const AxialRoom& room);
    void layLayers(std::vector<Strand>& hand, const LayerPlan& plan);
    void layPieces(Strand& strand, const LayerPlan& plan, design::End begins, int number, double x0);
    [[nodiscard]] LayerPlan randomPlan(const std::vector<Strand>& hand, const AxialRoom& room) const;
    [[nodiscard]] Layer layerOf(const Strand& strand, int number) const;
    void finish(Layer& layer, const design::Winding& winding);
    void close();

    const design::Design& design_;
    const catalog::Catalog& shop_;
    CoilBuild& build_;
    const design::Place& place_;
    design::ItemIndex index_;
    ChamberFill fill_;
    double cursor_ = 0;
    double shielded_ = 0;      // outer face of the last shield, or the bobbin's wall
    double extraMaximum_ = 0;  // what the wire's greatest overall diameter would add
    double area_ = 0;
};

}  // namespace coil
