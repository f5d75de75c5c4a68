// What comes and goes in the form keeps the room that it has while a person is in a field, until the person
// goes on to another: nothing moves under a pointer. What the field itself has to say lies over what is below.
import { keep } from './steady.js';

let root, rested;
let building = false; // the form is built anew, and what had the focus goes
let waits = false; // something is to be opened once the person goes on
const held = new Set(); // elements whose height stands still
const hides = new WeakMap(); // of elements, whether they are hidden when they rest

// begin takes the form's scroller, and a function to call when a person goes on.
export function begin(scroller, rests) {
  root = scroller;
  rested = rests;
  root.addEventListener('focusin', (event) => { if (placeOf(event.target) !== placeOf(event.relatedTarget)) release(); });
  root.addEventListener('focusout', (event) => { if (!root.contains(event.relatedTarget)) release(); });
}

// placeOf is the field that an element is in.
const placeOf = (e) => e?.closest?.('[data-field]') ?? e;

// keeps names an element of which the height is kept; bare tells whether it is hidden when it rests.
export function keeps(e, name, bare = () => e.childElementCount === 0) {
  e.dataset.room = name;
  hides.set(e, bare);
  return e;
}

// stands reports whether a person is in a field, so that nothing may move.
export const stands = () => root.contains(document.activeElement);

// hold keeps an element as high as it is, before it is changed.
export function hold(e) {
  if (stands() && !held.has(e)) stay(e, heightOf(e));
}

const heightOf = (e) => (e.isConnected && !e.hidden ? e.getBoundingClientRect().height : 0);

function stay(e, height) {
  e.style.height = `${height}px`;
  e.hidden = false;
  e.classList.add('kept');
  held.add(e);
}

// settle hides an element that has nothing to show, unless it keeps its room.
export function settle(e) { if (!held.has(e)) e.hidden = hides.get(e)(); }

// wait asks for a call once the person goes on.
export function wait() { waits = true; }

// answer shows what was said of an edit. At the field that a person is in it lies over what is below; elsewhere
// it gets its room, or it would not be seen.
export function answer(e) {
  if (e.closest('[data-field]')?.contains(document.activeElement)) return;
  held.delete(e);
  free(e);
}

function free(e) {
  e.style.height = '';
  e.classList.remove('kept');
  e.hidden = hides.get(e)();
}

// release gives every element the room that it needs.
function release() {
  if (building || held.size === 0 && !waits) return;
  keep(root, () => {
    for (const e of held) free(e);
    held.clear();
    if (!waits) return;
    waits = false;
    rested();
  });
}

// rebuild builds the form anew; what is in it keeps its room where a person is in a field.
export function rebuild(build) {
  const all = () => [...root.querySelectorAll('[data-room]')];
  const had = new Map(stands() ? all().map((e) => [e.dataset.room, heightOf(e)]) : []);
  held.clear();
  building = true;
  build();
  building = false;
  if (stands()) for (const e of all()) stay(e, had.get(e.dataset.room) ?? 0);
}
