#pragma once
/// @file
/// Heat in a network of bodies: nodes that store it, links that pass it on, sinks, surfaces, and sources whose heat
/// follows temperature. Plain numbers: rises over a common reference [K], W, W/K, J/K.

#include <algorithm>
#include <cstddef>
#include <limits>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <weldloop/core/error.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/solve/curve_table.hpp>
#include <weldloop/solve/sparse_lu.hpp>

namespace weldloop::solve {

/// A number that follows the temperatures of two places, with its slopes.
struct sloped_by_two {
    double value = 0.0;      ///< [its unit] the value
    double by_first = 0.0;   ///< [its unit/K] its slope by the first place
    double by_second = 0.0;  ///< [its unit/K] its slope by the second
};

/// What is asked of a law.
enum class asked {
    value,   ///< the value alone; slopes may be left zero
    slopes,  ///< the value and its slopes
};

/// Heat of a source, or conductance of a link, as it follows temperature.
class heat_law {
public:
    heat_law() = default;
    heat_law(const heat_law&) = delete;
    heat_law& operator=(const heat_law&) = delete;
    virtual ~heat_law() = default;
    /// @param first rise of the place it sits at [K], any @param second rise of another place it follows [K], any
    /// @param what with or without slopes
    [[nodiscard]] virtual sloped_by_two at(double first, double second, asked what) const = 0;
};

/// When something acts.
enum class while_current {
    on_or_off,  ///< all the time
    on,         ///< only while current flows
};

/// What laws follow beside the two places they know of: asked before they are, at every state with current. Currents
/// that divide by all temperatures at once are such.
class state_follower {
public:
    state_follower() = default;
    state_follower(const state_follower&) = delete;
    state_follower& operator=(const state_follower&) = delete;
    virtual ~state_follower() = default;
    /// Takes over a state. @param rise of every node [K], any
    virtual void follow(std::span<const double> rise) = 0;
    /// How many numbers it gives for a state.
    [[nodiscard]] virtual std::size_t numbers() const = 0;
    /// The numbers of the state it followed last. @param rise that state [K], any
    /// @param share what they are taken times, any @param out to be added to [their units], any
    virtual void add_numbers(std::span<const double> rise, double share, std::span<double> out) const = 0;
};

/// Rises given in two parts.
struct shifted_rises {
    std::span<const double> rest;   ///< [K] any, the rises, less `shift`
    std::span<const double> shift;  ///< [K] any, what they are more than `rest`
};

/// A network of bodies. Built once, evaluated often.
class heat_network {
public:
    using index = std::size_t;                                ///< of a node, or of a source
    static constexpr index nowhere = static_cast<index>(-1);  ///< stands for no node
    /// The bound of a body that nothing ends [K].
    static constexpr double unbounded = std::numeric_limits<double>::infinity();

