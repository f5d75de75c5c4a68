// The job as a form, made from the entries that a job file has. A field is known by its
// path, as JSON text.
import * as arrange from './arrange.js';
import { called, forget, recall } from './called.js';
import { byId, el, setText } from './dom.js';
import * as field from './field.js';
import { fieldOf } from './field.js';
import * as folds from './fold.js';
import * as help from './help.js';
import * as front from './front.js';
import { naming } from './naming.js';
import { at, fresh, looked, nameAt, shapeOf, take, textOf, unit } from './outline.js';
import { begin as beginSaid, levels, refused, said, say } from './said.js';
import * as panes from './panes.js';
import * as room from './room.js';
import * as slide from './slide.js';
import * as steady from './steady.js';
import { belongs, sizing, wayOf } from './sizing.js';

export { release, settle, waiting } from './field.js';

const root = byId('fields');

let keys = [], send, choose;
let typed = null; // the path of the field that was typed into last
const causes = new Map(); // mistake → the field whose change brought it, null for others
let goal = null; // {path, inside, field} of where the focus goes when an edit is shown
let shape = '';
let sections = new Map(); // path → {details, said, flag, fill}
const opened = new Map(); // path → whether its section was open

// begin takes the entries of a job file, a function for edits, one that chooses a drawer
// of the file, and one to call when a field waits or waits no more.
export function begin(all, edit, chosen, waited) {
  keys = all;
  send = edit;
  choose = chosen;
  beginSaid(send, (path) => { goal = { path, field: true }; }, (path) => {
    panes.go('form');
    if (lead(path)) field.fields.get(JSON.stringify(path))?.readings?.focus();
  });
  arrange.begin(send);
  field.begin(send, waited, (path) => { goal = { path, inside: true }; });
  for (const name of ['drawers', 'stock', 'cutter']) opened.set(JSON.stringify([name]), true);
  steady.tabs(root);
  room.begin(root, () => { if (looked) mark(); });
  root.addEventListener('focusin', (event) => {
    help.show(field.fields.get(event.target.closest('[data-path]')?.dataset.path)?.key);
  });
}

// show brings the form to what was looked at.
export function show(now) { steady.keep(root, () => bring(now)); }

function bring(now) {
  take(now);
  // A text whose layout is broken has no reliable outline: the fields wait for it.
  if (now.sound || shape === '') {
    const next = JSON.stringify(shapeOf(now.outline)) + now.entry + unit(); // usual lengths are in its unit
    if (next !== shape) {
      shape = next;
      room.rebuild(() => field.renew(build));
    } else {
      field.refresh();
      recall();
      for (const option of root.querySelectorAll('#drawer-of-file option')) setText(option, drawerName(Number(option.value)));
    }
  }
  blame();
  mark();
  for (const input of root.querySelectorAll('input, select, button')) input.disabled = !now.sound;
  if (goal) reach();
  arrange.shown();
  front.show(now);
  slide.show(now);
}

function build() {
  sections = new Map();
  forget();
  folds.forget();
  slide.forget();
  root.replaceChildren(...asked(keys, []));
  return root;
}

// unfold opens the sections that a path goes through.
function unfold(path) {
  folds.unfold(path);
  for (let n = 1; n <= path.length; n++) {
    const one = sections.get(JSON.stringify(path.slice(0, n)));
    if (!one?.details) continue;
    one.fill();
    one.details.open = true;
    folds.unfold(path);
  }
  mark();
}

// reach gives the focus to what an edit has made, or to what is left around what it has
// removed.
function reach() {
  const { path, inside, field: whole } = goal;
  goal = null;
  if (whole) {
    lead(path);
    return;
  }
  unfold(inside ? path : path.slice(0, -1));
  const way = JSON.stringify(path);
  const place = sections.get(way)?.details ?? [...root.querySelectorAll('[data-section]')].find((e) => e.dataset.section === way);
  (inside ? place?.querySelector('.field input, .field select') : place?.querySelector('summary'))?.focus();
}

// entry is a key with its value.
function entry(key, path) {
  const section = (content, ...buttons) => sectionOf({ title: key.title, path }, content, ...buttons);
  switch (key.kind) {
    case 'section': return section(() => inSection(key, path), remover(path, () => key.title.toLowerCase(), path));
    case 'named': return section(() => inNamed(key, path));
    case 'list': return section(() => (key.name === 'drawers' ? inDrawers(key, path) : inList(key, path)), key.name === 'drawers' ? null : remover(path, () => `all ${key.title.toLowerCase()}`, path));
    default: return key.name === 'units' && path.length === 1 ? arrange.converter(fieldOf(key, path), path) : fieldOf(key, path);
  }
}

