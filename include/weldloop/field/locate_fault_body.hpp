#pragma once
/// @file
/// How locate_fault.hpp is answered.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numbers>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/loop_body.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/field/locate_fault.hpp>
#include <weldloop/field/part_candidates.hpp>
#include <weldloop/field/part_ohms.hpp>
#include <weldloop/solve/span_sums.hpp>

namespace weldloop {

namespace detail {

/// A condition of a part with all that is known of it but the readings of sums.
struct weighed_condition {
    candidate what;
    double prior = 0.0;             // of the condition
    solve::distribution ohms = {};  // values with their probabilities within the condition
    solve::distribution told = {};  // the same, weighed by what is known of this part alone
    double cold_share = 1.0;
};

/// A reading of volts as the search takes it.
struct volt_reading {
    std::size_t which = 0;            // number of the observation
    std::size_t first = 0, last = 0;  // parts, by their place in a row of their own
    double ohms = 0.0, spread = 0.0;  // standard deviation
};

class fault_finder {
public:
    fault_finder(const station& s, const std::vector<observation>& observations, const fault_search_settings& settings)
        : settings_(settings), observations_(&observations), station_(s), arc_at_(checked_arc_index(s))
    {
        check();
        set_current();
        loop_solver solver(station_);
        solve::periodic_state found;
        const loop_state state = solver.solve(scatter::typical, &found);
        if (!state.is_solved())
            throw no_solution_error("station", "a loop without a settled state as described",
                                    "a station described as it should be: its faults are what is looked for");
        solver.set(scatter::typical, state);
        const ohms_in_loop in_loop(station_, arc_at_, solver.network(), found);
        conditions_.resize(parts_in(station_));
        is_read_.resize(conditions_.size(), false);
        for (std::size_t p = 0; p < conditions_.size(); ++p) list_conditions(p, in_loop);
        for (const observation& o : observations) std::visit([&](const auto& known) { tell(known, in_loop); }, o);
        for (std::size_t i = 0; i < observations.size(); ++i)
            if (const auto* r = std::get_if<reading>(&observations[i])) volts_.push_back(taken(*r, i));
        sort_layers();
    }

    [[nodiscard]] fault_search found() const
    {
        fault_search out;
        out.crossing = layers_.size() > 1;
        std::vector<solve::distribution> any, sound, apart;
        for (const auto& of_part : conditions_) {
            any.push_back(mixture(of_part, true));
            apart.push_back(mixture(of_part, false));
            sound.push_back(sound_of(of_part));
        }
        std::vector<solve::span_tree> trees;
        double evidence = 1.0, if_sound = 1.0;
        for (std::size_t l = 0; l < layers_.size(); ++l) {
            trees.emplace_back(l == 0 ? any : apart, readings_of(layers_[l]));
            evidence *= trees.back().evidence();
            if_sound *= solve::span_tree(l == 0 ? sound : apart_sound(), readings_of(layers_[l])).evidence();
        }
        // what no reading of volts holds has been told of by itself alone
        for (std::size_t p = 0; p < conditions_.size(); ++p) {
            if (conditions_[p].empty()) continue;
            if_sound *= conditions_[p].front().prior;
            if (!trees.empty() && trees.front().is_read(p)) continue;
            evidence *= solve::weight_of(any[p]);
            if_sound *= solve::weight_of(sound[p]);
        }
        out.none = evidence > 0.0 ? std::clamp(if_sound / evidence, 0.0, 1.0) : 0.0;
        std::vector<posterior> after;
        for (std::size_t p = 0; p < conditions_.size(); ++p) {
            after.push_back(posterior_of(p, trees, any[p]));
            if (conditions_[p].size() > 1) out.parts.push_back(suspected(p, after.back()));
        }
        std::stable_sort(out.parts.begin(), out.parts.end(), [](const suspected_part& a, const suspected_part& b) {
            return a.probability > b.probability;
        });
        out.next = most_telling(after);
        doubt(out, trees, any);
        out.basis.add(fault_search_model).add(fault_rate_judgement).add(usual_meters).add(surface_state_judgement);
        return out;
    }

private:
    struct posterior {
        std::vector<double> of;                   // each condition
        std::vector<solve::distribution> values;  // of each, weighed by everything
    };

