#pragma once
/// @file
/// A station as one heat network: every part's bodies, contacts and lead cells, joined as they touch. Solver adapter on
/// plain doubles; solve_loop() is what users call.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <memory>
#include <numbers>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/arc_in_work.hpp>
#include <weldloop/circuit/body_tables.hpp>
#include <weldloop/circuit/clamp_network.hpp>
#include <weldloop/circuit/clamp_nodes.hpp>
#include <weldloop/circuit/contact_hold.hpp>
#include <weldloop/circuit/contact_source.hpp>
#include <weldloop/circuit/gun_behaviour.hpp>
#include <weldloop/circuit/head_cooling.hpp>
#include <weldloop/circuit/holder_behaviour.hpp>
#include <weldloop/circuit/joint_circuit.hpp>
#include <weldloop/circuit/lead_cells.hpp>
#include <weldloop/circuit/magnet_network.hpp>
#include <weldloop/circuit/measured_body.hpp>
#include <weldloop/circuit/part_body.hpp>
#include <weldloop/circuit/part_in_path.hpp>
#include <weldloop/circuit/part_place.hpp>
#include <weldloop/circuit/part_sheet.hpp>
#include <weldloop/circuit/sheeted_parts.hpp>
#include <weldloop/circuit/squared_source.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/circuit/torch_behaviour.hpp>
#include <weldloop/circuit/waveform_heating.hpp>
#include <weldloop/circuit/work_heat.hpp>
#include <weldloop/circuit/work_joint.hpp>
#include <weldloop/circuit/workpiece_body.hpp>
#include <weldloop/solve/current_network.hpp>
#include <weldloop/solve/heat_network.hpp>
#include <weldloop/solve/periodic_state.hpp>

namespace weldloop::detail {

/// Heat that hardly follows the current or the temperature: of a level drop, or of the arc.
class constant_source final : public solve::heat_law {
public:
    void set(double watts) { watts_ = watts; }
    [[nodiscard]] solve::sloped_by_two at(double, double, solve::asked) const override { return {watts_, 0.0, 0.0}; }

private:
    double watts_ = 0.0;
};

/// A whole loop, or a stretch of it, under a current.
class loop_network {
public:
    using index = solve::heat_network::index;
    static constexpr index nowhere = solve::heat_network::nowhere;

    /// A contact of a part.
    struct contact_at {
        std::string_view word;      // what it is, for sentences
        band<conductance> cold;     // of each alike [S], at 20 degC, with the force it has
        contact_source* law;        // owned by the network
        std::size_t source;         // its place among the network's sources
        index bulk, with, follows;  // nodes it follows
        bool on_work;               // between jaws and work, or between bare faces
        index across;               // the node beyond its faces, where heat crosses them by its spots; nowhere: none
        std::size_t branch = 0;     // whose current it carries
        contact_hold hold = contact_hold::resting;
        double left = 1.0;  // share of its conductance that time has left, above 0
    };
    /// A length of metal that makes heat by its resistance: a cell of a lead, a plate, a strap.
    struct ohmic_at {
        index node;
        double at_zero, by_kelvin;  // ohm, ohm/K
        double length = 0.0;        // m of a lead
        std::size_t branch = 0;     // whose current it carries
    };
    /// What is known of a part by its drop alone.
    struct measured_at {
        band<voltage> drop;
        double at = 0.0;             // A
        double rises_within = 0.01;  // share of `at` in which a constant drop rises: it has a current at any drop
        bool is_constant = false;
        std::size_t branch = 0;
        double volts = 0.0;              // at `at`, at the point of the scatter that is set
        constant_source* law = nullptr;  // null: its heat goes nowhere that is known

        /// Drop at a current, and its slope.
        [[nodiscard]] solve::drop_at_current drop_of(double amps) const
        {
            const double level = is_constant ? rises_within * at : at, ohms = volts / level;
            if (is_constant && std::fabs(amps) >= level) return {std::copysign(volts, amps), 0.0};
            return {ohms * amps, ohms};
        }
    };
    /// The arc's heat in the piece it burns on.
    struct arc_heat_at {
        arc_in_work what;
        constant_source* heat = nullptr;
        constant_source* over_mean = nullptr;     // as many watts as kelvins, times the conductance of a place
        std::size_t source = 0;                   // of the piece
        std::vector<std::size_t> to_places = {};  // from it to where it is gripped
    };
    struct place_at {
        part_place what;
        index node;
    };
    struct part_at {
        std::vector<contact_at> contacts;
        std::vector<ohmic_at> ohmics;
        std::vector<place_at> places;
        band<voltage> constant_drop = {};  // of a tip
        double heat_kept = 1.0;            // share of that drop's heat that stays in the part
        constant_source* tip = nullptr;
        double tip_volts = 0.0;  // of it, at the point of the scatter that is set
        std::size_t tip_source = 0;
        band<voltage> extension = {};
        std::optional<measured_at> measured = {};
        std::size_t measured_source = 0;
        std::optional<arc_heat_at> arc_heat = {};
        std::size_t branch = 0;  // that carries its current; of a junction or workpiece the one that leads to it
        std::vector<std::size_t> meeting = {};  // of a junction or workpiece: all branches that end there
        bool opened = false;                    // taken as open, whatever it is
        weldloop::basis basis = {};
    };
    /// A length of circuit between two points where ways meet, or between one and a terminal.
    struct branch_at {
        std::size_t from = 0, to = 0;  // points: 0 and 1 are the supply's terminals, then junctions and workpieces
        std::size_t way = part_address::trunk;
        std::vector<std::size_t> parts = {};  // by their number, in order
        bool has_arc = false;
        double amps = 0.0;  // from `from` to `to`
    };

    /// What a network is made for.
    enum class purpose {
        to_solve,  ///< all of it
        to_read,   ///< its parts, contacts and cells as they stand: it is never solved, and its matrix not prepared
    };