const belonging = (keys, path) => keys.filter((k) => belongs(k, path[0] === 'drawers' ? wayOf(path.slice(0, 2)) : '', at([...path, k.name])));

// inOrder are those of keys that are asked for first, in their order.
const inOrder = (keys) => keys.filter((k) => k.first).sort((a, b) => a.first - b.first);

const entries = (keys, path) => keys.map((k) => entry(k, [...path, k.name]));

// asked are the fields of keys at a path: those that are asked for first, and a fold with the others.
function asked(keys, path) {
  const all = belonging(keys, path);
  return [...entries(inOrder(all), path), others(all, path)].filter(Boolean);
}

// others is the fold with those of keys that are not asked for first; null where there is none.
function others(keys, path) {
  const rest = keys.filter((k) => !k.first);
  return rest.length === 0 ? null : folds.fold(path, rest, () => entries(rest, path), () => { if (looked) mark(); });
}

function inSection(key, path) {
  // Some sections may be one word instead.
  const word = key.words ? [fieldOf({ ...key, kind: 'text', title: key.words.join(' or ') }, path)] : [];
  // What has entries that it cannot do without is begun with all of them.
  if (!at(path) && !key.words && key.keys.some((k) => k.required)) return [beginner({ ...key, noun: key.title.toLowerCase() }, path, false)];
  return [...word, ...asked(key.keys, path)];
}

function inNamed(key, path) {
  const names = at(path)?.names ?? [];
  return [...names.map((name) => item(key, [...path, name])), beginner(key, path, true)];
}

function inList(key, path) {
  const items = at(path)?.items ?? [];
  return items.length > 0 ? items.map((_, i) => item(key, [...path, String(i)])) : [beginner(key, path, false)];
}

// item is one of what a list or a mapping of names holds. What the form has already, beside the
// field that names it or in its list, is led to.
function item(key, path) {
  const name = nameAt(path, key.noun), there = sections.get(JSON.stringify(path));
  if (there?.details) {
    return el('p', {}, el('button', { type: 'button', textContent: `go to ${name}`, onclick: () => {
      goal = { path, inside: true };
      reach();
    } }));
  }
  const title = /^\d+$/.test(path.at(-1)) ? name : path.at(-1);
  return sectionOf({ title, path }, () => asked(key.keys, path), arrange.renamer(path, key.noun, renamed(path)), copier(path, key.noun), remover(path, () => nameAt(path, key.noun)));
}

// renamed follows a section to the name that it gets.
const renamed = (path) => (next) => {
  opened.set(JSON.stringify(next), opened.get(JSON.stringify(path)));
  goal = { path: next, inside: false };
};

// inDrawers shows one drawer of the file, and chooses among all.
function inDrawers(key, path) {
  const items = at(path)?.items ?? [];
  if (items.length === 0) return [beginner(key, path, true)];
  const now = Math.min(Math.max(looked.entry, 0), items.length - 1);
  const here = [...path, String(now)];
  const select = el('select', { id: 'drawer-of-file', onchange: () => choose(Number(select.value)) },
    ...items.map((_, i) => el('option', { value: String(i), selected: i === now, textContent: drawerName(i) })));
  // All that says its size stands together, below the switch between the two ways.
  const all = belonging(key.keys, here), first = inOrder(all), place = first.findIndex((k) => k.in);
  const fields = [...entries(first.slice(0, place), here), sizing(here, key.keys, send), ...entries(first.slice(place), here)];
  const rows = fields.indexOf(field.fields.get(JSON.stringify([...here, 'rows']))?.whole);
  if (rows >= 0) fields.splice(rows + 1, 0, front.begin(send));
  for (const [of, plural] of [['opening', 'openings'], ['slide', 'slides']]) besideField(fields, here, of, plural);
  besideSlide(fields, here, key.keys);
  fields.push(others(all, here));
  const body = el('div', { class: 'inside', 'data-section': JSON.stringify(here) }, ...fields);
  const told = said(here);
  sections.set(JSON.stringify(here), { details: null, said: told });
  return [el('div', { class: 'bar' }, el('label', { htmlFor: select.id, textContent: 'Which drawer' }), select, ...arrange.movers(here), copier(here, 'drawer'), remover(here, () => nameAt(here, 'drawer'))), told, body];
}

