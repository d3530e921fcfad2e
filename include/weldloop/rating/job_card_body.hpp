#pragma once
/// @file
/// How job_card.hpp is answered.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/bolted_face.hpp>
#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/circuit/part_body.hpp>
#include <weldloop/circuit/sheeted_parts.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/bare_copper.hpp>
#include <weldloop/law/bolt.hpp>
#include <weldloop/law/crimp.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/part/work_clamp_standard.hpp>
#include <weldloop/rating/assess_body.hpp>
#include <weldloop/rating/clamp_on_work.hpp>
#include <weldloop/rating/job_card.hpp>
#include <weldloop/rating/lead/cut_back.hpp>
#include <weldloop/rating/probe_reading.hpp>
#include <weldloop/rating/remedies_body.hpp>
#include <weldloop/rating/station_life_body.hpp>
#include <weldloop/rating/usual_size.hpp>

namespace weldloop {

namespace detail {

/// What is known of how a clamp is handled.
enum class clamp_handling {
    not_stated,
    stays,
    carried,  // leads are moved or the fixture shakes, but the clamp is not said to be taken off
    moved
};

[[nodiscard]] inline clamp_handling handling_of(const std::optional<station_service>& service)
{
    if (!service) return clamp_handling::not_stated;
    const grip_service& c = service->clamps;
    if (c.openings > 0.0 || c.drags > 0.0) return clamp_handling::moved;
    const bool is_still = service->joints.motion == joint_motion::still && !(c.knocks > 0.0);
    return is_still ? clamp_handling::stays : clamp_handling::carried;
}

/// Each part as it should be made.
class sound_maker {
public:
    sound_maker(const station& s, std::size_t place, clamp_handling handling)
        : station_(s), place_(place), handling_(handling), series_(family_in_use(s))
    {
    }

    void operator()(cable& c) const
    {
        c.missing_strands = 0.0;
        c.damaged_length = length{};
        c.covering_state = covering_state::whole;
    }
    void operator()(wire_gun& g) const { (*this)(g.lead); }
    void operator()(tig_torch& t) const { (*this)(t.lead); }
    void operator()(lug& l) const
    {
        const cable* lead = cable_beside();
        l.size = lead != nullptr ? lead->size : usual_size(l.size, series_);
        l.stamped = l.size;
        l.missing_strands = 0.0;
        l.bolt_torque = std::max(l.bolt_torque, usual_bolt_torque(l.bolt_diameter));
        l.palm = surface_state::clean;
    }
    void operator()(coupling& c) const
    {
        const auto [before, behind] = leads_beside();
        c.size = before != nullptr && behind != nullptr ? std::max(before->size, behind->size)
                 : before != nullptr                    ? before->size
                 : behind != nullptr                    ? behind->size
                                                        : usual_size(c.size, series_);
        c.force = std::max(c.force, usual_coupling_force(c.size));
        c.surface = surface_state::clean;
    }
    void operator()(electrode_holder& h) const
    {
        const cable* lead = cable_beside();
        h.size = lead != nullptr ? lead->size : usual_size(h.size, series_);
        h.force = std::max(h.force, usual_holder_force(h.rated));
        h.surface = surface_state::clean;
    }
    void operator()(contact& c) const { c.surface = surface_state::clean; }
    void operator()(work_connection& w) const
    {
        w.surface = surface_state::clean;
        w.cable_jaw_surface.reset();
        w.grip_lost = 0.0;
        const cable* lead = nearest_cable(station_, place_);
        if (handling_ == clamp_handling::moved && w.clamp.kind != clamp_kind::screw) {
            w.clamp = screw_clamp(offered_rating_from(w.clamp.rated_current));
        } else if ((handling_ == clamp_handling::stays || w.clamp.kind == clamp_kind::bolted) && lead != nullptr &&
                   lead->size.area() >= smallest_lug * (1.0 - size_rounding) &&
                   lead->size.area() <= largest_lug * (1.0 + size_rounding))
            w.clamp = bolted_work_lug(lead->size);
    }
    void operator()(cable_splice& s) const
    {
        const auto [before, behind] = leads_beside();
        s.first = before != nullptr ? before->size : usual_size(s.first, series_);
        s.second = behind != nullptr ? behind->size : usual_size(s.second, series_);
        s.stamped = std::max(s.first, s.second);
        s.missing_strands = 0.0;
    }
    void operator()(set_screw& s) const
    {
        const cable* lead = cable_beside();
        s.size = lead != nullptr ? lead->size : usual_size(s.size, series_);
        make_sound(s);
    }
    template <has_conditions Part>
    void operator()(Part& p) const
    {
        make_sound(p);
    }
    void operator()(plate&) const {}
    void operator()(arc&) const {}
    void operator()(junction&) const {}
    void operator()(workpiece&) const {}
    void operator()(measured_part&) const {}

private:
    template <has_conditions Part>
    static void make_sound(Part& p)
    {
        const part_conditions<Part> can = conditions_of(p);
        if (can.surface != nullptr) p.*can.surface = surface_state::clean;
        if (can.tightening != nullptr) p.*can.tightening = std::max(p.*can.tightening, can.usual_tightening);
        if (can.missing_strands != nullptr) p.*can.missing_strands = 0.0;
        if (can.pressing != nullptr) p.*can.pressing = std::max(p.*can.pressing, can.usual_pressing);
        if (can.gap != nullptr) p.*can.gap = length{};
    }

