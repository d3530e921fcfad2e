#pragma once
/// @file
/// How clamp_judgement.hpp is answered.

#include <algorithm>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <weldloop/core/number_text.hpp>
#include <weldloop/core/unit_text.hpp>
#include <weldloop/life/clamp_judgement.hpp>
#include <weldloop/life/clamp_life_body.hpp>
#include <weldloop/life/grip_body.hpp>
#include <weldloop/part/sold_clamp.hpp>

namespace weldloop {

namespace detail {

[[nodiscard]] inline const source& family_of(const work_clamp& c)
{
    if (c.kind == clamp_kind::screw) return screw_clamp_family;
    if (c.kind == clamp_kind::bolted) return work_lug_family;
    return c.make == clamp_make::stamped ? stamped_clamp_family
           : c.make == clamp_make::cast  ? cast_clamp_family
                                         : spring_clamp_family;
}

class judged_numbers {
public:
    explicit judged_numbers(const clamp_use& u) : use_(u), as_judged_(marched(u, {}, grip_case::typical)) {}

    [[nodiscard]] std::vector<judged_number> operator()()
    {
        surface();
        clamp();
        network();
        service();
        std::stable_sort(out_.begin(), out_.end(),
                         [](const judged_number& a, const judged_number& b) { return a.effect > b.effect; });
        return std::move(out_);
    }

private:
    using network_change = std::function<void(clamp_network&)>;

    // The typical case, its relaxation at a bound if asked for.
    [[nodiscard]] static judged_end marched(const clamp_use& u, const network_change& change, grip_case relaxing)
    {
        const grip_question q = question_of(u);
        clamp_network n = network_of(q);
        if (change) change(n);
        const clamp_solver solver(n, q.outside.typical, q.load, scatter::typical);
        const grip_ageing ageing(q.joint, q.where, q.service, relaxing,
                                 first_spring_kelvin(q.joint, solver, q.load.duty));
        const ageing_clamp aged(solver, ageing, q.load.duty);
        const grip_march m = grip_marcher(aged, n, q.service, q.horizon)();
        return {{},
                std::clamp(m.left, 0.0, 1.0),
                m.quarter_at ? std::optional(in_si<duration>(*m.quarter_at)) : std::nullopt};
    }

    struct named_end {
        std::string value;
        clamp_use use;
        network_change change = {};
        grip_case relaxing = grip_case::typical;
    };
    void add(std::string what, const source& from, std::string judged, const named_end& one, const named_end& other)
    {
        const auto end = [](const named_end& e) {
            judged_end out = marched(e.use, e.change, e.relaxing);
            out.value = e.value;
            return out;
        };
        judged_number n{std::move(what), &from, std::move(judged), end(one), end(other)};
        const auto [low, high] =
            std::minmax({static_cast<double>(n.one.grip_left), static_cast<double>(n.other.grip_left),
                         static_cast<double>(as_judged_.grip_left)});
        n.effect = high - low;
        out_.push_back(std::move(n));
    }
    // A factor on a number of the network.
    template <class Change>
    void by_factor(std::string what, const source& from, const Change& change)
    {
        constexpr double down = 0.5, up = 2.0;
        add(std::move(what), from, "1", {"0.5 times", use_, [=](clamp_network& n) { change(n, down); }},
            {"2 times", use_, [=](clamp_network& n) { change(n, up); }});
    }
    // A number of the clamp moved by a factor either way.
    template <class Change>
    void by_clamp(std::string what, std::string judged, double factor, const Change& change)
    {
        const auto moved = [&](double by) {
            clamp_use u = use_;
            change(u.joint.clamp, by);
            return u;
        };
        add(std::move(what), family_of(use_.joint.clamp), std::move(judged),
            {number_text(1.0 / factor, 2) + " times", moved(1.0 / factor)},
            {number_text(factor, 3) + " times", moved(factor)});
    }

    void surface()
    {
        const std::optional<band<double>> m = resistance_multiplier(use_.joint.surface);
        if (!m) return;
        const auto scaled = [](double by) {
            return [by](clamp_network& n) {
                n.jaws = mapped(n.jaws, [by](const conductance& g) { return conductance(g / by); });
            };
        };
        add("surface " + std::string(to_text(use_.joint.surface)) + ", contact over clean", surface_state_judgement,
            number_text(m->typical, 3), {number_text(m->low, 3), use_, scaled(m->low / m->typical)},
            {number_text(m->high, 4), use_, scaled(m->high / m->typical)});
    }

