// Lab 10, worked: two returns and a chain that share a current, and a fault that the readings of volts give away.
#include <array>

#include <weldloop/circuit/loop.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/field/locate_fault.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>

#include "lab_sheet.hpp"

namespace wl = weldloop;
using namespace wl::literals;
using lab::fixed;

namespace {
// The board of the lab, with what lies under the first clamp, and ohms added in the first return. A bar of copper
// stands where the path says arc.
wl::station board(wl::surface_state seat, double added_mohm = 0.0)
{
    const auto known = [](std::string name, double mohm) {
        return wl::measured_part{.name = std::move(name), .drop = wl::exactly(mohm * 10_mV), .at = 10_A};
    };
    wl::station out{.name = "shared returns", .job = {.current = 40_A}, .where = {.air = 22_degC}};
    out.path = {wl::welding_cable(wl::square_mm(25), 4_m).named("feeder"),
                wl::arc{},
                wl::workpiece{.metal = wl::mild_steel, .mass = 20_kg, .thickness = 6_mm, .name = "plate"},
                wl::work_connection{
                    .clamp = wl::screw_clamp(300_A), .onto = wl::mild_steel, .surface = seat, .name = "first clamp"},
                wl::crimped_lug("first lug", wl::square_mm(25)),
                wl::welding_cable(wl::square_mm(25), 8_m).named("first return")};
    if (added_mohm > 0.0) out.path.push_back(known("box", added_mohm));
    out.path.push_back(wl::junction{.name = "stud"});
    out.path.push_back(wl::crimped_lug("stud lug", wl::square_mm(25)));
    out.ways = {
        {.name = "second",
         .from = "plate",
         .to = "stud",
         .path = {wl::work_connection{.clamp = wl::screw_clamp(300_A), .onto = wl::mild_steel, .name = "second clamp"},
                  wl::welding_cable(wl::square_mm(16), 8_m).named("second return")}},
        {.name = "chain", .from = "plate", .to = "stud", .kind = wl::way_kind::stray, .path = {known("chain", 40.0)}}};
    return out;
}
struct shares {
    double first, second, chain;  // A
};
shares shares_of(const wl::loop_state& s)
{
    if (!s.is_solved()) throw std::runtime_error("the board has no settled state");
    const double second = wl::number_in(s.ways[0].current, "A"), chain = wl::number_in(s.ways[1].current, "A");
    return {40.0 - second - chain, second, chain};
}
}  // namespace

