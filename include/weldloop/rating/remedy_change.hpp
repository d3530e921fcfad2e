#pragma once
/// @file
/// A change to a station: the words for it, and what is different then.

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/law/lay.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/remedy_id.hpp>

namespace weldloop {

/// A part that stands in for another.
struct part_change {
    std::size_t at = 0;  ///< its number in the station, before the change
    path_part instead;   ///< what is there then
};

/// A change to a station, not yet weighed.
struct change {
    std::string what = {};                          ///< an instruction in plain words
    remedy_id id = remedy_id::larger_make;          ///< which change to such a part
    std::size_t part = 0;                           ///< the part it is done to, its number before the change
    remedy_effort effort = remedy_effort::replace;  ///< what it takes
    std::vector<part_change> parts = {};            ///< what is different in the path
    std::size_t gone_from = 0;                      ///< first part that is no longer there, of the path or a whole way
    std::size_t gone_to = 0;                        ///< the part after the last one; gone_from: none is gone
    std::optional<weldloop::lay> lay = {};          ///< of every lead without its own
    std::optional<duty_cycle> duty = {};            ///< of the job
    std::optional<weldloop::current> current = {};  ///< [A] of the job, above 0
    bool only_to_cure = false;                      ///< worth it only where it clears something
    bool for_its_hold = false;                      ///< worth it whatever it gains: by it the part holds on

    /// Whether a part is no longer in the path then.
    [[nodiscard]] bool removes(std::size_t i) const { return i >= gone_from && i < gone_to; }
    /// Whether it changes more than single parts.
    [[nodiscard]] bool is_everywhere() const { return lay || duty || current; }
};

/// Makes a change to a station, without taking parts out of its path. @param s in place @param c made for it
/// @throws as part_at()
inline void apply(station& s, const change& c)
{
    for (const part_change& p : c.parts) part_at(s, p.at) = p.instead;
    if (c.lay) {
        s.where.lay = *c.lay;
        s.where.coil_turns = s.where.bundled_leads = std::nullopt;
    }
    if (c.duty) s.job.duty = *c.duty;
    if (c.current) s.job.current = *c.current;
}

/// The station after a change. @param s before @param c made for it @throws as part_at()
[[nodiscard]] inline station changed(station s, const change& c)
{
    apply(s, c);
    if (c.gone_from >= s.path.size()) {  // a whole way, or nothing
        if (c.gone_from < c.gone_to)
            s.ways.erase(s.ways.begin() + static_cast<std::ptrdiff_t>(address_of(s, c.gone_from).way));
        return s;
    }
    s.path.erase(s.path.begin() + static_cast<std::ptrdiff_t>(c.gone_from),
                 s.path.begin() + static_cast<std::ptrdiff_t>(c.gone_to));
    return s;
}

}  // namespace weldloop
