#pragma once
// A lead whose current is on and off, on plain numbers: conductor and covering at five points of the logarithm of the
// radius, exponentials of the modes, the surface's law by straight lines; its settled peak, and the current that
// brings the peak to a limit. Nothing of the library is called.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <stdexcept>
#include <utility>

#include "plain_lead.hpp"

namespace plain {

constexpr double copper_heat = 8890.0 * 386.0, rubber_heat = 2.0e6;  // J/(m3 K)

constexpr std::size_t points = 5;
using five = std::array<double, points>;
using matrix = std::array<five, points>;

// The Gauss-Lobatto points of 0 to 1, their weights, and the heat flow between them in units of the whole conductance:
// D^T W D, D the slopes of the polynomials through the points by Legendre's polynomial of degree 4.
struct lobatto {
    five at{}, weight{};
    matrix flow{};

    lobatto()
    {
        const double inner = std::sqrt(3.0 / 7);
        const five x{-1, -inner, 0, inner, 1};
        five p{};
        matrix slope{};
        for (std::size_t i = 0; i < points; ++i) {
            const double s = x[i] * x[i];
            p[i] = (35 * s * s - 30 * s + 3) / 8;
            at[i] = 0.5 * (1 + x[i]);
            weight[i] = 1 / (20 * p[i] * p[i]);
        }
        for (std::size_t i = 0; i < points; ++i)
            for (std::size_t j = 0; j < points; ++j)
                if (i != j) slope[i][j] = 2 * p[i] / (p[j] * (x[i] - x[j]));
        slope[0][0] = -10;
        slope[4][4] = 10;
        for (std::size_t i = 0; i < points; ++i)
            for (std::size_t j = 0; j < points; ++j)
                for (std::size_t m = 0; m < points; ++m) flow[i][j] += weight[m] * slope[m][i] * slope[m][j];
    }
};
inline const lobatto nodes;

// Eigenvalues and vectors of a symmetric matrix by rotations, from any orthogonal start.
struct modes {
    five rate{};
    matrix v{};  // [point][mode]

    // @param a in the axes of v as they are
    void turn(matrix a)
    {
        for (int sweep = 0; sweep < 20; ++sweep) {
            bool rests = true;
            for (std::size_t p = 0; p < points; ++p)
                for (std::size_t q = p + 1; q < points; ++q) {
                    const double apq = a[p][q];
                    if (apq * apq <= 1e-34 * std::fabs(a[p][p] * a[q][q])) continue;
                    rests = false;
                    const double theta = (a[q][q] - a[p][p]) / (2 * apq);
                    const double t = std::copysign(1 / (std::fabs(theta) + std::sqrt(theta * theta + 1)), theta);
                    const double c = 1 / std::sqrt(t * t + 1), s = t * c;
                    a[p][p] -= t * apq;
                    a[q][q] += t * apq;
                    a[p][q] = a[q][p] = 0;
                    for (std::size_t k = 0; k < points; ++k) {
                        if (k != p && k != q) {
                            const double x = a[k][p], y = a[k][q];
                            a[k][p] = a[p][k] = c * x - s * y;
                            a[k][q] = a[q][k] = s * x + c * y;
                        }
                        const double x = v[k][p], y = v[k][q];
                        v[k][p] = c * x - s * y;
                        v[k][q] = s * x + c * y;
                    }
                }
            if (rests) break;
        }
        for (std::size_t k = 0; k < points; ++k) rate[k] = a[k][k];
    }
    // from the modes before, two diagonal elements having grown
    void grow(double at_conductor, double at_surface)
    {
        matrix a;
        for (std::size_t i = 0; i < points; ++i) {
            for (std::size_t j = 0; j < points; ++j)
                a[i][j] = at_conductor * v[0][i] * v[0][j] + at_surface * v[4][i] * v[4][j];
            a[i][i] += rate[i];
        }
        turn(a);
    }
};

// Settled state of one lead under a current that is on for a time and off for the rest.
class on_off_lead {
public:
    on_off_lead(const lead& c, double on, double rest)
        : c_(c), time_{on, rest}, period_(on + rest), g_(conductance(c)), r20_(resistance(c, reference)),
          factor_(standard_factor(c.outer))
    {
        const double around = rubber_heat * pi / 4 * (c.outer * c.outer - c.inner * c.inner);
        const double log_ratio = std::log(c.outer / c.inner);
        five share{};
        double sum = 0;
        for (std::size_t i = 0; i < points; ++i)
            sum += share[i] = nodes.weight[i] * std::exp(2 * log_ratio * nodes.at[i]);
        for (std::size_t i = 0; i < points; ++i)
            root_[i] = std::sqrt((i == 0 ? copper_heat * c.area : 0) + around * share[i] / sum);
        whole_ = copper_heat * c.area + around;
        const double first = whole_ * (1 / g_ + 1 / slope_at(air + 20)) / 16;
        for (std::size_t part = 0; part < 2; ++part) {
            double left = time_[part], length = first;
            for (int k = 1; k < 16 && left > 1.5 * length; ++k) {
                span_[count_++] = length;
                left -= length;
                length *= 1.5;
            }
            span_[count_++] = left;
            if (part == 0) on_pieces_ = count_;
        }
    }

