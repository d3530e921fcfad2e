#pragma once
/// @file
/// The statements on the weld in one sentence.

#include <optional>
#include <string>
#include <vector>

#include <weldloop/rating/weld_statement.hpp>

namespace weldloop {

/// "The welder typically notices a soft arc, poor starts." Empty without statements. @param weld the statements
[[nodiscard]] inline std::string weld_sentence(const std::vector<weld_statement>& weld)
{
    std::string out;
    std::optional<weld_id> last;
    for (const weld_statement& w : weld) {
        if (last == w.id) continue;
        out.append(out.empty() ? "The welder typically notices " : ", ").append(words_for(w.id));
        last = w.id;
    }
    return out.empty() ? out : out + ".";
}

}  // namespace weldloop
