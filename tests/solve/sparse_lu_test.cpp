// sparse_lu against dense elimination with exchange of rows.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <random>
#include <utility>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/solve/sparse_lu.hpp>

using weldloop::solve::sparse_lu;

namespace {

using pairs = std::vector<std::pair<std::size_t, std::size_t>>;
using dense = std::vector<std::vector<double>>;

std::vector<double> eliminated(dense m, std::vector<double> b)
{
    const std::size_t n = b.size();
    for (std::size_t k = 0; k < n; ++k) {
        std::size_t best = k;
        for (std::size_t i = k; i < n; ++i)
            if (std::fabs(m[i][k]) > std::fabs(m[best][k])) best = i;
        std::swap(m[k], m[best]);
        std::swap(b[k], b[best]);
        for (std::size_t i = k + 1; i < n; ++i) {
            const double f = m[i][k] / m[k][k];
            for (std::size_t j = k; j < n; ++j) m[i][j] -= f * m[k][j];
            b[i] -= f * b[k];
        }
    }
    for (std::size_t k = n; k-- > 0;) {
        for (std::size_t j = k + 1; j < n; ++j) b[k] -= m[k][j] * b[j];
        b[k] /= m[k][k];
    }
    return b;
}

// Both forms of a matrix of a pattern, of unlike halves, its diagonal above the sums of its row and its column.
struct both_forms {
    sparse_lu sparse;
    dense full;
};
both_forms random_matrix(std::size_t n, const pairs& seen, std::mt19937& random)
{
    std::uniform_real_distribution<double> weight(0.1, 10.0);
    both_forms out{sparse_lu(n, seen), dense(n, std::vector<double>(n, 0.0))};
    const auto add = [&](std::size_t i, std::size_t j, double w) {
        out.full[i][j] += w;
        out.sparse.values()[out.sparse.slot(i, j)] += w;
    };
    for (const auto& [a, b] : seen)
        if (a != b) {
            add(a, b, -weight(random));
            add(b, a, -weight(random));
        }
    for (std::size_t i = 0; i < n; ++i) {
        double row = 0.0, column = 0.0;
        for (std::size_t j = 0; j < n; ++j) row += std::fabs(out.full[i][j]), column += std::fabs(out.full[j][i]);
        add(i, i, 0.1 + std::max(row, column));
    }
    return out;
}

pairs chain(std::size_t n)
{
    pairs out;
    for (std::size_t i = 1; i < n; ++i) out.emplace_back(i - 1, i);
    return out;
}

}  // namespace

TEST(SparseLu, TreesAndBridgesAsByDenseElimination)
{
    std::mt19937 random(11);
    const auto below = [&](std::size_t n) { return std::uniform_int_distribution<std::size_t>(0, n - 1)(random); };
    for (int round = 0; round < 400; ++round) {
        const std::size_t n = 1 + below(30);
        pairs seen;
        for (std::size_t i = 1; i < n; ++i)
            if (below(10) > 0) seen.emplace_back(i, below(i));  // a forest, in no good order
        for (std::size_t bridges = below(8); bridges > 0; --bridges) seen.emplace_back(below(n), below(n));
        both_forms m = random_matrix(n, seen, random);
        ASSERT_TRUE(m.sparse.eliminate());
        for (int side = 0; side < 2; ++side) {
            std::vector<double> b(n);
            for (double& w : b) w = std::uniform_real_distribution<double>(-1.0, 1.0)(random);
            const std::vector<double> expected = eliminated(m.full, b);
            m.sparse.solve(b);
            // rounding: condition below 1e3 (diagonals below 1e3, margin 0.1 of them at least 1e-4), 30 rows
            for (std::size_t i = 0; i < n; ++i) EXPECT_NEAR(b[i], expected[i], 1e-11) << "round " << round;
        }
    }
}

