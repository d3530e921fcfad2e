#pragma once
/// @file
/// Heat in a network of bodies: nodes that store it, links that pass it on, sinks, surfaces, and sources whose heat
/// follows temperature. Plain numbers: rises over a common reference [K], W, W/K, J/K.

#include <cstddef>
#include <limits>
#include <memory>
#include <span>
#include <utility>
#include <vector>

#include <weldloop/solve/curve_table.hpp>
#include <weldloop/solve/sparse_lu.hpp>

namespace weldloop::solve {

/// A number that follows the temperatures of two places, with its slopes.
struct sloped_by_two {
    double value = 0.0;      ///< the value
    double by_first = 0.0;   ///< its slope by the first place
    double by_second = 0.0;  ///< its slope by the second
};

/// Heat of a source, or conductance of a link, as it follows temperature.
class heat_law {
public:
    heat_law() = default;
    heat_law(const heat_law&) = delete;
    heat_law& operator=(const heat_law&) = delete;
    virtual ~heat_law() = default;
    /// @param first rise of the place it sits at @param second rise of another place it follows
    /// @param slopes whether slopes are asked for
    [[nodiscard]] virtual sloped_by_two at(double first, double second, bool slopes) const = 0;
};

/// A network of bodies. Built once, evaluated often.
class heat_network {
public:
    using index = std::size_t;                                ///< of a node, or of a source
    static constexpr index nowhere = static_cast<index>(-1);  ///< stands for no node
    /// The bound of a body that nothing ends.
    static constexpr double unbounded = std::numeric_limits<double>::infinity();

    /// A body. @param capacity [J/K], above 0 @param bound rise beyond which it is no more what it was [K]
    index add_node(double capacity, double bound = unbounded)
    {
        capacity_.push_back(capacity);
        bound_.push_back(bound);
        return capacity_.size() - 1;
    }
    /// A conductance between two nodes [W/K].
    void link(index a, index b, double conductance)
    {
        if (conductance > 0.0) links_.push_back({a, b, conductance});
    }
    /// A conductance between two nodes that follows their mean rise, or that of the first alone; and that of a third,
    /// as far as it follows it, without a slope: a weak dependence.
    void link(index a, index b, const heat_law& law, bool by_mean, index follows = nowhere)
    {
        curved_.push_back({a, b, &law, by_mean ? 0.5 : 1.0, follows});
    }
    /// A conductance to a fixed rise [W/K, K], all the time or only while current flows.
    void sink(index a, double conductance, double far, bool while_on = false)
    {
        if (conductance > 0.0) sinks_.push_back({a, conductance, far, while_on});
    }
    /// A surface: `size` times what the table says is lost.
    void surface(index a, double size, const curve_table& table)
    {
        if (size > 0.0) surfaces_.push_back({a, size, &table});
    }
    /// Heat that is always there [W].
    void constant(index a, double watts)
    {
        if (watts != 0.0) constants_.push_back({a, watts});
    }
    /// Heat while current flows, straight in the node's rise: at_zero + slope x rise [W, W/K].
    void linear_source(index a, double at_zero, double slope) { linears_.push_back({a, at_zero, slope}); }
    /// Heat while current flows, by a law of the rise at `in` (or, with weight 0.5, of the mean of in and with) and of
    /// `follows`; shares go to two nodes.
    struct source {
        index in = nowhere;             ///< the node whose rise the law follows first
        index with = nowhere;           ///< the law's place is the mean of `in` and this; nowhere: `in` alone
        index follows = nowhere;        ///< the law's second place; nowhere: none
        const heat_law* law = nullptr;  ///< its heat [W], kept by the caller
        index to = nowhere;             ///< the node that takes a share of the heat
        double share = 1.0;             ///< which share, 0 to 1
        index also_to = nowhere;        ///< a second node that does; nowhere: none
        double also_share = 0.0;        ///< which share, 0 to 1
    };
    /// Adds a source. @param s whose nodes are in the network
    void add_source(const source& s) { sources_.push_back(s); }

    /// Ends the building: finds the pattern of the matrix.
    void close()
    {
        std::vector<std::pair<index, index>> pairs;
        for (const plain_link& l : links_) pairs.emplace_back(l.a, l.b);
        for (const curved_link& l : curved_) pairs.emplace_back(l.a, l.b);
        for (const source& s : sources_)
            for (const index to : {s.to, s.also_to})
                for (const index in : {s.in, s.with, s.follows})
                    if (to != nowhere && in != nowhere) pairs.emplace_back(to, in);
        pattern_ = sparse_lu(size(), pairs);
        for (plain_link& l : links_) l.ab = pattern_.slot(l.a, l.b), l.ba = pattern_.slot(l.b, l.a);
        for (curved_link& l : curved_) l.ab = pattern_.slot(l.a, l.b), l.ba = pattern_.slot(l.b, l.a);
        slots_.clear();
        for (const source& s : sources_)
            for (const index to : {s.to, s.also_to})
                for (const index in : {s.in, s.with, s.follows})
                    slots_.push_back(to != nowhere && in != nowhere ? pattern_.slot(to, in) : nowhere);
    }

    [[nodiscard]] index size() const { return capacity_.size(); }                  ///< number of nodes
    [[nodiscard]] std::span<const double> capacity() const { return capacity_; }   ///< of each node [J/K]
    [[nodiscard]] std::span<const double> bound() const { return bound_; }         ///< of each node [K]
    [[nodiscard]] const sparse_lu& pattern() const { return pattern_; }            ///< a matrix of its pattern
    [[nodiscard]] const std::vector<source>& sources() const { return sources_; }  ///< as added