    // none where no lead stands there
    [[nodiscard]] std::pair<const cable*, const cable*> leads_beside() const
    {
        const part_address a = address_of(station_, place_);
        const std::vector<path_part>& path = path_at(station_, a);
        return {a.index > 0 ? std::get_if<cable>(&path[a.index - 1]) : nullptr,
                a.index + 1 < path.size() ? std::get_if<cable>(&path[a.index + 1]) : nullptr};
    }
    [[nodiscard]] const cable* cable_beside() const
    {
        const auto [before, behind] = leads_beside();
        return before != nullptr ? before : behind;
    }

    const station& station_;
    std::size_t place_;
    clamp_handling handling_;
    size_family series_;
};

[[nodiscard]] inline station as_to_be_made(const station& s, clamp_handling handling)
{
    station out = s;
    for (std::size_t i = 0; i < parts_in(s); ++i)
        if (!is_stray(s, i)) std::visit(sound_maker(s, i, handling), part_at(out, i));
    return out;
}

/// "as M10", "of 11.1 mm"
[[nodiscard]] inline std::string thread_words(length diameter)
{
    for (const bolt_torque_row& row : electrical_torques)
        if (std::abs(diameter / row.diameter - 1.0) < 0.01) return "M" + number_text(1e3 * row.diameter.value());
    return to_text(diameter, "mm") + " thread";
}

/// Where a clamp on a table belongs.
[[nodiscard]] inline std::optional<clamp_seat> seat_of(const station& s, const assessment& found)
{
    if (!found.conducts) return std::nullopt;
    const std::size_t arc_at = checked_arc_index(s);
    const std::size_t piece =
        arc_at + 1 < s.path.size() && std::holds_alternative<workpiece>(s.path[arc_at + 1]) ? arc_at + 1 : arc_at;
    const std::optional<std::size_t> clamp = clamp_on_table(s, piece);
    if (!clamp) return std::nullopt;
    station moved = s;
    // the clamp keeps its name, also where that comes from its place
    std::get<work_connection>(moved.path[*clamp]).name = name_of(s, *clamp);
    moved.path.erase(moved.path.begin() + static_cast<std::ptrdiff_t>(piece) + 1,
                     moved.path.begin() + static_cast<std::ptrdiff_t>(*clamp));
    const assessment on_part = assess(moved, found.service);
    const auto part_of = [&](const assessment& of) {
        return std::find_if(of.parts.begin(), of.parts.end(),
                            [&](const part_result& p) { return p.name == name_of(s, *clamp); });
    };
    const auto table = part_of(found), part = part_of(on_part);
    if (!on_part.conducts || table == found.parts.end() || part == on_part.parts.end()) return std::nullopt;
    clamp_seat out{.clamp = name_of(s, *clamp),
                   .table_drop = found.total_drop.typical,
                   .part_drop = on_part.total_drop.typical,
                   .table_peak = table->peak_temperature,
                   .part_peak = part->peak_temperature};
    const int on_table = gravity_of(table->verdict), there = gravity_of(part->verdict);
    out.on_the_part = there != on_table ? there < on_table : out.part_drop <= out.table_drop;
    return out;
}

/// Writes the cards of the parts.
class card_writer {
public:
    card_writer(const station& described, const assessment& now, const job_card& card, const station_life& life,
                const std::optional<station_service>& service)
        : described_(described), now_(now), card_(card), life_(life),
          readings_(probe_readings_of(card.made, card.found)), handling_(handling_of(service)),
          motion_(service ? std::optional(service->joints.motion) : std::nullopt), series_(family_in_use(card.made))
    {
    }

