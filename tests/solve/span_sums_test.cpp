// Readings of sums of numbers in a row against plain enumeration of every combination.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <random>
#include <utility>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/solve/span_sums.hpp>

#include "support/near.hpp"

using namespace weldloop::solve;

namespace {

std::vector<distribution> drawn(std::mt19937& random, std::size_t numbers, std::size_t values)
{
    std::uniform_real_distribution<double> unit(0.05, 1.0);
    std::vector<distribution> out(numbers);
    for (distribution& d : out) {
        double all = 0.0, at = 0.0;
        for (std::size_t i = 0; i < values; ++i) {
            at += unit(random);
            d.push_back({at, unit(random)});
            all += d.back().weight;
        }
        for (weighted_value& v : d) v.weight /= all;
    }
    return out;
}

constexpr std::size_t all_values = 100000, few_values = 64;

span_reading read(std::size_t first, std::size_t last, double value, double spread)
{
    return {.first = first, .last = last, .likelihood = {.read = value, .spread = spread, .level = 1e-3}};
}
// What is said of a value of a number.
double told(const span_tree& tree, std::size_t number, double value)
{
    if (!tree.is_read(number)) return 1.0;
    for (const weighted_value& v : tree.told_of(number))
        if (v.at == value) return v.weight;
    return -1.0;
}

// Every combination of values: weight, and of each number the weight by its value.
struct enumerated {
    double evidence = 0.0;
    std::vector<std::vector<double>> by_value;
};
enumerated all_of(const std::vector<distribution>& numbers, const std::vector<span_reading>& readings)
{
    enumerated out;
    for (const distribution& d : numbers) out.by_value.emplace_back(d.size(), 0.0);
    std::vector<std::size_t> at(numbers.size(), 0);
    for (bool more = true; more;) {
        double weight = 1.0;
        for (std::size_t k = 0; k < numbers.size(); ++k) weight *= numbers[k][at[k]].weight;
        for (const span_reading& r : readings) {
            double sum = 0.0;
            for (std::size_t k = r.first; k <= r.last; ++k) sum += numbers[k][at[k]].at;
            weight *= r.likelihood(sum);
        }
        out.evidence += weight;
        for (std::size_t k = 0; k < numbers.size(); ++k) out.by_value[k][at[k]] += weight;
        std::size_t k = 0;
        while (k < numbers.size() && ++at[k] == numbers[k].size()) at[k++] = 0;
        more = k < numbers.size();
    }
    return out;
}

}  // namespace

TEST(SpanTree, AgainstEveryCombination)
{
    std::mt19937 random(41);
    const std::vector<std::vector<std::pair<std::size_t, std::size_t>>> layouts{
        {{0, 0}},
        {{1, 3}},
        {{0, 4}, {1, 2}},
        {{0, 4}, {1, 3}, {2, 2}},
        {{0, 1}, {2, 4}, {2, 2}},
        {{1, 3}, {1, 3}},
        {{0, 4}, {0, 4}, {0, 1}, {2, 3}, {3, 3}, {4, 4}}};
    for (const auto& spans : layouts) {
        const std::vector<distribution> numbers = drawn(random, 5, 5);
        std::vector<span_reading> readings;
        for (const auto& [first, last] : spans)
            readings.push_back(read(first, last, 1.7 * static_cast<double>(last - first + 1), 0.4));
        const enumerated all = all_of(numbers, readings);
        const span_tree tree(numbers, readings, all_values);
        EXPECT_NEAR(tree.log_evidence(), std::log(all.evidence), 1e-12);
        for (std::size_t k = 0; k < numbers.size(); ++k) {
            double sum = 0.0;
            for (const weighted_value& v : numbers[k]) sum += v.weight * told(tree, k, v.at);
            for (std::size_t i = 0; i < numbers[k].size(); ++i)
                EXPECT_NEAR_REL(numbers[k][i].weight * told(tree, k, numbers[k][i].at) / sum,
                                all.by_value[k][i] / all.evidence, 1e-12);
        }
        for (std::size_t r = 0; r < readings.size(); ++r) {  // it was taken wrongly
            std::vector<span_reading> wrong = readings;
            wrong[r].likelihood.right = 0.0;
            EXPECT_NEAR_REL(tree.level_share(r), all_of(numbers, wrong).evidence / all.evidence, 1e-12);
        }
    }
}

