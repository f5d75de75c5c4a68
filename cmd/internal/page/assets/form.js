// The job as a form, made from the entries that a job file has. A field is known by its
// path, as JSON text; what is typed goes out as an edit, what comes back as an outline.
import { byId, el, setText } from './dom.js';

const root = byId('fields'), help = byId('help');

let keys = [], send, choose, waits;
let emptied = null; // [field, path] of a field that somebody empties
let goal = null; // {path, inside} of where the focus goes when an edit is shown
let shape = '', looked = null;
let fields = new Map(); // path → {field, input, said, key}
let sections = new Map(); // path → {details, said, mark, fill}
const opened = new Map(); // path → whether its section was open
let ids = 0;

// begin takes the entries of a job file, a function for edits, one that chooses a drawer
// of the file, and one to call when a field waits or waits no more.
export function begin(all, edit, chosen, waited) {
  // What is changed most comes first.
  const first = ['job', 'units', 'drawers', 'stock', 'cutter', 'joinery', 'openings', 'slides'];
  const rank = (k) => (first.includes(k.name) ? first.indexOf(k.name) : first.length);
  keys = [...all].sort((a, b) => rank(a) - rank(b));
  send = edit;
  choose = chosen;
  waits = waited;
  for (const name of ['drawers', 'stock', 'cutter']) opened.set(JSON.stringify([name]), true);
  root.addEventListener('focusin', (event) => {
    const field = event.target.closest('[data-path]');
    const key = field && fields.get(field.dataset.path)?.key;
    setText(help, key ? key.doc : '');
  });
}

// show brings the form to what was looked at.
export function show(now) {
  looked = now;
  // A text whose layout is broken has no reliable outline: the fields wait for it.
  if (now.sound || shape === '') {
    const next = JSON.stringify(shapeOf(now.outline)) + now.entry;
    if (next !== shape) {
      shape = next;
      build();
    } else {
      refresh();
    }
  }
  for (const { input } of fields.values()) input.disabled = !now.sound;
  for (const button of root.querySelectorAll('button')) button.disabled = !now.sound;
  mark();
  if (goal) reach();
}

// reach gives the focus to what an edit has made, or to what is left around what it has
// removed.
function reach() {
  const way = JSON.stringify(goal.path), one = sections.get(way), { inside } = goal;
  goal = null;
  if (inside && one?.details) {
    one.fill();
    one.details.open = true;
    mark();
  }
  const place = one?.details ?? [...root.querySelectorAll('[data-section]')].find((e) => e.dataset.section === way);
  (inside ? place?.querySelector('.field input, .field select') : place?.querySelector('summary'))?.focus();
}

function shapeOf(n) {
  if (n.entries) return n.entries.map((e, i) => [n.names[i], shapeOf(e)]);
  return n.items && n.items.some((item) => item.entries) ? n.items.map((item) => (item.entries ? shapeOf(item) : 0)) : 0;
}

const child = (n, name) => n?.entries?.[n.names?.indexOf(name) ?? -1];

// at is the value at a path.
function at(path) {
  return path.reduce((n, step) => (n?.items && /^\d+$/.test(step) ? n.items[Number(step)] : child(n, step)), looked.outline);
}

// textOf is a value as a field shows it; null for what a field cannot show.
function textOf(n) {
  if (!n) return '';
  if (n.entries) return null;
  if (n.items) return n.items.some((item) => item.entries || item.items) ? null : n.items.map((item) => item.text ?? '').join(', ');
  return n.text ?? '';
}

function build() {
  const active = document.activeElement?.closest?.('[data-path]')?.dataset.path;
  const typing = active && document.activeElement.tagName === 'INPUT' ? document.activeElement : null;
  const typed = typing?.value, caret = typing?.selectionStart, sent = fields.get(active)?.sent;
  fields = new Map();
  sections = new Map();
  root.replaceChildren(...keys.map((k) => entry(k, [k.name])));
  const again = active && fields.get(active);
  if (!again) return;
  again.input.focus();
  if (!typing) return;
  again.input.value = typed; // it may be ahead of the text
  again.sent = sent;
  again.input.setSelectionRange(caret, caret);
  if (emptied) emptied = [again, JSON.parse(active)];
}

function refresh() {
  for (const [path, field] of fields) fill(field, JSON.parse(path));
}

// entry is a key with its value.
function entry(key, path) {
  switch (key.kind) {
    case 'section': return section(key.name, path, key.doc, () => inSection(key, path), remover(path, path));
    case 'named': return section(key.name, path, key.doc, () => inNamed(key, path));
    case 'list': return section(key.name, path, key.doc, () => (key.name === 'drawers' ? inDrawers(key, path) : inList(key, path)), key.name === 'drawers' ? null : remover(path, path));
    default: return field(key, path);
  }
}

const inside = (key, path) => key.keys.map((k) => entry(k, [...path, k.name]));

