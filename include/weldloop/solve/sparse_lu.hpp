#pragma once
/// @file
/// Linear systems whose matrix is sparse, of symmetric pattern, and outweighed by its diagonal: elimination in the
/// given order without exchange of rows.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
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
        layout made;
        index begin = 0;
        made.size = size;
        made.column.reserve(size + pairs.size());
        made.column.resize(size);
        seen_later later(size, pairs);
        std::vector<index> own;
        for (index k = 0; k < size; ++k) {
            later.take(k, own);
            const index first = own.empty() ? k : own.front(), extras = own.empty() ? 0 : own.size() - 1;
            made.column[k] = first;
            for (index p = 1; p <= extras; ++p) {
                made.row.push_back(k);
                made.column.push_back(own[p]);
                later.add(first, own[p]);  // sees all that k saw
            }
            const index shift = first - k;
            const bool goes_on = !made.stretches.empty() && made.stretches.back().shift == shift && shift > 0 &&
                                 made.stretches.back().extras == 0 && (shift == 1 || k - begin < shift);
            if (!goes_on) {
                made.stretches.push_back({k, shift, 0});
                begin = k;
            }
            if (!own.empty()) made.span = std::max(made.span, own.back() - k);
            made.stretches.back().end = k + 1;
            made.stretches.back().extras = extras;
        }
        for (index extra = 0; extra < made.row.size();) {  // row by row, once all places are known
            const index k = made.row[extra];
            own.assign(1, made.column[k]);
            for (; extra < made.row.size() && made.row[extra] == k; ++extra) own.push_back(made.column[size + extra]);
            for (const index p : own)
                for (const index q : own) made.target.push_back(made.slot(p, q));
        }
        made.runs = runs_of(made.stretches, size);
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

    /// The matrix [unit of the equations], to be set before eliminate(), which overwrites it.
    [[nodiscard]] std::span<double> values() { return values_; }

    /// Eliminates. False where a pivot is not above zero: the matrix is no stable balance.
    [[nodiscard]] bool eliminate()
    {
        const layout& l = *layout_;
        double* const diagonal = values_.data();
        double* const upper = diagonal + l.size;
        double* const lower = upper + l.column.size();
        const index* target = l.target.data();
        index extra = 0, k = 0;
        for (const stretch& s : l.stretches) {
            const index plain = s.end - (s.extras > 0 ? 1 : 0);
            if (s.shift >= plain - k)
                eliminate_apart(diagonal + k, diagonal + k + s.shift, upper + k, lower + k, plain - k);
            else
                for (index i = k; i < plain; ++i)
                    eliminate_apart(diagonal + i, diagonal + i + s.shift, upper + i, lower + i, 1);
            k = s.end;
            if (s.extras == 0) continue;
            const index row = plain, first = extra;
            const double pivot = diagonal[row] = 1.0 / diagonal[row];
            lower[row] *= pivot;
            for (; extra < first + s.extras; ++extra) lower[l.size + extra] *= pivot;
            for (index p = first; p <= extra; ++p)  // the first of the row, then the others
                for (index q = first; q <= extra; ++q)
                    values_[*target++] -=
                        lower[p == first ? row : l.size + p - 1] * upper[q == first ? row : l.size + q - 1];
        }
        return std::all_of(diagonal, diagonal + l.size, [](double inverse) {
            return inverse > 0.0 && inverse <= std::numeric_limits<double>::max();
        });
    }

    /// Solves in place for one right-hand side. @param right [unit of the equations], any
    void solve(std::span<double> right) const
    {
        const layout& l = *layout_;
        const double* const pivot = values_.data();
        const double* const upper = pivot + l.size;
        const double* const lower = upper + l.column.size();
        double* const x = right.data();
        index k = 0, extra = 0;
        for (const run& r : l.runs) {
            switch (r.how) {
            case passing::along: forward_along(x + k, lower + k, r.end - k); break;
            case passing::apart: forward_apart(x + k, x + k + r.shift, lower + k, r.end - k); break;
            case passing::singly: extra = forward_singly(x, lower, k, r.end, extra); break;
            }
            k = r.end;
        }
        for (auto r = l.runs.rbegin(); r != l.runs.rend(); ++r) {
            const index end = k;
            k = r->begin;
            switch (r->how) {
            case passing::along: back_along(x + k, upper + k, pivot + k, end - k); break;
            case passing::apart: back_apart(x + k, x + k + r->shift, upper + k, pivot + k, end - k); break;
            case passing::singly: extra = back_singly(x, upper, pivot, k, end, extra); break;
            }
        }
    }

    /// Rows from `begin` to before `end`.
    struct range {
        index begin = 0;  ///< the first
        index end = 0;    ///< after the last
    };
    /// Solves in place for a right-hand side that is zero but in a few rows, as far as the solution is felt: beyond the
    /// range it is left zero, and is less than about `felt` of its greatest value. Time follows the range, where the
    /// order of the unknowns follows a chain.
    /// @param right [unit of the equations], any, outside `given` zero @param given the rows where it is not @param
    /// felt share, 0 to 1, 1e-9 say
    range solve_near(std::span<double> right, const range& given, double felt) const
    {
        const layout& l = *layout_;
        const double* const pivot = values_.data();
        const double* const upper = pivot + l.size;
        const double* const lower = upper + l.column.size();
        double* const x = right.data();
        double greatest = 0.0;
        for (index k = given.begin; k < given.end; ++k) greatest = std::max(greatest, std::fabs(x[k]));
        index end = given.end;
        const auto extras_from = [&l](index k) {
            return static_cast<index>(std::lower_bound(l.row.begin(), l.row.end(), k) - l.row.begin());
        };
        index extra = extras_from(given.begin);
        for (index k = given.begin; k < end; ++k) {
            const auto pass_on = [&](index at, index slot) {
                const double passed = lower[slot] * x[k];
                if (std::fabs(passed) > felt * greatest) end = std::max(end, at + 1);
                if (at < end) x[at] -= passed;
            };
            pass_on(l.column[k], k);
            for (; extra < l.row.size() && l.row[extra] == k; ++extra)
                pass_on(l.column[l.size + extra], l.size + extra);
        }
        greatest = 0.0;
        index lowest = given.begin, k = end;
        extra = extras_from(end);
        while (k > 0 && (k > given.begin || k + l.span > lowest)) {
            --k;
            for (; extra > 0 && l.row[extra - 1] == k; --extra)
                x[k] -= upper[l.size + extra - 1] * x[l.column[l.size + extra - 1]];
            x[k] = (x[k] - upper[k] * x[l.column[k]]) * pivot[k];
            greatest = std::max(greatest, std::fabs(x[k]));
            if (std::fabs(x[k]) > felt * greatest) lowest = std::min(lowest, k);
        }
        return {k, end};
    }

