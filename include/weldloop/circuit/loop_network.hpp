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
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/clamp_network.hpp>
#include <weldloop/circuit/contact_source.hpp>
#include <weldloop/circuit/coupling_behaviour.hpp>
#include <weldloop/circuit/gun_behaviour.hpp>
#include <weldloop/circuit/head_cooling.hpp>
#include <weldloop/circuit/holder_behaviour.hpp>
#include <weldloop/circuit/joint_circuit.hpp>
#include <weldloop/circuit/lead_cells.hpp>
#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/circuit/part_body.hpp>
#include <weldloop/circuit/part_in_path.hpp>
#include <weldloop/circuit/part_place.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/torch_behaviour.hpp>
#include <weldloop/circuit/work_heat.hpp>
#include <weldloop/circuit/work_joint.hpp>
#include <weldloop/solve/heat_network.hpp>

namespace weldloop::detail {

/// A drop that hardly follows the current or the temperature, as heat.
class constant_source final : public solve::heat_law {
public:
    void set(double watts) { watts_ = watts; }
    [[nodiscard]] solve::sloped_by_two at(double, double, bool) const override { return {watts_, 0.0, 0.0}; }

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
    };
    /// A length of metal that makes heat by its resistance: a cell of a lead, a plate.
    struct ohmic_at {
        index node;
        double at_zero, by_kelvin;  // ohm, ohm/K
        double length = 0.0;        // m of a lead
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
        std::size_t tip_source = 0;
        band<voltage> extension = {};
        weldloop::basis basis = {};
    };

    /// @param s the station, its path not empty @param arc_at place of the arc in it
    loop_network(const station& s, std::size_t arc_at)
        : where_(s.where), air_(s.where.air.in_kelvin()), amps_(s.job.current.value()), through_(s.job.current)
    {
        parts_.resize(s.path.size());
        for (std::size_t i = 0; i < s.path.size(); ++i) {
            part_ = &parts_[i];
            before_arc_ = i < arc_at;
            next_joins_ = i + 1 < s.path.size() && joins_the_one_before(s.path[i + 1], i + 1 < arc_at);
            const path_part part = part_in_path(s.path, i);
            std::visit([this](const auto& p) { put(p); }, part);
        }
        net_.close();
    }
    loop_network(const loop_network&) = delete;
    loop_network& operator=(const loop_network&) = delete;

