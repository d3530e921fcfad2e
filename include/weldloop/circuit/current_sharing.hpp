#pragma once
/// @file
/// How the ways of a loop share its current, at given temperatures and with the heat they make. Solver adapter on plain
/// doubles.
/// Source: Kirchhoff's laws.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <memory>
#include <span>
#include <vector>

#include <weldloop/circuit/loop_network.hpp>
#include <weldloop/law/joint_characteristic.hpp>
#include <weldloop/solve/current_network.hpp>
#include <weldloop/solve/heat_network.hpp>
#include <weldloop/solve/periodic_state.hpp>

namespace weldloop::detail {

/// Adds the drop of contacts that are alike, with its slope.
inline void add_contact_drop(solve::drop_at_current& out, const spot_characteristic& law, double cold_ohms,
                             double alike, double amps)
{
    const double x = std::fabs(amps) * cold_ohms;
    if (!(x > 0.0)) {
        out.slope += alike * cold_ohms;
        return;
    }
    const double each = law.drop(x);
    out.volts += std::copysign(alike * each, amps);
    out.slope += alike * cold_ohms * law.slope(x, each);
}

/// Drop of a branch over its current, every part at a temperature that is given.
class branch_drop final : public solve::drop_of_current {
public:
    /// At no temperature yet. @param net whose contacts are set @param branch of it
    branch_drop(const loop_network& net, std::size_t branch)
    {
        for (const loop_network::part_at& p : net.parts()) {
            for (const loop_network::ohmic_at& o : p.ohmics)
                if (o.branch == branch) ohmics_.push_back(&o);
            for (const loop_network::contact_at& c : p.contacts)
                if (c.branch == branch) spots_.push_back(&c);
            if (p.measured && p.measured->branch == branch) measured_.push_back(&*p.measured);
        }
    }
    /// @param rise of every node
    branch_drop(const loop_network& net, std::size_t branch, std::span<const double> rise) : branch_drop(net, branch)
    {
        set(rise);
    }
    /// Puts it at temperatures. @param rise of every node
    void set(std::span<const double> rise)
    {
        ohms_ = 0.0;
        for (const loop_network::ohmic_at* o : ohmics_) ohms_ += o->at_zero + o->by_kelvin * rise[o->node];
        contacts_.clear();
        for (const loop_network::contact_at* c : spots_) {
            const double at = loop_network::bulk_rise(*c, rise), gripping = loop_network::gripping_rise(*c, rise);
            const contact_source::held is = c->law->held_at(at, gripping);
            contacts_.push_back({is.law, is.cold_ohms, static_cast<double>(c->law->alike())});
        }
    }