    // ---- what was observed

    [[nodiscard]] std::size_t number_of(const std::string& name, std::string_view what) const
    {
        const std::size_t p = place_of(station_, name);
        const path_part& part = part_at(station_, p);
        if (std::holds_alternative<arc>(part) || std::holds_alternative<junction>(part))
            throw bad_station_error(std::string(what), "\"" + name + "\"", "a part between two points, not the arc");
        return p;
    }
    void check() const
    {
        for (const observation& o : *observations_)
            if (const auto* r = std::get_if<reading>(&o)) {
                require_not_negative(r->volts, "reading across " + r->across);
                require_positive(r->current, "current of the reading across " + r->across);
                require_not_negative(r->error, "error of the reading across " + r->across);
            }
        for (std::size_t k = 0; k < settings_.rates.of_kind.size(); ++k)
            require_within(static_cast<double>(settings_.rates.of_kind[k]), 0.0, most_rate, "rate of faults");
        require_not_negative(settings_.meters.volts_floor, "error of the voltmeter");
        require_not_negative(settings_.meters.amps_floor, "error of the ammeter");
        require_not_negative(settings_.meters.ohms_floor, "error of the micro-ohmmeter");
        for (const double share :
             {settings_.meters.volts_share, settings_.meters.amps_share, settings_.meters.ohms_share})
            require_within(share, 0.0, 1.0, "share of a reading that a meter errs by");
    }
    // The loop is solved at the mean current of the readings.
    void set_current()
    {
        current sum;
        int count = 0;
        for (const observation& o : *observations_)
            if (const auto* r = std::get_if<reading>(&o)) {
                sum += r->current;
                ++count;
            }
        if (count > 0 && station_.ways.empty()) station_.job.current = sum / static_cast<double>(count);
    }
    [[nodiscard]] volt_reading taken(const reading& r, std::size_t which) const
    {
        volt_reading out{.which = which};
        out.first = number_of(r.across, "reading across");
        out.last = r.to.empty() ? out.first : number_of(r.to, "reading to");
        const part_address from = address_of(station_, out.first), to = address_of(station_, out.last);
        if (from.way != to.way)
            throw bad_station_error("reading across " + r.across, "a span to \"" + r.to + "\", which is in another way",
                                    "first and last part of one way");
        if (out.first > out.last) std::swap(out.first, out.last);
        if (from.way == part_address::trunk && out.first < arc_at_ && arc_at_ < out.last)
            throw bad_station_error("reading across " + r.across, "a span that holds the arc",
                                    "parts on one side of the arc");
        const double amps = r.current.value();
        out.ohms = r.volts.value() / amps;
        const meters& m = settings_.meters;
        const double volts =
            r.error.value() > 0.0 ? r.error.value() : m.volts_share * r.volts.value() + m.volts_floor.value();
        const double by_amps = m.amps_share + m.amps_floor.value() / amps;
        out.spread = std::hypot(volts / amps, out.ohms * by_amps) / two_sided;
        // what a reading of nothing still cannot tell apart
        out.spread = std::max(out.spread, least_spread);
        return out;
    }

    void list_conditions(std::size_t p, const ohms_in_loop& in_loop)
    {
        const path_part& part = part_at(station_, p);
        if (std::holds_alternative<arc>(part) || std::holds_alternative<junction>(part)) return;
        const auto rate = static_cast<double>(settings_.rates.at(weldloop::kind_of(part)));
        std::vector<candidate> all = candidate_maker(name_of(station_, p))(part);
        double faults = 0.0;
        for (std::size_t c = 1; c < all.size(); ++c) faults += all[c].weight;
        for (std::size_t c = 0; c < all.size(); ++c) {
            weighed_condition w{.what = std::move(all[c])};
            const bool only = faults <= 0.0;
            w.prior = c == 0 ? (only ? 1.0 : 1.0 - rate) : rate * w.what.weight / faults;
            station with = station_;
            part_at(with, p) = w.what.part;
            part_ohms o = in_loop.of(p, part_as_placed(with, p));
            w.ohms = std::move(o.hot);
            w.told = w.ohms;
            w.cold_share = o.cold_share;
            conditions_[p].push_back(std::move(w));
        }
    }

