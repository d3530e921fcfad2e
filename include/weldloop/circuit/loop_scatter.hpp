#pragma once
/// @file
/// How a solved loop scatters with its joints: each temperature and drop as a sum over contacts that scatter
/// independently, by the sensitivities of the solved network.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <functional>
#include <limits>
#include <numbers>
#include <utility>
#include <vector>

#include <weldloop/circuit/loop_network.hpp>
#include <weldloop/circuit/scattered_sum.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/joint_characteristic.hpp>
#include <weldloop/solve/periodic_state.hpp>
#include <weldloop/solve/sparse_lu.hpp>

namespace weldloop {

/// How scatter is reckoned.
inline constexpr source loop_scatter_model{
    "scatter of a loop: every contact by its own characteristic over its own band, log-normal with its own spread on "
    "either side; temperatures follow the heat of contacts by the slopes of the solved network, scaled to what the "
    "loop "
    "solved with all joints poor shows",
    "2026", "compared with seeded draws", source_kind::derived};

namespace detail {

/// The scatter of a solved loop with one current throughout.
class loop_scatter final : public solved_scatter {
public:
    /// @param net the loop's network, set to its typical point @param typical its solved state there
    /// @param good gives the state solved with every joint at its 5 % point, or null where there is none; asked only
    /// where it counts
    /// @param poor the same at its 95 % point
    /// @param on_share share of the period with current
    loop_scatter(const loop_network& net, const solve::periodic_state& typical,
                 std::function<const solve::periodic_state*()> good, const solve::periodic_state* poor, double on_share)
        : net_(&net), typical_(&typical), good_(std::move(good)), poor_(poor), on_share_(on_share),
          coldest_(net.cold().empty() ? 0.0 : net.cold().front())  // a stretch of one part may have no node
    {
        const solve::heat_network& network = net.network();
        solve::sparse_lu matrix = network.pattern();
        std::vector<double> gain(network.size());
        network.evaluate(typical.mean, on_share, gain, &matrix);
        static_cast<void>(matrix.eliminate());
        warming heated(std::move(matrix));
        for (std::size_t i = 0; i < net.parts().size(); ++i) {
            const loop_network::part_at& part = net.parts()[i];
            first_contact_.push_back(volts_by_kelvin_.size());
            first_term_.push_back(terms_.size());
            for (const loop_network::contact_at& c : part.contacts)
                volts_by_kelvin_.push_back(c.law->at(bulk_rise(c), gripping(c), solve::asked::slopes).by_first /
                                           net.amps());
            for (const loop_network::contact_at& c : part.contacts)
                if (c.cold.low < c.cold.high) add_contact(i, c, heated);
            if (part.tip != nullptr) add_tip(i, part, heated);
            if (part.measured) add_measured(i, part, heated);
            if (part.arc_heat) add_arc_heat(i, *part.arc_heat, heated);
        }
        first_term_.push_back(terms_.size());
        find_places();
    }

    /// The peak of a node [K over the reference].
    [[nodiscard]] scattered_sum peak_of(std::size_t node) const override { return peak_of(node, side::both); }
    /// Probability that the peak of a node lies above a rise [K].
    [[nodiscard]] double peak_above(std::size_t node, double rise) const override
    {
        return peak_of(node, rise > typical_->peak[node] ? side::above : side::below).above(rise);
    }

