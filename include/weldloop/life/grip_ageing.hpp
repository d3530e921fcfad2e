#pragma once
/// @file
/// What ages in a clamp: relaxation of its spring, settling of its screw, film at its spots, wear and knocks. Slow
/// states and their rates on plain numbers, for the march and for the direct times of grip_time.hpp.

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include <weldloop/circuit/clamp_heat.hpp>
#include <weldloop/circuit/clamp_swing.hpp>
#include <weldloop/circuit/joint_circuit.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/bolt_relaxation.hpp>
#include <weldloop/law/force_law.hpp>
#include <weldloop/law/joint_ageing.hpp>
#include <weldloop/law/oxide_growth.hpp>
#include <weldloop/law/stress_relaxation.hpp>
#include <weldloop/law/unloading.hpp>
#include <weldloop/life/grip_service.hpp>
#include <weldloop/part/clamp_opening.hpp>
#include <weldloop/part/work_connection.hpp>

namespace weldloop {

/// What film does to a clamp's contact.
inline constexpr source clamp_film_judgement{
    "film of a clamp: oxide of copper grows, where jaw or work have copper, from the rim into spots of 5 um "
    "radius, at the jaws' temperature, above 180 "
    "degC as at 180 degC; eaten up at nine tenths of the radius",
    "2026",
    {},
    source_kind::judgement};

/// What the grip that a clamp has lost before a forecast says of its spring.
inline constexpr source lost_before_judgement{
    "grip lost before a forecast: typically and in a mild case its spring has relaxed by as much and goes on from "
    "there; in "
    "a poor case the loss is wear or set, and the spring relaxes like a new one",
    "2026",
    {},
    source_kind::judgement};

/// Radius of the spots that film eats into [m]; see clamp_film_judgement.
inline constexpr length clamp_spot_radius = in_si<length>(5e-6);
/// Share of the spots' radius at which film has eaten them up; see clamp_film_judgement.
inline constexpr double spots_eaten = 0.9;

namespace detail {

// Which end of every scatter a forecast is made for.
enum class grip_case { kind, typical, harsh };

[[nodiscard]] constexpr scatter scatter_of(grip_case which)
{
    return which == grip_case::kind ? scatter::low : which == grip_case::typical ? scatter::typical : scatter::high;
}

/// What changes slowly and is carried by the march.
struct grip_state {
    double parameter = -std::numeric_limits<double>::infinity();  // K, Larson-Miller parameter of the spring
    double film_square = 0.0;                                     // nm2
    double settled = 0.0;                                         // decades of a screw or bolt, see settled_decades()
    double reached = 0.0;  // exponent of the loss reached so far: no bound falls again when a spring cools
};

/// Times that count from a service event, s of shift.
struct grip_times {
    double now = 0.0;              // since the clamp was put on
    double since_tightened = 0.0;  // screw or bolt
    double since_seated = 0.0;     // since the jaws last got new spots by cleaning
};

/// Temperatures as the rates feel them: steady ones that come to the same in the mean over the swing [K].
struct felt_kelvin {
    double spring = 0.0, jaw = 0.0, settling = 0.0;
};

/// Rates by the second of shift.
struct grip_rates {
    double parameter = 0.0;    // K/s
    double film_square = 0.0;  // nm2/s
    double settled = 0.0;      // 1/s
};

class grip_ageing {
public:
    /// @param first_kelvin of the spring when the forecast begins: where it has relaxed before, it did so there; 0: not
    /// known, the bounds know of no past
    grip_ageing(const work_connection& w, const surroundings& where, const grip_service& service, grip_case which,
                double first_kelvin)
        : which_(which), lost_before_(static_cast<double>(w.grip_lost)),
          openings_(service.openings / service.shift.value()), cleans_(service.wipe >= cleaning_wipe ? openings_ : 0.0),
          drags_(service.drags / service.shift.value()), knocks_(service.knocks / service.shift.value() + drags_),
          on_work_(static_cast<double>(service.on_work)),
          rest_((service.rest / service.shift).value() + 1.0 - on_work_), rest_kelvin_(where.air.in_kelvin()),
          is_still_(service.motion == clamp_motion::still), force_exponent_(force_law_exponent(w.clamp.shape)),
          has_film_(service.film && (grows_copper_oxide(w.clamp.jaw) || grows_copper_oxide(w.onto)))
    {
        if (!w.clamp.spring) {
            bolted_ = bolted_joint_under(w);
            return;
        }
        const clamp_spring& s = *w.clamp.spring;
        require_relaxation(s.wire);
        has_spring_ = true;
        unset_ = service.widest_opening ? share_without_set(s, *service.widest_opening) : 1.0;
        rise_scale_ = s.wire.rise_scale;
        stress_ = static_cast<double>(s.stress);
        plain_ = law_of(s.wire.normal, stress_);
        preset_ = law_of(s.wire.preset, stress_);
        published_ = s.wire.relaxation_published;
        if (which != grip_case::harsh && lost_before_ > 0.0) {  // see lost_before_judgement
            for (const class_law* l : {&plain_, &preset_})
                if (!(l->reference > 0.0))
                    throw out_of_range_error("grip lost before", number_text(lost_before_),
                                             "0 with a wire that does not relax");
            lost_exponent_ = exponent_of_loss(lost_before_);
            start_ = parameter_for(lost_exponent_, 1.0);
            if (which != grip_case::typical && first_kelvin > 0.0) {
                constexpr int rounds = 4;  // the bound hardly minds the hours behind it
                for (int i = 0; i < rounds; ++i) {
                    hours_before_ = std::pow(10.0, start_ / scaled(first_kelvin) - larson_miller_constant);
                    start_ = parameter_for(lost_exponent_, widening(start_, 0.0));
                }
            }
        }
    }

