// What a shop hangs beside its cable rack: which rule allows what, how long a lead stands an overload, what its rating
// becomes in other air and in a coil, how far a burnt end has to be cut back, and how long a lead may be.
//
//     lead_tables [drawing.svg [factors.csv]]   with file names, the drawing of longest lengths and the table of
//     factors
//                                               are written there
#include <array>
#include <cstddef>
#include <exception>
#include <iostream>
#include <vector>

#include <weldloop/io/draw/lead_chart.hpp>
#include <weldloop/io/draw/standalone_drawing.hpp>
#include <weldloop/io/report/factor_text.hpp>
#include <weldloop/io/report/write_file.hpp>
#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

int main(int count, char** words)
try {
    const wl::surroundings shop{.air = 30_degC};
    const wl::duty_cycle duty = wl::duty_cycle::of(6_min, 10_min);
    const wl::cable lead = wl::welding_cable(wl::aught(1), 50_ft);

    std::cout << wl::to_text(lead.size) << ", " << wl::to_text(duty) << ", air " << wl::to_text(shop.air, "degC")
              << '\n';
    for (const wl::rule_rating& rule : wl::ratings_of(lead, shop, duty).rules)
        std::cout << "  " << wl::to_text(rule.rule) << ": " << wl::to_text(rule.amps, "A")
                  << (rule.recalled ? " (recalled)" : "") << '\n';
    const wl::square_root_excess excess = wl::excess_of_square_root_rule(lead, shop, duty);
    std::cout << "  loaded by the square root it ends " << wl::to_text(excess.over_limit, "K")
              << " above its limit\n\n";

    std::cout << "from cold, until the limit of " << wl::to_text(wl::limit_of(lead), "degC") << ":\n";
    for (const wl::current& amps : {300_A, 400_A, 600_A, 900_A})
        if (const auto time = wl::time_to_limit(lead, shop, amps))
            std::cout << "  " << wl::to_text(amps, "A") << ": " << wl::to_text(*time, "min") << '\n';
        else
            std::cout << "  " << wl::to_text(amps, "A") << ": never\n";

    const std::array rack{wl::welding_cable(wl::awg(4), 50_ft), wl::welding_cable(wl::awg(2), 50_ft),
                          wl::welding_cable(wl::aught(1), 50_ft), wl::welding_cable(wl::aught(2), 50_ft),
                          wl::welding_cable(wl::aught(4), 50_ft)};
    std::cout << "\nwithout a break, alone in this air\n";
    const std::vector<wl::current> rated = wl::ampacities_of(rack, shop);
    for (std::size_t i = 0; i < rack.size(); ++i)
        std::cout << "  " << wl::to_text(rack[i].size) << ": " << wl::to_text(rated[i], "A") << '\n';

    wl::cable spare = lead;
    spare.lay = wl::lay::coiled;
    std::cout << "\nwithout a break, lying in a coil of\n";
    for (const int turns : {2, 6, 12}) {
        spare.coil_turns = turns;
        std::cout << "  " << turns << " turns: " << wl::to_text(wl::ampacity_of(spare, shop).amps, "A")
                  << " (judgement)\n";
    }

    const wl::cut_back burnt = wl::cut_back_of(lead, shop, 200_degC);
    std::cout << "\nbehind a lug that stood at 200 degC, hotter than the limit for " << wl::to_text(burnt.length, "mm")
              << ": cut there, then on to bright, flexible copper\n\n";

    std::cout << wl::factor_text(wl::factor_table_of(lead, shop, duty));
    if (count > 2) wl::write_file(words[2], wl::factor_csv(wl::factor_table_of(lead, shop, duty)));

    if (count > 1)
        wl::write_file(words[1], wl::standalone_drawing(wl::lead_length_chart(rack, {.where = shop, .duty = duty})));
} catch (const std::exception& e) {
    std::cerr << e.what() << '\n';
    return 1;
}
