#pragma once
/// @file
/// The output line of a described supply.

#include <algorithm>
#include <optional>

#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/load_line.hpp>
#include <weldloop/law/no_load_limit.hpp>
#include <weldloop/law/source_line.hpp>
#include <weldloop/part/supply.hpp>

namespace weldloop {

/// What a supply is used for.
struct supply_use {
    weldloop::process process;  ///< sets the load voltage at which a constant-current supply gives its setting
    weldloop::current current;  ///< of the job [A], above 0: its setting where the supply states none
};

/// Voltage without current, effective where that is given, else the peak of direct current (without ripple); empty
/// where the supply does not say, also for alternating current known by its peak alone: its effective value is less.
/// @param s the supply
[[nodiscard]] inline std::optional<voltage> no_load_voltage_of(const supply& s)
{
    if (s.no_load.rms) return s.no_load.rms;
    return s.no_load.kind == output_current::direct ? s.no_load.peak : std::nullopt;
}

namespace detail {
[[nodiscard]] inline voltage required_no_load(const supply& s)
{
    const std::optional<voltage> v = no_load_voltage_of(s);
    if (!v)
        throw missing_data_error("supply no-load voltage", s.no_load.peak ? "given by its peak alone" : "not given",
                                 "that of a supply which falls from it, of alternating current its effective value");
    return require_positive(*v, "supply no-load voltage");
}
[[nodiscard]] inline current set_current(const supply& s, const supply_use& use)
{
    require_not_negative(s.current_setting, "supply current setting");
    return s.current_setting.value() > 0.0 ? s.current_setting : require_positive(use.current, "welding current");
}
}  // namespace detail

/// The output line of a supply as it is set.
///
/// Constant current: its setting at the conventional load voltage of the process, or at its highest output where that
/// is lower. Engine driven: straight from its no-load voltage through its setting. With remote sensing it is the line
/// between the taps.
/// @param s the supply @param use process and current of the job
/// @throws missing_data_error, out_of_range_error, not_finite_error for a supply that cannot be
[[nodiscard]] inline source_line output_line_of(const supply& s, const supply_use& use)
{
    switch (s.kind) {
    case supply_kind::constant_voltage: break;
    case supply_kind::constant_current: {
        require_positive(s.highest_output, "supply highest output");
        const current set = detail::set_current(s, use);
        return source_line::constant_current(
            {.setting = set,
             .at = std::min(s.highest_output, conventional_load_voltage(use.process, set)),
             .highest_output = s.highest_output,
             .rise = s.rise,
             .no_load = no_load_voltage_of(s)});
    }
    case supply_kind::drooping: {
        if (!s.short_circuit)
            throw missing_data_error("supply short-circuit current", "not given", "that of a drooping supply");
        const voltage no_load = detail::required_no_load(s);
        return s.shape == droop_shape::straight ? source_line::straight(no_load, *s.short_circuit)
                                                : source_line::reactive(no_load, *s.short_circuit);
    }
    case supply_kind::engine_driven:
        return source_line::straight_through(
            detail::required_no_load(s),
            source_point{detail::set_current(s, use), require_positive(s.setting, "supply setting")});
    case supply_kind::measured: return source_line::measured(s.points);
    }
    return source_line::constant_voltage(
        {.setting = require_positive(s.setting, "supply setting"), .fall = s.fall, .limit = s.limit});
}

/// The highest voltage at which a supply gives a current [V]; 0 where it does not give it at all.
/// Constant current: its highest output, as stated for the job's current. @param s the supply @param use process and
/// current of the job @throws as output_line_of()
[[nodiscard]] inline voltage highest_output_at(const supply& s, const supply_use& use)
{
    const source_line line = output_line_of(s, use);
    if (s.kind == supply_kind::constant_current) return s.highest_output;
    const auto [least, most] = line.currents();
    return use.current > most ? voltage{} : line.at_current(std::max(use.current, least)).voltage;
}

/// What is known of the voltage without current [V]: as stated, else where the output line begins.
/// @param s the supply @param use process and current of the job @throws as output_line_of()
[[nodiscard]] inline voltage voltage_without_load(const supply& s, const supply_use& use)
{
    if (const std::optional<voltage> stated = no_load_voltage_of(s)) return *stated;
    return output_line_of(s, use).at(0.0).voltage;
}

/// The no-load voltage that is held against its limit: as stated, else where the output line begins without current.
/// @param s the supply @param use process and current of the job @throws as output_line_of()
[[nodiscard]] inline no_load_voltage known_no_load_of(const supply& s, const supply_use& use)
{
    no_load_voltage out = s.no_load;
    if (!out.peak && !out.rms) out.rms = output_line_of(s, use).no_load();
    return out;
}

/// What a supply feels like to an arc at the job's current.
enum class output_steepness {
    flat,   ///< a little less voltage gives much more current: holds the length of a wire arc
    steep,  ///< a little less voltage gives little more current: bears an arc whose length a hand holds
};

/// Lines that fall by less than 0.1 V/A count as flat, else as steep: constant-voltage supplies fall by some
/// hundredths, supplies for covered electrodes by several tenths of a volt and more.
inline constexpr source steepness_judgement{
    "output lines that fall by less than 0.1 V/A at the job's current are flat", "2026", {}, source_kind::judgement};

/// Whether a supply is flat or steep at the job's current; steep where the line ends there. @param s the supply @param
/// use process and current of the job
/// @throws as output_line_of() @see steepness_judgement
[[nodiscard]] inline output_steepness steepness_of(const supply& s, const supply_use& use)
{
    constexpr double flat_below = 0.1;  // V/A
    constexpr double within = 0.05;     // of the current, either way
    if (s.kind == supply_kind::constant_current) return output_steepness::steep;
    if (s.kind == supply_kind::constant_voltage)  // below its limit; where that is met is another question
        return s.fall.value() < flat_below ? output_steepness::flat : output_steepness::steep;
    const source_line line = output_line_of(s, use);
    const auto [least, most] = line.currents();
    if (use.current >= most || use.current <= least)
        return output_steepness::steep;  // where it is not known to give more or less
    const current low = std::max(least, current((1.0 - within) * use.current)),
                  high = std::clamp(current((1.0 + within) * use.current), least, most);
    const double fall = (line.at_current(low).voltage - line.at_current(high).voltage).value() / (high - low).value();
    return fall < flat_below ? output_steepness::flat : output_steepness::steep;
}

}  // namespace weldloop
