#pragma once
/// @file
/// How the resistance of a part scatters under a condition, in a loop that was solved as described.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <variant>
#include <vector>

#include <weldloop/circuit/loop_body.hpp>
#include <weldloop/circuit/loop_network.hpp>
#include <weldloop/circuit/loop_scatter.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/solve/periodic_state.hpp>
#include <weldloop/solve/root.hpp>
#include <weldloop/solve/span_sums.hpp>
#include <weldloop/solve/sparse_lu.hpp>

namespace weldloop::detail {

/// How far above the melting drop of its metals a joint levels off.
inline constexpr source joint_level_judgement{
    "films on faces take volts of their own: a joint that is poor levels off up to a quarter above the drop its metals "
    "would level off at",
    "2026",
    {},
    source_kind::judgement};
/// Share of the drop; see joint_level_judgement.
inline constexpr double level_above = 0.25;

/// The resistance of a part under a condition.
struct part_ohms {
    solve::distribution hot = {};  ///< ohm by their probabilities, in rising order, under the current of the loop
    double cold_share = 1.0;       ///< its resistance cold and without current over the typical hot one
};

/// A loop as described, solved once, in which parts are put into other conditions. What a contact makes more of heat
/// itself warms it by the slopes of the solved network; what it does to other parts is left out.
class ohms_in_loop {
public:
    /// @param net set to its typical point @param found its solved state there
    /// @param closest values of a resistance lie as close as this share of it, 0.001 to 0.05
    ohms_in_loop(const station& s, const loop_network& net, const solve::periodic_state& found, double closest)
        : station_(&s), arc_at_(checked_arc_index(s)), net_(&net), found_(&found),
          on_share_(static_cast<double>(s.job.duty.share())), closest_(closest), matrix_(net.network().pattern())
    {
        std::vector<double> gain(net.network().size());
        net.network().evaluate(found.mean, on_share_, gain, &matrix_);
        static_cast<void>(matrix_.eliminate());
    }

    /// @param which number of the part @param part it, in its condition, as its neighbours let it be
    [[nodiscard]] part_ohms of(std::size_t which, const path_part& part)
    {
        if (which != known_part_) known_.clear();
        known_part_ = which;
        const loop_network::part_at& here = net_->parts()[which];
        const double amps = net_->amps_in(here.branch);
        if (std::holds_alternative<workpiece>(part) || std::holds_alternative<measured_part>(part))
            return of_parts(here, here, amps);
        station alone{.name = {}, .job = station_->job, .where = station_->where};
        alone.path = {part};
        const bool before_arc = address_of(*station_, which).way == part_address::trunk && which < arc_at_;
        loop_network stretch(alone, before_arc ? 1 : 0, {}, loop_network::purpose::to_read);
        stretch.set(scatter::typical);  // the drop of brushes
        return of_parts(here, stretch.parts().front(), amps);
    }

    /// Rise of the hottest place of a part that a probe reaches by a watt more of its contacts [K/W], and that rise
    /// [K].
    struct warmth {
        double by_watt = 0.0, peak = 0.0;
    };
    [[nodiscard]] warmth warmth_of(std::size_t which) const
    {
        const loop_network::part_at& p = net_->parts()[which];
        warmth out;
        std::optional<std::size_t> hottest;
        for (const loop_network::place_at& at : p.places)
            // a lead's conductor lies under its covering
            if (at.what != part_place::work && at.what != part_place::conductor &&
                (!hottest || found_->peak[at.node] > found_->peak[*hottest]))
                hottest = at.node;
        if (!hottest) return out;
        out.peak = found_->peak[*hottest];
        for (const loop_network::contact_at& c : p.contacts)
            out.by_watt = std::max(out.by_watt, rise_by_watt(c.source, *hottest));
        return out;
    }
    [[nodiscard]] double amps_through(std::size_t which) const { return net_->amps_in(net_->parts()[which].branch); }

private:
    static constexpr double farthest = 4.0;  // deviations: beyond them one in thirty thousand

