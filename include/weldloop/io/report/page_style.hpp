#pragma once
/// @file
/// The looks of the report page around its drawings.

#include <string_view>

namespace weldloop {

/// The style sheet of the page; it uses the colours of drawing_style.
inline constexpr std::string_view page_style = R"css(
*{box-sizing:border-box}
body{margin:0;background:var(--paper);color:var(--ink);font:16px/1.5 system-ui,"DejaVu Sans",sans-serif;
overflow-wrap:anywhere}
main,header,footer{max-width:64rem;margin:0 auto;padding:0 1.25rem}
header{padding-top:1.6rem}
h1{font-size:1.6rem;line-height:1.2;margin:0 0 .5rem}
h2{font-size:1.15rem;margin:2.2rem 0 .5rem}
h3{font-size:1rem;margin:1.2rem 0 .3rem}
p{margin:.4rem 0;max-width:48rem}
.conditions{display:grid;grid-template-columns:max-content 1fr;gap:.1rem 1rem;margin:.4rem 0}
.conditions dt{color:var(--soft)}
.conditions dd{margin:0}
.danger{border:3px solid var(--over);padding:.2rem 1rem .5rem;margin:1.2rem 0}
.danger h2{margin:.5rem 0 .2rem;color:var(--over)}
.danger>ul{list-style:none;padding:0;margin:0}
.danger b,.findings b{text-transform:uppercase;font-size:.82rem;letter-spacing:.03em}
.short h2,.first h2{margin-top:1.2rem}
.answer{font-size:1.15rem;line-height:1.4;font-weight:600}
.first ol{padding-left:1.7rem}
.beside{list-style:"! ";padding-left:1rem;margin:.2rem 0 .5rem;font-size:.92rem;font-weight:400}
.beside ::marker,.cautions ::marker{font-weight:700}
.scroll{overflow-x:auto}
.scroll:focus-visible{outline:2px solid var(--mark)}
figure{margin:.6rem 0 1.2rem}
figcaption{color:var(--soft);font-size:.9rem;max-width:46rem}
.drawing{width:100%;height:auto}
.one .drawing{max-width:34rem}
.on-narrow{display:none}
.on-narrow .drawing{max-width:30rem}
.charts{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,26rem),1fr));gap:0 2rem;align-items:start}
.charts>div:empty{display:none}
table{border-collapse:collapse;width:100%;font-size:.92rem;font-variant-numeric:tabular-nums;margin:.4rem 0}
caption{text-align:left;color:var(--soft);font-size:.9rem;padding-bottom:.4rem}
th,td{padding:.35rem .4rem;text-align:left;vertical-align:top;border-bottom:1px solid var(--rule)}
thead th{border-bottom:2px solid var(--ink);vertical-align:bottom;overflow-wrap:normal}
td{overflow-wrap:normal}
.says,.against,.aside{overflow-wrap:anywhere}
.n{text-align:right;white-space:nowrap}
thead .n{white-space:normal}
.why{display:block;color:var(--soft);font-size:.86rem;font-weight:400;max-width:30rem}
.n .why{white-space:nowrap}
tbody th{font-weight:600;min-width:7rem}
.says{min-width:13rem}
.verdict{font-weight:650;text-decoration:underline;text-decoration-thickness:2px;text-underline-offset:2px;
display:inline-block;line-height:1.5}
.verdict.w-none,.verdict.w-within{font-weight:400;text-decoration:none}
.w-close.verdict,.w-may.verdict{text-decoration-style:dashed}
.w-melt.verdict{text-decoration-style:double}
.w-open.verdict{text-decoration-style:dotted}
ol{padding-left:2.1rem}
ul{padding-left:1.4rem}
ol,ul{max-width:48rem;margin:.3rem 0}
li{margin:.3rem 0}
.gain{display:block;color:var(--soft);font-size:.92rem}
.note{color:var(--soft);font-size:.9rem}
.cautions{margin:2rem 0 1rem;border-top:3px solid var(--ink);border-bottom:3px solid var(--ink);padding:.2rem 0 .5rem}
.cautions h2,.cautions h3{margin:.4rem 0 .2rem}
.cautions ul{list-style:"! ";padding-left:1rem}
.findings{list-style:none;padding:0}
.fault li:first-child{font-weight:650}
code{font-size:.82rem;color:var(--soft)}
.places .part th{padding-top:.8rem;border-bottom:1px solid var(--ink);font-weight:650}
.places tbody th{font-weight:400}
.places .deciding th,.places .deciding td{font-weight:650}
.places .against,.places .aside{font-size:.86rem;color:var(--soft)}
details{border-top:1px solid var(--rule);padding:.5rem 0}
summary{cursor:pointer;font-weight:600}
summary:focus-visible{outline:2px solid var(--mark)}
.sources{font-size:.86rem;columns:2 22rem;column-gap:2rem;max-width:none}
.sources li{break-inside:avoid}
footer{padding-top:1rem;padding-bottom:2.5rem;color:var(--soft);font-size:.9rem}
@media screen and (max-width:56rem){.told thead{position:absolute;width:1px;height:1px;overflow:hidden;
clip-path:inset(50%)}
.told,.told tbody,.told caption{display:block}
.told tr{display:grid;grid-template-columns:repeat(auto-fill,minmax(8.5rem,1fr));gap:0 .8rem;padding:.5rem 0;
border-bottom:1px solid var(--rule)}
.told th,.told td{border:0;padding:.1rem 0;min-width:0;text-align:left;white-space:normal}
.told td[data-is]::before{content:attr(data-is);display:block;color:var(--soft);font-size:.82rem}
.told .no{grid-column:1/-1;color:var(--soft)}.told .no::before{content:"No. "}
.told tbody th,.told .says,.told .against,.told .aside{grid-column:1/-1}
.parts tbody th{font-size:1.02rem}.told .n .why{display:inline;white-space:nowrap}}
@media screen and (max-width:48rem){.on-wide{display:none}.on-narrow{display:block}
main,header,footer{padding-left:.8rem;padding-right:.8rem}header{padding-top:1rem}
.conditions{grid-template-columns:1fr}.conditions dt{margin-top:.3rem}}
@media print{@page{margin:13mm}:root{font-size:9.2pt}body{font-size:1rem;line-height:1.35}
main,header,footer{max-width:none;padding:0}header{padding-top:0}h1{font-size:1.4rem;margin-bottom:.2rem}
h2,h3,caption{break-after:avoid}h2{margin-top:1.2rem}.short h2,.first h2{margin-top:.6rem}
.rest{break-before:page}.scroll{overflow:visible}thead{display:table-header-group}tr,li,dd,figure,.charts>div{break-inside:avoid}
li{margin:.1rem 0}ol,ul,p,figcaption{max-width:none}.danger{margin:.6rem 0}.danger,.short{break-inside:avoid}
.charts{grid-template-columns:1fr 1fr}.on-wide .drawing{max-height:72mm}.beside{margin:.1rem 0 .2rem}
.answer{font-size:1.1rem}details:not([open]){display:none}}
)css";

}  // namespace weldloop
