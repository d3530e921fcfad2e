#pragma once
// A plant's stations, made by number, and what a sweep keeps of each: plain numbers, so that any host may spread the
// work and send the answers about. Nothing is shared between two stations.

#include <algorithm>
#include <array>
#include <cstddef>
#include <ctime>
#include <iomanip>
#include <iostream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include <weldloop/core/attempt.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/assess.hpp>

namespace plant {

namespace wl = weldloop;
using namespace wl::literals;

/// Bench number n of the plant: lead, current, clamp and its seat go round in cycles of their own.
inline wl::station bench(std::size_t n)
{
    static constexpr std::array seats{wl::surface_state::clean, wl::surface_state::light_rust,
                                      wl::surface_state::mill_scale_bitten, wl::surface_state::heavy_rust,
                                      wl::surface_state::painted_pierced};
    const auto number = static_cast<double>(n);
    const wl::current set = (120.0 + 10.0 * static_cast<double>(n % 13)) * 1_A;
    const wl::length lead = (20.0 + 5.0 * static_cast<double>(n % 17)) * 1_ft;
    const wl::conductor_size size = n % 3 == 0 ? wl::awg(1) : n % 3 == 1 ? wl::aught(1) : wl::aught(3);
    wl::station out{.name = "bench " + std::to_string(n + 1),
                    .job = {.process = wl::process::smaw, .current = set, .duty = wl::duty_cycle::of(4_min, 10_min)},
                    .where = {.air = wl::temperature::celsius(15.0 + 0.001 * number)}};
    out.path = {wl::welding_cable(size, lead).named("electrode lead"),
                wl::electrode_holder("holder", 300_A),
                wl::arc{},
                wl::work_connection{.clamp = n % 2 == 0 ? wl::spring_clamp(300_A) : wl::screw_clamp(300_A),
                                    .onto = wl::mild_steel,
                                    .surface = seats[n % seats.size()],
                                    .name = "work clamp"},
                wl::crimped_lug("clamp lug", size),
                wl::welding_cable(size, lead).named("work lead")};
    return out;
}

/// What is kept of a bench. Bytes of it may be sent as they are.
struct row {
    std::size_t bench;  // its number
    double drop_V;      // typical; 0 where none is known
    int weakest;        // place of that part
    int verdict;        // on it; -1: not assessed
};
static_assert(std::is_trivially_copyable_v<row>);

/// Assesses a bench. A pure function, and no exception leaves it.
inline row swept(std::size_t n) noexcept
{
    const wl::outcome<row> found = wl::attempt([n] {
        const wl::assessment a = wl::assess(bench(n));
        const wl::part_result& weakest = a.weakest();
        return row{n, a.conducts ? wl::number_in(a.total_drop.typical, "V") : 0.0, static_cast<int>(weakest.place),
                   static_cast<int>(weakest.verdict)};
    });
    return found ? *found : row{n, 0.0, -1, -1};
}

/// Prints how many benches have which verdict on their weakest part, and the ten worst: by verdict, then by volts.
/// @param rows of every bench, in any order
inline void print(std::vector<row> rows, std::ostream& out)
{
    const auto worse = [](const row& a, const row& b) {
        if (a.verdict != b.verdict) return a.verdict > b.verdict;
        return a.drop_V != b.drop_V ? a.drop_V > b.drop_V : a.bench < b.bench;
    };
    std::sort(rows.begin(), rows.end(), worse);
    for (std::size_t from = 0; from < rows.size();) {
        const int verdict = rows[from].verdict;
        const auto is_other = [verdict](const row& r) { return r.verdict != verdict; };
        const auto end = std::find_if(rows.begin() + static_cast<std::ptrdiff_t>(from), rows.end(), is_other);
        const auto to = static_cast<std::size_t>(end - rows.begin());
        out << std::setw(6) << to - from << "  "
            << (verdict < 0 ? "not assessed" : wl::to_text(static_cast<wl::verdict>(verdict))) << '\n';
        from = to;
    }
    constexpr std::size_t most = 10;
    out << "worst:\n" << std::fixed;
    for (std::size_t i = 0; i < std::min(rows.size(), most); ++i)
        out << "  bench " << std::setw(6) << rows[i].bench + 1 << "  part " << rows[i].weakest + 1 << "  "
            << std::setprecision(3) << std::setw(8) << rows[i].drop_V << " V lost\n";
}

/// Processor time this process has used, of all its threads [s]: on a machine that others use too it says better than
/// the clock on the wall what spreading the work costs.
inline double processor_seconds()
{
    return static_cast<double>(std::clock()) / static_cast<double>(CLOCKS_PER_SEC);
}

/// A count from the command line, or what is usual. @throws std::invalid_argument for what is no count above 0
inline std::size_t count_of(int words, char** word, int at, std::size_t usual)
{
    if (at >= words) return usual;
    const std::string_view text = word[at];
    constexpr std::size_t most = 9;  // digits
    std::size_t out = 0;
    for (const char c : text) {
        if (c < '0' || c > '9') throw std::invalid_argument(std::string(text) + " is no count");
        out = 10 * out + static_cast<std::size_t>(c - '0');
    }
    if (text.empty() || text.size() > most || out == 0) throw std::invalid_argument(std::string(text) + " is no count");
    return out;
}

}  // namespace plant