    // ---- what is known of one part alone

    static void weigh(weighed_condition& c, double by)
    {
        for (solve::weighted_value& v : c.told) v.weight *= by;
    }
    // Right in nine of ten; if it is wrong it says nothing.
    [[nodiscard]] static double seen(bool fits) { return fits ? seen_right_share : 1.0 - seen_right_share; }

    void tell(const reading&, const ohms_in_loop&) {}
    void tell(const heat_observation& o, const ohms_in_loop& in_loop)
    {
        const std::size_t p = number_of(o.part, "temperature of");
        require_positive(o.error, "error of the temperature of " + o.part);
        is_read_[p] = true;
        const ohms_in_loop::warmth warm = in_loop.warmth_of(p);
        const double amps = in_loop.amps_through(p), usual = mean_of(conditions_[p].front().ohms);
        const double read = (o.hottest - station_.where.air).value();
        for (weighed_condition& c : conditions_[p])
            for (solve::weighted_value& v : c.told) {
                const double more = amps * amps * (v.at - usual);
                const double rise = warm.by_watt > 0.0 ? warm.peak + warm.by_watt * more
                                                       : warm.peak * (usual > 0.0 ? v.at / usual : 1.0);
                const double spread = std::hypot(o.error.value() / two_sided, heat_model_share * rise);
                v.weight *= mistaken_or(read, rise, spread, heat_range);
            }
    }
    void tell(const four_wire_observation& o, const ohms_in_loop&)
    {
        const std::size_t p = number_of(o.part, "four-wire reading of");
        const double read = require_not_negative(o.ohms, "four-wire reading of " + o.part).value();
        require_not_negative(o.error, "error of the four-wire reading of " + o.part);
        is_read_[p] = true;
        const meters& m = settings_.meters;
        const double error = o.error.value() > 0.0 ? o.error.value() : m.ohms_share * read + m.ohms_floor.value();
        for (weighed_condition& c : conditions_[p])
            for (solve::weighted_value& v : c.told) {
                const double ohms = c.cold_share * v.at;
                const double spread = std::max(least_spread, std::hypot(error / two_sided, cold_model_share * ohms));
                v.weight *= mistaken_or(read, ohms, spread, std::max(read, least_ohms) * decades);
            }
    }
    void tell(const tightness_observation& o, const ohms_in_loop&)
    {
        const std::size_t p = number_of(o.part, "tightness of");
        require_within(o.share, 0.0, 10.0, "tightness of " + o.part);
        is_read_[p] = true;
        constexpr double loose = 0.7;
        for (weighed_condition& c : conditions_[p])
            weigh(c, seen((o.share < loose) == (c.what.signs.tightness < loose)));
    }
    void tell(const surface_observation& o, const ohms_in_loop&)
    {
        const std::size_t p = number_of(o.part, "surface of");
        is_read_[p] = true;
        const std::optional<surface_state> described = conditions_[p].front().what.signs.surface;
        for (weighed_condition& c : conditions_[p])
            weigh(c, seen(c.what.signs.surface.value_or(described.value_or(surface_state::clean)) == o.seen));
    }
    void tell(const strand_observation& o, const ohms_in_loop&)
    {
        const std::size_t p = number_of(o.part, "strands of");
        is_read_[p] = true;
        constexpr double alike = 0.15;
        for (weighed_condition& c : conditions_[p])
            weigh(c, seen(std::fabs(c.what.signs.strands_missing - static_cast<double>(o.missing)) < alike));
    }

    // Density of a reading, or of one that was taken wrongly and could be anything over a range.
    [[nodiscard]] static double mistaken_or(double read, double at, double spread, double range)
    {
        return (1.0 - misread_share) * normal(read, at, spread) + misread_share / range;
    }
    [[nodiscard]] static double normal(double read, double at, double spread)
    {
        const double z = (read - at) / spread;
        return std::exp(-0.5 * z * z) / (spread * std::sqrt(2.0 * std::numbers::pi));
    }
    // Of a reading of volts, in ohm: anything over decades.
    [[nodiscard]] static double mistaken(const volt_reading& r)
    {
        return misread_share / (std::max(r.ohms, least_ohms) * decades);
    }

