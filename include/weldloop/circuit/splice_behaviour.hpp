#pragma once
/// @file
/// A cable splice under current: two crimps, one after the other.

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/crimp.hpp>
#include <weldloop/part/cable_splice.hpp>
#include <weldloop/part/lug.hpp>

namespace weldloop {

namespace detail {
inline lug end_in_sleeve(const cable_splice& s, const conductor_size& cable)
{
    lug out;
    out.size = cable;
    out.stamped = s.stamped;
    out.missing_strands = s.missing_strands;
    return out;
}
}  // namespace detail

/// Conductance of a splice at 20 degC [S]: the crimps of both ends, each as a lug's crimp of its size would be.
/// @param s the splice @throws not_finite_error, out_of_range_error @see crimp_conductance_of()
[[nodiscard]] inline band<conductance> splice_conductance_of(const cable_splice& s)
{
    return in_series(crimp_conductance_of(detail::end_in_sleeve(s, s.first)),
                     crimp_conductance_of(detail::end_in_sleeve(s, s.second)));
}

/// What a splice does at a current. @param s the splice @param through current [A], 0 or above @param bulk of the
/// sleeve
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline joint_behaviour behaviour_of(const cable_splice& s, current through, temperature bulk)
{
    return in_series(crimp_behaviour_of(detail::end_in_sleeve(s, s.first), through, bulk),
                     crimp_behaviour_of(detail::end_in_sleeve(s, s.second), through, bulk));
}

}  // namespace weldloop
