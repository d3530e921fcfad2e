#pragma once
/// @file
/// Fixed points x = g(x) of a map that answers its own argument strongly, without its slopes.

#include <array>
#include <cstddef>
#include <span>
#include <vector>

namespace weldloop::solve {

/// Steps towards a fixed point x = g(x) by Anderson's mixing: the last states are combined so that their rests g(x) - x
/// nearly cancel, and the step goes to what g gives for that combination. Where g is straight and only as many of its
/// directions as are kept answer strongly, one step more finds the point, also where repeating g would run away. Each
/// step costs a few passes over the numbers; who repeats looks at the rest himself and bounds the number of steps.
/// Source: D. G. Anderson, "Iterative procedures for nonlinear integral equations", J. ACM 12 (1965) 547; H. F. Walker
/// and P. Ni, SIAM J. Numer. Anal. 49 (2011) 1715, type II with depth 4.
class anderson_mixing {
public:
    static constexpr std::size_t depth = 4;  ///< [1] number of steps before that are kept

    /// Forgets all states.
    void restart()
    {
        knows_last_ = false;
        kept_ = 0;
    }

    /// One step. @param x [unit of the map], any; out: the next state @param image what g gives for x [the same], any,
    /// as many numbers @param share of the rest that is stepped to, above 0 to 1
    void step(std::span<double> x, std::span<const double> image, double share)
    {
        const std::size_t n = x.size();
        rest_.resize(n);
        for (std::size_t i = 0; i < n; ++i) rest_[i] = image[i] - x[i];
        if (knows_last_) remember(x);
        last_x_.assign(x.begin(), x.end());
        last_rest_ = rest_;
        knows_last_ = true;
        // the kept changes of the rest are made square to each other, the latest first, and taken out of it one by one
        for (std::size_t i = 0; i < n; ++i) x[i] += share * rest_[i];
        constexpr double dependent = 1e-8;  // of its own length: what is left of a change that others already tell
        std::size_t used = 0;
        for (std::size_t k = 0; k < kept_; ++k) {
            std::vector<double>& by_rest = square_[used].rest;
            std::vector<double>& by_x = square_[used].x;
            const change& c = changes_[(newest_ + depth - k) % depth];
            by_rest = c.rest;
            by_x = c.x;
            const double whole = dot(by_rest, by_rest);
            for (std::size_t j = 0; j < used; ++j) {
                const double along = dot(by_rest, square_[j].rest) / square_[j].length;
                add(by_rest, -along, square_[j].rest);
                add(by_x, -along, square_[j].x);
            }
            const double left = dot(by_rest, by_rest);
            if (!(left > dependent * dependent * whole)) continue;
            square_[used].length = left;
            const double along = dot(rest_, by_rest) / left;
            for (std::size_t i = 0; i < n; ++i) x[i] -= along * (by_x[i] + share * by_rest[i]);
            ++used;
        }
    }

private:
    struct change {
        std::vector<double> x, rest;
    };
    struct squared {
        std::vector<double> x, rest;
        double length = 0.0;  // its square
    };
    static double dot(std::span<const double> a, std::span<const double> b)
    {
        double out = 0.0;
        for (std::size_t i = 0; i < a.size(); ++i) out += a[i] * b[i];
        return out;
    }
    static void add(std::vector<double>& to, double by, const std::vector<double>& what)
    {
        for (std::size_t i = 0; i < to.size(); ++i) to[i] += by * what[i];
    }
    void remember(std::span<const double> x)
    {
        newest_ = (newest_ + 1) % depth;
        change& c = changes_[newest_];
        c.x.resize(x.size());
        c.rest.resize(x.size());
        for (std::size_t i = 0; i < x.size(); ++i) {
            c.x[i] = x[i] - last_x_[i];
            c.rest[i] = rest_[i] - last_rest_[i];
        }
        if (kept_ < depth) ++kept_;
    }

    std::array<change, depth> changes_;  // a ring
    std::array<squared, depth> square_;  // of this step
    std::vector<double> rest_, last_x_, last_rest_;
    bool knows_last_ = false;
    std::size_t kept_ = 0, newest_ = 0;
};

}  // namespace weldloop::solve