    /// Makes room, so that lists need not grow. @param nodes how many there will be, about
    void expect(index nodes)
    {
        capacity_.reserve(nodes);
        bound_.reserve(nodes);
        links_.reserve(nodes);
    }
    /// A body. @param capacity [J/K], above 0 @param bound [K], any, also `unbounded`: rise beyond which it is no more
    /// what it was @throws not_finite_error, out_of_range_error
    index add_node(double capacity, double bound = unbounded)
    {
        require_positive(capacity, "heat capacity of a node");
        if (bound != unbounded) require_finite(bound, "bound of a node");
        capacity_.push_back(capacity);
        bound_.push_back(bound);
        return capacity_.size() - 1;
    }
    /// A conductance between two nodes. @param a, b the nodes @param conductance [W/K], any; none from 0 down
    /// @throws not_finite_error
    void link(index a, index b, double conductance)
    {
        require_finite(conductance, "conductance of a link");
        if (conductance > 0.0) links_.push_back({a, b, conductance});
    }
    /// A conductance between two nodes that follows their mean rise.
    void link(index a, index b, const heat_law& by_mean) { curved_.push_back({a, b, &by_mean, 0.5, nowhere}); }
    /// A conductance between two nodes that follows the rise of the first; and that of a third, if one is named,
    /// without a slope: a weak dependence.
    void link_by_first(index a, index b, const heat_law& law, index follows = nowhere)
    {
        curved_.push_back({a, b, &law, 1.0, follows});
    }
    /// A conductance to a fixed rise, all the time or only while current flows.
    /// @param a the node @param conductance [W/K], any; none from 0 down @param far [K], any @param when it is there
    /// @throws not_finite_error
    void sink(index a, double conductance, double far, while_current when = while_current::on_or_off)
    {
        require_finite(conductance, "conductance to a sink");
        require_finite(far, "rise of a sink");
        if (conductance > 0.0) sinks_.push_back({a, conductance, far, when == while_current::on});
    }
    /// A surface. @param a the node @param size factor of what the table says is lost, any; none from 0 down
    /// @param table kept by the caller @throws not_finite_error
    void surface(index a, double size, const curve_table& table)
    {
        require_finite(size, "size of a surface");
        if (size > 0.0) surfaces_.push_back({a, size, &table});
    }
    /// Heat that is always there. @param a the node @param watts [W], any @throws not_finite_error
    void constant(index a, double watts)
    {
        require_finite(watts, "constant heat");
        if (watts != 0.0) constants_.push_back({a, watts});
    }
    /// Heat while current flows, straight in the node's rise: at_zero + slope x rise.
    /// @param a the node @param at_zero [W], any @param slope [W/K], any @throws not_finite_error
    void linear_source(index a, double at_zero, double slope)
    {
        require_finite(at_zero, "heat of a source at no rise");
        require_finite(slope, "slope of a source");
        linears_.push_back({a, at_zero, slope});
    }
    /// Heat while current flows, by a law of the rise at `in` (or, with weight 0.5, of the mean of in and with) and of
    /// `follows`; shares go to two nodes.
    struct source {
        index in = nowhere;             ///< the node whose rise the law follows first
        index with = nowhere;           ///< the law's place is the mean of `in` and this; nowhere: `in` alone
        index follows = nowhere;        ///< the law's second place; nowhere: none
        const heat_law* law = nullptr;  ///< its heat [W], kept by the caller
        index to = nowhere;             ///< the node that takes a share of the heat
        double share = 1.0;             ///< of the law's heat, any; a conductance [W/K] where the law is a rise
        index also_to = nowhere;        ///< a second node that does; nowhere: none
        double also_share = 0.0;        ///< the same for that node; below zero takes away
    };
    /// Adds a source. @param s whose nodes are in the network @throws not_finite_error for a share
    void add_source(const source& s)
    {
        require_finite(s.share, "share of a source's heat");
        require_finite(s.also_share, "other share of a source's heat");
        sources_.push_back(s);
    }

    /// What its laws follow beside; null: nothing. Slopes leave it out. @param f kept by the caller
    void set_follower(state_follower* f) { follower_ = f; }
    [[nodiscard]] state_follower* follower() const { return follower_; }  ///< as set