    [[nodiscard]] bool has_spring() const { return has_spring_; }
    /// Whether a bound is followed that opens with temperature and time.
    [[nodiscard]] bool bound_moves() const { return has_spring_ && which_ != grip_case::typical; }

    /// The slow state when the forecast begins.
    [[nodiscard]] grip_state start() const { return {.parameter = start_}; }

    /// By how much the bound that the case takes is open, see relaxation_widening: for the stress, the hours so far and
    /// the one temperature that would have led to the parameter in them. 1 in the typical case.
    /// @param seconds since the forecast began
    [[nodiscard]] double widening(double parameter, double seconds) const
    {
        if (which_ == grip_case::typical) return 1.0;
        if (!published_) return extrapolation_factor;
        const double hours = hours_before_ + seconds / seconds_per_hour;
        if (!std::isfinite(parameter) || !(hours > 0.0)) return 1.0;
        const double kelvin = parameter / (larson_miller_constant + std::log10(hours));
        return widening_of(which_ == grip_case::harsh ? bound_side::upper : bound_side::lower,
                           {stress_, kelvin - temperature::celsius_zero_in_kelvin, hours});
    }

    /// Time that the spring relaxed before the forecast, as far as it is known [s].
    [[nodiscard]] double seconds_before() const { return hours_before_ * seconds_per_hour; }

    /// Exponent of the loss, S/S0 = exp(-r). @param seconds since the forecast began
    [[nodiscard]] double exponent(double parameter, double seconds) const
    {
        const double plain = plain_.at(parameter), preset = preset_.at(parameter);
        const double r = which_ == grip_case::kind      ? std::min(plain, preset) / widening(parameter, seconds)
                         : which_ == grip_case::typical ? std::sqrt(plain * preset)
                                                        : std::max(plain, preset) * widening(parameter, seconds);
        return std::min(r, highest_exponent);
    }

    /// The exponent at which a share of the force that there is when the forecast begins is left.
    [[nodiscard]] double exponent_at_share(double left) const { return lost_exponent_ - std::log(left); }

    /// The parameter at which the exponent has a value above zero, its bound open by a factor [K].
    [[nodiscard]] double parameter_for(double exponent_wanted, double widened) const
    {
        const double by = which_ == grip_case::kind ? widened : which_ == grip_case::harsh ? 1.0 / widened : 1.0;
        const double a = plain_.inverse(exponent_wanted * by), b = preset_.inverse(exponent_wanted * by);
        if (which_ == grip_case::kind) return std::max(a, b);
        if (which_ == grip_case::harsh) return std::min(a, b);
        // ln r is linear in the parameter for either class, so it is for their middle
        return (plain_.slope * a + preset_.slope * b) / (plain_.slope + preset_.slope);
    }

    /// Share of the cold force left by relaxation or settling alone, of that when the forecast begins.
    [[nodiscard]] double held(const grip_state& s, const grip_times& t) const
    {
        if (has_spring_)
            return std::exp(std::min(0.0, lost_exponent_ - std::max(s.reached, exponent(s.parameter, t.now))));
        bolted_joint joint = bolted_;
        if (t.since_tightened < t.now) joint.faces = bolted_faces::bedded;
        const band<double> left = bolt_force_left(in_si<duration>(t.since_tightened), s.settled, joint);
        return which_ == grip_case::kind ? left.high : which_ == grip_case::typical ? left.typical : left.low;
    }

