#pragma once
/// @file
/// From the states of all parts and what is told of them to the probability of each state, and of each observation
/// being wrong.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

#include <weldloop/field/part_evidence.hpp>
#include <weldloop/field/part_states.hpp>
#include <weldloop/solve/span_sums.hpp>

namespace weldloop::detail {

/// All that is known of a loop.
struct fault_evidence {
    std::vector<part_states> parts;               // by their number
    std::vector<std::vector<told_of_part>> told;  // of each part by itself
    std::vector<volt_reading> spans;              // of several parts
    std::size_t most = 64;                        // values of a sum that are kept as they are
};

/// The probabilities that follow. Readings of spans that hold one another, or stand apart, at one current form layers;
/// what no layer has room for takes one of its own, in which other parts are as they were before anything was read.
class fault_inference {
public:
    static constexpr std::size_t nothing = static_cast<std::size_t>(-1);

    /// @param e kept by the caller @param left_out number of an observation that is left out, or nothing
    explicit fault_inference(const fault_evidence& e, std::size_t left_out = nothing) : evidence_(&e)
    {
        for (std::size_t p = 0; p < e.parts.size(); ++p) {
            std::vector<double> weight = e.parts[p].prior;
            for (const told_of_part& t : e.told[p]) {
                if (t.which == left_out) continue;
                double most = 0.0;
                for (std::size_t i = 0; i < weight.size(); ++i) {
                    weight[i] *= t.at(i);
                    most = std::max(most, weight[i]);
                }
                if (most > 0.0)
                    for (double& w : weight) w /= most;
            }
            weight_.push_back(std::move(weight));
        }
        sort_layers(left_out);
        std::vector<solve::distribution> numbers(e.parts.size());
        for (std::size_t l = 0; l < layers_.size(); ++l) {
            const layer& here = layers_[l];
            for (std::size_t p = 0; p < numbers.size(); ++p) numbers[p] = numbers_of(p, l, false);
            trees_.emplace_back(numbers, readings_of(here), e.most);
        }
        for (std::size_t p = 0; p < e.parts.size(); ++p) after_.push_back(weighed(p));
    }

    /// Whether readings take more than one layer.
    [[nodiscard]] bool crosses() const { return layers_.size() > 1; }
    /// Probability of each state of a part.
    [[nodiscard]] const std::vector<double>& of(std::size_t p) const { return after_[p]; }

    /// Probability that every part is as described.
    [[nodiscard]] double none() const
    {
        double log_share = 0.0;
        for (std::size_t l = 0; l < layers_.size(); ++l) {
            std::vector<solve::distribution> numbers;
            for (std::size_t p = 0; p < weight_.size(); ++p) numbers.push_back(numbers_of(p, l, true));
            log_share += solve::span_tree(numbers, readings_of(layers_[l]), evidence_->most).log_evidence() -
                         trees_[l].log_evidence();
        }
        for (std::size_t p = 0; p < weight_.size(); ++p) {
            if (!trees_.empty() && trees_.front().is_read(p)) continue;
            double sound = 0.0, all = 0.0;
            for (std::size_t i = 0; i < weight_[p].size(); ++i) {
                all += weight_[p][i];
                if (evidence_->parts[p].condition[i] == 0) sound += weight_[p][i];
            }
            if (all > 0.0) log_share += std::log(sound / all);
        }
        return std::isnan(log_share) ? 0.0 : std::clamp(std::exp(log_share), 0.0, 1.0);
    }

    /// Probability that what was told of a part was taken wrongly. @param k which of it
    [[nodiscard]] double wrong(std::size_t p, std::size_t k) const
    {
        const told_of_part& t = evidence_->told[p][k];
        double out = 0.0;
        for (std::size_t i = 0; i < after_[p].size(); ++i)
            if (after_[p][i] > 0.0) out += after_[p][i] * t.level / t.at(i);
        return std::clamp(out, 0.0, 1.0);
    }
    /// The same of a reading of a span. @param s which; it is not left out
    [[nodiscard]] double wrong(std::size_t s) const
    {
        for (std::size_t l = 0; l < layers_.size(); ++l)
            for (std::size_t k = 0; k < layers_[l].spans.size(); ++k)
                if (layers_[l].spans[k] == s) return trees_[l].level_share(k);
        return 0.0;
    }

private:
    struct layer {
        std::size_t at_current;
        std::vector<std::size_t> spans;
    };