    [[nodiscard]] std::optional<part_card> of(std::size_t place)
    {
        place_ = place;
        out_ = {.place = place, .name = name_of(card_.made, place)};
        std::visit([this](const auto& part) { write(part); }, part_at(card_.made, place));
        if (out_.make.empty()) return std::nullopt;
        expected();
        look_again();
        return std::move(out_);
    }

private:
    void line(std::string what, std::string value, const source& from)
    {
        out_.lines.push_back({std::move(what), std::move(value), &from});
    }

    void write(const cable& c)
    {
        constexpr int exact_in_feet = 5;  // it is told in the file's unit, and 15.2 m is not 50 ft
        out_.make = "Lead of " + to_text(c.size) + ", " + to_text(c.length, "m", exact_in_feet) +
                    " one way, covering " + std::string(c.covering.name) + ", whole from end to end; no splice.";
        const conductor_limit limit = conductor_limit_of(c);
        line("conductor, at most", to_text(limit.highest, "degC"), *limit.from);
    }
    void write(const lug& l)
    {
        out_.make = "Permanent crimped lug, stamped " + to_text(l.stamped) + " as the lead in it" + lug_motion_words();
        const area a = l.size.area();
        const std::optional<conductor_size> too_large =
            smallest_size_above(a / std::cbrt(sound_crimp_share.typical), series_);
        line("lead in the barrel",
             to_text(l.size) + " (" + to_text(a, "mm2") + "); a smaller barrel leaves strands outside" +
                 (too_large ? ", one for " + to_text(*too_large) +
                                  " or larger is so under-filled that the crimp typically passes its limit"
                            : std::string()),
             underfilled_barrel_judgement);
        cut_back_lines();
        line("strip",
             "as deep as the barrel, measured on the lug; usual lugs " + to_text(usual_barrel_depth(l.size), "mm", 2),
             generic_bodies);
        line("bare copper",
             "none to be seen: the covering ends at most " + to_text(most_bare_copper, "mm") + " before the barrel",
             bare_copper_judgement);
        line("strands", "every one in the barrel, bright and flexible; none cut to make it fit", termination_practice);
        line("strain relief", "lead held behind the barrel, so that no pull or bend reaches the crimp",
             termination_practice);
        crimp_lines(l.size);
        faces();
        bolt(l.bolt_diameter, l.bolt_torque, thread_state::zinc_plated, 1);
    }
    void write(const coupling& c)
    {
        out_.make = "Coupling for " + to_text(c.size) + ", a crimp on either lead, turned home until it stops.";
        crimp_lines(c.size);
        faces();
    }
    void write(const electrode_holder& h)
    {
        out_.make =
            "Holder for " + to_text(h.rated, "A") + " on a lead of " + to_text(h.size) + "; jaws bright, handle whole.";
        crimp_lines(h.size);
    }
    void write(const work_connection& w)
    {
        if (handling_ == clamp_handling::moved)
            out_.make = "Screw clamp, " + to_text(w.clamp.rated_current, "A") +
                        ": it is taken off and put on, and its force does not hang on a spring that heat relaxes.";
        else if (w.clamp.kind == clamp_kind::bolted)
            out_.make = "Lug bolted to the work, for a lead of " + to_text(w.clamp.largest_cable) + lug_motion_words();
        else if (handling_ == clamp_handling::carried)
            out_.make = "As described, a " + std::string(to_text(w.clamp.kind)) + " for " +
                        to_text(w.clamp.rated_current, "A") +
                        ". It is not left in peace here: hold its lead, so that no pull shifts the jaws.";
        else
            out_.make = "As described, a " + std::string(to_text(w.clamp.kind)) + " for " +
                        to_text(w.clamp.rated_current, "A") +
                        ". Where it is taken off and put on, a screw clamp; where nothing moves it, a lug bolted to "
                        "the work.";
        line("seat",
             w.clamp.kind == clamp_kind::bolted
                 ? "bright metal under the lug, ground just before it is bolted: no scale, rust, paint or spatter"
                 : "bright metal under the jaws, ground each time it is put on: no scale, rust, paint or spatter",
             termination_practice);
        if (w.clamp.kind == clamp_kind::bolted) {
            bolt(usual_work_lug_bolt(w.clamp.largest_cable),
                 usual_bolt_torque(usual_work_lug_bolt(w.clamp.largest_cable)), thread_state::zinc_plated, 1);
        } else {
            if (w.clamp.screw)
                line("screw",
                     to_text(w.clamp.screw->tightened_to, "Nm") + " by hand, " + to_text(w.clamp.force, "N", 2) +
                         " at the jaws",
                     clamp_screw_judgement);
            const current here = current_here().value_or(card_.made.job.current);
            line("drop when new, at most",
                 millivolts(new_clamp_limit * here) + " at " + to_text(here, "A") + " from lead to clean plate, cold",
                 work_clamp_drop_test);
        }
    }
    void write(const contact& c)
    {
        out_.make = "Work pressed on with " + to_text(c.force, "N") + " on bright metal, " + std::to_string(c.points) +
                    (c.points == 1 ? " point" : " points") + " bearing.";
        faces();
    }
    void write(const stud_terminal& s)
    {
        out_.make = "Stud with " + std::to_string(s.lugs) + (s.lugs == 1 ? " lug" : " lugs") + " under its nut.";
        faces();
        bolt(s.diameter, s.tightening, s.thread, 1);
    }
    void write(const strap& s)
    {
        out_.make = "Strap of " + to_text(s.section, "mm2") + ", " + to_text(s.length, "mm") + ", bolted at both ends.";
        faces();
        bolt(s.bolt_diameter, s.tightening, s.thread, s.bolts);
    }
    void write(const set_screw& s)
    {
        out_.make = "Lead of " + to_text(s.size) + " under a set screw" +
                    (s.ferrule ? ", a ferrule over its strands." : "; a crimped lug is better where nothing moves.");
        bolt(s.screw_diameter, s.tightening, s.thread, 1);
    }
    void write(const cable_splice& s)
    {
        out_.make = "Crimped sleeve stamped " + to_text(s.stamped) + " between " + to_text(s.first) + " and " +
                    to_text(s.second) + ", insulated; none within 10 ft (3 m) of the holder or gun.";
        crimp_lines(s.first);
    }
    void write(const rotary_ground& g)
    {
        out_.make =
            "Rotary ground with every " + std::string(g.brush ? "brush" : "finger") + " bearing on a bright ring.";
        line("ring",
             g.brush ? "bright and round; brushes free in their holders and bedded to it over their whole face"
                     : "bright and round; fingers bright where they slide, each pressing",
             rotary_ground_practice);
    }
    void write(const work_magnet&)
    {
        out_.make = "Magnet on bright, flat metal without scale, nothing under it.";
        faces();
    }
    void write(const spring_pad&)
    {
        out_.make = "Spring pad bearing on bright metal over its whole face.";
        faces();
    }
    void write(const wire_gun& g)
    {
        out_.make =
            "Gun with " + like_words(g.lead.size) + " in its cable, plug turned home, tip tight and its bore round.";
    }
    void write(const tig_torch& t)
    {
        out_.make = "Torch with " + like_words(t.lead.size) + " in its cable, connection tight, collet clean.";
    }
    void write(const plate&) {}
    void write(const arc&) {}
    void write(const junction&) {}
    void write(const workpiece&) {}
    void write(const measured_part&) {}

