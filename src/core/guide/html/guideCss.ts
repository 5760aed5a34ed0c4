export interface PageDress {
  /** The size of paper; missing, the printer's own. */
  readonly paper?: 'a4' | 'letter';
  /** 18 pt on paper and as large on the screen. */
  readonly largePrint?: boolean;
}

const paperSize = { a4: 'A4', letter: 'letter' } as const;

/**
 * The look of a guide, all of it below `.guide`, so that it does no harm where a fragment is pasted. Paper and ink; a verdict is told by
 * word and shape (a disc fits, a ring nearly does; borders, since printers leave backgrounds out), the tone only repeats it. A test
 * computes the contrast of every `color` on every `background` that stands here.
 */
export const guideCss = `.guide{--paper:#fffefb;--wash:#f3f0e7;--ink:#1d2126;--soft:#4a5058;--line:#8b8677;--link:#1f3f73;--fits:#0b5f56;--nearly:#734800;
color:var(--ink);background:var(--paper);font:400 1.0625rem/1.55 "Atkinson Hyperlegible Next","Atkinson Hyperlegible",Verdana,system-ui,sans-serif;
font-variant-numeric:tabular-nums;overflow-wrap:anywhere;text-align:start;max-width:60rem;margin:0 auto;padding:1.5em 1.25em 3em}
.guide *{box-sizing:border-box}
.guide.large{font-size:1.5rem}
.guide p,.guide ul,.guide dl,.guide dd,.guide table{margin:0 0 .5em}
.guide .title,.guide .head,.guide .name,.guide .kind{line-height:1.2;font-weight:700;margin:0 0 .3em;letter-spacing:-.005em}
.guide .title{font-size:2em;max-width:22em}
.guide .head{font-size:1.35em;margin-top:1.4em;padding-top:.4em;border-top:2px solid var(--ink)}
.guide .name{font-size:1.1em}
.guide .kind{font-size:1em;margin-top:.7em}
.guide .lead{font-size:1.15em;max-width:38em}
.guide .text{max-width:42em}
.guide .soft{color:var(--soft)}
.guide .small{font-size:.9em}
.guide a{color:var(--link);text-underline-offset:.15em}
.guide a:focus-visible{outline:3px solid var(--link);outline-offset:2px}
.guide ul{padding-left:1.2em}
.guide .rule{border:2px solid var(--ink);border-radius:.4em;padding:.9em 1.1em;margin:1.2em 0;background:var(--wash)}
.guide .told{border-left:.35em solid var(--ink);padding-left:.9em;margin:1em 0}
.guide table{border-collapse:collapse;width:100%}
.guide th,.guide td{text-align:start;padding:.3em .6em .3em 0;border-bottom:1px solid var(--line);vertical-align:top;font-weight:400}
.guide td,.guide thead th + th{min-width:4.6em}
.guide thead th,.guide tr:last-child th,.guide tr:last-child td{font-weight:700}
.guide dt{font-weight:700}
.guide .foods{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(21em,100%),1fr));gap:0 2em}
.guide.large .foods{display:block}
.guide .food{border-top:1px solid var(--line);padding:.8em 0 .6em;min-width:0;break-inside:avoid}
.guide .food p,.guide .food ul{margin:0 0 .2em}
.guide .v{font-weight:700}
.guide .fits{color:var(--fits)}
.guide .nearly{color:var(--nearly)}
.guide .fits::before,.guide .nearly::before{content:"";display:inline-block;width:.4em;height:.4em;border:.2em solid;border-radius:50%;margin-right:.35em}
.guide .fits::before{width:0;height:0;border-width:.4em}
.guide .b{display:block;width:100%;max-width:22em;height:.9em;margin:.15em 0 .3em}
.guide .b path{fill:none;stroke:var(--ink);stroke-width:1.5}
.guide .b .p{stroke:var(--ink);stroke-width:7}
.guide .b .e{stroke:var(--ink);stroke-width:7;stroke-dasharray:2 2}
.guide .photo{float:right;max-width:38%;max-height:9em;margin:0 0 .4em .8em;border:1px solid var(--line)}
.guide .food{display:flow-root}
.guide .mark{border:1px dashed var(--ink);padding:.1em .5em;font-weight:700}
.guide .sheet{display:block;width:100%;height:auto;max-width:40em;background:var(--paper);margin:.5em 0}
@media (max-width:30em){.guide{padding:1em .8em 2em}.guide .title{font-size:1.6em}.guide.large{font-size:1.35rem}}
@media print{.guide{--paper:#fff;--wash:#fff;--ink:#000;--soft:#000;--line:#555;--link:#000;--fits:#000;--nearly:#000;font-size:10.5pt;max-width:none;padding:0}
.guide.large{font-size:18pt}
.guide .noprint{display:none}
.guide .foods{display:block;columns:2;column-gap:8mm}
.guide.large .foods{columns:auto}
.guide.large .food,.guide.large .several>div{break-inside:auto}
.guide .v,.guide .b,.guide .name + p{break-after:avoid}
.guide p,.guide li{orphans:3;widows:3}
.guide .several{break-inside:auto}
.guide .several>div{break-inside:avoid}
.guide .several>p{break-after:avoid}
.guide .head,.guide .name,.guide .kind{break-after:avoid}
.guide .rule,.guide tr{break-inside:avoid}
.guide div.cut{break-before:page}
.guide div.cut .sheet{margin:0}
.guide .sheet{width:auto;max-width:100%;break-inside:avoid}
.guide a[href^="http"]::after{content:" (" attr(href) ")"}}
`;

/** Rules of the whole page, which a fragment must not bring along. Page numbers stand on the paper's edge. */
export function pageCss({ paper }: PageDress): string {
  const size = paper === undefined ? '' : `size:${paperSize[paper]};`;
  return `html{background:#fffefb}body{margin:0}
@page{${size}margin:14mm 14mm 16mm;@bottom-right{content:counter(page) " / " counter(pages);font:9pt Verdana,sans-serif}}
@media print{html{background:#fff}}
`;
}
