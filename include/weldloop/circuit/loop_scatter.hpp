#pragma once
/// @file
/// How a solved loop scatters with its joints: each temperature and drop as a sum over contacts that scatter
/// independently, by the sensitivities of the solved network.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <vector>

#include <weldloop/circuit/loop_network.hpp>
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

/// Standard deviations from the median to the 5 and 95 % points.
inline constexpr double band_deviations = 1.6448536269514722;

/// Share of the normal distribution below a number of standard deviations.
[[nodiscard]] inline double normal_share(double z)
{
    return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}

/// A number that is the sum of a base and of contacts' deviations, each a table over its own standard deviations.
class scattered_sum {
public:
    static constexpr int half_points = 10;
    static constexpr int points = 2 * half_points + 1;
    static constexpr double step = 0.4;  // standard deviations; the table ends at 4
    using table = std::array<double, points>;

    explicit scattered_sum(double base = 0.0) : base_(base) {}
    /// A sum that is bent: base + slope Q + bend Q^2 of the sum Q of the terms, rising over its range.
    scattered_sum(double base, double slope, double bend) : base_(base), slope_(slope), bend_(bend) {}

    [[nodiscard]] static double deviations(std::size_t i) { return step * (static_cast<double>(i) - half_points); }
    /// Probability that stands at a point of the table.
    [[nodiscard]] static const table& weights()
    {
        static const table w = [] {
            table out{};
            double sum = 0.0;
            for (std::size_t i = 0; i < points; ++i) sum += out[i] = std::exp(-0.5 * deviations(i) * deviations(i));
            for (double& x : out) x /= sum;
            return out;
        }();
        return w;
    }

    /// Adds a contact. @param by weight of its deviations @param deviation table of them, zero at its median
    void add(double by, const table& deviation)
    {
        double mean = 0.0, square = 0.0;
        const table& w = weights();
        for (std::size_t i = 0; i < points; ++i) {
            mean += w[i] * by * deviation[i];
            square += w[i] * by * deviation[i] * by * deviation[i];
        }
        const double variance = std::max(0.0, square - mean * mean);
        if (variance == 0.0 && mean == 0.0) return;
        terms_.push_back({by, &deviation, mean, variance});
    }

    /// Adds another sum, whose contacts scatter by themselves.
    void add(const scattered_sum& other)
    {
        base_ += other.base_;
        terms_.insert(terms_.end(), other.terms_.begin(), other.terms_.end());
    }

    [[nodiscard]] double base() const { return base_; }

    /// Probability that the sum lies above a number.
    [[nodiscard]] double above(double number) const
    {
        const split s = parted();
        if (s.first == nullptr) return base_ > number ? 1.0 : base_ == number ? 0.5 : 0.0;
        const double x = base_ + unbent(number - base_);
        const double spread = std::sqrt(s.rest_variance);
        const auto beyond = [&](double so_far) {
            const double left = x - base_ - s.rest_mean - so_far;
            return spread > 0.0 ? normal_share(-left / spread) : left < 0.0 ? 1.0 : left == 0.0 ? 0.5 : 0.0;
        };
        const table& w = weights();
        double sum = 0.0;
        for (std::size_t i = 0; i < points; ++i) {
            const double one = s.first->by * (*s.first->deviation)[i];
            if (s.second == nullptr) {
                sum += w[i] * between(*s.first, i, beyond);
                continue;
            }
            double inner = 0.0;
            for (std::size_t k = 0; k < points; ++k)
                inner += w[k] * beyond(one + s.second->by * (*s.second->deviation)[k]);
            sum += w[i] * inner;
        }
        return std::clamp(sum, 0.0, 1.0);
    }

