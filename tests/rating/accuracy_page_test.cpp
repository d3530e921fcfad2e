// The page docs/pages/accuracy.md is what this test computes: run it with WELDLOOP_WRITE_ACCURACY=1 to write the page
// anew; without, it fails if the page says something else.
#include <weldloop/circuit/lead_transient.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/law/conductor_resistance.hpp>
#include <weldloop/law/relaxation_choice.hpp>
#include <weldloop/law/stress_relaxation.hpp>
#include <weldloop/law/voltage_temperature.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/rating/lead/ampacity.hpp>
#include <weldloop/rating/lead/drop.hpp>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <functional>
#include <sstream>
#include <string>
#include <tuple>
#include <vector>

#include "support/near.hpp"
#include "support/published_ratings.hpp"
#include "support/reference_table.hpp"

namespace {

using namespace weldloop;
using namespace weldloop::test::published;
using weldloop::test::reference_table;

conductor_size size_of(const std::string& text)
{
    if (text.find('/') != std::string::npos) return aught(text[0] - '0');
    const int number = std::stoi(text);
    return number > 40 ? kcmil(number) : awg(number);
}

struct line {
    std::string table, conditions;
    std::vector<double> error;  // calculated over published, less one
    double allowed;             // worst, asserted
};

double percent(double share)
{
    return 100.0 * share;
}

line by_rows(const std::string& table, const std::string& conditions, const std::string& file, double allowed,
             const std::function<bool(const reference_table::row&, double&, double&)>& calculate)
{
    line out{table, conditions, {}, allowed};
    for (const auto& row : reference_table(file).rows()) {
        double ours = 0.0, published = 0.0;
        if (calculate(row, ours, published)) out.error.push_back(ours / published - 1.0);
    }
    return out;
}

line by_errors(const std::string& table, const std::string& conditions, const errors& e, double allowed)
{
    return {table, conditions, e.all(), allowed};
}

// The conductor's rise over the air of 25 degC, against the kept output of an ODE suite.
line rise_in_time(const std::string& table, const std::string& conditions, const std::string& kind, double allowed,
                  const std::function<double(const cable&, const reference_table::row&)>& conductor_degC)
{
    constexpr double air_degC = 25.0;
    return by_rows(table, conditions, "../oracle/lead_transient/outputs.csv", allowed,
                   [&](const auto& row, double& ours, double& published) {
                       if (row.text("kind") != kind) return false;
                       const cable lead = welding_cable(square_mm(row.number("size_mm2")), in_si<length>(10.0));
                       ours = conductor_degC(lead, row) - air_degC;
                       published = row.number("conductor_degC") - air_degC;
                       return true;
                   });
}

/// A rule for runs of at most six, against a welding lead; sizes that leads are made in.
std::function<bool(const reference_table::row&, double&, double&)> ship_row(lay lies)
{
    return [lies](const reference_table::row& row, double& ours, double& published) {
        if (row.number("cross_section_mm2") > 240.0) return false;
        cable lead = welding_cable(square_mm(row.number("cross_section_mm2")), in_si<length>(10.0));
        lead.limit = temperature::celsius(row.number("conductor_max_C"));
        const temperature air = temperature::celsius(row.number("ambient_C"));
        ours = ampacity_of(lead, {.air = air, .lay = lies, .bundled_leads = 6}).amps.value();
        published = row.number("current_A");
        return true;
    };
}

std::vector<line> lines()
{
    std::vector<line> out;
    out.push_back(by_rows("area of the American gauge, 4/0 to 40 (circular mils)",
                          "university and textbook tables of the ASTM B258 progression; printed to 4 or 5 digits",
                          "conductors-awg.csv", 0.001, [](const auto& row, double& ours, double& published) {
                              ours = number_in(size_of(row.text("awg")).area(), "cmil");
                              published = row.number("area_published_cmil");
                              return true;
                          }));
    out.push_back(by_rows("resistance of solid copper by gauge, 20 degC", "the same tables; printed to 3 or 4 digits",
                          "conductors-awg.csv", 0.003, [](const auto& row, double& ours, double& published) {
                              ours = number_in(conductor_resistance(annealed_copper, size_of(row.text("awg")).area(),
                                                                    0.0, reference_temperature),
                                               "ohm/kft");
                              published = row.number("resistance_20C_published_ohm_per_kft");
                              return true;
                          }));
    out.push_back(by_rows(
        "NFPA 70 chapter 9 table 8, uncoated copper, 75 degC",
        "stranded with 2 % increment, solid without; printed to 3 digits", "conductors-nec-ch9-table8.csv", 0.005,
        [](const auto& row, double& ours, double& published) {
            const double increment = row.number("strand_count") > 1 ? 0.02 : 0.0;
            const area metal_area = row.number("area_cmil") * 1e-3 * in_si<area>(detail::square_metres_per_cmil * 1e3);
            ours = number_in(conductor_resistance(annealed_copper, metal_area, increment, temperature::celsius(75)),
                             "ohm/kft");
            published = row.number("dc_resistance_75C_uncoated_ohm_per_kft");
            return true;
        }));
    out.push_back(
        by_rows("resistance of copper over that at 0 degC, -100 to 500 degC",
                "NBS Handbook 100; linear law, high-purity copper in the table",
                "conductors-copper-resistance-ratio.csv", 0.03, [](const auto& row, double& ours, double& published) {
                    const auto at = [](double c) { return annealed_copper.resistivity_at(temperature::celsius(c)); };
                    ours = (at(row.number("temperature_C")) / at(0)).value();
                    published = row.number("R_t_over_R_0");
                    return true;
                }));
    out.push_back(by_rows(
        "drop of welding cable, 20 degC",
        "Electric Cables Handbook table A9.2; two decimals, so up to 4 % is rounding (the 60 and 85 degC columns are "
        "tests of their own)",
        "welding-cable-resistance-voltdrop.csv", 0.04, [](const auto& row, double& ours, double& published) {
            cable lead = welding_cable(square_mm(row.number("cross_section_mm2")), in_si<length>(10.0));
            // the printed drops are those of tinned strands
            const double tinned = row.number("r20_max_tinned_ohm_per_km") / row.number("r20_max_plain_ohm_per_km");
            ours = tinned * drop_of(lead, in_si<current>(100.0), reference_temperature).value();
            published = row.number("vdrop_20C_V_per_100A_per_10m");
            return true;
        }));
    const surface_model model = default_surface_model;
    out.push_back(by_errors("welding-cable ratings, 85 degC, air 25 degC, 100 %",
                            "ratings recalled, diameters of BS 638-4", welding_leads(model), 0.08));
    out.push_back(
        by_rows("rating factors of welding leads, 85 degC, air 30 to 45 degC on a base of 25",
                "BS 638-4, as reproduced on a public page, two decimals; leads of 50 mm2",
                "ampacity-ambient-factors.csv", 0.02, [](const auto& row, double& ours, double& published) {
                    if (row.text("family") != "welding cable 85 C") return false;
                    const cable lead = welding_cable(square_mm(50), in_si<length>(10.0));
                    const temperature air = temperature::celsius(row.number("ambient_C")),
                                      base = temperature::celsius(row.number("base_ambient_C"));
                    ours = (ampacity_of(lead, {.air = air}).amps / ampacity_of(lead, {.air = base}).amps).value();
                    published = row.number("factor");
                    return true;
                }));
    out.push_back(by_errors("IEC 60364-5-52 method G, spaced level, 90 degC, air 30 degC", "cable diameters assumed",
                            fixed_wiring_table(model, "G_spaced_horizontal", lay::spaced), 0.08));
    out.push_back(by_errors("IEC 60364-5-52 method F, two touching", "the same",
                            fixed_wiring_table(model, "F_two_touching", lay::touching_pair), 0.08));
    out.push_back(by_errors("IEC 60364-5-52 method F, three flat", "the same; surface constants recalled",
                            fixed_wiring_table(model, "F_three_flat_touching", lay::three_flat), 0.08));
    out.push_back(by_errors("IEC 60364-5-52 method F, trefoil", "the same; surface constants recalled",
                            fixed_wiring_table(model, "F_three_trefoil", lay::trefoil), 0.08));
    out.push_back(by_errors("IEC 60364-5-52 method G, one above the other",
                            "the same; surface constants recalled, those of three, which no other published rating has",
                            fixed_wiring_table(model, "G_spaced_vertical", lay::spaced_vertical), 0.04));
    out.push_back(
        by_rows("IEC 60364-5-52 cables bunched in air, 2 to 20, factor of current",
                "factors recalled but one; leads of 70 mm2. One number for every cable, below it from four on",
                "ampacity-grouping-bunched.csv", 0.20, [](const auto& row, double& ours, double& published) {
                    const int count = static_cast<int>(row.number("circuits"));
                    if (count == 1) return false;
                    const cable lead = welding_cable(square_mm(70), in_si<length>(10.0));
                    const temperature air = temperature::celsius(30.0);
                    ours = (ampacity_of(lead, {.air = air, .lay = lay::bundled, .bundled_leads = count}).amps /
                            ampacity_of(lead, {.air = air}).amps)
                               .value();
                    published = row.number("factor");
                    return true;
                }));
    out.push_back(by_rows("rated current of a coil, 3 to 30 turns, still air to 10 m/s, 85 degC",
                          "not published: finite elements of the section, turn by turn; 16, 70, 185 mm2",
                          "../oracle/lead_coil/outputs.csv", 0.15,
                          [](const auto& row, double& ours, double& published) {
                              const cable lead = welding_cable(square_mm(row.number("size_mm2")), in_si<length>(10.0));
                              ours = ampacity_of(lead, {.wind = in_si<speed>(row.number("wind_m_per_s")),
                                                        .lay = lay::coiled,
                                                        .coil_turns = static_cast<int>(row.number("turns"))})
                                         .amps.value();
                              published = row.number("current_A");
                              return true;
                          }));
    out.push_back(by_rows("ship rules, single core, 85 and 95 degC, air 45 degC, as a bundle of six",
                          "not aimed at: their runs of at most six have free air or are not all loaded (the rule takes "
                          "15 % more off where more than six have none and are)",
                          "ampacity-ship-45C-single-core.csv", 0.40, ship_row(lay::bundled)));
    out.push_back(by_rows("ship rules, single core, 85 and 95 degC, air 45 degC, alone",
                          "not aimed at: the same tables beside a lead by itself; they leave 0.6 to 0.7 of its heat",
                          "ampacity-ship-45C-single-core.csv", 0.35, ship_row(lay::alone)));
    out.push_back(by_errors("BS 7671 rubber flexible cables, pair, 60 degC, air 30 degC", "50 to 150 mm2",
                            flexible_pairs(model), 0.08));
    out.push_back(by_rows(
        "NFPA 70 table 400.5, single conductor, 60 to 90 degC, air 30 degC",
        "not aimed at: the code lies below the physics of one cable in still air; nominal resistance, as the "
        "code's own table of it",
        "ampacity-nec-400-5-type-w.csv", 0.25, [](const auto& row, double& ours, double& published) {
            cable lead = welding_cable(size_of(row.text("size_awg")), in_si<length>(10.0), resistance_choice::nominal);
            lead.limit = temperature::celsius(row.number("conductor_max_C"));
            ours = ampacity_of(lead, {.air = temperature::celsius(row.number("ambient_C"))}).amps.value();
            published = row.number("current_A");
            return true;
        }));
    const auto relaxation_row = [](const auto& row, bool low, double& ours, double& published) {
        if (!row.has("stress_loss_pct") || !row.has("initial_stress_over_Sut") || row.number("stress_loss_pct") == 0)
            return false;
        ours = static_cast<double>(relaxation_state(hard_drawn_wire, row.number("initial_stress_over_Sut"))
                                       .advance(temperature::celsius(row.number("temperature_C")),
                                                in_si<duration>(3600.0 * row.number("time_h")))
                                       .lost(low ? spring_making::preset : spring_making::plain));
        published = row.number("stress_loss_pct") / 100.0;
        return true;
    };
    const auto named = [](const auto& row, const char* begin) { return row.text("id").rfind(begin, 0) == 0; };
    const auto of = [](const reference_table::row& row, const std::string& which) {
        return heating_segment{in_si<current>(row.number("amps_" + which)),
                               in_si<duration>(row.number("seconds_" + which))};
    };
    out.push_back(rise_in_time("rise of a lead after one load or a load and a rest, 10 s to 10 h",
                               "not published: a covering of 200 rings marched by an ODE suite; 16, 70, 185 mm2",
                               "once", 0.003, [&](const cable& lead, const auto& row) {
                                   conductor_profile at = lead_at_rest(lead, {});
                                   for (const char* which : {"1", "2"}) {
                                       const heating_segment s = of(row, which);
                                       at = temperature_after(lead, {}, {s.current, s.duration}, at);
                                   }
                                   return at.conductor.in_celsius();
                               }));
    out.push_back(rise_in_time("peak rise of a lead under a settled duty, 2 s of 1 min to 6 of 10 min", "the same",
                               "settled", 0.003, [&](const cable& lead, const auto& row) {
                                   const heating_segment programme[] = {of(row, "1"), of(row, "2")};
                                   return heating_of_programme(lead, {}, programme).conductor_peak.in_celsius();
                               }));
    out.push_back(by_rows("relaxation of cold-drawn wire, 20 degC, 1 to 1000 h",
                          "code values, normal class; the law's level and slopes were fitted to these and the hot rows",
                          "springs-relaxation-data.csv", 0.05, [&](const auto& row, double& ours, double& published) {
                              return (named(row, "RX-IRC-N-") || named(row, "RX-MC90-1")) &&
                                     relaxation_row(row, false, ours, published);
                          }));
    out.push_back(by_rows("relaxation of low-relaxation wire, 20 degC, 1000 h",
                          "code values, taken for hot-preset springs; the level was fitted to these",
                          "springs-relaxation-data.csv", 0.05, [&](const auto& row, double& ours, double& published) {
                              return named(row, "RX-IRC-L-") && relaxation_row(row, true, ours, published);
                          }));
    out.push_back(by_rows("relaxation of cold-drawn wire, 20 degC, 30 years",
                          "code value by a power of time; one slope over the parameter cannot follow it further",
                          "springs-relaxation-data.csv", 0.10, [&](const auto& row, double& ours, double& published) {
                              return named(row, "RX-MC90-262800") && relaxation_row(row, false, ours, published);
                          }));
    out.push_back(by_rows("relaxation of cold-drawn wire, 40 to 100 degC, linear rule",
                          "the steeper of two published rules; the law lies between them",
                          "springs-relaxation-data.csv", 0.35, [&](const auto& row, double& ours, double& published) {
                              return named(row, "RX-T20-") && row.number("temperature_C") > 20.0 &&
                                     relaxation_row(row, false, ours, published);
                          }));
    out.push_back(by_rows(
        "relaxation of cold-drawn wire, 40 to 100 degC, equivalent time", "the flatter of the two, at the same points",
        "springs-relaxation-data.csv", 0.25, [&](const auto& row, double& ours, double& published) {
            if (!named(row, "RX-T20-") || row.number("temperature_C") == 20.0) return false;
            if (!relaxation_row(row, false, ours, published)) return false;
            published =
                static_cast<double>(code_relaxation_state(hard_drawn_wire, row.number("initial_stress_over_Sut"), {})
                                        .advance(temperature::celsius(row.number("temperature_C")),
                                                 in_si<duration>(3600.0 * row.number("time_h")))
                                        .lost());
            return true;
        }));
    out.push_back(by_rows(
        "strength of oil-tempered spring wire, 1 to 10 mm", "IS 4454-2 SW minima; constants of a textbook, recalled",
        "springs-wire-tensile-tables.csv", 0.06, [](const auto& row, double& ours, double& published) {
            if (row.text("wire") != "oil-hardened and tempered, SW (static)") return false;
            ours = number_in(tensile_strength(oil_tempered_wire, in_si<length>(1e-3 * row.number("d_mm"))), "MPa");
            published = row.number("Sut_min_MPa");
            return true;
        }));
    out.push_back(by_rows("strength of music, hard-drawn and oil-tempered wire at 3 mm",
                          "power-law fit of the ASTM minima; constants of a textbook, recalled",
                          "springs-wire-tensile.csv", 0.05, [](const auto& row, double& ours, double& published) {
                              if (row.text("set") != "power-law fit of ASTM minima") return false;
                              const spring_wire& wire = row.text("wire") == "music wire"   ? music_wire
                                                        : row.text("wire") == "hard-drawn" ? hard_drawn_wire
                                                                                           : oil_tempered_wire;
                              ours = number_in(tensile_strength(wire, in_si<length>(3e-3)), "MPa");
                              published = row.number("A_MPa_mm_m") / std::pow(3.0, row.number("m"));
                              return true;
                          }));
    out.push_back(by_rows(
        "melting drop of contact metals",
        "Holm and Slade, handbook voltages; copper, gold, tin, tungsten by two sources, the rest recalled; nickel and "
        "zinc depart from the law",
        "contacts-voltage-temperature.csv", 0.25, [](const auto& row, double& ours, double& published) {
            if (!row.has("melting_voltage_handbook_V")) return false;
            ours = drop_for_spot_temperature(temperature::celsius(row.number("melting_temp_C")), reference_temperature)
                       .value();
            published = row.number("melting_voltage_handbook_V");
            return true;
        }));
    return out;
}

struct summary {
    double median = 0.0, worst = 0.0, mean = 0.0;  // of the errors: size, signed, signed
};

summary summary_of(const line& l)
{
    summary out;
    std::vector<double> sizes;
    for (const double e : l.error) {
        sizes.push_back(std::fabs(e));
        out.mean += e / static_cast<double>(l.error.size());
        if (std::fabs(e) > std::fabs(out.worst)) out.worst = e;
    }
    std::sort(sizes.begin(), sizes.end());
    out.median = sizes[sizes.size() / 2];
    return out;
}

// Rows of the page that the README shows too, and its remark on each.
struct readme_row {
    std::string table, remark;
};
const std::vector<readme_row> readme_rows{
    {"resistance of solid copper by gauge, 20 degC", "printed to 3 or 4 digits"},
    {"NFPA 70 chapter 9 table 8, uncoated copper, 75 degC", "printed to 3 digits"},
    {"welding-cable ratings, 85 degC, air 25 degC, 100 %", "ratings recalled, not read"},
    {"IEC 60364-5-52 method G, spaced level, 90 degC, air 30 degC", "cable diameters assumed"},
    {"IEC 60364-5-52 method F, two touching", "the same"},
    {"IEC 60364-5-52 method F, three flat", "surface constants recalled"},
    {"IEC 60364-5-52 method F, trefoil", "surface constants recalled"},
    {"BS 7671 rubber flexible cables, pair, 60 degC, air 30 degC", "50 to 150 mm2"},
    {"NFPA 70 table 400.5, single conductor, 60 to 90 degC, air 30 degC",
     "not aimed at: the code lies below the physics of one cable in still air"},
    {"relaxation of cold-drawn wire, 20 degC, 1 to 1000 h", "the law was fitted to these and to hot rows"},
    {"melting drop of contact metals", "nickel and zinc depart from the law"},
};

std::string readme_table_of(const std::vector<line>& all)
{
    std::ostringstream out;
    for (const readme_row& row : readme_rows) {
        const auto l = std::find_if(all.begin(), all.end(), [&](const line& x) { return x.table == row.table; });
        if (l == all.end()) return "no line of the page is called " + row.table;
        const summary s = summary_of(*l);
        out << "| " << row.table << " | " << l->error.size() << " | " << number_text(percent(s.median), 2) << " | "
            << number_text(percent(std::fabs(s.worst)), 2) << " | " << row.remark << " |\n";
    }
    return out.str();
}

std::string page_of(const std::vector<line>& all)
{
    std::ostringstream out;
    out << "# How accurate it is {#accuracy_page}\n\n"
           "Calculated over published values. This page is written by the test run "
           "(`tests/rating/accuracy_page_test.cpp`), which\n"
           "also holds every line to the worst error it may have. Nothing is tuned to these tables, unless the line "
           "says so.\n\n"
           "| published | rows | median error | worst | mean, signed | conditions |\n|---|---|---|---|---|---|\n";
    for (const line& l : all) {
        const summary s = summary_of(l);
        const auto text = [](double share) { return number_text(percent(share), 2) + " %"; };
        out << "| " << l.table << " | " << l.error.size() << " | " << text(s.median) << " | " << text(s.worst) << " | "
            << text(s.mean) << " | " << l.conditions << " |\n";
    }
    out << "\nWorked examples of textbooks, the work-clamp standard, screws, springs, fins and contacts are met to "
           "their printed digits;\n"
           "each stands as a test with its source beside it.\n";
    return out.str();
}

TEST(AccuracyPage, EveryTableIsWithinItsError)
{
    for (const line& l : lines()) {
        ASSERT_FALSE(l.error.empty()) << l.table;
        for (const double e : l.error) EXPECT_LE(std::fabs(e), l.allowed) << l.table;
    }
}

std::string text_of(const std::string& path)
{
    std::ifstream in(path);
    std::ostringstream out;
    out << in.rdbuf();
    return out.str();
}

// The README's table is the page's: its rows stand between the heading and the first row that another test measures.
TEST(AccuracyPage, TheReadmeSaysTheSame)
{
    const std::string path = std::string(WELDLOOP_INCLUDE_DIR) + "/../README.md", head = "|---|---|---|---|---|\n";
    std::string readme = text_of(path);
    const std::size_t begin = readme.find(head) + head.size(), end = readme.find("| whole loops under duty");
    ASSERT_NE(readme.find(head), std::string::npos);
    ASSERT_NE(end, std::string::npos);
    const std::string table = readme_table_of(lines());
    if (std::getenv("WELDLOOP_WRITE_ACCURACY") != nullptr) {
        readme.replace(begin, end - begin, table);
        std::ofstream(path) << readme;
        return;
    }
    EXPECT_EQ(readme.substr(begin, end - begin), table);
}

TEST(AccuracyPage, SaysWhatWasMeasured)
{
    const std::string path = std::string(WELDLOOP_INCLUDE_DIR) + "/../docs/pages/accuracy.md";
    const std::string page = page_of(lines());
    if (std::getenv("WELDLOOP_WRITE_ACCURACY") != nullptr) std::ofstream(path) << page;
    EXPECT_EQ(text_of(path), page);
}

}  // namespace