    [[nodiscard]] double rise_by_watt(std::size_t source, std::size_t at) const
    {
        std::vector<double> heat(net_->network().size(), 0.0);
        const solve::heat_network::source& s = net_->network().sources()[source];
        if (s.to != loop_network::nowhere) heat[s.to] += on_share_ * s.share;
        if (s.also_to != loop_network::nowhere) heat[s.also_to] += on_share_ * s.also_share;
        matrix_.solve(heat);
        return heat[at];
    }

    // Where a contact stands in the loop as described.
    struct contact_stand {
        double rise = 0.0, gripping = 0.0, by_volt = 0.0;  // K; K; K a volt more makes
    };
    // Resistance of a contact by its deviation, smooth enough to be read off a few points.
    class contact_curve {
    public:
        static constexpr std::size_t points = 9;

        contact_curve(const loop_network::contact_at& c, const contact_stand& stand, double amps)
        {
            c.law->set_amps(amps);
            const double alike = c.law->alike();
            const auto volts = [&](double cold, double rise) {
                return alike * c.law->volts_with(cold, rise, stand.gripping);
            };
            const double usual = volts(c.cold.typical.value(), stand.rise);
            double rise = stand.rise;
            for (std::size_t i = 0; i < points; ++i) {  // each begins as warm as the one before
                const double cold = loop_scatter::cold_at(c.cold, deviation(i, points));
                const auto warmed = [&](double at) { return stand.rise + stand.by_volt * (volts(cold, at) - usual); };
                const double first = warmed(rise);
                double now = volts(cold, first), second = stand.rise + stand.by_volt * (now - usual);
                if (!(std::fabs(second - first) <= closes_in * std::fabs(first - rise))) {
                    second = settled_rise(warmed, std::min(0.0, stand.rise), c.law->melting_rise());
                    now = volts(cold, second);
                }
                rise = second;
                settled_[i] = std::log(now / amps);
                const double cold_spots =
                    alike * amps * c.law->cold() / (cold * c.law->conductance_at_rise(rise, stand.gripping));
                highest_[i] = settled_[i] + std::log1p(level_above * std::max(0.0, 1.0 - now / cold_spots));
            }
        }
        [[nodiscard]] double typical() const { return std::exp(settled_[points / 2]); }
        [[nodiscard]] double relative_width() const { return settled_.back() - settled_.front(); }
        [[nodiscard]] double width() const { return std::exp(settled_.back()) - std::exp(settled_.front()); }
        /// Values at even deviations, so many between two points, and their weights; where it levels off, at drops from
        /// the least to the highest. @param steps 1 or more @param closest share between values
        [[nodiscard]] solve::distribution values(std::size_t steps, double closest) const
        {
            constexpr double most = 16.0;
            std::array<std::size_t, points - 1> levels{};
            std::size_t all = 1;
            for (std::size_t i = 0; i + 1 < points; ++i) {
                const double apart =
                    std::max(std::fabs(highest_[i] - settled_[i]), std::fabs(highest_[i + 1] - settled_[i + 1]));
                levels[i] = static_cast<std::size_t>(std::clamp(std::ceil(apart / closest), 1.0, most));
                all += steps * levels[i];
            }
            solve::distribution out;
            out.reserve(all);
            for (std::size_t i = 0; i + 1 < points; ++i)
                for (std::size_t l = 0; l < levels[i]; ++l) add_values(out, i, steps, {l, levels[i]});
            out.push_back({std::exp(settled_.back()), std::exp(-0.5 * farthest * farthest)});
            return normalised(std::move(out));
        }

