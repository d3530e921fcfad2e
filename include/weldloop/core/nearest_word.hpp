#pragma once
/// @file
/// The accepted word that a mistyped one most likely meant.

#include <algorithm>
#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <weldloop/core/trade_words.hpp>

namespace weldloop {

/// Letters to insert, delete, replace or swap with a neighbour to turn one word into the other (optimal string
/// alignment distance).
[[nodiscard]] inline std::size_t typing_distance(std::string_view a, std::string_view b)
{
    // three rows of the table of distances between beginnings: two before, one before, and this one
    const std::size_t width = b.size() + 1;
    std::vector<std::size_t> rows(3 * width);
    std::size_t *before = rows.data(), *above = before + width, *row = above + width;
    for (std::size_t j = 0; j < width; ++j) above[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        row[0] = i;
        for (std::size_t j = 1; j < width; ++j) {
            row[j] = std::min({above[j] + 1, row[j - 1] + 1, above[j - 1] + (a[i - 1] == b[j - 1] ? 0U : 1U)});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                row[j] = std::min(row[j], before[j - 2] + 1);
        }
        std::swap(before, above);
        std::swap(above, row);
    }
    return above[b.size()];
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

/// Whether two words are near enough to name the one where the other stands: at most one slip of typing in three
/// letters of the longer one, over the first 64. No word of one or two letters is near another.
[[nodiscard]] inline bool is_near(std::string_view a, std::string_view b)
{
    const std::string_view x = a.substr(0, 64), y = b.substr(0, 64);
    return 3 * typing_distance(x, y) <= std::max(x.size(), y.size());
}

/// The word of a list that was meant, where that can be told: the same in another case, the one a word of the trade
/// stands for, or the only one nearest by slips of typing if it is near. Empty where nothing is near, or two are
/// equally.
/// @param word what stands there @param words what would be accepted
[[nodiscard]] inline std::string_view near_word(std::string_view word, std::span<const std::string_view> words)
{
    for (const std::string_view w : words)
        if (same_but_for_case(word, w)) return w;
    if (const std::string_view meant = trade_meaning(word, words); !meant.empty()) return meant;
    const std::string_view best = nearest_word(word, words);
    if (!is_near(word, best)) return {};
    const auto slips = [word](std::string_view w) { return typing_distance(word.substr(0, 64), w.substr(0, 64)); };
    for (const std::string_view w : words)
        if (w != best && slips(w) == slips(best)) return {};
    return best;
}

}  // namespace weldloop
