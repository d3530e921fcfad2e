#pragma once
/// @file
/// The rows of the metal table, each group of constants with its source.

#include <array>
#include <string_view>

#include <weldloop/material/metal.hpp>

namespace weldloop {

/// @name Sources of the metal table
/// @{

/// Copper, electrical.
inline constexpr source iec_60028{
    "IEC 60028", "1925", "annealed copper standard: 1/58 ohm mm2/m at 20 degC, 0.00393 1/K", source_kind::standard};
/// Copper, thermal.
inline constexpr source copper_fact_sheet{"Copper Development Association, Innovations fact sheet", "2001",
                                          "table 5, physical properties of copper", source_kind::handbook};
/// Copper, as a contact.
inline constexpr source holm_copper{"Holm, Electric Contacts", "4th edition 1967",
                                    "hardness, softening and melting of copper (softening and melting seen in open "
                                    "code citing it, hardness from memory)",
                                    source_kind::memory};
/// Tinned copper, electrical.
inline constexpr source iec_60228_tinned{"IEC 60228", "2004",
                                         "metal-coated over plain class 5 limits, 1.02 by median; coefficient falls "
                                         "with conductivity (NBS Handbook 100 rule)",
                                         source_kind::derived};
/// Tin, as a contact.
inline constexpr source holm_tin{"Holm, Electric Contacts", "4th edition 1967",
                                 "tin coating: 100 degC softening, 232 degC melting", source_kind::handbook};
/// Aluminium, electrical.
inline constexpr source iec_60889{"IEC 60889", "1987", "hard-drawn aluminium, 28.264 nohm m at 20 degC",
                                  source_kind::standard};
/// Aluminium, thermal.
inline constexpr source aluminium_sheet{"aluminium 1350-H14 material data", "public page",
                                        "density, heat, conduction, solidus", source_kind::handbook};
/// Aluminium, as a contact.
inline constexpr source holm_aluminium{"Holm, Electric Contacts", "4th edition 1967",
                                       "hardness and softening of aluminium", source_kind::memory};
/// Brass CuZn30, electrical and thermal, and where it begins to melt.
inline constexpr source brass_sheet{"UNS C26000 material data", "two public pages",
                                    "resistivity, density, heat, conduction, solidus", source_kind::handbook};
/// Brass, as a contact.
inline constexpr source brass_contact{
    "CuZn30: hardness as printed for CuZn30 to CuZn37, softening 300 degC taken from recrystallisation",
    {},
    {},
    source_kind::judgement};
/// Bronze, electrical and thermal.
inline constexpr source bronze_sheet{"UNS C51000 material data", "public page",
                                     "18 % IACS; published pages range from 15 to 20 %", source_kind::handbook};
/// Bronze, as a contact.
inline constexpr source bronze_contact{
    "phosphor bronze: hardness and softening between brass and mild steel", {}, {}, source_kind::judgement};
/// Mild steel, electrical and thermal.
inline constexpr source steel_1010_sheet{"SAE 1010 material data", "two public pages",
                                         "143 nohm m at 20 degC, density, heat, conduction; slope of resistivity from "
                                         "SAE 1018, 159 to 293 nohm m between 0 and 200 degC",
                                         source_kind::handbook};
/// Mild steel, as a contact.
inline constexpr source holm_steel{
    "Holm, Electric Contacts", "4th edition 1967",
    "hardness of mild steel, iron softening at 500 degC; solidus of low-carbon steel near 1480 degC",
    source_kind::memory};
/// Stainless steel, electrical and thermal.
inline constexpr source stainless_sheet{"AISI 304 material data", "two public pages",
                                        "720 nohm m at 20 degC, 1160 at 650 degC, density, heat, conduction, solidus",
                                        source_kind::handbook};
/// Stainless steel, as a contact.
inline constexpr source stainless_contact{
    "austenitic stainless: hardness from 129 HV annealed to work hardened, softening as a hot-strong steel",
    {},
    {},
    source_kind::judgement};
/// Copper-clad aluminium, electrical.
inline constexpr source astm_b566{"ASTM B566", "2004a",
                                  "least conductivity 62.9 and 64.4 % IACS by class (read on a public page)",
                                  source_kind::standard};
/// Copper-clad aluminium, thermal, and its temperature coefficient.
inline constexpr source clad_mixture_rule{"rule of mixtures by volume of soft copper and aluminium",
                                          {},
                                          "density agrees with ASTM B566",
                                          source_kind::derived};
/// Copper-clad aluminium, as a contact.
inline constexpr source clad_contact{
    "copper skin in the contact; melting is that of the core", {}, {}, source_kind::judgement};
/// @}

namespace detail {
constexpr resistivity nohm_m(double v)
{
    return in_si<resistivity>(v * 1e-9);
}
constexpr per_kelvin per_k(double v)
{
    return in_si<per_kelvin>(v);
}
constexpr density kg_per_m3(double v)
{
    return in_si<density>(v);
}
constexpr specific_heat j_per_kg_k(double v)
{
    return in_si<specific_heat>(v);
}
constexpr thermal_conductivity w_per_m_k(double v)
{
    return in_si<thermal_conductivity>(v);
}
}  // namespace detail

/// Soft copper of the annealed copper standard.
inline constexpr metal annealed_copper{"annealed copper",
                                       detail::nohm_m(1e3 / 58.0),
                                       detail::per_k(0.00393),
                                       detail::kg_per_m3(8890),
                                       detail::j_per_kg_k(386),
                                       detail::w_per_m_k(394),
                                       0.40_GPa,
                                       0.55_GPa,
                                       0.90_GPa,
                                       190_degC,
                                       1084_degC,
                                       &iec_60028,
                                       &copper_fact_sheet,
                                       &holm_copper};

/// Copper strands with a tin coat: what meets in a contact is the tin.
inline constexpr metal tinned_copper{"tinned copper",
                                     detail::nohm_m(1.02e3 / 58.0),
                                     detail::per_k(0.00385),
                                     detail::kg_per_m3(8890),
                                     detail::j_per_kg_k(386),
                                     detail::w_per_m_k(394),
                                     0.045_GPa,
                                     0.05_GPa,
                                     0.06_GPa,
                                     100_degC,
                                     232_degC,
                                     &iec_60228_tinned,
                                     &copper_fact_sheet,
                                     &holm_tin,
                                     annealed_copper.melting};

/// Electrical aluminium (1350).
inline constexpr metal aluminium{"aluminium",
                                 detail::nohm_m(28.264),
                                 detail::per_k(0.00403),
                                 detail::kg_per_m3(2705),
                                 detail::j_per_kg_k(900),
                                 detail::w_per_m_k(234.2),
                                 0.18_GPa,
                                 0.30_GPa,
                                 0.40_GPa,
                                 150_degC,
                                 646_degC,
                                 &iec_60889,
                                 &aluminium_sheet,
                                 &holm_aluminium};

/// Cartridge brass CuZn30 (UNS C26000), the usual jaw and coupling metal. All its constants are of this one alloy.
inline constexpr metal brass{"brass",
                             detail::nohm_m(61.6),
                             detail::per_k(0.0017),
                             detail::kg_per_m3(8530),
                             detail::j_per_kg_k(377),
                             detail::w_per_m_k(121),
                             0.80_GPa,
                             1.10_GPa,
                             1.60_GPa,
                             300_degC,
                             915_degC,
                             &brass_sheet,
                             &brass_sheet,
                             &brass_contact};

/// Phosphor bronze.
inline constexpr metal bronze{"bronze",
                              detail::nohm_m(95.8),
                              detail::per_k(0.0007),
                              detail::kg_per_m3(8860),
                              detail::j_per_kg_k(380),
                              detail::w_per_m_k(77),
                              1.00_GPa,
                              1.40_GPa,
                              2.00_GPa,
                              350_degC,
                              960_degC,
                              &bronze_sheet,
                              &bronze_sheet,
                              &bronze_contact};

namespace detail {

/// Shares by volume of two metals side by side along the current: what adds is conductivity and heat per volume.
struct clad_mixture {
    double copper;  // share of the section