    // peak of the conductor above the air for a current
    double peak(double amps)
    {
        start_with(amps);
        double heat = heat_;
        for (int step = 0; step < 40; ++step) {
            touch();
            follow(heat);
            double change = 0, most = 0;
            for (std::size_t n = 0; n < count_; ++n) {
                change = std::max(change, std::fabs(mean_[n] - at_[n]));
                most = std::max(most, std::fabs(at_[n] - air));
            }
            if (change <= 1e-10 * (1 + most) + 1e-12 * top_) return top_;
        }
        throw std::runtime_error("not settled");
    }

    // the same peak by the classical Runge-Kutta rule, a fifth of a second a step as the fastest mode wants, until the
    // period repeats within 0.01 K
    double marched_peak(double amps) const
    {
        constexpr double step = 0.2;  // s
        five x;
        x.fill(air);
        double last = 0;
        for (int period = 0; period < 200; ++period) {
            double top = x[0];
            for (int n = 0; n < static_cast<int>(period_ / step); ++n) {
                const double i = n < static_cast<int>(time_[0] / step) ? amps : 0;
                const auto slope = [&](const five& t) {
                    five out;
                    for (std::size_t p = 0; p < points; ++p) {
                        double in = p == 0 ? i * i * resistance(c_, t[0]) : p == 4 ? -loss(c_.outer, factor_, t[4]) : 0;
                        for (std::size_t q = 0; q < points; ++q) in -= g_ * nodes.flow[p][q] * t[q];
                        out[p] = in / (root_[p] * root_[p]);
                    }
                    return out;
                };
                const auto moved = [&](double h, const five& k) {
                    five out = x;
                    for (std::size_t p = 0; p < points; ++p) out[p] += h * k[p];
                    return out;
                };
                const five k1 = slope(x), k2 = slope(moved(step / 2, k1)), k3 = slope(moved(step / 2, k2)),
                           k4 = slope(moved(step, k3));
                for (std::size_t p = 0; p < points; ++p) x[p] += step * (k1[p] + 2 * k2[p] + 2 * k3[p] + k4[p]) / 6;
                top = std::max(top, x[0]);
            }
            if (std::fabs(top - last) < 0.01) return top - air;
            last = top;
        }
        return last - air;
    }

    // the current whose peak is the lead's limit: heat and lines together for the modes of a guessed current, secants
    // through what the guesses lead to
    double rated()
    {
        const double target = c_.limit - air, steady = continuous(c_);
        const double steady_heat = steady * steady * resistance(c_, c_.limit), rates = steady_heat / (whole_ * target);
        double amps = steady * std::sqrt(std::expm1(-rates * period_) / std::expm1(-rates * time_[0]));
        double near = 1e-3, guess_before = 0, step_before = 0, heat = 0;
        std::array<double, most_pieces> by_heat, means;
        for (int guess = 0; guess < 20; ++guess) {
            const std::array<double, most_pieces> kept = mean_;
            start_with(amps);
            if (guess == 0)
                heat = heat_;
            else
                mean_ = kept;
            // what a watt does
            means = mean_;
            loss_.fill(0);
            at_.fill(air);
            follow(1);
            const double top_by_heat = top_, mean_by_heat = on_mean_;
            for (std::size_t n = 0; n < count_; ++n) by_heat[n] = mean_[n] - air;
            mean_ = means;
            double mean = 0;
            for (int step = 0;; ++step) {
                if (step == 40) throw std::runtime_error("not settled");
                touch();
                follow(heat);
                const double missing = target - top_, more = missing / top_by_heat;
                heat += more;
                double change = std::fabs(missing), rise = 0;
                for (std::size_t n = 0; n < count_; ++n) {
                    mean_[n] += more * by_heat[n];
                    change = std::max(change, std::fabs(mean_[n] - at_[n]));
                    rise = std::max(rise, std::fabs(at_[n] - air));
                }
                mean = on_mean_ + more * mean_by_heat;
                if (change <= near * (1 + rise)) break;
            }
            const double unit = resistance(c_, air), gain = r20_ * alpha;
            const double stepped = std::sqrt((heat + amps * amps * gain * mean) / (unit + gain * mean));
            const double step = stepped - amps;
            const double next = guess == 0 ? stepped : amps - step * (amps - guess_before) / (step - step_before);
            const bool is_near = guess > 0 && std::fabs(next - amps) <= 1e-9 * amps;
            if (near == 1e-10 && (is_near || step == 0)) return is_near ? next : stepped;
            near = std::max(1e-10, std::min(1e-3, 1e-3 * step * step / (amps * amps)));
            guess_before = amps;
            step_before = step;
            amps = next;
        }
        throw std::runtime_error("not settled");
    }

private:
    static constexpr std::size_t most_pieces = 32;

