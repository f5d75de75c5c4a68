// Tables as the server sends them: it says which columns are flush right, and which cells are
// to be seen at a glance.
import { el } from './dom.js';

export function table(t) {
  const heads = t.columns.map((c) => el(c.title ? 'th' : 'td', { scope: c.title ? 'col' : null, class: c.right ? 'number' : null, textContent: c.title }));
  const row = (cells) => el('tr', {}, ...cells.map((cell, i) => el(i === 0 ? 'th' : 'td', { scope: i === 0 ? 'row' : null, class: t.columns[i].right ? 'number' : null, textContent: cell.text, 'data-level': cell.level ?? null })));
  return el('table', {},
    el('caption', { textContent: t.title }),
    el('thead', {}, el('tr', {}, ...heads)),
    el('tbody', {}, ...t.rows.map(row)));
}

// refill brings a table that is shown to other cells; it has as many.
export function refill(e, t) {
  const rows = e.tBodies[0].rows;
  t.rows.forEach((row, i) => row.forEach((cell, k) => {
    const at = rows[i].cells[k];
    if (at.textContent !== cell.text) at.textContent = cell.text;
    if (cell.level) at.dataset.level = cell.level;
    else delete at.dataset.level;
  }));
}
