// SPDX-License-Identifier: GPL-3.0-or-later
// Two answers line by line: figures with their difference, and the difference of their responses as a trace.
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "analysis/answer.h"

namespace compare {

/// One figure in both designs; null where a design does not have it.
struct FigurePair {
    const units::Figure* a = nullptr;
    const units::Figure* b = nullptr;
    [[nodiscard]] const units::Figure& any() const { return a ? *a : *b; }
};
/// All figures of both, in the order of `a`, then those of `b` alone.
[[nodiscard]] std::vector<FigurePair> paired(const analysis::Answer& a, const analysis::Answer& b);

/// B less A: "+3.1 kΩ, +8 %"; in dB "+0.4 dB"; "0" where they are the same; "" where one is missing.
[[nodiscard]] QString differenceText(const FigurePair& pair);

/// The trace of that name in B less that in A, curve by curve, for curves that both have. Null where there are none
/// or the frequencies differ.
[[nodiscard]] std::shared_ptr<const analysis::Trace> differenceTrace(const analysis::Answer& a,
                                                                     const analysis::Answer& b,
                                                                     const std::string& name);

class PairFigures : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { Name, A, B, Difference, HookUp, columns };
    using QAbstractTableModel::QAbstractTableModel;
    void show(analysis::AnswerPtr a, analysis::AnswerPtr b);
    [[nodiscard]] const std::vector<FigurePair>& pairs() const { return pairs_; }
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    [[nodiscard]] QString text(const FigurePair& pair, int column) const;
    analysis::AnswerPtr a_, b_;  ///< own what `pairs_` points at
    std::vector<FigurePair> pairs_;
};

}  // namespace compare
