// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/trace_csv.h"

#include <cmath>

#include "units/csv_cell.h"
#include "units/text.h"

namespace plots {

using units::csvCell;

std::string traceCsv(const analysis::Trace& trace) {
    std::string text = csvCell(trace.axis.name);
    for (const analysis::Curve& curve : trace.curves) text += ',' + csvCell(curve.name);
    text += '\n';
    for (std::size_t i = 0; i < trace.frequency.size(); ++i) {
        text += units::shortest(trace.frequency[i]);
        for (const analysis::Curve& curve : trace.curves) {
            text += ',';
            if (i < curve.words.size())
                text += csvCell(curve.words[i]);
            else if (i < curve.y.size())
                text += csvCell(curve.y[i]);
        }
        text += '\n';
    }
    return text;
}

std::string distortionCsv(const std::vector<analysis::DistortionRow>& rows) {
    std::string text = "frequency_Hz,level_dBu,thd_percent,h2_dB,h3_dB,h4_dB,h5_dB,h6_dB,h7_dB\n";
    for (const analysis::DistortionRow& row : rows) {
        text += units::shortest(row.frequency) + ',' + csvCell(row.level) + ',' + csvCell(100 * row.thd);
        for (const double harmonic : row.harmonics) text += ',' + csvCell(harmonic);
        text += '\n';
    }
    return text;
}

}  // namespace plots
