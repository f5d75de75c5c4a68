// Parts on sheets, searched for in the background; the next change of the job ends it.
import * as api from './api.js';
import { el, svg } from './dom.js';
import * as marked from './marked.js';
import { table } from './tables.js';

let running = null, asked = '';

// stop ends a search that is no more wanted.
export function stop() {
  running?.abort();
  running = null;
  asked = '';
}

// show lays a job out and draws its sheets when they are found.
export async function show(into, text, unit) {
  const key = unit + '\n' + text;
  if (key === asked) return;
  stop();
  asked = key;
  const mine = running = new AbortController();
  if (!into.querySelector('figure')) into.replaceChildren(el('p', { class: 'wait', textContent: 'Laying the parts out …' }));
  into.setAttribute('aria-busy', 'true');
  try {
    const laid = await api.sheets(text, unit, mine.signal);
    if (running === mine) into.replaceChildren(...draw(laid));
    marked.show();
  } catch (error) {
    if (running === mine) into.replaceChildren(el('p', { textContent: error.message }));
  } finally {
    if (running === mine) {
      into.removeAttribute('aria-busy');
      running = null;
    }
  }
}

function draw(laid) {
  if (laid.stocks.length === 0) return [el('p', { textContent: 'No stock has the size of its sheets: write it as its entry sheet.' })];
  return laid.stocks.flatMap((k, n) => [
    el('h2', { textContent: k.stock }),
    el('p', { textContent: `${laid.said[n]}.` }),
    ...k.sheets.map((s) => figure(s, k.sizes[s.size], laid.numbers)),
    ...(k.cuts.length ? [el('details', {}, el('summary', { textContent: `${k.cuts.length} ${k.cuts.length === 1 ? 'cut' : 'cuts'} at the saw, in order` }), table(laid.cuts[n]))] : []),
  ]);
}

function figure(sheet, size, numbers) {
  const name = `sheet ${sheet.number}${sheet.count > 1 ? ` (${sheet.count} alike)` : ''}`;
  const counts = new Map();
  for (const p of sheet.placements) counts.set(p.part, (counts.get(p.part) ?? 0) + 1);
  const called = (part) => (numbers[part] ? `${numbers[part]} ${part}` : part);
  const list = [...counts].map(([part, n]) => `${n} × ${called(part)}`).join(', ');
  const high = size.width, letters = Math.max(size.length, size.width) / 60;
  const drawing = svg('svg', { viewBox: `0 0 ${size.length} ${high}`, role: 'img', 'aria-label': `${name}: ${list}` },
    svg('rect', { class: 'sheet', width: size.length, height: high }),
    ...sheet.offcuts.map((o) => svg('rect', { class: 'offcut', x: o.x, y: high - o.y - o.width, width: o.length, height: o.width })),
    ...sheet.placements.map((p) => {
      const y = high - p.y - p.width;
      const words = svg('text', { x: p.x + p.length / 2, y: y + p.width / 2, 'font-size': letters });
      const room = (text) => text.length * letters * 0.55 < p.length && p.width > letters;
      words.textContent = [called(p.part), String(numbers[p.part] ?? '')].find(room) ?? '';
      return svg('g', { 'data-number': numbers[p.part] ?? 0 }, svg('rect', { class: 'piece', x: p.x, y, width: p.length, height: p.width }), words);
    }));
  return el('figure', {}, drawing, el('figcaption', {}, `${name}, ${(100 * sheet.yield).toFixed(1)} %: `,
    ...[...counts].map(([part, n]) => el('span', {}, `${n} × `, el('button', { type: 'button', 'data-number': numbers[part] ?? 0, 'aria-pressed': 'false', 'aria-label': `mark part ${called(part)}`, textContent: called(part) }), ' '))));
}
