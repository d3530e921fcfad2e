#pragma once
/// @file
/// How a solved loop whose ways share its current scatters with its joints: by draws, because a joint that gets worse
/// sends its current elsewhere and no straight line says how much.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include <weldloop/circuit/current_sharing.hpp>
#include <weldloop/circuit/heat_response.hpp>
#include <weldloop/circuit/loop_network.hpp>
#include <weldloop/circuit/loop_scatter.hpp>
#include <weldloop/circuit/scattered_sum.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/joint_characteristic.hpp>
#include <weldloop/solve/current_network.hpp>
#include <weldloop/solve/heat_network.hpp>
#include <weldloop/solve/mixing.hpp>
#include <weldloop/solve/periodic_state.hpp>
#include <weldloop/solve/sparse_lu.hpp>

namespace weldloop {

/// How scatter is reckoned where ways share the current.
inline constexpr source drawn_scatter_model{
    "scatter of a loop with ways: 800 draws in strata, every joint by itself over its own band, the currents divided "
    "anew in each with every joint's own characteristic; temperatures follow the heat by the slopes of the solved "
    "network",
    "2026", "compared with draws solved in full", source_kind::derived};

namespace detail {

/// Numbers of standard deviations in the middle of strata of equal probability, ascending.
[[nodiscard]] inline std::vector<double> normal_strata(std::size_t count)
{
    std::vector<double> out;
    for (std::size_t i = 0; i < count; ++i) {
        constexpr double half = 0.5;
        const double share = (static_cast<double>(i) + half) / static_cast<double>(count);
        double low = -6.0, high = 6.0;  // standard deviations, beyond any stratum
        constexpr int halvings = 50;
        for (int k = 0; k < halvings; ++k) {
            const double middle = half * (low + high);
            (normal_share(middle) < share ? low : high) = middle;
        }
        out.push_back(half * (low + high));
    }
    return out;
}

/// The scatter of a solved loop with ways. Not for two threads at once: peaks are kept when they are asked for first.
class drawn_scatter final : public solved_scatter {
public:
    static constexpr std::size_t draws = 800;

    /// @param net the loop's network, set to its typical point and currents @param typical its solved state there
    /// @param on_share share of the period with current
    drawn_scatter(const loop_network& net, const solve::periodic_state& typical, double on_share)
        : net_(&net), typical_(&typical), on_share_(on_share), coldest_(net.cold().front()),
          sharing_(net, scatter::typical), divider_(net.points()), response_(net, typical.mean, on_share)
    {
        for (const loop_network::branch_at& b : net.branches()) usual_amps_.push_back(b.amps);
        collect();
        respond();
        connect();
        const std::vector<double> strata = normal_strata(draws);
        std::vector<std::vector<double>> z(joints_);
        std::uint64_t seed = 88172645463325252ULL;
        for (std::vector<double>& one : z) {
            one = strata;
            for (std::size_t i = draws; i-- > 1;) std::swap(one[i], one[next(seed) % (i + 1)]);
        }
        samples_.reserve(draws);
        moves_.resize(draws * response_.moves());
        std::vector<double> now(joints_);
        for (std::size_t d = 0; d < draws; ++d) {
            for (std::size_t j = 0; j < joints_; ++j) now[j] = z[j][d];
            samples_.push_back(drawn(now));
            const std::vector<double> moves = std::move(samples_.back().moves);
            for (std::size_t k = 0; k < moves.size(); ++k) moves_[k * draws + d] = moves[k];
        }
        peaks_.resize(net.network().size());
    }

