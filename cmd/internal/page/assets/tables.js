// Tables as the server sends them: it says which columns are flush right, and which cells are
// to be seen at a glance.
import { el } from './dom.js';

// A length with the nearest fraction beside it, as 5.213 (5 7/32 - 0.006), and one that is a fraction:
// neither of the two breaks over lines.
const beside = /^(\S+) (\([^()]+\))$/, fraction = /^\d+ \d+\/\d+$/;

function whole(text) {
  const both = beside.exec(text);
  if (both) return [unbroken(both[1]), ' ', unbroken(both[2])];
  return [fraction.test(text) ? unbroken(text) : text];
}

const unbroken = (text) => el('span', { class: 'whole', textContent: text });

export function table(t) {
  const heads = t.columns.map((c) => el(c.title ? 'th' : 'td', { scope: c.title ? 'col' : null, class: c.right ? 'number' : null, textContent: c.title }));
  // A part is marked by its number.
  const numbers = t.columns[0].title === 'no.';
  const inside = (cell, i) => (numbers && i === 0 ? [el('button', { type: 'button', 'data-number': cell.text, 'aria-pressed': 'false', 'aria-label': `mark part ${cell.text}`, textContent: cell.text })] : whole(cell.text));
  const row = (cells) => el('tr', { 'data-number': numbers ? cells[0].text : null }, ...cells.map((cell, i) => el(i === 0 ? 'th' : 'td', { scope: i === 0 ? 'row' : null, class: t.columns[i].right ? 'number' : null, 'data-level': cell.level ?? null }, ...inside(cell, i))));
  return el('table', {},
    el('caption', { textContent: t.title }),
    el('thead', {}, el('tr', {}, ...heads)),
    el('tbody', {}, ...t.rows.map(row)));
}

// refill brings a table that is shown to other cells; it has as many.
export function refill(e, t) {
  const rows = e.tBodies[0].rows;
  t.rows.forEach((row, i) => row.forEach((cell, k) => {
    const at = rows[i].cells[k], button = at.querySelector('button');
    if (at.textContent !== cell.text) {
      if (!button) at.replaceChildren(...whole(cell.text));
      else {
        button.textContent = cell.text;
        button.setAttribute('aria-label', `mark part ${cell.text}`);
        rows[i].dataset.number = button.dataset.number = cell.text;
      }
    }
    if (cell.level) at.dataset.level = cell.level;
    else delete at.dataset.level;
  }));
}
