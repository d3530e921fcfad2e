#pragma once
/// @file
/// What single observations say of the states of one part.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/field/observation.hpp>
#include <weldloop/field/part_states.hpp>
#include <weldloop/solve/span_sums.hpp>

namespace weldloop {

namespace detail {

/// Deviations from the middle to an end of a 95 % interval.
inline constexpr double two_sided = 1.959963984540054;

/// Level of a resistance, read or measured with four wires, that was taken wrongly: anything over seven decades
/// [1/ohm].
[[nodiscard]] inline double level_of_wrong(double ohms)
{
    constexpr double least_ohms = 1e-7, natural_logs = 16.0;
    return misread_share / (std::max(ohms, least_ohms) * natural_logs);
}

/// What an observation says of each state of a part, up to a scale: if it is right, and if it was taken wrongly.
struct told_of_part {
    std::size_t which = 0;  // number of the observation
    std::vector<double> right = {};
    double level = 0.0;   // of every state if it was taken wrongly; 0 of what is seen or felt
    bool is_read = true;  // by an instrument

    [[nodiscard]] double at(std::size_t state) const { return right[state] + level; }
};

/// A reading of volts as a resistance at the current it was taken at.
struct volt_reading {
    std::size_t which = 0;            // number of the observation
    std::size_t first = 0, last = 0;  // parts, by their number
    std::size_t at_current = 0;       // see states_of_parts
    double ohms = 0.0, spread = 0.0;  // standard deviation
    bool beyond_supply = false;       // more than the supply has without load

    [[nodiscard]] bool is_of_one() const { return first == last; }
    /// Of a resistance: it was read, or was taken wrongly and could be anything over decades.
    [[nodiscard]] solve::reading_likelihood likelihood() const
    {
        return {.read = ohms,
                .spread = spread,
                .right = (1.0 - misread_share) / (spread * std::sqrt(2.0 * std::numbers::pi)),
                .level = level_of_wrong(ohms)};
    }
};

/// Turns observations into what they say.
class evidence_reader {
public:
    /// @param m errors of meters
    evidence_reader(const station& s, const meters& m) : station_(&s), arc_at_(checked_arc_index(s)), meters_(m)
    {
        require_not_negative(m.volts_floor, "error of the voltmeter");
        require_not_negative(m.amps_floor, "error of the ammeter");
        require_not_negative(m.ohms_floor, "error of the micro-ohmmeter");
        for (const double share : {m.volts_share, m.amps_share, m.ohms_share})
            require_within(share, 0.0, 1.0, "share of a reading that a meter errs by");
    }

    [[nodiscard]] std::size_t number_of(const std::string& name, std::string_view what) const
    {
        const std::size_t p = place_of(*station_, name);
        const path_part& part = part_at(*station_, p);
        if (std::holds_alternative<arc>(part) || std::holds_alternative<junction>(part))
            throw bad_station_error(std::string(what), "\"" + name + "\"", "a part between two points, not the arc");
        return p;
    }
    /// @param which number of the observation
    [[nodiscard]] volt_reading taken(const reading& r, std::size_t which) const
    {
        require_not_negative(r.volts, "reading across " + r.across);
        require_positive(r.current, "current of the reading across " + r.across);
        require_not_negative(r.error, "error of the reading across " + r.across);
        volt_reading out{.which = which};
        out.first = number_of(r.across, "reading across");
        out.last = r.to.empty() ? out.first : number_of(r.to, "reading to");
        const part_address from = address_of(*station_, out.first), to = address_of(*station_, out.last);
        if (from.way != to.way)
            throw bad_station_error("reading across " + r.across, "a span to \"" + r.to + "\", which is in another way",
                                    "first and last part of one way");
        if (out.first > out.last) std::swap(out.first, out.last);
        if (from.way == part_address::trunk && out.first < arc_at_ && arc_at_ < out.last)
            throw bad_station_error("reading across " + r.across, "a span that holds the arc",
                                    "parts on one side of the arc");
        const double amps = r.current.value();
        out.ohms = (r.volts / r.current).value();
        const voltage error =
            r.error > voltage{} ? r.error : voltage(meters_.volts_share * r.volts + meters_.volts_floor);
        out.beyond_supply = r.volts - error > most_volts_of(*station_);
        // what a reading of nothing still cannot tell apart
        out.spread =
            std::max(std::hypot((error / r.current).value(), out.ohms * by_amps(amps)) / two_sided, least_spread);
        return out;
    }
    /// Half of the 95 % interval of an ammeter, as a share.
    [[nodiscard]] double by_amps(double amps) const { return meters_.amps_share + meters_.amps_floor.value() / amps; }
    [[nodiscard]] const meters& used() const { return meters_; }