    /// @param s the station, its path not empty @param arc_at place of the arc in it
    /// @param opened numbers of parts that are taken as open @param made_for what
    loop_network(const station& s, std::size_t arc_at, const std::vector<std::size_t>& opened = {},
                 purpose made_for = purpose::to_solve)
        : where_(s.where), air_(s.where.air.in_kelvin()), amps_(s.job.current.value()), through_(s.job.current),
          course_(s.job.course && !s.job.course->is_dc() ? s.job.course : std::nullopt), process_(s.job.process),
          tables_(s.where)
    {
        parts_.resize(parts_in(s));
        constexpr std::size_t usual_nodes = 32;  // of a part, leads and joints by turns
        net_.expect(usual_nodes * parts_.size());
        for (const std::size_t i : opened) parts_[i].opened = true;
        find_points(s);
        find_welded(s, arc_at);
        std::size_t place = 0;
        put_path(s.path, part_address::trunk, {terminal_out, nullptr}, {terminal_in, nullptr}, arc_at, place);
        for (std::size_t w = 0; w < s.ways.size(); ++w) {
            is_stray_ = s.ways[w].kind == way_kind::stray;
            put_path(s.ways[w].path, w, point_named(s, s.ways[w].from), point_named(s, s.ways[w].to), 0, place);
        }
        put_points();
        if (s.ways.empty() && s.others.empty())
            put_squares();
        else
            let_currents_change();
        given_.push_back({terminal_out, terminal_in, amps_});
        for (const feed& f : s.others)
            given_.push_back({point_named(s, f.from).number, point_named(s, f.to).number, f.current.value()});
        if (made_for == purpose::to_solve) net_.close();
    }
    loop_network(const loop_network&) = delete;
    loop_network& operator=(const loop_network&) = delete;

    /// Sets every contact to a point of its scatter; open ones stay as they are.
    void set(scatter level)
    {
        for (part_at& p : parts_) {
            for (contact_at& c : p.contacts) {
                const double cold = pick(c.cold, of_conductance(level)).value();
                if (cold > 0.0) c.law->set_cold(cold * c.left);
            }
            p.tip_volts = pick(p.constant_drop, level).value();
            set_tip(p);
            if (p.measured) {
                p.measured->volts = pick(p.measured->drop, level).value();
                set_measured(*p.measured);
            }
            if (p.arc_heat) {
                p.arc_heat->heat->set(pick(p.arc_heat->what.heat, level).value());
                p.arc_heat->over_mean->set(pick(p.arc_heat->what.over_mean, level).value());
            }
        }
    }
    /// Whether current can pass a part at a point of its scatter.
    [[nodiscard]] bool conducts(std::size_t part, scatter level) const
    {
        const part_at& p = parts_[part];
        return !p.opened && std::all_of(p.contacts.begin(), p.contacts.end(), [level](const contact_at& c) {
            return pick(c.cold, of_conductance(level)).value() > 0.0;
        });
    }

    /// Sets the currents of all branches [A], with their signs.
    void set_currents(std::span<const double> amps)
    {
        for (std::size_t b = 0; b < branches_.size(); ++b) branches_[b].amps = amps[b];
        for (part_at& p : parts_) {
            for (contact_at& c : p.contacts) c.law->set_amps(amps_in(c.branch));
            set_tip(p);
            if (p.measured) set_measured(*p.measured);
        }
    }
    /// Lets something set the currents at every state; null: they stay as they are.
    void set_follower(solve::state_follower* f)
    {
        net_.set_follower(f);
        for (part_at& p : parts_)
            for (contact_at& c : p.contacts) c.law->keep_table(f == nullptr);
    }
    /// Current of a branch without its sign, as its contacts have it [A]: one that carries none is warmed by no more
    /// than this.
    [[nodiscard]] double amps_in(std::size_t branch) const
    {
        constexpr double as_good_as_none = 1e-6;  // A: spots keep their conductance for heat
        return std::max(std::fabs(branches_[branch].amps), as_good_as_none);
    }
    [[nodiscard]] const std::vector<branch_at>& branches() const { return branches_; }
    [[nodiscard]] std::size_t points() const { return 2 + points_.size(); }  ///< terminals, junctions, workpieces
    static constexpr std::size_t terminal_out = 0, terminal_in = 1;
    /// Currents that are given: that of this supply, and of others.
    struct given_current {
        std::size_t into, out_of;
        double amps;
    };
    [[nodiscard]] const std::vector<given_current>& given() const { return given_; }

    /// What the loop takes from terminal to terminal, the arc left out [V].
    /// @param volts of every branch, from its first point to its second @param conducts whether a branch does
    template <class Conducts>
    [[nodiscard]] double volts_across(std::span<const double> volts, const Conducts& conducts) const
    {
        std::vector<std::optional<double>> at(points());
        at[terminal_out] = 0.0;
        for (bool moved = true; moved;) {
            moved = false;
            for (std::size_t b = 0; b < branches_.size(); ++b) {
                std::optional<double>&from = at[branches_[b].from], &to = at[branches_[b].to];
                if (from.has_value() == to.has_value() || !conducts(b)) continue;
                if (from)
                    to = *from - volts[b];
                else
                    from = *to + volts[b];
                moved = true;
            }
        }
        return at[terminal_in] ? -*at[terminal_in] : 0.0;
    }

    /// Rise of the metal that a contact's spots sit in.
    [[nodiscard]] static double bulk_rise(const contact_at& c, std::span<const double> rise)
    {
        constexpr double mean_of_two = 0.5;
        return c.with != nowhere ? mean_of_two * (rise[c.bulk] + rise[c.with]) : rise[c.bulk];
    }
    /// Rise of what holds a contact's force.
    [[nodiscard]] static double gripping_rise(const contact_at& c, std::span<const double> rise)
    {
        return c.follows != nowhere ? rise[c.follows] : 0.0;
    }