TEST(SparseLu, AChainAlongItsWayDoesNotFill)
{
    EXPECT_EQ(sparse_lu(50, chain(50)).pairs(), 49u);
    // leaves before what they hang on, as cells of a lead: neither
    pairs comb;
    for (std::size_t i = 0; i < 20; ++i) {
        comb.emplace_back(2 * i, 2 * i + 1);
        if (i > 0) comb.emplace_back(2 * i - 1, 2 * i + 1);
    }
    EXPECT_EQ(sparse_lu(40, comb).pairs(), 39u);
}

TEST(SparseLu, AHubFirstFillsAll)
{
    pairs star;
    for (std::size_t i = 1; i < 8; ++i) star.emplace_back(0, i);
    EXPECT_EQ(sparse_lu(8, star).pairs(), 28u);  // every pair of 8
}

TEST(SparseLu, PairsGivenTwiceOrTurnedCountOnce)
{
    EXPECT_EQ(sparse_lu(3, {{0, 1}, {1, 0}, {1, 2}, {1, 2}, {2, 2}}).pairs(), 2u);
    EXPECT_EQ(sparse_lu(4, {}).pairs(), 0u);
}

TEST(SparseLu, EverySlotIsItsOwn)
{
    const sparse_lu m(4, {{0, 1}, {0, 2}, {0, 3}});  // fills
    std::vector<std::size_t> slots;
    for (std::size_t i = 0; i < 4; ++i)
        for (std::size_t j = 0; j < 4; ++j) slots.push_back(m.slot(i, j));
    std::sort(slots.begin(), slots.end());
    EXPECT_EQ(std::adjacent_find(slots.begin(), slots.end()), slots.end());
}

TEST(SparseLu, APivotThatIsNotAboveZeroIsTold)
{
    // [[1, -2], [-2, 3]] leaves 3 - 4 for the second pivot; [[1, -2], [-2, 4]] nothing
    for (const double last : {3.0, 4.0}) {
        sparse_lu m(2, chain(2));
        m.values()[0] = 1.0;
        m.values()[1] = last;
        m.values()[m.slot(0, 1)] = m.values()[m.slot(1, 0)] = -2.0;
        EXPECT_FALSE(m.eliminate()) << last;
    }
    sparse_lu first(1, {});
    first.values()[0] = -1.0;
    EXPECT_FALSE(first.eliminate());
}

// A chain whose rows outweigh their neighbours two to one, with a branch of two at its middle: what is put in there
// dies away by more than half a row.
TEST(SparseLu, SolvesNearAHeatedRowAsFarAsItIsFelt)
{
    constexpr std::size_t size = 300, middle = 150;
    constexpr double felt = 1e-9;
    std::vector<std::pair<std::size_t, std::size_t>> pairs = chain(size - 2);
    for (auto& [a, b] : pairs) a += 2, b += 2;
    pairs.insert(pairs.end(), {{0, 1}, {1, middle}});
    sparse_lu m(size, pairs);
    for (std::size_t i = 0; i < size; ++i) m.values()[i] = 4.0;
    for (const auto& [a, b] : pairs) m.values()[m.slot(a, b)] = m.values()[m.slot(b, a)] = -1.0;
    ASSERT_TRUE(m.eliminate());
    std::vector<double> all(size, 0.0), near = all;
    all[middle + 20] = near[middle + 20] = 3.0;
    all[middle + 21] = near[middle + 21] = -1.0;
    m.solve(all);
    const sparse_lu::range range = m.solve_near(near, {middle + 20, middle + 22}, felt);
    EXPECT_LT(range.end, middle + 22 + 40);  // 0.27 a row: 1e-9 in 16 rows
    for (std::size_t i = 0; i < size; ++i) {
        EXPECT_NEAR(near[i], all[i], 10.0 * felt) << i;
        if (i < range.begin || i >= range.end) {
            EXPECT_EQ(near[i], 0.0) << i;
        }
    }
}

TEST(SparseLu, CopiesAreEliminatedApart)
{
    sparse_lu one(2, chain(2));
    one.values()[0] = one.values()[1] = 2.0;
    sparse_lu other = one;
    ASSERT_TRUE(one.eliminate());
    EXPECT_EQ(other.values()[0], 2.0);
}