    [[nodiscard]] static told_of_part told(const volt_reading& r, const part_states& of)
    {
        const solve::reading_likelihood likelihood = r.likelihood();
        return by_value(r.which, of, likelihood.level, [&](std::size_t i) {
            const double ohms = of.ohms[r.at_current][i];
            if (!of.is_beyond_wear(i)) return likelihood.if_right(ohms);
            return r.beyond_supply ? 0.0 : of_failing(r.ohms, ohms, std::hypot(r.spread, failing_wanders * ohms));
        });
    }
    /// @param states those of its part @param solved where the job's own current is among the currents
    [[nodiscard]] told_of_part told(const heat_observation& o, std::size_t which, const part_states& of,
                                    const states_of_parts& solved) const
    {
        require_positive(o.error, "error of the temperature of " + o.part);
        constexpr double range = 300.0, model_share = 0.1;  // K; of a rise
        const std::size_t p = number_of(o.part, "temperature of"), l = solved.main();
        const ohms_in_loop::warmth warm = solved.loop_at(l).warmth_of(p);
        const double amps = solved.loop_at(l).amps_through(p), usual = of.typical_ohms(l);
        const double read = (o.hottest - station_->where.air).value();
        return by_value(which, of, misread_share / range, [&](std::size_t i) {
            const double ohms = of.ohms[l][i];
            const double rise = warm.by_watt > 0.0 ? warm.peak + warm.by_watt * amps * amps * (ohms - usual)
                                                   : warm.peak * (usual > 0.0 ? ohms / usual : 1.0);
            if (of.is_beyond_wear(i)) {
                const double at = std::min(rise, failing_rise_limit);
                const double by_heat =
                    of_failing(read, at, std::hypot(o.error.value() / two_sided, failing_rise_spread * at));
                const double hotter =
                    at < read && read < failing_rise_limit ? (1.0 - misread_share) / (failing_rise_limit - at) : 0.0;
                return (1.0 - failing_hotter_share) * by_heat + failing_hotter_share * hotter;
            }
            return right(read, rise, std::hypot(o.error.value() / two_sided, model_share * rise));
        });
    }
    [[nodiscard]] told_of_part told(const four_wire_observation& o, std::size_t which, const part_states& of,
                                    const states_of_parts& solved) const
    {
        constexpr double model_share = 0.01;
        const double read = require_not_negative(o.ohms, "four-wire reading of " + o.part).value();
        require_not_negative(o.error, "error of the four-wire reading of " + o.part);
        const resistance stated =
            o.error > resistance{} ? o.error : resistance(meters_.ohms_share * o.ohms + meters_.ohms_floor);
        const double error = stated.value();
        const std::size_t l = solved.main();
        const double sound = of.conditions.empty() ? 0.0 : of.conditions.front().cold_share[l] * of.typical_ohms(l);
        return by_value(which, of, level_of_wrong(read), [&](std::size_t i) {
            const double ohms = of.conditions[of.condition[i]].cold_share[l] * of.ohms[l][i];
            if (of.is_beyond_wear(i)) return of_failing_cold(read, sound, ohms);
            return right(read, ohms, std::max(least_spread, std::hypot(error / two_sided, model_share * ohms)));
        });
    }
    [[nodiscard]] told_of_part told(const tightness_observation& o, std::size_t which, const part_states& of,
                                    const states_of_parts&) const
    {
        require_within(o.share, 0.0, 10.0, "tightness of " + o.part);
        return by_look(which, of, is_loose(o.share) ? failing_loose_share : 1.0 - failing_loose_share,
                       [&](const part_condition& c) { return is_loose(o.share) == is_loose(c.what.signs.tightness); });
    }
    [[nodiscard]] told_of_part told(const surface_observation& o, std::size_t which, const part_states& of,
                                    const states_of_parts&) const
    {
        return by_look(which, of, o.seen == surface_state::clean ? failing_clean_share : no_sign_share,
                       [&](const part_condition& c) { return surface_of(c, of) == o.seen; });
    }
    [[nodiscard]] told_of_part told(const strand_observation& o, std::size_t which, const part_states& of,
                                    const states_of_parts&) const
    {
        constexpr double alike = 0.15;
        return by_look(which, of, no_sign_share, [&](const part_condition& c) {
            return std::fabs(c.what.signs.strands_missing - static_cast<double>(o.missing)) < alike;
        });
    }
    [[nodiscard]] told_of_part told(const arc_observation& o, std::size_t which, const part_states& of,
                                    const states_of_parts&) const
    {
        if (!std::holds_alternative<wire_gun>(part_at(*station_, number_of(o.part, "arc at"))))
            throw bad_station_error("arc at", "\"" + o.part + "\"", "a wire gun");
        told_of_part out = by_value(which, of, 0.0, [&](std::size_t i) {
            const double unsteady =
                of.conditions[of.condition[i]].what.signs.arc_unsteady ? seen_right_share : otherwise_unsteady_share;
            return o.seen == arc_look::unsteady ? unsteady : 1.0 - unsteady;
        });
        out.is_read = false;
        return out;
    }

