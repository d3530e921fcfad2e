#pragma once
/// @file
/// How currents divide in a network of conductors: branches whose drop rises with their current, emfs, and currents
/// that are given. Plain numbers: A, V, ohm.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numeric>
#include <span>
#include <utility>
#include <vector>

#include <weldloop/core/require.hpp>

namespace weldloop::solve {

/// A drop with its slope by the current.
struct drop_at_current {
    double volts = 0.0;  ///< [V] with the sign of the current
    double slope = 0.0;  ///< [ohm] 0 or above
};

/// Drop of a branch.
class drop_of_current {
public:
    drop_of_current() = default;
    drop_of_current(const drop_of_current&) = delete;
    drop_of_current& operator=(const drop_of_current&) = delete;
    virtual ~drop_of_current() = default;
    /// @param amps [A], any, with its sign @return odd in the current, never falling
    [[nodiscard]] virtual drop_at_current at(double amps) const = 0;
};

/// A branch that keeps its resistance.
class plain_resistance final : public drop_of_current {
public:
    /// @param ohms [ohm], 0 or above @throws not_finite_error, out_of_range_error
    explicit plain_resistance(double ohms) : ohms_(require_not_negative(ohms, "resistance of a branch")) {}
    [[nodiscard]] drop_at_current at(double amps) const override { return {ohms_ * amps, ohms_}; }

private:
    double ohms_;
};

/// What became of a search for the division of currents.
enum class division {
    found,        ///< the currents are there
    unconnected,  ///< a given current has no way to where it goes
    undecided,    ///< a loop of branches without any resistance, or no balance within the bounded work
};

/// Currents of all branches.
struct divided_currents {
    division what = division::undecided;  ///< the rest holds for `found`
    std::vector<double> amps;             ///< [A] of every branch, from its first node to its second
    double residual = 0.0;                ///< ratio, largest sum of volts round a loop, of the largest drop in it
};

/// A network of conductors. Nodes are numbered from 0.
class current_network {
public:
    using index = std::size_t;  ///< of a node or branch

    /// @param nodes how many there are
    explicit current_network(index nodes) : nodes_(nodes) {}

    /// A branch. @param from, to its nodes @param law its drop, kept by the caller
    /// @param emf [V], any, that drives current from `from` to `to` @throws not_finite_error
    index add_branch(index from, index to, const drop_of_current& law, double emf = 0.0)
    {
        require_finite(emf, "emf of a branch");
        branches_.push_back({from, to, &law, emf});
        return branches_.size() - 1;
    }
    /// A current that is given: it enters at one node and leaves at another.
    /// @param into, out_of its nodes @param amps [A], any @throws not_finite_error
    void inject(index into, index out_of, double amps)
    {
        require_finite(amps, "given current");
        given_.push_back({into, out_of, amps});
    }

    [[nodiscard]] index branches() const { return branches_.size(); }  ///< number of branches

    /// A branch as a loop passes it.
    struct passed {
        index branch;  ///< its number
        double sense;  ///< [1] 1 from its first node to its second, else -1
    };
    /// Loops that decide the division, each as branches with the sense they are passed in: one for every branch that a
    /// spanning tree leaves out. Call prepare() first.
    [[nodiscard]] const std::vector<std::vector<passed>>& loops() const { return loops_; }

    /// Finds the loops, and currents that meet every node's balance. @return false if a given current has no way
    [[nodiscard]] bool prepare()
    {
        const std::vector<bool> in_tree = tree_of_least_resistance();
        std::vector<std::vector<index>> at(nodes_);
        for (index b = 0; b < branches_.size(); ++b) {
            if (!in_tree[b]) continue;
            at[branches_[b].from].push_back(b);
            at[branches_[b].to].push_back(b);
        }
        std::vector<index> up(nodes_, nowhere), order, root(nodes_, nowhere);
        for (index start = 0; start < nodes_; ++start) {
            if (root[start] != nowhere) continue;
            root[start] = start;
            order.push_back(start);
            for (index k = order.size() - 1; k < order.size(); ++k)
                for (const index b : at[order[k]]) {
                    const index other = branches_[b].from == order[k] ? branches_[b].to : branches_[b].from;
                    if (root[other] != nowhere) continue;
                    root[other] = start;
                    up[other] = b;
                    order.push_back(other);
                }
        }
        const auto parent = [&](index n) {
            return branches_[up[n]].from == n ? branches_[up[n]].to : branches_[up[n]].from;
        };
        // from a node to its root
        const auto to_root = [&](index n) {
            std::vector<passed> way;
            for (; up[n] != nowhere; n = parent(n)) way.push_back({up[n], branches_[up[n]].from == n ? 1.0 : -1.0});
            return way;
        };
        loops_.clear();
        for (index b = 0; b < branches_.size(); ++b) {
            if (in_tree[b]) continue;
            std::vector<passed> loop = to_root(branches_[b].to), back = to_root(branches_[b].from);
            while (!loop.empty() && !back.empty() && loop.back().branch == back.back().branch) {
                loop.pop_back();
                back.pop_back();
            }
            for (const passed& p : back) loop.push_back({p.branch, -p.sense});
            loop.push_back({b, 1.0});
            loops_.push_back(std::move(loop));
        }
        find_shared();
        find_unknowns();
        particular_.assign(branches_.size(), 0.0);
        for (const given& g : given_) {
            if (g.into == g.out_of || g.amps == 0.0) continue;
            if (root[g.into] != root[g.out_of]) return false;
            for (const passed& p : to_root(g.into)) particular_[p.branch] += g.amps * p.sense;
            for (const passed& p : to_root(g.out_of)) particular_[p.branch] -= g.amps * p.sense;
        }
        return true;
    }

