// solve_loop() against a hundred stations marched in time to their settled period: tests/oracle/loop_march.
#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <iomanip>
#include <iostream>
#include <iterator>
#include <map>
#include <optional>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/circuit/loop.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>

#include "support/reference_table.hpp"

using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

namespace {

// The march changes by less than 0.1 K and 0.01 % where cells, rings and steps are halved (its README); what is allowed
// is what the solver promises.
constexpr double allowed_K = 1.0, allowed_share_of_rise = 0.02, allowed_share_of_drop = 0.005;

reference_table kept(const std::string& name)
{
    const std::filesystem::path path =
        std::filesystem::path(WELDLOOP_TEST_DATA).parent_path() / "oracle" / "loop_march" / name;
    std::ifstream in(path, std::ios::binary);
    if (!in) throw std::runtime_error(path.string() + ": cannot be read");
    return {path.filename().string(), std::string{std::istreambuf_iterator<char>(in), {}}};
}

std::vector<std::string> split(const std::string& text, char at)
{
    std::vector<std::string> out;
    std::istringstream in(text);
    for (std::string field; std::getline(in, field, at);) out.push_back(field);
    return out;
}

template <class T>
const T& named(const std::map<std::string, T>& choices, const std::string& word)
{
    const auto found = choices.find(word);
    if (found == choices.end()) throw std::runtime_error("unknown word '" + word + "'");
    return found->second;
}

surface_state surface_named(const std::string& word)
{
    static const std::map<std::string, surface_state> states{{"clean", surface_state::clean},
                                                             {"oxidized", surface_state::oxidized},
                                                             {"greasy", surface_state::greasy},
                                                             {"galvanized", surface_state::galvanized},
                                                             {"light_rust", surface_state::light_rust},
                                                             {"mill_scale_bitten", surface_state::mill_scale_bitten},
                                                             {"spatter_covered", surface_state::spatter_covered}};
    return named(states, word);
}

const metal& metal_named(const std::string& word)
{
    static const std::map<std::string, metal> metals{
        {"steel", mild_steel}, {"copper", annealed_copper}, {"brass", brass}, {"aluminium", aluminium}};
    return named(metals, word);
}

// A part as stations.csv writes it: kind, plain fields, and fields with a name.
struct token {
    std::string kind;
    std::vector<std::string> fields;
    std::map<std::string, std::string> options;

    explicit token(const std::string& text)
    {
        std::vector<std::string> all = split(text, ':');
        kind = all.at(0);
        for (std::size_t i = 1; i < all.size(); ++i) {
            const std::size_t equals = all[i].find('=');
            if (equals == std::string::npos)
                fields.push_back(all[i]);
            else
                options[all[i].substr(0, equals)] = all[i].substr(equals + 1);
        }
    }

