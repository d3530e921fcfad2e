#pragma once
// A loop of bodies, lead cells and contacts on plain arrays, solved for the period its duty settles to, as one would
// write it for this question alone. Nothing of the library is called: capacities, links, surface tables and constants
// of contacts are handed over as numbers, so that the twin pays for none of their making.
//
// The method is the library's: steady state at the mean heat, a period marched in three diagonally implicit stages with
// chosen steps, its end brought back to its start by the mean balance.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <memory>
#include <stdexcept>
#include <utility>
#include <vector>

#include "plain_joint.hpp"

namespace plain {

// Elimination of a sparse matrix of symmetric pattern in the order given; every row sees a first later one, few see
// more.
class tree_matrix {
public:
    using pairs = std::vector<std::pair<int, int>>;

    tree_matrix() = default;
    tree_matrix(int size, const pairs& seen) : n_(size)
    {
        const auto made = std::make_shared<layout>();
        layout_ = made;
        auto& [first, extras, runs, targets] = *made;
        std::vector<std::vector<int>> later(static_cast<std::size_t>(size));
        for (auto [a, b] : seen)
            if (a != b) later[at(std::min(a, b))].push_back(std::max(a, b));
        first.resize(at(size));
        for (int k = 0; k < size; ++k) {
            std::vector<int>& own = later[at(k)];
            std::sort(own.begin(), own.end());
            own.erase(std::unique(own.begin(), own.end()), own.end());
            first[at(k)] = own.empty() ? k : own.front();
            for (std::size_t p = 1; p < own.size(); ++p) {
                extras.push_back({k, own[p]});
                later[at(own.front())].push_back(own[p]);
            }
        }
        for (int k = 0, begin = 0; k < size; ++k) {
            const int shift = first[at(k)] - k;
            const bool is_single = later[at(k)].size() > 1 || shift == 0;
            const bool goes_on = !runs.empty() && !is_single && runs.back().shift == shift && !runs.back().single &&
                                 (shift == 1 || k - begin < shift);
            if (!goes_on) {
                runs.push_back({k, k, shift, is_single});
                begin = k;
            }
            runs.back().end = k + 1;
        }
        value_.assign(at(size) + 2 * (at(size) + extras.size()), 0.0);
        for (int k = 0; k < size; ++k)
            if (later[at(k)].size() > 1)
                for (const int p : later[at(k)])
                    for (const int q : later[at(k)]) targets.push_back(slot(p, q));
    }

    std::vector<double>& values() { return value_; }
    [[nodiscard]] std::size_t slot(int row, int column) const
    {
        const auto& [first, extras, runs, targets] = *layout_;
        if (row == column) return at(row);
        const int low = std::min(row, column), high = std::max(row, column);
        std::size_t place = at(low);
        if (first[place] != high) {
            std::size_t e = 0;
            while (extras[e].row != low || extras[e].column != high) ++e;
            place = at(n_) + e;
        }
        return at(n_) + (row < column ? place : at(n_) + extras.size() + place);
    }