    [[nodiscard]] solve::drop_at_current at(double amps) const override
    {
        solve::drop_at_current out{ohms_ * amps, ohms_};
        for (const held_contact& c : contacts_) add_contact_drop(out, c.law, c.cold_ohms, c.alike, amps);
        for (const loop_network::measured_at* m : measured_) {
            const solve::drop_at_current d = m->drop_of(amps);
            out.volts += d.volts;
            out.slope += d.slope;
        }
        return out;
    }

private:
    struct held_contact {
        spot_characteristic law;
        double cold_ohms, alike;
    };
    std::vector<const loop_network::ohmic_at*> ohmics_;
    std::vector<const loop_network::contact_at*> spots_;
    double ohms_ = 0.0;
    std::vector<held_contact> contacts_;
    std::vector<const loop_network::measured_at*> measured_;
};

/// The branches that conduct, as a network whose currents are divided at one state after another.
class closed_branches {
public:
    /// At no temperature yet. @param net whose contacts are set @param closed numbers of these branches
    closed_branches(const loop_network& net, const std::vector<std::size_t>& closed)
        : closed_(closed), all_(net.branches().size()), divider_(net.points())
    {
        for (const std::size_t b : closed_) {
            laws_.push_back(std::make_unique<branch_drop>(net, b));
            divider_.add_branch(net.branches()[b].from, net.branches()[b].to, *laws_.back());
        }
        for (const loop_network::given_current& g : net.given()) divider_.inject(g.into, g.out_of, g.amps);
    }
    /// Puts every branch at temperatures. @param rise of every node
    void set(std::span<const double> rise)
    {
        for (const auto& l : laws_) l->set(rise);
    }
    /// Finds the loops by what the branches have as they are set. False if a given current has no way.
    [[nodiscard]] bool prepare() { return divider_.prepare(); }
    /// Divides as they are set. @param start currents of all branches to begin with, or empty
    /// @param enough as current_network::divide()
    [[nodiscard]] solve::divided_currents divide(std::span<const double> start,
                                                 double enough = solve::current_network::finest) const
    {
        std::vector<double> inner;
        for (const std::size_t b : closed_)
            if (!start.empty()) inner.push_back(start[b]);
        solve::divided_currents out = divider_.divide(inner, enough);
        out.amps = of_all(out.amps);
        return out;
    }
    [[nodiscard]] const solve::current_network& network() const { return divider_; }
    /// Slopes at currents of these branches.
    [[nodiscard]] std::vector<double> slopes_at(std::span<const double> amps) const
    {
        std::vector<double> out;
        for (std::size_t k = 0; k < closed_.size(); ++k) out.push_back(laws_[k]->at(amps[k]).slope);
        return out;
    }
    [[nodiscard]] std::vector<double> of_all(const std::vector<double>& of_closed) const
    {
        std::vector<double> out(all_, 0.0);
        for (std::size_t k = 0; k < of_closed.size(); ++k) out[closed_[k]] = of_closed[k];
        return out;
    }

private:
    std::vector<std::size_t> closed_;
    std::size_t all_;  // branches, closed or not
    std::vector<std::unique_ptr<branch_drop>> laws_;
    solve::current_network divider_;
};

/// The electrical side of a loop's network at one point of its scatter: which branches conduct, and how they share.
class current_sharing {
public:
    /// @param net set to the point @param level the point
    current_sharing(const loop_network& net, scatter level) : net_(&net), open_(net.branches().size(), false)
    {
        for (std::size_t b = 0; b < net.branches().size(); ++b)
            for (const std::size_t part : net.branches()[b].parts) open_[b] = open_[b] || !net.conducts(part, level);
        open_across_arc();
        for (std::size_t b = 0; b < open_.size(); ++b)
            if (!open_[b]) closed_.push_back(b);
    }

    /// Whether the arc's current has a way, through the arc.
    [[nodiscard]] bool arc_burns() const
    {
        std::vector<std::size_t> of = joined(true);
        for (const loop_network::given_current& g : net_->given())
            if (of[g.into] != of[g.out_of]) return false;
        return true;
    }
    [[nodiscard]] bool is_open(std::size_t branch) const { return open_[branch]; }
    /// Whether a way joins what lies before the arc with what lies behind.
    [[nodiscard]] bool spans_arc(std::size_t way) const
    {
        return std::find(across_.begin(), across_.end(), way) != across_.end();
    }
    /// Whether ways share current at all: else it is the same everywhere.
    [[nodiscard]] bool divides() const
    {
        return net_->given().size() > 1 || net_->branches().size() > net_->points() - 1 ||
               std::find(open_.begin(), open_.end(), true) != open_.end();
    }

    /// The division at temperatures that are given. @param rise of every node @param start currents to begin with
    [[nodiscard]] solve::divided_currents divide(std::span<const double> rise, std::span<const double> start = {}) const
    {
        closed_branches n = branches();
        n.set(rise);
        if (!n.prepare()) return {.what = solve::division::unconnected, .amps = {}};
        return n.divide(start);
    }
    /// The branches that conduct, for who divides at many states.
    [[nodiscard]] closed_branches branches() const { return {*net_, closed_}; }

