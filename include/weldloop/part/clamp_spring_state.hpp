#pragma once
/// @file
/// What a clamp's spring, and jaws that are springs, have lost for good over a history of temperatures.

#include <optional>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/copper_relaxation.hpp>
#include <weldloop/law/relaxation_choice.hpp>
#include <weldloop/law/relaxation_result.hpp>
#include <weldloop/material/copper_spring_alloy.hpp>
#include <weldloop/part/clamp_spring.hpp>

namespace weldloop {

/// Jaws of a copper alloy that take up a share of the clamp's elastic travel.
struct springy_jaw {
    copper_spring_alloy alloy = phosphor_bronze_spring;  ///< what the jaws are of
    fraction share = 0.0;                                ///< of the elastic travel of jaws and spring together
};

/// The relaxation of a clamp's spring and of its jaws, which share the elastic travel in series: series_loss() of the
/// two. Rigid jaws leave the spring alone. For a history of temperatures that is known; grip_over_time() finds its own
/// and takes the jaws as rigid.
class clamp_spring_state {
public:
    /// @param s the spring with its stress @param jaws that give way; rigid with a share of zero
    /// @param law which law the wire relaxes by
    /// @throws out_of_range_error for a law with a yield ratio that cannot be
    explicit clamp_spring_state(const clamp_spring& s, const springy_jaw& jaws = {}, const relaxation_choice& law = {})
        : wire_(law, s.wire, s.stress), share_(jaws.share)
    {
        if (share_ > fraction(0.0)) jaw_.emplace(jaws.alloy);
    }

    /// Holds spring and jaws at their temperatures for a time.
    /// @param spring temperature of the wire @param jaw temperature of the jaws @param time [s], 0 or above
    /// @throws not_finite_error, out_of_range_error
    clamp_spring_state& advance(temperature spring, temperature jaw, duration time)
    {
        wire_.advance(spring, time);
        if (jaw_) jaw_->advance(jaw, time);
        return *this;
    }

    /// Whether the wire or springy jaws have been hotter than their temper bears.
    [[nodiscard]] bool destroyed() const { return wire_.destroyed() || (jaw_ && jaw_->destroyed()); }

    /// The force lost, with bounds, flags and sources: low with low, high with high.
    [[nodiscard]] relaxation result() const
    {
        relaxation out = wire_.result();
        if (!jaw_) return out;
        const relaxation jaws = jaw_->result();
        const auto both = [this](fraction of_jaws, fraction of_wire) { return series_loss(of_jaws, share_, of_wire); };
        out.lost = both(jaws.lost, out.lost);
        out.bracket = {both(jaws.bracket.low, out.bracket.low), both(jaws.bracket.typical, out.bracket.typical),
                       both(jaws.bracket.high, out.bracket.high)};
        out.destroyed = destroyed();
        out.basis.add(jaws.basis);
        return out;
    }

private:
    chosen_relaxation wire_;
    std::optional<copper_relaxation_state> jaw_;
    fraction share_;
};

}  // namespace weldloop
