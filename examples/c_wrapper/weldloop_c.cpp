// The shared library behind weldloop_c.h.
#include "weldloop_c.h"

#include <new>
#include <string>
#include <string_view>
#include <utility>

#include <weldloop/core/attempt.hpp>
#include <weldloop/field/station_answers.hpp>
#include <weldloop/io/report/report_json.hpp>
#include <weldloop/io/station/station_file.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/remedies.hpp>
#include <weldloop/version.hpp>

namespace wl = weldloop;

struct weldloop_result {
    wl::outcome<std::string> report;
};

namespace {

std::string report_of(std::string_view text, std::string_view file_name)
{
    const wl::described_station d = wl::described_station_from_toml(text, file_name);
    const wl::assessment found = wl::assess(d.station, d.service);
    return wl::report_json(d.station, found, wl::remedies_for(d.station),
                           {.answers = wl::answers_of(d.station, found, d.observations), .units = d.units});
}

const wl::failure* failure_of(const weldloop_result* result)
{
    return result == nullptr ? nullptr : result->report.failure();
}

}  // namespace

#define WELDLOOP_TEXT(number) #number
#define WELDLOOP_AS_TEXT(major, minor, patch) WELDLOOP_TEXT(major) "." WELDLOOP_TEXT(minor) "." WELDLOOP_TEXT(patch)

extern "C" {

// what the header declares is exported, and nothing else
#pragma GCC visibility push(default)

int weldloop_c_interface()
{
    return WELDLOOP_C_INTERFACE;
}

const char* weldloop_version()
{
    return WELDLOOP_AS_TEXT(WELDLOOP_VERSION_MAJOR, WELDLOOP_VERSION_MINOR, WELDLOOP_VERSION_PATCH);
}

weldloop_result* weldloop_assess(const char* text, size_t length, const char* file_name)
{
    auto report = wl::attempt([&] {
        const std::string_view content = text == nullptr ? std::string_view() : std::string_view(text, length);
        return report_of(content, file_name == nullptr ? std::string_view("station") : std::string_view(file_name));
    });
    return new (std::nothrow) weldloop_result{std::move(report)};
}

int weldloop_has_report(const weldloop_result* result)
{
    return result != nullptr && result->report.has_answer() ? 1 : 0;
}

const char* weldloop_report(const weldloop_result* result)
{
    return weldloop_has_report(result) != 0 ? result->report.answer()->c_str() : "";
}

const char* weldloop_error(const weldloop_result* result)
{
    if (result == nullptr) return "out of memory";
    const wl::failure* why = failure_of(result);
    return why == nullptr ? "" : why->text.c_str();
}

int weldloop_error_number(const weldloop_result* result)
{
    const wl::failure* why = failure_of(result);
    return why == nullptr || !why->id ? 0 : static_cast<int>(*why->id);
}

void weldloop_release(weldloop_result* result)
{
    delete result;
}

#pragma GCC visibility pop
}