private:
    // While the pattern is found: the later unknowns that each sees, as chains through one list.
    class seen_later {
    public:
        seen_later(index size, const std::vector<std::pair<index, index>>& pairs) : newest_(size, none)
        {
            links_.reserve(2 * pairs.size());
            for (const auto& [a, b] : pairs)
                if (a != b) add(std::min(a, b), std::max(a, b));
        }
        void add(index of, index later)
        {
            links_.push_back({later, newest_[of]});
            newest_[of] = links_.size() - 1;
        }
        // Those of one unknown, ascending, each once.
        void take(index of, std::vector<index>& out) const
        {
            out.clear();
            for (index at = newest_[of]; at != none; at = links_[at].before) out.push_back(links_[at].later);
            if (out.size() < 2) return;
            std::sort(out.begin(), out.end());
            out.erase(std::unique(out.begin(), out.end()), out.end());
        }

    private:
        static constexpr index none = static_cast<index>(-1);
        struct link {
            index later, before;
        };
        std::vector<index> newest_;
        std::vector<link> links_;
    };

    // Neighbouring rows whose first later unknowns are neighbours as well. Only the last of them may see more.
    struct stretch {
        index end;     // before this row
        index shift;   // from a row to the first later unknown it sees; 0 of the last of a tree
        index extras;  // of its last row
    };

    // Rows as solve() passes them: each seeing the next, all apart, or one after the other with what else they see.
    enum class passing { along, apart, singly };
    struct run {
        index begin, end;  // from this row to before that one
        index shift;       // of rows apart
        passing how;
    };
    static std::vector<run> runs_of(const std::vector<stretch>& stretches, index size)
    {
        constexpr index few = 16;   // so few unknowns are solved row by row: looking for runs would cost more
        constexpr index worth = 4;  // rows
        std::vector<run> out;
        const auto add = [&out](const run& r) {
            if (r.begin == r.end) return;
            if (r.how == passing::singly && !out.empty() && out.back().how == passing::singly)
                out.back().end = r.end;
            else
                out.push_back(r);
        };
        index k = 0;
        for (const stretch& s : stretches) {
            const index plain = s.end - (s.extras > 0 ? 1 : 0);
            const bool worthwhile = size > few && plain - k >= worth && (s.shift == 1 || s.shift >= plain - k);
            add({k, plain, s.shift, !worthwhile ? passing::singly : s.shift == 1 ? passing::along : passing::apart});
            add({plain, s.end, s.shift, passing::singly});
            k = s.end;
        }
        return out;
    }
    // One row after the other; the last of a tree sees itself, by nothing. @return the first extra after them
    index forward_singly(double* x, const double* lower, index k, index end, index extra) const
    {
        const layout& l = *layout_;
        const index* const column = l.column.data();
        for (; k < end; ++k) {
            const double now = x[k];
            x[column[k]] -= lower[k] * now;
            for (; extra < l.row.size() && l.row[extra] == k; ++extra)
                x[column[l.size + extra]] -= lower[l.size + extra] * now;
        }
        return extra;
    }
    // @param extra the first after them @return the first of theirs
    index back_singly(double* x, const double* upper, const double* pivot, index begin, index end, index extra) const
    {
        const layout& l = *layout_;
        const index* const column = l.column.data();
        for (index k = end; k-- > begin;) {
            double now = x[k] - upper[k] * x[column[k]];
            for (; extra > 0 && l.row[extra - 1] == k; --extra)
                now -= upper[l.size + extra - 1] * x[column[l.size + extra - 1]];
            x[k] = now * pivot[k];
        }
        return extra;
    }

    // Rows that do not see each other, all at once; and rows of which each sees the next. Inlined, a compiler would
    // forget that they are apart.
    [[gnu::noinline]] static void eliminate_apart(double* __restrict diagonal, double* __restrict seen,
                                                  const double* __restrict upper, double* __restrict lower, index count)
    {
        if (diagonal == seen) {  // the last of a tree sees nothing
            *diagonal = 1.0 / *diagonal;
            return;
        }
        for (index i = 0; i < count; ++i) {
            const double inverse = 1.0 / diagonal[i], share = lower[i] * inverse;
            diagonal[i] = inverse;
            lower[i] = share;
            seen[i] -= share * upper[i];
        }
    }
    [[gnu::noinline]] static void forward_apart(const double* __restrict x, double* __restrict seen,
                                                const double* __restrict lower, index count)
    {
        for (index i = 0; i < count; ++i) seen[i] -= lower[i] * x[i];
    }
    [[gnu::noinline]] static void back_apart(double* __restrict x, const double* __restrict seen,
                                             const double* __restrict upper, const double* __restrict pivot,
                                             index count)
    {
        for (index i = 0; i < count; ++i) x[i] = (x[i] - upper[i] * seen[i]) * pivot[i];
    }
    static void forward_along(double* __restrict x, const double* __restrict lower, index count)
    {
        double now = x[0];
        for (index i = 0; i < count; ++i) x[i + 1] = now = x[i + 1] - lower[i] * now;
    }
    static void back_along(double* __restrict x, const double* __restrict upper, const double* __restrict pivot,
                           index count)
    {
        double now = x[count];
        for (index i = count; i-- > 0;) x[i] = now = (x[i] - upper[i] * now) * pivot[i];
    }

    // Every unknown has a first later one it sees; the last of a tree has itself, by nothing. What else it sees, the
    // extras, follow in the order of their rows.
    struct layout {
        index size = 0;
        std::vector<index> column;  // first of every row, then of the extras
        std::vector<index> row;     // of the extras
        std::vector<index> target;  // of rows with extras: slots of what they see among each other
        std::vector<stretch> stretches;
        std::vector<run> runs;  // of solve()
        index span = 0;         // from a row to the last later unknown that any row sees

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
