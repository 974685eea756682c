// SPDX-License-Identifier: GPL-3.0-or-later
#include "seek/least.h"

#include <nlopt.h>

#include <algorithm>
#include <cmath>
#include <exception>
#include <memory>

namespace seek {

namespace {

constexpr double kept = 1e-6;

/// The library asks for value and constraints of one place one after the other; they are computed once. It works in
/// shares of each number's range.
class Asked {
public:
    Asked(const Problem& problem, const std::stop_token& stop) : problem_(problem), stop_(stop) {}

    void go(nlopt_opt search) {
        search_ = search;
        const auto n = static_cast<unsigned>(problem_.start.size());
        std::vector<double> x(n), zero(n, 0), one(n, 1), step(n, problem_.step), none(problem_.constraints, 0);
        for (unsigned k = 0; k < n; ++k)
            x[k] = (problem_.start[k] - problem_.low[k]) / (problem_.high[k] - problem_.low[k]);
        nlopt_set_lower_bounds(search, zero.data());
        nlopt_set_upper_bounds(search, one.data());
        nlopt_set_initial_step(search, step.data());
        nlopt_set_maxeval(search, problem_.evaluations);
        nlopt_set_xtol_abs1(search, problem_.tolerance);
        nlopt_set_min_objective(search, valueAt, this);
        if (problem_.constraints > 0)
            nlopt_add_inequality_mconstraint(search, static_cast<unsigned>(problem_.constraints), constraintsAt, this,
                                             none.data());
        double value = 0;
        nlopt_optimize(search, x.data(), &value);
        if (failure_) std::rethrow_exception(failure_);
    }
    [[nodiscard]] const Least& best() const { return best_; }

private:
    void compute(unsigned n, const double* x) {
        if (!last_.empty() && std::equal(last_.begin(), last_.end(), x)) return;
        last_.assign(x, x + n);
        std::vector<double> at(n);
        for (unsigned k = 0; k < n; ++k)
            at[k] = problem_.low[k] + std::clamp(x[k], 0.0, 1.0) * (problem_.high[k] - problem_.low[k]);
        constraints_.assign(problem_.constraints, 0);
        // Nothing may be thrown through the library.
        try {
            value_ = problem_.value(at, constraints_);
        } catch (...) {
            failure_ = std::current_exception();
            nlopt_force_stop(search_);
            return;
        }
        ++best_.evaluations;
        double broken = 0;
        for (const double c : constraints_) broken += std::max(0.0, c);
        const bool first = best_.at.empty();
        const bool better = broken <= kept ? best_.broken > kept || value_ < best_.value : broken < best_.broken;
        if (first || better) best_ = {std::move(at), value_, broken, best_.evaluations};
        if (stop_.stop_requested()) nlopt_force_stop(search_);
    }
    static double valueAt(unsigned n, const double* x, double*, void* self) {
        auto& asked = *static_cast<Asked*>(self);
        asked.compute(n, x);
        return asked.value_;
    }
    static void constraintsAt(unsigned m, double* result, unsigned n, const double* x, double*, void* self) {
        auto& asked = *static_cast<Asked*>(self);
        asked.compute(n, x);
        std::copy_n(asked.constraints_.begin(), m, result);
    }

    const Problem& problem_;
    const std::stop_token& stop_;
    nlopt_opt search_ = nullptr;
    std::vector<double> last_, constraints_;
    double value_ = 0;
    Least best_;
    std::exception_ptr failure_;
};

}  // namespace

Least least(const Problem& problem, const std::stop_token& stop) {
    const std::unique_ptr<nlopt_opt_s, void (*)(nlopt_opt)> search(
        nlopt_create(NLOPT_LN_COBYLA, static_cast<unsigned>(problem.start.size())), nlopt_destroy);
    Asked asked(problem, stop);
    asked.go(search.get());
    return asked.best();
}

}  // namespace seek
