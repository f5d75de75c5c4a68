// Buttons of the form that change more than one value: another name with all that refer to it,
// another place among the drawers, another unit for the whole job.
import { called } from './called.js';
import { byId, el } from './dom.js';
import { naming } from './naming.js';
import { at, nameAt, textOf } from './outline.js';

let send;
let focused = null; // the id of a button that keeps the focus when an edit is shown

// begin takes a function for edits.
export function begin(edit) { send = edit; }

// renamer is a button that gives a stock, an opening or a slide another name; went is called with
// the path that it will have then.
export function renamer(path, noun, went) {
  if (path.length !== 2 || !['stock', 'openings', 'slides'].includes(path[0])) return null;
  return naming('rename …', () => `rename ${nameAt(path, noun)}`, () => path[1], (value) => {
    if (value === path[1]) return;
    went([path[0], value]);
    send({ do: 'rename', path, value });
  });
}

// movers are buttons that bring a drawer of the file before the one above it, or behind the one
// below; there are none for a single one.
export function movers(path) {
  const now = Number(path.at(-1)), last = (at(path.slice(0, -1))?.items ?? []).length - 1;
  if (last < 1) return [];
  return [['up', now - 1], ['down', now + 1]].map(([way, to]) => called(el('button', { type: 'button', id: `drawer-${way}`, textContent: `move ${way}`,
    'aria-disabled': String(to < 0 || to > last), onclick: () => {
      if (to < 0 || to > last) return;
      focused = `drawer-${way}`;
      send({ do: 'move', path, value: String(to) });
    } }), () => `move ${way} ${nameAt(path, 'drawer')}`));
}

// converter is the field of the units with a button that converts all lengths to the other one.
export function converter(field, path) {
  const other = { mm: ['in', 'inches'], in: ['mm', 'millimeters'] };
  const to = () => other[textOf(at(path))] ?? other.mm;
  const button = called(el('button', { type: 'button', class: 'convert', textContent: 'convert the job', onclick: () => send({ do: 'convert', path, value: to()[0] }) }),
    () => `convert the job: all lengths to ${to()[1]}`);
  return el('div', { class: 'converted' }, field, button);
}

// shown gives the focus back to a button that was pressed.
export function shown() {
  if (focused === null) return;
  byId(focused)?.focus();
  focused = null;
}
