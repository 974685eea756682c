// SPDX-License-Identifier: GPL-3.0-or-later
// The root of many equations at once, as harmonic balance asks for it.
#pragma once

#include <Eigen/LU>
#include <functional>
#include <utility>
#include <vector>

namespace analysis {

/// The inverse of slopes, bettered after each step by what it has taught (C. G. Broyden, Math. Comp. 19, 1965, from
/// memory), each correction of rank one kept as a factor.
class BetteredInverse {
public:
    using Solver = std::function<Eigen::VectorXd(const Eigen::VectorXd&)>;
    /// `solver` divides by slopes.
    explicit BetteredInverse(Solver solver) : solver_(std::move(solver)) {}
    explicit BetteredInverse(const Eigen::MatrixXd& slopes)
        : solver_([lu = Eigen::PartialPivLU<Eigen::MatrixXd>(slopes)](const Eigen::VectorXd& rest) -> Eigen::VectorXd {
              return lu.solve(rest);
          }) {}
    [[nodiscard]] Eigen::VectorXd times(const Eigen::VectorXd& rest) const {
        Eigen::VectorXd x = solver_(rest);
        for (const auto& [correction, step] : learned_) x += correction * step.dot(x);
        return x;
    }
    void learn(const Eigen::VectorXd& step, const Eigen::VectorXd& change) {
        const Eigen::VectorXd lag = times(change);
        const double share = step.dot(lag);
        if (share > 1e-12 * step.squaredNorm()) learned_.emplace_back((step - lag) / share, step);
    }
    [[nodiscard]] bool fresh() const noexcept { return learned_.empty(); }

private:
    Solver solver_;
    std::vector<std::pair<Eigen::VectorXd, Eigen::VectorXd>> learned_;
};

/// When a search for a root ends.
struct SearchEnd {
    double enough = 0;    ///< what the equations may lack
    int mostRounds = 60;  ///< states looked at, about
    int mostIdle = 60;    ///< steps in a row that gain less than a tenth
};

/// Newton's method from `x`, with fresh slopes only where bettered ones do not halve what the equations lack, and
/// shorter steps where they lengthen it. `stateAt(x)` has `rest`, the lack, and `off`, its size; `slopesAt(state)` is
/// the matrix of rest against x; `firstInverse(state)` divides by them or by something like them. Returns the last
/// state; `x` goes with it, `rounds` counts states.
template <class StateAt, class SlopesAt, class FirstInverse>
auto balanced(Eigen::VectorXd& x, const SearchEnd& end, int& rounds, const StateAt& stateAt, const SlopesAt& slopesAt,
              const FirstInverse& firstInverse) {
    auto now = stateAt(x);
    rounds = 1;
    if (now.off <= end.enough) return now;
    BetteredInverse inverse(firstInverse(now));
    bool first = true;
    int idle = 0;
    while (now.off > end.enough && rounds < end.mostRounds && idle < end.mostIdle) {
        Eigen::VectorXd step = -inverse.times(now.rest);
        auto next = stateAt(x + step);
        ++rounds;
        if (next.off > 0.5 * now.off && (first || !inverse.fresh())) {
            inverse = BetteredInverse(slopesAt(now));
            first = false;
            step = -inverse.times(now.rest);
            next = stateAt(x + step);
            ++rounds;
        }
        for (int halved = 0; next.off > now.off && halved < 6; ++halved, ++rounds) {
            step /= 2;
            next = stateAt(x + step);
        }
        inverse.learn(step, next.rest - now.rest);
        idle = next.off > 0.9 * now.off ? idle + 1 : 0;
        x += step;
        now = std::move(next);
    }
    return now;
}

}  // namespace analysis