    /// The drop of a part while current flows [V], contacts and the lead they warm. @param base its typical drop
    [[nodiscard]] scattered_sum drop_of(std::size_t part, double base) const override
    {
        scattered_sum out(base);
        std::vector<std::size_t> felt;
        for (std::size_t k = first_term_[part]; k < first_term_[part + 1]; ++k) felt.push_back(k);
        for (std::size_t block = nodes_of_[part].begin / block_size; block * block_size < nodes_of_[part].end; ++block)
            felt.insert(felt.end(), felt_in_[block].begin(), felt_in_[block].end());
        std::sort(felt.begin(), felt.end());
        felt.erase(std::unique(felt.begin(), felt.end()), felt.end());
        for (const std::size_t k : felt) {
            weight w;
            add_weight(w, terms_[k], part);
            if (w.volts != 0.0 || w.watts != 0.0) out.add(terms_[k].by(w));
        }
        return out;
    }
    [[nodiscard]] scattered_sum current_of(std::size_t, double base) const override { return scattered_sum(base); }
    [[nodiscard]] scattered_sum current_of_way(std::size_t, double base) const override { return scattered_sum(base); }
    /// The drop of the whole loop [V]. @param base its typical drop
    [[nodiscard]] scattered_sum total_drop(double base) const override
    {
        return drop_by(0, net_->parts().size(), base);
    }
    /// What the contacts of some parts do to the drop [V]. @param from, to the parts, to before the last
    [[nodiscard]] scattered_sum drop_by(std::size_t from, std::size_t to, double base) const override
    {
        scattered_sum out(base);
        for (std::size_t k = first_term_[from]; k < first_term_[to]; ++k) {
            const term& t = terms_[k];
            weight w;
            std::size_t first = t.part, last = t.part;
            const auto is_felt_in = [&t](const solve::sparse_lu::range& nodes) {
                return (t.by_volt.first < nodes.end && t.by_volt.end() > nodes.begin) ||
                       (t.by_watt.first < nodes.end && t.by_watt.end() > nodes.begin);
            };
            while (first > 0 &&
                   (nodes_of_[first - 1].begin == nodes_of_[first - 1].end || is_felt_in(nodes_of_[first - 1])))
                --first;
            while (last + 1 < nodes_of_.size() &&
                   (nodes_of_[last + 1].begin == nodes_of_[last + 1].end || is_felt_in(nodes_of_[last + 1])))
                ++last;
            for (std::size_t i = first; i <= last; ++i) add_weight(w, t, i);
            out.add(t.by(w));
        }
        return out;
    }

    /// All other contacts typical.
    /// @param part index in the path @param which of its contacts
    [[nodiscard]] own_scatter own_of(std::size_t part, std::size_t which) const override
    {
        const loop_network::contact_at& c = net_->parts()[part].contacts[which];
        const term* own = nullptr;
        for (std::size_t k = first_term_[part]; k < first_term_[part + 1]; ++k)
            if (terms_[k].contact == &c) own = &terms_[k];
        const double scale = slope_of(c.bulk);
        const metal_pair& metals = c.law->metals();
        struct point {
            double used;
            bool melts;
        };
        const auto at = [&](double z) -> point {
            const double cold = cold_at(c.cold, z);
            double rise = typical_->peak[c.bulk];
            double volts = c.law->volts_with(cold, rise, gripping(c));
            if (own != nullptr) {  // hotter by what it makes more itself
                rise += scale * own->by_volt.at(c.bulk) * (volts - c.law->volts_at(rise, gripping(c)));
                volts = c.law->volts_with(cold, rise, gripping(c));
            }
            const joint_limits limits = joint_limits_of(metals, c.law->bulk_at(rise));
            const double soft = limits.softening.value();
            return {soft > 0.0 ? volts / soft : 1.0 + volts, volts >= melting_share * limits.melting.value()};
        };
        own_scatter out;
        const point high = at(band_deviations);
        out.softening_used_high = high.used;
        out.melts_high = high.melts;
        constexpr double widest = 4.0;
        if (at(-widest).used > 1.0) {
            out.yields = 1.0;
        } else if (at(widest).used > 1.0) {
            double low = -widest, up = widest;
            constexpr int halvings = 24;
            for (int i = 0; i < halvings; ++i) {
                const double middle = 0.5 * (low + up);
                (at(middle).used > 1.0 ? up : low) = middle;
            }
            out.yields = normal_share(-low);
        }
        return out;
    }

    /// Cold conductance at a number of standard deviations of resistance above its median [S].
    [[nodiscard]] static double cold_at(const band<conductance>& cold, double z)
    {
        const double typical = cold.typical.value();
        constexpr double open = 1e-9;  // of the typical one, where the poor end is open
        const double end = z > 0.0 ? std::max(cold.low.value(), open * typical) : cold.high.value();
        return typical * std::pow(end / typical, std::fabs(z) / band_deviations);
    }

private:
    // Rises of the nodes a term reaches: beyond, heat has run off. Numbers follow the path, so that they are
    // neighbours.
    struct reach {
        std::size_t first = 0;
        std::vector<double> rise = {};