    [[nodiscard]] double number(std::size_t i) const { return std::stod(fields.at(i)); }
    [[nodiscard]] double option(const std::string& name, double otherwise) const
    {
        const auto found = options.find(name);
        return found == options.end() ? otherwise : std::stod(found->second);
    }
    [[nodiscard]] std::string word(const std::string& name, const std::string& otherwise) const
    {
        const auto found = options.find(name);
        return found == options.end() ? otherwise : found->second;
    }
    [[nodiscard]] surface_state surface(const std::string& name) const { return surface_named(word(name, "clean")); }
    [[nodiscard]] conductor_size size(std::size_t i) const
    {
        static const std::map<std::string, size_scale> scales{
            {"awg", size_scale::awg}, {"aught", size_scale::aught}, {"mm2", size_scale::square_mm}};
        return {named(scales, fields.at(i)), number(i + 1)};
    }
};

work_clamp clamp_of(const token& t)
{
    const std::string& kind = t.fields.at(0);
    if (kind == "bolted") return bolted_work_lug(t.size(1));
    return kind == "spring" ? spring_clamp(in_si<current>(t.number(1))) : screw_clamp(in_si<current>(t.number(1)));
}

path_part part_of(const token& t)
{
    if (t.kind == "cable") {  // the march has American leads of nominal, metric ones of the highest resistance
        const bool metric = t.size(0).scale() == size_scale::square_mm;
        return welding_cable(t.size(0), in_si<length>(t.number(2)),
                             metric ? resistance_choice::standard_maximum : resistance_choice::nominal);
    }
    if (t.kind == "lug") {
        lug out = crimped_lug("", t.size(0)).with_missing_strands(t.option("missing", 0.0));
        out.bolt_torque = in_si<torque>(t.option("torque", out.bolt_torque.value()));
        out.palm = t.surface("palm");
        return out;
    }
    if (t.kind == "coupling") {
        coupling out("", t.size(0));
        out.force = in_si<force>(t.option("force", out.force.value()));
        out.surface = t.surface("surface");
        return out;
    }
    if (t.kind == "holder") {
        electrode_holder out("", in_si<current>(t.number(0)));
        out.surface = t.surface("surface");
        return out;
    }
    if (t.kind == "gun") return wire_gun("", in_si<length>(t.number(0)));
    if (t.kind == "torch")
        return tig_torch("", in_si<length>(t.number(1)),
                         t.fields.at(0) == "water" ? torch_cooling::water : torch_cooling::gas);
    if (t.kind == "clamp")
        return work_connection{.clamp = clamp_of(t),
                               .onto = mild_steel,
                               .surface = t.surface("surface"),
                               .work_thickness = in_si<length>(t.option("work", (10_mm).value())),
                               .grip_lost = t.option("lost", 0.0)};
    if (t.kind == "contact")
        return contact{.metals = {metal_named(t.word("first", "steel")), metal_named(t.word("second", "steel"))},
                       .force = in_si<force>(t.option("force", 0.0)),
                       .surface = t.surface("surface")};
    if (t.kind == "plate")
        return plate{.metal = mild_steel,
                     .length = in_si<length>(t.number(0)),
                     .width = in_si<length>(t.number(1)),
                     .thickness = in_si<length>(t.number(2))};
    if (t.kind == "arc") return arc{};
    throw std::runtime_error("unknown part '" + t.kind + "'");
}

station station_of(const reference_table::row& row)
{
    static const std::map<std::string, process> processes{
        {"smaw", process::smaw}, {"gmaw", process::gmaw}, {"gtaw", process::gtaw}};
    station s{
        .name = row.text("id"),
        .job = {.process = named(processes, row.text("process")),
                .current = in_si<current>(row.number("amps")),
                .duty = duty_cycle::of(in_si<duration>(row.number("on_s")), in_si<duration>(row.number("period_s")))},
        .where = {.air = temperature::celsius(row.number("air_c"))}};
    for (const std::string& part : split(row.text("path"), ' ')) s.path.push_back(part_of(token(part)));
    return s;
}

// One number of a part, the library's beside the march's.
struct comparison {
    std::string part;
    double solved, marched, allowed;

