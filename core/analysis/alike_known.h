// SPDX-License-Identifier: GPL-3.0-or-later
// What is known of designs that are alike; for the two sources of `Alike`.
#pragma once

#include "analysis/alike.h"
#include "analysis/stages.h"
#include "network/expanded.h"

namespace analysis {

/// A hook-up of which something is told, and the families that make it.
struct Asked {
    std::size_t hookUp = 0;  ///< index in the design
    std::vector<std::size_t> families;
    bool masks = false;
};

struct Alike::Known {
    const catalog::Catalog& shop;
    Wanted wanted;
    std::vector<Column> columns;
    std::vector<std::size_t> designFamilies;
    std::vector<Asked> asked;
    std::shared_ptr<const Answer::Stages> nominal;
    double from = lowestFrequency, to = highestFrequency;  ///< Hz, what figures of designs near the nominal ask for

    void takeRange(const Answer& answer);
    [[nodiscard]] Answer answerTo(const design::Design& design, Pipeline& pipeline,
                                  std::vector<double>* response) const;
    [[nodiscard]] std::vector<PromiseState> states(const design::Design& design, Pipeline& pipeline,
                                                   const Answer& answer) const;
    [[nodiscard]] std::shared_ptr<const Trace> maskTrace(const design::Design& design, Pipeline& pipeline,
                                                         const design::Mask& mask, const design::HookUp& hookUp) const;
};

/// The expanded networks, a hook-up that is asked for each.
struct Alike::Quick {
    struct One {
        network::Expanded network;
        network::Circuit circuit;                 // the nominal's, without what an expanded one does not read
        std::vector<std::ptrdiff_t> layerOfTerm;  // whose wire a term is of; -1: none
    };
    std::vector<One> hookUps;
};

}  // namespace analysis