    // ---- trees

    void sort_layers()
    {
        for (std::size_t r = 0; r < volts_.size(); ++r) {
            for (std::size_t p = volts_[r].first; p <= volts_[r].last; ++p) is_read_[p] = true;
            const solve::span_reading span{.first = volts_[r].first, .last = volts_[r].last};
            const auto fits = [&](const std::vector<std::size_t>& layer) {
                return std::none_of(layer.begin(), layer.end(), [&](std::size_t other) {
                    return solve::cross(span, {.first = volts_[other].first, .last = volts_[other].last});
                });
            };
            const auto layer = std::find_if(layers_.begin(), layers_.end(), fits);
            if (layer == layers_.end())
                layers_.push_back({r});
            else
                layer->push_back(r);
        }
    }
    [[nodiscard]] std::vector<solve::span_reading> readings_of(const std::vector<std::size_t>& layer) const
    {
        std::vector<solve::span_reading> out;
        for (const std::size_t r : layer) {
            const volt_reading& v = volts_[r];
            const double floor = mistaken(v);
            solve::span_reading span{.first = v.first, .last = v.last};
            span.likelihood = [v, floor](double x) {
                if (std::fabs(v.ohms - x) > beyond * v.spread) return floor;
                return (1.0 - misread_share) * normal(v.ohms, x, v.spread) + floor;
            };
            constexpr double fine = 6.0;
            constexpr std::size_t by_octave = 16, most = 256;
            span.grid = {
                .step = v.spread / fine, .fine_to = v.ohms + beyond * v.spread, .by_octave = by_octave, .most = most};
            out.push_back(std::move(span));
        }
        return out;
    }
    [[nodiscard]] static solve::distribution mixture(const std::vector<weighed_condition>& all, bool told)
    {
        if (all.empty()) return {{0.0, 1.0}};
        solve::distribution out;
        for (const weighed_condition& c : all)
            for (const solve::weighted_value& v : told ? c.told : c.ohms) out.push_back({v.at, c.prior * v.weight});
        std::sort(out.begin(), out.end(),
                  [](const solve::weighted_value& a, const solve::weighted_value& b) { return a.at < b.at; });
        return out;
    }
    [[nodiscard]] static solve::distribution sound_of(const std::vector<weighed_condition>& all)
    {
        return all.empty() ? solve::distribution{{0.0, 1.0}} : all.front().told;
    }
    [[nodiscard]] std::vector<solve::distribution> apart_sound() const
    {
        std::vector<solve::distribution> out;
        for (const auto& all : conditions_)
            out.push_back(all.empty() ? solve::distribution{{0.0, 1.0}} : all.front().ohms);
        return out;
    }

    // ---- answers

    // What the readings say of a part, by its resistance: at values as close as they can tell apart, straight between
    // them.
    class told_by_readings {
    public:
        told_by_readings(std::size_t p, const std::vector<solve::span_tree>& trees, const solve::distribution& any)
        {
            for (const solve::span_tree& t : trees) {
                if (!t.is_read(p)) continue;
                const solve::distribution at = solve::shortened(any, t.grid_around(p));
                std::vector<std::pair<double, double>> curve;
                for (const solve::weighted_value& v : at) curve.emplace_back(v.at, t.likelihood_of(p, v.at));
                curves_.push_back(std::move(curve));
            }
        }
        [[nodiscard]] double at(double ohms) const
        {
            double out = 1.0;
            for (const auto& curve : curves_) {
                const auto after = std::lower_bound(curve.begin(), curve.end(), std::pair{ohms, 0.0});
                if (after == curve.end() || after == curve.begin() || after->first == ohms) {
                    out *= after == curve.end() ? curve.back().second : after->second;
                    continue;
                }
                const auto before = after - 1;
                out *= before->second +
                       (ohms - before->first) / (after->first - before->first) * (after->second - before->second);
            }
            return out;
        }

    private:
        std::vector<std::vector<std::pair<double, double>>> curves_;
    };