function inSection(key, path) {
  // Some sections may be one word instead.
  const word = key.words ? [field({ ...key, kind: 'text', name: key.words.join(' or ') }, path)] : [];
  return [...word, ...inside(key, path)];
}

function inNamed(key, path) {
  const names = at(path)?.names ?? [];
  return [...names.map((name) => section(name, [...path, name], '', () => inside(key, [...path, name]), copier([...path, name], key.noun), remover([...path, name]))),
    beginner(key, path)];
}

function inList(key, path) {
  const items = at(path)?.items ?? [];
  const list = items.map((_, i) => section(`${key.noun} ${i + 1}`, [...path, String(i)], '', () => inside(key, [...path, String(i)]), copier([...path, String(i)]), remover([...path, String(i)])));
  return items.length > 0 ? list : [beginner(key, path)];
}

// inDrawers shows one drawer of the file, and chooses among all.
function inDrawers(key, path) {
  const items = at(path)?.items ?? [];
  if (items.length === 0) return [beginner(key, path)];
  const now = Math.min(Math.max(looked.entry, 0), items.length - 1);
  const here = [...path, String(now)];
  const id = `f${++ids}`;
  const select = el('select', { id, onchange: () => choose(Number(select.value)) },
    ...items.map((item, i) => el('option', { value: String(i), selected: i === now, textContent: textOf(child(item, 'name')) || `drawer ${i + 1}` })));
  const body = el('div', { class: 'inside', 'data-section': JSON.stringify(here) }, ...inside(key, here));
  const said = el('p', { class: 'said', hidden: true });
  sections.set(JSON.stringify(here), { details: null, said, mark: null });
  return [el('div', { class: 'bar' }, el('label', { htmlFor: id, textContent: 'drawer of the file' }), select, copier(here, 'drawer'), remover(here)), said, body];
}

function section(name, path, doc, content, ...buttons) {
  const way = JSON.stringify(path);
  const said = el('p', { class: 'said', hidden: true });
  const flag = el('span', { class: 'flag', hidden: true });
  const given = at(path);
  const details = el('details', { open: opened.get(way) ?? false },
    el('summary', { title: doc }, el('span', { textContent: name }), given ? null : el('span', { class: 'unset', textContent: 'not set' }), flag), said);
  const one = { details, said, flag, filled: false };
  one.fill = () => {
    if (one.filled) return;
    one.filled = true;
    const bar = buttons.filter((b) => b && given);
    details.append(el('div', { class: 'inside' }, ...content(), bar.length ? el('div', { class: 'bar' }, ...bar) : null));
  };
  if (details.open) one.fill();
  details.addEventListener('toggle', () => {
    opened.set(way, details.open);
    if (details.open && !one.filled) {
      one.fill();
      if (looked) mark();
    }
  });
  sections.set(way, one);
  return details;
}

const remover = (path, after = path.slice(0, -1)) => el('button', { type: 'button', textContent: 'remove', 'aria-label': `remove ${path.at(-1)}`, onclick: () => {
  goal = { path: after, inside: false };
  send({ do: 'remove', path, value: '' });
} });

const copier = (path, noun) => el('button', { type: 'button', textContent: 'copy', 'aria-label': `copy ${noun ?? ''} ${path.at(-1)}`.replace('  ', ' '), onclick: () => {
  const value = fresh(path, noun), index = /^\d+$/.test(path.at(-1));
  goal = { path: [...path.slice(0, -1), index ? String(Number(path.at(-1)) + 1) : value], inside: true };
  send({ do: 'copy', path, value });
} });

const beginner = (key, path) => el('button', { type: 'button', textContent: `add ${key.noun}`, onclick: () => {
  const value = fresh([...path, ''], key.noun);
  goal = { path: [...path, key.kind === 'list' ? '0' : value], inside: true };
  send({ do: 'begin', path, value });
} });

// fresh is a name that is not there yet.
function fresh(path, noun = 'new') {
  const above = at(path.slice(0, -1));
  const taken = new Set([...(above?.names ?? []), ...(above?.items ?? []).map((item) => textOf(child(item, 'name')))]);
  const stem = ((above?.items ? textOf(child(above.items[Number(path.at(-1))], 'name')) : path.at(-1)) || noun).replace(/ \d+$/, '');
  let name = stem;
  for (let n = 2; taken.has(name); n++) name = `${stem} ${n}`;
  return name;
}

