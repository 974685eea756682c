// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/loops.h"

#include <vector>

namespace network {

namespace {

/// A forest over earth and all nodes.
class Forest {
public:
    explicit Forest(const Circuit& circuit)
        : places_(static_cast<std::size_t>(circuit.capacitance.rows()) + 1), touching_(places_.size()) {
        branches_ = circuit.windingBranches;
        for (const auto& lumped : circuit.lumped) branches_.push_back(lumped.ends);
        inTree_.resize(branches_.size(), 0);
        capacitance_.resize(places_.size(), 0);
        for (std::size_t k = 1; k < places_.size(); ++k) {
            const auto node = static_cast<Eigen::Index>(k) - 1;
            capacitance_[k] = std::abs(circuit.capacitance(node, node));
        }
        for (std::size_t k = 0; k < branches_.size(); ++k)
            for (const int end : {branches_[k].from, branches_[k].to}) touching_[index(end)].push_back(k);
        for (std::size_t root = 0; root < places_.size(); ++root)
            if (!places_[root].reached) grow(root);
    }

    LoopsAndTree columns() const {
        std::vector<Eigen::Triplet<double>> entries;
        const auto put = [&](std::size_t branch, Eigen::Index column, double value) {
            entries.emplace_back(static_cast<Eigen::Index>(branch), column, value);
        };
        Eigen::Index column = 0;
        for (std::size_t k = 0; k < branches_.size(); ++k) {
            if (inTree_[k] != 0) continue;
            put(k, column, 1);
            // Back from its end to its beginning through the tree.
            std::size_t from = index(branches_[k].to), to = index(branches_[k].from);
            while (from != to) {
                const bool ahead = places_[from].depth >= places_[to].depth;
                std::size_t& at = ahead ? from : to;
                const std::size_t by = places_[at].by;
                const bool alongBranch = index(branches_[by].from) == at;  // towards the root
                put(by, column, ahead == alongBranch ? 1 : -1);
                at = places_[at].parent;
            }
            ++column;
        }
        LoopsAndTree made{{}, column};
        for (std::size_t place = 0; place < places_.size(); ++place) {
            if (places_[place].depth == 0) continue;
            // Through places of next to no capacitance, whose potential would drown this one's in rounding.
            std::size_t at = place;
            do {
                put(places_[at].by, column, index(branches_[places_[at].by].to) == at ? 1 : -1);
                at = places_[at].parent;
            } while (places_[at].depth > 0 && capacitance_[at] < faint * capacitance_[place]);
            ++column;
        }
        made.columns.resize(column, column);
        made.columns.setFromTriplets(entries.begin(), entries.end());
        return made;
    }

private:
    struct Place {
        bool reached = false;
        std::size_t parent = 0, by = 0;  ///< place and branch towards the root
        int depth = 0;
    };
    static std::size_t index(int node) { return static_cast<std::size_t>(node - earth); }

    void grow(std::size_t root) {
        places_[root].reached = true;
        std::vector<std::size_t> open{root};
        for (std::size_t next = 0; next < open.size(); ++next) {
            const std::size_t at = open[next];
            for (const std::size_t k : touching_[at]) {
                const std::size_t one = index(branches_[k].from), other = one == at ? index(branches_[k].to) : one;
                if (places_[other].reached) continue;
                places_[other] = {true, at, k, places_[at].depth + 1};
                inTree_[k] = 1;
                open.push_back(other);
            }
        }
    }

    static constexpr double faint = 1e-5;  // of another place's capacitance
    std::vector<BranchEnds> branches_;
    std::vector<double> capacitance_;  // of each place, F; nothing for earth
    std::vector<Place> places_;
    std::vector<std::vector<std::size_t>> touching_;  // branches at each place
    std::vector<char> inTree_;
};

}  // namespace

LoopsAndTree loopsAndTree(const Circuit& circuit) {
    return Forest(circuit).columns();
}

Matrix congruent(const Eigen::SparseMatrix<double>& q, const Matrix& m) {
    using Entry = Eigen::SparseMatrix<double>::InnerIterator;
    Matrix right = Matrix::Zero(m.rows(), q.cols());
    for (Eigen::Index c = 0; c < q.cols(); ++c)
        for (Entry e(q, c); e && e.row() < m.cols(); ++e) right.col(c) += e.value() * m.col(e.row());
    Matrix all(q.cols(), q.cols());
    for (Eigen::Index c = 0; c < q.cols(); ++c)
        for (Eigen::Index r = c; r < q.cols(); ++r) {
            double sum = 0;
            for (Entry e(q, r); e && e.row() < m.rows(); ++e) sum += e.value() * right(e.row(), c);
            all(r, c) = all(c, r) = sum;
        }
    return all;
}

}  // namespace network
