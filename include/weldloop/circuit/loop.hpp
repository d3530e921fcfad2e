#pragma once
/// @file
/// The loop solved: what current does to every part, one network of all its bodies, contacts and lead cells.

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

#include <weldloop/circuit/loop_network.hpp>
#include <weldloop/circuit/loop_state.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/solve/periodic_state.hpp>
#include <weldloop/solve/steady_state.hpp>

namespace weldloop {

namespace detail {

/// A station's network with its solutions at the points of the scatter, each solved when it is asked for.
class loop_solver {
public:
    explicit loop_solver(const station& s) : loop_solver(s, checked_arc_index(s)) {}
    /// A stretch of a loop by itself. @param s with the parts of the stretch alone @param arc_at how many of them lie
    /// before the arc
    loop_solver(const station& s, std::size_t arc_at)
        : station_(&s), net_(s, arc_at), programme_{s.job.duty.on().value(),
                                                    s.job.duty.is_continuous() ? 0.0 : s.job.duty.rest().value()}
    {
    }

    /// Solves at a point of the scatter. @param near a state of smaller resistances to begin with, or null
    [[nodiscard]] loop_state solve(scatter level, solve::periodic_state* kept = nullptr,
                                   const solve::periodic_state* near = nullptr)
    {
        loop_state out;
        const bool closed = net_.set(level);
        out.parts.resize(net_.parts().size());
        for (std::size_t i = 0; i < out.parts.size(); ++i) {
            part_state& p = out.parts[i];
            p.mean = p.peak = p.hottest_spot = station_->where.air;
            out.part_basis.push_back(net_.parts()[i].basis);
            for (const loop_network::contact_at& c : net_.parts()[i].contacts)
                if (!(pick(c.cold, loop_network::of_conductance(level)).value() > 0.0)) p.conducts = false;
        }
        if (!closed) {
            out.outcome = loop_outcome::open_circuit;
            return out;
        }
        solve::periodic_state found = periodic_state_of(net_.network(), programme_, net_.cold(), near);
        if (found.what != solve::outcome::solved) {
            out.outcome = found.what == solve::outcome::bounded ? loop_outcome::ends : loop_outcome::not_settled;
            if (found.what == solve::outcome::bounded) note_bound(out, found.bounded_at);
            return out;
        }
        write(out, found, level);
        if (kept != nullptr) *kept = std::move(found);
        return out;
    }

    /// Whether the loop surely has a settled period at a point of the scatter: it has a steady state with current all
    /// the time, reached from the cold within every bound, and rests only cool it. Costs a small part of solve().
    [[nodiscard]] bool surely_settles(scatter level)
    {
        constexpr double all_the_time = 1.0;
        return net_.set(level) &&
               steady_state_of(net_.network(), all_the_time, net_.cold()).what == solve::outcome::solved;
    }

    [[nodiscard]] const loop_network& network() const { return net_; }
    /// Puts every contact back to a point of its scatter.
    void set(scatter level) { static_cast<void>(net_.set(level)); }

private:
    // The part whose place it is: the end of a lead's conductor is a place of the joint it sits in as well, which owns
    // it.
    void note_bound(loop_state& out, std::size_t node) const
    {
        part_state* owner = nullptr;
        for (std::size_t i = 0; i < out.parts.size(); ++i)
            for (const loop_network::place_at& at : net_.parts()[i].places) {
                if (at.node != node || (owner != nullptr && at.what == part_place::conductor)) continue;
                if (owner != nullptr) owner->passes_bound.reset();
                owner = &out.parts[i];
                owner->passes_bound = at.what;
            }
    }

    [[nodiscard]] temperature at(double rise) const { return temperature::kelvin(net_.air() + rise); }

    void write(loop_state& out, const solve::periodic_state& found, scatter level) const
    {
        for (const double t : found.times) out.times.push_back(in_si<duration>(t));
        out.made = in_si<power>(found.sums.made);
        out.lost = in_si<power>(found.sums.lost);
        for (std::size_t i = 0; i < out.parts.size(); ++i) {
            write_part(out.parts[i], net_.parts()[i], found, level);
            out.total_drop += out.parts[i].drop;
            out.extension_drop += out.parts[i].extension_drop;
        }
    }