    /// How many draws the rounds left moving: they count as they were in the last.
    [[nodiscard]] std::size_t still_moving() const
    {
        return static_cast<std::size_t>(
            std::count_if(samples_.begin(), samples_.end(), [](const sample& s) { return !s.is_at_rest; }));
    }
    [[nodiscard]] scattered_sum peak_of(std::size_t node) const override
    {
        if (peaks_[node]) return *peaks_[node];
        const double typical = typical_->peak[node], mean = typical_->mean[node];
        const double scale = mean > 0.0 ? std::max(1.0, typical / mean) : 1.0;
        const double most = std::max(net_->network().bound()[node], typical), least = std::min(coldest_, typical);
        const heat_response::moved peak =
            response_.of(0.0, [node](const std::vector<double>& rise) { return rise[node]; });
        std::vector<double> all(draws, 0.0);
        for (const heat_response::moved::follows& f : peak.some)
            for (std::size_t d = 0; d < draws; ++d) all[d] += f.by * moves_[f.which * draws + d];
        for (double& x : all) x = std::clamp(typical + scale * x, least, most);
        peaks_[node] = of_all(typical, all);
        return *peaks_[node];
    }
    [[nodiscard]] scattered_sum drop_of(std::size_t part, double base) const override
    {
        return of(base, [part](const sample& s) { return s.drops[part]; });
    }
    [[nodiscard]] scattered_sum current_of(std::size_t part, double base) const override
    {
        const std::vector<std::size_t> own = branches_of(part);
        return of(base, [&](const sample& s) { return largest(s, own); });
    }
    [[nodiscard]] scattered_sum current_of_way(std::size_t way, double base) const override
    {
        std::vector<std::size_t> own;
        for (std::size_t b = 0; b < net_->branches().size(); ++b)
            if (net_->branches()[b].way == way) own.push_back(b);
        return of(base, [&](const sample& s) { return largest(s, own); });
    }
    [[nodiscard]] scattered_sum total_drop(double base) const override
    {
        return of(base, [](const sample& s) { return s.total; });
    }
    [[nodiscard]] scattered_sum drop_by(std::size_t from, std::size_t to, double base) const override
    {
        return of(base, [&](const sample& s) {
            double sum = 0.0;
            for (std::size_t i = from; i < to; ++i) sum += s.drops[i];
            return sum;
        });
    }
    [[nodiscard]] own_scatter own_of(std::size_t part, std::size_t which) const override
    {
        std::size_t at = which;
        for (std::size_t i = 0; i < part; ++i) at += net_->parts()[i].contacts.size();
        std::vector<double> used;
        own_scatter out;
        double melting = 0.0;
        for (const sample& s : samples_) {
            used.push_back(s.softening_used[at]);
            if (used.back() > 1.0) out.yields += 1.0 / static_cast<double>(draws);
            if (s.melts[at]) melting += 1.0 / static_cast<double>(draws);
        }
        std::sort(used.begin(), used.end());
        constexpr double high = 0.95;
        out.softening_used_high = quantile(used, high);
        out.melts_high = melting > 1.0 - high;
        return out;
    }

private:
    static constexpr std::size_t steady = static_cast<std::size_t>(-1);  // a joint that does not scatter

    struct contact_row {
        const loop_network::contact_at* is;
        std::size_t part, joint = steady, heat = 0;
        heat_response::moved bulk = {}, gripping = {};
        double most = 0.0;  // K: the bound of its bulk
    };
    // The metal of a part in one branch, as one resistance.
    struct metal_row {
        std::size_t part, branch, heat = 0;
        heat_response::moved ohms = {};
    };
    struct measured_row {
        const loop_network::measured_at* is;
        std::size_t part, joint = steady, heat = steady;
    };
    struct tip_row {
        const loop_network::part_at* is;
        std::size_t part, joint = 0, wire = 0, heat = 0;
    };
    struct arc_row {
        const loop_network::arc_heat_at* is;
        std::size_t joint = 0, heat = 0;
    };
    struct sample {
        std::vector<double> amps, drops, moves, softening_used;
        std::vector<bool> melts;
        double total = 0.0;
        bool is_at_rest = false;
    };
    // A branch at the temperatures and joints of one draw.
    class drawn_branch final : public solve::drop_of_current {
    public:
        struct held_contact {
            spot_characteristic law;
            double cold_ohms, alike;
        };
        double ohms = 0.0;
        std::vector<held_contact> contacts = {};
        std::vector<loop_network::measured_at> measured = {};