        reach() = default;
        reach(const std::vector<double>& all, const solve::sparse_lu::range& solved) : first(solved.begin)
        {
            constexpr double felt = 1e-7;  // of the most
            double most = 0.0;
            std::size_t last = solved.end;
            for (std::size_t i = first; i < last; ++i) most = std::max(most, std::fabs(all[i]));
            while (first < last && std::fabs(all[first]) <= felt * most) ++first;
            while (last > first && std::fabs(all[last - 1]) <= felt * most) --last;
            rise.assign(all.begin() + static_cast<std::ptrdiff_t>(first),
                        all.begin() + static_cast<std::ptrdiff_t>(last));
        }
        [[nodiscard]] std::size_t end() const { return first + rise.size(); }
        [[nodiscard]] bool holds(std::size_t node) const { return node >= first && node - first < rise.size(); }
        [[nodiscard]] double at(std::size_t node) const { return holds(node) ? rise[node - first] : 0.0; }
    };
    // What a number has of a term: so many of its volts, so many of its watts.
    struct weight {
        double volts = 0.0, watts = 0.0;
    };
    struct term {
        const loop_network::contact_at* contact;  // null for a tip
        std::size_t part;
        scattered_sum::table volts = {};  // deviation of its drop [V]
        scattered_sum::table watts = {};  // deviation of the heat that crosses its faces from body to work [W]
        reach by_volt = {};               // mean over the period, by a volt of it [K/V]
        reach by_watt = {};               // by a watt that crosses [K/W]

        [[nodiscard]] bool reaches(std::size_t node) const { return by_volt.holds(node) || by_watt.holds(node); }
        [[nodiscard]] scattered_sum::table by(const weight& w) const
        {
            scattered_sum::table out{};
            for (std::size_t i = 0; i < out.size(); ++i) out[i] = w.volts * volts[i] + w.watts * watts[i];
            return out;
        }
        [[nodiscard]] scattered_sum::table rise_of(std::size_t node) const
        {
            return by({by_volt.at(node), by_watt.at(node)});
        }
        [[nodiscard]] double rise_of(std::size_t node, double deviations) const
        {
            const double for_volts = by_volt.at(node) * scattered_sum::at(volts, deviations);
            return by_watt.rise.empty() ? for_volts
                                        : for_volts + by_watt.at(node) * scattered_sum::at(watts, deviations);
        }
    };

    [[nodiscard]] double gripping(const loop_network::contact_at& c) const
    {
        return c.follows != loop_network::nowhere ? typical_->on_mean[c.follows] : 0.0;
    }

    [[nodiscard]] double bulk_rise(const loop_network::contact_at& c) const
    {
        return c.with != loop_network::nowhere ? 0.5 * (typical_->on_mean[c.bulk] + typical_->on_mean[c.with])
                                               : typical_->on_mean[c.bulk];
    }

    // What a little heat at some nodes does to the means, as far as it is felt.
    class warming {
    public:
        explicit warming(solve::sparse_lu eliminated) : matrix_(std::move(eliminated)), rise_(matrix_.size(), 0.0) {}
        void add(std::size_t node, double watts)
        {
            rise_[node] += watts;
            given_ = {std::min(given_.begin, node), std::max(given_.end, node + 1)};
        }
        [[nodiscard]] reach felt()
        {
            constexpr double least = 1e-10;
            if (given_.begin >= given_.end) return {};
            const solve::sparse_lu::range solved = matrix_.solve_near(rise_, given_, least);
            reach out(rise_, solved);
            std::fill(rise_.begin() + static_cast<std::ptrdiff_t>(solved.begin),
                      rise_.begin() + static_cast<std::ptrdiff_t>(solved.end), 0.0);
            given_ = nothing;
            return out;
        }

    private:
        static constexpr solve::sparse_lu::range nothing{static_cast<std::size_t>(-1), 0};
        solve::sparse_lu matrix_;
        std::vector<double> rise_;
        solve::sparse_lu::range given_ = nothing;
    };