lab::sheet solve()
{
    using enum wl::surface_state;
    const wl::loop_state sound = wl::solve_loop(board(clean));
    const shares now = shares_of(sound);
    struct place {
        std::string name;
        std::size_t part;
        double truth;  // of the synthetic board over the prediction
    };
    const std::array<place, 6> places{{{"first clamp", 3, 1.2},
                                       {"first lug", 4, 0.9},
                                       {"first return", 5, 1.01},
                                       {"second clamp", 8, 0.8},
                                       {"second return", 9, 1.02},
                                       {"chain", 10, 1.0}}};
    const auto drop_of = [](const wl::loop_state& s, std::size_t part) {
        return wl::number_in(s.parts[part].drop, "mV");
    };
    const auto amps_of = [](const wl::loop_state& s, std::size_t part) {
        return wl::number_in(s.parts[part].current, "A");
    };
    lab::heading("prediction, 40 A into the plate, every joint clean");
    lab::row({"part", "drop [mV]", "current [A]", "[mohm]"}, 18, 14);
    for (const place& p : places)
        lab::row({p.name, fixed(drop_of(sound, p.part), 2), fixed(amps_of(sound, p.part), 2),
                  fixed(drop_of(sound, p.part) / amps_of(sound, p.part), 3)},
                 18, 14);
    lab::heading("by hand, the spreading in the plate left out");
    const double lead_mohm =
        lab::step("IEC 60228, 25 mm2: 0.780 ohm/km x 8 m, at 22 degC [mohm]", 0.780 * 8.0 * (1.0 + 0.00393 * 2.0), 3);
    lab::by_hand("first return, its own rise left out [mohm]", lead_mohm, drop_of(sound, 5) / now.first, 3, 0.008);
    const double first_mohm = lab::step("first return, its three parts [mohm]",
                                        (drop_of(sound, 3) + drop_of(sound, 4) + drop_of(sound, 5)) / now.first, 3);
    const double second_mohm =
        lab::step("second return [mohm]", (drop_of(sound, 8) + drop_of(sound, 9)) / now.second, 3);
    const double siemens =
        lab::step("sum of the conductances, chain 25 S [S]", 1e3 / first_mohm + 1e3 / second_mohm + 25.0, 2);
    lab::by_hand("chain, 40 A x 25 S over that [A]", 40.0 * 25.0 / siemens, now.chain, 3, 0.003);

    // behind the cover somebody has clamped on heavy rust
    lab::synthetic world(1010);
    const wl::loop_state faulty = wl::solve_loop(board(heavy_rust));
    const shares then = shares_of(faulty);
    lab::heading("data sheet (SYNTHETIC, seed 1010): the board as handed out");
    lab::row({"part", "drop [mV]", "current [A]"}, 18, 14);
    std::vector<wl::observation> found;
    std::vector<std::vector<std::string>> rows;
    double chain_mv = 0.0;
    for (const place& p : places) {
        const double volts = world.reading(p.truth * drop_of(faulty, p.part), 0.02, 0.01);
        const double amps = world.reading(amps_of(faulty, p.part), 0.2, 0.1);
        lab::row({p.name, fixed(volts, 2), fixed(amps, 1)}, 18, 14);
        rows.push_back({p.name, fixed(amps, 1), fixed(volts, 2)});
        if (p.name == "chain")
            chain_mv = volts;
        else
            found.emplace_back(
                wl::reading{.across = p.name, .volts = volts * 1_mV, .current = amps * 1_A, .error = 0.05_mV});
    }

    lab::heading("the part at fault, by the library from the readings and the board as drawn");
    const wl::fault_search search = wl::locate_fault(board(clean), found);
    for (const wl::suspected_part& p : search.parts)
        if (static_cast<double>(p.probability) >= 0.05)
            std::cout << p.name << ": " << fixed(100.0 * static_cast<double>(p.probability), 0)
                      << " % at fault; likeliest " << p.condition << '\n';
    std::cout << "nothing at fault: " << fixed(100.0 * static_cast<double>(search.none), 0) << " %\n";
    if (search.next)
        std::cout << "next: " << wl::to_text(search.next->quantity) << " of " << search.next->across << '\n';

    lab::heading("uncertainty budget: the chain's current by its own drop");
    lab::budget("current in the chain [A]", 2,
                {{"drop over the chain [mV]", chain_mv, 0.03},
                 {"its drop at 10 A [mV]", 400.0, 4.0},
                 {"current of that reading [A]", 10.0, 0.05},
                 {"thermal voltage [mV]", 0.0, 0.05}},
                [](const std::vector<double>& x) { return (x[0] - x[3]) / x[1] * x[2]; });

    lab::heading("answers");
    const shares open = shares_of(wl::solve_loop(board(painted_unbroken)));
    lab::row({"first clamp on", "first [A]", "second [A]", "chain [A]"}, 22);
    const auto told = [](std::string_view what, const shares& s) {
        lab::row({std::string(what), fixed(s.first, 1), fixed(s.second, 1), fixed(s.chain, 1)}, 22);
    };
    told("clean metal", now);
    told("heavy rust", then);
    told("unbroken paint, open", open);
    std::cout << "at 200 A the chain would carry " << fixed(5.0 * now.chain, 0) << ", " << fixed(5.0 * then.chain, 0)
              << " and " << fixed(5.0 * open.chain, 0) << " A if every drop kept its proportion\n";

    lab::points first, second, chain;
    for (double r = 0.5; r <= 50.0; r *= 1.35) {
        const shares s = shares_of(wl::solve_loop(board(clean, r)));
        first.emplace_back(r, s.first);
        second.emplace_back(r, s.second);
        chain.emplace_back(r, s.chain);
    }
    lab::picture picture("Who carries 40 A as the first return gets worse",
                         {"ohms added in the first return [mohm]", 0.5, 50, true}, {"current [A]", 0, 40}, 4);
    picture.curve(first, 0, "first return");
    picture.curve(second, 1, "second return");
    picture.curve(chain, 2, "chain, a fault whatever it carries");
    picture.level(open.chain, "chain with the first return open");
    return {picture.finished(), lab::table("10_shared_returns", "part,current_A,drop_mV", rows)};
}

int main(int count, char** words)
{
    return lab::run(count, words, solve);
}
