#pragma once
/// @file
/// Words a report must never hold.

#include <algorithm>
#include <cctype>
#include <string>
#include <string_view>

namespace weldloop::test {

/// The first word or phrase in a text that promises what a calculation cannot; empty if there is none.
inline std::string forbidden_word_in(std::string_view text)
{
    std::string lower(text);
    std::transform(lower.begin(), lower.end(), lower.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    const auto is_letter = [&](std::size_t i) {
        return i < lower.size() && std::isalpha(static_cast<unsigned char>(lower[i])) != 0;
    };
    for (const std::string_view word :
         {"safe", "safely", "approved", "approves", "complies", "compliant", "keep welding"}) {
        for (std::size_t at = lower.find(word); at != std::string::npos; at = lower.find(word, at + 1)) {
            const bool begins = at == 0 || !is_letter(at - 1), ends = !is_letter(at + word.size());
            if (begins && ends) return std::string(word) + " in: " + lower.substr(at > 40 ? at - 40 : 0, 90);
        }
    }
    return {};
}

}  // namespace weldloop::test