    /// Share left by the wear of openings and drags, and by the set of an opening too wide.
    [[nodiscard]] double unworn(const grip_times& t) const
    {
        return (t.now > 0.0 ? unset_ : 1.0) *
               std::exp(-wear_of_an_opening * (openings_ + openings_of_a_drag * drags_) * t.now);
    }

    /// Resistance over that at the same force of a joint that has moved: below 1 for one that has not.
    [[nodiscard]] double still_factor(const grip_state& s, const grip_times& t) const
    {
        const double left = held(s, t) * unworn(t);
        return is_still_ ? untouched_factor(left) : 1.0;
    }
    /// The same for an untouched joint that has a share of the force it was seated with.
    [[nodiscard]] double untouched_factor(double left) const
    {
        return left > 0.0 ? std::pow(left, force_exponent_) * untouched_resistance_factor(left, force_exponent_) : 1.0;
    }

    /// Share of the cold force left of that when new, loss before the forecast included.
    [[nodiscard]] double force_share(const grip_state& s, const grip_times& t) const
    {
        return (1.0 - lost_before_) * held(s, t) * unworn(t);
    }

    /// Thickness of the film at the spots [nm]. A clamp that is opened has that of one stretch between two openings, at
    /// the mean growth since its jaws were cleaned.
    [[nodiscard]] double film(const grip_state& s, const grip_times& t) const
    {
        const double share = cleans_ * t.since_seated > 1.0 ? 1.0 / (cleans_ * t.since_seated) : 1.0;
        return std::sqrt(std::max(0.0, share * s.film_square));
    }

    /// Resistance over that without film; without end where the spots are eaten up.
    [[nodiscard]] double film_factor(double film_nm) const
    {
        const double eaten = film_nm * nanometre / clamp_spot_radius.value();
        return eaten < spots_eaten ? 1.0 / (1.0 - eaten) : std::numeric_limits<double>::infinity();
    }

    /// Resistance over that without knocks.
    [[nodiscard]] double knock_factor(const grip_times& t) const
    {
        const double since = cleans_ > 0.0 ? std::min(t.since_seated, 1.0 / cleans_) : t.since_seated;
        return 1.0 + knock_rise * knocks_ * since;
    }

    /// Rates in a state, with spring, jaws and what settles at what their swinging temperatures come to [K].
    [[nodiscard]] grip_rates rates(const grip_state& s, const felt_kelvin& felt) const
    {
        grip_rates out;
        if (has_spring_) {
            out.parameter = on_work_ * parameter_rate(s.parameter, scaled(felt.spring));
            if (rest_ > 0.0) out.parameter += rest_ * parameter_rate(s.parameter, scaled(rest_kelvin_));
        } else {
            out.settled = on_work_ * settling_rate(s.settled, pace(felt.settling));
            if (rest_ > 0.0) out.settled += rest_ * settling_rate(s.settled, pace(rest_kelvin_));
        }
        if (!has_film_) return out;
        const double nm = std::sqrt(std::max(0.0, s.film_square));
        out.film_square = on_work_ * film_rate(nm, felt.jaw);
        if (rest_ > 0.0) out.film_square += rest_ * film_rate(nm, rest_kelvin_);
        return out;
    }

    /// The parameter after a first time at a temperature [K], from the start: from new its rate has no bound.
    [[nodiscard]] double first_parameter(double spring_kelvin, double seconds) const
    {
        return advanced_parameter(start_, scaled(spring_kelvin), in_si<duration>(seconds));
    }

    /// Decades that a screw or bolt has settled after a first time at a temperature [K].
    [[nodiscard]] double first_settled(double kelvin, double seconds) const
    {
        return has_spring_ ? 0.0 : settled_decades(0.0, pace(kelvin), in_si<duration>(seconds));
    }

    /// How the rate of relaxation grows with the spring's temperature, d ln(rate)/dT [1/K].
    [[nodiscard]] double spring_sensitivity(double parameter, double spring_kelvin) const
    {
        const double t = scaled(spring_kelvin);
        return std::isfinite(parameter) && t > 0.0 ? rise_scale_ / t * (std::numbers::ln10 * parameter / t + 1.0) : 0.0;
    }
    /// The same of the film at the jaws.
    [[nodiscard]] double film_sensitivity(double jaw_kelvin) const
    {
        return has_film_ && jaw_kelvin < hottest_oxide_growth.in_kelvin()
                   ? oxide_activation_kelvin / (jaw_kelvin * jaw_kelvin)
                   : 0.0;
    }

