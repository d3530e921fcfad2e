// Probabilities and bands from the slopes of the solved network against solving it again for seeded draws.
#include <weldloop/circuit/loop.hpp>
#include <weldloop/circuit/loop_scatter.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/part_verdict.hpp>

#include <algorithm>
#include <cmath>
#include <random>
#include <string>
#include <vector>

#include "support/near.hpp"

namespace {
using namespace weldloop;

// The bulk that sets a contact's hardness and drop is between the sides it has: Holm, Electric Contacts, takes both
// alike.
TEST(LoopNetwork, AContactHasTheMeanTemperatureOfItsSides)
{
    detail::loop_network::contact_at c{};
    const std::vector<double> rise{10.0, 30.0};
    c.bulk = 0;
    c.with = 1;
    EXPECT_DOUBLE_EQ(detail::loop_network::bulk_rise(c, rise), 20.0);
    c.with = detail::loop_network::nowhere;
    EXPECT_DOUBLE_EQ(detail::loop_network::bulk_rise(c, rise), 10.0);
    // what grips has its own; a contact that nothing presses more or less by its warmth feels none
    c.follows = 1;
    EXPECT_DOUBLE_EQ(detail::loop_network::gripping_rise(c, rise), 30.0);
    c.follows = detail::loop_network::nowhere;
    EXPECT_DOUBLE_EQ(detail::loop_network::gripping_rise(c, rise), 0.0);
}

station trailer_stand(current amps, const duty_cycle& duty, surface_state seat)
{
    station s{.name = "trailer stand",
              .job = {.process = process::smaw, .current = amps, .duty = duty},
              .where = {.air = 30_degC}};
    s.path = {crimped_lug("terminal", square_mm(50)),
              welding_cable(square_mm(50), 10_m).named("electrode lead"),
              electrode_holder("holder", 300_A),
              arc{},
              work_connection{.clamp = spring_clamp(300_A), .onto = mild_steel, .surface = seat, .name = "clamp"},
              crimped_lug("clamp lug", square_mm(50)).with_missing_strands(0.3),
              welding_cable(square_mm(50), 10_m).named("work lead"),
              crimped_lug("work terminal", square_mm(50)).tightened_to(1_Nm)};
    return s;
}

// A log-normal with its own spread on either side of the median: written again, not taken from the library.
double drawn(const band<conductance>& cold, double z)
{
    constexpr double ninety_five = 1.6448536269514722;
    const double end = z > 0.0 ? cold.low.value() : cold.high.value();
    return cold.typical.value() * std::exp(std::fabs(z) / ninety_five * std::log(end / cold.typical.value()));
}

// The limits of every part, with what the draws and the slopes say of each.
void compare(const station& s, int draws, double points_allowed)
{
    const detail::solved_station solved(s);
    ASSERT_EQ(solved.typical().outcome, loop_outcome::solved);
    struct held {
        std::string what;
        std::size_t node;
        double limit_rise, predicted;
        int above = 0;
    };
    std::vector<held> limits;
    for (std::size_t i = 0; i < s.path.size(); ++i)
        for (const place_limit& l : limits_of(part_in_path(s.path, i), s.where).places) {
            const std::size_t node = solved.node_of(i, l.where);
            const detail::scattered_sum peak = solved.scatter_of().peak_of(node);
            // at the limit itself, and where the slopes put one case in ten and one in two
            const double rise = (l.highest - s.where.air).value();
            std::vector<double> numbers{rise};
            constexpr double felt = 0.1;  // K: less is lost in what a settled period may still move
            if (peak.end(true) - peak.base() > felt) {
                numbers.push_back(peak.base() + 0.5 * (peak.end(true) - peak.base()));
                numbers.push_back(peak.end(true));
            }
            for (const double at : numbers)
                limits.push_back({name_of(s.path, i) + ", " + std::string(to_text(l.where)), node, at, peak.above(at)});
        }
    const detail::scattered_sum drop = solved.scatter_of().total_drop(solved.typical().total_drop.value());
    const double low = drop.quantile(0.05), high = drop.quantile(0.95);
    int below_low = 0, above_high = 0, settled = 0;

    detail::loop_network net(s, checked_arc_index(s));
    net.set(scatter::typical);
    const solve::on_off programme{s.job.duty.on().value(),
                                  s.job.duty.is_continuous() ? 0.0 : s.job.duty.rest().value()};
    std::mt19937_64 random(20260);
    std::normal_distribution<double> normal;
    for (int d = 0; d < draws; ++d) {
        for (const auto& part : net.parts())
            for (const auto& c : part.contacts) c.law->set_cold(drawn(c.cold, normal(random)));
        const solve::periodic_state state = periodic_state_of(net.network(), programme, net.cold());
        if (state.what != solve::outcome::solved) {  // past every limit
            for (held& h : limits) ++h.above;
            ++above_high;
            continue;
        }
        ++settled;
        for (held& h : limits)
            if (state.peak[h.node] > h.limit_rise) ++h.above;
        double volts = 0.0;
        for (const auto& part : net.parts()) {
            for (const auto& o : part.ohmics) volts += net.amps() * (o.at_zero + o.by_kelvin * state.on_mean[o.node]);
            for (const auto& c : part.contacts) volts += state.source_on[c.source] / net.amps();
        }
        below_low += volts < low ? 1 : 0;
        above_high += volts > high ? 1 : 0;
    }
    EXPECT_GT(settled, draws / 2);
    int compared = 0;
    for (const held& h : limits) {
        const double share = static_cast<double>(h.above) / draws;
        if (share < 0.02 || share > 0.98) {
            EXPECT_TRUE(h.predicted < 0.05 || h.predicted > 0.95) << h.what << ": " << h.predicted;
            continue;
        }
        ++compared;
        EXPECT_NEAR(h.predicted, share, points_allowed) << h.what << " at a rise of " << h.limit_rise;
    }
    EXPECT_GE(compared, 6);
    EXPECT_NEAR(static_cast<double>(below_low) / draws, 0.05, points_allowed);
    EXPECT_NEAR(static_cast<double>(above_high) / draws, 0.05, points_allowed);
}

// three points of probability
TEST(LoopScatter, AgreesWithDrawsUnderSteadyCurrent)
{
    compare(trailer_stand(180_A, duty_cycle::continuous(), surface_state::light_rust), 20000, 0.03);
}

// some of the draws come past the softening drop of the clamp's spots
TEST(LoopScatter, AgreesWithDrawsWhereSpotsYield)
{
    compare(trailer_stand(220_A, duty_cycle::continuous(), surface_state::heavy_rust), 20000, 0.03);
}

// fewer draws scatter by 0.8 points themselves
TEST(LoopScatter, AgreesWithDrawsUnderDuty)
{
    compare(trailer_stand(240_A, duty_cycle::of(6_min, 10_min), surface_state::light_rust), 4000, 0.03 + 0.016);
}

// A good contact lets the heat of preheated work in: there the joints at their 95 % point are the coolest.
TEST(LoopScatter, AgreesWithDrawsOnPreheatedWork)
{
    station s = trailer_stand(100_A, duty_cycle::continuous(), surface_state::clean);
    std::get<work_connection>(s.path[4]).clamp = screw_clamp(300_A);
    std::get<work_connection>(s.path[4]).preheat = 200_degC;
    compare(s, 20000, 0.03);
}

// A contact whose drop levels off for most of its scatter: what is below its median is far from what is above.
TEST(LoopScatter, AgreesWithDrawsOfALevelledContact)
{
    station s = trailer_stand(150_A, duty_cycle::continuous(), surface_state::light_rust);
    coupling loose("coupling", square_mm(50));
    loose.force = 4_N;
    s.path.insert(s.path.begin() + 1, loose);
    compare(s, 20000, 0.03);
}

// by hand: a drop of 0.1, 0.2, 0.8 V at its 5, 50, 95 % points is log-normal on either side, so that at half a 95 %
// point, z = 0.82243, it is 0.2 x 4^(1/2) = 0.4 V above and 0.2/2^(1/2) = 0.14142 V below: beyond lie 0.20541 of all
// cases (table of the normal distribution), from 0.14142 V up 0.79459
TEST(LoopScatter, AMeasuredDropIsLogNormalOnEitherSide)
{
    station s = trailer_stand(180_A, duty_cycle::continuous(), surface_state::clean);
    const std::size_t at = 1;
    s.path.insert(s.path.begin() + at, measured_part{.name = "ring", .drop = {0.1_V, 0.2_V, 0.8_V}, .at = 180_A});
    const detail::solved_station solved(s);
    ASSERT_EQ(solved.typical().outcome, loop_outcome::solved);
    const detail::scattered_sum drop = solved.scatter_of().drop_of(at, 0.2);
    EXPECT_NEAR(drop.above(0.4), 0.20541, 0.01);
    EXPECT_NEAR(drop.above(0.14142), 0.79459, 0.01);
    EXPECT_NEAR(drop.above(0.8), 0.05, 0.01);
    EXPECT_NEAR(drop.above(0.1), 0.95, 0.01);
}

TEST(LoopScatter, OneTermIsExact)
{
    detail::scattered_sum::table volts{};
    for (std::size_t i = 0; i < volts.size(); ++i)
        volts[i] = 4.0 * std::expm1(0.5 * detail::scattered_sum::deviations(i));
    detail::scattered_sum sum(10.0);
    sum.add(volts);
    for (const double z : {-2.0, -1.0, 0.0, 0.7, 1.6448536269514722, 2.5}) {
        const double at = 10.0 + 4.0 * std::expm1(0.5 * z);
        EXPECT_NEAR(sum.above(at), 0.5 * std::erfc(z / std::sqrt(2.0)), 0.01) << z;
    }
    EXPECT_NEAR(sum.end(true), 10.0 + 4.0 * std::expm1(0.5 * 1.6448536269514722), 0.02);
    EXPECT_NEAR(sum.end(false), 10.0 + 4.0 * std::expm1(-0.5 * 1.6448536269514722), 0.02);
    EXPECT_NEAR(sum.quantile(0.95), 10.0 + 4.0 * std::expm1(0.5 * 1.6448536269514722), 0.1);
    EXPECT_EQ(detail::scattered_sum(3.0).above(2.9), 1.0);
    EXPECT_EQ(detail::scattered_sum(3.0).above(3.1), 0.0);
}

// Two wide log-normal terms and a narrow one against quadrature by draws of their sum.
TEST(LoopScatter, SeveralTermsAgreeWithTheirDraws)
{
    detail::scattered_sum::table one{}, other{}, third{};
    for (std::size_t i = 0; i < one.size(); ++i) {
        const double z = detail::scattered_sum::deviations(i);
        one[i] = 3.0 * std::expm1(0.8 * z);
        other[i] = 3.0 * std::expm1(0.6 * z);
        third[i] = 0.2 * z;
    }
    detail::scattered_sum sum(0.0);
    sum.add(one);
    sum.add(other);
    sum.add(third);
    std::mt19937_64 random(5);
    std::normal_distribution<double> normal;
    constexpr int draws = 200000;
    std::vector<double> drawn_sums;
    for (int i = 0; i < draws; ++i)
        drawn_sums.push_back(3.0 * std::expm1(0.8 * normal(random)) + 3.0 * std::expm1(0.6 * normal(random)) +
                             0.2 * normal(random));
    for (const double at : {-3.0, -1.0, 0.0, 2.0, 5.0, 10.0, 15.0}) {
        const auto above = std::count_if(drawn_sums.begin(), drawn_sums.end(), [at](double x) { return x > at; });
        EXPECT_NEAR(sum.above(at), static_cast<double>(above) / draws, 0.01) << at;
    }
}

}  // namespace