    /// The 95 % point, or the 5 % point: the terms' own, their distances from the base added as squares. Exact for one
    /// term, within 3 points of probability for several.
    /// @param upper the 95 % point
    [[nodiscard]] double end(bool upper) const
    {
        double squares = 0.0;
        for (const term& t : terms_) {
            const double distance = t.by * at(*t.deviation, upper == (t.by > 0.0) ? band_deviations : -band_deviations);
            squares += distance * distance;
        }
        return base_ + bent((upper ? 1.0 : -1.0) * std::sqrt(squares));
    }

    /// The number that the sum stays below with a probability, by narrowing down above(): a thousandth of the distance
    /// from the base.
    /// @param share 0.05 or 0.95, say
    [[nodiscard]] double quantile(double share) const
    {
        if (terms_.empty()) return base_;
        constexpr int halvings = 12;
        const double distance = end(share > 0.5) - base_;
        double near = base_, far = base_ + 4.0 * distance;
        for (int i = 0; i < halvings; ++i) {
            const double middle = 0.5 * (near + far);
            const bool inside = share > 0.5 ? 1.0 - above(middle) < share : 1.0 - above(middle) > share;
            (inside ? near : far) = middle;
        }
        return 0.5 * (near + far);
    }

    /// A table at a number of deviations between its ends.
    [[nodiscard]] static double at(const table& deviation, double z)
    {
        const double place = z / step + half_points;
        const auto cell = static_cast<std::size_t>(place);
        return deviation[cell] + (place - static_cast<double>(cell)) * (deviation[cell + 1] - deviation[cell]);
    }

private:
    // Beyond the top of the bend the sum stays there.
    [[nodiscard]] double bent(double q) const
    {
        if (bend_ != 0.0 && (bend_ < 0.0) == (q > -0.5 * slope_ / bend_)) q = -0.5 * slope_ / bend_;
        return q * (slope_ + bend_ * q);
    }
    [[nodiscard]] double unbent(double y) const
    {
        const double square = slope_ * slope_ + 4.0 * bend_ * y;
        if (square <= 0.0) return y > 0.0 ? 1e300 : -1e300;
        return 2.0 * y / (slope_ + std::sqrt(square));
    }

    struct term {
        double by;
        const table* deviation;
        double mean, variance;
    };
    struct split {
        const term* first = nullptr;   // summed over
        const term* second = nullptr;  // summed over too where it counts
        double rest_mean = 0.0, rest_variance = 0.0;
    };
    // The widest terms by themselves, the rest as a normal one.
    [[nodiscard]] split parted() const
    {
        constexpr double counts = 0.02;  // of the first one's variance
        split out;
        for (const term& t : terms_) {
            if (out.first == nullptr || t.variance > out.first->variance) {
                out.second = out.first;
                out.first = &t;
            } else if (out.second == nullptr || t.variance > out.second->variance)
                out.second = &t;
        }
        if (out.second != nullptr && out.second->variance < counts * out.first->variance) out.second = nullptr;
        for (const term& t : terms_) {
            if (&t == out.first || &t == out.second) continue;
            out.rest_mean += t.mean;
            out.rest_variance += t.variance;
        }
        return out;
    }
    // A cell of the first term's table as five of its places: where nothing else scatters a step would show.
    template <class Beyond>
    [[nodiscard]] static double between(const term& t, std::size_t i, const Beyond& beyond)
    {
        const table& d = *t.deviation;
        const double here = d[i], before = 0.5 * (d[i > 0 ? i - 1 : i] + here),
                     after = 0.5 * (here + d[i + 1 < points ? i + 1 : i]);
        double sum = 0.0;
        constexpr int parts = 10;
        for (int k = 0; k < parts; ++k) {
            const double u = (k + 0.5) / parts;
            sum +=
                beyond(t.by * (u < 0.5 ? before + 2.0 * u * (here - before) : here + (2.0 * u - 1.0) * (after - here)));
        }
        return sum / parts;
    }

    double base_, slope_ = 1.0, bend_ = 0.0;
    std::vector<term> terms_;
};