    /// Heat of a contact in the mean while current flows [W]; of a state without heats that at the mean rises.
    [[nodiscard]] static double watts_of(const contact_at& c, const solve::periodic_state& found)
    {
        if (!found.source_on.empty()) return found.source_on[c.source];
        return c.law->at(bulk_rise(c, found.on_mean), gripping_rise(c, found.on_mean), solve::asked::value).value;
    }

    /// Drop of a branch in the mean while current flows, from its first point to its second [V].
    [[nodiscard]] double volts_of(std::size_t branch, const solve::periodic_state& found) const
    {
        const double amps = branches_[branch].amps;
        double out = 0.0;
        for (const part_at& p : parts_) {
            for (const ohmic_at& o : p.ohmics)
                if (o.branch == branch) out += amps * (o.at_zero + o.by_kelvin * found.on_mean[o.node]);
            for (const contact_at& c : p.contacts)
                if (c.branch == branch) out += amps * watts_of(c, found) / (amps_in(branch) * amps_in(branch));
            if (p.measured && p.measured->branch == branch) out += p.measured->drop_of(amps).volts;
        }
        return out;
    }
    /// Adds the heat [W] that more current in some branches makes in the mean over the period.
    /// @param heat of every node, added to @param rise mean while current flows @param more by how much more, of every
    /// branch [A] @param on_share share of the period with current
    void add_heat_by_current(std::vector<double>& heat, std::span<const double> rise, std::span<const double> more,
                             double on_share) const
    {
        constexpr double step = 1e-6;
        for (const squared_heat& h : squared_) {
            const index node = h.node;
            heat[node] += on_share * 2.0 * branches_[h.branch].amps * h.law.at(rise[node]).ohms * more[h.branch];
        }
        const auto give = [&](std::size_t source, double watts) {
            const solve::heat_network::source& s = net_.sources()[source];
            if (s.to != nowhere) heat[s.to] += on_share * s.share * watts;
            if (s.also_to != nowhere) heat[s.also_to] += on_share * s.also_share * watts;
        };
        for (const part_at& p : parts_)
            for (const contact_at& c : p.contacts) {
                if (more[c.branch] == 0.0) continue;
                const double amps = amps_in(c.branch), at = bulk_rise(c, rise);
                const spot_characteristic law = c.law->characteristic_at(at);
                const double ohms = 1.0 / c.law->conductance_at_rise(at, gripping_rise(c, rise));
                const double now = amps * law.drop(amps * ohms),
                             then = amps * (1.0 + step) * law.drop(amps * (1.0 + step) * ohms);
                give(c.source, c.law->alike() * (then - now) / (step * amps) *
                                   std::copysign(1.0, branches_[c.branch].amps) * more[c.branch]);
            }
        for (const part_at& p : parts_) {
            if (!p.measured || p.measured->law == nullptr) continue;
            const double amps = branches_[p.measured->branch].amps;
            const solve::drop_at_current d = p.measured->drop_of(amps);
            give(p.measured_source, (d.volts + amps * d.slope) * more[p.measured->branch]);
        }
    }
    /// Where a watt of the arc's heat in a piece goes. @param take takes a node and its watts
    template <class Take>
    void for_each_watt(const arc_heat_at& arc, const Take& take) const
    {
        take(net_.sources()[arc.source].to, 1.0);
        for (const std::size_t k : arc.to_places) {
            const solve::heat_network::source& s = net_.sources()[k];
            take(s.to, s.share * arc.what.place.mean);
            take(s.also_to, s.also_share * arc.what.place.mean);
        }
    }
    /// What warmth adds to the drop of a branch [V]. @param rise mean while current flows @param warmer by how much
    [[nodiscard]] double volts_by_warmth(std::size_t branch, std::span<const double> rise,
                                         std::span<const double> warmer) const
    {
        const double amps = branches_[branch].amps, over = amps / (amps_in(branch) * amps_in(branch));
        double out = 0.0;
        for (const part_at& p : parts_) {
            for (const ohmic_at& o : p.ohmics)
                if (o.branch == branch) out += amps * o.by_kelvin * warmer[o.node];
            for (const contact_at& c : p.contacts) {
                if (c.branch != branch) continue;
                const solve::sloped_by_two w =
                    c.law->at(bulk_rise(c, rise), gripping_rise(c, rise), solve::asked::slopes);
                out += over * (w.by_first * bulk_rise(c, warmer) + w.by_second * gripping_rise(c, warmer));
            }
        }
        return out;
    }

    [[nodiscard]] static constexpr scatter of_conductance(scatter of_resistance)
    {
        return of_resistance == scatter::low    ? scatter::high
               : of_resistance == scatter::high ? scatter::low
                                                : scatter::typical;
    }

    /// A link between two parts of the path.
    struct path_link {
        index a, b;
        double conductance;              // W/K; 0 where a law gives it
        const solve::heat_law* by_mean;  // of the mean rise of both
    };
    [[nodiscard]] const std::vector<path_link>& path_links() const { return path_links_; }
    /// Links from patches under contacts to the workpieces they are part of, patch first.
    [[nodiscard]] const std::vector<path_link>& patch_links() const { return patch_links_; }

    [[nodiscard]] const solve::heat_network& network() const { return net_; }
    [[nodiscard]] const std::vector<part_at>& parts() const { return parts_; }
    [[nodiscard]] part_at& part(std::size_t i) { return parts_[i]; }
    [[nodiscard]] double air() const { return air_; }
    [[nodiscard]] double amps() const { return amps_; }
    /// Rises of the coldest boundary: air, and work that is colder.
    [[nodiscard]] std::vector<double> cold() const
    {
        return std::vector<double>(net_.size(), std::min(0.0, coldest_work_));
    }

private:
    // A junction or workpiece: put into the network after all that ends at it.
    struct point {
        std::size_t number = 0;  // among the points
        part_at* part = nullptr;
        const junction* stud = nullptr;
        const workpiece* piece = nullptr;
        std::size_t place = 0;
        std::optional<arc_in_work> arc_heat = {};  // of the piece it burns on
    };
    // What a neighbour in the path can join.
    struct loose_end {
        index node = nowhere;
        double to_node = 0.0;       // W/K of a lead's half cell; 0: a joint
        double face = 0.0;          // S of a joint's outer face
        part_at* lead = nullptr;    // whose conductor ends here
        const point* at = nullptr;  // no node yet: a junction or workpiece
    };
    // What ends at a point; the two meet once the point has its node.
    struct ending {
        const point* at;
        loose_end end;
    };
    // Where a path starts or ends: a terminal, or a point.
    struct path_end {
        std::size_t number;
        const point* at;
    };
    struct squared_heat {
        index node;
        squared_resistance law;
        std::size_t branch;
    };

