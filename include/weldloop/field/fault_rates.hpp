#pragma once
/// @file
/// How often a part is found at fault, by its kind, before anything is read.

#include <array>
#include <cstddef>
#include <variant>

#include <weldloop/circuit/path_part.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// Rates.
inline constexpr source fault_rate_judgement{"shares of parts found at fault on a bench that is looked at because "
                                             "something is wrong: work clamps and bare contacts "
                                             "15 %, holders, guns and rotary grounds 10 %, couplings and magnets 8 %, "
                                             "other joints 5 %, leads 3 %, plates and work 1 %; "
                                             "each part by itself",
                                             "2026",
                                             {},
                                             source_kind::judgement};

/// Shares of those parts that are failing.
inline constexpr source failing_rate_judgement{"of the parts found at fault on such a bench those that are failing, "
                                               "about to burn or part: a fifth of joints and leads, a tenth of clamps, "
                                               "bare contacts, holders, guns, torches and rotary grounds; no plate and "
                                               "no work",
                                               "2026",
                                               {},
                                               source_kind::judgement};

/// Rates of faults by kind of part, settable. @see fault_rate_judgement, failing_rate_judgement
struct fault_rates {
    std::array<likelihood, std::variant_size_v<path_part>> of_kind = usual();  ///< by part_kind
    std::array<likelihood, std::variant_size_v<path_part>> failing_of_kind =
        usual_failing();  ///< by part_kind: share of the rate that is for parts about to burn or part

    /// The rate of a kind.
    [[nodiscard]] likelihood at(part_kind k) const { return of_kind[static_cast<std::size_t>(k)]; }
    /// The rate of a kind, to be set.
    [[nodiscard]] likelihood& at(part_kind k) { return of_kind[static_cast<std::size_t>(k)]; }

    /// The share of a kind's rate that is for failing parts.
    [[nodiscard]] likelihood failing_at(part_kind k) const { return failing_of_kind[static_cast<std::size_t>(k)]; }
    /// The share of a kind's rate that is for failing parts, to be set.
    [[nodiscard]] likelihood& failing_at(part_kind k) { return failing_of_kind[static_cast<std::size_t>(k)]; }

    /// The judged rates.
    [[nodiscard]] static std::array<likelihood, std::variant_size_v<path_part>> usual()
    {
        std::array<likelihood, std::variant_size_v<path_part>> out;
        for (std::size_t k = 0; k < out.size(); ++k) out[k] = usual_of(static_cast<part_kind>(k));
        return out;
    }
    /// The judged shares of failing parts.
    [[nodiscard]] static std::array<likelihood, std::variant_size_v<path_part>> usual_failing()
    {
        std::array<likelihood, std::variant_size_v<path_part>> out;
        for (std::size_t k = 0; k < out.size(); ++k) out[k] = usual_failing_of(static_cast<part_kind>(k));
        return out;
    }

private:
    [[nodiscard]] static double usual_of(part_kind k)
    {
        switch (k) {
        case part_kind::work_connection:
        case part_kind::contact: return 0.15;
        case part_kind::electrode_holder:
        case part_kind::wire_gun:
        case part_kind::tig_torch:
        case part_kind::rotary_ground: return 0.10;
        case part_kind::coupling:
        case part_kind::work_magnet: return 0.08;
        case part_kind::cable: return 0.03;
        case part_kind::plate:
        case part_kind::workpiece: return 0.01;
        case part_kind::arc:
        case part_kind::junction: return 0.0;
        case part_kind::lug:
        case part_kind::measured_part:
        case part_kind::strap:
        case part_kind::stud_terminal:
        case part_kind::set_screw:
        case part_kind::cable_splice:
        case part_kind::spring_pad: return 0.05;
        }
        return 0.05;
    }
    [[nodiscard]] static double usual_failing_of(part_kind k)
    {
        constexpr double tenth = 0.1, fifth = 0.2;
        switch (k) {
        case part_kind::work_connection:
        case part_kind::contact:
        case part_kind::electrode_holder:
        case part_kind::wire_gun:
        case part_kind::tig_torch:
        case part_kind::rotary_ground: return tenth;
        case part_kind::plate:
        case part_kind::workpiece:
        case part_kind::arc:
        case part_kind::junction: return 0.0;
        case part_kind::coupling:
        case part_kind::work_magnet:
        case part_kind::cable:
        case part_kind::lug:
        case part_kind::measured_part:
        case part_kind::strap:
        case part_kind::stud_terminal:
        case part_kind::set_screw:
        case part_kind::cable_splice:
        case part_kind::spring_pad: return fifth;
        }
        return fifth;
    }
};

}  // namespace weldloop
