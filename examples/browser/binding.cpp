// What the page calls: plain functions, because no exception and no C++ type crosses into a script.
#include <chrono>
#include <cstddef>
#include <cstdlib>
#include <cstring>
#include <optional>
#include <string>
#include <string_view>

#include "station_answer.hpp"

extern "C" {

/// The report of a station file, or why there is none, as JSON in UTF-8 (see station_answer.hpp).
/// @param text of the file @param length of it in bytes @param file_name as messages call it
/// @param date the report's, as 20261126; 0: none
/// @param whole whether the text holds every limit, surfaces, sources and judgement too
/// @return a text that the caller frees; null where memory ran out
char* weldloop_report(const char* text, std::size_t length, const char* file_name, int date, int whole)
{
    const auto answer = weldloop::attempt([&] {
        browser::request asked{.text = std::string_view(text, length), .file_name = file_name};
        if (date != 0)
            asked.date = std::chrono::year(date / 10000) / std::chrono::month(static_cast<unsigned>(date / 100 % 100)) /
                         std::chrono::day(static_cast<unsigned>(date % 100));
        if (whole != 0) asked.detail = weldloop::report_detail::whole;
        return browser::answer_to(asked);
    });
    if (!answer) return nullptr;
    const std::size_t size = answer->size() + 1;
    auto* const copy = static_cast<char*>(std::malloc(size));
    if (copy != nullptr) std::memcpy(copy, answer->c_str(), size);
    return copy;
}
}
