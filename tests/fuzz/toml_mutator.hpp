#pragma once
// Changes to a station file that keep most of it readable: lines taken from one place to another, texts in quotes
// changed by their number. What libFuzzer does by itself breaks nearly every file at its first byte.
#ifdef WELDLOOP_FUZZ_WITH_LIBFUZZER

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstring>
#include <random>
#include <string>
#include <string_view>
#include <vector>

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t most);

namespace fuzz {

inline std::vector<std::string> lines_of(std::string_view text)
{
    std::vector<std::string> out;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size() - 1) + 1;
        out.emplace_back(text.substr(0, end));
        text.remove_prefix(end);
    }
    return out;
}

/// Another number in place of the one a quoted text begins with.
inline void change_number(std::string& line, std::mt19937& draw)
{
    constexpr std::array<std::string_view, 18> numbers{"0",   "-1",  "1e-300", "1e300", "1e-9", "0.001",
                                                       "0.1", "1",   "2",      "7.5",   "10",   "33",
                                                       "100", "500", "1000",   "5000",  "1e5",  "1e9"};
    const std::size_t open = line.find('"');
    if (open == std::string::npos) return;
    std::size_t end = open + 1;
    while (end < line.size() && std::string_view("0123456789.+-e").find(line[end]) != std::string_view::npos) ++end;
    if (end == open + 1) return;
    line.replace(open + 1, end - open - 1, numbers[draw() % numbers.size()]);
}

}  // namespace fuzz

extern "C" inline std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t most,
                                                      unsigned seed);
__attribute__((used)) extern "C" inline std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size,
                                                                            std::size_t most, unsigned seed)
{
    std::mt19937 draw(seed);
    std::vector<std::string> lines = fuzz::lines_of({reinterpret_cast<const char*>(data), size});
    if (lines.empty() || draw() % 4 == 0) return LLVMFuzzerMutate(data, size, most);
    for (unsigned changes = 1 + draw() % 4; changes > 0 && !lines.empty(); --changes) {
        const std::size_t at = draw() % lines.size(), other = draw() % lines.size();
        const auto place = [&](std::size_t i) { return lines.begin() + static_cast<std::ptrdiff_t>(i); };
        // a whole section, from its heading to the next
        std::size_t begin = at, end = at + 1;
        while (begin > 0 && lines[begin].front() != '[') --begin;
        while (end < lines.size() && lines[end].front() != '[') ++end;
        switch (draw() % 8) {
        case 0: lines.erase(place(at)); break;
        case 1: lines.insert(place(other), std::string(lines[at])); break;
        case 2: std::swap(lines[at], lines[other]); break;
        case 3: {  // the text of another line
            const std::size_t from = lines[other].find('='), to = lines[at].find('=');
            if (from != std::string::npos && to != std::string::npos)
                lines[at] = lines[at].substr(0, to) + lines[other].substr(from);
            break;
        }
        case 4: {
            const std::vector<std::string> section(place(begin), place(end));
            lines.insert(place(begin), section.begin(), section.end());
            break;
        }
        case 5: lines.erase(place(begin), place(end)); break;
        default: fuzz::change_number(lines[at], draw); break;
        }
    }
    std::string text;
    for (const std::string& line : lines) text += line;
    text.resize(std::min(text.size(), most));
    std::memcpy(data, text.data(), text.size());
    return text.size();
}

#endif