    /// Between what shares of its speed at a temperature of the jaws the film grows, however cold or hot they get: that
    /// of its logarithmic law, and that of the hottest growth. @param s thickness so far
    [[nodiscard]] rate_bounds film_bounds(const grip_state& s, double jaw_kelvin) const
    {
        if (!has_film_) return {};
        const double here = oxide_rate(std::min(temperature::kelvin(jaw_kelvin), hottest_oxide_growth));
        return {oxide_logarithmic_rate(std::sqrt(std::max(0.0, s.film_square))) / here,
                oxide_rate(hottest_oxide_growth) / here};
    }

    /// How settling grows with the temperature of a screw or bolt [1/K].
    [[nodiscard]] double settling_sensitivity(double kelvin) const
    {
        const double below = bolted_.softening.in_kelvin() - kelvin;
        return !has_spring_ && pace(kelvin) < softened_pace ? 1.0 / below : 0.0;
    }

    /// How much one decade of settling weighs in the logarithm of the force.
    [[nodiscard]] double weight_of_settling(const grip_state& s, const grip_times& t) const
    {
        if (has_spring_) return 0.0;
        const double creep = which_ == grip_case::kind      ? bolt_creep.low
                             : which_ == grip_case::typical ? bolt_creep.typical
                                                            : bolt_creep.high;
        return relaxation_factor(bolted_) * creep / std::max(held(s, t), least_held);
    }

    /// How much one kelvin of the parameter weighs in the logarithm of the force.
    [[nodiscard]] double weight_of_parameter(const grip_state& s, const grip_times& t) const
    {
        return has_spring_ ? exponent(s.parameter, t.now) * std::max(plain_.slope, preset_.slope) : 0.0;
    }

    /// Speed of the parameter [K/s] at a temperature the law is entered with [K].
    [[nodiscard]] static double parameter_rate(double parameter, double kelvin)
    {
        if (!(kelvin > 0.0) || !std::isfinite(parameter)) return 0.0;
        return kelvin / (std::numbers::ln10 * seconds_per_hour) *
               std::pow(10.0, larson_miller_constant - parameter / kelvin);
    }

    /// The temperature the law is entered with [K], for a wire whose rise over 20 degC is scaled.
    [[nodiscard]] double scaled(double kelvin) const
    {
        const double cold = reference_temperature.in_kelvin();
        return cold + rise_scale_ * (kelvin - cold);
    }

private:
    static constexpr double least_held = 1e-3;  // where errors of the force no longer matter

    // Share of the force as it stands that a spring keeps that was opened to there: beyond its set its force line moves
    // down by what it would have had more.
    static double share_without_set(const clamp_spring& s, length opened)
    {
        const clamp_travel travel = clamp_travel_of(s);
        const force now = clamp_force_at(s, s.opening);
        if (travel.bound != opening_bound::set || !(opened > travel.widest) || !(now.value() > 0.0)) return 1.0;
        return std::clamp(((now - (clamp_force_at(s, opened) - clamp_force_at(s, travel.widest))) / now).value(), 0.0,
                          1.0);
    }

    static bolted_joint bolted_joint_under(const work_connection& w)
    {
        bolted_joint out = bolted_joint_of(w.clamp.jaw, w.onto);
        if (w.clamp.kind == clamp_kind::screw) out.follower = bolt_follower::screw_frame;
        return out;
    }

    [[nodiscard]] double pace(double kelvin) const
    {
        return settling_pace(temperature::kelvin(kelvin), bolted_.softening);
    }

    // r = reference exp(slope (P - P0))
    struct class_law {
        double reference = 0.0, slope = 1.0;
        [[nodiscard]] double at(double parameter) const
        {
            return std::isfinite(parameter) ? relaxation_exponent(reference, slope * (parameter - reference_parameter))
                                            : 0.0;
        }
        [[nodiscard]] double inverse(double exponent_wanted) const
        {
            return reference_parameter + std::log(exponent_wanted / reference) / slope;
        }
    };
    static class_law law_of(const relaxation_constants& k, double stress)
    {
        return {k.reference_exponent * std::exp(k.stress_slope * (stress - reference_stress)),
                k.parameter_slope.value()};
    }

