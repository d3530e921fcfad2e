#pragma once
/// @file
/// What missing, nicked and oxidised strands do to a lead: along its damage and at its crimp, side by side, and how
/// many a published table allows.

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include <weldloop/core/band.hpp>
#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/conductor_resistance.hpp>
#include <weldloop/law/crimp.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/material/surface_state.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/conductor_class.hpp>
#include <weldloop/part/lug.hpp>
#include <weldloop/part/welding_cable.hpp>

namespace weldloop {

/// @name Sources of strand damage
/// @{
/// Counts that may be nicked or broken.
inline constexpr source strand_limits_aviation{
    "FAA AC 43.13-1B", "1998", "table 11-13, allowable nicked or broken strands", source_kind::standard};
/// What oxide takes from a strand.
inline constexpr source oxide_volume{
    "volume of cuprous oxide over that of the copper it is made of", {}, "1.64", source_kind::memory};
/// @}

/// The metals of strands that the table of allowable damage tells apart.
enum class strand_metal {
    of_copper,     ///< copper or its alloys
    of_aluminium,  ///< aluminium
};

/// A row of the table of allowable damage. It is made for aircraft wiring crimped in the open: stricter than most leads
/// ever meet, and the only published count for such sizes.
struct strand_limit_row {
    conductor_size smallest;  ///< size the row begins with
    conductor_size largest;   ///< size it ends with
    strand_metal made_of;     ///< metal of the strands
    int strands_low;          ///< fewest strands of the conductors it speaks of; 0: any count
    int strands_high;         ///< most strands
    int most_nicked;          ///< strands that may be nicked
    int most_broken;          ///< strands that may be broken
};

/// Allowable damage by size, smallest first; see strand_limits_aviation.
inline constexpr std::array strand_limits{
    strand_limit_row{awg(24), awg(14), strand_metal::of_copper, 19, 19, 2, 0},
    strand_limit_row{awg(12), awg(10), strand_metal::of_copper, 37, 37, 4, 0},
    strand_limit_row{awg(8), awg(4), strand_metal::of_copper, 133, 133, 6, 6},
    strand_limit_row{awg(2), awg(1), strand_metal::of_copper, 665, 817, 6, 6},
    strand_limit_row{aught(1), aught(2), strand_metal::of_copper, 1045, 1330, 6, 6},
    strand_limit_row{aught(3), aught(3), strand_metal::of_copper, 1665, 1665, 6, 6},
    strand_limit_row{aught(4), aught(4), strand_metal::of_copper, 2109, 2109, 6, 6},
    strand_limit_row{awg(8), aught(3), strand_metal::of_aluminium, 0, 0, 0, 0},
};

/// Allowable damage of one conductor.
struct strand_limit {
    int most_nicked;       ///< strands that may be nicked
    int most_broken;       ///< strands that may be broken
    bool between_sizes;    ///< the size lies between two rows: the stricter of them
    bool other_stranding;  ///< the table speaks of another count of strands for this size
};

/// What the table of allowable damage says of a conductor. @param size of the conductor
/// @param strands its count, 1 or above @param made_of metal of the strands
/// @return empty where the table has no such size (below 24 AWG, above 4/0; aluminium outside 8 AWG to 3/0)
/// @throws out_of_range_error for a count below 1 @see strand_limits_aviation
[[nodiscard]] inline std::optional<strand_limit> strand_limit_of(const conductor_size& size, int strands,
                                                                 strand_metal made_of)
{
    constexpr double same_count = 0.03;  // 836 strands are the 817 of the table: another lay of the same conductor
    constexpr double most_strands = 1e7;
    require_within(static_cast<double>(strands), 1.0, most_strands, "strand count");
    const strand_limit_row* below = nullptr;  // last row that begins at this size or below
    const strand_limit_row* above = nullptr;  // first row that ends at this size or above
    for (const strand_limit_row& row : strand_limits) {
        if (row.made_of != made_of) continue;
        if (row.smallest <= size) below = &row;
        if (above == nullptr && row.largest >= size) above = &row;
    }
    if (below == nullptr || above == nullptr) return std::nullopt;
    const auto counted = [&](const strand_limit_row& row) {
        return row.strands_low == 0 ||
               (strands >= row.strands_low * (1.0 - same_count) && strands <= row.strands_high * (1.0 + same_count));
    };
    return strand_limit{std::min(below->most_nicked, above->most_nicked),
                        std::min(below->most_broken, above->most_broken), below != above,
                        !counted(*below) && !counted(*above)};
}

/// What a count of damaged strands is held to be.
enum class strand_verdict {
    within_published_count,  ///< at most the published count
    above_published_count,   ///< more than it: cut back to sound strands
    no_published_count,      ///< the table has no such conductor
};

/// The words for a verdict. @param v the verdict
[[nodiscard]] constexpr std::string_view to_text(strand_verdict v)
{
    switch (v) {
    case strand_verdict::within_published_count: return "within the published count";
    case strand_verdict::above_published_count: return "above the published count";
    case strand_verdict::no_published_count: return "no published count for this conductor";
    }
    return "no published count for this conductor";
}

/// State of the strands beside those that are missing.
struct strand_condition {
    int nicked = 0;                                ///< strands with a nick
    surface_state exposed = surface_state::clean;  ///< strands where they entered the barrel
    length oxide = {};  ///< [m] 0 or above, layer on each strand along the damaged length; tens of nm in air
    temperature lead_temperature = reference_temperature;  ///< of the lead; the crimp is stated at 20 degC
};

/// A lead with damaged strands: what each kind of damage adds.
struct strand_report {
    resistance lead;                 ///< [ohm] the sound lead
    resistance along_missing;        ///< [ohm] added by missing strands, over the damaged length
    resistance along_oxide;          ///< [ohm] added by the copper that oxide has taken, over the damaged length
    band<resistance> crimp;          ///< [ohm] a sound crimp with a full barrel
    band<resistance> crimp_missing;  ///< [ohm] added by the under-filled barrel
    band<resistance> crimp_oxide;    ///< [ohm] added by the state of the strands in the barrel, on top
    fraction crimp_share;            ///< share of all that is added (typical) that the crimp adds; 0 where nothing is
    int broken = 0;                  ///< strands counted as broken: along the lead or outside the barrel, the larger
    std::optional<strand_limit> allowed;                          ///< the published counts, where there are any
    strand_verdict verdict = strand_verdict::no_published_count;  ///< broken and nicked strands against them
    weldloop::basis basis;                                        ///< sources
};

namespace detail {
inline constexpr double oxide_over_copper = 1.64;  // volume; see oxide_volume
}  // namespace detail

/// What damaged strands add to a lead and to its crimp, side by side.
///
/// Along: strands missing over the damaged length Ld add R' Ld s/(1 - s); outside, and in contact with each other, the
/// rest carries on evenly. Oxide of thickness x takes x/1.64 of copper off each strand of diameter d, s = 4 x/(1.64 d):
/// 0.1 % for 100 nm on 0.25 mm. That is all it does along the length, where strands run side by side and no current
/// need cross.
///
/// At the crimp current must cross from strand to strand and to the barrel: an under-filled barrel has
/// underfilled_factor() times the resistance, and oxide there multiplies that by the median of its surface state over
/// clean. The crimp's scatter is carried through; that of the state is as wide again (resistance_multiplier()).
/// @param lead its size, metal, length, missing strands and damaged length count
/// @param end the lug on it: size in the barrel, size it is stamped with, strands outside the barrel
/// @param build strands of the conductor, count 1 or above; strand diameter above 0 where there is oxide
/// @param state nicks, oxide and temperature; painted strands, which make no contact, are refused
/// @throws not_finite_error, out_of_range_error @see crimp_band_judgement, surface_state_judgement
[[nodiscard]] inline strand_report strand_report_of(const cable& lead, const lug& end, const conductor_build& build,
                                                    const strand_condition& state = {})
{
    constexpr double most_strands = 1e7;
    require_within(static_cast<double>(build.strands), 1.0, most_strands, "strand count");
    require_within(static_cast<double>(state.nicked), 0.0, static_cast<double>(build.strands), "nicked strands");
    require_not_negative(state.oxide, "oxide thickness");
    const std::optional<band<double>> multiplier = resistance_multiplier(state.exposed);
    if (!multiplier)
        throw out_of_range_error("state of the strands", std::string(to_text(state.exposed)),
                                 "a state that makes contact");

    strand_report out{};
    const resistance_per_length sound = resistance_per_length_of(lead, state.lead_temperature);
    out.lead = conductor_resistance(sound, lead.length, 0.0, length{});
    const resistance damaged = conductor_resistance(sound, lead.length, lead.missing_strands, lead.damaged_length);
    out.along_missing = std::max(damaged - out.lead, resistance{});
    if (state.oxide > length{}) {
        const double taken =
            4.0 * state.oxide / (detail::oxide_over_copper * require_positive(build.strand, "strand diameter"));
        if (taken >= 1.0)
            throw out_of_range_error("oxide thickness", si_text(state.oxide), "less than eats the strand up");
        const double left = (1.0 - taken) * (1.0 - static_cast<double>(lead.missing_strands));
        out.along_oxide = conductor_resistance(sound, lead.length, 1.0 - left, lead.damaged_length) - damaged;
        out.along_oxide = std::max(out.along_oxide, resistance{});
        out.basis.add(oxide_volume);
    }

    const strand_loss shortfall = barrel_shortfall(end.size.area(), end.stamped.area(), end.missing_strands);
    const double underfilled = underfilled_factor(shortfall);
    const double oxidised = multiplier->typical / resistance_multiplier(surface_state::clean)->typical;
    const double by_oxide = underfilled * (oxidised - 1.0);  // below 0 where a coat is better than bare metal
    const auto scaled = [](const band<resistance>& b, double by) {
        band<resistance> all{b.low * by, b.typical * by, b.high * by};
        require_finite(all.high, "resistance of the crimp");
        if (by < 0.0) std::swap(all.low, all.high);
        return all;
    };
    out.crimp = crimp_resistance(end.size.area());
    out.crimp_missing = scaled(out.crimp, underfilled - 1.0);
    out.crimp_oxide = scaled(out.crimp, by_oxide);

    const resistance at_crimp = std::max(resistance(out.crimp_missing.typical + out.crimp_oxide.typical), resistance{});
    const resistance all = at_crimp + out.along_missing + out.along_oxide;
    if (all > resistance{}) out.crimp_share = std::min<double>(at_crimp / all, 1.0);

    const double missing = std::max(lead.damaged_length > length{} ? static_cast<double>(lead.missing_strands) : 0.0,
                                    static_cast<double>(end.missing_strands));
    out.broken = static_cast<int>(std::lround(missing * build.strands));
    out.allowed = strand_limit_of(lead.size, build.strands,
                                  lead.metal == aluminium ? strand_metal::of_aluminium : strand_metal::of_copper);
    if (out.allowed)
        out.verdict = out.broken > out.allowed->most_broken || state.nicked > out.allowed->most_nicked
                          ? strand_verdict::above_published_count
                          : strand_verdict::within_published_count;

    if (lead.metal.electrical_source) out.basis.add(*lead.metal.electrical_source);
    out.basis.add(build.basis).add(*crimp_limit_of(end.size.area()).from).add(crimp_band_judgement);
    out.basis.add(underfilled_barrel_judgement);
    if (state.exposed != surface_state::clean) out.basis.add(surface_state_judgement);
    if (out.allowed) out.basis.add(strand_limits_aviation);
    return out;
}

}  // namespace weldloop