/// The scatter of a solved loop.
class loop_scatter {
public:
    /// @param net the loop's network, set to its typical point @param typical its solved state there
    /// @param poor the state solved with every joint at its 95 % point, or null where there is none
    /// @param on_share share of the period with current
    loop_scatter(const loop_network& net, const solve::periodic_state& typical, const solve::periodic_state* poor,
                 double on_share)
        : net_(&net), typical_(&typical), poor_(poor), on_share_(on_share)
    {
        const solve::heat_network& network = net.network();
        solve::sparse_lu matrix = network.pattern();
        std::vector<double> gain(network.size());
        network.evaluate(typical.mean, on_share, gain, &matrix);
        static_cast<void>(matrix.eliminate());
        for (std::size_t i = 0; i < net.parts().size(); ++i) {
            const loop_network::part_at& part = net.parts()[i];
            first_contact_.push_back(volts_by_kelvin_.size());
            for (const loop_network::contact_at& c : part.contacts)
                volts_by_kelvin_.push_back(c.law->at(bulk_rise(c), gripping(c), true).by_first / net.amps());
            for (const loop_network::contact_at& c : part.contacts)
                if (c.cold.low < c.cold.high) add_contact(i, c, matrix);
            if (part.tip != nullptr) add_tip(i, part, matrix);
        }
    }
    loop_scatter(const loop_scatter&) = delete;
    loop_scatter& operator=(const loop_scatter&) = delete;

    /// The peak of a node [K over the reference].
    [[nodiscard]] scattered_sum peak_of(std::size_t node) const
    {
        const bend b = peak_over_mean(node);
        scattered_sum out(typical_->peak[node], b.slope, b.bend);
        for (const term& t : terms_) out.add(t.mean_rise[node], t.volts);
        return out;
    }

    /// The drop of a part while current flows [V], contacts and the lead they warm. @param base its typical drop
    [[nodiscard]] scattered_sum drop_of(std::size_t part, double base) const
    {
        scattered_sum out(base);
        for (const term& t : terms_) out.add(drop_weight(t, part), t.volts);
        return out;
    }
    /// The drop of the whole loop [V]. @param base its typical drop
    [[nodiscard]] scattered_sum total_drop(double base) const { return drop_by(0, net_->parts().size(), base); }
    /// What the contacts of some parts do to the drop [V]. @param from, to the parts, to before the last
    [[nodiscard]] scattered_sum drop_by(std::size_t from, std::size_t to, double base) const
    {
        scattered_sum out(base);
        for (const term& t : terms_) {
            if (t.part < from || t.part >= to) continue;
            double by = 0.0;
            for (std::size_t i = 0; i < net_->parts().size(); ++i) by += drop_weight(t, i);
            out.add(by, t.volts);
        }
        return out;
    }

