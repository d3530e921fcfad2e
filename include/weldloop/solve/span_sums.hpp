#pragma once
/// @file
/// Numbers that stand in a row, each known by its distribution, and readings of sums of neighbours: what the readings
/// say of each number. On plain doubles.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <string>
#include <utility>
#include <vector>

#include <weldloop/core/error.hpp>
#include <weldloop/core/require.hpp>

namespace weldloop::solve {

/// A value with its probability.
struct weighted_value {
    double at = 0.0;      ///< [its unit] the value
    double weight = 0.0;  ///< its probability, up to a common scale
};

/// A distribution by its values.
using distribution = std::vector<weighted_value>;

namespace detail {
class cells;
}  // namespace detail

/// How sums of distributions are kept short: values of a cell become one, their mean, with all their weight, so that
/// weight and mean stay.
class sum_grid {
public:
    /// @param most no more values than this are kept as they are
    explicit sum_grid(std::size_t most = 64) : most_(most) {}

    /// Adds cells of one width up to a value, wider ones where they would be more than 4096 (time goes as their
    /// square); beyond the last such value every doubling has so many.
    /// @param step width of a cell [unit of the values], above 0 @param up_to [unit of the values], any, where they
    /// end; at or below the end of those before: no cells @throws not_finite_error, out_of_range_error
    sum_grid& cells(double step, double up_to)
    {
        require_finite(up_to, "end of the cells");
        const double from = fine_to();
        if (!(up_to > from)) return *this;
        require_positive(step, "width of a cell");
        constexpr double most_cells = 4096.0;
        const double width = std::max(step, (up_to - from) / most_cells);
        zones_.push_back({from, up_to, 1.0 / width, first_beyond_});
        first_beyond_ += static_cast<std::size_t>((up_to - from) / width) + 1;
        return *this;
    }
    /// Sets how many cells a doubling has. @param doublings_of logarithm of it to the base 2, 0 to 10
    /// @throws out_of_range_error
    sum_grid& cells_by_octave(int doublings_of)
    {
        constexpr double most_doublings = 10.0;
        require_within(doublings_of, 0.0, most_doublings, "doublings of the cells of an octave");
        by_octave_ = doublings_of;
        return *this;
    }

    [[nodiscard]] std::size_t most() const { return most_; }  ///< values kept as they are
    /// Where the cells of one width end [unit of the values].
    [[nodiscard]] double fine_to() const { return zones_.empty() ? 0.0 : zones_.back().up_to; }

    /// The cell that holds a value. @param x [unit of the values], 0 or above
    /// @throws not_finite_error, out_of_range_error
    [[nodiscard]] std::size_t cell(double x) const { return place_of(require_not_negative(x, "value of a cell")); }

private:
    friend class detail::cells;  // whose values have been looked at

    [[nodiscard]] std::size_t place_of(double x) const
    {
        for (const zone& z : zones_)
            if (x < z.up_to) return z.first + static_cast<std::size_t>((x - z.from) * z.by_width);
        // exponent and first digits of the mantissa count the cells of doublings; without others, of those from 1 up
        const double end = zones_.empty() ? 1.0 : zones_.back().up_to;
        return first_beyond_ +
               static_cast<std::size_t>((bits_of(std::max(1.0, x / end)) - bits_of(1.0)) >> (52 - by_octave_));
    }

    /// As std::bit_cast, which the libc++ of Emscripten 3.1 lacks.
    [[nodiscard]] static std::uint64_t bits_of(double x)
    {
        static_assert(sizeof(double) == sizeof(std::uint64_t));
        std::uint64_t bits = 0;
        std::memcpy(&bits, &x, sizeof bits);
        return bits;
    }