    [[nodiscard]] static std::string millivolts(voltage v) { return to_text(v, "mV", 2); }
    /// "735 mV", "1.8 mV to 6.4 mV"
    [[nodiscard]] static std::string millivolts(const band<voltage>& v)
    {
        constexpr double as_one = 0.01;  // a band no meter of the shop resolves
        const std::string low = millivolts(v.low), high = millivolts(v.high);
        return v.high - v.low <= as_one * v.typical ? millivolts(v.typical) : low == high ? high : low + " to " + high;
    }
    /// Typically through the part; where nothing is solved that of the job, if all of it must pass here.
    [[nodiscard]] std::optional<current> current_here() const
    {
        for (const probe_reading& r : readings_)
            if (r.place == place_) return r.current.typical;
        if (card_.made.ways.empty() && card_.made.others.empty()) return card_.made.job.current;
        return std::nullopt;
    }
    /// A size inside a bought part, in the series in use.
    [[nodiscard]] std::string like_words(const conductor_size& size) const
    {
        const conductor_size usual = usual_size(size, series_);
        return usual == size ? to_text(size) : "about " + to_text(usual);
    }
    /// What the end of a lug's sentence says of being moved.
    [[nodiscard]] std::string lug_motion_words() const
    {
        if (!motion_) return ".";
        if (*motion_ == joint_motion::moved)
            return ". Its lead is carried about: hold it behind the barrel, so that no pull turns the palm or bends "
                   "the "
                   "crimp.";
        if (*motion_ == joint_motion::shaken)
            return ". It is shaken: lock the nut, and hold the lead behind the barrel.";
        return ": nothing moves here.";
    }
    [[nodiscard]] static length usual_work_lug_bolt(const conductor_size& size)
    {
        return size.area() <= largest_m8_lug * (1.0 + size_rounding)    ? 8_mm
               : size.area() <= largest_m10_lug * (1.0 + size_rounding) ? 10_mm
                                                                        : 12_mm;
    }