    void eliminate()
    {
        const auto& [first, extras, runs, targets] = *layout_;
        double *const d = value_.data(), *const up = d + n_, *const low = up + n_ + extras.size();
        const std::size_t* target = targets.data();
        std::size_t e = 0;
        for (const run& r : runs) {
            if (!r.single) {
                if (r.shift == 1)
                    for (int k = r.begin; k < r.end; ++k) apart(d + k, d + k + 1, up + k, low + k, 1);
                else
                    apart(d + r.begin, d + r.begin + r.shift, up + r.begin, low + r.begin, r.end - r.begin);
                continue;
            }
            const int k = r.begin;
            d[k] = 1 / d[k];
            if (r.shift == 0) continue;
            low[k] *= d[k];
            const std::size_t from = e;
            while (e < extras.size() && extras[e].row == k) low[at(n_) + e++] *= d[k];
            for (std::size_t p = from; p <= e; ++p)
                for (std::size_t q = from; q <= e; ++q)
                    value_[*target++] -=
                        low[p == from ? at(k) : at(n_) + p - 1] * up[q == from ? at(k) : at(n_) + q - 1];
        }
    }
    void solve(double* x) const
    {
        const auto& [first, extras, runs, targets] = *layout_;
        const double *const d = value_.data(), *const up = d + n_, *const low = up + n_ + extras.size();
        std::size_t e = 0;
        for (const run& r : runs) {
            if (!r.single && r.shift > 1)
                forward(x + r.begin, x + r.begin + r.shift, low + r.begin, r.end - r.begin);
            else if (!r.single) {
                double now = x[r.begin];
                for (int k = r.begin; k < r.end; ++k) x[k + 1] = now = x[k + 1] - low[k] * now;
            } else if (r.shift > 0) {
                const int k = r.begin;
                x[first[at(k)]] -= low[k] * x[k];
                for (; e < extras.size() && extras[e].row == k; ++e) x[extras[e].column] -= low[at(n_) + e] * x[k];
            }
        }
        for (auto r = runs.rbegin(); r != runs.rend(); ++r) {
            if (!r->single && r->shift > 1)
                back(x + r->begin, x + r->begin + r->shift, up + r->begin, d + r->begin, r->end - r->begin);
            else if (!r->single) {
                double now = x[r->end];
                for (int k = r->end; k-- > r->begin;) x[k] = now = (x[k] - up[k] * now) * d[k];
            } else {
                const int k = r->begin;
                double now = x[k];
                if (r->shift > 0) now -= up[k] * x[first[at(k)]];
                for (; e > 0 && extras[e - 1].row == k; --e) now -= up[at(n_) + e - 1] * x[extras[e - 1].column];
                x[k] = now * d[k];
            }
        }
    }

private:
    struct more {
        int row, column;
    };
    struct run {
        int begin, end, shift;
        bool single;
    };
    static std::size_t at(int k) { return static_cast<std::size_t>(k); }
    [[gnu::noinline]] static void apart(double* __restrict d, double* __restrict seen, const double* __restrict up,
                                        double* __restrict low, int count)
    {
        for (int i = 0; i < count; ++i) {
            const double inverse = 1 / d[i], share = low[i] * inverse;
            d[i] = inverse;
            low[i] = share;
            seen[i] -= share * up[i];
        }
    }
    [[gnu::noinline]] static void forward(const double* __restrict x, double* __restrict seen,
                                          const double* __restrict low, int count)
    {
        for (int i = 0; i < count; ++i) seen[i] -= low[i] * x[i];
    }
    [[gnu::noinline]] static void back(double* __restrict x, const double* __restrict seen, const double* __restrict up,
                                       const double* __restrict d, int count)
    {
        for (int i = 0; i < count; ++i) x[i] = (x[i] - up[i] * seen[i]) * d[i];
    }

    struct layout {
        std::vector<int> first;
        std::vector<more> extras;
        std::vector<run> runs;
        std::vector<std::size_t> targets;
    };