    void add_contact(std::size_t part, const loop_network::contact_at& c, warming& heated)
    {
        term t{.contact = &c, .part = part};
        const double rise = bulk_rise(c);
        const auto volts = [&](double z) {
            return c.law->alike() * c.law->volts_with(cold_at(c.cold, z), rise, gripping(c));
        };
        const double median = volts(0.0);
        // what crosses by the spots: L T I/V times the difference between the two sides
        const double over = c.across != loop_network::nowhere ? typical_->mean[c.bulk] - typical_->mean[c.across] : 0.0;
        const double crossing = lorenz_number * c.law->bulk_at(rise).in_kelvin() * net_->amps() * over;
        for (std::size_t i = 0; i < scattered_sum::points; ++i) {
            const double now = volts(scattered_sum::deviations(i));
            t.volts[i] = now - median;
            if (crossing != 0.0 && now > 0.0 && median > 0.0) t.watts[i] = crossing * (1.0 / now - 1.0 / median);
        }
        t.by_volt = felt_of(heated, net_->network().sources()[c.source], net_->amps());
        if (crossing != 0.0) {
            heated.add(c.bulk, -1.0);
            heated.add(c.across, 1.0);
            t.by_watt = heated.felt();
        }
        terms_.push_back(std::move(t));
    }

    // Deviation of what is known by its band alone, at a number of standard deviations.
    template <class Q>
    [[nodiscard]] static double deviation_of(const band<Q>& known, double z)
    {
        const double typical = known.typical.value();
        if (!(typical > 0.0)) return 0.0;
        const double end = (z > 0.0 ? known.high : known.low).value();
        return typical * (std::pow(end / typical, std::fabs(z) / band_deviations) - 1.0);
    }
    void add_drop(std::size_t part, const band<voltage>& drop, double times, reach by_volt)
    {
        term t{.contact = nullptr, .part = part};
        for (std::size_t i = 0; i < scattered_sum::points; ++i)
            t.volts[i] = times * deviation_of(drop, scattered_sum::deviations(i));
        t.by_volt = std::move(by_volt);
        terms_.push_back(std::move(t));
    }
    // Heat without a drop.
    void add_arc_heat(std::size_t part, const loop_network::arc_heat_at& arc, warming& heated)
    {
        term t{.contact = nullptr, .part = part};
        for (std::size_t i = 0; i < scattered_sum::points; ++i)
            t.watts[i] = deviation_of(arc.what.heat, scattered_sum::deviations(i));
        net_->for_each_watt(arc, [&](std::size_t node, double watts) { heated.add(node, on_share_ * watts); });
        t.by_watt = heated.felt();
        terms_.push_back(std::move(t));
    }
    void add_tip(std::size_t part, const loop_network::part_at& p, warming& heated)
    {
        add_drop(part, p.constant_drop, 1.0,
                 felt_of(heated, net_->network().sources()[p.tip_source], net_->amps() * p.heat_kept));
        add_drop(part, p.extension, 1.0, {});  // scatters by itself and heats nothing here
    }
    void add_measured(std::size_t part, const loop_network::part_at& p, warming& heated)
    {
        if (!(p.measured->drop.low < p.measured->drop.high)) return;
        const double times = p.measured->drop_of(net_->amps()).volts / p.measured->volts;
        add_drop(part, p.measured->drop, times,
                 p.measured->law == nullptr
                     ? reach{}
                     : felt_of(heated, net_->network().sources()[p.measured_source], net_->amps()));
    }

    [[nodiscard]] reach felt_of(warming& heated, const solve::heat_network::source& s, double watts) const
    {
        if (s.to != loop_network::nowhere) heated.add(s.to, on_share_ * s.share * watts);
        if (s.also_to != loop_network::nowhere) heated.add(s.also_to, on_share_ * s.also_share * watts);
        return heated.felt();
    }

    void add_weight(weight& w, const term& t, std::size_t part) const
    {
        if (t.part == part) w.volts += 1.0;
        const loop_network::part_at& p = net_->parts()[part];
        const auto follow = [&](double volts_by_kelvin, std::size_t node) {
            w.volts += volts_by_kelvin * t.by_volt.at(node);
            w.watts += volts_by_kelvin * t.by_watt.at(node);
        };
        for (const loop_network::ohmic_at& o : p.ohmics) follow(net_->amps() * o.by_kelvin, o.node);
        for (std::size_t k = 0; k < p.contacts.size(); ++k)
            follow(volts_by_kelvin_[first_contact_[part] + k], p.contacts[k].bulk);
    }

