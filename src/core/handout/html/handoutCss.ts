import { guideCss, type PageDress, pageCss } from '#core/guide/html/guideCss.ts';

/**
 * The look of a handout: paper and ink of the guides, larger on paper (12 pt, large print 18 pt; print guidance, from memory). The fridge
 * page is the first printed page and that page alone, in 14 pt and in
 * large print 16 pt (16 to 18 pt or more: same source), and 14 pt beside a table of several
 * nutrients, so that it stays one page in the widest fallback font. Boxes to check off are borders, which printers do not leave out.
 */
const look = `.handout{max-width:52rem}
.handout .title{font-size:1.9em}
.handout .about{list-style:none;padding:0;margin:0 0 1em}
.handout .kind{font-size:1.1em;margin:.9em 0 .3em}
.handout p,.handout li{max-width:40em}
.handout li{margin-bottom:.3em}
.handout ol{margin:0 0 .5em;padding-left:1.6em}
.handout ol li{margin-bottom:.55em;padding-left:.2em}
.handout ol li::marker{font-weight:700}
.handout caption{text-align:start;padding-bottom:.2em}
.handout table th,.handout table tr:last-child th,.handout table tr:last-child td{font-weight:400}
.handout table thead th,.handout table tbody tr:first-child th,.handout table tbody tr:first-child td{font-weight:700}
.handout .boxes{list-style:none;padding:0;display:grid;grid-template-columns:repeat(auto-fit,minmax(min(19em,100%),1fr));gap:.1em 1.5em}
.handout .boxes li{padding-left:1.6em;text-indent:-1.6em;break-inside:avoid}
.handout .boxes li::before{content:"";display:inline-block;width:.95em;height:.95em;border:.11em solid var(--ink);border-radius:.12em;margin-right:.55em;vertical-align:-.12em}
.handout .call{list-style:none;padding:.5em .8em;border:.2em solid var(--ink);border-radius:.3em;font-weight:700}
.handout .call li{margin:0}
.handout .eat{list-style:none;padding:0;display:grid;grid-template-columns:repeat(auto-fit,minmax(min(19em,100%),1fr));gap:0 1.8em}
.handout .eat li{border-top:1px solid var(--line);padding:.4em 0;margin:0;break-inside:avoid}
.handout .eat b{display:block}
.handout .eat span{display:block}
.handout .fridge{border:.2em solid var(--ink);border-radius:.6em;padding:.3em 1.1em .9em;margin:.6em 0 2em}
.handout .fridge .head{border:0;margin:0;padding-top:.3em}
.handout .cards{display:grid;grid-template-columns:repeat(2,1fr);gap:.2em 1.6em}
.handout .card{min-width:0}
.handout .card.wide{grid-column:1/-1}
.handout .card.beside{grid-column:2;grid-row:1/span 2}
.handout .card .kind{border-top:2px solid var(--ink);padding-top:.3em;margin-top:.3em}
.handout .fridge .eat{display:block}
.handout .wide .points{columns:17em}
.handout .wide .points li{break-inside:avoid}
@media (max-width:40em){.handout .cards{display:block}.handout .fridge{padding:.2em .8em .8em}.handout .title{font-size:1.5em;hyphens:auto}
.handout.large .title{font-size:1.2em}
.handout table th,.handout table td{min-width:0;padding-right:.3em}.handout table tbody th{min-width:5.6em}
.handout .several{font-size:.82em}.handout.large .several{font-size:.68em}.handout .several thead th{font-size:.82em;hyphens:auto}}
@media print{.handout{font-size:12pt;line-height:1.4}
.handout.large{font-size:18pt;line-height:1.35}
.handout .boxes,.handout .eat{grid-template-columns:1fr 1fr}
.handout.large .boxes,.handout.large .eat{grid-template-columns:1fr}
.handout .fridge{font-size:14pt;line-height:1.3;break-after:page;margin:0}
.handout.large .fridge{font-size:16pt;line-height:1.12;padding:.1em .5em .2em}
.handout .fridge.full{line-height:1.16}.handout.large .fridge.full{font-size:14pt;line-height:1.12}
.handout .cards{grid-template-rows:auto 1fr auto}
.handout .wide .points{columns:2;column-gap:1em}
.handout .fridge .cards{display:grid}
.handout .fridge p,.handout .fridge ul,.handout .fridge table{margin-bottom:.2em}
.handout .fridge li{margin-bottom:.1em}
.handout .fridge .eat li{padding:.15em 0}
.handout .first .title{font-size:14pt;max-width:none;margin:0 0 .3em}
.handout .fridge .head{margin:0;padding-top:.1em;font-size:1.25em}
.handout .fridge caption{padding:0}
.handout .fridge th,.handout .fridge td{padding:.12em .5em .12em 0}
.handout .fridge .call{padding:.15em .4em;border-width:.12em}
.handout .card .kind{margin-top:.15em;padding-top:.15em}
.handout .kind + p{break-after:avoid}
.handout p{orphans:3;widows:3}}
`;

export function handoutCss(dress: PageDress): string {
  return guideCss + look + pageCss(dress);
}