    void find_points(const station& s)
    {
        for (std::size_t i = 0; i < parts_in(s); ++i) {
            const path_part& part = part_at_place(s, i);
            if (!is_hub(part)) continue;
            points_.push_back(
                {2 + points_.size(), &parts_[i], std::get_if<junction>(&part), std::get_if<workpiece>(&part), i});
        }
    }
    // The piece the arc burns on: beside it in the path.
    void find_welded(const station& s, std::size_t arc_at)
    {
        for (point& p : points_)
            if (p.piece != nullptr && p.place < s.path.size() && (p.place == arc_at + 1 || p.place + 1 == arc_at)) {
                p.arc_heat = arc_heat_in(s, *p.piece);
                return;
            }
    }
    static const path_part& part_at_place(const station& s, std::size_t i) { return weldloop::part_at(s, i); }
    [[nodiscard]] path_end point_named(const station& s, const std::string& name) const
    {
        for (const point& p : points_)
            if (name_of(s, p.place) == name) return {p.number, &p};
        throw bad_station_error("point of the circuit", "\"" + name + "\"", "the name of a junction or workpiece");
    }
    [[nodiscard]] const point* point_at(std::size_t place) const
    {
        for (const point& p : points_)
            if (p.place == place) return &p;
        return nullptr;
    }

    // Puts the heat of resistances by the squares of their currents.
    void put_squares()
    {
        for (const squared_heat& h : squared_)
            if (h.law.yields > 0.0)
                net_.add_source({.in = h.node, .law = &law<squared_source>(amps_, h.law), .to = h.node});
            else
                net_.linear_source(h.node, amps_ * amps_ * h.law.at_zero, amps_ * amps_ * h.law.by_kelvin);
    }
    void let_currents_change()
    {
        for (const squared_heat& h : squared_) {
            const squared_source& law_of = law<squared_source>(branches_[h.branch].amps, h.law);
            net_.add_source({.in = h.node, .law = &law_of, .to = h.node});
        }
    }

    void begin_branch(std::size_t from, std::size_t way)
    {
        branches_.push_back({.from = from, .to = from, .way = way, .amps = amps_});
    }
    [[nodiscard]] std::size_t this_branch() const { return branches_.size() - 1; }

    // A path from one end to the other. @param place number of its first part; of the part after its last one then
    void put_path(const std::vector<path_part>& path, std::size_t way, const path_end& from, const path_end& to,
                  std::size_t arc_at, std::size_t& place)
    {
        const bool is_trunk = way == part_address::trunk;
        end_ = {};
        end_.at = from.at;
        begin_branch(from.number, way);
        for (std::size_t i = 0; i < path.size(); ++i, ++place) {
            part_ = &parts_[place];
            part_->branch = this_branch();
            if (const point* here = point_at(place)) {
                branches_.back().to = here->number;
                join_point(here);
                begin_branch(here->number, way);
                continue;
            }
            branches_.back().parts.push_back(place);
            branches_.back().has_arc = branches_.back().has_arc || std::holds_alternative<arc>(path[i]);
            next_ = i + 1 < path.size() ? point_at(place + 1) : to.at;
            // of a way: the side away from leads and studs is the work's
            before_arc_ = is_trunk ? i < arc_at : !faces_cable(path, i, to);
            next_joins_ =
                next_ != nullptr || (i + 1 < path.size() && joins_the_one_before(path, i + 1, is_trunk, arc_at, to));
            const path_part part = part_in_path(path, i);
            std::visit([this](const auto& p) { put(p); }, part);
        }
        branches_.back().to = to.number;
        if (to.at != nullptr) join_point(to.at);
    }
    // Whether what follows a clamp in a way is its cable's side.
    static bool faces_cable(const std::vector<path_part>& path, std::size_t i, const path_end& to)
    {
        const auto is_work = [](const path_part& p) {
            return std::holds_alternative<workpiece>(p) || std::holds_alternative<contact>(p) ||
                   std::holds_alternative<plate>(p);
        };
        if (i + 1 < path.size()) return !is_work(path[i + 1]);
        return to.at == nullptr || to.at->piece == nullptr;
    }

    // What stands before a point ends at it, and what follows starts there.
    void join_point(const point* here)
    {
        if (end_.node != nowhere) endings_.push_back({here, end_});
        end_ = {};
        end_.at = here;
    }

