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

span_reading read(std::size_t first, std::size_t last, double value, double spread, std::size_t most = 100000)
{
    return {.first = first,
            .last = last,
            .likelihood = [=](double x) { return std::exp(-0.5 * (x - value) * (x - value) / (spread * spread)); },
            .grid = {.step = spread / 6.0, .fine_to = value + 8.0 * spread, .most = most}};
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
        const span_tree tree(numbers, readings);
        EXPECT_NEAR_REL(tree.evidence(), all.evidence, 1e-12);
        for (std::size_t k = 0; k < numbers.size(); ++k) {
            // the trees that do not hold the number stand beside it
            const double beside = tree.evidence() / tree.evidence_around(k);
            for (std::size_t i = 0; i < numbers[k].size(); ++i)
                EXPECT_NEAR_REL(numbers[k][i].weight * tree.likelihood_of(k, numbers[k][i].at) * beside,
                                all.by_value[k][i], 1e-12);
        }
        for (std::size_t r = 0; r < readings.size(); ++r) {  // one of them tells nothing
            std::vector<span_reading> without = readings;
            without[r].likelihood = [](double) { return 0.25; };
            const span_tree other(numbers, without);
            EXPECT_NEAR_REL(tree.evidence_if_level(r, 0.25), other.evidence_around(readings[r].first), 1e-12);
        }
    }
}

// Kept short, sums keep weight and mean, and what they say stays within a small part of what a reading tells apart.
TEST(SpanTree, ShortSums)
{
    std::mt19937 random(7);
    const std::vector<distribution> numbers = drawn(random, 6, 7);
    const std::vector<span_reading> whole{read(0, 5, 9.0, 0.3)}, few{read(0, 5, 9.0, 0.3, 64)};
    const span_tree exact(numbers, whole), quick(numbers, few);
    EXPECT_NEAR_REL(quick.evidence(), exact.evidence(), 0.01);
    for (std::size_t k = 0; k < numbers.size(); ++k)
        for (const weighted_value& v : numbers[k])
            EXPECT_NEAR_REL(quick.likelihood_of(k, v.at), exact.likelihood_of(k, v.at), 0.02);
    distribution many;
    double weight = 0.0, mean = 0.0;
    for (int i = 0; i < 5000; ++i) {
        many.push_back({std::fmod(i * 0.7391, 13.0), 1.0 + i % 7});
        weight += many.back().weight;
        mean += many.back().weight * many.back().at;
    }
    std::sort(many.begin(), many.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
    const distribution shortly = shortened(many, few[0].grid);
    EXPECT_LT(shortly.size(), 400u);
    double weight_then = 0.0, mean_then = 0.0;
    for (std::size_t i = 0; i < shortly.size(); ++i) {
        weight_then += shortly[i].weight;
        mean_then += shortly[i].weight * shortly[i].at;
        EXPECT_GT(shortly[i].at, i > 0 ? shortly[i - 1].at : -1.0);
    }
    EXPECT_NEAR_REL(weight_then, weight, 1e-12);
    EXPECT_NEAR_REL(mean_then, mean, 1e-12);
}

TEST(SpanTree, NumbersNobodyRead)
{
    std::mt19937 random(9);
    const std::vector<distribution> numbers = drawn(random, 3, 4);
    const span_tree none(numbers, {}), one(numbers, {read(1, 1, 1.0, 0.1)});
    EXPECT_EQ(none.evidence(), 1.0);
    EXPECT_EQ(none.likelihood_of(0, 3.0), 1.0);
    EXPECT_FALSE(one.is_read(0));
    EXPECT_TRUE(one.is_read(1));
    EXPECT_TRUE(cross(read(0, 2, 1, 1), read(1, 3, 1, 1)));
    EXPECT_FALSE(cross(read(0, 2, 1, 1), read(1, 2, 1, 1)));
    EXPECT_FALSE(cross(read(0, 2, 1, 1), read(3, 4, 1, 1)));
}
