#pragma once
/// @file
/// The course of a welding current over one period: what heats, what the arc gets, what the drop reaches.

#include <algorithm>
#include <cmath>
#include <complex>
#include <cstddef>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include <weldloop/core/error.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// Mean values and harmonics of a course made of straight pieces.
inline constexpr source waveform_calculus{"definitions of root mean square, mean and Fourier coefficient",
                                          {},
                                          "integrated in closed form over each straight piece",
                                          source_kind::derived};

/// A straight piece of a current's course. A step stands between two pieces, not in one.
struct current_piece {
    weldloop::duration duration;  ///< [s] above 0
    current from;                 ///< [A] any, where it begins; electrode positive counts positive
    current to;                   ///< [A] any, where it ends
};

/// Pulsed direct current. The ramps come on top of the two times.
struct pulse_train {
    current base;                ///< [A] between pulses, 0 or above
    current peak;                ///< [A] at least `base`
    duration base_time;          ///< [s] at base, above 0
    duration peak_time;          ///< [s] at peak, above 0
    duration rise = duration{};  ///< [s] from base to peak, 0 or above; 0 is a step
    duration fall = duration{};  ///< [s] from peak to base, 0 or above; 0 is a step
};

/// Square-wave alternating current.
struct square_wave {
    current positive;                ///< [A] with the electrode positive, above 0
    current negative;                ///< [A] size of the current with the electrode negative, above 0
    weldloop::frequency frequency;   ///< [Hz] above 0
    fraction positive_share = 0.5;   ///< balance: share of the period with the electrode positive, between 0 and 1
    duration reversal = duration{};  ///< [s] 0 or above, each reversal takes out of the half it leads into; 0 is a step
};

/// The course of a current that repeats, or direct current.
///
/// | value           | governs                                             |
/// |-----------------|-----------------------------------------------------|
/// | rms()           | heat in leads and joints                            |
/// | mean_absolute() | power of an arc whose voltage is constant, V x this |
/// | mean()          | what a moving-coil meter shows                      |
/// | peak()          | highest drop along the loop                         |
///
/// All are exact to rounding, as are the harmonics of straight pieces and of the sine.
class waveform {
public:
    /// Direct current. @param steady I [A], any of either sign @throws not_finite_error
    [[nodiscard]] static waveform dc(current steady)
    {
        require_finite(steady, "current");
        const double size = std::fabs(steady.value());
        return waveform({}, {size, size, steady.value(), size}, duration{});
    }

    /// Sinusoidal alternating current. Peak sqrt(2) I, mean of its size 2 sqrt(2)/pi I.
    /// @param effective I, root mean square [A], 0 or above @param f [Hz], above 0
    /// @throws not_finite_error, out_of_range_error
    [[nodiscard]] static waveform sine(current effective, frequency f)
    {
        const double rms = require_not_negative(effective, "current").value();
        const double amplitude = std::numbers::sqrt2 * rms;
        const duration period = 1.0 / require_positive(f, "frequency");
        return waveform({}, {rms, 2.0 / std::numbers::pi * amplitude, 0.0, amplitude}, period);
    }

    /// A course of straight pieces, one after the other, then again from the first.
    /// @param pieces at least one, each longer than 0 @throws not_finite_error, out_of_range_error
    [[nodiscard]] static waveform of_pieces(std::vector<current_piece> pieces)
    {
        if (pieces.empty()) throw out_of_range_error("pieces of the waveform", "none", "at least one");
        duration period{};
        double square = 0.0, absolute = 0.0, mean = 0.0, peak = 0.0;
        for (const current_piece& p : pieces) {
            period += require_positive(p.duration, "duration of a piece");
            peak = std::max({peak, std::fabs(require_finite(p.from, "current").value()),
                             std::fabs(require_finite(p.to, "current").value())});
        }
        require_finite(period, "period of the waveform");
        for (const current_piece& p : pieces) {
            const double share = (p.duration / period).value();
            if (peak == 0.0) break;
            const double a = p.from.value() / peak,
                         b = p.to.value() / peak;  // of the peak, so that no square overflows
            square += share * (a * a + a * b + b * b) / 3.0;
            mean += share * (a + b) / 2.0;
            absolute += share * (a * b >= 0.0 ? std::fabs(a + b) / 2.0 : (a * a + b * b) / (2.0 * std::fabs(b - a)));
        }
        return waveform(std::move(pieces), {peak * std::sqrt(square), peak * absolute, peak * mean, peak}, period);
    }