    void put_points()
    {
        for (const point& p : points_) {
            part_ = p.part;
            for (std::size_t b = 0; b < branches_.size(); ++b)
                if (branches_[b].from == p.number || branches_[b].to == p.number) part_->meeting.push_back(b);
            const index node = p.piece != nullptr ? put_piece(*p.piece) : put_stud(p);
            if (p.arc_heat) put_arc_heat(*p.arc_heat, node);
            part_->places.push_back({part_place::metal, node});
            for (const ending& e : endings_) {
                if (e.at != &p) continue;
                if (e.end.to_node > 0.0) {
                    end_of_lead(e.end, node);
                    net_.link(e.end.node, node, e.end.to_node);
                    path_links_.push_back({e.end.node, node, e.end.to_node, nullptr});
                } else {
                    const shared_face& shared = law<shared_face>(e.end.face, air_);
                    net_.link(e.end.node, node, shared);
                    path_links_.push_back({e.end.node, node, 0.0, &shared});
                }
            }
            for (const patch_on_piece& patch : patches_) {
                if (patch.at != &p) continue;
                const double g = (p.arc_heat ? p.arc_heat->to_patch : patch_to_piece(*p.piece)).value();
                net_.link(patch.node, node, g);
                patch_links_.push_back({patch.node, node, g, nullptr});
                if (p.arc_heat && p.piece->from_weld) put_place(patch.node, node, g);
            }
        }
    }
    // Heat of the arc in the piece it burns on, and what pieces carry away.
    void put_arc_heat(const arc_in_work& what, index node)
    {
        part_->arc_heat =
            arc_heat_at{.what = what, .heat = &law<constant_source>(), .over_mean = &law<constant_source>()};
        net_.sink(node, what.exchange.value(), 0.0);
        net_.add_source({.in = node, .law = part_->arc_heat->heat, .to = node});
        part_->arc_heat->source = net_.sources().size() - 1;
        part_->basis.add(arc_efficiency_basis(process_)).add(load_line_source(process_)).add(pieces_in_turn);
    }
    // A place on that piece: as far above its mean as the weld makes it.
    void put_place(index patch, index node, double g)
    {
        net_.add_source({.in = node,
                         .law = part_->arc_heat->over_mean,
                         .to = patch,
                         .share = g,
                         .also_to = node,
                         .also_share = -g});
        part_->arc_heat->to_places.push_back(net_.sources().size() - 1);
        part_->basis.add(place_on_work).add(conduction_from_the_middle);
    }
    index put_stud(const point& p)
    {
        const index node = net_.add_node(least_piece_capacity.value());
        const bool is_touched = std::any_of(endings_.begin(), endings_.end(), [&p](const ending& e) {
            return e.at == &p && (e.end.to_node > 0.0 || e.end.face > 0.0);
        });
        constexpr double any = 1.0;  // W/K: where nothing of a known temperature touches it, it has that of the air
        if (!is_touched) net_.sink(node, any, 0.0);
        return node;
    }
    index put_piece(const workpiece& piece)
    {
        const index node = body_node(workpiece_body_of(piece), piece.metal.melting);
        const double cold = spreading_resistance_of(piece).value(), alpha = piece.metal.temperature_coefficient.value();
        const double at_zero = cold * (1.0 + alpha * (air_ - reference_temperature.in_kelvin()));
        for (const std::size_t b : part_->meeting) {
            part_->ohmics.push_back({node, at_zero, cold * alpha, 0.0, b});
            squared_.push_back({node, {.at_zero = at_zero, .by_kelvin = cold * alpha}, b});
        }
        part_->basis.add(*piece.metal.electrical_source).add(workpiece_body).add(workpiece_spreading);
        return node;
    }
    // A patch of work under a contact: part of a workpiece beside it, or of a plate without end.
    struct patch_on_piece {
        const point* at;
        index node;
    };
    [[nodiscard]] const point* piece_before() const
    {
        return end_.at != nullptr && end_.at->piece != nullptr ? end_.at : nullptr;
    }
    [[nodiscard]] const point* piece_after() const
    {
        return next_ != nullptr && next_->piece != nullptr ? next_ : nullptr;
    }

    void set_tip(const part_at& p)
    {
        if (p.tip != nullptr) p.tip->set(std::fabs(branches_[p.branch].amps) * p.heat_kept * p.tip_volts);
    }
    void set_measured(measured_at& m)
    {
        if (m.law == nullptr) return;
        const double amps = branches_[m.branch].amps;
        m.law->set(std::fabs(amps * m.drop_of(amps).volts));
    }

    // The end of a lead's conductor is as hot as what it sits in or runs on to.
    static void end_of_lead(const loose_end& end, index node)
    {
        if (end.lead != nullptr) end.lead->places.push_back({part_place::conductor, node});
    }
    // A place between two conductances that has next to no heat of its own.
    index between(index a, double to_a, index b, double to_b)
    {
        const index made_before = std::exchange(ahead_, nowhere);
        const index middle = made_before != nowhere ? made_before : net_.add_node(least_piece_capacity.value());
        net_.link(a, middle, to_a);
        net_.link(middle, b, to_b);
        return middle;
    }

    // Before a lead that begins where another one ends: the place between them stands before its cells in the order of
    // elimination, and the chain goes on without filling.
    void foresee_between()
    {
        if (end_.node != nowhere && end_.to_node > 0.0) ahead_ = net_.add_node(least_piece_capacity.value());
    }

    void join(const loose_end& front)
    {
        const loose_end& back = end_;
        if (back.at != nullptr && front.node != nowhere) {
            endings_.push_back({back.at, front});
            return;
        }
        if (back.node == nowhere || front.node == nowhere) return;
        if (back.to_node > 0.0 && front.to_node > 0.0) {
            const index middle = between(back.node, back.to_node, front.node, front.to_node);
            end_of_lead(back, middle);
            end_of_lead(front, middle);
        } else if (back.to_node > 0.0 || front.to_node > 0.0) {
            const double g = back.to_node + front.to_node;
            end_of_lead(back, front.node);
            end_of_lead(front, back.node);
            net_.link(back.node, front.node, g);
            path_links_.push_back({back.node, front.node, g, nullptr});
        } else {
            const shared_face& shared = law<shared_face>(std::max(back.face, front.face), air_);
            net_.link(back.node, front.node, shared);
            path_links_.push_back({back.node, front.node, 0.0, &shared});
        }
    }
    void join_through(const loose_end& front, const loose_end& back)
    {
        join(front);
        end_ = back;
    }

    template <class Law, class... Args>
    Law& law(Args&&... args)
    {
        auto made = std::make_unique<Law>(std::forward<Args>(args)...);
        Law& out = *made;
        laws_.push_back(std::move(made));
        return out;
    }

    [[nodiscard]] double rise_of(temperature t) const { return t.in_kelvin() - air_; }

