#pragma once
/// @file
/// How the resistance of a part scatters under a condition, in a loop that was solved as described.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <variant>
#include <vector>

#include <weldloop/circuit/loop_body.hpp>
#include <weldloop/circuit/loop_network.hpp>
#include <weldloop/circuit/loop_scatter.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/solve/periodic_state.hpp>
#include <weldloop/solve/span_sums.hpp>
#include <weldloop/solve/sparse_lu.hpp>

namespace weldloop::detail {

/// The resistance of a part under a condition.
struct part_ohms {
    solve::distribution hot = {};  ///< ohm by their probabilities, under the current of the readings
    double cold_share = 1.0;       ///< its resistance cold and without current over the typical hot one
};

/// A loop as described, solved once, in which parts are put into other conditions. What a contact makes more of heat
/// itself warms it by the slopes of the solved network; what it does to other parts is left out.
class ohms_in_loop {
public:
    /// @param net set to its typical point @param found its solved state there
    ohms_in_loop(const station& s, std::size_t arc_at, const loop_network& net, const solve::periodic_state& found)
        : station_(&s), arc_at_(arc_at), net_(&net), found_(&found), on_share_(static_cast<double>(s.job.duty.share())),
          matrix_(net.network().pattern())
    {
        std::vector<double> gain(net.network().size());
        net.network().evaluate(found.mean, on_share_, gain, &matrix_);
        static_cast<void>(matrix_.eliminate());
    }

    /// @param which number of the part @param part it, in its condition, as its neighbours let it be
    [[nodiscard]] part_ohms of(std::size_t which, const path_part& part) const
    {
        const loop_network::part_at& here = net_->parts()[which];
        const double amps = net_->amps_in(here.branch);
        if (std::holds_alternative<workpiece>(part) || std::holds_alternative<measured_part>(part))
            return of_parts(here, here, amps);
        station alone{.name = {}, .job = station_->job, .where = station_->where};
        alone.path = {part};
        const bool before_arc = address_of(*station_, which).way == part_address::trunk && which < arc_at_;
        const loop_network stretch(alone, before_arc ? 1 : 0);
        return of_parts(here, stretch.parts().front(), amps);
    }

    /// Rise of a part's hottest place by a watt more of its own [K/W], and that rise [K].
    struct warmth {
        double by_watt = 0.0, peak = 0.0;
    };
    [[nodiscard]] warmth warmth_of(std::size_t which) const
    {
        const loop_network::part_at& p = net_->parts()[which];
        warmth out;
        if (p.places.empty()) return out;
        std::size_t hottest = p.places.front().node;
        for (const loop_network::place_at& at : p.places)
            if (at.what != part_place::work && found_->peak[at.node] > found_->peak[hottest]) hottest = at.node;
        out.peak = found_->peak[hottest];
        for (const loop_network::contact_at& c : p.contacts)
            out.by_watt = std::max(out.by_watt, rise_by_watt(c, hottest));
        return out;
    }
    [[nodiscard]] double amps_through(std::size_t which) const { return net_->amps_in(net_->parts()[which].branch); }

private:
    static constexpr double farthest = 4.0;  // deviations: beyond them one in thirty thousand

    [[nodiscard]] double rise_by_watt(const loop_network::contact_at& c, std::size_t at) const
    {
        std::vector<double> heat(net_->network().size(), 0.0);
        const solve::heat_network::source& s = net_->network().sources()[c.source];
        if (s.to != loop_network::nowhere) heat[s.to] += on_share_ * s.share;
        if (s.also_to != loop_network::nowhere) heat[s.also_to] += on_share_ * s.also_share;
        matrix_.solve(heat);
        return heat[at];
    }

    // Resistance of a contact by its deviation, smooth enough to be read off a few points.
    class contact_curve {
    public:
        static constexpr std::size_t points = 9;

        contact_curve(const loop_network::contact_at& c, double rise, double gripping, double by_volt, double amps)
        {
            const double usual = volts(c, c.cold.typical.value(), rise, gripping, amps);
            for (std::size_t i = 0; i < points; ++i) {
                const double cold = loop_scatter::cold_at(c.cold, deviation(i));
                double now = volts(c, cold, rise, gripping, amps);
                for (int k = 0; k < 2; ++k) now = volts(c, cold, rise + by_volt * (now - usual), gripping, amps);
                ln_ohms_[i] = std::log(now / amps);
            }
        }
        [[nodiscard]] double at(double z) const
        {
            const double place = (z + farthest) / (2.0 * farthest) * (points - 1.0);
            const auto i = static_cast<std::size_t>(std::clamp(std::floor(place), 0.0, points - 2.0));
            const double over = place - static_cast<double>(i);
            return std::exp(ln_ohms_[i] + over * (ln_ohms_[i + 1] - ln_ohms_[i]));
        }
        [[nodiscard]] double width() const { return ln_ohms_.back() - ln_ohms_.front(); }

