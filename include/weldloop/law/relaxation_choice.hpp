#pragma once
/// @file
/// A law of relaxation chosen by its user, marched over a history of temperatures: the state form of this library, or
/// one of the published laws for comparison. Source: each of them has its own, see sources_of().

#include <algorithm>
#include <optional>
#include <string>
#include <variant>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/code_relaxation.hpp>
#include <weldloop/law/relaxation_heat.hpp>
#include <weldloop/law/relaxation_result.hpp>
#include <weldloop/law/stress_relaxation.hpp>
#include <weldloop/material/spring_wire.hpp>

namespace weldloop {

/// A published law at 20 degC with a published rule for its temperature.
struct code_relaxation_law {
    relaxation_time_law time = relaxation_time_law::model_code;         ///< the loss in time
    relaxation_heat_rule heat = relaxation_heat_rule::equivalent_time;  ///< what temperature does
    double yield_ratio = usual_yield_ratio;  ///< yield over tensile strength, 0.001 to 1; the logarithmic law alone
};

/// Which law a spring relaxes by: without a code law, the state form of stress_relaxation.hpp.
using relaxation_choice = std::optional<code_relaxation_law>;

/// "model code, power of time; equivalent time", or the name of the state form.
[[nodiscard]] inline std::string to_text(const relaxation_choice& choice)
{
    if (!choice) return "time-temperature parameter";
    return std::string(to_text(choice->time)).append("; ").append(to_text(choice->heat));
}

/// A spring's relaxation by a published code law over a history of temperatures. What it starts from is the wire of
/// tendons; for any other wire, and outside the range of law or rule, the result is flagged and widened by a factor 3.
/// Above the tempering limit of the wire the spring is destroyed, as in relaxation_state.
class code_relaxation_state {
public:
    /// @param wire of the spring @param stress initial stress over tensile strength, 0 to 1
    /// @param law which @throws not_finite_error, out_of_range_error for a yield ratio outside 0.001 to 1
    code_relaxation_state(const spring_wire& wire, stress_fraction stress, const code_relaxation_law& law)
        : wire_(wire), stress_(stress), law_(law), clock_(law.heat)
    {
        detail::require_yield_ratio(law.yield_ratio);
    }

    /// Holds the spring at a temperature for a time. @param t its temperature @param time [s], 0 or above
    /// @throws not_finite_error, out_of_range_error
    code_relaxation_state& advance(temperature t, duration time)
    {
        clock_.advance(t, time);
        if (time.value() > 0.0 && t > wire_.tempering) destroyed_ = true;
        return *this;
    }

    /// Share of its initial stress the spring has lost. Everything, once destroyed.
    /// @param making plain unless said otherwise
    [[nodiscard]] fraction lost(spring_making making = spring_making::plain) const
    {
        if (destroyed_) return 1.0;
        const double cold =
            static_cast<double>(code_relaxation(law_.time, stress_, clock_.equivalent(), {making, law_.yield_ratio}));
        return std::min(1.0, cold * clock_.loss_factor());
    }

    /// Whether it has been hotter than the tempering limit of its wire.
    [[nodiscard]] bool destroyed() const { return destroyed_; }

    /// Whether law, rule or wire were left: see code_relaxation_covers() and relaxation_clock::covered().
    [[nodiscard]] bool extrapolated() const
    {
        return !wire_.relaxation_published || !clock_.covered() ||
               (clock_.equivalent().value() > 0.0 &&
                !code_relaxation_covers(law_.time, stress_, clock_.equivalent(), law_.yield_ratio));
    }

    /// The state as a result with bounds, flags and sources.
    [[nodiscard]] relaxation result() const
    {
        relaxation out;
        out.basis.add(sources_of(law_.time)).add(source_of(law_.heat));
        if (extrapolated()) out.basis.add(range_flag::relaxation_range);
        if (destroyed_) {
            out.basis.add(range_flag::spring_destroyed).add(*wire_.tempering_source);
            out.destroyed = true;
            out.lost = 1.0;
            out.bracket = exactly(fraction(1.0));
            return out;
        }
        out.lost = lost();
        const auto exponent = [&](spring_making making) {
            return detail::exponent_of_loss(static_cast<double>(lost(making)));
        };
        out.bracket = detail::relaxation_bracket(exponent(spring_making::plain), exponent(spring_making::preset),
                                                 extrapolated() ? detail::extrapolation_factor : 1.0);
        return out;
    }

private:
    spring_wire wire_;
    stress_fraction stress_;
    code_relaxation_law law_;
    relaxation_clock clock_;
    bool destroyed_ = false;
};

/// A spring's relaxation by the chosen law.
class chosen_relaxation {
public:
    /// @param choice which law @param wire of the spring @param stress initial stress over tensile strength, 0 to 1
    /// @throws not_finite_error, out_of_range_error for a yield ratio outside 0.001 to 1, as relaxation_state()
    chosen_relaxation(const relaxation_choice& choice, const spring_wire& wire, stress_fraction stress)
        : state_(choice ? state(code_relaxation_state(wire, stress, *choice)) : state(relaxation_state(wire, stress)))
    {
    }

    /// Holds the spring at a temperature for a time. @param t its temperature @param time [s], 0 or above
    /// @throws not_finite_error, out_of_range_error
    chosen_relaxation& advance(temperature t, duration time)
    {
        std::visit([&](auto& s) { s.advance(t, time); }, state_);
        return *this;
    }
    /// Share of its initial stress the spring has lost. @param making plain unless said otherwise
    [[nodiscard]] fraction lost(spring_making making = spring_making::plain) const
    {
        return std::visit([&](const auto& s) { return s.lost(making); }, state_);
    }
    /// Whether it has been hotter than the tempering limit of its wire.
    [[nodiscard]] bool destroyed() const
    {
        return std::visit([](const auto& s) { return s.destroyed(); }, state_);
    }
    /// The state as a result with bounds, flags and sources.
    [[nodiscard]] relaxation result() const
    {
        return std::visit([](const auto& s) { return s.result(); }, state_);
    }

private:
    using state = std::variant<relaxation_state, code_relaxation_state>;
    state state_;
};

}  // namespace weldloop