    [[nodiscard]] posterior posterior_of(std::size_t p, const std::vector<solve::span_tree>& trees,
                                         const solve::distribution& any) const
    {
        posterior out;
        double all = 0.0;
        const told_by_readings readings(p, trees, any);
        for (const weighed_condition& c : conditions_[p]) {
            solve::distribution values = c.told;
            double weight = 0.0;
            for (solve::weighted_value& v : values) {
                v.weight *= c.prior * readings.at(v.at);
                weight += v.weight;
            }
            all += weight;
            out.of.push_back(weight);
            out.values.push_back(std::move(values));
        }
        for (std::size_t c = 0; c < out.of.size(); ++c) {
            if (all > 0.0) {
                out.of[c] /= all;
                for (solve::weighted_value& v : out.values[c]) v.weight /= all;
            } else {
                out.of[c] = conditions_[p][c].prior;
            }
        }
        return out;
    }
    [[nodiscard]] suspected_part suspected(std::size_t p, const posterior& after) const
    {
        suspected_part out;
        out.name = name_of(station_, p);
        std::size_t best = 1;
        double faults = 0.0;
        for (std::size_t c = 1; c < after.of.size(); ++c) {
            faults += after.of[c];
            if (after.of[c] > after.of[best]) best = c;
        }
        const weighed_condition& c = conditions_[p][best];
        out.probability = std::clamp(faults, 0.0, 1.0);
        out.condition = c.what.condition;
        out.condition_share = faults > 0.0 ? std::clamp(after.of[best] / faults, 0.0, 1.0) : 0.0;
        out.remedy.what = c.what.cure;
        out.remedy.part = out.name;
        const double saved = mean_of(after.values[best]) - mean_of(conditions_[p].front().ohms);
        if (saved > 0.0) out.remedy.volts_regained = in_si<resistance>(saved) * station_.job.current;
        out.is_read = is_read_[p];
        return out;
    }
    // Information that a usual reading across each part would give on whether it is at fault.
    [[nodiscard]] std::optional<next_reading> most_telling(const std::vector<posterior>& after) const
    {
        std::optional<next_reading> out;
        const meters& m = settings_.meters;
        const double amps = station_.job.current.value();
        for (std::size_t p = 0; p < after.size(); ++p) {
            if (conditions_[p].size() < 2 || is_read_alone(p)) continue;
            const double relative = std::hypot(m.volts_share, m.amps_share + m.amps_floor.value() / amps) / two_sided;
            const double floor = m.volts_floor.value() / amps;
            const auto cell = [&](double ohms) { return std::floor(std::log(ohms + floor) / (2.0 * relative)); };
            std::vector<std::pair<double, std::pair<double, double>>> cells;  // cell, sound and at fault
            for (std::size_t c = 0; c < after[p].of.size(); ++c)
                for (const solve::weighted_value& v : after[p].values[c])
                    cells.push_back({cell(v.at), c == 0 ? std::pair{v.weight, 0.0} : std::pair{0.0, v.weight}});
            std::sort(cells.begin(), cells.end());
            double sound = 0.0, faulty = 0.0, bits = 0.0;
            for (const auto& c : cells) {
                sound += c.second.first;
                faulty += c.second.second;
            }
            for (std::size_t i = 0; i < cells.size();) {
                double one = 0.0, other = 0.0;
                const double here = cells[i].first;
                for (; i < cells.size() && cells[i].first == here; ++i) {
                    one += cells[i].second.first;
                    other += cells[i].second.second;
                }
                for (const auto& [joint, own] : {std::pair{one, sound}, std::pair{other, faulty}})
                    if (joint > 0.0 && own > 0.0) bits += joint * std::log2(joint / ((one + other) * own));
            }
            if (bits > least_bits && (!out || bits > out->bits))
                out = next_reading{.across = name_of(station_, p), .bits = bits};
        }
        return out;
    }
    [[nodiscard]] bool is_read_alone(std::size_t p) const
    {
        return std::any_of(volts_.begin(), volts_.end(),
                           [p](const volt_reading& v) { return v.first == p && v.last == p; });
    }

