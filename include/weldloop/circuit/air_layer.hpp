#pragma once
/// @file
/// Heat across a thin layer of still air between two faces: conduction and radiation. A law of a network.

#include <algorithm>

#include <weldloop/circuit/rise_table.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/joint_heat.hpp>
#include <weldloop/law/radiation.hpp>
#include <weldloop/material/air.hpp>
#include <weldloop/solve/heat_network.hpp>

namespace weldloop {

/// The faces of a clamp's jaws beside their contact.
inline constexpr source jaws_beside_contact{"a third of a jaw's outside looks at the work: where it does not touch, "
                                            "1.5 mm of still air lie between, the height "
                                            "of its teeth; as bodies of one temperature held against finite elements",
                                            "2026",
                                            {},
                                            source_kind::judgement};
/// Share of the outside of a clamp's jaws that looks at the work; see jaws_beside_contact.
inline constexpr double inner_share_of_jaws = 1.0 / 3.0;
/// Air between jaws and work beside their contact [m]; see jaws_beside_contact.
inline constexpr length jaw_tooth_height = in_si<length>(1.5e-3);

namespace detail {

/// Conductance of a layer of air with radiation across it, at the mean rise of its faces.
class air_layer final : public solve::heat_law {
public:
    /// @param gap area, height and emissivities of the faces; its filling is air @param air reference of the rises [K]
    air_layer(const joint_gap& gap, double air) : gap_(gap), air_(air) {}

    [[nodiscard]] solve::sloped_by_two at(double rise, double, solve::asked what) const override
    {
        if (rise >= 0.0 && rise < rise_table::end) {
            const solve::sloped known = table_.at(rise, [this](double r) { return conductance_at(r); });
            return {known.value, known.slope, 0.0};
        }
        solve::sloped_by_two out{conductance_at(rise), 0.0, 0.0};
        constexpr double step = 0.05;  // K
        if (what == solve::asked::slopes) out.by_first = (conductance_at(rise + step) - out.value) / step;
        return out;
    }

private:
    [[nodiscard]] double conductance_at(double rise) const
    {
        const temperature mean = std::clamp(temperature::kelvin(std::max(1.0, air_ + rise)), air_coldest, air_hottest);
        const thermal_conductivity still = air_at(mean).thermal_conductivity;
        return (gap_heat_conductance(still, gap_.faces, gap_.height) + gap_radiation_conductance(gap_, mean)).value();
    }

    joint_gap gap_;
    double air_;
    rise_table table_;
};

}  // namespace detail

}  // namespace weldloop
