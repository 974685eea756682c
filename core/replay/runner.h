// SPDX-License-Identifier: GPL-3.0-or-later
// The machine's state while a program runs, a block after the other.
#pragma once

#include "replay/run.h"

namespace replay {

class Runner {
public:
    Runner(const Machine& machine, const std::string& file) : m_(machine), file_(file) {}
    void take(const Block& block);
    /// Times the stretches and adds what can be said at the end only.
    [[nodiscard]] Run finish();

private:
    /// What a block asks for, sorted by letter.
    struct Asked {
        bool rapid = false, wind = false, stop = false, end = false, wrap = false;
        int sense = 0;  ///< 0: nothing said; 2: stands
        double turns = unknown, pitch = unknown, rpm = unknown, tension = unknown;
        Guide place;
        int reason = -1, wraps = 0;
    };
    [[nodiscard]] Asked sorted(const Block& block);
    void function(const Word& word, int line, Asked& asked);
    void setting(const Word& word, int line, Asked& asked);
    [[nodiscard]] double placed(const Word& word, int decimals) const;
    [[nodiscard]] double metres(const Word& word, int decimals) const;
    void remark(int line, std::string words) { run_.remarks.push_back({line, std::move(words)}); }
    void within(const std::optional<Travel>& axis, const char* name, double at, int line);
    void go(const Asked& asked, int line);
    void wind(const Asked& asked, int line);
    void checkPitch(const Stretch& stretch, double pitch);
    void halt(const Block& block, const Asked& asked);
    void wrap(const Asked& asked, int line);
    void time();

    const Machine& m_;
    const std::string& file_;
    Run run_;
    Guide guide_;
    double count_ = 0, rpm_ = 0;
    int step_ = -1, sense_ = 0;
    bool stands_ = true, ended_ = false, unitSaid_ = false, winding_ = false, rapid_ = false;
};

}  // namespace replay