// A hundred readings that contradict one another: the product of what they say is below the least number there is.
TEST(SpanTree, ManyContradictions)
{
    std::mt19937 random(3);
    const std::vector<distribution> numbers = drawn(random, 3, 6);
    std::vector<span_reading> readings;
    for (int i = 0; i < 100; ++i) {
        readings.push_back(read(0, 2, i % 2 == 0 ? 5.0 : 50.0, 0.2));
        readings.back().likelihood.level = 1e-9;
    }
    readings.push_back(read(0, 2, 5.0, 0.2));
    const span_tree tree(numbers, readings, all_values);
    EXPECT_LT(tree.log_evidence(), -1000.0);
    EXPECT_TRUE(std::isfinite(tree.log_evidence()));
    EXPECT_NEAR(tree.level_share(1), 1.0, 1e-12);
    EXPECT_LT(tree.level_share(0), 0.01);
}

// Kept short, sums keep weight and mean, and what they say stays within a small part of what a reading tells apart.
TEST(SpanTree, ShortSums)
{
    std::mt19937 random(7);
    const std::vector<distribution> numbers = drawn(random, 6, 7);
    const std::vector<span_reading> readings{read(0, 5, 9.0, 0.3), read(1, 3, 4.5, 0.2)};
    const span_tree exact(numbers, readings, all_values), quick(numbers, readings, few_values);
    EXPECT_NEAR(quick.log_evidence(), exact.log_evidence(), 0.01);
    for (std::size_t k = 0; k < numbers.size(); ++k) {
        const double scale = told(quick, k, numbers[k][0].at) / told(exact, k, numbers[k][0].at);
        for (const weighted_value& v : numbers[k])
            EXPECT_NEAR_REL(told(quick, k, v.at), scale * told(exact, k, v.at), 0.03);
    }
    distribution many;
    double weight = 0.0, mean = 0.0;
    for (int i = 0; i < 5000; ++i) {
        many.push_back({std::fmod(i * 0.7391, 13.0), 1.0 + i % 7});
        weight += many.back().weight;
        mean += many.back().weight * many.back().at;
    }
    sum_grid grid(few_values);
    grid.cells(0.1, 11.4).cells(0.2, 12.0).cells_by_octave(4);
    const distribution shortly = shortened(many, grid);
    EXPECT_LT(shortly.size(), 130u);
    EXPECT_GT(shortly.size(), 100u);
    double weight_then = 0.0, mean_then = 0.0;
    for (std::size_t i = 0; i < shortly.size(); ++i) {
        weight_then += shortly[i].weight;
        mean_then += shortly[i].weight * shortly[i].at;
        EXPECT_GT(shortly[i].at, i > 0 ? shortly[i - 1].at : -1.0);
    }
    EXPECT_NEAR_REL(weight_then, weight, 1e-12);
    EXPECT_NEAR_REL(mean_then, mean, 1e-12);
}

// A width that does not divide what it covers leaves a last cell of its own, which the first doubling does not share.
TEST(SumGrid, KeepsItsLastCellToItself)
{
    sum_grid grid;
    grid.cells(0.3, 1.0);
    EXPECT_EQ(grid.cell(0.95), 3U);  // 0, 0.3, 0.6, 0.9
    EXPECT_LT(grid.cell(0.95), grid.cell(1.0));
    grid.cells(0.7, 3.0);
    EXPECT_LT(grid.cell(0.95), grid.cell(1.0));
    EXPECT_LT(grid.cell(2.95), grid.cell(3.0));
}

// A reading far finer than itself would ask for more cells than a machine has room for.
TEST(SumGrid, HasBoundedCellsHoweverFineTheReading)
{
    sum_grid fine;
    fine.cells(1e-12, 1.0).cells(1e-300, 2.0);
    EXPECT_LT(fine.cell(1.999), 10'000u);
    EXPECT_LT(fine.cell(0.25), fine.cell(0.251));
    sum_grid usual;
    usual.cells(1e-3, 1.0);
    EXPECT_NEAR(static_cast<double>(usual.cell(0.5)), 500.0, 1.0);
}

TEST(SpanTree, NumbersNobodyRead)
{
    std::mt19937 random(9);
    const std::vector<distribution> numbers = drawn(random, 3, 4);
    const span_tree none(numbers, {}, all_values), one(numbers, {read(1, 1, 1.0, 0.1)}, all_values);
    EXPECT_EQ(none.log_evidence(), 0.0);
    EXPECT_FALSE(one.is_read(0));
    EXPECT_TRUE(one.is_read(1));
    EXPECT_TRUE(cross(read(0, 2, 1, 1), read(1, 3, 1, 1)));
    EXPECT_FALSE(cross(read(0, 2, 1, 1), read(1, 2, 1, 1)));
    EXPECT_FALSE(cross(read(0, 2, 1, 1), read(3, 4, 1, 1)));
}
