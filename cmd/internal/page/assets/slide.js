// What stands beside a drawer's slide in the form: which length is taken, where another can be typed;
// and where the opening has drawer fronts, whether any are made.
import { called } from './called.js';
import { el } from './dom.js';
import { at, fresh, nameAt, textOf } from './outline.js';
import * as room from './room.js';

let taken = null, fronts = null, none = false, path = [], was = '';

// begin gives what stands below the field of a drawer's slide; kinds are the built-in ones, send takes edits.
export function begin(drawer, kinds, send) {
  path = drawer;
  const id = 'slide-length';
  taken = called(el('input', { id, type: 'text', autocomplete: 'off', spellcheck: false, 'data-focus': id }), () => `slide length of ${nameAt(drawer, 'drawer')}`);
  taken.addEventListener('change', () => {
    const length = taken.value.trim();
    if (length === '' || length === was) taken.value = was;
    else choose(length, kinds, send);
  });
  return el('div', { class: 'field' }, el('label', { htmlFor: id, textContent: 'Slide length that is taken' }), taken);
}

// choose takes slides of one length: of the shop's own slide its lengths become that, beside a built-in
// one stands an own one like it.
function choose(length, kinds, send) {
  const way = [...path, 'slide'], now = textOf(at(way));
  if (at(['slides', now])) return send({ do: 'enter', path: ['slides', now, 'lengths'], value: length });
  if (!kinds.includes(now)) return;
  const name = fresh(['slides', ''], `${now}-${length.replace(/[^\w.]+/g, '-')}`);
  send({ do: 'write', path: ['slides', name], value: `{kind: ${now}, lengths: [${length}]}`, then: [{ do: 'enter', path: way, value: name }] });
}

// unmade gives what stands below an opening: that no drawer fronts are made, and a button for them.
export function unmade(button) {
  fronts = room.keeps(el('div', { class: 'said', 'data-level': 'warning', hidden: true }), 'fronts', () => !none);
  fronts.append(
    el('p', { textContent: 'No drawer fronts are made: how they stand alone decides how high the boxes are. Fronts of this job need their own boards.' }), button);
  return fronts;
}

// show brings both to what was looked at.
export function show(now) {
  if (now.front) was = now.front.slide; // of a job with mistakes it stays
  if (taken && document.activeElement !== taken) taken.value = was;
  if (!fronts) return;
  const opening = textOf(at([...path, 'opening'])), how = textOf(at(['openings', opening, 'fronts']));
  const before = none;
  none = how === 'overlay' && !at([...path, 'drawer-front']);
  if (none !== before) room.hold(fronts);
  fronts.classList.toggle('bare', !none);
  room.settle(fronts);
}

// forget leaves what stood in a form that is built anew.
export function forget() { taken = fronts = null; }
