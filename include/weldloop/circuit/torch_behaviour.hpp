#pragma once
/// @file
/// A tungsten torch under current, beside its cable: the crimps at the ends of the cable and the collet on the
/// electrode.

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/material/metal.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/tig_torch.hpp>

namespace weldloop {

/// Collet of a torch.
inline constexpr source collet_judgement{
    "copper collet drawn tight on a tungsten electrode: 50, 150, 500 micro-ohm; the electrode itself is not in it",
    "2026",
    {},
    source_kind::judgement};

/// Resistance of a collet on its electrode [ohm]; see collet_judgement.
inline constexpr band<resistance> collet_resistance{in_si<resistance>(50e-6), in_si<resistance>(150e-6),
                                                    in_si<resistance>(500e-6)};

/// Conductance of a collet on its electrode at 20 degC [S]. @see collet_judgement
[[nodiscard]] inline band<conductance> collet_conductance()
{
    return mapped(collet_resistance, [](resistance r) { return conductance(1.0 / r); });
}

/// The two metals that count in a collet. Tungsten softens and melts far above copper, so copper sets the limits.
inline constexpr metal_pair collet_metals{annealed_copper, annealed_copper};

/// The sources a torch's fittings rest on: collet and crimps. @param t the torch @throws as crimp_basis_of()
[[nodiscard]] inline basis torch_basis_of(const tig_torch& t)
{
    basis out = crimp_basis_of(t.lead.size.area());
    out.add(torch_judgement).add(collet_judgement);
    return out;
}

}  // namespace weldloop