    struct zone {
        double from, up_to, by_width;
        std::size_t first;
    };
    std::vector<zone> zones_ = {};
    std::size_t first_beyond_ = 0, most_;
    int by_octave_ = 4;
};

namespace detail {

/// Cells that fill.
class cells {
public:
    cells(const sum_grid& grid, double highest) : grid_(&grid), held_(grid.cell(highest) + 1) {}
    void add(double at, double weight)
    {
        held& cell = held_[grid_->place_of(at)];
        cell.weight += weight;
        cell.moment += weight * at;
    }
    [[nodiscard]] distribution values() const
    {
        distribution out;
        out.reserve(held_.size());
        for (const held& h : held_)
            if (h.weight > 0.0) out.push_back({h.moment / h.weight, h.weight});
        return out;
    }

private:
    struct held {
        double weight = 0.0, moment = 0.0;
    };
    const sum_grid* grid_;
    std::vector<held> held_;
};

// What a distribution can hold.
inline void require_distribution(const distribution& d)
{
    for (const weighted_value& v : d) {
        require_not_negative(v.at, "value of a distribution");
        require_not_negative(v.weight, "weight of a value");
    }
}

[[nodiscard]] inline bool comes_before(const weighted_value& a, const weighted_value& b)
{
    return a.at < b.at;
}

}  // namespace detail

/// The same in rising order, with no more values than a grid has. @param all values, 0 or above, in any order
/// @param grid of cells @throws not_finite_error, out_of_range_error
[[nodiscard]] inline distribution shortened(distribution all, const sum_grid& grid)
{
    detail::require_distribution(all);
    if (all.size() <= grid.most()) {
        std::sort(all.begin(), all.end(), detail::comes_before);
        return all;
    }
    double highest = 0.0;
    for (const weighted_value& v : all) highest = std::max(highest, v.at);
    detail::cells out(grid, highest);
    for (const weighted_value& v : all) out.add(v.at, v.weight);
    return out.values();
}

/// The distribution of the sum of two independent numbers, neither below 0; empty if one of them is.
/// @param a one, in rising order @param b the other, in rising order @param grid of cells, if it has too many values
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline distribution sum_of(const distribution& a, const distribution& b, const sum_grid& grid)
{
    detail::require_distribution(a);
    detail::require_distribution(b);
    if (a.size() * b.size() > grid.most()) {
        detail::cells out(grid, a.back().at + b.back().at);
        for (const weighted_value& x : a)
            for (const weighted_value& y : b) out.add(x.at + y.at, x.weight * y.weight);
        return out.values();
    }
    distribution all;
    all.reserve(a.size() * b.size());
    for (const weighted_value& x : a)
        for (const weighted_value& y : b) all.push_back({x.at + y.at, x.weight * y.weight});
    std::sort(all.begin(), all.end(), detail::comes_before);
    return all;
}

/// The weight of all values [1].
[[nodiscard]] inline double weight_of(const distribution& d)
{
    double out = 0.0;
    for (const weighted_value& v : d) out += v.weight;
    return out;
}

/// What a reading says of a value: a normal one about what was read, or level where it was taken wrongly.
struct reading_likelihood {
    double read = 0.0;    ///< [its unit] what was read
    double spread = 1.0;  ///< [unit of the reading] standard deviation, above 0
    double right = 1.0;   ///< [1] height of the normal one
    double level = 0.0;   ///< [1] that of any value

    /// Beyond this number of deviations a reading that is right says nothing of a value any more.
    static constexpr double beyond = 8.0;

