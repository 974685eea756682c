// SPDX-License-Identifier: GPL-3.0-or-later
// What papers are made of, as the command line names it.
#pragma once

#include "commands/arguments.h"
#include "commands/verb.h"
#include "papers/paper_kinds.h"

namespace commands {

/// Computes once what several papers need, and only what they need.
class PaperSource {
public:
    /// Throws units::BadInput for an option that cannot be: language, measures, hook-up, yield.
    PaperSource(const Arguments& arguments, const Opened& opened, papers::Format format);
    PaperSource(const PaperSource&) = delete;
    PaperSource& operator=(const PaperSource&) = delete;
    /// Throws units::BadInput for a file that cannot be read.
    [[nodiscard]] const papers::Source& of(const papers::PaperKind& kind);

private:
    [[nodiscard]] papers::Before before() const;

    const Arguments& arguments_;
    const Opened& opened_;
    std::string hookUp_;
    std::uint64_t units_ = 0;  ///< for the predicted yield; 0: not asked for
    analysis::AnswerPtr answer_;
    papers::Source source_;
    bool priced_ = false;
};

}  // namespace commands
