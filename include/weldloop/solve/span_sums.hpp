#pragma once
/// @file
/// Numbers that stand in a row, each known by its distribution, and readings of sums of neighbours: what the readings
/// say of each number. On plain doubles.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <functional>
#include <limits>
#include <utility>
#include <vector>

namespace weldloop::solve {

/// A value with its probability.
struct weighted_value {
    double at = 0.0;      ///< the value
    double weight = 0.0;  ///< its probability, up to a common scale
};

/// A distribution by values in rising order.
using distribution = std::vector<weighted_value>;

/// How sums of distributions are kept short: values of a cell become one, their mean, with all their weight, so that
/// weight and mean stay.
struct sum_grid {
    double step = 1.0;           ///< of cells up to `fine_to`, above 0
    double fine_to = 0.0;        ///< from here on every doubling has `by_octave` cells; above 0
    std::size_t by_octave = 16;  ///< 1 or more
    std::size_t most = 64;       ///< no more values than this: kept as they are

    /// The cell that holds x, 0 or above.
    [[nodiscard]] std::size_t cell(double x) const
    {
        if (x < fine_to) return static_cast<std::size_t>(x / step);
        int octave = 0;
        const double within = 2.0 * std::frexp(x / fine_to, &octave) - 1.0;  // 0 to 1
        const auto fine = static_cast<std::size_t>(fine_to / step) + 1;
        return fine + static_cast<std::size_t>(octave - 1) * by_octave +
               static_cast<std::size_t>(within * static_cast<double>(by_octave));
    }
};

namespace detail {

/// Cells that fill.
class cells {
public:
    cells(const sum_grid& grid, double highest) : grid_(&grid), weight_(grid.cell(highest) + 1, 0.0), mean_(weight_) {}
    void add(double at, double weight)
    {
        const std::size_t cell = grid_->cell(at);
        weight_[cell] += weight;
        mean_[cell] += weight * at;
    }
    [[nodiscard]] distribution values() const
    {
        distribution out;
        for (std::size_t i = 0; i < weight_.size(); ++i)
            if (weight_[i] > 0.0) out.push_back({mean_[i] / weight_[i], weight_[i]});
        return out;
    }

private:
    const sum_grid* grid_;
    std::vector<double> weight_, mean_;
};

[[nodiscard]] inline bool comes_before(const weighted_value& a, const weighted_value& b)
{
    return a.at < b.at;
}

}  // namespace detail

/// The same with no more values than a grid has. @param all values, 0 or above, in rising order @param grid of cells
[[nodiscard]] inline distribution shortened(const distribution& all, const sum_grid& grid)
{
    if (all.size() <= grid.most) return all;
    detail::cells out(grid, all.back().at);
    for (const weighted_value& v : all) out.add(v.at, v.weight);
    return out.values();
}

/// The distribution of the sum of two independent numbers, neither below 0. @param a one, not empty @param b the other,
/// not empty @param grid of cells, if it has too many values
[[nodiscard]] inline distribution sum_of(const distribution& a, const distribution& b, const sum_grid& grid)
{
    if (a.size() * b.size() > grid.most) {
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

/// The weight of all values.
[[nodiscard]] inline double weight_of(const distribution& d)
{
    double out = 0.0;
    for (const weighted_value& v : d) out += v.weight;
    return out;
}

/// A reading of the sum of neighbours.
struct span_reading {
    std::size_t first = 0;                          ///< number that the sum begins with
    std::size_t last = 0;                           ///< number that it ends with, inclusive
    std::function<double(double)> likelihood = {};  ///< of a sum, any scale
    sum_grid grid = {};                             ///< fine enough for it
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
/// parts, weighed by each reading in turn.
class span_tree {
public:
    /// @param numbers their distributions, in their order; kept by the caller
    /// @param readings of sums; no two may cross
    span_tree(const std::vector<distribution>& numbers, std::vector<span_reading> readings)
        : numbers_(&numbers), readings_(std::move(readings)), within_(readings_.size(), nowhere),
          reading_of_(numbers.size(), nowhere), items_(readings_.size())
    {
        std::vector<std::size_t> order(readings_.size());
        for (std::size_t r = 0; r < order.size(); ++r) order[r] = r;
        // a span comes before those it holds
        std::stable_sort(order.begin(), order.end(), [this](std::size_t a, std::size_t b) {
            return readings_[a].last - readings_[a].first > readings_[b].last - readings_[b].first;
        });
        for (const std::size_t r : order) {
            within_[r] = reading_of_[readings_[r].first];  // the smallest that holds it: no two cross
            for (std::size_t k = readings_[r].first; k <= readings_[r].last; ++k) reading_of_[k] = r;
        }
        for (const std::size_t r : order)
            if (within_[r] != nowhere) items_[within_[r]].push_back({true, r});
        for (std::size_t k = 0; k < numbers.size(); ++k)
            if (reading_of_[k] != nowhere) items_[reading_of_[k]].push_back({false, k});
        weighed_.resize(readings_.size());
        plain_.resize(readings_.size());
        rest_.resize(readings_.size());
        for (std::size_t at = order.size(); at-- > 0;) weigh(order[at]);
    }

    /// Stands for no reading.
    static constexpr std::size_t nowhere = static_cast<std::size_t>(-1);

    /// Probability of all readings, up to their scales.
    [[nodiscard]] double evidence() const
    {
        double out = 1.0;
        for (std::size_t r = 0; r < readings_.size(); ++r)
            if (within_[r] == nowhere) out *= weight_of(weighed_[r]);
        return out;
    }
    /// Probability of the readings of one tree. @param number one that it holds; 1 for a number that was not read
    [[nodiscard]] double evidence_around(std::size_t number) const
    {
        const std::size_t r = reading_of_[number];
        return r == nowhere ? 1.0 : weight_of(weighed_[root_of(r)]);
    }
    /// Probability of the readings that hold a number, all others in them taken by their distributions, if the number
    /// has a value. @param number which @param value of it
    [[nodiscard]] double likelihood_of(std::size_t number, double value) const
    {
        const std::size_t r = reading_of_[number];
        return r == nowhere ? 1.0 : outside(r, {false, number}, value);
    }
    /// Probability of the readings of a reading's tree if that reading has the same likelihood for every sum.
    /// @param r its number, in the order they were given @param level that likelihood
    [[nodiscard]] double evidence_if_level(std::size_t r, double level) const
    {
        double out = 0.0;
        for (const weighted_value& v : plain_[r])
            out += v.weight * (within_[r] == nowhere ? 1.0 : outside(within_[r], {true, r}, v.at));
        return level * out;
    }
    /// The grid of the smallest reading that holds a number, which must be read.
    [[nodiscard]] const sum_grid& grid_around(std::size_t number) const { return readings_[reading_of_[number]].grid; }
    /// Whether any reading holds a number.
    [[nodiscard]] bool is_read(std::size_t number) const { return reading_of_[number] != nowhere; }

private:
    struct item {
        bool is_reading;
        std::size_t which;
        [[nodiscard]] bool operator==(const item&) const = default;
    };

    [[nodiscard]] std::size_t root_of(std::size_t r) const
    {
        while (within_[r] != nowhere) r = within_[r];
        return r;
    }
    [[nodiscard]] const distribution& of(const item& i) const
    {
        return i.is_reading ? weighed_[i.which] : (*numbers_)[i.which];
    }

    // The distribution of a span's sum, weighed by its readings; and of all but each of its items.
    void weigh(std::size_t r)
    {
        const std::vector<item>& items = items_[r];
        const distribution zero{{0.0, 1.0}};
        std::vector<distribution> before{zero}, short_items;
        for (const item& i : items) {
            short_items.push_back(shortened(of(i), readings_[r].grid));
            before.push_back(sum_of(before.back(), short_items.back(), readings_[r].grid));
        }
        rest_[r].resize(items.size());
        distribution after = zero;
        for (std::size_t k = items.size(); k-- > 0;) {
            rest_[r][k] = sum_of(before[k], after, readings_[r].grid);
            after = sum_of(short_items[k], after, readings_[r].grid);
        }
        plain_[r] = before.back();
        weighed_[r] = std::move(before.back());
        for (weighted_value& v : weighed_[r]) v.weight *= readings_[r].likelihood(v.at);
    }

    [[nodiscard]] double outside(std::size_t r, const item& i, double value) const
    {
        const auto k = static_cast<std::size_t>(std::find(items_[r].begin(), items_[r].end(), i) - items_[r].begin());
        double out = 0.0;
        for (const weighted_value& v : rest_[r][k]) {
            const double sum = value + v.at, here = v.weight * readings_[r].likelihood(sum);
            if (here > 0.0) out += within_[r] == nowhere ? here : here * outside(within_[r], {true, r}, sum);
        }
        return out;
    }

    const std::vector<distribution>* numbers_;
    std::vector<span_reading> readings_;
    std::vector<std::size_t> within_;      // the span that holds a span
    std::vector<std::size_t> reading_of_;  // the smallest span that holds a number
    std::vector<std::vector<item>> items_;
    std::vector<distribution> weighed_, plain_;  // of a span's sum, with its own reading and before it
    std::vector<std::vector<distribution>> rest_;
};

}  // namespace weldloop::solve