    // Which terms are felt where, and which nodes the drop of a part follows.
    void find_places()
    {
        felt_in_.resize(net_->network().size() / block_size + 1);
        for (std::size_t k = 0; k < terms_.size(); ++k)
            for (const reach* r : {&terms_[k].by_volt, &terms_[k].by_watt})
                if (!r->rise.empty())
                    for (std::size_t block = r->first / block_size; block * block_size < r->end(); ++block)
                        if (felt_in_[block].empty() || felt_in_[block].back() != k) felt_in_[block].push_back(k);
        for (const loop_network::part_at& p : net_->parts()) {
            solve::sparse_lu::range nodes{net_->network().size(), 0};
            const auto take = [&nodes](std::size_t node) {
                nodes = {std::min(nodes.begin, node), std::max(nodes.end, node + 1)};
            };
            for (const loop_network::ohmic_at& o : p.ohmics) take(o.node);
            for (const loop_network::contact_at& c : p.contacts) take(c.bulk);
            nodes_of_.push_back(nodes.end > 0 ? nodes : solve::sparse_lu::range{});
        }
    }

    // Which side of a peak is asked about.
    enum class side { below, above, both };

    [[nodiscard]] scattered_sum peak_of(std::size_t node, side asked) const
    {
        scattered_sum out(typical_->peak[node], peak_over_mean(node, asked));
        for (const std::size_t k : felt_in_[node / block_size])
            if (terms_[k].reaches(node)) out.add(terms_[k].rise_of(node));
        return out;
    }

    [[nodiscard]] double slope_of(std::size_t node) const
    {
        const double mean = typical_->mean[node];
        return mean > 0.0 ? std::max(1.0, typical_->peak[node] / mean) : 1.0;
    }

    // How a node's peak follows what the slopes say of its mean: in proportion to the two at first, bent on either side
    // so that the loop with all joints good and that with all joints poor come out as they were solved; never below the
    // coldest boundary, nor above what the node's metal bears. The side not asked about may stay straight.
    [[nodiscard]] scattered_sum::shape peak_over_mean(std::size_t node, side asked) const
    {
        const double peak = typical_->peak[node];
        scattered_sum::shape out;
        out.slope = slope_of(node);
        out.least = std::min(coldest_, peak);
        out.most = std::max(net_->network().bound()[node], peak);
        double farthest_below = 0.0, farthest_above = 0.0;
        const auto meet = [&](const auto& solved_at, double deviations) {
            double predicted = 0.0;
            for (const std::size_t k : felt_in_[node / block_size])
                if (terms_[k].reaches(node)) predicted += terms_[k].rise_of(node, deviations);
            if (predicted > 0.0 ? asked == side::below : asked == side::above) return;
            constexpr double least = 0.3;  // K: less says nothing
            double& farthest = predicted > 0.0 ? farthest_above : farthest_below;
            if (std::fabs(predicted) < std::max(least, farthest)) return;
            const solve::periodic_state* const solved = solved_at();
            if (solved == nullptr) return;
            const double shown = solved->peak[node] - peak;
            if (shown / predicted <= 0.0) return;
            farthest = std::fabs(predicted);
            const double over = shown / predicted / out.slope;
            (predicted > 0.0 ? out.bend_above : out.bend_below) =
                (over > 1.0 ? over - 1.0 : 1.0 - 1.0 / over) / std::fabs(predicted);
        };
        meet([this] { return poor_; }, band_deviations);
        meet(good_, -band_deviations);
        return out;
    }

    const loop_network* net_;
    const solve::periodic_state* typical_;
    std::function<const solve::periodic_state*()> good_;
    const solve::periodic_state* poor_;
    double on_share_, coldest_;
    std::vector<double> volts_by_kelvin_;     // of every contact, part by part [V/K]
    std::vector<std::size_t> first_contact_;  // of each part in it
    std::vector<term> terms_;
    std::vector<std::size_t> first_term_;            // of each part; at last how many there are
    std::vector<std::vector<std::size_t>> felt_in_;  // terms felt in each block of nodes
    static constexpr std::size_t block_size = 32;
    std::vector<solve::sparse_lu::range> nodes_of_;  // of each part
};

}  // namespace detail

}  // namespace weldloop
