// A field of the form: an entry of the text with a single value. What is typed goes out as an
// edit, what comes back as an outline.
import { el } from './dom.js';
import { told } from './help.js';
import { naming } from './naming.js';
import { at, child, fresh, looked, nameAt, textOf, usual } from './outline.js';
import { readings } from './readings.js';
import { said, say } from './said.js';

export let fields = new Map(); // path → {field, input, said, key, readings}

let send, waits, made;
let emptied = null; // [field, path] of a field that somebody empties
let ids = 0;

// begin takes a function for edits, one to call when a field waits or waits no more, and one that
// takes the path to what is made beside a field.
export function begin(edit, waited, making) {
  send = edit;
  waits = waited;
  made = making;
}

// fieldOf is the field of a key at a path.
export function fieldOf(key, path) {
  const way = JSON.stringify(path), id = `f${++ids}`;
  const known = fields.get(way);
  if (known) return known.whole;
  const names = key.kind === 'stock' || key.kind === 'reference', choices = names || key.kind === 'word';
  const input = choices ? el('select', { id }) : el('input', { id, type: 'text', autocomplete: 'off', spellcheck: false, inputMode: key.kind === 'count' ? 'numeric' : 'text' });
  input.setAttribute('aria-describedby', `${id}s ${id}h`);
  if (key.required) input.setAttribute('aria-required', 'true');
  const one = { input, said: said(path, `${id}s`), key };
  one.field = el('div', { class: 'field', 'data-path': way }, el('label', { htmlFor: id, textContent: key.title }),
    names ? el('span', { class: 'chosen' }, input, maker(key, path)) : input, one.said, told(key, `${id}h`));
  one.readings = key.kind === 'readings' && key.noun === 'stock' ? readings(path, send) : null;
  one.whole = one.readings ? el('div', {}, one.field, one.readings.whole, one.said) : one.field;
  one.whole.dataset.field = '';
  if (!choices) input.placeholder = unset(key, (usually) => usually);
  listen(one, path, choices);
  fields.set(way, one);
  fill(one, path);
  return one.whole;
}

// unset is what an empty field says: what is usual, or what happens without an entry.
function unset(key, says) {
  const now = usual(key);
  return now.default ? says(now.default) : now.without ? `— ${now.without}` : '';
}

function listen(one, path, choices) {
  const { input } = one;
  if (choices) {
    input.addEventListener('change', () => enter(one, path));
    return;
  }
  // Emptied fields wait: what is typed next shall stand in the same place.
  input.addEventListener('input', () => {
    const empty = input.value.trim() === '';
    emptied = empty && one.sent !== '' ? [one, path] : null;
    if (!empty) enter(one, path);
    else say(one.said, []);
    waits();
  });
  input.addEventListener('blur', settle);
  input.addEventListener('keydown', (event) => { if (event.key === 'Enter') settle(); });
}

// sectionOf is the section that has what a field names.
const sectionOf = (key) => (key.kind === 'stock' ? 'stock' : `${key.name}s`);

// maker is the button beside a list that makes something new for it.
function maker(key, path) {
  const noun = key.kind === 'stock' ? 'stock' : key.name;
  const user = () => (path[0] === 'drawers' ? nameAt(path.slice(0, 2), 'drawer') : path[0]);
  const what = () => (key.kind === 'stock' ? `new stock for ${key.title.toLowerCase()} of ${user()}` : `new ${noun} for ${user()}`);
  return naming('new …', what, () => fresh([sectionOf(key), ''], noun), (value) => {
    made([sectionOf(key), value]);
    send({ do: 'make', path, value });
  });
}

// renew forgets all fields while the form is built anew, and gives the one that had the focus
// what was being typed in it, which may be ahead of the text.
export function renew(build) {
  const active = document.activeElement, focus = active?.dataset?.focus;
  const way = active?.closest?.('[data-path]')?.dataset.path;
  const typing = way && active.tagName === 'INPUT' && active === fields.get(way)?.input ? active : null;
  const typed = typing?.value, caret = typing?.selectionStart, sent = fields.get(way)?.sent;
  fields = new Map();
  const root = build();
  if (focus) [...root.querySelectorAll('[data-focus]')].find((e) => e.dataset.focus === focus)?.focus();
  const again = way && fields.get(way);
  if (!again) return;
  again.input.focus();
  if (!typing) return;
  again.input.value = typed;
  again.sent = sent;
  again.input.setSelectionRange(caret, caret);
  if (emptied) emptied = [again, JSON.parse(way)];
}

export function refresh() {
  for (const [path, one] of fields) fill(one, JSON.parse(path));
}

// waiting reports whether a field was emptied and the text does not follow yet.
export const waiting = () => emptied !== null;

// isEmptied reports whether a field is that one.
export const isEmptied = (one) => emptied?.[0] === one;

// settle lets the text follow.
export function settle() {
  if (!emptied) return;
  const [one, path] = emptied;
  emptied = null;
  enter(one, path);
}

// enter sends what stands in a field, once.
function enter(one, path) {
  const value = one.input.value.trim();
  if (value === one.sent) return;
  one.sent = value;
  send({ do: 'enter', path, value });
}

// fill puts the value of the text into a field, unless it is just being typed there.
function fill(one, path) {
  const text = textOf(at(path));
  if (one.input.tagName === 'SELECT') options(one, text ?? '');
  one.readings?.fill();
  if (document.activeElement !== one.input) {
    one.sent = text ?? '';
    if (one.input.value !== one.sent) one.input.value = one.sent;
  }
  one.input.readOnly = text === null;
}

// options offers what a field takes: of a name what the file has, and what is built in.
function options(one, value) {
  const { key } = one;
  const named = key.kind === 'word' ? [] : child(looked.outline, sectionOf(key))?.names ?? [];
  const all = [...(key.required && value ? [] : ['']), ...named, ...(key.words ?? [])];
  if (!all.includes(value)) all.push(value);
  const now = all.join('\n');
  if (one.options !== now) {
    one.options = now;
    const none = unset(key, (usually) => `(${usually})`);
    one.input.replaceChildren(...all.map((v) => el('option', { value: v, textContent: v || none })));
  }
  if (one.input.value !== value) one.input.value = value;
}

// release puts the value of the text into the field that has the focus, after an undo.
export function release() {
  emptied = null;
  const one = fields.get(document.activeElement?.closest?.('[data-path]')?.dataset.path);
  if (one && one.input.tagName === 'INPUT') one.input.value = one.sent = textOf(at(JSON.parse(one.field.dataset.path))) ?? '';
}