    /// Sums over the network [W].
    struct totals {
        double made = 0.0;  ///< by sources while on, and constant heat
        double lost = 0.0;  ///< to surfaces and sinks
    };

    /// What each node gains [W] at a state, with current for a share of the time.
    /// @param x rises @param on share of the time with current, 0 to 1 @param gain out
    /// @param matrix out, if not null: minus the slopes of the gains, in the pattern's slots
    /// @param sums out, if not null
    void evaluate(std::span<const double> x, double on, std::span<double> gain, sparse_lu* matrix,
                  totals* sums = nullptr) const
    {
        for (double& g : gain) g = 0.0;
        double* m = nullptr;
        if (matrix != nullptr) {
            m = matrix->values().data();
            for (double& v : matrix->values()) v = 0.0;
        }
        double made = 0.0, lost = 0.0;
        for (const plain_link& l : links_) {
            const double w = l.g * (x[l.a] - x[l.b]);
            gain[l.a] -= w;
            gain[l.b] += w;
            if (m != nullptr) {
                m[l.a] += l.g;
                m[l.b] += l.g;
                m[l.ab] -= l.g;
                m[l.ba] -= l.g;
            }
        }
        for (const curved_link& l : curved_) {
            const double place = l.weight * x[l.a] + (1.0 - l.weight) * x[l.b];
            const sloped_by_two g = l.law->at(place, l.follows != nowhere ? x[l.follows] : 0.0, m != nullptr);
            const double over = x[l.a] - x[l.b], w = g.value * over;
            gain[l.a] -= w;
            gain[l.b] += w;
            if (m != nullptr) {
                const double by_a = g.value + g.by_first * l.weight * over;
                const double by_b = g.value - g.by_first * (1.0 - l.weight) * over;
                m[l.a] += by_a;
                m[l.ab] -= by_b;
                m[l.ba] -= by_a;
                m[l.b] += by_b;
            }
        }
        for (const sink_to& s : sinks_) {
            const double g = s.while_on ? on * s.g : s.g;
            const double w = g * (x[s.a] - s.far);
            gain[s.a] -= w;
            lost += w;
            if (m != nullptr) m[s.a] += g;
        }
        for (const surface_of& s : surfaces_) {
            const sloped q = s.table->at(x[s.a]);
            gain[s.a] -= s.size * q.value;
            lost += s.size * q.value;
            if (m != nullptr) m[s.a] += s.size * q.slope;
        }
        for (const constant_heat& c : constants_) {
            gain[c.a] += c.watts;
            made += c.watts;
        }
        if (on > 0.0) {
            for (const straight& s : linears_) {
                const double w = on * (s.at_zero + s.slope * x[s.a]);
                gain[s.a] += w;
                made += w;
                if (m != nullptr) m[s.a] -= on * s.slope;
            }
            for (index k = 0; k < sources_.size(); ++k) {
                const source& s = sources_[k];
                const sloped_by_two w = heat_of(s, x, m != nullptr);
                const auto give = [&](index to, double share, const index* slot) {
                    if (to == nowhere) return;
                    gain[to] += on * share * w.value;
                    made += on * share * w.value;
                    if (m == nullptr) return;
                    const double first = s.with != nowhere ? 0.5 * w.by_first : w.by_first;
                    m[slot[0]] -= on * share * first;
                    if (s.with != nowhere) m[slot[1]] -= on * share * first;
                    if (s.follows != nowhere) m[slot[2]] -= on * share * w.by_second;
                };
                give(s.to, s.share, &slots_[6 * k]);
                give(s.also_to, s.also_share, &slots_[6 * k + 3]);
            }
        }
        if (sums != nullptr) *sums = {made, lost};
    }

    /// Heat a source makes while current flows [W], with slopes if asked for.
    [[nodiscard]] sloped_by_two heat_of(const source& s, std::span<const double> x, bool slopes) const
    {
        const double first = s.with != nowhere ? 0.5 * (x[s.in] + x[s.with]) : x[s.in];
        return s.law->at(first, s.follows != nowhere ? x[s.follows] : 0.0, slopes);
    }

private:
    struct plain_link {
        index a, b;
        double g;
        index ab = 0, ba = 0;
    };
    struct curved_link {
        index a, b;
        const heat_law* law;
        double weight;  // of a's rise in the law's place
        index follows;
        index ab = 0, ba = 0;
    };
    struct sink_to {
        index a;
        double g, far;
        bool while_on;
    };
    struct surface_of {
        index a;
        double size;
        const curve_table* table;
    };
    struct constant_heat {
        index a;
        double watts;
    };
    struct straight {
        index a;
        double at_zero, slope;
    };

    std::vector<double> capacity_, bound_;
    std::vector<plain_link> links_;
    std::vector<curved_link> curved_;
    std::vector<sink_to> sinks_;
    std::vector<surface_of> surfaces_;
    std::vector<constant_heat> constants_;
    std::vector<straight> linears_;
    std::vector<source> sources_;
    std::vector<index> slots_;  // six a source: rows `to` and `also_to`, columns `in`, `with`, `follows`
    sparse_lu pattern_;
};

}  // namespace weldloop::solve
