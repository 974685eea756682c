// SPDX-License-Identifier: GPL-3.0-or-later
// A winding machine as a replay needs to know it. Read from the same description as the program's writer reads, by
// code of its own: a mistake in either shows as a difference.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace replay {

/// An axis moved to positions.
struct Travel {
    char letter = 0;
    int decimals = 3;
    double low = 0, high = 0;  ///< m
    double speed = 0;          ///< m/s
};

/// A reason to stop.
struct Reason {
    std::string name;  ///< "paper", "shield", "tap", "pin", "wire", "lead", "splice", "foil"
    int number = 0;
    std::string word;
    double seconds = 0;
};

/// Letters are 0, codes -1, where the machine has no such thing.
struct Machine {
    std::string title;
    int spindles = 1, mostBlocks = 0;
    bool inches = false, point = true;
    char turnsLetter = 0;
    int turnsDecimals = 1;
    bool turnsRun = false;  ///< the count goes on from the main block
    char speedLetter = 0;
    double lowestRpm = 0, highestRpm = 0;
    double acceleration = 0;  ///< turns/s2
    double wireSpeed = 0;     ///< m/s
    std::optional<Travel> traverse, depth, cross;
    char pitchLetter = 0;
    int pitchDecimals = 4;
    char tensionLetter = 0;
    double tensionLow = 0, tensionHigh = 0;  ///< N
    char reasonLetter = 0;
    std::string messageWord;
    std::vector<Reason> reasons;
    int wrapCode = -1, wraps = 0;
    char wrapLetter = 0;
    double wrapSeconds = 0;
    int rapid = 0, wind = 33, inch = 70, metric = 71, absolute = 90;
    int stop = 0, clockwise = 3, counterclockwise = 4, spindleStop = 5, end = 30;
    double clearance = 0.005, thinWire = 6e-5;  ///< m
    double loadSeconds = 60, shiftHours = 8;
};

/// Throws units::BadInput for text that is not JSON, or where something needed is missing or of the wrong type.
[[nodiscard]] Machine readMachine(const std::string& text, const std::string& file);

}  // namespace replay
