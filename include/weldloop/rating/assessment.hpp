#pragma once
/// @file
/// The result of assessing a station.

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/circuit/loop_state.hpp>
#include <weldloop/circuit/operating_state.hpp>
#include <weldloop/circuit/path_part.hpp>
#include <weldloop/circuit/way.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/life/covering_ageing.hpp>
#include <weldloop/life/grip_forecast.hpp>
#include <weldloop/life/station_service.hpp>
#include <weldloop/rating/course_effects.hpp>
#include <weldloop/rating/finding_id.hpp>
#include <weldloop/rating/remedy_id.hpp>
#include <weldloop/rating/verdict.hpp>
#include <weldloop/rating/weld_statement.hpp>
#include <weldloop/rating/yearly_loss.hpp>

namespace weldloop {

/// One limit of a part, held against what the part has at the place the limit is defined for.
struct limit_use {
    std::string at = {};                         ///< the place, or what is held: "conductor", "handle", "crimp"
    std::string name = {};                       ///< where the limit comes from, in words
    std::optional<temperature> limit = {};       ///< of a temperature limit
    std::optional<band<temperature>> peak = {};  ///< what is held against it
    double used = 0.0;             ///< typical share in use: rise over allowed rise, or resistance over allowed
    double used_high = 0.0;        ///< the same share, 0 or above at the 95 % point
    likelihood exceeds = 0.0;      ///< probability that it is exceeded, by the scatter of all joints
    const source* from = nullptr;  ///< where the limit stands
};

/// What the verdict on a part rests on.
enum class deciding_fact {
    nothing,      ///< there is nothing to judge it by
    limit,        ///< the first of its limits
    spots,        ///< its contact spots yield or melt, or are all there is to judge it by
    no_contact,   ///< no metal touches metal, typically or in a poor case
    melting_part  ///< before the loop settles a place of it passes what it bears, typically or in a poor case
};

/// The words for it.
[[nodiscard]] constexpr std::string_view to_text(deciding_fact d)
{
    switch (d) {
    case deciding_fact::nothing: return "nothing";
    case deciding_fact::limit: return "limit";
    case deciding_fact::spots: return "contact spots";
    case deciding_fact::no_contact: return "no contact";
    case deciding_fact::melting_part: return "bound of a place";
    }
    return "nothing";
}

/// A place of a part with its highest temperature in the duty period.
struct place_result {
    part_place what = part_place::metal;  ///< which
    band<temperature> peak = {};          ///< with its scatter
};

/// One part of an assessed station.
struct part_result {
    std::string name = {};              ///< its name, or kind and place
    part_kind kind = part_kind::cable;  ///< what it is
    std::string word = {};              ///< of its kind, as printed; of a measured part its own
    std::size_t place = 0;              ///< its number in the station, from 0: the path's parts, then those of the ways
    std::string way = {};               ///< the way it stands in; empty: the path
    band<weldloop::current> current = {};  ///< [A] 0 or above, through it while the arc burns
    bool conducts = true;                  ///< false: an open circuit, every number below is that of no current
    band<voltage> drop = {};               ///< [V] any, while current flows
    band<power> loss = {};                 ///< [W] 0 or above, heat made in it while current flows
    temperature peak_temperature = {};     ///< peak.typical
    band<temperature> peak = {};  ///< highest in the duty period, at the place the deciding limit is defined for;
                                  ///< without a temperature limit at its hottest place; not of contact spots
    part_place peak_at = part_place::metal;              ///< where that is
    std::vector<place_result> places = {};               ///< all places with a temperature of their own
    std::optional<band<temperature>> hottest_spot = {};  ///< of the contact spots, for joints
    std::vector<limit_use> limits = {};                  ///< every limit it is held against, the deciding one first
    std::optional<temperature> limit = {};               ///< the deciding one, where that is a temperature
    std::string limit_name = {};                         ///< of the deciding one, in words
    double used = 0.0;  ///< share, 0 or above, of the deciding limit in use, or of the softening drop by its spots
    double softening_used = 0.0;  ///< ratio, drop of the contact nearest to it over the softening drop of its metals
    likelihood exceeds = 0.0;     ///< probability that some limit is exceeded or spots yield, by the scatter of joints
    weldloop::verdict verdict = verdict::not_judged;    ///< what is said of it
    deciding_fact decided_by = deciding_fact::nothing;  ///< what that rests on
    bool with_stray_open = false;    ///< all of this is the case with every stray way open: worse than as they stand
    bool open_in_poor_case = false;  ///< it conducts typically, and not with every joint at the 95 % point
    bool is_intermittent = false;    ///< it was seen to make and break the circuit
    bool stray_hides_it = false;     ///< as stray ways stand the verdict would be milder
    std::string reason = {};         ///< why, in one sentence
    std::vector<std::string> notes = {};     ///< what is known beside: a type test of new parts
    std::optional<grip_forecast> grip = {};  ///< for clamps held by a spring or screw
    std::optional<covering_age> covering_use =
        {};                      ///< of a lead's covering: thermal life that the hours looked ahead use up
    weldloop::basis basis = {};  ///< sources and left ranges
};

/// How much a finding weighs.
enum class finding_severity {
    notice,    ///< worth knowing
    warning,   ///< to be put right
    stop_job,  ///< no welding until it is cured
};

/// The words for a severity.
[[nodiscard]] constexpr std::string_view to_text(finding_severity s)
{
    switch (s) {
    case finding_severity::notice: return "notice";
    case finding_severity::warning: return "warning";
    case finding_severity::stop_job: return "stop the job";
    }
    return "warning";
}

/// Something found of the loop as a whole, beside the verdicts on its parts.
struct loop_finding {
    finding_id id = finding_id::open_circuit;               ///< which
    finding_severity severity = finding_severity::warning;  ///< how much it weighs
    std::string text = {};                                  ///< one sentence
};

/// One way of an assessed station.
struct way_result {
    std::string name = {};                 ///< its name, or "way 2"
    way_kind kind = way_kind::intended;    ///< what it is there for
    band<weldloop::current> current = {};  ///< largest along it while the arc burns
    fraction share = 0.0;                  ///< of the arc's current, typically
    bool conducts = true;                  ///< false: some part of it is open
    bool spans_arc = false;                ///< it joins what lies before the arc with what lies behind: taken as open
};

/// A whole assessed station.
struct assessment {
    std::string name = {};                        ///< of the station
    std::vector<part_result> parts = {};          ///< in the order of the path, then of the ways; the arc left out
    std::vector<way_result> ways = {};            ///< beside the path
    loop_outcome outcome = loop_outcome::solved;  ///< of the typical case; anything else: no drops, no temperatures
    bool conducts = true;                         ///< outcome is `solved`
    std::vector<loop_finding> findings = {};      ///< of the loop as a whole, the gravest first
    band<voltage> total_drop = {};                ///< [V] any, what the loop takes while current flows
    band<voltage> wire_extension_drop =
        {};  ///< [V] 0 or above, of that, what the wire beyond a gun's tip takes; zero without a gun
    band<voltage> arc_voltage = {};              ///< [V] any, what is left for the arc; zero if open
    std::string arc_basis = {};                  ///< what that value is relative to
    std::optional<band<voltage>> headroom = {};  ///< [V] any; constant-current supply: output left after arc and loop
    std::optional<operating_point> operating = {};  ///< of supply, loop and arc together, typically, without the state
                                                    ///< of its loop; empty without a supply
    std::optional<course_effects> course = {};      ///< what alternating or pulsed current meets; empty for direct
                                                    ///< current and without a settled loop
    std::optional<yearly_loss> year = {};           ///< what the loss comes to; empty unless a year of work is stated
    station_service service = {};                   ///< the use its grips and coverings were looked ahead with
    std::vector<weld_statement> weld = {};          ///< what the welder typically notices; none for a sound loop
    std::vector<std::string> cautions = {};         ///< that the assessed case calls for, the general ones first
    std::vector<source> sources = {};               ///< of every number used

