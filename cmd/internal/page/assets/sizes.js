// Dimensions in the picture that take another number: a field opens where one was clicked, and
// what is typed goes to the entry that governs it, as from the form.
import { el } from './dom.js';

let send, leads, measures = [], unit = '', width = '', field = null;

// begin takes the function for edits, and one that leads to an entry in the form.
export function begin(edit, lead) {
  send = edit;
  leads = lead;
}

// show takes what was looked at.
export function show(now) {
  if (!now.scene) return; // the picture is as it was
  measures = now.measures ?? [];
  unit = now.unit;
  width = now.width?.said ?? '';
}

// ask opens a field over a dimension of the box along an axis, or over the place of a piece.
export function ask(axis, button, piece = '') {
  close();
  const m = measures.find((m) => m.axis === axis && (m.piece ?? '') === piece);
  if (!m) return;
  if (m.ways) return follows(m, button);
  const input = el('input', { type: 'text', value: m.text, autocomplete: 'off', spellcheck: false, 'aria-describedby': 'ask-keys' });
  const end = (focus) => {
    close();
    if (focus) button.focus();
  };
  input.addEventListener('keydown', (event) => {
    event.stopPropagation(); // the page's own keys are not meant
    if (event.key === 'Escape') end(true);
    if (event.key !== 'Enter') return;
    event.preventDefault(); // the button that gets the focus is not pressed
    enter(m, input.value.trim());
    end(true);
  });
  input.addEventListener('blur', () => close());
  field = el('div', { class: 'ask' }, el('label', {}, `${m.name}, ${unit}`, input), el('small', { id: 'ask-keys', textContent: 'Enter sets it, Escape leaves it' }));
  button.parentElement.append(field);
  place(button);
  input.focus();
  input.select();
}

// follows says what decides a size that was not measured itself, and leads there.
function follows(m, button) {
  const end = () => {
    close();
    button.focus();
  };
  const ways = m.ways.map((way) => el('button', { type: 'button', textContent: `Change: ${way.name}`, onclick: () => {
    close();
    leads(way.path);
  } }));
  field = el('div', { class: 'ask', role: 'group', 'aria-label': 'What decides this size' }, el('span', { textContent: m.axis === 0 && width ? `This size follows from the opening: ${width}.` : 'This size follows from the opening.' }), ...ways,
    el('small', { textContent: 'Escape leaves it' }));
  field.addEventListener('keydown', (event) => {
    event.stopPropagation();
    if (event.key === 'Escape') end();
  });
  const mine = field;
  field.addEventListener('focusout', (event) => { if (field === mine && !mine.contains(event.relatedTarget)) close(); });
  button.parentElement.append(field);
  place(button);
  ways[0].focus();
}

// place puts the field over the dimension, inside of the picture.
function place(button) {
  const stage = field.parentElement.getBoundingClientRect(), at = button.getBoundingClientRect(), own = field.getBoundingClientRect();
  const within = (middle, from, long, mine) => Math.max(0, Math.min(long - mine, middle - from - mine / 2));
  field.style.left = `${within((at.left + at.right) / 2, stage.left, stage.width, own.width)}px`;
  field.style.top = `${within((at.top + at.bottom) / 2, stage.top, stage.height, own.height)}px`;
}

function close() {
  const old = field;
  field = null;
  old?.remove();
}

// enter sends a number to its entry.
function enter(m, typed) {
  if (typed === '' || typed === m.text) return;
  if (m.places) {
    const all = m.places.map((text, i) => (i === m.at ? typed : text));
    send({ do: 'enter', path: m.path, value: `[${all.join(', ')}]` });
  } else send({ do: 'enter', path: m.path, value: typed });
}

// of is the place of a piece that can be moved.
export const of = (piece) => measures.find((m) => m.piece === piece);

// move puts a piece so far from its wall, in mm.
export function move(piece, mm) {
  const m = of(piece);
  if (m) enter(m, String(Number((unit === 'in' ? mm / 25.4 : mm).toFixed(4))));
}