    /// Pulsed direct current. With steps: rms^2 = (Ib^2 tb + Ip^2 tp)/(tb + tp).
    /// @param p the two currents and times, and the ramps @throws not_finite_error, out_of_range_error
    [[nodiscard]] static waveform pulse(const pulse_train& p)
    {
        require_not_negative(p.base, "base current");
        require_finite(p.peak, "peak current");
        if (p.peak < p.base)
            throw out_of_range_error("peak current", si_text(p.peak), "at least the base current, " + si_text(p.base));
        require_positive(p.base_time, "time at base");
        require_positive(p.peak_time, "time at peak");
        require_not_negative(p.rise, "rise time");
        require_not_negative(p.fall, "fall time");
        std::vector<current_piece> pieces;
        if (p.rise.value() > 0.0) pieces.push_back({p.rise, p.base, p.peak});
        pieces.push_back({p.peak_time, p.peak, p.peak});
        if (p.fall.value() > 0.0) pieces.push_back({p.fall, p.peak, p.base});
        pieces.push_back({p.base_time, p.base, p.base});
        return of_pieces(std::move(pieces));
    }

    /// Square-wave alternating current. With steps and balance b: rms^2 = b I+^2 + (1 - b) I-^2,
    /// mean of its size b I+ + (1 - b) I-.
    /// @param w currents, frequency, balance between 0 and 1, and the time of a reversal, shorter than either half
    /// @throws not_finite_error, out_of_range_error
    [[nodiscard]] static waveform square_ac(const square_wave& w)
    {
        require_positive(w.positive, "positive current");
        require_positive(w.negative, "negative current");
        const duration period = 1.0 / require_positive(w.frequency, "frequency");
        require_not_negative(w.reversal, "reversal time");
        const double b = static_cast<double>(w.positive_share);
        const duration positive = b * period - w.reversal, negative = (1.0 - b) * period - w.reversal;
        if (!(b > 0.0 && b < 1.0)) throw out_of_range_error("positive share", number_text(b), "between 0 and 1");
        if (!(positive.value() > 0.0 && negative.value() > 0.0))
            throw out_of_range_error("reversal time", si_text(w.reversal), "shorter than either half of the period");
        std::vector<current_piece> pieces;
        if (w.reversal.value() > 0.0) pieces.push_back({w.reversal, -w.negative, w.positive});
        pieces.push_back({positive, w.positive, w.positive});
        if (w.reversal.value() > 0.0) pieces.push_back({w.reversal, w.positive, -w.negative});
        pieces.push_back({negative, -w.negative, -w.negative});
        return of_pieces(std::move(pieces));
    }