    /// The part with the gravest verdict; among equals the one that uses most of its limit.
    /// @throws bad_station_error for an assessment without parts
    [[nodiscard]] const part_result& weakest() const&
    {
        if (parts.empty()) throw bad_station_error("assessment", "without parts", "the result of assess()");
        return *std::max_element(parts.begin(), parts.end(), [](const part_result& a, const part_result& b) {
            return gravity_of(a.verdict) != gravity_of(b.verdict) ? gravity_of(a.verdict) < gravity_of(b.verdict)
                                                                  : a.used < b.used;
        });
    }
    [[nodiscard]] const part_result& weakest() const&& = delete;  ///< the part would die with the assessment
};

/// What a remedy costs to do, from the least.
enum class remedy_effort {
    tighten,       ///< a spanner
    clean,         ///< a grinder, a brush, a cloth
    move,          ///< a clamp or lead laid elsewhere
    re_terminate,  ///< cut back and crimp anew
    replace,       ///< something is bought
    raise_volts,   ///< the supply is set higher: costs heat, and leaves the cause
    weld_less,     ///< longer rests, less current: costs work done
};

/// The words for an effort.
[[nodiscard]] constexpr std::string_view to_text(remedy_effort e)
{
    switch (e) {
    case remedy_effort::tighten: return "tighten";
    case remedy_effort::clean: return "clean";
    case remedy_effort::move: return "move";
    case remedy_effort::re_terminate: return "re-terminate";
    case remedy_effort::replace: return "replace";
    case remedy_effort::raise_volts: return "raise volts";
    case remedy_effort::weld_less: return "weld less";
    }
    return "replace";
}

/// Something to do, and what it would regain.
struct remedy {
    std::string what = {};                  ///< an instruction in plain words
    std::string part = {};                  ///< the part it is done to
    voltage volts_regained = {};            ///< typical loop drop saved
    temperature_difference cooled_by = {};  ///< typical fall of that part's peak temperature
    bool restores_circuit = false;          ///< it closes an open circuit, or gives a loop without one a steady state
    remedy_effort effort = remedy_effort::replace;  ///< what it takes
    std::optional<verdict> verdict_before = {};     ///< of that part
    std::optional<verdict> verdict_after = {};      ///< of that part with this step alone; none if it is gone then
    bool clears_verdict = false;                    ///< the part had a verdict against it and has none then
    std::vector<finding_id> clears_findings = {};   ///< findings of the loop that are gone then
    std::vector<weld_id> clears_weld = {};       ///< statements on the weld that rest on inductance and are gone then
    std::vector<std::string> makes_moot = {};    ///< steps that need not be taken then, by their words
    std::vector<std::string> clears_parts = {};  ///< every part that had a verdict against it and has none then
    bool is_summary = false;                     ///< several of the other steps, taken together
    bool is_remark = false;                      ///< no step: a sentence on what no listed step cures
    std::optional<remedy_id> id = {};  ///< which; none for a reading to take again, or what a forecast calls for
};

}  // namespace weldloop