function field(key, path) {
  const way = JSON.stringify(path), id = `f${++ids}`;
  const known = fields.get(way);
  if (known) return known.field;
  const choices = key.kind === 'word' || key.kind === 'stock';
  const list = key.kind === 'reference' ? el('datalist', { id: `${id}l` }) : null;
  const input = choices ? el('select', { id }) : el('input', { id, type: 'text', autocomplete: 'off', spellcheck: false, inputMode: key.kind === 'count' ? 'numeric' : 'text' });
  if (list) input.setAttribute('list', list.id);
  input.setAttribute('aria-describedby', `${id}s`);
  if (key.required) input.setAttribute('aria-required', 'true');
  const said = el('p', { class: 'said', id: `${id}s`, hidden: true });
  const whole = el('div', { class: 'field', 'data-path': way }, el('label', { htmlFor: id, title: key.doc, textContent: key.name }), input, list, said);
  const one = { field: whole, input, said, key, list };
  input.placeholder = key.default ?? (key.without ? `— ${key.without}` : '');
  if (choices) {
    input.addEventListener('change', () => enter(one, path));
  } else {
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
  fields.set(way, one);
  fill(one, path);
  return whole;
}

// waiting reports whether a field was emptied and the text does not follow yet.
export const waiting = () => emptied !== null;

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
  if (one.input.tagName === 'SELECT') {
    options(one, text ?? '');
  }
  if (one.list) suggest(one);
  if (document.activeElement !== one.input) {
    one.sent = text ?? '';
    if (one.input.value !== one.sent) one.input.value = one.sent;
  }
  one.input.readOnly = text === null;
}

// suggest offers what a name can refer to: what the file has, and what is built in.
function suggest(one) {
  const all = [...(child(looked.outline, `${one.key.name}s`)?.names ?? []), ...(one.key.words ?? [])];
  const now = all.join('\n');
  if (one.options === now) return;
  one.options = now;
  one.list.replaceChildren(...all.map((value) => el('option', { value })));
}

function options(one, value) {
  const names = one.key.kind === 'stock' ? child(looked.outline, 'stock')?.names ?? [] : one.key.words;
  const all = [...(one.key.required && value ? [] : ['']), ...names];
  if (!all.includes(value)) all.push(value);
  const now = all.join('\n');
  if (one.options !== now) {
    one.options = now;
    const none = one.key.default ? `(${one.key.default})` : one.key.without ? `— ${one.key.without}` : '';
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

let marked = '';

// mark shows problems beside the fields that they concern, else at their section.
function mark() {
  const places = new Map();
  const errors = JSON.stringify(looked.problems.filter((p) => p.level === 'error').map((p) => p.path));
  const open = errors !== marked;
  marked = errors;
  const flags = new Map();
  const others = new Map(); // drawers whose fields are not in the form, and how much is said of them
  for (const p of looked.problems) {
    for (let n = 1; n <= p.path.length; n++) {
      const way = JSON.stringify(p.path.slice(0, n)), one = sections.get(way);
      if (!one) continue;
      if (flags.get(way) !== 'error') flags.set(way, p.level);
      if (open && p.level === 'error' && one.details && !one.details.open) {
        one.fill();
        one.details.open = true;
      }
    }
    if (p.path[0] === 'drawers' && p.path.length > 1 && Number(p.path[1]) !== looked.entry) {
      others.set(p.path[1], (others.get(p.path[1]) ?? 0) + 1);
      continue;
    }
    let n = p.path.length;
    while (n > 0 && !fields.has(JSON.stringify(p.path.slice(0, n))) && !sections.has(JSON.stringify(p.path.slice(0, n)))) n--;
    const way = JSON.stringify(p.path.slice(0, n));
    places.set(way, [...(places.get(way) ?? []), p]);
  }
  for (const [way, one] of fields) {
    const list = emptied?.[0] === one ? [] : places.get(way) ?? [];
    say(one.said, list);
    const bad = list.some((p) => p.level === 'error');
    if (bad) one.input.setAttribute('aria-invalid', 'true');
    else one.input.removeAttribute('aria-invalid');
  }
  for (const [way, one] of sections) {
    say(one.said, fields.has(way) ? [] : places.get(way) ?? [], way === '["drawers"]' ? others : null);
    if (!one.flag) continue;
    const level = flags.get(way);
    one.flag.hidden = !level;
    setText(one.flag, level === 'error' ? 'to mend' : 'to know');
    one.flag.dataset.level = level ?? '';
  }
}

function say(e, problems, others) {
  const list = problems.map((p) => `line ${p.line}: ${p.message}${p.hint ? ` — ${p.hint}` : ''}`);
  for (const [i, n] of others ?? []) list.push(`${textOf(at(['drawers', i, 'name'])) || `drawer ${Number(i) + 1}`}: ${n} ${n === 1 ? 'message' : 'messages'}; choose it to see`);
  const text = list.join('\n');
  e.hidden = text === '';
  e.dataset.level = problems.some((p) => p.level === 'error') ? 'error' : 'warning';
  setText(e, text);
}

// refuse says at a field why an edit could not be written.
export function refuse(path, message) {
  goal = null;
  const one = fields.get(JSON.stringify(path)) ?? sections.get(JSON.stringify(path));
  if (!one) return false;
  one.said.hidden = false;
  one.said.dataset.level = 'error';
  one.said.textContent = message;
  return true;
}
