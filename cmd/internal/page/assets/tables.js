// Tables as the server sends them: heads that begin with > are of numbers.
import { el } from './dom.js';

export function table(t) {
  const right = t.head.map((h) => h.startsWith('>'));
  return el('table', {},
    el('caption', { textContent: t.title }),
    el('thead', {}, el('tr', {}, ...t.head.map((h, i) => el(h.replace('>', '') ? 'th' : 'td', { scope: h.replace('>', '') ? 'col' : null, class: right[i] ? 'number' : null, textContent: h.replace('>', '') })))),
    el('tbody', {}, ...t.rows.map((row) => el('tr', {}, ...row.map((cell, i) => el(i === 0 ? 'th' : 'td', { scope: i === 0 ? 'row' : null, class: right[i] ? 'number' : null, textContent: cell, 'data-word': word(cell) }))))));
}

// wrong are the verdicts that are to be seen at a glance.
const wrong = new Set(['tight', 'loose', 'will not', 'recessed', 'proud', 'narrow', 'wide', 'deep', 'shallow', 'open', 'low', 'high', 'short', 'long']);
export const word = (cell) => (cell.split(' or ').some((w) => wrong.has(w)) ? 'bad' : null);