    int n_ = 0;
    std::shared_ptr<const layout> layout_;  // the same for all copies
    std::vector<double> value_;
};

// The numbers of a loop; rises over the air [K], W, W/K, J/K.
struct loop_numbers {
    static constexpr int nowhere = -1;
    struct link {
        int a, b;
        double g;
    };
    struct sink {
        int a;
        double g, far;
        bool while_on;
    };
    struct surface {
        int a;
        double size;
        std::size_t table;
    };
    struct line {
        int a;
        double at_zero, slope;
    };
    struct contact {
        int in, with, follows, to, also_to;
        double share, also_share;
        joint_metal first, second;
        double cold, amps;
        int alike;
        double grip_slope, grip_power;  // of the force by the warmth of what grips, to the power of the conductance
    };
    struct crossing {
        int a, b;
        double weight;   // of a in the place
        std::size_t of;  // contact
        double faces;    // W/K over the conductivity of air
    };
    struct curved {
        int a, b;
        std::vector<double> by_mean;  // conductance at mean rises 8 K apart from 0
    };
    struct fixed {
        int a;
        double watts;  // while on
    };
    double air = 0;  // K
    std::vector<double> capacity;
    std::vector<link> links;
    std::vector<sink> sinks;
    std::vector<surface> surfaces;
    std::vector<std::array<double, 68>> tables;  // loss over rise at rises ((i - 1)/2)^2
    std::vector<line> lines;                     // while on
    std::vector<contact> contacts;
    std::vector<crossing> crossings;
    std::vector<curved> layers;
    std::vector<fixed> fixed_heats;
};

// What a period holds.
struct loop_period {
    std::vector<double> mean, on_mean, peak;
    double watts = 0;  // of lines and contacts in the mean while current flows
};

class loop {
public:
    explicit loop(const loop_numbers& n) : k_(&n), size_(n.capacity.size())
    {
        tree_matrix::pairs pairs;
        for (const auto& l : n.links) pairs.emplace_back(l.a, l.b);
        for (const auto& l : n.crossings) pairs.emplace_back(l.a, l.b);
        for (const auto& l : n.layers) pairs.emplace_back(l.a, l.b);
        for (const auto& c : n.contacts)
            for (const int to : {c.to, c.also_to})
                for (const int in : {c.in, c.with, c.follows})
                    if (to >= 0 && in >= 0) pairs.emplace_back(to, in);
        straight_ = tree_matrix(static_cast<int>(size_), pairs);
        std::vector<double>& m = straight_.values();
        heat_[0].assign(size_, 0);
        on_slope_.assign(size_, 0);
        for (const auto& l : n.links) {
            m[at(l.a)] += l.g;
            m[at(l.b)] += l.g;
            m[straight_.slot(l.a, l.b)] -= l.g;
            m[straight_.slot(l.b, l.a)] -= l.g;
        }
        heat_[1] = heat_[0];
        for (const auto& s : n.sinks) {
            (s.while_on ? on_slope_ : m)[at(s.a)] += s.g;
            heat_[1][at(s.a)] += s.g * s.far;
            if (!s.while_on) heat_[0][at(s.a)] += s.g * s.far;
        }
        for (const auto& l : n.lines) {
            on_slope_[at(l.a)] -= l.slope;
            heat_[1][at(l.a)] += l.at_zero;
        }
        for (const auto& f : n.fixed_heats) heat_[1][at(f.a)] += f.watts;
        for (const auto& t : n.tables)
            for (std::size_t i = 0; i < 64; ++i) {
                const double* const p = &t[i];
                cubic_.push_back({p[1], 0.5 * (p[2] - p[0]), p[0] - 2.5 * p[1] + 2 * p[2] - 0.5 * p[3],
                                  1.5 * (p[1] - p[2]) + 0.5 * (p[3] - p[0])});
            }
        for (const auto& s : n.surfaces) curved_.push_back(s.a);
        for (const auto& l : n.crossings) curved_.insert(curved_.end(), {l.a, l.b});
        for (const auto& c : n.contacts)
            for (const int in : {c.in, c.with, c.follows})
                if (in >= 0) curved_.push_back(in);
        std::sort(curved_.begin(), curved_.end());
        curved_.erase(std::unique(curved_.begin(), curved_.end()), curved_.end());
        for (const auto& c : n.contacts) {
            drop_table known;
            known.fill(std::numeric_limits<double>::quiet_NaN());
            drops_.push_back(known);
            (void)c;
        }
        volts_.resize(n.contacts.size());
        base_.resize(size_);
        next_.resize(size_);
        moved_.resize(size_);
    }

    // drop of each of the contacts alike [V] at rises of its metal and of what grips it
    double drop_at(std::size_t contact, double rise, double gripping) { return drop(contact, rise, gripping); }

    // current all the time
    loop_period steady()
    {
        loop_period out;
        out.mean = out.on_mean = out.peak = steady_at(1);
        for (std::size_t c = 0; c < volts_.size(); ++c) out.watts += watts_of(c, out.mean);
        for (const auto& l : k_->lines) out.watts += l.at_zero + l.slope * out.mean[at(l.a)];
        return out;
    }

