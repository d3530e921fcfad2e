#pragma once
/// @file
/// The accepted word that a mistyped one most likely meant.

#include <algorithm>
#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace weldloop {

/// Letters to insert, delete, replace or swap with a neighbour to turn one word into the other (optimal string
/// alignment distance).
[[nodiscard]] inline std::size_t typing_distance(std::string_view a, std::string_view b)
{
    std::vector<std::vector<std::size_t>> d(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
    for (std::size_t i = 0; i <= a.size(); ++i) d[i][0] = i;
    for (std::size_t j = 0; j <= b.size(); ++j) d[0][j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i)
        for (std::size_t j = 1; j <= b.size(); ++j) {
            d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0U : 1U)});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
        }
    return d[a.size()][b.size()];
}

/// Whether two words differ at most in the case of their (ASCII) letters.
[[nodiscard]] constexpr bool same_but_for_case(std::string_view a, std::string_view b)
{
    const auto lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [lower](char x, char y) { return lower(x) == lower(y); });
}

/// The word of a list that is nearest to `word`; empty for an empty list. The same word in another case comes first,
/// then the fewest slips of typing (over the first 64 letters); ties go to the earlier word.
[[nodiscard]] inline std::string_view nearest_word(std::string_view word, std::span<const std::string_view> words)
{
    for (const std::string_view w : words)
        if (same_but_for_case(word, w)) return w;
    std::string_view best;
    std::size_t best_distance = static_cast<std::size_t>(-1);
    for (const std::string_view w : words) {
        const std::size_t distance = typing_distance(word.substr(0, 64), w.substr(0, 64));
        if (distance < best_distance) {
            best = w;
            best_distance = distance;
        }
    }
    return best;
}

}  // namespace weldloop