    /// Ends the building: finds the pattern of the matrix.
    void close()
    {
        std::vector<std::pair<index, index>> pairs;
        pairs.reserve(links_.size() + curved_.size() + 6 * sources_.size());
        for (const plain_link& l : links_) pairs.emplace_back(l.a, l.b);
        for (const curved_link& l : curved_) pairs.emplace_back(l.a, l.b);
        for (const source& s : sources_)
            for (const index to : {s.to, s.also_to})
                for (const index in : {s.in, s.with, s.follows})
                    if (to != nowhere && in != nowhere) pairs.emplace_back(to, in);
        pattern_ = sparse_lu(size(), pairs);
        const std::span<double> straight_slopes = pattern_.values();
        heat_.assign(size(), 0.0);
        on_slopes_ = on_heat_ = heat_;
        for (const plain_link& l : links_) {
            straight_slopes[l.a] += l.g;
            straight_slopes[l.b] += l.g;
            straight_slopes[pattern_.slot(l.a, l.b)] -= l.g;
            straight_slopes[pattern_.slot(l.b, l.a)] -= l.g;
        }
        for (const sink_to& s : sinks_) {
            (s.while_on ? on_slopes_ : straight_slopes)[s.a] += s.g;
            (s.while_on ? on_heat_ : heat_)[s.a] += s.g * s.far;
        }
        for (const constant_heat& c : constants_) heat_[c.a] += c.watts;
        for (const straight& l : linears_) {
            on_slopes_[l.a] -= l.slope;
            on_heat_[l.a] += l.at_zero;
        }
        for (curved_link& l : curved_) l.ab = pattern_.slot(l.a, l.b), l.ba = pattern_.slot(l.b, l.a);
        std::vector<char> is_followed(size(), 0);
        for (const surface_of& f : surfaces_) is_followed[f.a] = 1;
        for (const curved_link& l : curved_) is_followed[l.a] = is_followed[l.b] = 1;
        for (const source& s : sources_)
            for (const index in : {s.in, s.with, s.follows})
                if (in != nowhere) is_followed[in] = 1;
        curved_nodes_.clear();
        curved_nodes_.reserve(size());
        for (index i = 0; i < size(); ++i)
            if (is_followed[i] != 0) curved_nodes_.push_back(i);
        slots_.clear();
        slots_.reserve(6 * sources_.size());
        for (const source& s : sources_)
            for (const index to : {s.to, s.also_to})
                for (const index in : {s.in, s.with, s.follows})
                    slots_.push_back(to != nowhere && in != nowhere ? pattern_.slot(to, in) : nowhere);
    }

    [[nodiscard]] index size() const { return capacity_.size(); }                 ///< number of nodes
    [[nodiscard]] std::span<const double> capacity() const { return capacity_; }  ///< of each node [J/K]
    [[nodiscard]] std::span<const double> bound() const { return bound_; }        ///< of each node [K]
    [[nodiscard]] const sparse_lu& pattern() const
    {
        return pattern_;
    }  ///< a matrix of its pattern, to be filled by evaluate() or straighten()
    [[nodiscard]] const std::vector<source>& sources() const { return sources_; }  ///< as added

    /// A steady conductance.
    struct plain_link {
        index a;   ///< one of its nodes
        index b;   ///< the other
        double g;  ///< [W/K] above 0
    };
    /// A conductance by a law.
    struct curved_link {
        index a;              ///< one of its nodes
        index b;              ///< the other
        const heat_law* law;  ///< [W/K] what it gives
        double weight;        ///< share, 0.5 or 1, of a's rise in the law's first place, the rest b's
        index follows;        ///< whose rise is its second; nowhere: none
        index ab = 0;         ///< slot of the matrix in the row of a, once closed
        index ba = 0;         ///< the same in the row of b
    };
    /// A conductance to a fixed rise.
    struct sink_to {
        index a;        ///< its node
        double g;       ///< [W/K] above 0
        double far;     ///< [K] any
        bool while_on;  ///< only while current flows
    };
    /// A surface that loses heat by a table.
    struct surface_of {
        index a;                   ///< its node
        double size;               ///< factor above 0 of what the table says
        const curve_table* table;  ///< what it says
    };
    /// Heat while current flows, straight in its node's rise.
    struct straight {
        index a;         ///< its node
        double at_zero;  ///< [W] any, at no rise
        double slope;    ///< [W/K] any
    };
    /// @name What the network is made of, as added, for who takes its numbers elsewhere
    /// @{
    [[nodiscard]] const std::vector<plain_link>& links() const { return links_; }           ///< as added
    [[nodiscard]] const std::vector<curved_link>& curved_links() const { return curved_; }  ///< as added
    [[nodiscard]] const std::vector<sink_to>& sinks() const { return sinks_; }              ///< as added
    [[nodiscard]] const std::vector<surface_of>& surfaces() const { return surfaces_; }     ///< as added
    [[nodiscard]] const std::vector<straight>& linear_sources() const { return linears_; }  ///< as added
    /// @}