        void clear()
        {
            ohms = 0.0;
            contacts.clear();
            measured.clear();
        }
        [[nodiscard]] solve::drop_at_current at(double amps) const override
        {
            solve::drop_at_current out{ohms * amps, ohms};
            for (const held_contact& c : contacts) add_contact_drop(out, c.law, c.cold_ohms, c.alike, amps);
            for (const loop_network::measured_at& m : measured) {
                const solve::drop_at_current d = m.drop_of(amps);
                out.volts += d.volts;
                out.slope += d.slope;
            }
            return out;
        }
    };

    static std::uint64_t next(std::uint64_t& seed)  // xorshift of Marsaglia
    {
        seed ^= seed << 13U;
        seed ^= seed >> 7U;
        seed ^= seed << 17U;
        return seed >> 11U;
    }

    void collect()
    {
        for (std::size_t i = 0; i < net_->parts().size(); ++i) {
            const loop_network::part_at& p = net_->parts()[i];
            for (const loop_network::contact_at& c : p.contacts) {
                contact_row r{.is = &c, .part = i};
                if (c.cold.low < c.cold.high && c.cold.typical.value() > 0.0) r.joint = joints_++;
                r.most = net_->network().bound()[c.bulk];
                contacts_.push_back(std::move(r));
            }
            if (p.measured) {
                measured_row r{.is = &*p.measured, .part = i};
                if (p.measured->drop.low < p.measured->drop.high) r.joint = joints_++;
                measured_.push_back(r);
            }
            if (p.tip != nullptr) {
                tips_.push_back({.is = &p, .part = i, .joint = joints_, .wire = joints_ + 1});
                joints_ += 2;
            }
            if (p.arc_heat) arcs_.push_back({.is = &*p.arc_heat, .joint = joints_++});
            for (const std::size_t b : branches_of(i))
                if (std::any_of(p.ohmics.begin(), p.ohmics.end(), [b](const auto& o) { return o.branch == b; }))
                    metals_.push_back({.part = i, .branch = b});
        }
    }

    // A watt of every source, by the balance of the mean, and what it does to all that is asked for.
    void respond()
    {
        const solve::heat_network& heat = net_->network();
        const auto add = [&](double usual, std::vector<double> where) {
            usual_watts_.push_back(usual);
            return response_.add(std::move(where));
        };
        const auto source = [&](std::size_t which) {
            std::vector<double> out(heat.size(), 0.0);
            const solve::heat_network::source& s = heat.sources()[which];
            if (s.to != loop_network::nowhere) out[s.to] += on_share_ * s.share;
            if (s.also_to != loop_network::nowhere) out[s.also_to] += on_share_ * s.also_share;
            return add(typical_->source_on[which], std::move(out));
        };
        for (contact_row& c : contacts_) c.heat = source(c.is->source);
        for (measured_row& m : measured_)
            if (m.is->law != nullptr) m.heat = source(net_->parts()[m.part].measured_source);
        for (tip_row& t : tips_) t.heat = source(t.is->tip_source);
        for (arc_row& a : arcs_) {
            std::vector<double> where(heat.size(), 0.0);
            net_->for_each_watt(*a.is, [&](std::size_t node, double watts) { where[node] += on_share_ * watts; });
            a.heat = add(a.is->what.heat.typical.value(), std::move(where));
        }
        for (metal_row& m : metals_) {
            double ohms = 0.0;
            std::vector<double> where(heat.size(), 0.0);
            const auto each = [&](const auto& what) {
                for (const loop_network::ohmic_at& o : net_->parts()[m.part].ohmics)
                    if (o.branch == m.branch) what(o, o.at_zero + o.by_kelvin * typical_->on_mean[o.node]);
            };
            each([&](const auto&, double r) { ohms += r; });
            each([&](const auto& o, double r) { where[o.node] += on_share_ * r / ohms; });
            m.ohms.usual = ohms;
            m.heat = add(ohms * usual_amps_[m.branch] * usual_amps_[m.branch], std::move(where));
        }
        for (contact_row& c : contacts_) {
            c.bulk =
                response_.of(loop_network::bulk_rise(*c.is, typical_->on_mean),
                             [&c](const std::vector<double>& rise) { return loop_network::bulk_rise(*c.is, rise); });
            c.gripping = response_.of(
                loop_network::gripping_rise(*c.is, typical_->on_mean),
                [&c](const std::vector<double>& rise) { return loop_network::gripping_rise(*c.is, rise); });
        }
        for (metal_row& m : metals_)
            m.ohms = response_.of(m.ohms.usual, [&](const std::vector<double>& rise) {
                double by = 0.0;
                for (const loop_network::ohmic_at& o : net_->parts()[m.part].ohmics)
                    if (o.branch == m.branch) by += o.by_kelvin * rise[o.node];
                return by;
            });
    }

