#pragma once
/// @file
/// A number that scatters as the sum of what independent joints do to it.
/// Source: loop_scatter_model.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numbers>
#include <vector>

#include <weldloop/core/band.hpp>

namespace weldloop::detail {

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
    /// How a sum follows Q, the sum of its terms, on either side of zero: slope |Q| (1 + bend |Q|) where the bend is
    /// above zero, slope |Q|/(1 - bend |Q|) where it is below and the sum levels off; and two numbers that it cannot
    /// leave.
    struct shape {
        double slope = 1.0, bend_below = 0.0, bend_above = 0.0;
        double least = -std::numeric_limits<double>::infinity(), most = std::numeric_limits<double>::infinity();
    };
    scattered_sum(double base, const shape& how) : base_(base), how_(how) {}

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

    /// Adds a contact. @param deviation table of what it does, zero at its median
    void add(const table& deviation)
    {
        double mean = 0.0, square = 0.0;
        const table& w = weights();
        for (std::size_t i = 0; i < points; ++i) {
            mean += w[i] * deviation[i];
            square += w[i] * deviation[i] * deviation[i];
        }
        const double variance = std::max(0.0, square - mean * mean);
        if (variance == 0.0 && mean == 0.0) return;
        terms_.push_back({deviation, mean, variance});
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
        if (number < how_.least) return 1.0;
        if (number > how_.most) return 0.0;
        const double x = base_ + unbent(number - base_);
        const double spread = std::sqrt(s.rest_variance);
        const auto beyond = [&](double so_far) {
            const double left = x - base_ - s.rest_mean - so_far;
            return spread > 0.0 ? normal_share(-left / spread) : left < 0.0 ? 1.0 : left == 0.0 ? 0.5 : 0.0;
        };
        const table& w = weights();
        double sum = 0.0;
        for (std::size_t i = 0; i < points; ++i) {
            const double one = s.first->deviation[i];
            if (s.second == nullptr) {
                sum += w[i] * between(*s.first, i, beyond);
                continue;
            }
            double inner = 0.0;
            for (std::size_t k = 0; k < points; ++k) inner += w[k] * beyond(one + s.second->deviation[k]);
            sum += w[i] * inner;
        }
        return std::clamp(sum, 0.0, 1.0);
    }

    /// The 95 % point, or the 5 % point: the terms' own, their distances from the base added as squares. That of one
    /// term, whose table is read along straight lines, within half a percent of its distance from the base; of several,
    /// within 3 points of probability.
    /// @param upper the 95 % point
    [[nodiscard]] double end(bool upper) const
    {
        double squares = 0.0;
        for (const term& t : terms_) {
            const double one = at(t.deviation, band_deviations), other = at(t.deviation, -band_deviations);
            const double distance = upper ? std::max({one, other, 0.0}) : std::min({one, other, 0.0});
            squares += distance * distance;
        }
        return std::clamp(base_ + bent((upper ? 1.0 : -1.0) * std::sqrt(squares)), std::min(base_, how_.least),
                          std::max(base_, how_.most));
    }

    /// The number that the sum stays below with a probability, by narrowing down above(): a thousandth of the distance
    /// from the base.
    /// @param share 0.05 or 0.95, say
    [[nodiscard]] double quantile(double share) const
    {
        if (terms_.empty()) return base_;
        constexpr int pieces = 4096;  // of four times the distance
        const double whole = 4.0 * (end(share > 0.5) - base_);
        const auto place = [&](int piece) { return base_ + whole * piece / pieces; };
        // how far a place is from the share, in the logarithm of the odds, nearly straight out there; above 0 inside
        const auto odds = [](double p) {
            constexpr double least = 1e-12;
            return std::log(std::max(least, p) / std::max(least, 1.0 - p));
        };
        const double sign = share > 0.5 ? 1.0 : -1.0, wanted = odds(share);
        int near = 0, far = pieces, tried = pieces / 4, side = 0;
        double inside = sign * wanted, outside = -(odds(1.0) - sign * wanted);
        while (far - near > 1) {
            const double left = sign * (wanted - odds(1.0 - above(place(tried))));
            const bool is_inside = left > 0.0;
            if (is_inside) {
                near = tried;
                inside = left;
                if (side > 0) outside *= 0.5;  // Illinois: else the other end would stay
            } else {
                far = tried;
                outside = left;
                if (side < 0) inside *= 0.5;
            }
            side = is_inside ? 1 : -1;
            const double part = inside / std::max(inside - outside, 1e-300);
            tried = std::clamp(near + static_cast<int>(std::lround(part * (far - near))), near + 1,
                               std::max(near + 1, far - 1));
        }
        return 0.5 * (place(near) + place(far));
    }