    [[nodiscard]] constexpr double of(double in_copper, double in_core) const
    {
        return copper * in_copper + (1.0 - copper) * in_core;
    }
    /// [1/K] of the conductivities of soft copper and aluminium in parallel
    [[nodiscard]] constexpr per_kelvin temperature_coefficient() const
    {
        const double skin = 1.0 / annealed_copper.resistivity.value(), core = 1.0 / aluminium.resistivity.value();
        return per_k(of(skin * annealed_copper.temperature_coefficient.value(),
                        core * aluminium.temperature_coefficient.value()) /
                     of(skin, core));
    }
    /// [kg/m3]
    [[nodiscard]] constexpr weldloop::density density() const
    {
        return kg_per_m3(of(annealed_copper.density.value(), aluminium.density.value()));
    }
    /// [J/(kg K)]
    [[nodiscard]] constexpr weldloop::specific_heat specific_heat() const
    {
        return j_per_kg_k(of(annealed_copper.heat_per_volume().value(), aluminium.heat_per_volume().value()) /
                          density().value());
    }
    /// [W/(m K)] along the strand
    [[nodiscard]] constexpr weldloop::thermal_conductivity thermal_conductivity() const
    {
        return w_per_m_k(of(annealed_copper.thermal_conductivity.value(), aluminium.thermal_conductivity.value()));
    }
};

/// A clad wire: its resistivity is the limit of its standard, the rest follows from the mixture; what touches is
/// copper, what melts first is the core.
[[nodiscard]] constexpr metal copper_clad(std::string_view name, double resistivity_limit, clad_mixture m)
{
    return {name,
            nohm_m(resistivity_limit),
            m.temperature_coefficient(),
            m.density(),
            m.specific_heat(),
            m.thermal_conductivity(),
            annealed_copper.hardness_low,
            annealed_copper.hardness,
            annealed_copper.hardness_high,
            annealed_copper.softening,
            aluminium.melting,
            &astm_b566,
            &clad_mixture_rule,
            &clad_contact};
}

}  // namespace detail

/// Aluminium strands with a copper skin of 10 % of their volume. Resistivity is the highest of its standard, 62.9 % of
/// the annealed copper standard; the mixture of its parts would be 64.9 %.
inline constexpr metal copper_clad_aluminium_10 = detail::copper_clad("copper-clad aluminium 10 %", 27.43, {0.10});

/// Aluminium strands with a copper skin of 15 % of their volume: at least 64.4 % of conductivity, the mixture 66.9 %.
inline constexpr metal copper_clad_aluminium_15 = detail::copper_clad("copper-clad aluminium 15 %", 26.76, {0.15});

/// Low-carbon structural steel: the work, the table, the jaw of a cheap clamp.
inline constexpr metal mild_steel{"mild steel",
                                  detail::nohm_m(143),
                                  detail::per_k(0.0039),
                                  detail::kg_per_m3(7870),
                                  detail::j_per_kg_k(448),
                                  detail::w_per_m_k(50),
                                  1.20_GPa,
                                  1.50_GPa,
                                  2.00_GPa,
                                  500_degC,
                                  1480_degC,
                                  &steel_1010_sheet,
                                  &steel_1010_sheet,
                                  &holm_steel};

/// Austenitic stainless steel, 18 % chromium 8 % nickel.
inline constexpr metal stainless_steel{"stainless steel",
                                       detail::nohm_m(720),
                                       detail::per_k(0.00097),
                                       detail::kg_per_m3(8000),
                                       detail::j_per_kg_k(500),
                                       detail::w_per_m_k(16.2),
                                       1.27_GPa,
                                       2.00_GPa,
                                       3.00_GPa,
                                       600_degC,
                                       1400_degC,
                                       &stainless_sheet,
                                       &stainless_sheet,
                                       &stainless_contact};

/// Every metal of the table.
inline constexpr std::array all_metals{
    annealed_copper,          tinned_copper,           aluminium, brass, bronze, mild_steel, stainless_steel,
    copper_clad_aluminium_10, copper_clad_aluminium_15};

}  // namespace weldloop