    // nm2/s
    static double film_rate(double nm, double kelvin)
    {
        return oxide_square_rate(nm, std::min(temperature::kelvin(kelvin), hottest_oxide_growth)) / seconds_per_hour;
    }

    grip_case which_;
    bool has_spring_ = false;
    bolted_joint bolted_ = {};
    double rise_scale_ = 1.0, stress_ = 0.0;
    bool published_ = true;
    double hours_before_ = 0.0;  // that the spring relaxed before, at its first temperature
    double start_ = -std::numeric_limits<double>::infinity();  // K, the parameter when the forecast begins
    double lost_exponent_ = 0.0;                               // that exponent() has there
    class_law plain_ = {}, preset_ = {};
    double lost_before_;
    double openings_, cleans_, drags_,
        knocks_;                 // by the second of shift: all, those that clean, drags, knocks with them
    double on_work_;             // seconds on the work by the second of shift
    double rest_, rest_kelvin_;  // seconds cold, by rest and off the work, by the second of shift
    bool is_still_;
    double force_exponent_;
    double unset_ = 1.0;  // share of the force after the set of an opening too wide
    bool has_film_;
};

/// The heat of an ageing clamp: its quasi-steady state in a slow state, and what its swing comes to.
struct grip_heat {
    clamp_solver::state heat = {};
    clamp_condition condition = {};
    double film_nm = 0.0;
    felt_kelvin felt = {};
    double jaw_peak_kelvin = 0.0;  // at the end of the on-time
    bool open = false;             // no force, or no metal left
};

class ageing_clamp {
public:
    /// @param surface_factor resistance of the jaws over that of the surface the network was made with
    /// @param swing that it has when new, or null: that of the clamp by itself is sought
    ageing_clamp(const clamp_solver& solver, const grip_ageing& ageing, const duty_cycle& duty,
                 double surface_factor = 1.0, const clamp_swing* swing = nullptr)
        : solver_(solver), ageing_(&ageing), surface_factor_(surface_factor)
    {
        const clamp_condition when_new{ageing.force_share(ageing.start(), {}), surface_factor};
        if (!(when_new.force_share > least_share)) return;
        if (swing != nullptr) {
            swing_ = *swing;
            solver_.follow(swing_.followed());
        } else
            swing_ = let_swing(solver_, when_new, duty);
    }

    [[nodiscard]] const clamp_solver& solver() const { return solver_; }
    [[nodiscard]] const grip_ageing& ageing() const { return *ageing_; }

    /// @param near a state not far off, or nullptr
    [[nodiscard]] grip_heat at(const grip_state& s, const grip_times& t, const grip_heat* near) const
    {
        grip_heat out;
        out.condition.force_share = ageing_->force_share(s, t);
        out.film_nm = ageing_->film(s, t);
        out.condition.contact_factor = surface_factor_ * ageing_->film_factor(out.film_nm) * ageing_->knock_factor(t) *
                                       ageing_->still_factor(s, t);
        if (!(out.condition.force_share > least_share) || !std::isfinite(out.condition.contact_factor)) {
            out.open = true;
            if (near != nullptr) out.heat = near->heat;
            return out;
        }
        out.heat = solver_.solve_along(out.condition);
        const double jaw = solver_.air() + out.heat.rise[jaw_place],
                     spring = solver_.air() + out.heat.rise[spring_place];
        out.jaw_peak_kelvin = solver_.air() + solver_.peak_of(out.heat, jaw_place);
        const double by_spring = ageing_->spring_sensitivity(s.parameter, spring),
                     by_jaw = ageing_->film_sensitivity(jaw), by_settling = ageing_->settling_sensitivity(jaw);
        const double of_spring = solver_.swing_of(out.heat, spring_place),
                     of_jaw = solver_.swing_of(out.heat, jaw_place);
        out.felt = {.spring = spring + swing_.spring_excess(by_spring, of_spring, spring),
                    .jaw = jaw + swing_.jaw_excess(by_jaw, of_jaw, jaw, ageing_->film_bounds(s, jaw)),
                    .settling = jaw + swing_.jaw_excess(by_settling, of_jaw, jaw)};
        return out;
    }

private:
    static constexpr double least_share = 1e-6;  // of the force: what is left of less is open

    clamp_solver solver_;
    const grip_ageing* ageing_;
    double surface_factor_;
    clamp_swing swing_;
};

}  // namespace detail

}  // namespace weldloop