    // Readings that may well be taken wrongly; and which other reading each is at odds with.
    void doubt(fault_search& out, const std::vector<solve::span_tree>& trees,
               const std::vector<solve::distribution>& any) const
    {
        for (std::size_t l = 0; l < layers_.size(); ++l)
            for (std::size_t k = 0; k < layers_[l].size(); ++k) {
                const std::size_t r = layers_[l][k];
                const double wrong = wrong_share(trees[l], k, volts_[r]);
                if (wrong < worth_doubting) continue;
                out.doubtful.push_back({.which = volts_[r].which,
                                        .probability = std::clamp(wrong, 0.0, 1.0),
                                        .what = "the reading across " + words_of(r) + " " + trouble(l, k, any)});
            }
        std::sort(out.doubtful.begin(), out.doubtful.end(),
                  [](const doubtful_observation& a, const doubtful_observation& b) { return a.which < b.which; });
    }
    // In words, what a doubtful reading is at odds with: one other reading, several together, or everything.
    [[nodiscard]] std::string trouble(std::size_t l, std::size_t k, const std::vector<solve::distribution>& any) const
    {
        const std::vector<std::size_t>& layer = layers_[l];
        const volt_reading& own = volts_[layer[k]];
        std::vector<std::size_t> apart;  // own reading first, then those that have no part in common with it
        apart.push_back(layer[k]);
        std::string all;
        for (std::size_t q = 0; q < layer.size(); ++q) {
            const volt_reading& other = volts_[layer[q]];
            if (q == k) continue;
            if (other.first > own.last || own.first > other.last) {
                apart.push_back(layer[q]);
                continue;
            }
            std::vector<std::size_t> without{layer[k]};
            for (const std::size_t r : layer)
                if (r != layer[k] && r != layer[q]) without.push_back(r);
            if (wrong_share(solve::span_tree(any, readings_of(without)), 0, own) < worth_doubting)
                return "contradicts that across " + words_of(layer[q]) + ": read both again";
            all.append(all.empty() ? "" : ", ").append(words_of(layer[q]));
        }
        if (!all.empty() && wrong_share(solve::span_tree(any, readings_of(apart)), 0, own) < worth_doubting)
            return "contradicts those across " + all + ": read them again";
        return "fits no condition: check probe, range and name";
    }
    // Probability that a reading was taken wrongly. @param which its number in the tree
    [[nodiscard]] static double wrong_share(const solve::span_tree& tree, std::size_t which, const volt_reading& r)
    {
        const double all = tree.evidence_around(r.first);
        return all > 0.0 ? tree.evidence_if_level(which, mistaken(r)) / all : 1.0;
    }
    [[nodiscard]] std::string words_of(std::size_t r) const
    {
        const auto& known = std::get<reading>((*observations_)[volts_[r].which]);
        return known.across + (known.to.empty() ? "" : " to " + known.to);
    }

    [[nodiscard]] static double mean_of(const solve::distribution& d)
    {
        double sum = 0.0, weight = 0.0;
        for (const solve::weighted_value& v : d) {
            sum += v.at * v.weight;
            weight += v.weight;
        }
        return weight > 0.0 ? sum / weight : 0.0;
    }

    static constexpr double two_sided = 1.959963984540054;  // deviations from the middle to an end of a 95 % interval
    static constexpr double least_spread = 1e-9, least_ohms = 1e-7;
    static constexpr double decades = 16.0;      // natural logarithms: seven decades of ohm
    static constexpr double heat_range = 300.0;  // K
    static constexpr double heat_model_share = 0.1, cold_model_share = 0.01;
    static constexpr double most_rate = 0.9;
    static constexpr double worth_doubting = 0.4;  // two that contradict each other share the blame
    static constexpr double least_bits = 1e-3;
    static constexpr double beyond = 8.0;  // deviations: a reading farther off says nothing of a value

    fault_search_settings settings_;
    const std::vector<observation>* observations_;
    station station_;
    std::size_t arc_at_;
    std::vector<std::vector<weighed_condition>> conditions_;  // of every part; the first as described
    std::vector<bool> is_read_;
    std::vector<volt_reading> volts_;
    std::vector<std::vector<std::size_t>> layers_;  // readings, no two of which cross in one
};

}  // namespace detail

[[nodiscard]] inline fault_search locate_fault(const station& s, const std::vector<observation>& observations,
                                               const fault_search_settings& settings)
{
    return detail::fault_finder(s, observations, settings).found();
}

}  // namespace weldloop