// besideSlide puts below a drawer's slide which length is taken, and that no drawer fronts are made.
function besideSlide(fields, drawer, keys) {
  const place = fields.indexOf(field.fields.get(JSON.stringify([...drawer, 'slide']))?.whole);
  if (place < 0 || wayOf(drawer) !== 'opening') return;
  const made = keys.find((k) => k.name === 'drawer-front');
  fields.splice(place + 1, 0, slide.begin(drawer, keys.find((k) => k.name === 'slide').words, send),
    slide.unmade(beginner({ ...made, noun: made.title.toLowerCase() }, [...drawer, made.name], false)));
}

// besideField puts what a field of a drawer names below the field, where the file has it.
function besideField(fields, drawer, name, plural) {
  const value = textOf(at([...drawer, name])), key = keys.find((k) => k.name === plural);
  const place = fields.indexOf(field.fields.get(JSON.stringify([...drawer, name]))?.whole);
  if (place < 0 || !value || !at([plural, value])) return;
  const path = [plural, value];
  if (!opened.has(JSON.stringify(path))) opened.set(JSON.stringify(path), name === 'opening');
  fields.splice(place + 1, 0, item(key, path));
}

// sectionOf is a section that opens and closes; its content is made when it is opened first.
function sectionOf({ title, path }, content, ...buttons) {
  const way = JSON.stringify(path), given = at(path);
  const told = said(path), flag = el('span', { class: 'flag', hidden: true });
  const details = el('details', { open: opened.get(way) ?? false },
    el('summary', {}, title, given ? null : el('span', { class: 'unset', textContent: 'not set' }), flag), told);
  const one = { details, said: told, flag, filled: false };
  one.fill = () => {
    if (one.filled) return;
    one.filled = true;
    const bar = buttons.filter((b) => b && given);
    details.append(el('div', { class: 'inside' }, ...content(), bar.length ? el('div', { class: 'bar' }, ...bar) : null));
  };
  sections.set(way, one);
  if (details.open) one.fill();
  details.addEventListener('toggle', () => {
    opened.set(way, details.open);
    if (details.open && !one.filled) {
      one.fill();
      if (looked) mark();
    }
  });
  return details;
}

const drawerName = (i) => textOf(at(['drawers', String(i), 'name'])) || `drawer ${i + 1}`;

const remover = (path, name, after = path.slice(0, -1)) => called(el('button', { type: 'button', textContent: 'remove', onclick: () => {
  goal = { path: after, inside: false };
  send({ do: 'remove', path, value: '' });
} }), () => `remove ${name()}`);

const copier = (path, noun) => called(el('button', { type: 'button', textContent: 'copy', onclick: () => {
  const value = fresh(path, noun), index = /^\d+$/.test(path.at(-1));
  goal = { path: [...path.slice(0, -1), index ? String(Number(path.at(-1)) + 1) : value], inside: true };
  send({ do: 'copy', path, value });
} }), () => `copy ${nameAt(path, noun)}`);

// beginner is a button that begins a section, the first of a list, or one of several that have names.
function beginner(key, path, named) {
  const start = (value) => {
    goal = { path: key.kind === 'list' ? [...path, '0'] : key.kind === 'named' ? [...path, value] : path, inside: true };
    send({ do: 'begin', path, value });
  };
  if (named) return naming(`add ${key.noun} …`, () => `add ${key.noun}`, () => fresh([...path, ''], key.noun), start);
  return called(el('button', { type: 'button', textContent: `add ${key.noun}`, onclick: () => start('') }),
    () => `add ${key.noun}${path[0] === 'drawers' ? ` to ${nameAt(path.slice(0, 2), 'drawer')}` : ''}`);
}

let marked = '';

// tried takes an edit, or null for a change of the text itself: what is wrong after it came with it.
export function tried(edit) { typed = edit?.do === 'enter' ? edit.path : null; }

const add = (lists, way, p) => lists.set(way, [...(lists.get(way) ?? []), p]);

// within reports whether a field that is in the form stands in what a path leads to.
const within = (way, path) => field.fields.has(way) && path.every((step, i) => step === JSON.parse(way)[i]);