    index body_node(const thermal_body& body, temperature bound)
    {
        const index n = net_.add_node(std::max(body.capacity, least_piece_capacity).value(), rise_of(bound));
        net_.surface(n, body.surface.value(), tables_.of(body));
        return n;
    }

    struct contact_feel {
        index bulk = nowhere, with = nowhere, follows = nowhere;
        index to = nowhere;
        double share = 1.0;
        index also_to = nowhere;
        double also_share = 0.0;
        bool on_work = false;
        force_follows grip = {};
    };
    contact_at& put_contact(const sheet_contact& what, const contact_feel& f)
    {
        contact_source& source = law<contact_source>(1.0, what.metals, amps_, air_, what.alike, f.grip);
        net_.add_source({f.bulk, f.with, f.follows, &source, f.to, f.share, f.also_to, f.also_share});
        part_->contacts.push_back({what.word, what.cold, &source, net_.sources().size() - 1, f.bulk, f.with, f.follows,
                                   f.on_work, f.on_work ? f.also_to : nowhere, this_branch(), what.hold});
        return part_->contacts.back();
    }
    contact_at& put_contact(const sheet_contact& what, index body)
    {
        return put_contact(what, {.bulk = body, .to = body});
    }

    [[nodiscard]] static contact_hold hold_of(clamp_kind kind)
    {
        switch (kind) {
        case clamp_kind::spring: return contact_hold::spring;
        case clamp_kind::screw: return contact_hold::screw;
        case clamp_kind::bolted: return contact_hold::bolt;
        }
        return contact_hold::resting;
    }

    // A patch of the work under a part that stands on the work's side of the path, with what it gives its heat to.
    index work_node(const metal& m)
    {
        const index out = patch_node(m, usual_work_thickness);
        cool_patch(out, m, before_arc_ ? piece_after() : piece_before());
        return out;
    }
    void cool_patch(index patch, const metal& m, const point* piece)
    {
        const temperature about = where_.air + in_si<temperature_difference>(usual_patch_rise);
        if (piece != nullptr)
            patches_.push_back({piece, patch});
        else
            net_.sink(patch, plate_sink(m, usual_work_thickness, about, where_).value(), 0.0);
    }
    // A contact whose heat goes half to either side, and crosses it.
    void put_faces(const sheet_contact& what, index one, index other)
    {
        const contact_at& faces = put_contact(what, {.bulk = one,
                                                     .with = other,
                                                     .to = one,
                                                     .share = 0.5,
                                                     .also_to = other,
                                                     .also_share = 0.5,
                                                     .on_work = what.hold == contact_hold::resting});
        net_.link(one, other, law<contact_crossing>(*faces.law, air_, 0.0));
    }

    index patch_node(const metal& m, length thickness)
    {
        const double capacity =
            (std::numbers::pi * work_patch_radius * work_patch_radius * thickness * m.heat_per_volume()).value();
        return net_.add_node(capacity, rise_of(m.melting));
    }

    // ---- parts

    // Whether heat passes between a part and the one before it, if that one passes any.
    [[nodiscard]] static bool joins_the_one_before(const std::vector<path_part>& path, std::size_t i, bool is_trunk,
                                                   std::size_t arc_at, const path_end& to)
    {
        const path_part& part = path[i];
        const bool cable_comes_first = is_trunk ? i < arc_at : !faces_cable(path, i, to);
        const auto* measured = std::get_if<measured_part>(&part);
        return !std::holds_alternative<arc>(part) && !std::holds_alternative<contact>(part) &&
               !std::holds_alternative<plate>(part) && !(measured != nullptr && !measured->cooling_area) &&
               !(holds_the_work(part) && !cable_comes_first);
    }

    lead_cells put_cells(const cable& described, double cooled, const lead_ends& joined = {})
    {
        const cable c = course_ ? lead_under(described, *course_) : described;
        if (course_) part_->basis.add(waveform_calculus).add(bessel_skin_effect);
        surfaces_.push_back(std::make_unique<solve::curve_table>(lead_surface_law(c, where_)));
        const lead_cells cells = put_lead(net_, c, where_, *surfaces_.back(), cooled, joined);
        part_->ohmics.reserve(part_->ohmics.size() + cells.cells.size());
        part_->places.reserve(part_->places.size() + 2 * cells.cells.size() + 2);  // and where its ends sit
        for (const lead_cells::cell& cell : cells.cells) {
            part_->ohmics.push_back({cell.conductor, cell.at_zero, cell.by_kelvin, cell.length, this_branch()});
            squared_.push_back({cell.conductor, {.at_zero = cell.at_zero, .by_kelvin = cell.by_kelvin}, this_branch()});
            part_->places.push_back({part_place::conductor, cell.conductor});
            part_->places.push_back({part_place::covering, cell.surface});
        }
        part_->basis.add(basis_of(c)).add(lead_cells_model).add(surface_basis(surface_of(c, where_), limit_of(c)));
        return cells;
    }

    void put(const cable& c)
    {
        foresee_between();
        const lead_cells cells = put_cells(c, 0.0, {end_.node != nowhere || end_.at != nullptr, next_joins_});
        join_through(begin_of(cells), finish_of(cells));
    }
    [[nodiscard]] loose_end begin_of(const lead_cells& cells) const
    {
        return {cells.cells.front().conductor, cells.begin_conductance, 0.0, part_};
    }
    [[nodiscard]] loose_end finish_of(const lead_cells& cells) const
    {
        return {cells.cells.back().conductor, cells.end_conductance, 0.0, part_};
    }

    // A body of one temperature in the path, at both of whose sides a neighbour may join.
    void put_body(index body, double face) { join_through({body, 0.0, face}, {body, 0.0, face}); }