    /// Sets every contact to a point of its scatter. @return false if one is open there
    [[nodiscard]] bool set(scatter level)
    {
        bool closed = true;
        for (part_at& p : parts_) {
            for (contact_at& c : p.contacts) {
                const double cold = pick(c.cold, of_conductance(level)).value();
                closed = closed && cold > 0.0;
                if (cold > 0.0) c.law->set_cold(cold);
            }
            if (p.tip != nullptr) p.tip->set(amps_ * p.heat_kept * pick(p.constant_drop, level).value());
        }
        return closed;
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

    [[nodiscard]] const solve::heat_network& network() const { return net_; }
    [[nodiscard]] const std::vector<part_at>& parts() const { return parts_; }
    [[nodiscard]] double air() const { return air_; }
    [[nodiscard]] double amps() const { return amps_; }
    /// Rises of the coldest boundary: air, and work that is colder.
    [[nodiscard]] std::vector<double> cold() const
    {
        return std::vector<double>(net_.size(), std::min(0.0, coldest_work_));
    }

private:
    // What a neighbour in the path can join.
    struct loose_end {
        index node = nowhere;
        double to_node = 0.0;     // W/K of a lead's half cell; 0: a joint
        double face = 0.0;        // S of a joint's outer face
        part_at* lead = nullptr;  // whose conductor ends here
    };

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
            net_.link(back.node, front.node, shared, true);
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

    const solve::curve_table& table_of(const thermal_body& body)
    {
        for (const auto& [known, table] : tables_)
            if (known.diameter == body.diameter && known.emissivity == body.emissivity) return *table;
        const surroundings around = where_;
        thermal_body like = body;
        auto table = std::make_unique<solve::curve_table>([like, around](double rise) {
            constexpr double coldest = 1.0;  // K; no body comes near it, an iteration may
            const temperature hot = temperature::kelvin(std::max(coldest, around.air.in_kelvin() + rise));
            return body_coefficient(like, hot, around).value();
        });
        tables_.emplace_back(body, std::move(table));
        return *tables_.back().second;
    }

    [[nodiscard]] double rise_of(temperature t) const { return t.in_kelvin() - air_; }

    index body_node(const thermal_body& body, temperature bound)
    {
        const index n = net_.add_node(std::max(body.capacity, least_piece_capacity).value(), rise_of(bound));
        net_.surface(n, body.surface.value(), table_of(body));
        return n;
    }

    struct contact_feel {
        index bulk = nowhere, with = nowhere, follows = nowhere;
        index to = nowhere;
        double share = 1.0;
        index also_to = nowhere;
        double also_share = 0.0;
        int alike = 1;
        bool on_work = false;
        force_follows grip = {};
    };
    contact_at& put_contact(std::string_view word, const band<conductance>& cold, const metal_pair& metals,
                            const contact_feel& f)
    {
        contact_source& source = law<contact_source>(1.0, metals, amps_, air_, f.alike, f.grip);
        net_.add_source({f.bulk, f.with, f.follows, &source, f.to, f.share, f.also_to, f.also_share});
        part_->contacts.push_back({word, cold, &source, net_.sources().size() - 1, f.bulk, f.with, f.follows, f.on_work,
                                   f.on_work ? f.also_to : nowhere});
        return part_->contacts.back();
    }
    contact_at& put_contact(std::string_view word, const band<conductance>& cold, const metal_pair& metals, index body,
                            int alike = 1)
    {
        return put_contact(word, cold, metals, {.bulk = body, .to = body, .alike = alike});
    }

    [[nodiscard]] static temperature melting_of(const metal_pair& m)
    {
        return std::min(m.first.melting, m.second.melting);
    }

    index patch_node(const metal& m, length thickness)
    {
        const double capacity =
            (std::numbers::pi * work_patch_radius * work_patch_radius * thickness * m.heat_per_volume()).value();
        return net_.add_node(capacity, rise_of(m.melting));
    }

    // ---- parts

    // Whether heat passes between a part and the one before it, if that one passes any.
    [[nodiscard]] static bool joins_the_one_before(const path_part& part, bool before_arc)
    {
        const bool is_clamp = std::holds_alternative<work_connection>(part);
        return !std::holds_alternative<arc>(part) && !std::holds_alternative<contact>(part) &&
               !std::holds_alternative<plate>(part) && !(is_clamp && !before_arc);
    }

    lead_cells put_cells(const cable& c, double cooled, const lead_ends& joined = {})
    {
        surfaces_.push_back(std::make_unique<solve::curve_table>(lead_surface_table(c, where_)));
        const lead_cells cells = put_lead(net_, c, where_, *surfaces_.back(), amps_, cooled, joined);
        for (const lead_cells::cell& cell : cells.cells) {
            part_->ohmics.push_back({cell.conductor, cell.at_zero, cell.by_kelvin, cell.length});
            part_->places.push_back({part_place::conductor, cell.conductor});
            part_->places.push_back({part_place::covering, cell.surface});
        }
        part_->basis.add(basis_of(c)).add(lead_cells_model);
        return cells;
    }

    void put(const cable& c)
    {
        foresee_between();
        const lead_cells cells = put_cells(c, 0.0, {end_.node != nowhere, next_joins_});
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

    void put(const lug& l)
    {
        const index body = body_node(lug_body(l.size), melting_of(palm_metals));
        const band<conductance> palm = palm_conductance_of(l);
        put_contact("crimp", crimp_conductance_of(l), crimp_metals, body);
        put_contact("palm", palm, palm_metals, body);
        part_->places.push_back({part_place::metal, body});
        part_->basis.add(crimp_basis_of(l.size.area())).add(underfilled_barrel_judgement).add(palm_basis());
        part_->basis.add(generic_bodies);
        put_body(body, palm.typical.value());
    }

    void put(const coupling& c)
    {
        const contact plug = plug_contact_of(c);
        const index body = body_node(coupling_body(c.size), melting_of(plug.metals));
        const band<conductance> crimp = sound_crimp_conductance_of(c.size.area());
        put_contact("plug", plug_conductance_of(c), plug.metals, body);
        put_contact("crimps", crimp, crimp_metals, body, 2);
        part_->places.push_back({part_place::metal, body});
        part_->basis.add(contact_basis_of(plug)).add(crimp_basis_of(c.size.area())).add(coupling_judgement);
        part_->basis.add(generic_bodies);
        put_body(body, crimp.typical.value());
    }

    void put(const electrode_holder& h)
    {
        const contact jaw = jaw_contact_of(h);
        const holder_bodies bodies = holder_bodies_of(where_);
        const index handle = body_node(bodies.handle, temperature::kelvin(unbounded_kelvin));
        const index core = body_node(bodies.core, melting_of(jaw.metals));
        net_.link(core, handle, bodies.insulation.value());
        const band<conductance> crimp = sound_crimp_conductance_of(h.size.area());
        put_contact("jaws", jaw_conductance_of(h), jaw.metals, core);
        put_contact("crimp", crimp, crimp_metals, core);
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
        net_.sink(head, gas.value(), 0.0, true);
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

    void put(const wire_gun& g)
    {
        const band<conductance> crimp = sound_crimp_conductance_of(g.lead.size.area());
        part_->constant_drop = tip_drop(through_);
        part_->heat_kept = wire_share_kept;
        part_->extension = extension_drop_of(g, through_);
        part_->basis.add(head_cooling).add(head_neck).add(gun_basis_of(g)).add(generic_bodies);
        const index head = put_head(gun_gas_cooling);
        put_contact("crimps", crimp, crimp_metals, head, 2);
        part_->tip = &law<constant_source>();
        net_.add_source({.in = head, .law = part_->tip, .to = head});
        part_->tip_source = net_.sources().size() - 1;
        join_head(head, g.lead, 0.0, crimp.typical.value());
    }

    void put(const tig_torch& t)
    {
        const band<conductance> crimp = sound_crimp_conductance_of(t.lead.size.area());
        part_->basis.add(head_cooling).add(head_neck).add(torch_basis_of(t)).add(generic_bodies);
        const index head = put_head(torch_gas_cooling);
        put_contact("crimps", crimp, crimp_metals, head, 2);
        put_contact("collet", collet_conductance(), collet_metals, head);
        const bool water = t.cooling == torch_cooling::water;
        if (water) part_->basis.add(water_hose_cooling);
        join_head(head, t.lead, water ? water_hose_conductance.value() : 0.0, crimp.typical.value());
    }

    void put(const work_connection& w)
    {
        const clamp_network clamp = clamp_network_of(w, where_);
        const index face = patch_node(w.onto, w.work_thickness);
        const double work = rise_of(clamp.work.work);
        coldest_work_ = std::min(coldest_work_, work);
        net_.sink(face, clamp.work.sink.value(), work);

        std::array<index, clamp_nodes> at{};
        const auto bound_of = [&](clamp_node node) {
            if (node == clamp_node::jaw) return melting_of(clamp.jaw_metals);
            if (node == clamp_node::spring && w.clamp.spring) return clamp.grip_limit;
            return w.clamp.body_metal.melting;
        };
        // the ends of branches first
        for (const clamp_node node :
             {clamp_node::handle, clamp_node::spring, clamp_node::jaw, clamp_node::body, clamp_node::entry}) {
            const auto k = static_cast<std::size_t>(node);
            at[k] = body_node(clamp.bodies[k], bound_of(node));
        }
        const auto node = [&](clamp_node n) { return at[static_cast<std::size_t>(n)]; };
        const index jaw = node(clamp_node::jaw), body = node(clamp_node::body), entry = node(clamp_node::entry);
        net_.link(jaw, body, clamp.jaw_body.value());
        net_.link(body, node(clamp_node::spring), clamp.body_spring.value());
        net_.link(body, node(clamp_node::handle), clamp.body_handle.value());
        net_.link(body, entry, clamp.body_entry.value());
        net_.link(jaw, entry, clamp.jaw_entry.value());

        const index gripping = node(clamp.gripping);
        const double left = std::pow(1.0 - static_cast<double>(w.grip_lost), clamp.force_exponent);
        contact_at& jaws =
            put_contact("jaws", mapped(clamp.jaws, [left](conductance g) { return left * g; }), clamp.jaw_metals,
                        {.bulk = jaw,
                         .follows = clamp.grip.slope.value() > 0.0 ? gripping : nowhere,
                         .to = jaw,
                         .share = 0.5,
                         .also_to = face,
                         .also_share = 0.5,
                         .on_work = true,
                         .grip = {clamp.grip.slope.value(), clamp.grip.power, clamp.force_exponent}});
        net_.link(jaw, face, law<contact_crossing>(*jaws.law, air_, clamp.work.faces.value()), false,
                  clamp.grip.slope.value() > 0.0 ? gripping : nowhere);
        const double arms = static_cast<double>(clamp.arms_share);
        put_contact("cable connection", clamp.termination, clamp.termination_metals,
                    {.bulk = entry, .to = body, .share = arms, .also_to = entry, .also_share = 1.0 - arms});
        if (const double spring = clamp.spring_path.value(); spring > 0.0) {
            const double squared = amps_ * amps_ * spring, alpha = mild_steel.temperature_coefficient.value();
            net_.linear_source(node(clamp_node::spring),
                               squared * (1.0 + alpha * (air_ - reference_temperature.in_kelvin())), squared * alpha);
        }
        part_->places.push_back({part_place::jaws, jaw});
        part_->places.push_back({part_place::arms, body});
        if (w.clamp.spring) part_->places.push_back({part_place::spring, node(clamp_node::spring)});
        if (w.clamp.build.handle.value() > 0.0) part_->places.push_back({part_place::handle, node(clamp_node::handle)});
        part_->places.push_back({part_place::cable_connection, entry});
        part_->places.push_back({part_place::work, face});
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
        const temperature patch = where_.air + in_si<temperature_difference>(usual_patch_rise);
        const index one = patch_node(c.metals.first, usual_work_thickness),
                    other = patch_node(c.metals.second, usual_work_thickness);
        net_.sink(one, plate_sink(c.metals.first, usual_work_thickness, patch, where_).value(), 0.0);
        net_.sink(other, plate_sink(c.metals.second, usual_work_thickness, patch, where_).value(), 0.0);
        contact_at& faces = put_contact("faces", contact_conductance_of(c), c.metals,
                                        {.bulk = one,
                                         .with = other,
                                         .to = one,
                                         .share = 0.5,
                                         .also_to = other,
                                         .also_share = 0.5,
                                         .on_work = true});
        net_.link(one, other, law<contact_crossing>(*faces.law, air_, 0.0), true);
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
        const double cold = (p.metal.resistivity * p.length / (p.width * p.thickness)).value();
        const double alpha = p.metal.temperature_coefficient.value();
        const double at_zero = cold * (1.0 + alpha * (air_ - reference_temperature.in_kelvin()));
        net_.linear_source(node, amps_ * amps_ * at_zero, amps_ * amps_ * cold * alpha);
        part_->ohmics.push_back({node, at_zero, cold * alpha});
        part_->places.push_back({part_place::metal, node});
        part_->basis.add(*p.metal.electrical_source);
        stop_chain();
    }

    void put(const arc&) { stop_chain(); }

    void stop_chain() { end_ = {}; }

    static constexpr double unbounded_kelvin = 1e9;   // of a place whose metal ends nothing
    static constexpr double usual_patch_rise = 20.0;  // K: the film under a patch hardly minds

    surroundings where_;
    double air_, amps_;
    current through_;
    double coldest_work_ = 0.0;
    solve::heat_network net_;
    std::vector<part_at> parts_;
    std::vector<path_link> path_links_;
    std::vector<std::unique_ptr<solve::heat_law>> laws_;
    std::vector<std::pair<thermal_body, std::unique_ptr<solve::curve_table>>> tables_;
    std::vector<std::unique_ptr<solve::curve_table>> surfaces_;
    // while it is built
    part_at* part_ = nullptr;
    loose_end end_;
    index ahead_ = nowhere;  // a place made before it is joined
    bool before_arc_ = true, next_joins_ = false;
};

}  // namespace weldloop::detail
