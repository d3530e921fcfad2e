#pragma once
/// @file
/// Duty: a time under current within a period.

#include <string>

#include <weldloop/core/error.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/text.hpp>

namespace weldloop {

/// On-time within a period that repeats without end. A conductor feels the period as well as the percentage: cable
/// guides of the BS 638-4 family use 5 min, power sources (IEC 60974-1) 10 min.
class duty_cycle {
public:
    /// Current without a break.
    [[nodiscard]] static duty_cycle continuous() { return {default_period(), default_period()}; }

    /// @param on time under current [s], above 0 @param period [s], at least `on`
    /// @throws not_finite_error, out_of_range_error
    [[nodiscard]] static duty_cycle of(duration on, duration period)
    {
        require_positive(on, "on-time");
        require_positive(period, "duty period");
        if (on > period)
            throw out_of_range_error("on-time", si_text(on), "at most the duty period of " + si_text(period));
        return duty_cycle(on, period);
    }

    /// A bare percentage takes the 10 min period of power sources.
    [[nodiscard]] static duty_cycle of(duty_fraction share)
    {
        return of(static_cast<double>(share) * default_period(), default_period());
    }

    [[nodiscard]] duration on() const { return on_; }                              ///< time under current [s]
    [[nodiscard]] duration period() const { return period_; }                      ///< on-time and rest together [s]
    [[nodiscard]] duration rest() const { return period_ - on_; }                  ///< time without current [s]
    [[nodiscard]] duty_fraction share() const { return (on_ / period_).value(); }  ///< on-time over period
    [[nodiscard]] bool is_continuous() const { return on_ == period_; }            ///< no rest at all

    /// The period a bare percentage takes, 10 min (IEC 60974-1, definition of duty cycle; from memory).
    [[nodiscard]] static duration default_period() { return in_si<duration>(600.0); }

    /// The same on-time within the same period.
    friend bool operator==(const duty_cycle&, const duty_cycle&) = default;

private:
    duty_cycle(duration on, duration period) : on_(on), period_(period) {}
    duration on_, period_;
};

/// "60 % of 10 min", or "continuous".
[[nodiscard]] inline std::string to_text(const duty_cycle& d)
{
    if (d.is_continuous()) return "continuous";
    return to_text(d.share()) + " of " + to_text(d.period(), "min");
}

}  // namespace weldloop