    void connect()
    {
        for (std::size_t b = 0; b < net_->branches().size(); ++b) {
            branch_.push_back(std::make_unique<drawn_branch>());
            if (sharing_.is_open(b)) continue;
            closed_.push_back(b);
            divider_.add_branch(net_->branches()[b].from, net_->branches()[b].to, *branch_.back());
        }
        for (const loop_network::given_current& g : net_->given()) divider_.inject(g.into, g.out_of, g.amps);
        static_cast<void>(divider_.prepare());
    }
    [[nodiscard]] std::vector<std::size_t> branches_of(std::size_t part) const
    {
        std::vector<std::size_t> out{net_->parts()[part].branch};
        for (const std::size_t b : net_->parts()[part].meeting)
            if (b != out.front()) out.push_back(b);
        return out;
    }

    // What is known by its band alone, at a number of deviations.
    template <class Q>
    [[nodiscard]] static double value_at(const band<Q>& b, double z)
    {
        const double usual = b.typical.value();
        if (!(usual > 0.0)) return 0.0;
        return usual * std::pow((z > 0.0 ? b.high : b.low).value() / usual, std::fabs(z) / band_deviations);
    }

    // The loop with every joint at a number of deviations.
    [[nodiscard]] sample drawn(const std::vector<double>& z)
    {
        constexpr int most_rounds = 40;
        constexpr double settled = 0.02;  // K
        constexpr double closely = 1e-9;  // of the drops
        const auto deviation = [&z](std::size_t joint) { return joint == steady ? 0.0 : z[joint]; };
        std::vector<double> over(contacts_.size());  // typical cold conductance over that of the draw
        for (std::size_t k = 0; k < contacts_.size(); ++k) {
            const band<conductance>& cold = contacts_[k].is->cold;
            const double usual = cold.typical.value();
            over[k] = usual > 0.0 ? usual / loop_scatter::cold_at(cold, deviation(contacts_[k].joint)) : 1.0;
        }
        std::vector<loop_network::measured_at> measured;
        for (const measured_row& m : measured_) {
            measured.push_back(*m.is);
            measured.back().volts = value_at(m.is->drop, deviation(m.joint));
        }
        sample out;
        out.moves.assign(response_.moves(), 0.0);
        std::vector<double> inner, bulk(contacts_.size()), gripping(contacts_.size()), volts(contacts_.size());
        std::vector<std::optional<drawn_branch::held_contact>> held(contacts_.size());
        for (const std::size_t b : closed_) inner.push_back(usual_amps_[b]);
        const auto at_bulk = [this](std::size_t k, const std::vector<double>& moves) {
            const contact_row& c = contacts_[k];
            return std::clamp(c.bulk.with(moves), coldest_, std::max(c.most, c.bulk.usual));
        };
        std::vector<double> image(out.moves.size());
        double share = 1.0, last = std::numeric_limits<double>::max();
        mixing_.restart();
        for (int round = 0; round < most_rounds; ++round) {
            for (const auto& b : branch_) b->clear();
            for (std::size_t k = 0; k < contacts_.size(); ++k) {
                const contact_row& c = contacts_[k];
                bulk[k] = at_bulk(k, out.moves);
                gripping[k] = c.is->law->grip().slope > 0.0 ? c.gripping.with(out.moves) : c.gripping.usual;
                const contact_source::held is = c.is->law->held_at(bulk[k], gripping[k]);
                held[k].reset();
                if (!(is.cold_ohms <= std::numeric_limits<double>::max())) continue;  // open
                held[k] = {is.law, over[k] * is.cold_ohms, static_cast<double>(c.is->law->alike())};
                branch_[c.is->branch]->contacts.push_back(*held[k]);
            }
            for (const metal_row& m : metals_) branch_[m.branch]->ohms += m.ohms.with(out.moves);
            for (std::size_t k = 0; k < measured_.size(); ++k)
                branch_[measured[k].branch]->measured.push_back(measured[k]);
            const solve::divided_currents divided = divider_.divide(inner, closely);
            if (divided.what != solve::division::found) break;
            inner = divided.amps;
            out.amps.assign(branch_.size(), 0.0);
            for (std::size_t k = 0; k < closed_.size(); ++k) out.amps[closed_[k]] = inner[k];
            std::fill(image.begin(), image.end(), 0.0);
            const auto give = [&](std::size_t heat, double watts) {
                response_.give(image, heat, watts - usual_watts_[heat]);
            };
            for (std::size_t k = 0; k < contacts_.size(); ++k) {
                const contact_row& c = contacts_[k];
                const double amps = std::fabs(out.amps[c.is->branch]);
                volts[k] = c.is->law->alike() * (held[k] ? held[k]->law.drop(amps * held[k]->cold_ohms)
                                                         : each_drop(c, amps, over[k], bulk[k], gripping[k]));
                give(c.heat, amps * volts[k]);
            }
            for (std::size_t k = 0; k < measured_.size(); ++k) {
                const double amps = out.amps[measured[k].branch];
                if (measured_[k].heat != steady)
                    give(measured_[k].heat, std::fabs(amps * measured[k].drop_of(amps).volts));
            }
            for (const metal_row& m : metals_)
                give(m.heat, out.amps[m.branch] * out.amps[m.branch] * m.ohms.with(out.moves));
            for (const tip_row& t : tips_)
                give(t.heat,
                     std::fabs(out.amps[t.is->branch]) * t.is->heat_kept * value_at(t.is->constant_drop, z[t.joint]));
            for (const arc_row& a : arcs_) give(a.heat, value_at(a.is->what.heat, z[a.joint]));
            double most = 0.0;  // K: how far the contacts are from what their heat makes them
            for (std::size_t k = 0; k < contacts_.size(); ++k)
                most = std::max(most, std::fabs(at_bulk(k, image) - bulk[k]));
            out.is_at_rest = most <= settled;
            if (out.is_at_rest) break;
            constexpr double worse = 2.0, slower = 0.5, slowest = 0.1;
            if (most > worse * last) {  // the states before tell nothing of this one: where spots soften, say
                mixing_.restart();
                share = std::max(slowest, slower * share);
            }
            last = most;
            mixing_.step(out.moves, image, share);
        }
        if (out.amps.empty()) out.amps = usual_amps_;
        read(out, z, over, bulk, gripping, volts, measured);
        return out;
    }
    [[nodiscard]] static double each_drop(const contact_row& c, double amps, double over, double bulk, double gripping)
    {
        const contact_source::held is = c.is->law->held_at(bulk, gripping);
        return is.law.drop(amps * over * is.cold_ohms);
    }