    loop_period settled(double on, double rest)
    {
        const double period = on + rest, share = on / period;
        std::vector<double> start = steady_at(share);
        tree_matrix slow, fast;
        {
            std::vector<double> unused;
            slow = straightened(start, share, unused);
            fast = slow;
            for (std::size_t i = 0; i < size_; ++i) fast.values()[i] += 7.04 * k_->capacity[i] / period;
            slow.eliminate();
            fast.eliminate();
        }
        std::vector<double> a(size_), b(size_);
        double newton = 1;
        for (int sweep = 0; sweep < 80; ++sweep) {
            if (sweep == 0) {
                choose(start, on, true, newton);
                choose(std::vector<double>(steps_.back().stage[2]), rest, false, newton);
            } else {
                const std::vector<double>* from = &start;
                for (step& s : steps_) {
                    for (const int i : curved_) moved_[at(i)] = (*from)[at(i)] - s.from[at(i)];
                    s.from = *from;
                    for (std::size_t k = 0; k < 3; ++k) solve_stage(s, k, newton);
                    from = &s.stage[2];
                }
            }
            const std::vector<double>& end = steps_.back().stage[2];
            double most = 0;
            for (std::size_t i = 0; i < size_; ++i) {
                b[i] = end[i] - start[i];
                most = std::max(most, std::fabs(b[i]));
            }
            if (most <= 1e-4 && sweep > 0) return summed(start, on, rest);
            if (sweep == 0)
                for (step& s : steps_) prepare(s, s.stage[1]);
            newton = std::clamp(0.06 * most, 1e-9, 1.0);
            for (std::size_t i = 0; i < size_; ++i) a[i] = k_->capacity[i] * b[i] / period;
            std::vector<double> quick = a;
            slow.solve(a.data());
            fast.solve(quick.data());
            for (std::size_t i = 0; i < size_; ++i) {
                start[i] += a[i] + b[i] - 0.3554 * quick[i];
                quick[i] *= 24.27 * k_->capacity[i] / period;
            }
            fast.solve(quick.data());
            for (std::size_t i = 0; i < size_; ++i) start[i] -= quick[i];
        }
        throw std::runtime_error("not settled");
    }

    // The straightforward way: from the cold in steps of one length by Euler's backward rule, until a period changes
    // nothing by more than 1 mK.
    loop_period marched(double on, double rest, double length)
    {
        std::vector<double> now(size_, 0.0), next, slopes, right(size_), start;
        loop_period out;
        for (double moved = 1; moved > 1e-3;) {
            start = now;
            out.peak = now;
            for (double t = 0.5 * length; t < on + rest; t += length) {
                const bool is_on = t < on;
                next = now;
                for (double most = 1; most > 1e-6;) {
                    tree_matrix m = straightened(next, is_on ? 1 : 0, slopes);
                    for (std::size_t i = 0; i < size_; ++i) {
                        const double held = k_->capacity[i] / length;
                        m.values()[i] += held;
                        right[i] = heat_[is_on ? 1 : 0][i] + held * now[i];
                    }
                    add_curved<true>([&](int i) { return next[at(i)]; }, is_on ? 1 : 0, slopes.data(), right.data());
                    m.eliminate();
                    m.solve(right.data());
                    most = 0;
                    for (std::size_t i = 0; i < size_; ++i) most = std::max(most, std::fabs(right[i] - next[i]));
                    next.swap(right);
                }
                now.swap(next);
                for (std::size_t i = 0; i < size_; ++i) out.peak[i] = std::max(out.peak[i], now[i]);
            }
            moved = 0;
            for (std::size_t i = 0; i < size_; ++i) moved = std::max(moved, std::fabs(now[i] - start[i]));
        }
        return out;
    }

private:
    static constexpr double g_ = 0.43586652150845899942;
    static constexpr std::array<double, 3> weight_{-(6 * g_ * g_ - 16 * g_ + 1) / 4, (6 * g_ * g_ - 20 * g_ + 5) / 4,
                                                   g_};
    static std::size_t at(int i) { return static_cast<std::size_t>(i); }