    /// Of a reading that is right [1]. @param x [unit of the reading], any
    [[nodiscard]] double if_right(double x) const
    {
        const double z = (x - read) / spread;
        return std::fabs(z) < beyond ? right * std::exp(-0.5 * z * z) : 0.0;
    }
    /// Of either [1]. @param x [unit of the reading], any
    [[nodiscard]] double operator()(double x) const { return if_right(x) + level; }
};

/// A reading of the sum of neighbours.
struct span_reading {
    std::size_t first = 0;               ///< number that the sum begins with
    std::size_t last = 0;                ///< number that it ends with, inclusive
    reading_likelihood likelihood = {};  ///< of a sum
};

/// Whether two spans overlap without one holding the other.
[[nodiscard]] inline bool cross(const span_reading& a, const span_reading& b)
{
    const auto over = [](const span_reading& x, const span_reading& y) {
        return x.first < y.first && y.first <= x.last && x.last < y.last;
    };
    return over(a, b) || over(b, a);
}

/// Readings of numbers in a row, no two of which cross: they form trees, in which everything is a sum of independent
/// parts, weighed by each reading in turn, from the smallest spans up and from the largest down.
class span_tree {
public:
    /// @param numbers their distributions, in their order, in any order of values
    /// @param readings of sums; no two may cross
    /// @param most sums of no more values are kept as they are; of more, in cells of a third of a reading's deviation
    /// @throws not_finite_error, out_of_range_error
    span_tree(const std::vector<distribution>& numbers, std::vector<span_reading> readings, std::size_t most)
        : readings_(std::move(readings)), within_(readings_.size(), nowhere), reading_of_(numbers.size(), nowhere),
          nodes_(readings_.size())
    {
        for (const span_reading& r : readings_) require_reading(r, numbers.size());
        std::vector<std::size_t> order(readings_.size());
        for (std::size_t r = 0; r < order.size(); ++r) order[r] = r;
        // a span comes before those it holds
        std::stable_sort(order.begin(), order.end(), [this](std::size_t a, std::size_t b) {
            return readings_[a].last - readings_[a].first > readings_[b].last - readings_[b].first;
        });
        for (const std::size_t r : order) {
            within_[r] = reading_of_[readings_[r].first];  // the smallest that holds it: no two cross
            for (std::size_t k = readings_[r].first; k <= readings_[r].last; ++k) reading_of_[k] = r;
            put_grid(r, most);
        }
        for (const std::size_t r : order)
            if (within_[r] != nowhere) nodes_[within_[r]].items.push_back({true, r});
        for (std::size_t k = 0; k < numbers.size(); ++k)
            if (reading_of_[k] != nowhere) nodes_[reading_of_[k]].items.push_back({false, k});
        for (std::size_t at = order.size(); at-- > 0;) weigh(order[at], numbers);
        for (const std::size_t r : order)
            if (within_[r] != nowhere) {
                const std::size_t place = place_in(within_[r], {true, r});
                for (const weighted_value& v : nodes_[r].plain)
                    nodes_[r].from_above.push_back(outside(within_[r], place, v.at));
                const double most_said = *std::max_element(nodes_[r].from_above.begin(), nodes_[r].from_above.end());
                if (most_said > 0.0)
                    for (double& said : nodes_[r].from_above) said /= most_said;
            }
    }

    /// Stands for no reading.
    static constexpr std::size_t nowhere = static_cast<std::size_t>(-1);

    /// Natural logarithm of the probability of all readings, up to their scales; minus infinity where no values explain
    /// them.
    [[nodiscard]] double log_evidence() const
    {
        double out = 0.0;
        for (std::size_t r = 0; r < readings_.size(); ++r) out += nodes_[r].log_weight;
        return out;
    }
    /// What the readings that hold a number say of it, all others in them taken by their distributions.
    /// @param number which; it must be read
    /// @return at values as close as the readings can tell apart: the likelihood of each, up to a scale, in the place
    /// of a weight
    [[nodiscard]] distribution told_of(std::size_t number) const
    {
        const std::size_t r = reading_of_[number], place = place_in(r, {false, number});
        distribution out = nodes_[r].short_items[place];
        for (weighted_value& v : out) v.weight = outside(r, place, v.at);
        return out;
    }
    /// Probability that a reading was taken wrongly: that it is level. @param r its number, in the order they were
    /// given
    [[nodiscard]] double level_share(std::size_t r) const
    {
        const node& n = nodes_[r];
        const reading_likelihood& l = readings_[r].likelihood;
        double wrong = 0.0, all = 0.0;
        for (std::size_t i = 0; i < n.plain.size(); ++i) {
            const double weight = n.plain[i].weight * (n.from_above.empty() ? 1.0 : n.from_above[i]);
            wrong += weight * l.level;
            all += weight * l(n.plain[i].at);
        }
        return all > 0.0 ? wrong / all : 1.0;
    }
    /// Whether any reading holds a number.
    [[nodiscard]] bool is_read(std::size_t number) const { return reading_of_[number] != nowhere; }

private:
    static void require_reading(const span_reading& r, std::size_t numbers)
    {
        if (!(r.first <= r.last && r.last < numbers))
            throw out_of_range_error("span of a reading", std::to_string(r.first) + " to " + std::to_string(r.last),
                                     "within " + std::to_string(numbers) +
                                         " numbers, the first no later than the last");
        require_finite(r.likelihood.read, "reading of a sum");
        require_positive(r.likelihood.spread, "standard deviation of a reading");
        require_not_negative(r.likelihood.right, "height of a reading");
        require_not_negative(r.likelihood.level, "level of a reading");
    }

    struct item {
        bool is_reading;
        std::size_t which;
        [[nodiscard]] bool operator==(const item&) const = default;
    };
    struct node {
        std::vector<item> items;
        sum_grid grid;
        std::vector<distribution> short_items, rest;  // of each item, and of the sum of all others
        std::vector<double> rest_weight;              // of that sum
        distribution plain, weighed;                  // of the sum, before and with its own reading
        std::vector<double> from_above;               // what larger spans say of each value of the sum, up to a scale
        double log_weight = 0.0;                      // of the sum with its reading, those below it taken as certain
    };