    void read(sample& out, const std::vector<double>& z, const std::vector<double>& over,
              const std::vector<double>& bulk, const std::vector<double>& gripping, const std::vector<double>& volts,
              const std::vector<loop_network::measured_at>& measured) const
    {
        std::vector<double> branch_volts(branch_.size(), 0.0), watts(net_->parts().size(), 0.0);
        out.drops.assign(net_->parts().size(), 0.0);
        const auto add = [&](std::size_t part, std::size_t branch, double drop) {
            out.drops[part] += drop;
            branch_volts[branch] += std::copysign(drop, out.amps[branch]);
        };
        for (std::size_t k = 0; k < contacts_.size(); ++k) {
            const contact_row& c = contacts_[k];
            add(c.part, c.is->branch, volts[k]);
            const double peak = typical_->peak[c.is->bulk] + bulk[k] - c.bulk.usual;
            const contact_source::held is = c.is->law->held_at(peak, gripping[k]);
            const double each = is.law.drop(std::fabs(out.amps[c.is->branch]) * over[k] * is.cold_ohms),
                         soft = is.law.softening();
            out.softening_used.push_back(soft > 0.0 ? each / soft : 1.0 + each);
            out.melts.push_back(each >= melting_share * is.law.melting());
        }
        for (std::size_t k = 0; k < measured_.size(); ++k)
            add(measured_[k].part, measured[k].branch,
                std::fabs(measured[k].drop_of(out.amps[measured[k].branch]).volts));
        for (const tip_row& t : tips_)
            add(t.part, t.is->branch, value_at(t.is->constant_drop, z[t.joint]) + value_at(t.is->extension, z[t.wire]));
        // of a part that carries several currents the drop is that which makes its heat at the largest of them
        for (const metal_row& m : metals_) {
            const double drop = std::fabs(out.amps[m.branch]) * m.ohms.with(out.moves);
            branch_volts[m.branch] += std::copysign(drop, out.amps[m.branch]);
            watts[m.part] += std::fabs(out.amps[m.branch]) * drop;
        }
        for (std::size_t i = 0; i < watts.size(); ++i)
            if (const double most = largest(out, branches_of(i)); most > 0.0) out.drops[i] += watts[i] / most;
        out.total = net_->volts_across(branch_volts, [this](std::size_t b) { return !sharing_.is_open(b); });
    }