    double slope_at(double t) const
    {
        const double step = 0.02 + 0.05 * std::fabs(t - air);
        return (loss(c_.outer, factor_, t + step) - loss(c_.outer, factor_, t - step)) / (2 * step);
    }

    // modes and the period's map for a current, means where the surface gives off the mean heat
    void start_with(double amps)
    {
        heat_ = amps * amps * resistance(c_, air);
        const double gain = amps * amps * r20_ * alpha, share = time_[0] / period_;
        double x = share * heat_ / (g_ * 0.5), before = 0, change = 0;  // Newton's rule on the mean surface
        int steps = 0;
        do {
            const double at = air + x, q = loss(c_.outer, factor_, at);
            const double slope = (loss(c_.outer, factor_, at + 1e-3) - q) / 1e-3;
            before = std::fabs(change);
            change = (q - share * (heat_ + gain * (x + q / g_))) / (slope - share * gain * (1 + slope / g_));
            x -= change;
            if (++steps == 50) throw std::runtime_error("no mean");
        } while (std::fabs(change) > 1e-9 && (before == 0 || std::fabs(change) > 1e-13 * before));
        slope_ = slope_at(air + x);
        for (std::size_t part = 0; part < 2; ++part) {
            const double on_gain = part == 0 ? gain : 0;
            if (!known_) {
                matrix a{};
                for (std::size_t i = 0; i < points; ++i) {
                    modes_[part].v[i] = {};
                    modes_[part].v[i][i] = 1;
                    for (std::size_t j = 0; j < points; ++j) a[i][j] = -g_ * nodes.flow[i][j] / (root_[i] * root_[j]);
                }
                a[0][0] += on_gain / (root_[0] * root_[0]);
                a[4][4] -= slope_ / (root_[4] * root_[4]);
                if (part == 0)
                    modes_[0].turn(a);
                else {
                    modes_[1] = modes_[0];
                    modes_[1].grow(-gain / (root_[0] * root_[0]), 0);
                }
            } else
                modes_[part].grow((part == 0 ? gain - gain_of_modes_ : 0) / (root_[0] * root_[0]),
                                  (slope_of_modes_ - slope_) / (root_[4] * root_[4]));
        }
        known_ = true;
        gain_of_modes_ = gain;
        slope_of_modes_ = slope_;
        matrix map{};  // of the period less one
        for (std::size_t part = 0; part < 2; ++part) {
            matrix grows{}, next = map;
            for (std::size_t k = 0; k < points; ++k) {
                const double growth = std::expm1(modes_[part].rate[k] * time_[part]);
                for (std::size_t i = 0; i < points; ++i)
                    for (std::size_t j = 0; j < points; ++j)
                        grows[i][j] += growth * modes_[part].v[i][k] * modes_[part].v[j][k];
            }
            for (std::size_t i = 0; i < points; ++i)
                for (std::size_t j = 0; j < points; ++j) {
                    next[i][j] += grows[i][j];
                    for (std::size_t k = 0; k < points; ++k) next[i][j] += grows[i][k] * map[k][j];
                }
            map = next;
        }
        for (std::size_t n = 0; n < count_; ++n) {
            const modes& m = modes_[n < on_pieces_ ? 0 : 1];
            const double t = span_[n];
            for (std::size_t k = 0; k < points; ++k) {
                const double x_k = m.rate[k] * t, growth = std::expm1(x_k);
                once_[n][k] = growth / m.rate[k];
                twice_[n][k] =
                    std::fabs(x_k) > 0.1
                        ? (once_[n][k] - t) / m.rate[k]
                        : t * t *
                              (0.5 +
                               x_k * (1.0 / 6 +
                                      x_k * (1.0 / 24 + x_k * (1.0 / 120 +
                                                               x_k * (1.0 / 720 + x_k * (1.0 / 5040 + x_k / 40320))))));
            }
            mean_[n] = air + x;
        }
        for (std::size_t i = 0; i < points; ++i)
            for (std::size_t j = 0; j < points; ++j) lu_[i][j] = -map[i][j];
        for (std::size_t c = 0; c < points; ++c) {
            std::size_t best = c;
            for (std::size_t r = c + 1; r < points; ++r)
                if (std::fabs(lu_[r][c]) > std::fabs(lu_[best][c])) best = r;
            pivot_[c] = best;
            std::swap(lu_[c], lu_[best]);
            for (std::size_t r = c + 1; r < points; ++r) {
                const double f = lu_[r][c] /= lu_[c][c];
                for (std::size_t k = c + 1; k < points; ++k) lu_[r][k] -= f * lu_[c][k];
            }
        }
    }