    /// A contact with its own scatter, all others typical.
    struct own_scatter {
        double softening_used_high = 0.0;  // drop over softening drop at its 95 % point
        bool melts_high = false;           // at the melting drop there
        double yields = 0.0;               // probability that its drop passes the softening drop
    };
    /// @param part index in the path @param which of its contacts
    [[nodiscard]] own_scatter own_of(std::size_t part, std::size_t which) const
    {
        const loop_network::contact_at& c = net_->parts()[part].contacts[which];
        const term* own = nullptr;
        for (const term& t : terms_)
            if (t.contact == &c) own = &t;
        const double scale = peak_over_mean(c.bulk).slope;
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
                rise += scale * own->mean_rise[c.bulk] * (volts - c.law->volts_at(rise, gripping(c)));
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
    struct term {
        const loop_network::contact_at* contact;  // null for a tip
        std::size_t part;
        scattered_sum::table volts;     // deviation of its drop [V]
        std::vector<double> mean_rise;  // of every node by a volt of it, mean over the period [K/V]
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

    void add_contact(std::size_t part, const loop_network::contact_at& c, const solve::sparse_lu& matrix)
    {
        term t{&c, part, {}, std::vector<double>(net_->network().size(), 0.0)};
        const double rise = bulk_rise(c);
        const double median = c.law->volts_with(c.cold.typical.value(), rise, gripping(c));
        for (std::size_t i = 0; i < scattered_sum::points; ++i)
            t.volts[i] = c.law->alike() *
                         (c.law->volts_with(cold_at(c.cold, scattered_sum::deviations(i)), rise, gripping(c)) - median);
        const solve::heat_network::source& s = net_->network().sources()[c.source];
        heat(t.mean_rise, s, net_->amps());
        matrix.solve(t.mean_rise);
        terms_.push_back(std::move(t));
    }

    void add_tip(std::size_t part, const loop_network::part_at& p, const solve::sparse_lu& matrix)
    {
        term t{nullptr, part, {}, std::vector<double>(net_->network().size(), 0.0)};
        const auto& d = p.constant_drop;
        const auto& e = p.extension;
        for (std::size_t i = 0; i < scattered_sum::points; ++i) {
            const double z = scattered_sum::deviations(i);
            const auto at = [z](const band<voltage>& b) {
                const double typical = b.typical.value();
                if (!(typical > 0.0)) return 0.0;
                const double end = (z > 0.0 ? b.high : b.low).value();
                return typical * (std::pow(end / typical, std::fabs(z) / band_deviations) - 1.0);
            };
            t.volts[i] = at(d);
            extension_[i] = at(e);
        }
        heat(t.mean_rise, net_->network().sources()[p.tip_source], net_->amps() * p.heat_kept);
        matrix.solve(t.mean_rise);
        terms_.push_back(std::move(t));
        // the wire beyond the tip scatters by itself and heats nothing here
        terms_.push_back({nullptr, part, extension_, std::vector<double>(net_->network().size(), 0.0)});
    }

    void heat(std::vector<double>& rise, const solve::heat_network::source& s, double watts) const
    {
        if (s.to != loop_network::nowhere) rise[s.to] += on_share_ * s.share * watts;
        if (s.also_to != loop_network::nowhere) rise[s.also_to] += on_share_ * s.also_share * watts;
    }

    [[nodiscard]] double drop_weight(const term& t, std::size_t part) const
    {
        double by = t.part == part ? 1.0 : 0.0;
        const loop_network::part_at& p = net_->parts()[part];
        for (const loop_network::ohmic_at& o : p.ohmics) by += net_->amps() * o.by_kelvin * t.mean_rise[o.node];
        for (std::size_t k = 0; k < p.contacts.size(); ++k)
            by += volts_by_kelvin_[first_contact_[part] + k] * t.mean_rise[p.contacts[k].bulk];
        return by;
    }

    // How a node's peak follows what the slopes say of its mean: in proportion to the two at first, bent so that the
    // loop with all joints poor comes out as it was solved.
    struct bend {
        double slope = 1.0, bend = 0.0;
    };
    [[nodiscard]] bend peak_over_mean(std::size_t node) const
    {
        const double mean = typical_->mean[node], peak = typical_->peak[node];
        bend out{mean > 0.0 ? peak / mean : 1.0, 0.0};
        if (poor_ == nullptr) return out;
        double predicted = 0.0;
        for (const term& t : terms_) predicted += t.mean_rise[node] * scattered_sum::at(t.volts, band_deviations);
        constexpr double least = 0.3;  // K: less says nothing
        const double shown = poor_->peak[node] - peak;
        if (predicted > least && shown > 0.0) out.bend = (shown / predicted - out.slope) / predicted;
        return out;
    }

    const loop_network* net_;
    const solve::periodic_state* typical_;
    const solve::periodic_state* poor_;
    double on_share_;
    scattered_sum::table extension_{};
    std::vector<double> volts_by_kelvin_;     // of every contact, part by part [V/K]
    std::vector<std::size_t> first_contact_;  // of each part in it
    std::vector<term> terms_;
};

}  // namespace detail

}  // namespace weldloop