    /// Sums over the network [W].
    struct totals {
        double made = 0.0;  ///< [W] by sources while on, and constant heat
        double lost = 0.0;  ///< [W] to surfaces and sinks
    };

    /// What each node gains [W] at a state, with current for a share of the time.
    /// @param x rises [K], any @param on share of the time with current, 0 to 1 @param gain out [W], any
    /// @param matrix out, if not null: minus the slopes of the gains, in the pattern's slots
    void evaluate(std::span<const double> x, double on, std::span<double> gain, sparse_lu* matrix) const
    {
        for (index i = 0; i < size(); ++i) gain[i] = heat_[i] + on * on_heat_[i] - on * on_slopes_[i] * x[i];
        for (const plain_link& l : links_) {
            const double w = l.g * (x[l.a] - x[l.b]);
            gain[l.a] -= w;
            gain[l.b] += w;
        }
        for (const sink_to& s : sinks_)
            if (!s.while_on) gain[s.a] -= s.g * x[s.a];
        follow(x, on);
        if (matrix == nullptr) {
            add_curved<false>([x](index i) { return x[i]; }, on, {}, gain);
            return;
        }
        start_matrix(on, *matrix);
        straighten_at<true>(x, on, gain.data(), matrix->values().data());
    }

    /// The network straightened at a state.
    /// @param x rises [K], any @param on share, as in evaluate()
    /// @param slopes out [W/K], any: of what is not straight, for add_curvature()
    /// @param matrix out: minus the slopes of the gains
    void straighten(std::span<const double> x, double on, std::vector<double>& slopes, sparse_lu& matrix) const
    {
        follow(x, on);
        start_matrix(on, matrix);
        slopes.resize(surfaces_.size() + 2 * (curved_.size() + (on > 0.0 ? sources_.size() : 0)));
        straighten_at<false>(x, on, slopes.data(), matrix.values().data());
    }

    /// Heat that does not follow temperature [W]: what every node would gain at no rise if nothing were curved.
    /// @param on share, as in evaluate() @param heat out [W], any, for each node
    void heat_at_zero(double on, std::span<double> heat) const
    {
        for (index i = 0; i < size(); ++i) heat[i] = heat_[i] + on * on_heat_[i];
    }

    /// Adds what curved elements give beyond their slopes times their rises [W]. With the matrix of straighten() the
    /// balance is matrix x = heat_at_zero + this, as good as the slopes are between x and where they were taken.
    /// @param x rises in two parts @param on share, as in evaluate()
    /// @param slopes [W/K], as in straighten() @param heat to be added to [W], any, for each node
    void add_curvature(const shifted_rises& x, double on, std::span<const double> slopes, std::span<double> heat) const
    {
        if (follower_ != nullptr && on > 0.0) {
            std::vector<double> there(x.rest.begin(), x.rest.end());
            for (index i = 0; i < size(); ++i) there[i] += x.shift[i];
            follower_->follow(there);
        }
        add_curved<true>([at = x.rest.data(), by = x.shift.data()](index i) { return at[i] + by[i]; }, on, slopes,
                         heat);
    }

    /// Nodes that curved elements follow.
    [[nodiscard]] const std::vector<index>& curved_nodes() const { return curved_nodes_; }