    struct step {
        double time = 0;
        bool on = false;
        std::vector<double> from;
        std::array<std::vector<double>, 3> stage;
        tree_matrix matrix;
        std::vector<double> slopes;
    };
    struct cubic {
        double c0, c1, c2, c3;
    };
    using drop_table = std::array<double, 67>;

    // loss of a surface of one square metre, or metre, and its slope
    [[nodiscard]] double lost(std::size_t table, double x) const
    {
        const double place = 2 * std::sqrt(std::max(x, 0.0));
        const int i = std::min(63, static_cast<int>(place));
        const cubic& c = cubic_[64 * table + at(i)];
        const double u = place - i;
        return x * (c.c0 + u * (c.c1 + u * (c.c2 + u * c.c3)));
    }
    [[nodiscard]] double lost_slope(std::size_t table, double x) const
    {
        const double place = 2 * std::sqrt(std::max(x, 0.0));
        const int i = std::min(63, static_cast<int>(place));
        const cubic& c = cubic_[64 * table + at(i)];
        const double u = place - i;
        return c.c0 + u * (c.c1 + u * (c.c2 + u * c.c3)) + 0.5 * place * (c.c1 + u * (2 * c.c2 + 3 * u * c.c3));
    }

    [[nodiscard]] double drop_by_law(const loop_numbers::contact& c, double rise, double gripping) const
    {
        const double bulk = std::min(k_->air + rise, std::min(c.first.melting, c.second.melting));
        double cold = c.cold;
        if (c.grip_slope > 0)
            cold *= std::pow(std::max(1e-9, 1 - c.grip_slope * (k_->air + gripping - 293.15)), c.grip_power);
        const double growth = (resistivity_at(c.first, bulk) + resistivity_at(c.second, bulk)) /
                              (c.first.resistivity + c.second.resistivity);
        return drop_law(c.first, c.second, bulk).drop(c.amps * growth / cold);
    }
    // the same by cubics between points 8 K apart where the force is steady
    [[nodiscard]] double drop(std::size_t which, double rise, double gripping)
    {
        const loop_numbers::contact& c = k_->contacts[which];
        if (c.grip_slope > 0 || !(rise >= 0 && rise < 512)) return drop_by_law(c, rise, gripping);
        const double place = rise / 8;
        const int i = static_cast<int>(place);
        double* const p = &drops_[which][at(i)];
        for (int j = 0; j < 4; ++j)
            if (std::isnan(p[j])) p[j] = drop_by_law(c, 8.0 * (i + j - 1), 0);
        const double u = place - i;
        return p[1] + u * (0.5 * (p[2] - p[0]) + u * (p[0] - 2.5 * p[1] + 2 * p[2] - 0.5 * p[3] +
                                                      u * (1.5 * (p[1] - p[2]) + 0.5 * (p[3] - p[0]))));
    }
    template <class X>
    static double place_of(const loop_numbers::contact& c, const X& x)
    {
        return c.with >= 0 ? 0.5 * (x(c.in) + x(c.with)) : x(c.in);
    }
    template <class X>
    static double follow(int node, const X& x)
    {
        return node >= 0 ? x(node) : 0;
    }
    double watts_of(std::size_t which, const std::vector<double>& x)
    {
        const loop_numbers::contact& c = k_->contacts[which];
        const auto rise = [&x](int i) { return x[at(i)]; };
        return c.amps * c.alike * drop(which, place_of(c, rise), follow(c.follows, rise));
    }
    [[nodiscard]] double crossing_by(const loop_numbers::crossing& l, double rise, double volts) const
    {
        const loop_numbers::contact& c = k_->contacts[l.of];
        const double t = k_->air + rise, spots = 2.44e-8 * c.amps * t / (volts * c.alike);
        if (!(l.faces > 0)) return spots;
        return spots + l.faces * 2.64638e-3 * t * std::sqrt(t) / (t + 245.4 * std::exp(-27.63102111592855 / t));
    }
    [[nodiscard]] static double layer_by(const loop_numbers::curved& l, double rise)
    {
        const double place = std::clamp(rise / 8, 0.0, static_cast<double>(l.by_mean.size()) - 1.001);
        const int i = static_cast<int>(place);
        return l.by_mean[at(i)] + (place - i) * (l.by_mean[at(i + 1)] - l.by_mean[at(i)]);
    }

