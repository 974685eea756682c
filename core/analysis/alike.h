// SPDX-License-Identifier: GPL-3.0-or-later
// Many designs that differ from one in sizes and materials alone: of each only what is promised is computed.
#pragma once

#include <array>
#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "analysis/answer.h"

namespace analysis {

/// One number that is told of each design.
struct Column {
    std::string name;  ///< figure as in an answer to the first hook-up: "dcr.P", "low_3dB@parallel"; a mask's trace
    std::string text;  ///< the promise in words; "" for a figure that is only looked at
    std::string unit;
    int promise = -1;  ///< index into the brief's promises, or its masks; -1: not promised
    bool mask = false;
    std::optional<double> nominal;  ///< of a mask: its margin; nothing: does not occur
    bool operator==(const Column&) const = default;
};

/// What is told besides the promises.
struct Wanted {
    std::vector<std::string> figures;  ///< names as above
    std::vector<double> response;      ///< Hz, rising: the first hook-up's response there; empty: none
    bool operator==(const Wanted&) const = default;
};

/// What one of the designs was found to be.
struct Found {
    std::vector<double> values;       ///< a column each; a mask's is its margin; not a number: does not occur
    std::vector<Standing> standings;  ///< a column each; Unknown where nothing is promised
    std::vector<double> response;     ///< dB at the observed port re 1 kHz, as `Wanted::response`
    bool operator==(const Found&) const = default;
};

class Pipeline;

/// Knows the one design's layers, and which families of figures make what is promised.
class Alike {
public:
    /// `nominal` is a checked design; `shop` must outlive this. Throws units::BadInput for a figure that is none.
    Alike(const design::Design& nominal, const catalog::Catalog& shop, Wanted wanted);
    ~Alike();
    Alike(const Alike&) = delete;
    Alike& operator=(const Alike&) = delete;
    /// In the calling thread alone; many threads may ask at once. Layers that are as many as the nominal's are cut into
    /// as many pieces, so that figures do not jump. Stopped, the result means nothing.
    [[nodiscard]] Found found(const design::Design& design, const std::stop_token& stop = {}) const;
    /// Designs for each of some numbers: a step and half a step below the nominal, half a step and a step above, the
    /// rest as in the nominal.
    using Sides = std::array<design::DesignPtr, 4>;
    /// Lets `quickly` compute by expansion about the nominal. False where that is not to be had: a promise that needs
    /// fields, distortion or a phantom supply, or sides whose layers are not those of the nominal.
    bool expand(const std::vector<Sides>& sides, const std::stop_token& stop = {});
    /// The same as `found`, its fields by a parabola to either side in each number, without products of two: `design`
    /// stands `steps` away from the nominal, a step a number. Its core, connections and coil are its own.
    [[nodiscard]] Found quickly(const design::Design& design, const std::vector<double>& steps,
                                const std::stop_token& stop = {}) const;
    /// Promises in the brief's order, its masks, then the other figures.
    [[nodiscard]] const std::vector<Column>& columns() const noexcept;
    /// The nominal design laid out.
    [[nodiscard]] const coil::CoilBuild& build() const noexcept;

private:
    struct Known;
    struct Quick;
    [[nodiscard]] Found told(const design::Design& design, Pipeline& pipeline) const;
    std::unique_ptr<const Known> known_;
    std::unique_ptr<const Quick> quick_;
};

}  // namespace analysis