    /// Heat made and lost at a state [W].
    /// @param x rises [K], any @param on share, as in evaluate()
    [[nodiscard]] totals totals_at(std::span<const double> x, double on) const
    {
        const totals even = straight_totals(x, x, on), curved = curved_totals(x, on, {});
        return {even.made + curved.made, even.lost + curved.lost};
    }
    /// The share of elements that are straight in their rises: of means over time it is the mean.
    /// @param x rises [K], any, the mean over all the time @param on_x [K], any, mean over the time with current
    /// @param on share, as in evaluate()
    [[nodiscard]] totals straight_totals(std::span<const double> x, std::span<const double> on_x, double on) const
    {
        totals out;
        for (const sink_to& s : sinks_)
            out.lost += s.while_on ? on * s.g * (on_x[s.a] - s.far) : s.g * (x[s.a] - s.far);
        for (const constant_heat& c : constants_) out.made += c.watts;
        if (!(on > 0.0)) return out;
        for (const straight& s : linears_) out.made += on * (s.at_zero + s.slope * on_x[s.a]);
        return out;
    }
    /// The share of surfaces and of sources with a law.
    /// @param x rises [K], any @param on share, as in evaluate()
    /// @param heats out [W], any, if not empty: of every source while current flows
    [[nodiscard]] totals curved_totals(std::span<const double> x, double on, std::span<double> heats) const
    {
        totals out;
        follow(x, on);
        for (const surface_of& s : surfaces_) out.lost += s.size * s.table->value_at(x[s.a]);
        if (!(on > 0.0)) return out;
        for (index k = 0; k < sources_.size(); ++k) {
            const source& s = sources_[k];
            const double w = heat_of(s, x, asked::value).value;
            if (!heats.empty()) heats[k] = w;
            out.made += on * ((s.to != nowhere ? s.share : 0.0) + (s.also_to != nowhere ? s.also_share : 0.0)) * w;
        }
        return out;
    }

    /// Heat a source makes while current flows [W], with slopes if asked for.
    /// @param s the source @param x rises [K], any @param what is asked for
    [[nodiscard]] sloped_by_two heat_of(const source& s, std::span<const double> x, asked what) const
    {
        const double first = s.with != nowhere ? 0.5 * (x[s.in] + x[s.with]) : x[s.in];
        return s.law->at(first, s.follows != nowhere ? x[s.follows] : 0.0, what);
    }

    /// Refuses what is no state of the network. @param x rises [K], any @param argument what they are called
    /// @throws not_finite_error, out_of_range_error for another number of them than of nodes
    void require_state(std::span<const double> x, std::string_view argument) const
    {
        if (x.size() != size())
            throw out_of_range_error("number of " + std::string(argument), std::to_string(x.size()),
                                     std::to_string(size()) + ", one for each node");
        for (const double one : x) require_finite(one, argument);
    }

private:
    void follow(std::span<const double> x, double on) const
    {
        if (follower_ != nullptr && on > 0.0) follower_->follow(x);
    }

    // Minus the slopes of what is straight.
    void start_matrix(double on, sparse_lu& matrix) const
    {
        matrix = pattern_;
        const std::span<double> m = matrix.values();
        for (index i = 0; i < size(); ++i) m[i] += on * on_slopes_[i];
    }

