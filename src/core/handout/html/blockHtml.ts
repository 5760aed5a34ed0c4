import { htmlText } from '#core/guide/html/escape.ts';
import type { Language } from '../handout.ts';
import type { Block, FoodRow, Line, Run } from '../handoutPage.ts';

/** Names and sentences from labels are English; on a page in another language they say so. */
function english(language: Language): string {
  return language === 'en' ? '' : ' lang="en"';
}

export function lineHtml({ runs }: Line, language: Language): string {
  return runs.map(run => runHtml(run, language)).join('');
}

function runHtml({ kind, text }: Run, language: Language): string {
  if (kind === 'words') return htmlText(text);
  if (kind === 'outside') return `<bdi>${htmlText(text)}</bdi>`;
  return `<bdi${english(language)}>${htmlText(text)}</bdi>`;
}

/** `level` is that of a heading among the blocks. */
export function blocksHtml(blocks: readonly Block[], level: number, language: Language): string {
  return blocks.map(block => blockHtml(block, level, language)).join('');
}

function blockHtml(block: Block, level: number, language: Language): string {
  switch (block.kind) {
    case 'text':
      return `<p>${lineHtml(block.line, language)}</p>\n`;
    case 'heading':
      return `<h${level} class="kind">${lineHtml(block.line, language)}</h${level}>\n`;
    case 'list': {
      const items = block.lines.map(one => `<li>${lineHtml(one, language)}</li>`).join('\n');
      if (block.lines.length === 0) return '';
      return block.look === 'steps' ? `<ol>\n${items}\n</ol>\n` : `<ul class="${block.look}">\n${items}\n</ul>\n`;
    }
    case 'table':
      return tableHtml(block, language);
    case 'foods':
      return `<ul class="eat">\n${block.rows.map(row => foodHtml(row, language)).join('\n')}\n</ul>\n`;
  }
}

function tableHtml({ caption, head, rows }: Extract<Block, { kind: 'table' }>, language: Language): string {
  const body = rows.map(row => {
    const cells = row.cells.map(cell => `<td>${htmlText(cell)}</td>`).join('');
    return `<tr><th scope="row">${lineHtml(row.head, language)}</th>${cells}</tr>`;
  });
  return `<table${head.length > 2 ? ' class="several"' : ''}>
${caption === '' ? '' : `<caption>${htmlText(caption)}</caption>\n`}<thead><tr>${head.map(one => `<th scope="col">${htmlText(one)}</th>`).join('')}</tr></thead>
<tbody>
${body.join('\n')}
</tbody>
</table>
`;
}

function foodHtml({ name, maker, keepTo, told }: FoodRow, language: Language): string {
  const by = maker === undefined ? '' : `<span class="soft small"><bdi${english(language)}>${htmlText(maker)}</bdi></span>`;
  const lines = keepTo.map(one => `<span>${htmlText(one)}</span>`).join('');
  const more = told.length === 0 ? '' : `<span class="small">${told.map(htmlText).join(' · ')}</span>`;
  return `<li><b><bdi${english(language)}>${htmlText(name)}</bdi></b>${by}${lines}${more}</li>`;
}