    private:
        struct level {
            std::size_t which, of;
        };
        static constexpr double closes_in = 0.5;  // what is left of a round's change after the next
        // Where warmth and drop agree: a drop that falls as its metal warms may send rounds back and forth. No colder
        // than all else leaves it; at melting nothing drops.
        template <class Warmed>
        [[nodiscard]] static double settled_rise(const Warmed& warmed, double coldest, double melting)
        {
            if (warmed(coldest) <= coldest) return coldest;
            return root_between([&](double rise) { return warmed(rise) - rise; }, coldest, melting,
                                "rise of a contact");
        }
        // From one point to the next, that one left out, at one of the drops it levels off at.
        void add_values(solve::distribution& out, std::size_t i, std::size_t steps, const level& at) const
        {
            const double share = static_cast<double>(at.which) / static_cast<double>(at.of);
            const auto ln_ohms = [&](std::size_t k) { return settled_[k] + share * (highest_[k] - settled_[k]); };
            const double z = deviation(i, points), step = 2.0 * farthest / static_cast<double>((points - 1) * steps);
            // exp(-z^2/2) from one deviation to the next
            double weight = std::exp(-0.5 * z * z) / static_cast<double>(at.of),
                   growth = std::exp(-z * step - 0.5 * step * step), ohms = std::exp(ln_ohms(i));
            const double slower = std::exp(-step * step),
                         ratio = std::exp((ln_ohms(i + 1) - ln_ohms(i)) / static_cast<double>(steps));
            for (std::size_t k = 0; k < steps; ++k) {
                out.push_back({ohms, weight});
                ohms *= ratio;
                weight *= growth;
                growth *= slower;
            }
        }

        std::array<double, points> settled_{},
            highest_{};  // logarithms of ohm: levelled off by its metals, and at most
    };
    [[nodiscard]] static double deviation(std::size_t i, std::size_t of)
    {
        return -farthest + 2.0 * farthest * static_cast<double>(i) / (static_cast<double>(of) - 1.0);
    }

    [[nodiscard]] static solve::distribution normalised(solve::distribution d)
    {
        const double all = solve::weight_of(d);
        for (solve::weighted_value& v : d) v.weight /= all;
        return d;
    }
    // Of a part that was measured.
    [[nodiscard]] static solve::distribution values_of(const band<voltage>& drop, double usual)
    {
        constexpr std::size_t count = 65;
        constexpr double as_good_as_none = 1e-9;  // of the typical drop, where the low end is nothing
        solve::distribution out;
        for (std::size_t i = 0; i < count; ++i) {
            const double z = deviation(i, count), end = ((z > 0.0 ? drop.high : drop.low) / drop.typical).value();
            out.push_back({usual * std::pow(std::max(as_good_as_none, end), std::fabs(z) / band_deviations),
                           std::exp(-0.5 * z * z)});
        }
        return normalised(std::move(out));
    }

    struct known_curve {
        std::size_t contact;
        band<conductance> cold;
        contact_curve curve;
    };
    // Other conditions leave most contacts of a part as they are.
    [[nodiscard]] const contact_curve& curve_of(std::size_t k, const loop_network::contact_at& base,
                                                const loop_network::contact_at& then, double amps)
    {
        for (const known_curve& c : known_)
            if (c.contact == k && c.cold.low == then.cold.low && c.cold.typical == then.cold.typical &&
                c.cold.high == then.cold.high)
                return c.curve;
        const auto same =
            std::find_if(known_.begin(), known_.end(), [k](const known_curve& c) { return c.contact == k; });
        if (same == known_.end()) {
            if (stands_.size() <= k) stands_.resize(k + 1);
            stands_[k] = {.rise = loop_network::bulk_rise(base, found_->on_mean),
                          .gripping = loop_network::gripping_rise(base, found_->on_mean),
                          .by_volt = std::max(0.0, amps * rise_by_watt(base.source, base.bulk))};
        }
        known_.push_back({k, then.cold, contact_curve(then, stands_[k], amps)});
        return known_.back().curve;
    }

