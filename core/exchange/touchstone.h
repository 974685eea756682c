// SPDX-License-Identifier: GPL-3.0-or-later
// A unit's scattering parameters as a Touchstone file.
#pragma once

#include <string>

#include "analysis/answer.h"

namespace exchange {

/// Scattering parameters of the answer's hook-up, 50 ohm, 10 Hz to 1 MHz at 40 points a decade, in real and imaginary
/// parts, as text for a file called `fileName`. An outside file: it says what terminals do and nothing of the coil.
///
/// The hook-up's straps and earths are made; what it hangs on its ports is taken away. Each of its ports is one port of
/// the file, plus against minus; a balanced one is two, plus against earth and minus against earth, from which both its
/// differential and its common mode follow. S_ij = 2 v_i / e_j - (i = j) with e_j behind 50 ohm in port j and 50 ohm at
/// all others (K. Kurokawa, IEEE Trans. MTT 13 (1965) 194, from memory).
///
/// Syntax by the name's ending: `.sNp` is version 1.1 with N ports, `.ts` version 2.0 (Touchstone File Format
/// Specification, EIA/IBIS Open Forum, 2002 and 2009, from memory): two ports in the order 11 21 12 22, more row by
/// row, at most four pairs a line. Throws units::BadInput if the name ends otherwise or N is not the number of ports.
[[nodiscard]] std::string touchstone(const design::Design& design, const analysis::Answer& answer,
                                     const std::string& fileName);

}  // namespace exchange
