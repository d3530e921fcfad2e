#pragma once
/// @file
/// Currents of ways that follow the temperatures from moment to moment. Solver adapter on plain doubles.
/// Source: Kirchhoff's laws.

#include <cmath>
#include <cstddef>
#include <span>
#include <utility>
#include <vector>

#include <weldloop/circuit/current_sharing.hpp>
#include <weldloop/circuit/loop_network.hpp>
#include <weldloop/solve/current_network.hpp>
#include <weldloop/solve/heat_network.hpp>

namespace weldloop::detail {

/// What flows where and drops how much, in the mean over the time with current, with the signs of their branches.
struct sharing_means {
    std::vector<double> branch_amps, branch_volts;  // from the first point of each to its second
    std::vector<double> contact_volts;              // of every contact, part by part
    std::vector<double> metal_volts, metal_watts;   // of every part's resistances
    std::vector<double> measured_volts, watts;      // of every part; all heat it makes but for a gun's tip and wire

    explicit sharing_means(const loop_network& net)
        : branch_amps(net.branches().size()), branch_volts(net.branches().size()), metal_volts(net.parts().size()),
          metal_watts(net.parts().size()), measured_volts(net.parts().size()), watts(net.parts().size())
    {
        std::size_t contacts = 0;
        for (const loop_network::part_at& p : net.parts()) contacts += p.contacts.size();
        contact_volts.resize(contacts);
    }
    template <class Each>
    void in_order(const Each& each)
    {
        for (std::vector<double>* all :
             {&branch_amps, &branch_volts, &contact_volts, &metal_volts, &metal_watts, &measured_volts, &watts})
            for (double& x : *all) each(x);
    }
};

/// Divides a network's currents anew at every state its solver asks about.
class instant_sharing final : public solve::state_follower {
public:
    /// @param net whose currents it sets @param sharing which of its branches conduct
    instant_sharing(loop_network& net, const current_sharing& sharing) : net_(&net), closed_(sharing.branches())
    {
        for (const loop_network::branch_at& b : net.branches()) amps_.push_back(b.amps);
        closed_.set(std::vector<double>(net.network().size(), 0.0));
        static_cast<void>(closed_.prepare());
        net_->set_follower(this);
    }
    ~instant_sharing() override { net_->set_follower(nullptr); }

    void follow(std::span<const double> rise) override
    {
        closed_.set(rise);
        constexpr double closely = 1e-11;  // of the drops: heat is balanced to less
        solve::divided_currents divided = closed_.divide(amps_, closely);
        if (divided.what != solve::division::found) return;  // an iterate far off: as before
        amps_ = std::move(divided.amps);
        net_->set_currents(amps_);
    }
    [[nodiscard]] const std::vector<double>& amps() const { return amps_; }

    [[nodiscard]] std::size_t numbers() const override
    {
        std::size_t out = 0;
        sharing_means(*net_).in_order([&out](double&) { ++out; });
        return out;
    }
    void add_numbers(std::span<const double> rise, double share, std::span<double> out) const override
    {
        sharing_means now(*net_);
        now.branch_amps = amps_;
        std::size_t which = 0;
        for (std::size_t i = 0; i < net_->parts().size(); ++i) {
            const loop_network::part_at& p = net_->parts()[i];
            for (const loop_network::ohmic_at& o : p.ohmics) {
                const double volts = amps_[o.branch] * (o.at_zero + o.by_kelvin * rise[o.node]);
                now.branch_volts[o.branch] += volts;
                now.metal_volts[i] += volts;
                now.metal_watts[i] += volts * amps_[o.branch];
                now.watts[i] += volts * amps_[o.branch];
            }
            for (const loop_network::contact_at& c : p.contacts) {
                const double amps = net_->amps_in(c.branch), share_of_it = amps_[c.branch] / amps;
                const double volts =
                    share_of_it * c.law->alike() *
                    c.law->volts_at(loop_network::bulk_rise(c, rise), loop_network::gripping_rise(c, rise));
                now.branch_volts[c.branch] += volts;
                now.contact_volts[which++] = volts;
                now.watts[i] += volts * amps_[c.branch];
            }
            if (!p.measured) continue;
            const double volts = p.measured->drop_of(amps_[p.branch]).volts;
            now.branch_volts[p.branch] += volts;
            now.measured_volts[i] = volts;
            now.watts[i] += volts * amps_[p.branch];
        }
        std::size_t at = 0;
        now.in_order([&](double& x) { out[at++] += share * x; });
    }

private:
    loop_network* net_;
    closed_branches closed_;
    std::vector<double> amps_;
};

}  // namespace weldloop::detail
