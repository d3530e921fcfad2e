#include <cstddef>
#include <map>
#include <string>
#include <string_view>

#include <gtest/gtest.h>

#include <weldloop/law/film.hpp>
#include <weldloop/material/surface_film.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {

using namespace weldloop;

template <class Rows, class Member>
bool check(const Rows& rows, Member member, std::string_view name, const test::reference_table::row& row, double unit)
{
    for (const auto& mine : rows) {
        if (mine.film != name) continue;
        EXPECT_NEAR_REL((mine.*member).low.value(), row.number("low") * unit, 1e-12) << name;
        EXPECT_NEAR_REL((mine.*member).typical.value(), row.number("typical") * unit, 1e-12) << name;
        EXPECT_NEAR_REL((mine.*member).high.value(), row.number("high") * unit, 1e-12) << name;
        // what was recalled says so
        EXPECT_TRUE(row.text("verified") != "memory" || mine.from->kind == source_kind::memory) << name;
        return true;
    }
    return false;
}

// name in the table, its quantity -> name here
const std::map<std::string, std::string_view> names{
    {"magnetite Fe3O4 (main part of mill scale)", "magnetite, main part of mill scale"},
    {"haematite Fe2O3 (outer mill scale; red rust)", "haematite, outer mill scale and red rust"},
    {"limonite FeOOH.nH2O (yellow or brown rust)", "limonite, yellow or brown rust"},
    {"cuprous oxide Cu2O", "cuprous oxide"},
    {"cupric oxide CuO", "cupric oxide"},
    {"copper sulphide Cu2S", "copper sulphide tarnish"},
    {"paint", "paint"},
    {"adsorbed water or oxygen monolayer film on metal", "adsorbed water or oxygen on clean metal"},
    {"thin copper oxide, fresh joint (about 2 nm)", "thin copper oxide of a fresh joint"},
    {"oxidised or tarnished copper (10 to 100 nm)", "tarnished copper, 10 to 100 nm"},
    {"mill scale, intact", "mill scale, intact"},
    {"rust layer, dry", "rust, dry"},
    {"mill scale", "mill scale"},
    {"light flash rust", "light flash rust"},
    {"heavy rust", "heavy rust"},
    {"shop primer", "shop primer"},
    {"paint system", "paint system"},
};

}  // namespace

// source: tests/reference/contacts-films.csv, every row with a resistivity, film resistivity or thickness
TEST(SurfaceFilm, EveryRowOfTheTable)
{
    std::size_t checked = 0;
    for (const auto& row : test::reference_table("contacts-films.csv").rows()) {
        const auto name = names.find(row.text("film"));
        if (name == names.end()) continue;
        const std::string quantity = row.text("quantity");
        if (quantity == "volume resistivity")
            checked += check(film_bulk_resistivities, &film_resistivity_row::bulk, name->second, row, 1.0);
        else if (quantity == "thickness")
            checked += check(film_thicknesses, &film_thickness_row::thickness, name->second, row, 1e-6);
        else if (quantity != "dielectric strength")
            checked += check(film_states, &film_state_row::whole, name->second, row, 1.0);
    }
    EXPECT_EQ(checked, film_bulk_resistivities.size() + film_thicknesses.size() + film_states.size());
}

// source: the same table, notes: whole films are thickness times resistivity; the oxides of iron differ by a million
TEST(SurfaceFilm, FilmsAreThicknessTimesResistivity)
{
    EXPECT_NEAR_REL(film_resistivity_of(cuprous_oxide_resistivity.typical, in_si<length>(100e-9)).value(),
                    film_states[2].whole.high.value(), 0.1);
    EXPECT_NEAR_REL(
        film_resistivity_of(film_bulk_resistivities[0].bulk.typical, film_thicknesses[0].thickness.typical).value(),
        film_states[3].whole.typical.value(), 1e-9);
    double ratio = 0.0;  // of the conductivities, as an encyclopaedia has it
    for (const auto& row : test::reference_table("contacts-films.csv").rows())
        if (row.text("film") == "iron oxide ratio") ratio = row.number("typical");
    EXPECT_GT(ratio, 1.0);
    EXPECT_LT(film_bulk_resistivities[1].bulk.low / film_bulk_resistivities[0].bulk.high, ratio);
    EXPECT_GT(film_bulk_resistivities[1].bulk.high / film_bulk_resistivities[0].bulk.low, ratio);
}
