#pragma once
/// @file
/// Linear systems whose matrix is sparse, of symmetric pattern, and outweighed by its diagonal: elimination in the
/// given order without exchange of rows.

#include <algorithm>
#include <cstddef>
#include <memory>
#include <span>
#include <utility>
#include <vector>

namespace weldloop::solve {

/// A sparse matrix, its pattern and fill found once, its numbers set and eliminated as often as needed.
///
/// The order of the unknowns is the order of elimination: number the ends of branches first and a chain along its way,
/// and nothing fills. Time and memory are then linear in the unknowns. No rows are exchanged: for matrices whose pivots
/// stay away from zero, such as those of heat networks (a positive diagonal not less than the rest of its row or
/// column).
class sparse_lu {
public:
    using index = std::size_t;  ///< of an unknown

    sparse_lu() = default;  ///< of no unknowns

    /// @param size number of unknowns @param pairs unknowns that see each other, in any order, repeated or not
    sparse_lu(index size, const std::vector<std::pair<index, index>>& pairs)
    {
        std::vector<std::vector<index>> later(size);
        for (auto [a, b] : pairs)
            if (a != b) later[std::min(a, b)].push_back(std::max(a, b));
        layout made;
        made.size = size;
        made.column.resize(size);
        for (index k = 0; k < size; ++k) {
            std::vector<index>& own = later[k];
            std::sort(own.begin(), own.end());
            own.erase(std::unique(own.begin(), own.end()), own.end());
            made.column[k] = own.empty() ? k : own.front();
            if (own.empty()) continue;
            std::vector<index>& next = later[own.front()];  // sees all that k saw
            next.insert(next.end(), own.begin() + 1, own.end());
        }
        for (index k = 0; k < size; ++k)
            for (index p = 1; p < later[k].size(); ++p) {
                made.row.push_back(k);
                made.column.push_back(later[k][p]);
            }
        for (index k = 0; k < size; ++k)
            if (later[k].size() > 1)
                for (const index p : later[k])
                    for (const index q : later[k]) made.target.push_back(made.slot(p, q));
        values_.assign(size + 2 * made.column.size(), 0.0);
        layout_ = std::make_shared<const layout>(std::move(made));
    }

    [[nodiscard]] index size() const { return layout_ ? layout_->size : 0; }  ///< number of unknowns
    /// How many pairs see each other or come to by elimination.
    [[nodiscard]] index pairs() const
    {
        if (!layout_) return 0;
        index out = layout_->column.size();
        for (index k = 0; k < size(); ++k)
            if (layout_->column[k] == k) --out;
        return out;
    }

    /// Where the number of a row and column stands in values(); both must see each other. The diagonal stands first.
    [[nodiscard]] index slot(index row, index column) const { return layout_->slot(row, column); }

    /// The matrix, to be set before eliminate(), which overwrites it.
    [[nodiscard]] std::span<double> values() { return values_; }

    /// Eliminates. False where a pivot is not above zero: the matrix is no stable balance.
    [[nodiscard]] bool eliminate()
    {
        const layout& l = *layout_;
        double* const diagonal = values_.data();
        double* const upper = diagonal + l.size;
        double* const lower = upper + l.column.size();
        bool stable = true;
        const index* target = l.target.data();
        index extra = 0;
        for (index k = 0; k < l.size; ++k) {
            stable = stable && diagonal[k] > 0.0;
            const double pivot = diagonal[k] = 1.0 / diagonal[k];
            lower[k] *= pivot;
            if (extra == l.row.size() || l.row[extra] != k) {
                if (l.column[k] != k) diagonal[l.column[k]] -= lower[k] * upper[k];
                continue;
            }
            const index first = extra;
            while (extra < l.row.size() && l.row[extra] == k) lower[l.size + extra++] *= pivot;
            for (index p = first; p <= extra; ++p)  // the first of the row, then the others
                for (index q = first; q <= extra; ++q)
                    values_[*target++] -=
                        lower[p == first ? k : l.size + p - 1] * upper[q == first ? k : l.size + q - 1];
        }
        return stable;
    }

    /// Solves in place for one right-hand side.
    void solve(std::span<double> right) const
    {
        const layout& l = *layout_;
        const double* const pivot = values_.data();
        const double* const upper = pivot + l.size;
        const double* const lower = upper + l.column.size();
        const index* const column = l.column.data();
        double* const x = right.data();
        index k = 0;
        for (index e = 0; e < l.row.size(); ++e) {
            for (; k <= l.row[e]; ++k) x[column[k]] -= lower[k] * x[k];
            x[column[l.size + e]] -= lower[l.size + e] * x[l.row[e]];
        }
        for (; k < l.size; ++k) x[column[k]] -= lower[k] * x[k];
        for (index e = l.row.size(); e-- > 0;) {
            for (; k > l.row[e] + 1; --k) x[k - 1] = (x[k - 1] - upper[k - 1] * x[column[k - 1]]) * pivot[k - 1];
            x[l.row[e]] -= upper[l.size + e] * x[column[l.size + e]];
        }
        for (; k > 0; --k) x[k - 1] = (x[k - 1] - upper[k - 1] * x[column[k - 1]]) * pivot[k - 1];
    }

private:
    // Every unknown has a first later one it sees; the last of a tree has itself, by nothing. What else it sees, the
    // extras, follow in the order of their rows.
    struct layout {
        index size = 0;
        std::vector<index> column;  // first of every row, then of the extras
        std::vector<index> row;     // of the extras
        std::vector<index> target;  // of rows with extras: slots of what they see among each other

        [[nodiscard]] index slot(index a, index b) const
        {
            if (a == b) return a;
            const index low = std::min(a, b), high = std::max(a, b);
            index at = low;
            if (column[low] != high) {
                at = size + static_cast<index>(std::lower_bound(row.begin(), row.end(), low) - row.begin());
                while (column[at] != high) ++at;
            }
            return size + (a < b ? at : column.size() + at);
        }
    };

    std::shared_ptr<const layout> layout_;
    std::vector<double> values_;
};

}  // namespace weldloop::solve