const mistake = (p) => JSON.stringify([p.code, p.path]);

// blame notes of mistakes that are new that they came with what was typed last, where they stand elsewhere.
function blame() {
  const now = new Map(looked.problems.filter((p) => p.level === 'error').map((p) => [mistake(p), p]));
  for (const known of [...causes.keys()]) if (!now.has(known)) causes.delete(known);
  const of = typed && JSON.stringify(typed);
  for (const [one, p] of now) if (!causes.has(one)) causes.set(one, of === JSON.stringify(p.path) ? null : of);
}

// mark shows problems beside the fields that they concern, else at their section, and beside the field that
// brought them. What is folded is opened for them when the person goes on.
function mark() {
  const stands = room.stands();
  if (stands) room.wait();
  else folds.follow();
  const places = new Map(), flags = new Map(), brought = new Map();
  const others = new Map(); // drawers whose fields are not in the form, and how much is said of them
  const errors = JSON.stringify(looked.problems.filter((p) => p.level === 'error').map((p) => p.path));
  const open = errors !== marked && !stands;
  if (!stands) marked = errors;
  for (const p of looked.problems) {
    flagAbove(p, flags, open);
    const by = p.level === 'error' ? causes.get(mistake(p)) : null;
    if (p.path[0] === 'drawers' && p.path.length > 1 && Number(p.path[1]) !== looked.entry) {
      if (by) add(brought, by, p);
      others.set(p.path[1], (others.get(p.path[1]) ?? 0) + 1);
      continue;
    }
    if (by && within(by, p.path)) { // it is said at the field alone, not above it too
      add(places, by, p);
      continue;
    }
    if (by) add(brought, by, p);
    let n = p.path.length;
    while (n > 0 && !field.fields.has(JSON.stringify(p.path.slice(0, n))) && !sections.has(JSON.stringify(p.path.slice(0, n)))) n--;
    add(places, JSON.stringify(p.path.slice(0, n)), p);
  }
  for (const [way, one] of field.fields) {
    const list = field.isEmptied(one) ? [] : places.get(way) ?? [], here = field.isEmptied(one) ? [] : brought.get(way) ?? [];
    say(one.said, list, here);
    one.field.dataset.level = [...list, ...here].reduce((worst, p) => heavier(worst, p.level), '');
    if (one.field.dataset.level === 'error') one.input.setAttribute('aria-invalid', 'true');
    else one.input.removeAttribute('aria-invalid');
  }
  for (const [way, one] of sections) {
    say(one.said, field.fields.has(way) ? [] : places.get(way) ?? [], [], way === '["drawers"]' ? others : null);
    if (!one.flag) continue;
    const level = flags.get(way);
    one.flag.hidden = !level;
    setText(one.flag, levels[level] ?? '');
    one.flag.dataset.level = level ?? '';
  }
}

const weights = Object.keys(levels);

// heavier is the weightier of two levels.
const heavier = (a, b) => (weights.indexOf(b) > weights.indexOf(a) ? b : a);

// flagAbove notes the sections that a problem stands in, and opens them for an error that is new.
function flagAbove(p, flags, open) {
  for (let n = 1; n <= p.path.length; n++) {
    const way = JSON.stringify(p.path.slice(0, n)), one = sections.get(way);
    if (!one) continue;
    flags.set(way, heavier(flags.get(way), p.level));
    if (open && p.level === 'error' && one.details && !one.details.open) {
      one.fill();
      one.details.open = true;
    }
  }
}

// refuse says at a field why an edit could not be written.
export function refuse(path, message) {
  goal = null;
  const one = field.fields.get(JSON.stringify(path)) ?? sections.get(JSON.stringify(path));
  if (!one) return false;
  one.readings?.drop();
  refused(one.said, message);
  return true;
}

// lead opens what a path is in and gives the focus to its field, or to what is next about it. It
// reports whether there is any.
export function lead(path) {
  unfold(path);
  for (let n = path.length; n > 0; n--) {
    const way = JSON.stringify(path.slice(0, n));
    const field = [...root.querySelectorAll('[data-path]')].find((e) => e.dataset.path === way);
    const place = field?.querySelector('input, select') ?? sections.get(way)?.details?.querySelector('summary');
    if (!place) continue;
    place.focus();
    return true;
  }
  return false;
}