    /// Sums of volts round the loops at a division, drops by the caller [V].
    /// @param volts [V], any, of every branch, from its first node to its second, emfs left out
    [[nodiscard]] std::vector<double> round_loops(std::span<const double> volts) const
    {
        std::vector<double> out;
        for (const std::vector<passed>& loop : loops_) {
            double sum = 0.0;
            for (const passed& p : loop) sum += p.sense * (volts[p.branch] - branches_[p.branch].emf);
            out.push_back(sum);
        }
        return out;
    }
    /// Currents of all branches for currents of the loops [A]. @param loop_amps [A], any, one for each loop
    [[nodiscard]] std::vector<double> branch_currents(std::span<const double> loop_amps) const
    {
        std::vector<double> out = particular_;
        add_loops(loop_amps, out);
        return out;
    }
    /// What currents of all branches are as currents of the loops: those of the branches the tree leaves out [A].
    /// @param amps [A], any, one for each branch
    [[nodiscard]] std::vector<double> loop_currents(std::span<const double> amps) const
    {
        std::vector<double> out;
        for (const std::vector<passed>& loop : loops_)
            out.push_back(amps[loop.back().branch] - particular_[loop.back().branch]);
        return out;
    }

    /// The least share of the largest drop in a loop that the sum round it is asked to be.
    static constexpr double finest = 1e-13;

    /// Divides the currents: in every loop the drops add up to its emfs.
    ///
    /// Drops never fall as currents grow, so that the division makes a sum of work least that has one bottom: Newton's
    /// steps with that sum as their measure cannot end anywhere else. Where nodes are fewer than loops a step is found
    /// by the potentials of the nodes; the last digits are left to the loops.
    /// @param start currents of all branches to begin with [A], any, or empty
    /// @param enough share of the largest drop in a loop that the sum round it may be, 1e-13 to 1e-6
    [[nodiscard]] divided_currents divide(std::span<const double> start = {}, double enough = finest) const
    {
        constexpr int most_steps = 200, most_by_nodes = 8, most_halvings = 40;
        // a tree's branch may carry a small rest of large currents of loops: rounding then leaves more than
        // `enough`
        constexpr double rounding = 1e-11;
        divided_currents out;
        std::vector<double> loop_amps(loops_.size(), 0.0), next, change, matrix, potential;
        bool by_nodes = unknowns_ < loops_.size();
        if (start.size() == branches_.size()) loop_amps = loop_currents(start);
        state now, then;
        find_state(loop_amps, now);
        for (int step = 0;; ++step) {
            out.residual = now.residual;
            out.amps = now.amps;
            if (now.residual <= enough) {
                out.what = division::found;
                return out;
            }
            if (step == most_steps) return out;
            if (!by_nodes || !change_by_nodes(now, matrix, potential, change)) {
                change = now.round;
                fill_loop_matrix(now.slopes, matrix);
                if (!solve_in_place(matrix, change)) return out;
            }
            double share = 1.0;
            bool better = false;
            const int most =
                now.residual <= rounding ? 1 : most_halvings;  // what rounding leaves no shorter step mends
            for (int halving = 0; halving < most; ++halving, share *= 0.5) {
                next = loop_amps;
                for (index l = 0; l < next.size(); ++l) next[l] -= share * change[l];
                find_state(next, then);
                // on the way down the sum's slope along the step is below zero; past the bottom it turns
                double along = 0.0, before = 0.0;
                for (index l = 0; l < next.size(); ++l) {
                    along -= change[l] * then.round[l];
                    before -= change[l] * now.round[l];
                }
                if (along <= 0.0 || std::fabs(along) <= 0.9 * std::fabs(before) || then.residual <= enough) {
                    std::swap(loop_amps, next);
                    std::swap(now, then);
                    better = true;
                    break;
                }
            }
            const bool at_rest = out.residual <= rounding && (!better || now.residual >= out.residual);
            // a loop that hardly carries anything is settled by its own drops alone, which potentials know less closely
            if (by_nodes && (at_rest || !better || step == most_by_nodes)) {
                by_nodes = false;
                continue;
            }
            if (at_rest) {
                out.what = division::found;
                return out;
            }
            if (!better) return out;
        }
    }