    // Heat of what is curved; with its slopes taken off where they are given.
    template <bool beyond, class X>
    void add_curved(const X& x, double on, const double* slope, double* gain)
    {
        for (const auto& s : k_->surfaces) {
            const double r = x(s.a), w = s.size * lost(s.table, r);
            if constexpr (beyond)
                gain[s.a] += *slope++ * r - w;
            else
                gain[s.a] -= w;
        }
        for (std::size_t k = 0; k < volts_.size(); ++k) {
            const loop_numbers::contact& c = k_->contacts[k];
            const double r = place_of(c, x), f = follow(c.follows, x);
            volts_[k] = drop(k, r, f);
            double w = on * c.amps * c.alike * volts_[k];
            if constexpr (beyond) {
                w -= slope[0] * r + slope[1] * f;
                slope += 2;
            }
            gain[c.to] += c.share * w;
            if (c.also_to >= 0) gain[c.also_to] += c.also_share * w;
        }
        const auto pass = [&](int a, int b, double g) {
            double w = g * (x(a) - x(b));
            if constexpr (beyond) {
                w -= slope[0] * x(a) - slope[1] * x(b);
                slope += 2;
            }
            gain[a] -= w;
            gain[b] += w;
        };
        for (const auto& l : k_->crossings)
            pass(l.a, l.b, crossing_by(l, l.weight * x(l.a) + (1 - l.weight) * x(l.b), volts_[l.of]));
        for (const auto& l : k_->layers) pass(l.a, l.b, layer_by(l, 0.5 * (x(l.a) + x(l.b))));
    }

    // Minus the slopes of the gains at a state.
    tree_matrix straightened(const std::vector<double>& x, double on, std::vector<double>& slopes)
    {
        tree_matrix out = straight_;
        double* const m = out.values().data();
        for (std::size_t i = 0; i < size_; ++i) m[i] += on * on_slope_[i];
        slopes.clear();
        for (const auto& s : k_->surfaces) {
            slopes.push_back(s.size * lost_slope(s.table, x[at(s.a)]));
            m[s.a] += slopes.back();
        }
        const auto rise = [&](int i) { return x[at(i)]; };
        for (std::size_t k = 0; k < volts_.size(); ++k) {
            const loop_numbers::contact& c = k_->contacts[k];
            constexpr double h = 1e-3;  // K
            const double r = place_of(c, rise), f = follow(c.follows, rise), watts = on * c.amps * c.alike;
            volts_[k] = drop(k, r, f);
            const double first = watts * (drop(k, r + h, f) - volts_[k]) / h;
            const double second = c.follows >= 0 ? watts * (drop(k, r, f + h) - volts_[k]) / h : 0;
            slopes.insert(slopes.end(), {first, second});
            const auto give = [&](int to, double share) {
                if (to < 0) return;
                m[out.slot(to, c.in)] -= share * first * (c.with >= 0 ? 0.5 : 1);
                if (c.with >= 0) m[out.slot(to, c.with)] -= share * first * 0.5;
                if (c.follows >= 0) m[out.slot(to, c.follows)] -= share * second;
            };
            give(c.to, c.share);
            give(c.also_to, c.also_share);
        }
        const auto pass = [&](int a, int b, double g, double by_a, double by_b) {
            const double over = rise(a) - rise(b), one = g + by_a * over, other = g - by_b * over;
            slopes.insert(slopes.end(), {one, other});
            m[a] += one;
            m[out.slot(a, b)] -= other;
            m[out.slot(b, a)] -= one;
            m[b] += other;
        };
        for (const auto& l : k_->crossings) {
            constexpr double h = 1e-3;
            const loop_numbers::contact& c = k_->contacts[l.of];
            const double r = l.weight * rise(l.a) + (1 - l.weight) * rise(l.b), f = follow(c.follows, rise);
            const double g = crossing_by(l, r, volts_[l.of]),
                         slope = (crossing_by(l, r + h, drop(l.of, r + h, f)) - g) / h;
            pass(l.a, l.b, g, l.weight * slope, (1 - l.weight) * slope);
        }
        for (const auto& l : k_->layers) {
            const double r = 0.5 * (rise(l.a) + rise(l.b)), g = layer_by(l, r), slope = layer_by(l, r + 1) - g;
            pass(l.a, l.b, g, 0.5 * slope, 0.5 * slope);
        }
        return out;
    }

