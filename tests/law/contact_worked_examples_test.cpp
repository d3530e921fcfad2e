// Every row of tests/reference/contacts-worked-examples.csv (its source stands in the row) against the laws.
#include <cstddef>
#include <functional>
#include <map>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/law/bolt.hpp>
#include <weldloop/law/constriction.hpp>
#include <weldloop/law/crimp.hpp>
#include <weldloop/law/film.hpp>
#include <weldloop/law/force_law.hpp>
#include <weldloop/law/lap_joint.hpp>
#include <weldloop/law/screw.hpp>
#include <weldloop/law/voltage_temperature.hpp>
#include <weldloop/part/work_clamp_standard.hpp>

#include "law/worked_example.hpp"
#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {

using namespace weldloop;
using inputs = std::map<std::string, double>;

resistivity rho(double v)
{
    return in_si<resistivity>(v);
}
length metres(double v)
{
    return in_si<length>(v);
}
force newtons(double v)
{
    return in_si<force>(v);
}
pressure pascals(double v)
{
    return in_si<pressure>(v);
}

length plastic_radius(const inputs& x, double xi)
{
    return spot_radius(newtons(x.at("F")), pascals(x.at("H")), xi);
}

double plastic_resistance(const inputs& x)
{
    return constriction_resistance(rho(x.at("rho")), plastic_radius(x, x.at("xi"))).value();
}

double by_force_law(const inputs& x)
{
    return force_law_resistance(x.at("K"), x.at("m"), newtons(x.at("F"))).value();
}

double melting_voltage(const inputs& x)
{
    return drop_for_spot_temperature(temperature::kelvin(x.at("Tm")), temperature::kelvin(x.at("T0"))).value();
}

// the example of a square thread: 32 mm x 4, two starts, so that dm = 30 mm and l = 8 mm
screw_thread shigley_thread(const inputs& x)
{
    const length pitch = metres(x.at("l") / 2.0);
    return {.diameter = metres(x.at("dm")) + 0.5 * pitch,
            .pitch = pitch,
            .starts = 2,
            .half_angle = square_half_angle,
            .friction = x.at("f"),
            .collar_friction = x.at("fc"),
            .collar_diameter = metres(x.at("dc"))};
}

const std::map<std::string, std::function<double(const inputs&)>> answers{
    {"holm-spot", [](const inputs& x) { return constriction_resistance(rho(x.at("rho")), metres(x.at("a"))).value(); }},
    {"holm-two-metals",
     [](const inputs& x) {
         return constriction_resistance(rho(x.at("rho1")), rho(x.at("rho2")), metres(x.at("a"))).value();
     }},
    {"holm-plastic-area",
     [](const inputs& x) { return bearing_area(newtons(x.at("F")), pascals(x.at("H")), x.at("xi")).value(); }},
    {"holm-plastic-a", [](const inputs& x) { return plastic_radius(x, x.at("xi")).value(); }},
    {"holm-plastic-R", plastic_resistance},
    {"holm-plastic-R-1kN", plastic_resistance},
    {"copper-jaw-on-steel",
     [](const inputs& x) {
         return constriction_resistance(rho(x.at("rho1")), rho(x.at("rho2")), plastic_radius(x, 1.0)).value();
     }},
    {"holm-radius-disc", [](const inputs& x) { return cluster_radius(metres(x.at("r"))).value(); }},
    {"film",
     [](const inputs& x) {
         return film_resistance(in_si<film_resistivity>(x.at("sigma_f")), in_si<area>(x.at("A"))).value();
     }},
    {"k-law-steel-copper-m0.5", by_force_law},
    {"k-law-steel-copper-m0.7", by_force_law},
    {"k-law-steel-copper-m1.0", by_force_law},
    {"kohlrausch-melt-copper", melting_voltage},
    {"kohlrausch-melt-iron", melting_voltage},
    {"kohlrausch-inverse",
     [](const inputs& x) {
         return hot_spot_temperature(in_si<voltage>(x.at("V")), temperature::kelvin(x.at("T0"))).in_kelvin();
     }},
    {"torque-inch",  // the row asks for the torque of a force, in lbf ft
     [](const inputs& x) { return (x.at("F") * 1_lbf / bolt_force(1_lbf_ft, x.at("K"), x.at("d") * 1_in)).value(); }},
    {"shigley-raise", [](const inputs& x) { return screw_torque(newtons(x.at("F")), shigley_thread(x)).value(); }},
    {"shigley-lower", [](const inputs& x) { return lowering_torque(newtons(x.at("F")), shigley_thread(x)).value(); }},
    {"shigley-efficiency", [](const inputs& x) { return static_cast<double>(screw_efficiency(shigley_thread(x))); }},
    {"clamp-screw-Tr16x4",
     [](const inputs& x) {
         EXPECT_NEAR(mean_diameter_of({.diameter = 16_mm, .pitch = 4_mm}).value(), x.at("dm"), 1e-15);
         return screw_force(in_si<torque>(x.at("T")), {.diameter = 16_mm, .pitch = 4_mm}).value();
     }},
    {"clamp-standard", [](const inputs&) { return new_clamp_limit.value(); }},
    {"lap-joint",
     [](const inputs& x) {
         const lap_bar bar{rho(x.at("rho")), metres(x.at("t"))};
         return lap_joint_resistance(bar, bar, {metres(x.at("b")), metres(x.at("l"))}).value();
     }},
    {"mil-4awg", [](const inputs&) { return crimp_limit_of(awg(4).area()).resistance.value(); }},
};

}  // namespace

TEST(ContactWorkedExamples, EveryRow)
{
    std::size_t checked = 0;
    for (const auto& row : test::reference_table("contacts-worked-examples.csv").rows()) {
        const std::string id = row.text("id");
        const auto answer = answers.find(id);
        ASSERT_NE(answer, answers.end()) << row.where() << ": no check for " << id;
        EXPECT_NEAR_REL(answer->second(test::inputs_of(row.text("inputs_SI"))), row.number("answer"),
                        row.number("relative_tolerance"))
            << row.where() << " " << id;
        ++checked;
    }
    EXPECT_EQ(checked, answers.size());
}
