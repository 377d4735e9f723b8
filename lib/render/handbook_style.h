// SPDX-License-Identifier: MIT
#pragma once

namespace asterism {

/// What the booklet adds to the style of the pages.
inline constexpr auto handbook_style =
    R"(.about { margin: 0; color: var(--soft); font-size: .9rem; }
.contents { list-style: none; padding: 0; }
.contents > li { margin: .5rem 0; font-weight: 600; }
.parts { margin: .1rem 0 0 1rem; font-weight: 400; }
a { color: var(--link); }
a:focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
section.level-2 > h2 { margin-top: 2.5rem; font-size: 1.4rem; border-bottom: 3px solid var(--ink); }
section.level-3 > h3 { margin-top: 2rem; font-size: 1.2rem; border-bottom: 1px solid var(--ink); }
section.level-4 > h4 { margin: 1.2rem 0 .2rem; font-size: 1.02rem; }
.how { color: var(--soft); max-width: 46rem; }
.entries { columns: 2 24rem; column-gap: 2rem; }
.entry { margin: 0 0 .8rem; padding: 0 0 0 .7rem; border-left: 4px solid var(--rule); break-inside: avoid; }
.entry h3, .entry h4, .entry h5 { margin: 0; font-size: .98rem; line-height: 1.35; }
.entry p { margin: .15rem 0; font-size: .93rem; line-height: 1.42; }
.entry .facts { color: var(--soft); font-size: .82rem; }
.entry .facts b { font-weight: 600; color: var(--ink); }
.entry:target { background: var(--amber-ground); }
.no { color: var(--soft); font-weight: 400; font-variant-numeric: tabular-nums; }
.badge { display: inline-block; padding: 0 .4em; border: 1px solid currentColor; border-radius: .25em;
  font-size: .76rem; font-weight: 600; white-space: nowrap; color: var(--soft); }
.badge.red-flag, .badge.emergency, .badge.same-day { color: var(--red); }
.badge.major-anomaly, .badge.urgent { color: var(--amber); }
.entry.red-flag, .entry.emergency, .entry.same-day { border-left-color: var(--red); }
.entry.major-anomaly, .entry.urgent { border-left-color: var(--amber); }
p.clause { font-weight: 500; }
ul.clause { margin: .1rem 0 .3rem; font-size: .93rem; line-height: 1.4; }
ul.clause li { margin: 0; }
.compact .entry { margin-bottom: .45rem; border-left-width: 2px; }
.index ul { columns: 4 13rem; column-gap: 1.4rem; list-style: none; padding: 0; font-size: .85rem; }
.index li { margin: 0; padding-left: 1em; text-indent: -1em; break-inside: avoid; }
.index h3 { margin: 1rem 0 .2rem; }
@media print {
  @page { size: A4; margin: 15mm 13mm 17mm; @bottom-center { content: counter(page); font: 8pt sans-serif; } }
  html { font-size: 8.3pt; }
  a { color: inherit; text-decoration: none; }
  header { border-bottom: 2pt solid #000; padding: 0 0 3mm; }
  h1 { font-size: 20pt; }
  section.level-2 { break-before: page; }
  section.level-2 > h2 { margin-top: 0; }
  h2, h3, h4, h5 { break-after: avoid; }
  .how { break-after: avoid; max-width: none; }
  .entries { columns: 2; column-gap: 6mm; }
  .entry { padding-left: 2mm; border-left: 1.2pt solid #888; margin-bottom: 2mm; }
  .entry.red-flag, .entry.emergency, .entry.same-day { border-left: 2.4pt solid #000; }
  .badge.red-flag, .badge.emergency, .badge.same-day { background: #000; border-color: #000; color: #fff;
    print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  .entry p { margin: .4mm 0; line-height: 1.3; }
  p.clause { break-after: avoid; }
  .index ul { columns: 4; column-gap: 4mm; font-size: 7.2pt; line-height: 1.25; }
  .index h3 { margin: 2mm 0 .5mm; font-size: 9pt; }
}
)";

}  // namespace asterism