    /// Matrix of the loops: slopes of their sums of volts by their currents [ohm].
    /// @param slopes of every branch [ohm], 0 or above
    [[nodiscard]] std::vector<double> loop_matrix(std::span<const double> slopes) const
    {
        std::vector<double> out;
        fill_loop_matrix(slopes, out);
        return out;
    }

    /// Solves a small full system in place, with exchange of rows.
    /// @param m [1], any, row by row @param right [1], any; out: the solution @return false where it is singular
    [[nodiscard]] static bool solved(std::vector<double> m, std::vector<double>& right)
    {
        return solve_in_place(m, right);
    }

private:
    [[nodiscard]] static bool solve_in_place(std::vector<double>& m, std::vector<double>& right)
    {
        const index n = right.size();
        for (index k = 0; k < n; ++k) {
            index pivot = k;
            for (index i = k + 1; i < n; ++i)
                if (std::fabs(m[i * n + k]) > std::fabs(m[pivot * n + k])) pivot = i;
            if (!(std::fabs(m[pivot * n + k]) > 0.0)) return false;
            if (pivot != k) {
                for (index j = 0; j < n; ++j) std::swap(m[k * n + j], m[pivot * n + j]);
                std::swap(right[k], right[pivot]);
            }
            for (index i = k + 1; i < n; ++i) {
                const double f = m[i * n + k] / m[k * n + k];
                if (f == 0.0) continue;
                for (index j = k; j < n; ++j) m[i * n + j] -= f * m[k * n + j];
                right[i] -= f * right[k];
            }
        }
        for (index k = n; k-- > 0;) {
            for (index j = k + 1; j < n; ++j) right[k] -= m[k * n + j] * right[j];
            right[k] /= m[k * n + k];
        }
        return true;
    }

    static constexpr index nowhere = static_cast<index>(-1);
    struct branch {
        index from, to;
        const drop_of_current* law;
        double emf;
    };
    struct shared_branch {
        index branch;
        double sense;
    };
    struct given {
        index into, out_of;
        double amps;
    };
    struct state {
        std::vector<double> amps, volts, slopes, round;
        double residual = 0.0;
    };

    // Which branches span the nodes with as little resistance as can be. What the tree leaves out then has a current of
    // its own, known to its last digit however small; the sums are left to branches whose volts hardly mind their
    // rounding.
    [[nodiscard]] std::vector<bool> tree_of_least_resistance() const
    {
        std::vector<double> ohms;
        for (const branch& b : branches_) ohms.push_back(b.law->at(0.0).slope);
        std::vector<index> order(branches_.size()), joined(nodes_);
        std::iota(order.begin(), order.end(), index{0});
        std::stable_sort(order.begin(), order.end(), [&ohms](index a, index b) { return ohms[a] < ohms[b]; });
        std::iota(joined.begin(), joined.end(), index{0});
        std::vector<bool> out(branches_.size(), false);
        for (const index b : order) {
            const index keep = joined[branches_[b].from], drop = joined[branches_[b].to];
            out[b] = keep != drop;
            std::replace(joined.begin(), joined.end(), drop, keep);
        }
        return out;
    }

    void fill_loop_matrix(std::span<const double> slopes, std::vector<double>& m) const
    {
        const index n = loops_.size();
        m.resize(n * n);
        for (index i = 0; i < n; ++i)
            for (index j = 0; j <= i; ++j) {
                double sum = 0.0;
                for (const shared_branch& b : shared_[i * n + j]) sum += b.sense * slopes[b.branch];
                m[i * n + j] = m[j * n + i] = sum;
            }
    }

