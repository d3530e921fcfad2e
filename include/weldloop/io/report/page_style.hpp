#pragma once
/// @file
/// The looks of the report page around its drawings.

#include <string_view>

namespace weldloop {

/// The style sheet of the page; it uses the colours of drawing_style.
inline constexpr std::string_view page_style = R"css(
*{box-sizing:border-box}
body{margin:0;background:var(--paper);color:var(--ink);font:16px/1.5 system-ui,"DejaVu Sans",sans-serif}
main,header,footer{max-width:60rem;margin:0 auto;padding:0 1.25rem}
header{padding-top:2rem}
h1{font-size:1.7rem;line-height:1.2;margin:0 0 .6rem;overflow-wrap:anywhere}
h2{font-size:1.2rem;margin:2.4rem 0 .7rem;padding-top:.7rem;border-top:2px solid var(--ink)}
h3{font-size:1rem;margin:1.4rem 0 .4rem}
p{margin:.4rem 0;max-width:46rem}
.conditions{display:grid;grid-template-columns:max-content 1fr;gap:.1rem 1rem;margin:0}
.conditions dt{color:var(--soft)}
.conditions dd{margin:0;overflow-wrap:anywhere}
.figures{display:flex;flex-wrap:wrap;gap:.8rem;margin:1.4rem 0 0}
.figures div{flex:1 1 15rem;background:var(--wash);border-left:4px solid var(--mark);padding:.7rem 1rem}
.figures b{display:block;font-size:1.35rem;line-height:1.25;overflow-wrap:anywhere}
.figures span{color:var(--soft);font-size:.9rem}
.scroll{overflow-x:auto}
.scroll:focus-visible{outline:2px solid var(--mark)}
figure{margin:.6rem 0 1.4rem}
figcaption{color:var(--soft);font-size:.9rem;max-width:46rem}
.drawing{width:100%;height:auto;min-width:42rem}
table{border-collapse:collapse;width:100%;font-size:.92rem;font-variant-numeric:tabular-nums}
caption{text-align:left;color:var(--soft);font-size:.9rem;padding-bottom:.4rem}
th,td{padding:.35rem .4rem;text-align:left;vertical-align:top;border-bottom:1px solid var(--rule)}
thead th{border-bottom:2px solid var(--ink);vertical-align:bottom}
.n{text-align:right;white-space:nowrap}
thead .n{white-space:normal}
.n .why{white-space:nowrap}
.why{display:block;color:var(--soft);font-size:.86rem;font-weight:400;max-width:30rem}
tbody th,tfoot th{font-weight:600;min-width:7.5rem;overflow-wrap:anywhere}
tbody td:last-child{min-width:16rem}
tfoot th,tfoot td{border-top:2px solid var(--ink);border-bottom:0}
.verdict{display:inline-block;border-left:4px solid currentColor;padding-left:.5rem;font-weight:650}
.verdict.w-none,.verdict.w-within{font-weight:400}
.w-close.verdict,.w-may.verdict{border-left-style:dashed}
.w-melt.verdict{border-left-style:double;border-left-width:6px}
.w-open.verdict{border-left-style:dotted}
ol,ul{padding-left:1.4rem;max-width:48rem}
li{margin:.3rem 0;overflow-wrap:anywhere}
.gain{display:block;color:var(--soft);font-size:.92rem}
.cautions{border:2px solid var(--ink);padding:.3rem 1.2rem .6rem;margin:1.2rem 0}
.findings{list-style:none;padding:0;margin:1rem 0}
.findings li{border-left:.4rem solid var(--ink);padding:.2rem .8rem;margin:.3rem 0}
.findings .f-stop{border-left-color:var(--over)}
.findings .f-warning{border-left-color:var(--may);border-left-style:dashed}
.findings .f-notice{border-left-color:var(--soft);border-left-style:dotted}
.findings .f-stop b{color:var(--over)}
.fault li:first-child{font-weight:650}
code{font-size:.82rem;color:var(--soft);overflow-wrap:anywhere}
.places .part th{padding-top:.8rem;border-bottom:1px solid var(--ink)}
.places tbody th{font-weight:400;white-space:nowrap}
.places .part th{font-weight:650;white-space:normal}
.places .deciding th,.places .deciding td{font-weight:650}
.places .against{font-size:.86rem;color:var(--soft);min-width:14rem}
.places .note{font-size:.86rem;color:var(--soft)}
.cautions h2{border:0;padding:0;margin:.6rem 0 .2rem}
.sources{font-size:.86rem;columns:2 22rem;column-gap:2rem}
.sources li{break-inside:avoid}
footer{padding-top:1rem;padding-bottom:2.5rem;color:var(--soft);font-size:.9rem}
@media (max-width:34rem){header{padding-top:1.2rem}main,header,footer{padding-left:.8rem;padding-right:.8rem}
.conditions{grid-template-columns:1fr}.conditions dt{margin-top:.3rem}
.wide{display:none}caption,thead,tbody,tfoot,table{display:block}tr{display:grid;
grid-template-columns:1.9rem 1fr 6.6rem 6rem;border-bottom:1px solid var(--rule);padding:.3rem 0}
th,td,thead th,tfoot th,tfoot td{border:0;padding:.1rem .25rem;min-width:0}tbody td:last-child{grid-column:2/-1;
min-width:0}thead th:last-child{display:none}.verdict{margin-top:.2rem}tbody th{min-width:0}
.places tr{grid-template-columns:1fr 9rem 3rem 4.2rem}.places thead th:last-child{display:none}
.places .part th,.places .against,.places tbody td.note{grid-column:1/-1;min-width:0}
.places tbody td:last-child{grid-column:1/-1}.places tbody th{white-space:normal}}
@media print{@page{margin:14mm}tfoot{display:table-row-group}thead tr{break-after:avoid}
tbody tr:first-child{break-before:avoid}.figures b{font-size:1.15rem}body{font-size:10pt}h2{break-after:avoid}
figure,tr,li,.cautions{break-inside:avoid}.scroll{overflow:visible}.drawing{min-width:0}}
)css";

}  // namespace weldloop
