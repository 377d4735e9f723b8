// SPDX-License-Identifier: MIT
#include "render/assessment_html.h"
#include "render/body_map.h"

namespace asterism {

namespace {

constexpr auto colours = R"(:root {
  color-scheme: light dark;
  --paper: #ffffff; --panel: #f5f3ef; --ink: #1d1b18; --soft: #57524a; --rule: #cbc5ba; --link: #1b4f72;
  --red: #9d1526; --red-ground: #fbe9ea; --amber: #7a4b00; --amber-ground: #fbf1dc;
  --map-plain: #f3ece2; --map-line: #6d6458; --map-normal: #cfe3d3; --map-minor: #f3d384;
  --map-major: #eb9a62; --map-red: #cf4450;
}
@media (prefers-color-scheme: dark) {
  :root {
    --paper: #16181b; --panel: #202327; --ink: #eceae6; --soft: #b9b4ab; --rule: #474b51; --link: #9cc9ea;
    --red: #ff9aa4; --red-ground: #3a1d21; --amber: #f0c36f; --amber-ground: #34290f;
    --map-plain: #2b2f34; --map-line: #a39c91; --map-normal: #35543f; --map-minor: #7d6420;
    --map-major: #94501f; --map-red: #a52c39;
  }
}
)";

constexpr auto page = R"(* { box-sizing: border-box; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 1rem/1.5 system-ui, "Segoe UI", sans-serif;
  overflow-wrap: anywhere; }
header, main, footer { max-width: 62rem; margin: 0 auto; padding: 1rem; }
header { border-bottom: 3px solid var(--ink); }
header.now { border-bottom-color: var(--red); }
.kicker { margin: 0; color: var(--soft); font-size: .9rem; }
h1 { margin: .2rem 0 .6rem; font-size: 1.5rem; line-height: 1.25; }
header.now h1 { color: var(--red); }
h2 { margin: 1.6rem 0 .5rem; padding-bottom: .2rem; border-bottom: 1px solid var(--rule); font-size: 1.15rem; }
h3 { margin: 0 0 .4rem; font-size: 1.05rem; }
p, ul, ol { margin: .3rem 0 .6rem; }
ul, ol { padding-left: 1.3rem; }
li { margin: .2rem 0; }
.recorded { display: flex; flex-wrap: wrap; gap: .2rem 1.4rem; margin: .5rem 0 0; padding: 0; list-style: none; }
.group { margin: .8rem 0; padding: .8rem 1rem; background: var(--panel); border-left: 6px solid var(--rule);
  border-radius: .3rem; break-inside: avoid; }
.group.emergency, .group.same-day { border-left-color: var(--red); }
.group.urgent { border-left-color: var(--amber); }
details { margin: .5rem 0; }
summary { cursor: pointer; padding: .15rem 0; }
summary:focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
.seen { display: block; color: var(--soft); }
.more { display: grid; grid-template-columns: max-content 1fr; gap: .1rem .8rem; margin: .3rem 0 .3rem 1.1rem;
  font-size: .92rem; }
.more dt { font-weight: 600; }
.more dd { margin: 0; }
.group > :last-child { margin-bottom: 0; }
.scroll { overflow-x: auto; }
.scroll:focus-visible { outline: 3px solid var(--link); }
table { width: 100%; border-collapse: collapse; font-size: .95rem; overflow-wrap: break-word; }
caption { text-align: left; color: var(--soft); padding-bottom: .3rem; }
th, td { padding: .35rem .6rem .35rem 0; border-bottom: 1px solid var(--rule); text-align: left; vertical-align: top; }
tbody th { font-weight: 600; }
.essential { padding: .5rem .8rem; background: var(--amber-ground); border-left: 6px solid var(--amber); }
.caution { padding: .3rem .8rem .3rem 1.8rem; background: var(--amber-ground); }
.where { display: grid; gap: 1rem; grid-template-columns: minmax(16rem, 5fr) 7fr; align-items: start; }
.where > * { min-width: 0; }
.charts { display: grid; gap: 1rem; grid-template-columns: repeat(auto-fit, minmax(min(100%, 26rem), 1fr)); margin-top: 1rem; }
.charts img { width: 100%; height: auto; border: 1px solid var(--rule); }
figure { margin: 0; }
figcaption { color: var(--soft); font-size: .9rem; }
.key { display: inline-block; width: 1em; height: 1em; vertical-align: -.15em; border: 1.5px solid var(--map-line); }
.key.red-flag { background: var(--map-red); } .key.major { background: var(--map-major); }
.key.minor { background: var(--map-minor); } .key.normal { background: var(--map-normal); }
.key.open { background: repeating-linear-gradient(45deg, var(--map-plain) 0 3px, var(--map-line) 3px 4px); }
footer { border-top: 1px solid var(--rule); color: var(--soft); font-size: .85rem; }
footer strong { color: var(--ink); font-size: .95rem; font-weight: 600; }
@media (max-width: 40rem) { h1 { font-size: 1.25rem; } .where { grid-template-columns: 1fr; } }
)";

constexpr auto print = R"(@media print {
  @page { size: A4; margin: 14mm; }
  :root { color-scheme: light; --paper: #fff; --panel: #fff; --ink: #000; --soft: #333; --rule: #999; --red: #8a0f1f;
    --red-ground: #fff; --amber: #5c3900; --amber-ground: #fff; --map-plain: #fff; --map-line: #555;
    --map-normal: #e2e2e2; --map-minor: #cfcfcf; --map-major: #a9a9a9; --map-red: #7a7a7a; }
  html { font-size: 9pt; }
  body { line-height: 1.35; }
  header, main, footer { max-width: none; padding: .3rem 0; }
  .group { border: 1px solid var(--rule); border-left: 5px solid #000; padding: .4rem .6rem; }
  .where { grid-template-columns: 4fr 8fr; }
  .charts { grid-template-columns: 1fr 1fr; }
  .scroll { overflow: visible; }
  .group details::details-content { content-visibility: visible; block-size: auto; }
  summary { list-style: none; }
  h2 { break-after: avoid; margin-top: .9rem; }
  section { break-inside: auto; }
  tr, li, figure, img { break-inside: avoid; }
}
)";

}  // namespace

std::string assessment_html_style() {
    return std::string(colours) + page + std::string(body_map_style()) + print;
}

}  // namespace asterism