    // Newton's step of the loops' currents, taken off, by the potentials at which every node's balance is kept. False
    // where a branch has no slope to go by.
    [[nodiscard]] bool change_by_nodes(const state& now, std::vector<double>& matrix, std::vector<double>& potential,
                                       std::vector<double>& change) const
    {
        const index n = unknowns_;
        matrix.assign(n * n, 0.0);
        potential.assign(n, 0.0);
        for (index b = 0; b < branches_.size(); ++b) {
            if (!on_loop_[b]) continue;
            const double siemens = 1.0 / now.slopes[b];
            if (!(siemens > 0.0 && siemens <= std::numeric_limits<double>::max())) return false;
            const double amps = siemens * (now.volts[b] - branches_[b].emf);
            const index i = unknown_[branches_[b].from], j = unknown_[branches_[b].to];
            if (i != nowhere) {
                matrix[i * n + i] += siemens;
                potential[i] += amps;
            }
            if (j != nowhere) {
                matrix[j * n + j] += siemens;
                potential[j] -= amps;
            }
            if (i == nowhere || j == nowhere) continue;
            matrix[i * n + j] -= siemens;
            matrix[j * n + i] -= siemens;
        }
        if (!solve_in_place(matrix, potential)) return false;
        const auto at = [&](index node) { return unknown_[node] == nowhere ? 0.0 : potential[unknown_[node]]; };
        change.resize(loops_.size());
        for (index l = 0; l < loops_.size(); ++l) {
            const index b = loops_[l].back().branch;  // which that loop alone passes
            change[l] = (now.volts[b] - branches_[b].emf - at(branches_[b].from) + at(branches_[b].to)) / now.slopes[b];
        }
        return true;
    }

    // The state of a division, into what was another's.
    void find_state(std::span<const double> loop_amps, state& out) const
    {
        out.amps = particular_;
        add_loops(loop_amps, out.amps);
        out.slopes.resize(branches_.size());
        out.volts.resize(branches_.size());
        for (index b = 0; b < branches_.size(); ++b) {
            const drop_at_current d = branches_[b].law->at(out.amps[b]);
            out.volts[b] = d.volts;
            out.slopes[b] = d.slope;
        }
        out.round.resize(loops_.size());
        out.residual = 0.0;
        for (index l = 0; l < loops_.size(); ++l) {
            double largest = std::numeric_limits<double>::min(), sum = 0.0;
            for (const passed& p : loops_[l]) {
                sum += p.sense * (out.volts[p.branch] - branches_[p.branch].emf);
                largest = std::max({largest, std::fabs(out.volts[p.branch]), std::fabs(branches_[p.branch].emf)});
            }
            out.round[l] = sum;
            out.residual = std::max(out.residual, std::fabs(sum) / largest);
        }
    }

    void add_loops(std::span<const double> loop_amps, std::vector<double>& amps) const
    {
        for (index l = 0; l < loops_.size(); ++l)
            for (const passed& p : loops_[l]) amps[p.branch] += p.sense * loop_amps[l];
    }

    // The nodes that loops pass: what lies on no loop keeps its current whatever its resistance. One node of those that
    // hang together stands for no potential.
    void find_unknowns()
    {
        on_loop_.assign(branches_.size(), false);
        for (const std::vector<passed>& loop : loops_)
            for (const passed& p : loop) on_loop_[p.branch] = true;
        std::vector<index> joined(nodes_);
        std::iota(joined.begin(), joined.end(), index{0});
        for (index b = 0; b < branches_.size(); ++b) {
            if (!on_loop_[b]) continue;
            const index keep = joined[branches_[b].from], drop = joined[branches_[b].to];
            std::replace(joined.begin(), joined.end(), drop, keep);
        }
        unknown_.assign(nodes_, nowhere);
        unknowns_ = 0;
        for (index node = 0; node < nodes_; ++node)
            if (joined[node] != node) unknown_[node] = unknowns_++;
    }

    // The branches that two loops share, with the product of their senses.
    void find_shared()
    {
        const index n = loops_.size();
        shared_.assign(n * n, {});
        std::vector<double> sense(branches_.size(), 0.0);
        for (index i = 0; i < n; ++i) {
            for (const passed& p : loops_[i]) sense[p.branch] = p.sense;
            for (index j = 0; j <= i; ++j)
                for (const passed& p : loops_[j])
                    if (sense[p.branch] != 0.0) shared_[i * n + j].push_back({p.branch, sense[p.branch] * p.sense});
            for (const passed& p : loops_[i]) sense[p.branch] = 0.0;
        }
    }

    index nodes_;
    std::vector<branch> branches_;
    std::vector<given> given_;
    std::vector<std::vector<passed>> loops_;
    std::vector<std::vector<shared_branch>> shared_;  // of every pair of loops, the second not after the first
    std::vector<double> particular_;
    std::vector<bool> on_loop_;   // of every branch
    std::vector<index> unknown_;  // of every node whose potential is sought; nowhere: others are told from it
    index unknowns_ = 0;
};

}  // namespace weldloop::solve