    /// A table at a number of deviations between its ends.
    [[nodiscard]] static double at(const table& deviation, double z)
    {
        const double place = z / step + half_points;
        const auto cell = static_cast<std::size_t>(place);
        return deviation[cell] + (place - static_cast<double>(cell)) * (deviation[cell + 1] - deviation[cell]);
    }

private:
    [[nodiscard]] double bent(double q) const
    {
        const double bend = q > 0.0 ? how_.bend_above : how_.bend_below, far = bend * std::fabs(q);
        return how_.slope * q * (bend > 0.0 ? 1.0 + far : 1.0 / (1.0 - far));
    }
    [[nodiscard]] double unbent(double y) const
    {
        constexpr double beyond = 1e300;
        const double bend = y > 0.0 ? how_.bend_above : how_.bend_below, straight = std::fabs(y) / how_.slope;
        const double far = bend > 0.0               ? 2.0 * straight / (1.0 + std::sqrt(1.0 + 4.0 * bend * straight))
                           : bend * straight > -1.0 ? straight / (1.0 + bend * straight)
                                                    : beyond;
        return std::copysign(far, y);
    }

    struct term {
        table deviation;
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
        const table& d = t.deviation;
        const double here = d[i], before = 0.5 * (d[i > 0 ? i - 1 : i] + here),
                     after = 0.5 * (here + d[i + 1 < points ? i + 1 : i]);
        double sum = 0.0;
        constexpr int parts = 10;
        for (int k = 0; k < parts; ++k) {
            const double u = (k + 0.5) / parts;
            sum += beyond(u < 0.5 ? before + 2.0 * u * (here - before) : here + (2.0 * u - 1.0) * (after - here));
        }
        return sum / parts;
    }

    double base_;
    shape how_ = {};
    std::vector<term> terms_;
};

/// A contact with its scatter.
struct own_scatter {
    double softening_used_high = 0.0;  ///< drop over softening drop at its 95 % point
    bool melts_high = false;           ///< at the melting drop there
    double yields = 0.0;               ///< probability that its drop passes the softening drop
};

/// How the numbers of a solved loop scatter with its joints.
class solved_scatter {
public:
    solved_scatter() = default;
    solved_scatter(const solved_scatter&) = delete;
    solved_scatter& operator=(const solved_scatter&) = delete;
    virtual ~solved_scatter() = default;

    /// The peak of a node [K over the reference].
    [[nodiscard]] virtual scattered_sum peak_of(std::size_t node) const = 0;
    /// Probability that the peak of a node lies above a rise [K].
    [[nodiscard]] virtual double peak_above(std::size_t node, double rise) const { return peak_of(node).above(rise); }
    /// The drop of a part while current flows [V]. @param base its typical drop
    [[nodiscard]] virtual scattered_sum drop_of(std::size_t part, double base) const = 0;
    /// The current of a part [A]. @param base its typical current
    [[nodiscard]] virtual scattered_sum current_of(std::size_t part, double base) const = 0;
    /// The largest current of a way [A]. @param base its typical current
    [[nodiscard]] virtual scattered_sum current_of_way(std::size_t way, double base) const = 0;
    /// The drop of the whole loop [V]. @param base its typical drop
    [[nodiscard]] virtual scattered_sum total_drop(double base) const = 0;
    /// What the contacts of some parts do to the drop [V]. @param from, to the parts, to before the last
    [[nodiscard]] virtual scattered_sum drop_by(std::size_t from, std::size_t to, double base) const = 0;
    /// A contact. @param part index in the path @param which of its contacts
    [[nodiscard]] virtual own_scatter own_of(std::size_t part, std::size_t which) const = 0;
};

}  // namespace weldloop::detail