    void faces() { line("faces", "bright metal, made so just before they meet", termination_practice); }

    void bolt(length diameter, torque tightening, thread_state thread, int count)
    {
        const band<force> f = bolt_force(tightening, thread, diameter);
        const bool is_published =
            std::any_of(electrical_torques.begin(), electrical_torques.end(), [&](const auto& row) {
                return std::abs(diameter / row.diameter - 1.0) < 0.01 && row.torque == tightening;
            });
        line("torque",
             to_text(tightening, "Nm") + " on " + (count == 1 ? std::string("the ") : "each ") +
                 thread_words(diameter) + " (" + std::string(to_text(thread)) +
                 (thread == thread_state::oiled || thread == thread_state::anti_seize ? ")" : ", not oiled)"),
             is_published ? electrical_torque_table : card_torque_stated);
        line("force of that",
             to_text(f.typical, "kN", 2) + ", from bolt to bolt " + to_text(f.low, "kN", 2) + " to " +
                 to_text(f.high, "kN", 2),
             *nut_factor(thread).from);
    }

    // At the table's own current for the size: the next row.
    void crimp_lines(const conductor_size& size)
    {
        const crimp_limit limit = crimp_limit_of(size.area());
        const crimp_limit_row* row = &crimp_limits.front();
        for (const crimp_limit_row& next : crimp_limits)
            if (next.size.area() <= size.area() * (1.0 + size_rounding)) row = &next;
        const std::optional<current> here = current_here();
        line("crimp, at most",
             millivolts(limit.resistance * row->test_current) + " at " + to_text(row->test_current, "A") +
                 (here ? " (" + millivolts(limit.resistance * *here) + " at " + to_text(*here, "A") + ")"
                       : std::string()) +
                 ", from the front of the barrel to the conductor just behind it, near room temperature",
             *limit.from);
    }

