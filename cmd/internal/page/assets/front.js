// The cabinet's front with its rows of drawers. Rows that the file lists change places: they are
// dragged, or moved with the arrow keys.
import { el, svg } from './dom.js';
import { at } from './outline.js';
import * as room from './room.js';

const least = 26; // px of a row, so that a finger finds it
const letter = 7.5; // px of a letter of a row's words, at most
const most = 420; // px of the cabinet, where its rows are high enough then

let send, whole = null, drawn = '', entry = 0;
let focused = null; // the row that keeps the focus when an edit is shown

// begin takes a function for edits, and gives the picture, empty until it is shown.
export function begin(edit) {
  send = edit;
  drawn = '';
  whole = room.keeps(el('div', { class: 'front', hidden: true }), 'front');
  return whole;
}

// show brings the picture to the cabinet that was looked at; of a job with mistakes it stays.
export function show(now) {
  if (!whole) return;
  if (now.failed) return;
  entry = now.entry;
  const items = at(['drawers', String(entry), 'rows'])?.items;
  const moves = items?.length > 1 && items.length === now.front?.rows.length;
  const next = JSON.stringify([now.front, entry, moves]);
  if (next === drawn) return;
  drawn = next;
  room.hold(whole);
  if (!now.front || now.front.rows.length < 2) whole.replaceChildren();
  else whole.replaceChildren(picture(now.front, moves), el('p', { textContent: `${now.front.said} ${moves ? 'Drag a row to another place, or move it with the arrow keys.' : ''}` }));
  room.settle(whole);
  if (focused !== null) whole.querySelectorAll('[data-row]')[focused]?.focus();
  focused = null;
}

// picture is the front to scale, y down from the upper edge of the opening.
function picture(front, moves) {
  const low = Math.min(...front.rows.map((r) => r.height));
  const scale = Math.max(Math.min(most / front.height, 280 / front.width), least / low); // px in a mm
  const past = Math.max(0, ...front.rows.map((r) => (r.width - front.width) / 2)) * scale;
  const top = Math.max(0, ...front.rows.map((r) => r.bottom + r.height - front.height)) * scale;
  const under = Math.max(0, ...front.rows.map((r) => -r.bottom)) * scale;
  const width = front.width * scale, height = front.height * scale;
  const words = Math.max(...front.rows.map((r) => `${r.drawer}, ${r.text}`.length)) * letter; // they stand beside rows that are too narrow
  const beside = words + (moves ? 2 * least : 0) > Math.min(...front.rows.map((r) => r.width)) * scale ? words + 8 : 0;
  const rows = front.rows.map((r, i) => row({ ...r, i, of: front.rows.length, scale, beside, x: (width - r.width * scale) / 2,
    y: height - (r.bottom + r.height) * scale }, moves));
  const drawing = svg('svg', { width: width + 2 * past + 2 + beside, height: height + top + under + 2,
    viewBox: `${-past - 1} ${-top - 1} ${width + 2 * past + 2 + beside} ${height + top + under + 2}`,
    role: moves ? 'group' : 'img', 'aria-label': `front of ${front.name}, ${front.rows.length} ${front.rows.length === 1 ? 'row' : 'rows'} from the top: ${front.rows.map((r) => r.text).join(', ')}` },
  svg('rect', { class: 'opening', width, height }), ...rows);
  if (moves) drag(drawing, rows, front.rows.map((r) => height - (r.bottom + r.height / 2) * scale));
  return drawing;
}

function row(r, moves) {
  const text = svg('text', { ...(r.beside ? { class: 'beside', x: r.x + r.width * r.scale + 6 } : { x: r.x + r.width * r.scale / 2 }), y: r.y + r.height * r.scale / 2 }, `${r.drawer}, ${r.text}`);
  const box = svg('rect', { class: 'row', x: r.x, y: r.y, width: r.width * r.scale, height: r.height * r.scale });
  if (!moves) return svg('g', {}, box, text);
  const grip = svg('rect', { class: 'grip', x: r.x, y: r.y, width: least, height: r.height * r.scale });
  const marks = [-4, 0, 4].map((d) => svg('path', { class: 'mark', d: `M${r.x + 8} ${r.y + r.height * r.scale / 2 + d}h${least - 16}` }));
  const g = svg('g', { 'data-row': r.i, tabindex: 0, role: 'button', 'aria-label': `${r.drawer}, ${r.text}, row ${r.i + 1} of ${r.of}: arrow keys move it` },
    box, text, grip, ...marks);
  g.addEventListener('keydown', (event) => {
    const to = r.i + ({ ArrowUp: -1, ArrowDown: 1 }[event.key] ?? NaN);
    if (Number.isNaN(to)) return;
    event.preventDefault();
    if (to >= 0 && to < r.of) move(r.i, to);
  });
  return g;
}

function move(from, to) {
  focused = to;
  send({ do: 'move', path: ['drawers', String(entry), 'rows', String(from)], value: String(to) });
}

// drag lets rows be dragged; middles are those of the rows. A finger takes them by the grip at
// their left, so that the page can be rolled over the rest.
function drag(drawing, rows, middles) {
  let held = null; // {row, from, at}
  const place = (event) => {
    const box = drawing.getBoundingClientRect();
    return (event.clientY - box.top) / box.height * drawing.viewBox.baseVal.height + drawing.viewBox.baseVal.y;
  };
  const target = (by) => {
    const now = middles[held.row] + by;
    return middles.reduce((best, m, i) => (Math.abs(m - now) < Math.abs(middles[best] - now) ? i : best), held.row);
  };
  const lift = (y) => rows.forEach((g, i) => g.setAttribute('transform', i === held?.row ? `translate(0 ${y})` : ''));
  drawing.addEventListener('pointerdown', (event) => {
    const g = event.target.closest('[data-row]');
    if (!g || event.button !== 0 || event.pointerType === 'touch' && !event.target.classList.contains('grip')) return;
    held = { row: Number(g.dataset.row), from: place(event) };
    drawing.setPointerCapture(event.pointerId);
    g.classList.add('held');
    drawing.append(g); // over the others
  });
  drawing.addEventListener('pointermove', (event) => { if (held) lift(place(event) - held.from); });
  const drop = (event, done) => {
    if (!held) return;
    const { row } = held, to = done ? target(place(event) - held.from) : row;
    lift(0);
    rows[row].classList.remove('held');
    held = null;
    drawing.append(...rows);
    rows[row].focus();
    if (to !== row) move(row, to);
  };
  drawing.addEventListener('pointerup', (event) => drop(event, true));
  drawing.addEventListener('pointercancel', (event) => drop(event, false));
}