    [[nodiscard]] static bool is_loose(double tightness)
    {
        constexpr double loose = 0.7;
        return tightness < loose;
    }
    /// What the faces of a part look like in a condition; clean where nothing is known of them.
    [[nodiscard]] static surface_state surface_of(const part_condition& c, const part_states& of)
    {
        return c.what.signs.surface.value_or(of.conditions.front().what.signs.surface.value_or(surface_state::clean));
    }

private:
    static constexpr double least_spread = 1e-9;  // ohm
    static constexpr double no_sign_share = 0.5;  // what is seen tells nothing either way

    // Density of a reading that is right.
    [[nodiscard]] static double right(double read, double at, double spread)
    {
        const double z = (read - at) / spread;
        return std::fabs(z) < solve::reading_likelihood::beyond
                   ? (1.0 - misread_share) * std::exp(-0.5 * z * z) / (spread * std::sqrt(2.0 * std::numbers::pi))
                   : 0.0;
    }
    template <class Right>
    [[nodiscard]] static told_of_part by_value(std::size_t which, const part_states& of, double level, const Right& r)
    {
        told_of_part out{.which = which, .level = level};
        out.right.resize(of.size());
        for (std::size_t i = 0; i < of.size(); ++i) out.right[i] = r(i);
        return out;
    }
    // Density of a reading of a failing part, which wanders.
    [[nodiscard]] static double of_failing(double read, double at, double spread)
    {
        constexpr double beyond = 5.0;  // deviations: a millionth
        return std::fabs(read - at) < beyond * spread ? right(read, at, spread) : 0.0;
    }
    // Of one cold: anything between a sound part and what it takes under current, evenly by the logarithm.
    [[nodiscard]] static double of_failing_cold(double read, double sound, double hot)
    {
        return sound > 0.0 && sound < read && read < hot ? (1.0 - misread_share) / (read * std::log(hot / sound)) : 0.0;
    }
    // Right in nine of ten; if it is wrong it says nothing. @param failing share that look so where the part is failing
    template <class Fits>
    [[nodiscard]] static told_of_part by_look(std::size_t which, const part_states& of, double failing,
                                              const Fits& fits)
    {
        std::vector<double> by_condition;
        for (const part_condition& c : of.conditions)
            by_condition.push_back(c.what.is_beyond_wear ? failing
                                   : fits(c)             ? seen_right_share
                                                         : 1.0 - seen_right_share);
        told_of_part out = by_value(which, of, 0.0, [&](std::size_t i) { return by_condition[of.condition[i]]; });
        out.is_read = false;
        return out;
    }

    const station* station_;
    std::size_t arc_at_;
    meters meters_;
};

}  // namespace detail

}  // namespace weldloop