    void write_part(part_state& out, const loop_network::part_at& part, const solve::periodic_state& found,
                    scatter level) const
    {
        double volts = 0.0;
        for (const loop_network::ohmic_at& o : part.ohmics)
            volts += net_.amps() * (o.at_zero + o.by_kelvin * found.on_mean[o.node]);
        for (const loop_network::contact_at& c : part.contacts) {
            out.contacts.push_back(contact_of(c, found));
            const contact_state& now = out.contacts.back();
            volts += now.drop.value();
            if (c.on_work) out.work_drop = now.drop;
            out.softening_used = std::max(out.softening_used, now.softening_used);
            out.spots_melt = out.spots_melt || now.melts;
            out.hottest_spot = std::max(out.hottest_spot, now.hottest_spot);
        }
        out.extension_drop = pick(part.extension, level);
        out.drop = in_si<voltage>(volts) + pick(part.constant_drop, level) + out.extension_drop;
        out.loss = in_si<current>(net_.amps()) * out.drop;
        if (part.places.empty()) return;

        double along = 0.0, conductor = 0.0;
        for (const loop_network::ohmic_at& o : part.ohmics) {
            along += o.length;
            conductor += o.length * found.mean[o.node];
        }
        std::size_t hottest = part.places.front().node;
        for (const loop_network::place_at& p : part.places) {
            const auto known = std::find_if(out.places.begin(), out.places.end(),
                                            [&p](const place_state& s) { return s.what == p.what; });
            const temperature mean = at(found.mean[p.node]), peak = at(found.peak[p.node]);
            if (known == out.places.end())
                out.places.push_back({p.what, mean, peak});
            else {
                known->mean = std::max(known->mean, mean);
                known->peak = std::max(known->peak, peak);
            }
            const bool beside_the_part = p.what == part_place::work && part.places.front().what != part_place::work;
            if (!beside_the_part && found.peak[p.node] >= found.peak[hottest]) {
                hottest = p.node;
                out.hottest = p.what;
            }
        }
        if (along > 0.0)
            for (place_state& p : out.places)
                if (p.what == part_place::conductor) p.mean = at(conductor / along);
        out.mean = along > 0.0 ? at(conductor / along) : at(found.mean[hottest]);
        out.peak = at(found.peak[hottest]);
        out.hottest_spot = std::max(out.hottest_spot, out.peak);
        for (const std::vector<double>& moment : found.trace) out.trace.push_back(at(moment[hottest]));
    }

    [[nodiscard]] contact_state contact_of(const loop_network::contact_at& c, const solve::periodic_state& found) const
    {
        contact_state out;
        out.what = c.word;
        out.drop = in_si<voltage>(found.source_on[c.source] / net_.amps());
        const metal_pair& metals = c.law->metals();
        const temperature melting = std::min(metals.first.melting, metals.second.melting);
        for (std::size_t k = 0; k < found.times.size(); ++k) {
            if (found.times[k] > programme_.on * (1.0 + 1e-9)) break;
            const std::vector<double>& x = found.trace[k];
            const double rise = c.with != loop_network::nowhere ? 0.5 * (x[c.bulk] + x[c.with]) : x[c.bulk];
            const double volts = c.law->volts_at(rise, c.follows != loop_network::nowhere ? x[c.follows] : 0.0);
            const temperature bulk = c.law->bulk_at(rise);
            const joint_limits limits = joint_limits_of(metals, bulk);
            if (limits.softening.value() > 0.0)
                out.softening_used = std::max(out.softening_used, volts / limits.softening.value());
            else
                out.softening_used =
                    std::max(out.softening_used, 1.0 + volts);  // softer than soft: it is past that drop
            out.melts = out.melts || volts >= melting_share * limits.melting.value();
            out.hottest_spot =
                std::max(out.hottest_spot, std::min(hot_spot_temperature(in_si<voltage>(volts), bulk), melting));
        }
        return out;
    }

    const station* station_;
    loop_network net_;
    solve::on_off programme_;
};

}  // namespace detail

/// Solves the loop of a station in the settled period of its duty.
///
/// One network carries it all: leads as cells of conductor and covering, fine at their ends; clamps with their five
/// places, holders with their handle, heads, lugs, couplings, plates and bare contacts; links where they touch;
/// contacts as sources by their voltage-current characteristic at the present temperature. Mean and swing are one
/// problem: the network is marched through its period until it repeats. No heat is credited to the supply's terminals
/// and none is charged for the arc's own heat at gun, holder or work.
///
/// Accuracy against a march written apart with finer cells and rings: peaks and means within 1 K or 2 % of the rise
/// (tests/oracle/loop_march); heat made and lost agree to 1e-9.
/// @param s     the station @param level which point of every joint's scatter to solve for
/// @return finite values, whose meaning `outcome` says: only a solved loop has drops and temperatures; else every part
/// is
///         as without current, at the temperature of the air
/// @throws bad_station_error, out_of_range_error, not_finite_error for a station that cannot be
[[nodiscard]] inline loop_state solve_loop(const station& s, scatter level = scatter::typical)
{
    return detail::loop_solver(s).solve(level);
}

}  // namespace weldloop