    // Takes the slopes of what is curved from a matrix `m`. `out` takes the heat of what is curved, as add_curved()
    // does, or else keeps the slopes in its order.
    template <bool gains>
    void straighten_at(std::span<const double> x, double on, double* out, double* m) const
    {
        const auto keep = [&out](double first, double second) {
            if constexpr (gains) return;
            *out++ = first;
            *out++ = second;
        };
        for (const surface_of& s : surfaces_) {
            const sloped given_off = s.table->at(x[s.a]);
            const double slope = s.size * given_off.slope;
            m[s.a] += slope;
            if constexpr (gains)
                out[s.a] -= s.size * given_off.value;
            else
                *out++ = slope;
        }
        for (const curved_link& l : curved_) {
            const double place = l.weight * x[l.a] + (1.0 - l.weight) * x[l.b], over = x[l.a] - x[l.b];
            const sloped_by_two g = l.law->at(place, l.follows != nowhere ? x[l.follows] : 0.0, asked::slopes);
            const double by_a = g.value + g.by_first * l.weight * over;
            const double by_b = g.value - g.by_first * (1.0 - l.weight) * over;
            keep(by_a, by_b);
            if constexpr (gains) {
                out[l.a] -= g.value * over;
                out[l.b] += g.value * over;
            }
            m[l.a] += by_a;
            m[l.ab] -= by_b;
            m[l.ba] -= by_a;
            m[l.b] += by_b;
        }
        if (!(on > 0.0)) return;
        for (index k = 0; k < sources_.size(); ++k) {
            const source& s = sources_[k];
            const sloped_by_two w = heat_of(s, x, asked::slopes);
            const double first = on * (s.with != nowhere ? 0.5 : 1.0) * w.by_first, second = on * w.by_second;
            keep(first, second);
            if constexpr (gains) {
                if (s.to != nowhere) out[s.to] += s.share * (on * w.value);
                if (s.also_to != nowhere) out[s.also_to] += s.also_share * (on * w.value);
            }
            const auto give = [&](index to, double share, const index* slot) {
                if (to == nowhere) return;
                m[slot[0]] -= share * first;
                if (s.with != nowhere) m[slot[1]] -= share * first;
                if (s.follows != nowhere) m[slot[2]] -= share * second;
            };
            give(s.to, s.share, &slots_[6 * k]);
            give(s.also_to, s.also_share, &slots_[6 * k + 3]);
        }
    }

    // Heat of curved elements; beyond their slopes, if these are given.
    template <bool beyond, class At>
    void add_curved(const At& at, double on, std::span<const double> slopes, std::span<double> heat) const
    {
        const double* slope = slopes.data();
        double* const gain = heat.data();
        for (const surface_of& s : surfaces_) {
            const double x = at(s.a), given_off = s.size * s.table->value_at(x);
            if constexpr (beyond)
                gain[s.a] += *slope++ * x - given_off;
            else
                gain[s.a] -= given_off;
        }
        for (const curved_link& l : curved_) {
            const double a = at(l.a), b = at(l.b);
            double w =
                l.law->at(l.weight * a + (1.0 - l.weight) * b, l.follows != nowhere ? at(l.follows) : 0.0, asked::value)
                    .value *
                (a - b);
            if constexpr (beyond) {
                w -= slope[0] * a - slope[1] * b;
                slope += 2;
            }
            gain[l.a] -= w;
            gain[l.b] += w;
        }
        if (!(on > 0.0)) return;
        for (const source& s : sources_) {
            const double in = s.with != nowhere ? at(s.in) + at(s.with) : at(s.in);
            const double follows = s.follows != nowhere ? at(s.follows) : 0.0;
            double w = on * s.law->at(s.with != nowhere ? 0.5 * in : in, follows, asked::value).value;
            if constexpr (beyond) {
                w -= slope[0] * in + slope[1] * follows;
                slope += 2;
            }
            if (s.to != nowhere) gain[s.to] += s.share * w;
            if (s.also_to != nowhere) gain[s.also_to] += s.also_share * w;
        }
    }

    struct constant_heat {
        index a;
        double watts;
    };

    std::vector<double> capacity_, bound_;
    std::vector<plain_link> links_;
    std::vector<curved_link> curved_;
    std::vector<sink_to> sinks_;
    std::vector<surface_of> surfaces_;
    std::vector<constant_heat> constants_;
    std::vector<straight> linears_;
    std::vector<source> sources_;
    std::vector<index> slots_;            // six a source: rows `to` and `also_to`, columns `in`, `with`, `follows`
    sparse_lu pattern_;                   // with the slopes of what is straight all the time
    std::vector<double> on_slopes_;       // of its diagonal, while current flows
    std::vector<double> heat_, on_heat_;  // W at no rise, all the time and while current flows
    std::vector<index> curved_nodes_;
    state_follower* follower_ = nullptr;
};

}  // namespace weldloop::solve
