#pragma once
/// @file
/// Linear systems whose matrix is sparse, of symmetric pattern, and outweighed by its diagonal: elimination in the
/// given order without exchange of rows.

#include <algorithm>
#include <cstddef>
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
    sparse_lu(index size, const std::vector<std::pair<index, index>>& pairs) : size_(size), first_(size + 1)
    {
        std::vector<std::vector<index>> later(size);
        for (auto [a, b] : pairs)
            if (a != b) later[std::min(a, b)].push_back(std::max(a, b));
        for (index k = 0; k < size; ++k) {
            std::vector<index>& own = later[k];
            std::sort(own.begin(), own.end());
            own.erase(std::unique(own.begin(), own.end()), own.end());
            first_[k + 1] = first_[k] + own.size();
            if (own.empty()) continue;
            std::vector<index>& next = later[own.front()];  // sees all that k saw
            next.insert(next.end(), own.begin() + 1, own.end());
        }
        column_.reserve(first_[size]);
        for (const std::vector<index>& own : later) column_.insert(column_.end(), own.begin(), own.end());
        values_.assign(size + 2 * column_.size(), 0.0);
        for (index k = 0; k < size; ++k)
            for (index p = first_[k]; p < first_[k + 1]; ++p)
                for (index q = first_[k]; q < first_[k + 1]; ++q) target_.push_back(slot(column_[p], column_[q]));
        pivot_.resize(size);
    }

    [[nodiscard]] index size() const { return size_; }  ///< number of unknowns

    /// Where the number of a row and column stands in values(); both must see each other.
    [[nodiscard]] index slot(index row, index column) const
    {
        if (row == column) return row;
        const index low = std::min(row, column), high = std::max(row, column);
        const auto begin = column_.begin() + static_cast<std::ptrdiff_t>(first_[low]),
                   end = column_.begin() + static_cast<std::ptrdiff_t>(first_[low + 1]);
        const auto at = static_cast<index>(std::lower_bound(begin, end, high) - column_.begin());
        return size_ + (row < column ? at : column_.size() + at);
    }

    /// The matrix, to be set before eliminate(), which overwrites it.
    [[nodiscard]] std::span<double> values() { return values_; }

    /// Eliminates. False where a pivot is not above zero: the matrix is no stable balance.
    [[nodiscard]] bool eliminate()
    {
        bool stable = true;
        const double* const upper = values_.data() + size_;
        double* const lower = values_.data() + size_ + column_.size();
        index at = 0;
        for (index k = 0; k < size_; ++k) {
            stable = stable && values_[k] > 0.0;
            pivot_[k] = 1.0 / values_[k];
            for (index p = first_[k]; p < first_[k + 1]; ++p) {
                const double f = lower[p] *= pivot_[k];
                for (index q = first_[k]; q < first_[k + 1]; ++q) values_[target_[at++]] -= f * upper[q];
            }
        }
        return stable;
    }

    /// Solves in place for one right-hand side.
    void solve(std::span<double> x) const
    {
        const double* const upper = values_.data() + size_;
        const double* const lower = upper + column_.size();
        for (index k = 0; k < size_; ++k)
            for (index p = first_[k]; p < first_[k + 1]; ++p) x[column_[p]] -= lower[p] * x[k];
        for (index k = size_; k-- > 0;) {
            for (index p = first_[k]; p < first_[k + 1]; ++p) x[k] -= upper[p] * x[column_[p]];
            x[k] *= pivot_[k];
        }
    }

private:
    index size_ = 0;
    std::vector<index> first_, column_, target_;
    std::vector<double> values_, pivot_;
};

}  // namespace weldloop::solve