    // Newton's rule from the cold with the heat of the period spread evenly.
    std::vector<double> steady_at(double share)
    {
        std::vector<double> x(size_, 0.0), slopes, right(size_);
        for (int round = 0; round < 60; ++round) {
            tree_matrix m = straightened(x, share, slopes);
            for (std::size_t i = 0; i < size_; ++i) right[i] = (1 - share) * heat_[0][i] + share * heat_[1][i];
            add_curved<true>([&](int i) { return x[at(i)]; }, share, slopes.data(), right.data());
            m.eliminate();
            m.solve(right.data());
            double most = 0;
            for (std::size_t i = 0; i < size_; ++i) most = std::max(most, std::fabs(right[i] - x[i]));
            const double by = most > 60 ? 60 / most : 1;
            for (std::size_t i = 0; i < size_; ++i) x[i] += by * (right[i] - x[i]);
            if (most < 1e-9) return x;
        }
        throw std::runtime_error("no steady state");
    }

    void prepare(step& s, const std::vector<double>& x)
    {
        s.matrix = straightened(x, s.on ? 1 : 0, s.slopes);
        double* const m = s.matrix.values().data();
        for (std::size_t i = 0; i < size_; ++i) m[i] += k_->capacity[i] / (g_ * s.time);
        s.matrix.eliminate();
    }

    void solve_stage(step& s, std::size_t k, double tolerance)
    {
        constexpr double from_first = (1 - g_) / 2 / g_, on_second = weight_[1] / g_,
                         on_first = weight_[0] / g_ - on_second * from_first;
        const double by = 1 / (g_ * s.time);
        const double *const heat = heat_[s.on ? 1 : 0].data(), *const c = k_->capacity.data(),
                            *const from = s.from.data(), *const one = s.stage[0].data(), *const two = s.stage[1].data();
        double* const base = base_.data();
        if (k == 0)
            for (std::size_t i = 0; i < size_; ++i) base[i] = heat[i] + by * c[i] * from[i];
        else if (k == 1)
            for (std::size_t i = 0; i < size_; ++i)
                base[i] = heat[i] + by * c[i] * (from[i] + from_first * (one[i] - from[i]));
        else
            for (std::size_t i = 0; i < size_; ++i)
                base[i] = heat[i] +
                          by * c[i] * ((1 - on_first - on_second) * from[i] + on_first * one[i] + on_second * two[i]);
        std::vector<double>& x = s.stage[k];
        for (int round = 0; round < 40; ++round) {
            next_ = base_;
            const double* const now = x.data();
            if (round == 0)
                add_curved<true>([&](int i) { return now[i] + moved_[at(i)]; }, s.on ? 1 : 0, s.slopes.data(),
                                 next_.data());
            else
                add_curved<true>([&](int i) { return now[i]; }, s.on ? 1 : 0, s.slopes.data(), next_.data());
            s.matrix.solve(next_.data());
            double most = 0;
            for (const int i : curved_) {
                const double way = next_[at(i)] - x[at(i)], guess = round == 0 ? moved_[at(i)] : 0;
                most = std::max(most, std::fabs(way - guess));
                moved_[at(i)] = way + (round == 0 ? 0 : moved_[at(i)]);
            }
            x.swap(next_);
            if (most <= tolerance) return;
        }
        throw std::runtime_error("a stage does not settle");
    }