    /// Root mean square [A]: the direct current that heats as much.
    [[nodiscard]] current rms() const { return in_si<current>(values_.rms); }
    /// Mean of the size of the current [A]; times a constant arc voltage it is the arc's power.
    [[nodiscard]] current mean_absolute() const { return in_si<current>(values_.absolute); }
    /// Mean with sign [A]; above 0 where the electrode is more positive.
    [[nodiscard]] current mean() const { return in_si<current>(values_.mean); }
    /// Largest size the current reaches [A].
    [[nodiscard]] current peak() const { return in_si<current>(values_.peak); }
    /// Whether the current never changes, by being direct.
    [[nodiscard]] bool is_dc() const { return period_.value() == 0.0; }
    /// The straight pieces of one period; none for direct current and the sine.
    [[nodiscard]] const std::vector<current_piece>& pieces() const { return pieces_; }
    /// Length of the period [s]; 0 for direct current.
    [[nodiscard]] duration period() const { return period_; }
    /// How often the course repeats [Hz]; 0 for direct current.
    [[nodiscard]] weldloop::frequency frequency() const { return is_dc() ? weldloop::frequency{} : 1.0 / period_; }
    /// Steepest ramp or step: the shortest time in which the current goes from one level to the next [s].
    /// 0 where there is a step; the period where the current never ramps, and for the sine and direct current.
    [[nodiscard]] duration shortest_edge() const
    {
        duration shortest = period_;
        for (std::size_t i = 0; i < pieces_.size(); ++i) {
            const current_piece& next = pieces_[(i + 1) % pieces_.size()];
            if (pieces_[i].to != next.from) return duration{};
            if (pieces_[i].from != pieces_[i].to) shortest = std::min(shortest, pieces_[i].duration);
        }
        return shortest;
    }

    static constexpr int most_harmonics = 1000000;  ///< highest order that harmonic() answers for

    /// Amplitude of a harmonic [A], |2/T integral i(t) exp(-2 pi j n t/T) dt|; its effective value is 1/sqrt(2) of it.
    /// mean()^2 and half the squares of all amplitudes add up to rms()^2.
    /// @param order n, 1 (the fundamental) to `most_harmonics` @return 0 for direct current
    /// @throws out_of_range_error
    [[nodiscard]] current harmonic(int order) const
    {
        const double n = require_within(static_cast<double>(order), 1.0, most_harmonics, "order of the harmonic");
        if (pieces_.empty()) return in_si<current>(order == 1 && !is_dc() ? values_.peak : 0.0);
        using namespace std::complex_literals;
        constexpr double pi = std::numbers::pi;
        const auto turned = [](double turns) {
            return std::polar(1.0, -2.0 * std::numbers::pi * (turns - std::floor(turns)));
        };
        // exp(-2 pi j n t) at one place less that at another, as a chord: no digits are lost between near ones
        const auto chord = [&](double from, double to) {
            return -2.0i * std::sin(pi * n * (to - from)) * turned(0.5 * n * (from + to));
        };
        // Counted from the shortest piece, which turns all phases alike: the steps at its two ends stay apart.
        const std::size_t first = static_cast<std::size_t>(
            std::min_element(pieces_.begin(), pieces_.end(),
                             [](const current_piece& a, const current_piece& b) { return a.duration < b.duration; }) -
            pieces_.begin());
        std::complex<double> sum = 0.0;
        double begin = 0.0, steps = 0.0;  // of the piece, as a share of the period; of the current, all
        for (std::size_t k = 0; k < pieces_.size(); ++k) {
            const current_piece& p = pieces_[(first + k) % pieces_.size()];
            const current_piece& before = pieces_[(first + k + pieces_.size() - 1) % pieces_.size()];
            const double share = (p.duration / period_).value(), end = begin + share;
            const double step = (p.from - before.to).value();
            steps += step;
            sum += step * chord(0.0, begin) / (2.0i * pi * n);
            sum += (p.to - p.from).value() / share * chord(begin, end) / (4.0 * pi * pi * n * n);
            begin = end;
        }
        sum += steps / (2.0i * pi * n);
        return in_si<current>(2.0 * std::abs(sum));
    }

private:
    struct mean_values {
        double rms, absolute, mean, peak;  // A
    };

    waveform(std::vector<current_piece> pieces, mean_values values, duration period)
        : pieces_(std::move(pieces)), values_(values), period_(require_finite(period, "period of the waveform"))
    {
        for (const double v : {values.rms, values.absolute, values.mean, values.peak})
            require_finite(in_si<current>(v), "current");
    }

    std::vector<current_piece> pieces_;  // none for direct current and sine
    mean_values values_;
    duration period_;
};

}  // namespace weldloop