    void cut_back_lines()
    {
        line("cut back",
             "on to bright, flexible copper; the trade takes " + to_text(cut_back_practice_least, "in") + " to " +
                 to_text(cut_back_practice_most, "in") + " (" + to_text(cut_back_practice_least, "mm") + " to " +
                 to_text(cut_back_practice_most, "mm") + ") behind a burnt end",
             cut_back_practice);
        const cable* lead = nearest_cable(described_, place_);
        const auto now = std::find_if(now_.parts.begin(), now_.parts.end(),
                                      [this](const part_result& p) { return p.place == place_; });
        if (lead == nullptr || !now_.conducts || now == now_.parts.end() || now->places.empty()) return;
        const current effective = described_.job.current * std::sqrt(static_cast<double>(described_.job.duty.share()));
        const temperature limit = limit_of(*lead);
        try {
            const cut_back burnt = cut_back_of(*lead, described_.where, {now->peak_temperature, limit}, effective);
            if (!burnt.none_needed)
                line("of that by heat",
                     to_text(burnt.length, "mm", 2) + " was hotter than " + to_text(limit, "degC") +
                         ", as this end typically stands now",
                     cut_back_law);
        } catch (const no_solution_error&) {
            line("of that by heat",
                 "the whole lead is hotter than its " + to_text(limit, "degC") +
                     " as things stand: heat names no length, look along all of it",
                 cut_back_law);
        }
    }

    void expected()
    {
        for (const probe_reading& r : readings_) {
            if (r.place != place_) continue;
            const bool has_tip = r.kind == part_kind::wire_gun || r.kind == part_kind::tig_torch;
            line("should read",
                 millivolts(r.volts) + " at " + to_text(r.current.typical, "A") +
                     (has_tip ? ", warm, from its plug to tip or collet" : ", warm"),
                 card_expectation);
            const bool is_over =
                std::any_of(card_.found.parts.begin(), card_.found.parts.end(), [&](const part_result& p) {
                    return p.place == place_ && gravity_of(p.verdict) >= gravity_of(verdict::over_limit);
                });
            // what is too hot is not accepted because it was expected
            if (r.peak)
                line(is_over ? "too hot as described, cure it first: up to" : "should stay below",
                     to_text(r.peak->high, "degC", 3) + " (" + peak_place_word(card_.made, r) + ")", card_expectation);
        }
    }

    void look_again()
    {
        std::optional<duration> first;
        bool is_followed = false;
        for (const clamp_prospect& c : life_.clamps)
            if (c.place == place_) {
                is_followed = true;
                first = c.look_again;
            }
        for (const joint_drift& j : life_.joints.joints)
            if (j.part == place_) {
                is_followed = true;
                if (j.poor.yields && (!first || *j.poor.yields < *first)) first = j.poor.yields;
            }
        if (!is_followed || !card_.found.conducts) return;
        const duration most = card_.found.service.horizon;
        line("look again",
             first ? (first->value() < 3600.0 ? std::string("within the first hour of shift")
                                              : "by " + whole_hours(*first) + " of shift")
                   : "not before " + whole_hours(most) + " of shift, unless it is moved or knocked",
             card_look_again);
    }
    // Cut, so that nobody looks too late.
    [[nodiscard]] static std::string whole_hours(duration t)
    {
        constexpr double slip = 1e-9;
        return number_text(std::floor(number_in(t, "h") + slip), 6) + " h";
    }

    const station& described_;
    const assessment& now_;
    const job_card& card_;
    const station_life& life_;
    std::vector<probe_reading> readings_;
    clamp_handling handling_;
    std::optional<joint_motion> motion_;  // none: nothing is said of the use
    size_family series_;
    std::size_t place_ = 0;
    part_card out_;
};

}  // namespace detail

[[nodiscard]] inline job_card job_card_of(const station& s, const std::optional<station_service>& service)
{
    const detail::clamp_handling handling = detail::handling_of(service);
    const station_service use = service.value_or(station_service{});
    const assessment now = assess(s, use);
    job_card out{.made = detail::as_to_be_made(s, handling)};
    out.found = assess(out.made, use);
    const station_life life = station_life_of(out.made, out.found);
    out.seat = detail::seat_of(out.made, out.found);
    detail::card_writer writer(s, now, out, life, service);
    for (std::size_t i = 0; i < parts_in(out.made); ++i)
        if (!is_stray(out.made, i))
            if (auto card = writer.of(i)) out.parts.push_back(std::move(*card));
    for (remedy& r : remedies_for(out.made))
        if (!r.is_summary && (r.is_remark || r.clears_verdict || r.restores_circuit || !r.clears_findings.empty() ||
                              !r.clears_parts.empty()))
            out.still_against.push_back(std::move(r));
    for (const part_card& card : out.parts)
        for (const card_line& l : card.lines) out.basis.add(*l.from);
    return out;
}

}  // namespace weldloop
