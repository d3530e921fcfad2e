#pragma once
/// @file
/// The looks of the drawings: one style sheet for light, dark and print.
///
/// Verdicts differ by the style of the line and by a word beside it, heat by the printed number, so that nothing rests
/// on colour alone.

#include <array>
#include <cstddef>
#include <string>
#include <string_view>

#include <weldloop/core/number_text.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/io/report/shown_units.hpp>
#include <weldloop/rating/verdict.hpp>

namespace weldloop {

/// The style sheet of the drawings, for the head of a page or the beginning of a drawing.
inline constexpr std::string_view drawing_style = R"css(
:root{color-scheme:light dark;--paper:#fcfbf8;--ink:#1f252b;--soft:#5b646d;--rule:#d3cec2;--wash:#f0ede5;
--mark:#155e75;
--within:#155e75;--none:#6b7280;--close:#9a6700;--may:#b4530a;--over:#b3261e;--melt:#86198f;--open:#1f252b;
--bar:#5d8aa3}
@media (prefers-color-scheme:dark){:root{--paper:#14181c;--ink:#e9e5db;--soft:#a6adb4;--rule:#3b434b;--wash:#1e242a;
--mark:#7cc4dc;
--within:#7cc4dc;--none:#9aa3ac;--close:#e3b341;--may:#f0904a;--over:#ff8a7d;--melt:#e39bf0;--open:#e9e5db;
--bar:#5f93ae}}
@media print{:root{color-scheme:light;--paper:#fff;--ink:#000;--soft:#444;--rule:#bbb;--wash:#f4f4f4;--mark:#155e75;
--within:#155e75;--none:#6b7280;--close:#9a6700;--may:#b4530a;--over:#b3261e;--melt:#86198f;--open:#000;
--bar:#5d8aa3}}
.drawing{font-family:system-ui,"DejaVu Sans",sans-serif;font-size:13px;fill:var(--ink);display:block}
.drawing .rail{stroke:var(--ink);stroke-width:3;fill:none;stroke-linecap:round}
.drawing .grid{stroke:var(--rule);stroke-width:1}
.drawing .axis{stroke:var(--soft);stroke-width:1.2}
.drawing .thin{stroke:var(--soft);stroke-width:1;stroke-dasharray:2 3;fill:none}
.drawing .limit{stroke:var(--ink);stroke-width:1.8;stroke-dasharray:7 4;fill:none}
.drawing .limit-mark{stroke:var(--ink);stroke-width:3}
.drawing .whisker{stroke:var(--ink);stroke-width:1.5;fill:none}
.drawing .bar{fill:var(--bar)}
.drawing .sum{fill:var(--bar);stroke:var(--ink);stroke-width:1.5}
.drawing .band{fill:var(--bar);fill-opacity:.22}
.drawing .box{fill:var(--wash);stroke:var(--ink);stroke-width:1.5}
.drawing .gap{fill:var(--paper)}
.drawing .dot{fill:var(--ink)}
.drawing .glyph{stroke:#1f252b;stroke-width:1.8;fill:none;stroke-linejoin:round;stroke-linecap:round}
.drawing .bolt{stroke:var(--mark);stroke-width:3;fill:none;stroke-linejoin:round}
.drawing .middle{text-anchor:middle}
.drawing .end{text-anchor:end}
.drawing .small{font-size:11.5px}
.drawing .soft{fill:var(--soft)}
.drawing .strong{font-weight:650}
.drawing .halo{paint-order:stroke;stroke:var(--paper);stroke-width:4px;stroke-linejoin:round}
.drawing .large{font-size:17px}
.drawing .curve0,.drawing .curve1,.drawing .curve2,.drawing .curve3,.drawing .curve4,.drawing .curve5,.drawing .curve6,
.drawing .curve7{fill:none;stroke-width:2.4;stroke-linejoin:round}
.drawing .curve0{stroke:var(--mark)}
.drawing .curve1{stroke:var(--may);stroke-dasharray:9 4}
.drawing .curve2{stroke:var(--melt);stroke-dasharray:2 3}
.drawing .curve3{stroke:var(--soft);stroke-dasharray:9 3 2 3}
.drawing .curve4{stroke:var(--over);stroke-dasharray:16 4}
.drawing .curve5{stroke:var(--close);stroke-dasharray:5 3 2 3 2 3}
.drawing .curve6{stroke:var(--ink);stroke-dasharray:1 4}
.drawing .curve7{stroke:var(--bar);stroke-dasharray:16 3 3 3 3 3}
.drawing .case-kind{fill:none;stroke:var(--soft);stroke-width:1.4;stroke-dasharray:2 4}
.drawing .case-poor{fill:none;stroke:var(--may);stroke-width:2;stroke-dasharray:9 4}
.drawing .end-mark{stroke:var(--over);stroke-width:2.6;fill:none}
.drawing .frame{fill:none;stroke:var(--ink);stroke-width:1.5}
.drawing .paper{fill:var(--paper);stroke:var(--rule);stroke-width:1}
.drawing .tone-declines{fill:var(--may);fill-opacity:.10}
.drawing .tone-unstable{fill:var(--over);fill-opacity:.14}
.drawing .hatch-declines{fill:none;stroke:var(--may);stroke-width:1.3}
.drawing .hatch-unstable{fill:none;stroke:var(--over);stroke-width:1.5}
.drawing .edge-declines{fill:none;stroke:var(--ink);stroke-width:1.8;stroke-dasharray:7 4}
.drawing .edge-unstable{fill:none;stroke:var(--ink);stroke-width:3.4;stroke-linejoin:miter}
.drawing .chip{stroke:var(--soft);stroke-width:1}
.drawing .chip-ground{fill:var(--wash)}
.heat0{fill:#eef1ee}.heat1{fill:#f8ebc4}.heat2{fill:#f8d389}.heat3{fill:#f2ae62}.heat4{fill:#e88a55}
.heat5{fill:#dd6a57}
.no-heat{fill:#dfe3e6}
.v-within{stroke:var(--within);stroke-width:1.5}
.v-none{stroke:var(--none);stroke-width:1.5;stroke-dasharray:1.5 2.5}
.v-close{stroke:var(--close);stroke-width:2.5;stroke-dasharray:8 3}
.v-may{stroke:var(--may);stroke-width:2.5;stroke-dasharray:9 3 2 3}
.v-over{stroke:var(--over);stroke-width:4}
.v-melt{stroke:var(--melt);stroke-width:4;stroke-dasharray:5 3}
.v-open{stroke:var(--open);stroke-width:3;stroke-dasharray:2 6}
.drawing .w-within,.w-within{fill:var(--within);color:var(--within)}
.drawing .w-none,.w-none{fill:var(--none);color:var(--none)}
.drawing .w-close,.w-close{fill:var(--close);color:var(--close)}
.drawing .w-may,.w-may{fill:var(--may);color:var(--may)}
.drawing .w-over,.w-over{fill:var(--over);color:var(--over)}
.drawing .w-melt,.w-melt{fill:var(--melt);color:var(--melt)}
.drawing .w-open,.w-open{fill:var(--open);color:var(--open)}
)css";

/// Every verdict, in the order of the keys.
inline constexpr std::array verdicts_by_weight{verdict::within_limit, verdict::not_judged, verdict::close_to_limit,
                                               verdict::may_exceed,   verdict::over_limit, verdict::spots_melting,
                                               verdict::open_circuit};

/// The part of a class name that stands for a verdict: "over" in "v-over" (line) and "w-over" (word).
[[nodiscard]] constexpr std::string_view class_word(verdict v)
{
    switch (v) {
    case verdict::within_limit: return "within";
    case verdict::not_judged: return "none";
    case verdict::close_to_limit: return "close";
    case verdict::may_exceed: return "may";
    case verdict::over_limit: return "over";
    case verdict::spots_melting: return "melt";
    case verdict::open_circuit: return "open";
    }
    return "none";
}

/// The steps of the heat colours.
struct heat_step {
    double below_celsius;         ///< upper end of the step [degC]
    std::string_view class_name;  ///< of its fill
};

/// The steps, coolest first.
inline constexpr std::array<heat_step, 6> heat_steps{
    {{45.0, "heat0"}, {65.0, "heat1"}, {85.0, "heat2"}, {120.0, "heat3"}, {200.0, "heat4"}, {1e9, "heat5"}}};

/// "below 45", "45 to 65", "200 or above": a step as printed in the key. @param which from 0 @param units of the report
/// @throws std::out_of_range for a step there is not
[[nodiscard]] inline std::string heat_words(std::size_t which, const shown_units& units)
{
    const auto end_of = [&units](std::size_t k) {
        return number_text(units.temperatures.number_of(temperature::celsius(heat_steps.at(k).below_celsius)));
    };
    if (which == 0) return "below " + end_of(0);
    return which + 1 == heat_steps.size() ? end_of(which - 1) + " or above"
                                          : end_of(which - 1) + " to " + end_of(which);
}

/// The class of the fill for a temperature.
[[nodiscard]] constexpr std::string_view heat_class(temperature t)
{
    for (const heat_step& step : heat_steps)
        if (t.in_celsius() < step.below_celsius) return step.class_name;
    return "heat5";
}

}  // namespace weldloop