    [[nodiscard]] double used() const { return std::fabs(solved - marched) / allowed; }
};

std::ostream& operator<<(std::ostream& out, const comparison& c)
{
    return out << c.part << ' ' << std::setprecision(6) << c.solved << ", marched " << c.marched << " (" << std::showpos
               << std::setprecision(3) << c.solved - c.marched << std::noshowpos << ", allowed " << c.allowed << ')';
}

struct compared_station {
    std::string name;
    bool settled = false;
    double total_solved = 0.0, total_marched = 0.0;
    int places = 0;  // of clamps, holders and heads
    std::vector<comparison> peaks = {}, means = {}, drops = {};
};

comparison temperatures(const std::string& part, const temperature& solved, double marched, const temperature& air)
{
    return {part, solved.in_celsius(), marched,
            std::max(allowed_K, allowed_share_of_rise * (marched - air.in_celsius()))};
}

// The library's word for a place of the march; none for bodies that are the part itself.
std::optional<part_place> place_named(const std::string& kind, const std::string& place)
{
    static const std::map<std::string, part_place> places{{"jaw", part_place::jaws},
                                                          {"core", part_place::jaws},
                                                          {"spring", part_place::spring},
                                                          {"handle", part_place::handle},
                                                          {"entry", part_place::cable_connection},
                                                          {"head", part_place::head},
                                                          {"patch", part_place::work}};
    if (place == "body" && kind == "clamp") return part_place::arms;
    const auto found = places.find(place);
    return found == places.end() ? std::nullopt : std::optional(found->second);
}

// Every station solved once and laid beside its rows of outputs.csv.
const std::vector<compared_station>& compared()
{
    static const std::vector<compared_station> all = [] {
        std::vector<compared_station> out;
        const reference_table stations = kept("stations.csv"), outputs = kept("outputs.csv");
        std::map<std::string, std::vector<const reference_table::row*>> rows;
        for (const auto& row : outputs.rows()) rows[row.text("id")].push_back(&row);
        for (const auto& row : stations.rows()) {
            const station s = station_of(row);
            const loop_state state = solve_loop(s);
            compared_station c{.name = s.name, .settled = state.is_solved()};
            c.total_solved = state.total_drop.value();
            for (const auto* marched : rows[s.name]) {
                if (marched->text("place") == "total") c.total_marched = marched->number("drop_V");
                if (marched->text("place") == "total") continue;
                const auto at = static_cast<std::size_t>(marched->number("part"));
                const part_state& part = state.parts.at(at);
                const std::string name = name_of(s.path, at);
                if (marched->text("place") != "part") {
                    const auto what = place_named(marched->text("kind"), marched->text("place"));
                    for (const place_state& p : part.places) {
                        if (!what || p.what != *what) continue;
                        const std::string here = name + ", " + std::string(to_text(p.what));
                        c.peaks.push_back(temperatures(here, p.peak, marched->number("peak_degC"), s.where.air));
                        c.means.push_back(temperatures(here, p.mean, marched->number("mean_degC"), s.where.air));
                        ++c.places;
                    }
                    continue;
                }
                // of a gun or torch the march gives the lead, not the head
                temperature peak = part.peak;
                for (const place_state& p : part.places)
                    if (p.what == part_place::conductor) peak = p.peak;
                c.peaks.push_back(temperatures(name, peak, marched->number("peak_degC"), s.where.air));
                c.means.push_back(temperatures(name, part.mean, marched->number("mean_degC"), s.where.air));
                const double drop = marched->number("drop_V");
                c.drops.push_back({name, part.drop.value(), drop, allowed_share_of_drop * drop});
            }
            out.push_back(std::move(c));
        }
        return out;
    }();
    return all;
}

// The worst part of every station is printed; one beyond what is allowed fails.
void expect_within(std::vector<comparison> compared_station::*numbers, const std::string& what)
{
    double worst = 0.0;
    for (const compared_station& s : compared()) {
        const std::vector<comparison>& of = s.*numbers;
        ASSERT_FALSE(of.empty()) << s.name;
        const comparison& most = *std::max_element(
            of.begin(), of.end(), [](const comparison& a, const comparison& b) { return a.used() < b.used(); });
        std::cout << s.name << ' ' << what << ": " << most << '\n';
        EXPECT_LE(most.used(), 1.0) << s.name << ", " << what << " of " << most;
        worst = std::max(worst, most.used());
    }
    testing::Test::RecordProperty("worst_over_allowed", std::to_string(worst));
}

}  // namespace

TEST(LoopMarch, AHundredStationsSettle)
{
    EXPECT_EQ(compared().size(), 100u);
    int places = 0;
    for (const compared_station& s : compared()) {
        EXPECT_TRUE(s.settled) << s.name;
        places += s.places;
    }
    EXPECT_GT(places, 600);
}

TEST(LoopMarch, PeakOfEveryPart)
{
    expect_within(&compared_station::peaks, "peak, degC,");
}

TEST(LoopMarch, MeanOfEveryPart)
{
    expect_within(&compared_station::means, "mean, degC,");
}

TEST(LoopMarch, DropOfEveryPartAndOfTheLoop)
{
    expect_within(&compared_station::drops, "drop, V,");
    for (const compared_station& s : compared())
        EXPECT_NEAR(s.total_solved, s.total_marched, allowed_share_of_drop * s.total_marched) << s.name;
}