    void sort_layers(std::size_t left_out)
    {
        const std::vector<volt_reading>& spans = evidence_->spans;
        for (std::size_t s = 0; s < spans.size(); ++s) {
            if (spans[s].which == left_out) continue;
            const auto fits = [&](const layer& l) {
                return l.at_current == spans[s].at_current &&
                       std::none_of(l.spans.begin(), l.spans.end(), [&](std::size_t other) {
                           return solve::cross(span_of(spans[s]), span_of(spans[other]));
                       });
            };
            const auto found = std::find_if(layers_.begin(), layers_.end(), fits);
            if (found == layers_.end())
                layers_.push_back({spans[s].at_current, {s}});
            else
                found->spans.push_back(s);
        }
    }
    [[nodiscard]] static solve::span_reading span_of(const volt_reading& v)
    {
        return {.first = v.first, .last = v.last, .likelihood = v.likelihood()};
    }
    [[nodiscard]] std::vector<solve::span_reading> readings_of(const layer& l) const
    {
        std::vector<solve::span_reading> out;
        for (const std::size_t s : l.spans) out.push_back(span_of(evidence_->spans[s]));
        return out;
    }
    // The resistances of a part as a layer takes them; nothing where it does not hold the part.
    [[nodiscard]] solve::distribution numbers_of(std::size_t p, std::size_t l, bool sound_alone) const
    {
        const layer& here = layers_[l];
        const part_states& part = evidence_->parts[p];
        const bool is_held = std::any_of(here.spans.begin(), here.spans.end(), [&](std::size_t s) {
            return evidence_->spans[s].first <= p && p <= evidence_->spans[s].last;
        });
        if (!is_held || part.size() == 0) return {{0.0, 1.0}};
        const std::vector<double>& weight = l == 0 ? weight_[p] : part.prior;
        // of a layer of its own nothing but what its own readings add counts
        const double sound_prior = sound_alone && l > 0 ? part.conditions.front().prior : 1.0;
        solve::distribution out;
        out.reserve(part.size());
        for (std::size_t i = 0; i < part.size(); ++i)
            if (weight[i] > 0.0 && (!sound_alone || part.condition[i] == 0))
                out.push_back({part.ohms[here.at_current][i], weight[i] / sound_prior});
        return out;
    }

    // Of a part: weighed by everything.
    [[nodiscard]] std::vector<double> weighed(std::size_t p) const
    {
        std::vector<double> out = weight_[p];
        for (std::size_t l = 0; l < layers_.size(); ++l) {
            if (!trees_[l].is_read(p) || out.empty()) continue;
            const solve::distribution curve = trees_[l].told_of(p);
            const std::vector<double>& ohms = evidence_->parts[p].ohms[layers_[l].at_current];
            std::size_t at = 0;  // states of a condition come in rising order
            for (std::size_t i = 0; i < out.size(); ++i) {
                if (i == 0 || ohms[i] < ohms[i - 1]) at = 0;
                while (at + 1 < curve.size() && curve[at + 1].at <= ohms[i]) ++at;
                out[i] *= between(curve, at, ohms[i]);
            }
        }
        double all = 0.0;
        for (const double w : out) all += w;
        if (!(all > 0.0)) return evidence_->parts[p].prior;
        for (double& w : out) w /= all;
        return out;
    }
    // Straight between the values of a curve. @param i the last at or below x, or the first
    [[nodiscard]] static double between(const solve::distribution& curve, std::size_t i, double x)
    {
        if (i + 1 == curve.size() || x <= curve[i].at) return curve[i].weight;
        const double share = (x - curve[i].at) / (curve[i + 1].at - curve[i].at);
        return curve[i].weight + share * (curve[i + 1].weight - curve[i].weight);
    }

    const fault_evidence* evidence_;
    std::vector<std::vector<double>> weight_;  // of each state by what is told of its part alone
    std::vector<layer> layers_;
    std::vector<solve::span_tree> trees_;  // of each layer
    std::vector<std::vector<double>> after_;
};

}  // namespace weldloop::detail
