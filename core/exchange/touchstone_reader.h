// SPDX-License-Identifier: GPL-3.0-or-later
// A Touchstone file of whatever instrument or program, read.
#pragma once

#include <string>
#include <string_view>

#include "measured/network_data.h"

namespace exchange {

inline constexpr int mostMeasuredPorts = 32;
inline constexpr std::size_t mostMeasuredFrequencies = 200000;

/// Reads version 1.0 and 1.1 (a resistance for each port behind R), and 2.0 and 2.1 (Touchstone File Format
/// Specification, IBIS Open Forum, 2002 to 2024; seen as the examples and a digest of 2.0, the rest from memory).
///
/// Option line in any order, S Y Z H G, MA DB RI, Hz to GHz; missing words are GHz S MA R 50; further option lines are
/// passed over. Lines wrap wherever they will: matrices are told apart by their count of numbers. Version 1 knows its
/// number of ports from the ending of `file`, `.sNp`; another ending takes it from the first line's numbers: 3 or 9,
/// else the pairs of a first line are a row. Two ports in version 1 stand as 11 21 12 22; parameters other than S are
/// multiplied by their reference there, and are as they stand in version 2. Data of noise and of mixed modes: the
/// former is passed over with a remark, the latter refused. Throws units::BadInput with its line.
[[nodiscard]] measured::NetworkData readTouchstone(std::string_view text, const std::string& file);

}  // namespace exchange