    // Any part that has a sheet.
    template <has_sheet Part>
    void put(const Part& p)
    {
        const part_sheet sheet = sheet_of(p);
        const index work = sheet.work ? work_node(*sheet.work) : nowhere;
        const index body = body_node(sheet.body, sheet.melting);
        for (const sheet_contact& c : sheet.contacts) {
            if (work == nowhere)
                put_contact(c, body);
            else
                put_faces(c, body, work);
        }
        if (sheet.metal) put_metal(body, *sheet.metal);
        if (sheet.slide) put_slide(body, *sheet.slide);
        part_->places.push_back({part_place::metal, body});
        if (work != nowhere) {
            part_->places.push_back({part_place::work, work});
            part_->basis.add(work_patch).add(fin_equations);
        }
        part_->basis.add(sheet.basis);
        put_body(body, sheet.outer_face.value());
    }
    void put_metal(index body, const sheet_metal& metal)
    {
        const double cold = metal.at_20.value(), alpha = metal.temperature_coefficient.value();
        const double at_zero = cold * (1.0 + alpha * (air_ - reference_temperature.in_kelvin()));
        squared_.push_back({body, {.at_zero = at_zero, .by_kelvin = cold * alpha}, this_branch()});
        part_->ohmics.push_back({body, at_zero, cold * alpha, 0.0, this_branch()});
    }
    void put_slide(index body, const sheet_slide& slide)
    {
        part_->measured = measured_at{.drop = slide.level,
                                      .at = slide.from.value(),
                                      .rises_within = 1.0,
                                      .is_constant = true,
                                      .branch = this_branch()};
        put_measured_heat(body);
    }
    // What is known by its drop alone warms a node.
    void put_measured_heat(index node)
    {
        part_->measured->law = &law<constant_source>();
        net_.add_source({.in = node, .law = part_->measured->law, .to = node});
        part_->measured_source = net_.sources().size() - 1;
    }

    void put(const electrode_holder& h)
    {
        const contact jaw = jaw_contact_of(h);
        const holder_bodies bodies = holder_bodies_of(where_);
        const index handle = body_node(bodies.handle, temperature::kelvin(unbounded_kelvin));
        const index core = body_node(bodies.core, melting_of(jaw.metals));
        net_.link(core, handle, bodies.insulation.value());
        const band<conductance> crimp = sound_crimp_conductance_of(h.size.area());
        put_contact({"jaws", contact_hold::spring, jaw_conductance_of(h), jaw.metals}, core);
        put_contact({"crimp", contact_hold::crimp, crimp, crimp_metals}, core);
        part_->places.push_back({part_place::jaws, core});
        part_->places.push_back({part_place::handle, handle});
        part_->basis.add(contact_basis_of(jaw)).add(crimp_basis_of(h.size.area())).add(holder_judgement);
        part_->basis.add(generic_bodies).add(holder_handle_judgement);
        put_body(core, crimp.typical.value());
    }

    // Head of a gun or torch on the neck of its lead.
    index put_head(thermal_conductance gas)
    {
        const index head = body_node(torch_head_body(), melting_of(crimp_metals));
        net_.sink(head, gas.value(), 0.0, solve::while_current::on);
        part_->places.push_back({part_place::head, head});
        return head;
    }
    void join_head(index head, const cable& lead, double cooled, double face)
    {
        const double neck = neck_conductance_of(lead).value();
        if (before_arc_) foresee_between();
        const lead_cells cells = put_cells(lead, cooled);
        const loose_end begin = begin_of(cells), finish = finish_of(cells), at_head{head, 0.0, face};
        join_through(before_arc_ ? begin : at_head, before_arc_ ? at_head : finish);
        const loose_end& covered_end = before_arc_ ? finish : begin;
        end_of_lead(covered_end, between(covered_end.node, covered_end.to_node, head, neck));
    }

    // What water takes from a lead in its hose [W/(m K)].
    double water_along(torch_cooling cooling)
    {
        if (cooling == torch_cooling::gas) return 0.0;
        part_->basis.add(water_hose_cooling);
        return water_hose_conductance.value();
    }

    void put(const wire_gun& g)
    {
        const band<conductance> crimp = sound_crimp_conductance_of(g.lead.size.area());
        part_->constant_drop = tip_drop(through_);
        part_->heat_kept = wire_share_kept;
        part_->extension = extension_drop_of(g, through_);
        part_->basis.add(head_cooling).add(head_neck).add(gun_basis_of(g)).add(generic_bodies);
        const index head = put_head(gun_gas_cooling);
        put_contact({"crimps", contact_hold::crimp, crimp, crimp_metals, 2}, head);
        part_->tip = &law<constant_source>();
        net_.add_source({.in = head, .law = part_->tip, .to = head});
        part_->tip_source = net_.sources().size() - 1;
        join_head(head, g.lead, water_along(g.cooling), crimp.typical.value());
    }

    void put(const tig_torch& t)
    {
        const band<conductance> crimp = sound_crimp_conductance_of(t.lead.size.area());
        part_->basis.add(head_cooling).add(head_neck).add(torch_basis_of(t)).add(generic_bodies);
        const index head = put_head(torch_gas_cooling);
        put_contact({"crimps", contact_hold::crimp, crimp, crimp_metals, 2}, head);
        put_contact({"collet", contact_hold::screw, collet_conductance(), collet_metals}, head);
        join_head(head, t.lead, water_along(t.cooling), crimp.typical.value());
    }