    [[nodiscard]] part_ohms of_parts(const loop_network::part_at& here, const loop_network::part_at& then, double amps)
    {
        part_ohms out;
        // metal: what a lead has cold and warm, and anything between, since nobody says how long it has been on
        double cold = 0.0, by_kelvin = 0.0, base_cold = 0.0, base_kelvin = 0.0, base_rise = 0.0;
        for (const loop_network::ohmic_at& o : here.ohmics) {
            base_cold += o.at_zero;
            base_kelvin += o.by_kelvin;
            base_rise += o.by_kelvin * found_->on_mean[o.node];
        }
        for (const loop_network::ohmic_at& o : then.ohmics) {
            cold += o.at_zero;
            by_kelvin += o.by_kelvin;
        }
        const double metres = length_of(here), metres_then = length_of(then);
        const double hotter =
            base_cold > 0.0 && metres > 0.0 && metres_then > 0.0 ? (cold / metres_then) / (base_cold / metres) : 1.0;
        const double warm = base_kelvin > 0.0 ? by_kelvin * hotter * base_rise / base_kelvin : 0.0;
        double hot_typical = cold + 0.5 * warm, cold_typical = cold;
        std::vector<contact_curve> curves;
        for (std::size_t k = 0; k < then.contacts.size(); ++k) {
            const loop_network::contact_at& c = then.contacts[k];
            if (!(c.cold.typical.value() > 0.0)) return {};  // open: no reading is explained by it
            curves.push_back(curve_of(k, here.contacts[k], c, amps));
            hot_typical += curves.back().typical();
            cold_typical += c.law->alike() / c.cold.typical.value();
        }
        const double usual = then.measured ? then.measured->drop_of(amps).volts / amps : 0.0;
        hot_typical += usual;
        cold_typical += usual;
        const double closest = closest_ * hot_typical;
        const auto steps =
            warm > 0.0 ? static_cast<std::size_t>(std::clamp(4.0 * warm / closest, 1.0, most_steps)) : std::size_t{1};
        for (std::size_t i = 0; i < steps; ++i)
            out.hot.push_back({cold + warm * (static_cast<double>(i) + 0.5) / static_cast<double>(steps),
                               1.0 / static_cast<double>(steps)});
        if (then.measured)
            out.hot = solve::sum_of(out.hot, values_of(then.measured->drop, usual), grid_for(hot_typical));
        // the one that scatters most is finely divided; the others shift it
        std::sort(curves.begin(), curves.end(),
                  [](const contact_curve& a, const contact_curve& b) { return a.width() > b.width(); });
        for (std::size_t k = 0; k < curves.size(); ++k) {
            if (curves[k].width() < std::max(closest, hardly_felt * curves.front().width())) {
                for (solve::weighted_value& v : out.hot) v.at += curves[k].typical();
                continue;
            }
            const double fine = curves[k].relative_width() / (closest_ * (contact_curve::points - 1.0));
            const std::size_t between =
                k > 0 ? 1 : static_cast<std::size_t>(std::ceil(std::clamp(fine, 1.0, most_between)));
            const solve::sum_grid grid = grid_for(hot_typical);
            out.hot = solve::sum_of(out.hot, solve::shortened(curves[k].values(between, closest_), grid), grid);
        }
        out.cold_share = hot_typical > 0.0 ? cold_typical / hot_typical : 1.0;
        return out;
    }
    [[nodiscard]] static double length_of(const loop_network::part_at& p)
    {
        double out = 0.0;
        for (const loop_network::ohmic_at& o : p.ohmics) out += o.length;
        return out;
    }
    // Cells of even logarithms, as close as values.
    [[nodiscard]] solve::sum_grid grid_for(double typical) const
    {
        constexpr double least_part = 1.0 / 64.0;  // of a typical one: below it all is one
        constexpr std::size_t most = 32;
        const int doublings_of = static_cast<int>(std::ceil(std::log2(1.0 / closest_)));
        solve::sum_grid out(most);
        return out.cells(least_part * typical, least_part * typical).cells_by_octave(std::clamp(doublings_of, 5, 10));
    }

    static constexpr double hardly_felt = 0.1;    // of the widest: one in a hundred of its deviation
    static constexpr double most_steps = 64.0;    // between a cold lead and a warm one
    static constexpr double most_between = 80.0;  // values between two points of a curve

    const station* station_;
    std::size_t arc_at_;
    const loop_network* net_;
    const solve::periodic_state* found_;
    double on_share_, closest_;
    solve::sparse_lu matrix_;
    std::size_t known_part_ = static_cast<std::size_t>(-1);
    std::vector<known_curve> known_;
    std::vector<contact_stand> stands_;
};

}  // namespace weldloop::detail