    private:
        [[nodiscard]] static double deviation(std::size_t i)
        {
            return -farthest + 2.0 * farthest * static_cast<double>(i) / (points - 1.0);
        }
        [[nodiscard]] static double volts(const loop_network::contact_at& c, double cold, double rise, double gripping,
                                          double amps)
        {
            contact_source law(cold, c.law->metals(), amps, c.law->air(), 1, c.law->grip());
            return c.law->alike() * law.volts_through(amps, rise, gripping);
        }
        std::array<double, points> ln_ohms_{};
    };

    // Values of a normal deviation and their weights, so many that values of the curve lie closer than readings tell.
    [[nodiscard]] static solve::distribution values_of(const contact_curve& curve, double closest)
    {
        constexpr std::size_t least = 9, most = 321;
        const auto count = std::clamp(static_cast<std::size_t>(curve.width() / closest) | 1u, least, most);
        solve::distribution out;
        double all = 0.0;
        for (std::size_t i = 0; i < count; ++i) {
            const double z = -farthest + 2.0 * farthest * static_cast<double>(i) / static_cast<double>(count - 1);
            out.push_back({curve.at(z), std::exp(-0.5 * z * z)});
            all += out.back().weight;
        }
        for (solve::weighted_value& v : out) v.weight /= all;
        return out;
    }

    [[nodiscard]] part_ohms of_parts(const loop_network::part_at& here, const loop_network::part_at& then,
                                     double amps) const
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
        solve::distribution metal{{cold, 1.0}};
        if (warm > 0.005 * cold) {
            constexpr int steps = 9;
            metal.clear();
            for (int i = 0; i < steps; ++i) metal.push_back({cold + warm * (i + 0.5) / steps, 1.0 / steps});
        }
        std::vector<contact_curve> curves;
        double hot_typical = cold + 0.5 * warm, cold_typical = cold;
        for (std::size_t k = 0; k < then.contacts.size(); ++k) {
            const loop_network::contact_at& c = then.contacts[k];
            const loop_network::contact_at& base = here.contacts[k];
            if (!(c.cold.typical.value() > 0.0)) return {};  // open: no reading is explained by it
            const double rise = loop_network::bulk_rise(base, found_->on_mean);
            const double by_volt = rise_by_watt(base, base.bulk) * amps;
            curves.emplace_back(c, rise, loop_network::gripping_rise(base, found_->on_mean), by_volt, amps);
            hot_typical += curves.back().at(0.0);
            cold_typical += c.law->alike() / c.cold.typical.value();
        }
        if (then.measured) {
            const band<voltage>& drop = then.measured->drop;
            const double usual = then.measured->drop_of(amps).volts / amps;
            hot_typical += usual;
            cold_typical += usual;
            metal = solve::sum_of(metal, values_of_band(drop, usual), grid_for(hot_typical));
        }
        std::sort(curves.begin(), curves.end(),
                  [](const contact_curve& a, const contact_curve& b) { return a.width() > b.width(); });
        constexpr double fine = 0.01, coarse = 0.2;  // of the contact's resistance
        out.hot = std::move(metal);
        for (std::size_t k = 0; k < curves.size(); ++k)
            out.hot = solve::sum_of(out.hot, values_of(curves[k], k == 0 ? fine : coarse), grid_for(hot_typical));
        out.cold_share = hot_typical > 0.0 ? cold_typical / hot_typical : 1.0;
        return out;
    }
    [[nodiscard]] static solve::distribution values_of_band(const band<voltage>& drop, double usual)
    {
        solve::distribution out;
        double all = 0.0;
        const double typical = drop.typical.value();
        if (!(typical > 0.0)) return {{usual, 1.0}};
        constexpr int steps = 65;
        for (int i = 0; i < steps; ++i) {
            const double z = -farthest + 2.0 * farthest * i / (steps - 1.0);
            const double end = (z > 0.0 ? drop.high : drop.low).value() / typical;
            out.push_back(
                {usual * std::pow(std::max(1e-9, end), std::fabs(z) / band_deviations), std::exp(-0.5 * z * z)});
            all += out.back().weight;
        }
        for (solve::weighted_value& v : out) v.weight /= all;
        std::sort(out.begin(), out.end(),
                  [](const solve::weighted_value& a, const solve::weighted_value& b) { return a.at < b.at; });
        return out;
    }
    [[nodiscard]] static double length_of(const loop_network::part_at& p)
    {
        double out = 0.0;
        for (const loop_network::ohmic_at& o : p.ohmics) out += o.length;
        return out;
    }
    [[nodiscard]] static solve::sum_grid grid_for(double typical)
    {
        constexpr double share = 0.005, fine_to = 1.5;
        constexpr std::size_t by_octave = 100, most = 32;
        return {.step = share * typical, .fine_to = fine_to * typical, .by_octave = by_octave, .most = most};
    }

    const station* station_;
    std::size_t arc_at_;
    const loop_network* net_;
    const solve::periodic_state* found_;
    double on_share_;
    solve::sparse_lu matrix_;
};

}  // namespace weldloop::detail
