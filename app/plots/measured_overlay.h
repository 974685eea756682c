// SPDX-License-Identifier: GPL-3.0-or-later
// Measured curves laid over computed ones.
#pragma once

#include <QString>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "measured/measured_curve.h"

namespace plots {

/// One measured curve and the computed one that it belongs to.
struct MeasuredOverlay {
    measured::MeasuredCurve curve;
    std::string trace, column;         ///< "response", "magnitude_dB"
    std::optional<double> relativeTo;  ///< Hz, where a level that was not measured against the EMF is made to agree
    QString file;
};

/// Shared by all plots.
using OverlaysPtr = std::shared_ptr<const std::vector<MeasuredOverlay>>;

}  // namespace plots