    [[nodiscard]] static double largest(const sample& s, const std::vector<std::size_t>& branches)
    {
        double out = 0.0;
        for (const std::size_t b : branches) out = std::max(out, std::fabs(s.amps[b]));
        return out;
    }
    [[nodiscard]] static double quantile(const std::vector<double>& sorted, double share)
    {
        constexpr double half = 0.5;
        const double place =
            std::clamp(share * static_cast<double>(sorted.size()) - half, 0.0, static_cast<double>(sorted.size() - 1));
        const auto below = static_cast<std::size_t>(place);
        const std::size_t after = std::min(below + 1, sorted.size() - 1);
        return sorted[below] + (place - static_cast<double>(below)) * (sorted[after] - sorted[below]);
    }
    // What the draws show, as one term about the typical number.
    template <class Number>
    [[nodiscard]] scattered_sum of(double base, const Number& number) const
    {
        std::vector<double> all;
        all.reserve(draws);
        for (const sample& s : samples_) all.push_back(number(s));
        return of_all(base, all);
    }
    [[nodiscard]] static scattered_sum of_all(double base, std::vector<double>& all)
    {
        std::sort(all.begin(), all.end());
        scattered_sum out(base);
        scattered_sum::table deviation{};
        for (std::size_t i = 0; i < deviation.size(); ++i)
            deviation[i] = quantile(all, normal_share(scattered_sum::deviations(i))) - base;
        out.add(deviation);
        return out;
    }

    const loop_network* net_;
    const solve::periodic_state* typical_;
    double on_share_, coldest_;
    current_sharing sharing_;
    solve::current_network divider_;
    std::size_t joints_ = 0;
    std::vector<contact_row> contacts_;
    std::vector<metal_row> metals_;
    std::vector<measured_row> measured_;
    std::vector<tip_row> tips_;
    std::vector<arc_row> arcs_;
    heat_response response_;
    solve::anderson_mixing mixing_;
    std::vector<double> usual_watts_;  // of the sources of heat that follow the currents, while these flow
    std::vector<double> usual_amps_;
    std::vector<std::size_t> closed_;
    std::vector<std::unique_ptr<drawn_branch>> branch_;
    std::vector<sample> samples_;
    std::vector<double> moves_;                                // of the samples, one after the other what moves
    mutable std::vector<std::optional<scattered_sum>> peaks_;  // of the nodes, once asked for
};

}  // namespace detail

}  // namespace weldloop