    // Cells fine enough for the reading and for those that hold it, each as far out as it can tell values apart.
    void put_grid(std::size_t r, std::size_t most)
    {
        constexpr double of_deviation = 1.0 / 3.0;
        struct needed {
            double up_to, spread;
        };
        std::vector<needed> all;
        for (std::size_t q = r; q != nowhere; q = within_[q]) {
            const reading_likelihood& l = readings_[q].likelihood;
            all.push_back({l.read + reading_likelihood::beyond * l.spread, l.spread});
        }
        std::sort(all.begin(), all.end(), [](const needed& a, const needed& b) { return a.up_to < b.up_to; });
        for (std::size_t k = all.size() - 1; k-- > 0;) all[k].spread = std::min(all[k].spread, all[k + 1].spread);
        sum_grid grid(most);
        for (const needed& n : all) grid.cells(of_deviation * n.spread, n.up_to);
        nodes_[r].grid = grid;
    }
    [[nodiscard]] std::size_t place_in(std::size_t r, const item& i) const
    {
        const std::vector<item>& items = nodes_[r].items;
        return static_cast<std::size_t>(std::find(items.begin(), items.end(), i) - items.begin());
    }

    // The distribution of a span's sum, weighed by its readings; and of all but each of its items.
    void weigh(std::size_t r, const std::vector<distribution>& numbers)
    {
        node& n = nodes_[r];
        const distribution zero{{0.0, 1.0}};
        std::vector<distribution> before{zero};
        for (const item& i : n.items) {
            n.short_items.push_back(shortened(i.is_reading ? nodes_[i.which].weighed : numbers[i.which], n.grid));
            before.push_back(sum_of(before.back(), n.short_items.back(), n.grid));
        }
        n.rest.resize(n.items.size());
        n.rest_weight.resize(n.items.size());
        distribution after = zero;
        for (std::size_t k = n.items.size(); k-- > 0;) {
            n.rest[k] = sum_of(before[k], after, n.grid);
            n.rest_weight[k] = weight_of(n.rest[k]);
            if (k > 0) after = sum_of(n.short_items[k], after, n.grid);
        }
        n.plain = before.back();
        n.weighed = std::move(before.back());
        for (weighted_value& v : n.weighed) v.weight *= readings_[r].likelihood(v.at);
        const double all = weight_of(n.weighed);
        n.log_weight = std::log(all);
        if (all > 0.0)
            for (weighted_value& v : n.weighed) v.weight /= all;
    }

    // Probability of a span's reading and of all around it if one of its items has a value.
    [[nodiscard]] double outside(std::size_t r, std::size_t place, double value) const
    {
        const node& n = nodes_[r];
        const distribution& rest = n.rest[place];
        const reading_likelihood& l = readings_[r].likelihood;
        double right = 0.0;
        if (n.from_above.empty()) {
            const double reach = reading_likelihood::beyond * l.spread;
            const auto from = std::lower_bound(rest.begin(), rest.end(), weighted_value{l.read - reach - value, 0.0},
                                               detail::comes_before);
            for (auto v = from; v != rest.end() && v->at <= l.read + reach - value; ++v)
                right += v->weight * l.if_right(value + v->at);
            return right + l.level * n.rest_weight[place];
        }
        std::size_t at = 0;
        for (const weighted_value& v : rest) {
            const double sum = value + v.at;
            while (at + 1 < n.plain.size() && n.plain[at + 1].at <= sum) ++at;
            right += v.weight * l(sum) * above_at(n, at, sum);
        }
        return right;
    }
    // What larger spans say of a sum, straight between the values it is known at. @param at the last at or below it
    [[nodiscard]] static double above_at(const node& n, std::size_t at, double sum)
    {
        if (at + 1 >= n.plain.size() || sum <= n.plain[at].at) return n.from_above[at];
        const double share = (sum - n.plain[at].at) / (n.plain[at + 1].at - n.plain[at].at);
        return n.from_above[at] + share * (n.from_above[at + 1] - n.from_above[at]);
    }

    std::vector<span_reading> readings_;
    std::vector<std::size_t> within_;      // the span that holds a span
    std::vector<std::size_t> reading_of_;  // the smallest span that holds a number
    std::vector<node> nodes_;
};

}  // namespace weldloop::solve