    void put(const work_connection& w)
    {
        put_on_work(clamp_network_of(w, where_), {"jaws", hold_of(w.clamp.kind)},
                    1.0 - static_cast<double>(w.grip_lost), w.preheat.has_value());
    }
    void put(const work_magnet& m)
    {
        put_on_work(clamp_network_of(m, m.cable, where_, m.work_thickness), {"pad", contact_hold::spring}, 1.0, false);
        // its housing, which is the magnet, stands where a clamp has its arms
        for (place_at& p : part_->places)
            if (p.what == part_place::arms) p.what = part_place::magnet;
    }
    // A clamp or magnet on its work. @param force_left share of its force @param is_hot work kept at a temperature
    void put_on_work(clamp_network clamp, const std::pair<std::string_view, contact_hold>& jaws, double force_left,
                     bool is_hot)
    {
        const point* const piece = is_hot ? nullptr : before_arc_ ? piece_after() : piece_before();
        if (piece != nullptr) clamp.work.sink = {};
        clamp_in_network here = put_clamp(
            net_, clamp, amps_, air_, [this](const thermal_body& b) -> const auto& { return tables_.of(b); });
        coldest_work_ = std::min(coldest_work_, here.work_rise);
        const index jaw = here.at(clamp_node::jaw), entry = here.at(clamp_node::entry);
        const double left = std::pow(force_left, clamp.force_exponent);
        part_->contacts.push_back({jaws.first, mapped(clamp.jaws, [left](conductance g) { return left * g; }),
                                   here.jaws.law.get(), here.jaws.source, jaw, nowhere, here.grip_place, true,
                                   here.face, this_branch(), jaws.second});
        part_->contacts.push_back({"cable connection", clamp.termination, here.termination.law.get(),
                                   here.termination.source, entry, nowhere, nowhere, false, nowhere, this_branch(),
                                   contact_hold::bolt});
        if (here.spring.cold > 0.0) squared_.push_back({here.at(clamp_node::spring), here.spring, this_branch()});
        if (piece != nullptr) patches_.push_back({piece, here.face});
        for (const auto& [what, node] : here.places) part_->places.push_back({what, node});
        laws_.push_back(std::move(here.jaws.law));
        laws_.push_back(std::move(here.crossing));
        if (here.beside) laws_.push_back(std::move(here.beside));
        laws_.push_back(std::move(here.termination.law));
        part_->basis.add(clamp.basis);
        // the work's side of a clamp is the work: no heat passes there to a neighbour
        const loose_end cable_side{entry, 0.0, clamp.termination.typical.value()};
        if (before_arc_)
            join_through(cable_side, {});
        else
            join_through({}, cable_side);
    }

    void put(const contact& c)
    {
        const index one = patch_node(c.metals.first, usual_work_thickness),
                    other = patch_node(c.metals.second, usual_work_thickness);
        cool_patch(one, c.metals.first, piece_before());
        cool_patch(other, c.metals.second, piece_after());
        put_faces({"faces", contact_hold::resting, contact_conductance_of(c), c.metals}, one, other);
        part_->places.push_back({part_place::work, one});
        part_->places.push_back({part_place::work, other});
        part_->basis.add(contact_basis_of(c)).add(work_patch).add(fin_equations);
        stop_chain();
    }

    void put(const plate& p)
    {
        require_positive(p.length, "plate length");
        require_positive(p.width, "plate width");
        require_positive(p.thickness, "plate thickness");
        constexpr double both_faces = 2.0;
        const index node = body_node({.surface = both_faces * p.length * p.width,
                                      .diameter = p.width,
                                      .emissivity = work_emissivity,
                                      .capacity = p.length * p.width * p.thickness * p.metal.heat_per_volume()},
                                     p.metal.melting);
        put_metal(node, {.at_20 = p.metal.resistivity * p.length / (p.width * p.thickness),
                         .temperature_coefficient = p.metal.temperature_coefficient});
        part_->places.push_back({part_place::metal, node});
        part_->basis.add(*p.metal.electrical_source);
        stop_chain();
    }

    void put(const arc&) { stop_chain(); }
    // Points are put when all that ends at them is there.
    void put(const junction&) {}
    void put(const workpiece&) {}

    void put(const measured_part& m)
    {
        require_positive(m.at, "current at which a part was measured");
        require_positive(m.drop.low, "measured drop");
        require_not_negative(m.drop.typical - m.drop.low, "rise from low to typical measured drop");
        require_not_negative(m.drop.high - m.drop.typical, "rise from typical to high measured drop");
        part_->measured = measured_at{.drop = m.drop,
                                      .at = m.at.value(),
                                      .is_constant = m.law == drop_law::constant && !is_stray_,
                                      .branch = this_branch()};
        part_->basis.add(measured_by_user);
        if (!m.cooling_area) {  // what it does not keep or give off at a known rate has no known temperature
            stop_chain();
            return;
        }
        require_positive(*m.cooling_area, "cooling area");
        if (m.mass) require_positive(*m.mass, "mass");
        const thermal_body body = measured_body(*m.cooling_area, m.mass);
        const index node = body_node(body, temperature::kelvin(unbounded_kelvin));
        put_measured_heat(node);
        part_->places.push_back({part_place::metal, node});
        part_->basis.add(measured_part_body);
        put_body(node, (m.at / m.drop.typical).value());
    }

    void stop_chain() { end_ = {}; }

    static constexpr double unbounded_kelvin = 1e9;   // of a place whose metal ends nothing
    static constexpr double usual_patch_rise = 20.0;  // K: the film under a patch hardly minds

    surroundings where_;
    double air_, amps_;
    current through_;
    std::optional<waveform> course_;  // where it is not direct
    process process_;
    double coldest_work_ = 0.0;
    solve::heat_network net_;
    std::vector<part_at> parts_;
    std::vector<path_link> path_links_, patch_links_;
    std::vector<std::unique_ptr<solve::heat_law>> laws_;
    body_tables tables_;
    std::vector<std::unique_ptr<solve::curve_table>> surfaces_;
    std::vector<branch_at> branches_;
    std::vector<given_current> given_;
    std::vector<squared_heat> squared_;
    // while it is built
    std::vector<point> points_;
    std::vector<ending> endings_;
    std::vector<patch_on_piece> patches_;
    part_at* part_ = nullptr;
    loose_end end_;
    const point* next_ = nullptr;  // the junction or workpiece that follows
    bool before_arc_ = true;       // a clamp's cable comes first, its work second
    bool is_stray_ = false;
    index ahead_ = nowhere;    // a place made before it is joined
    bool next_joins_ = false;  // what follows takes heat from a part's end
};

}  // namespace weldloop::detail
