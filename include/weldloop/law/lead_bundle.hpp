#pragma once
/// @file
/// Leads tied together and the turns of a coil as one body: the outline that gives off the heat of all of them, and the
/// rise from it to the hottest of them.

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/lay.hpp>

namespace weldloop {

/// Where the law of the bundle comes from.
inline constexpr source bundle_model{
    "leads in a bundle or a coil as one round body: its outline gives off the heat, which comes by conduction from its "
    "middle",
    {},
    "derived, with judged packing 0.75 and turns of half a metre; held against a finite-element section of single "
    "turns "
    "and the grouping factors of wiring rules",
    source_kind::judgement};

/// Most turns or leads the law is asked for.
inline constexpr int most_bundled_turns = 200;

/// Turns that a coil has if nobody says: a poor case, 45 m of lead in turns of half a metre. Judgement.
inline constexpr int assumed_coil_turns = 30;

/// Least diameter of a turn that a lead of known length is assumed to be coiled in, if nobody says its turns.
/// Judgement: a thin welding lead lies no tighter in the hand, a thick one nowhere near.
inline constexpr length least_coil_turn = in_si<length>(0.3);

/// Turns assumed of a coil of one lead's own, if nobody says: as many of the least diameter as its length makes, the
/// last one begun counted, up to assumed_coil_turns. @param lead its length [m], above 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline int assumed_turns_of(length lead)
{
    const double turns = std::ceil(require_positive(lead, "lead length") / (std::numbers::pi * least_coil_turn));
    return static_cast<int>(std::min<double>(turns, assumed_coil_turns));
}

/// Leads that a bundle has if nobody says, all under full load: out and back of three welders. Judgement.
inline constexpr int assumed_bundled_leads = 6;

/// Share of a bundle's section that its leads fill. Judgement; six in a round of least size fill 0.67, seven 0.78.
inline constexpr double bundle_packing = 0.75;

/// Conductivity of the gaps between leads per diameter of the lead, over that of the still air in them: radiation of 6
/// W/(m2 K) (grey surfaces of 0.9 at 60 degC) across a mean gap of a twelfth of the diameter, as packing 0.75 leaves
/// it.
inline constexpr heat_transfer_coefficient radiation_across_gaps = in_si<heat_transfer_coefficient>(6.0 / 12.0);

/// Still air in the gaps, at 50 degC.
inline constexpr thermal_conductivity air_in_gaps = in_si<thermal_conductivity>(0.028);

/// Conductivity across a bundle of leads [W/(m K)], by Maxwell's formula for cylinders in another matter.
///
/// A lead of copper of diameter d in a covering of conductivity kc and diameter D conducts across like
/// kl = kc (D^2 + d^2)/(D^2 - d^2), the gaps like kg = air_in_gaps + radiation_across_gaps D; with p = bundle_packing
/// and b = p (kl - kg)/(kl + kg) the bundle conducts like kg (1 + b)/(1 - b): 0.15 for 16 mm2, 0.18 for 70, 0.21 for
/// 185 in rubber. Leads that touch pass more.
/// @param covering kc, above 0 @param inner d, above 0 @param outer D, above d [m]
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline thermal_conductivity conductivity_across_bundle(thermal_conductivity covering, length inner,
                                                                     length outer)
{
    require_positive(covering, "thermal conductivity of the covering");
    const double d = require_positive(inner, "conductor diameter").value(), o = outer.value();
    if (!(o > d))
        throw out_of_range_error("overall diameter", si_text(outer), "above the conductor's " + si_text(inner));
    const double lead = covering.value() * (o * o + d * d) / ((o - d) * (o + d));
    const double gap = (air_in_gaps + radiation_across_gaps * outer).value();
    const double b = bundle_packing * (lead - gap) / (lead + gap);
    return require_finite(in_si<thermal_conductivity>(gap * (1.0 + b) / (1.0 - b)), "conductivity across the bundle");
}

/// The same where nothing is known of the lead but its diameter: that of a thin one, which conducts least.
inline constexpr thermal_conductivity least_across_bundle = in_si<thermal_conductivity>(0.145);

/// The body that a lead shares with others.
struct lead_bundle {
    int leads = 1;                        ///< that share the outline; 1 is a lead by itself
    bool assumed = false;                 ///< nobody said how many
    length outline = in_si<length>(0.0);  ///< diameter of the body [m]
    double rise_inside = 0.0;             ///< outline to the hottest lead's surface, over the heat of one lead [K m/W]
};

/// The body that leads of an arrangement form.
///
/// Outline B = D sqrt(n/0.75). Rise inside n (1 - 1/n)^2/(4 pi k): that from the rim to the middle of an evenly heated
/// cylinder, k by conductivity_across_bundle(), the factor in brackets taking off what a lead's own covering counts
/// already (its form is judged; one lead is itself). Rated currents against a finite-element section of single turns, 3
/// to 30 turns, still air to 10 m/s, 16 to 185 mm2: -13 to +4 % (tests/oracle/lead_coil). A coil on a reel, in a box or
/// under a mat gives off less and is not modelled.
/// @param lies the arrangement; those but `bundled` and `coiled` leave each lead to itself @param diameter D of a lead
/// [m], above 0 @param count n of leads or turns, 1 to 200; none if not known: assumed_coil_turns,
/// assumed_bundled_leads
/// @param across k [W/(m K)], above 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline lead_bundle lead_bundle_of(lay lies, length diameter, std::optional<int> count,
                                                thermal_conductivity across = least_across_bundle)
{
    if (count)
        require_within(static_cast<double>(*count), 1.0, static_cast<double>(most_bundled_turns),
                       lies == lay::bundled ? "leads of the bundle" : "turns of the coil");
    const double d = require_positive(diameter, "cable diameter").value();
    lead_bundle out{.outline = diameter};
    if (lies != lay::bundled && lies != lay::coiled) return out;
    out.assumed = !count;
    out.leads = count.value_or(lies == lay::bundled ? assumed_bundled_leads : assumed_coil_turns);
    if (out.leads == 1) return out;
    const double n = out.leads, bundle = d * std::sqrt(n / bundle_packing), inside = 1.0 - 1.0 / n;
    out.outline = require_finite(in_si<length>(bundle), "outline of the bundle");
    out.rise_inside = require_finite(
        n * inside * inside /
            (4.0 * std::numbers::pi * require_positive(across, "conductivity across the bundle").value()),
        "rise inside the bundle");
    return out;
}

}  // namespace weldloop