    void clamp()
    {
        const work_clamp& c = use_.joint.clamp;
        constexpr double by_stress = 0.1, by_force = 1.4, by_surface = 1.25, dull = 0.9, bright = 0.1;
        if (c.spring) {
            const double now = static_cast<double>(c.spring->stress);
            const auto stressed = [&](double by) {
                clamp_use u = use_;
                u.joint.clamp.spring->stress = std::clamp(now + by, 0.0, 1.0);
                return u;
            };
            add("stress of the spring over its strength", family_of(c), number_text(now, 2),
                {number_text(std::max(0.0, now - by_stress), 2), stressed(-by_stress)},
                {number_text(std::min(1.0, now + by_stress), 2), stressed(by_stress)});
        }
        by_clamp("force at each jaw when new", to_text(c.force, "N"), by_force,
                 [](work_clamp& w, double by) { w.force *= by; });
        by_clamp("metal of the body", to_text(c.body_mass, "kg"), by_force,
                 [](work_clamp& w, double by) { w.body_mass *= by; });
        by_clamp("surface that the air sees", number_text(1e4 * c.body_surface.value(), 3) + " cm2", by_surface,
                 [](work_clamp& w, double by) { w.body_surface *= by; });
        const auto shining = [&](double e) {
            clamp_use u = use_;
            u.joint.clamp.body_emissivity = e;
            return u;
        };
        add("emissivity of the body", family_of(c), number_text(static_cast<double>(c.body_emissivity), 2),
            {number_text(bright, 2), shining(bright)}, {number_text(dull, 2), shining(dull)});
    }

    void network()
    {
        const work_clamp& c = use_.joint.clamp;
        if (c.spring) {
            by_factor("seat of the spring on the arms, heat through it", spring_piece_judgement,
                      [](clamp_network& n, double by) {
                          n.body_spring *= by;
                          n.handle_spring *= by;
                      });
            if (network_of(question_of(use_)).spring_path.value() > 0.0)
                by_factor("heat of the current through the spring", bare_pivot_judgement,
                          [](clamp_network& n, double by) { n.spring_path *= by; });
        }
        // of the termination the share made in the arms, pivot and legs, and the rest
        by_factor(c.inside ? "arms, pivot and legs, resistance" : "arms, resistance",
                  c.inside ? bare_pivot_judgement : family_of(c), [](clamp_network& n, double by) {
                      const double share = static_cast<double>(n.arms_share), whole = 1.0 - share + by * share;
                      n.termination =
                          mapped(n.termination, [&](const conductance& g) { return conductance(g / whole); });
                      n.arms_share = by * share / whole;
                  });
        by_factor("cable connection, resistance", clamp_cable_connection_judgement, [](clamp_network& n, double by) {
            const double share = static_cast<double>(n.arms_share), whole = by * (1.0 - share) + share;
            n.termination = mapped(n.termination, [&](const conductance& g) { return conductance(g / whole); });
            n.arms_share = share / whole;
        });
        by_factor("work as a sink of heat", work_patch, [](clamp_network& n, double by) { n.work.sink *= by; });
        by_factor("air gap between jaw and work, heat through it", pressed_gap,
                  [](clamp_network& n, double by) { n.work.faces *= by; });
        add(c.spring ? "relaxation of the spring, within its bounds" : "bedding and settling of the joint",
            c.spring ? relaxation_widening : bolt_relaxation_judgement, "typical", {"mild", use_, {}, grip_case::kind},
            {"poor", use_, {}, grip_case::harsh});
    }

    void service()
    {
        constexpr double tenth = 0.1, tenfold = 10.0;
        const auto with = [&](const auto& change) {
            clamp_use u = use_;
            change(u.service);
            return u;
        };
        if (use_.service.openings > 0.0) {
            const double now = use_.service.openings;
            add("wear of an opening", reclamping_judgement, "2e-6",
                {"0.1 times", with([&](grip_service& s) { s.openings = tenth * now; })},
                {"10 times", with([&](grip_service& s) { s.openings = std::min(1e4, tenfold * now); })});
        }
        if (use_.service.knocks > 0.0) {
            constexpr double half = 0.5, twice = 2.0;
            const double now = use_.service.knocks;
            add("what a knock adds to the resistance", knock_judgement, "2 %",
                {"1 %", with([&](grip_service& s) { s.knocks = half * now; })},
                {"4 %", with([&](grip_service& s) { s.knocks = std::min(1e4, twice * now); })});
        }
        const work_connection& w = use_.joint;
        if (use_.service.film && (grows_copper_oxide(w.clamp.jaw) || grows_copper_oxide(w.onto)))
            add("film at the spots", clamp_film_judgement, "grows",
                {"none", with([](grip_service& s) { s.film = false; })}, {"grows", use_});
    }

    clamp_use use_;
    judged_end as_judged_;
    std::vector<judged_number> out_;
};

}  // namespace detail

[[nodiscard]] inline std::vector<judged_number> judged_numbers_of(const clamp_use& use)
{
    static_cast<void>(grip_over_time(use));  // refuses what cannot be
    return detail::judged_numbers(use)();
}

}  // namespace weldloop