    void choose(std::vector<double> x, double whole, bool on, double newton)
    {
        constexpr std::array<double, 3> node{g_, (1 + g_) / 2, 1};
        constexpr double second = (1 - 2 * g_) / (1 - g_);
        constexpr double from_first = (1 - g_) / 2 / g_, on_second = weight_[1] / g_,
                         on_first = weight_[0] / g_ - on_second * from_first;
        constexpr double lacks0 = (weight_[0] - (1 - second)) / g_, lacks1 = (weight_[1] - second) / g_,
                         lacks2 = weight_[2] / g_;
        constexpr double by_first = lacks0 - lacks1 * from_first - lacks2 * on_first,
                         by_second = lacks1 - lacks2 * on_second;
        double hottest = 0, done = 0;
        for (const double r : x) hottest = std::max(hottest, std::fabs(r));
        const double tolerance = 0.3 + 0.01 * hottest;
        step s;
        s.on = on;
        s.time = 1e-3 * whole;
        while (done < whole) {
            if (done + 1.2 * s.time > whole) s.time = whole - done;
            prepare(s, x);
            s.from = x;
            s.stage[0] = x;
            for (std::size_t k = 0; k < 3; ++k) {
                if (k > 0) {
                    const std::vector<double>& before = k == 1 ? s.from : s.stage[0];
                    const double by = (node[k] - node[k - 1]) / (k == 1 ? node[0] : node[1] - node[0]);
                    s.stage[k].resize(size_);
                    for (std::size_t i = 0; i < size_; ++i)
                        s.stage[k][i] = s.stage[k - 1][i] + by * (s.stage[k - 1][i] - before[i]);
                }
                std::fill(moved_.begin(), moved_.end(), 0.0);
                solve_stage(s, k, newton);
            }
            double error = 0;
            for (std::size_t i = 0; i < size_; ++i)
                error = std::max(error, std::fabs(by_first * (s.stage[0][i] - s.from[i]) +
                                                  by_second * (s.stage[1][i] - s.from[i]) +
                                                  lacks2 * (s.stage[2][i] - s.from[i])));
            const double wanted = std::clamp(0.8 * std::cbrt(tolerance / std::max(error, 1e-12)), 0.2, 3.0);
            if (wanted < 0.7) {
                s.time *= wanted;
                continue;
            }
            steps_.push_back(s);
            x = s.stage[2];
            done += s.time;
            if (done >= whole * (1 - 1e-12)) break;
            s.time *= wanted;
        }
    }

    loop_period summed(const std::vector<double>& start, double on, double rest)
    {
        loop_period out;
        out.peak = start;
        out.on_mean.assign(size_, 0.0);
        std::vector<double> off(size_, 0.0);
        for (const step& s : steps_)
            for (std::size_t k = 0; k < 3; ++k) {
                double* __restrict const mean = (s.on ? out.on_mean : off).data();
                double* __restrict const peak = out.peak.data();
                const double* __restrict const x = s.stage[k].data();
                const double share = weight_[k] * s.time / (s.on ? on : rest);
                for (std::size_t i = 0; i < size_; ++i) {
                    mean[i] += share * x[i];
                    peak[i] = std::max(peak[i], x[i]);
                }
                if (!s.on) continue;
                for (std::size_t c = 0; c < volts_.size(); ++c) out.watts += share * watts_of(c, s.stage[k]);
            }
        out.mean.resize(size_);
        const double part = on / (on + rest);
        for (std::size_t i = 0; i < size_; ++i) out.mean[i] = part * out.on_mean[i] + (1 - part) * off[i];
        for (const auto& l : k_->lines) out.watts += l.at_zero + l.slope * out.on_mean[at(l.a)];
        return out;
    }

    const loop_numbers* k_;
    std::size_t size_;
    tree_matrix straight_;
    std::array<std::vector<double>, 2> heat_;  // at rest, and with current
    std::vector<double> on_slope_;
    std::vector<cubic> cubic_;
    std::vector<drop_table> drops_;
    std::vector<int> curved_;
    std::vector<double> volts_, base_, next_, moved_;
    std::vector<step> steps_;
};

}  // namespace plain