    /// One step towards the division at which heat and currents agree.
    struct step {
        std::vector<double> amps;  // of every branch, after the step
        double change = 0.0;       // largest [A]
        bool is_stable = true;     // a little more current in a loop is driven back
    };
    /// @param found the heat solved at the present currents @param on_share share of the period with current
    [[nodiscard]] step towards(const solve::periodic_state& found, double on_share) const
    {
        closed_branches closed = branches();
        closed.set(found.on_mean);
        static_cast<void>(closed.prepare());
        const solve::current_network& n = closed.network();
        std::vector<double> amps, volts;
        for (std::size_t k = 0; k < closed_.size(); ++k) {
            amps.push_back(net_->branches()[closed_[k]].amps);
            volts.push_back(net_->volts_of(closed_[k], found));
        }
        std::vector<double> matrix = n.loop_matrix(closed.slopes_at(amps)), change = n.round_loops(volts);
        const std::vector<double> warming = by_warmth(n, found, on_share);
        for (std::size_t i = 0; i < matrix.size(); ++i) matrix[i] += warming[i];
        step out;
        out.is_stable = drives_back(matrix, change.size());
        if (!solve::current_network::solved(matrix, change)) {
            out.is_stable = false;
            return out;
        }
        std::vector<double> loop_amps = n.loop_currents(amps);
        for (std::size_t l = 0; l < change.size(); ++l) loop_amps[l] -= change[l];
        const std::vector<double> next = n.branch_currents(loop_amps);
        for (std::size_t k = 0; k < next.size(); ++k) out.change = std::max(out.change, std::fabs(next[k] - amps[k]));
        out.amps = closed.of_all(next);
        return out;
    }

private:
    // Points that conducting branches join, by the smallest of their numbers.
    [[nodiscard]] std::vector<std::size_t> joined(bool through_arc) const
    {
        std::vector<std::size_t> of(net_->points());
        for (std::size_t i = 0; i < of.size(); ++i) of[i] = i;
        for (bool moved = true; moved;) {
            moved = false;
            for (std::size_t b = 0; b < open_.size(); ++b) {
                const loop_network::branch_at& at = net_->branches()[b];
                if (open_[b] || (at.has_arc && !through_arc) || of[at.from] == of[at.to]) continue;
                of[at.from] = of[at.to] = std::min(of[at.from], of[at.to]);
                moved = true;
            }
        }
        return of;
    }
    // Ways that would let the current pass the arc by are left open, one after the other as they stand.
    void open_across_arc()
    {
        const auto arc =
            std::find_if(net_->branches().begin(), net_->branches().end(), [](const auto& b) { return b.has_arc; });
        if (arc == net_->branches().end()) return;
        const std::vector<bool> as_stated = open_;
        for (std::size_t b = 0; b < open_.size(); ++b)
            if (net_->branches()[b].way != part_address::trunk) open_[b] = true;
        for (std::size_t b = 0; b < open_.size(); ++b) {
            const std::size_t way = net_->branches()[b].way;
            if (way == part_address::trunk || as_stated[b]) continue;
            open_[b] = false;
            const std::vector<std::size_t> of = joined(false);
            if (of[arc->from] != of[arc->to]) continue;
            open_[b] = true;
            if (!spans_arc(way)) across_.push_back(way);
        }
    }

    // What the loops' sums of volts do beside that, as a loop's current warms all it passes: by the slopes of the
    // balance of the mean.
    [[nodiscard]] std::vector<double> by_warmth(const solve::current_network& n, const solve::periodic_state& found,
                                                double on_share) const
    {
        const std::size_t loops = n.loops().size();
        std::vector<double> out(loops * loops, 0.0);
        const solve::heat_network& heat = net_->network();
        solve::sparse_lu matrix = heat.pattern();
        std::vector<double> gain(heat.size());
        heat.evaluate(found.mean, on_share, gain, &matrix);
        static_cast<void>(matrix.eliminate());
        std::vector<double> sense(open_.size());
        for (std::size_t l = 0; l < loops; ++l) {
            std::fill(sense.begin(), sense.end(), 0.0);
            for (const solve::current_network::passed& p : n.loops()[l]) sense[closed_[p.branch]] = p.sense;
            std::vector<double> rise(heat.size(), 0.0);
            net_->add_heat_by_current(rise, found.on_mean, sense, on_share);
            matrix.solve(rise);
            std::vector<double> volts;
            for (const std::size_t b : closed_) volts.push_back(net_->volts_by_warmth(b, found.on_mean, rise));
            for (std::size_t k = 0; k < loops; ++k)
                for (const solve::current_network::passed& p : n.loops()[k])
                    out[k * loops + l] += p.sense * volts[p.branch];
        }
        return out;
    }

    // Whether all leading minors are above zero: the last is the matrix's own, which passes zero where the division of
    // currents ceases to be driven back; without what warmth does they always are.
    [[nodiscard]] static bool drives_back(std::vector<double> m, std::size_t n)
    {
        for (std::size_t k = 0; k < n; ++k) {
            if (!(m[k * n + k] > 0.0)) return false;
            for (std::size_t i = k + 1; i < n; ++i) {
                const double f = m[i * n + k] / m[k * n + k];
                for (std::size_t j = k; j < n; ++j) m[i * n + j] -= f * m[k * n + j];
            }
        }
        return true;
    }

    const loop_network* net_;
    std::vector<bool> open_;
    std::vector<std::size_t> across_;
    std::vector<std::size_t> closed_;  // branches that conduct
};

}  // namespace weldloop::detail