    void touch()
    {
        for (std::size_t n = 0; n < count_; ++n) {
            at_[n] = mean_[n];
            loss_[n] = loss(c_.outer, factor_, at_[n]);
        }
    }

    five to_modes(const modes& m, const five& y) const
    {
        five z{};
        for (std::size_t i = 0; i < points; ++i)
            for (std::size_t k = 0; k < points; ++k) z[k] += m.v[i][k] * y[i];
        return z;
    }
    five from_modes(const modes& m, const five& z) const
    {
        five y{};
        for (std::size_t i = 0; i < points; ++i)
            for (std::size_t k = 0; k < points; ++k) y[i] += m.v[i][k] * z[k];
        return y;
    }

    // the settled period with the lines as they are and a heat at the air's temperature
    void follow(double heat)
    {
        five z{};
        const auto drive = [&](std::size_t n, std::size_t k) {
            const modes& m = modes_[n < on_pieces_ ? 0 : 1];
            return (n < on_pieces_ ? m.v[0][k] * heat / root_[0] : 0) +
                   m.v[4][k] * (slope_ * (at_[n] - air) - loss_[n]) / root_[4];
        };
        for (std::size_t n = 0; n < count_; ++n) {
            const modes& m = modes_[n < on_pieces_ ? 0 : 1];
            if (n == on_pieces_) z = to_modes(m, from_modes(modes_[0], z));
            for (std::size_t k = 0; k < points; ++k) z[k] += (m.rate[k] * z[k] + drive(n, k)) * once_[n][k];
        }
        five w = from_modes(modes_[1], z);
        for (std::size_t c = 0; c < points; ++c) std::swap(w[c], w[pivot_[c]]);
        for (std::size_t c = 0; c < points; ++c)
            for (std::size_t r = c + 1; r < points; ++r) w[r] -= lu_[r][c] * w[c];
        for (std::size_t c = points; c-- > 0;) {
            for (std::size_t k = c + 1; k < points; ++k) w[c] -= lu_[c][k] * w[k];
            w[c] /= lu_[c][c];
        }
        z = to_modes(modes_[0], w);
        double on_sum = 0;
        for (std::size_t n = 0; n < count_; ++n) {
            const modes& m = modes_[n < on_pieces_ ? 0 : 1];
            if (n == on_pieces_) z = to_modes(m, from_modes(modes_[0], z));
            double surface = 0;
            for (std::size_t k = 0; k < points; ++k) {
                const double speed = m.rate[k] * z[k] + drive(n, k), sum = z[k] * span_[n] + speed * twice_[n][k];
                surface += m.v[4][k] * sum;
                if (n < on_pieces_) on_sum += m.v[0][k] * sum;
                z[k] += speed * once_[n][k];
            }
            mean_[n] = air + surface / span_[n] / root_[4];
            if (n + 1 == on_pieces_) {
                top_ = 0;
                for (std::size_t k = 0; k < points; ++k) top_ += m.v[0][k] * z[k];
                top_ /= root_[0];
            }
        }
        on_mean_ = on_sum / (root_[0] * time_[0]);
    }

    lead c_;
    std::array<double, 2> time_;
    double period_, g_, r20_, factor_;
    double whole_ = 0, heat_ = 0, slope_ = 0, gain_of_modes_ = 0, slope_of_modes_ = 0, top_ = 0, on_mean_ = 0;
    bool known_ = false;
    five root_{};
    std::size_t count_ = 0, on_pieces_ = 0;
    std::array<modes, 2> modes_{};
    std::array<double, most_pieces> span_{}, at_{}, loss_{}, mean_{};
    std::array<five, most_pieces> once_{}, twice_{};
    matrix lu_{};
    std::array<std::size_t, points> pivot_{};
};

}  // namespace plain
