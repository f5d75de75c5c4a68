// What is said of a field or a section, in the words of a form: without the lines of the text,
// which its user may never have seen, and with a button for every way out that is known.
import { byId, el } from './dom.js';
import { at, textOf } from './outline.js';
import * as room from './room.js';

// levels are the words for what a message asks for, the weightiest last.
export const levels = { note: 'note', warning: 'to watch', error: 'to mend' };

let send, reach, lead;

// begin takes the function for edits, one that brings the focus to a path once an edit is shown, and one
// that brings it to the field where a person writes what only a caliper knows.
export function begin(edit, reached, leads) {
  send = edit;
  reach = reached;
  lead = leads;
}

// said makes the place for what is said at a path.
export const said = (path, id = null) => room.keeps(el('div', { class: 'said', id, hidden: true }), `said ${JSON.stringify(path)}`);

const told = new WeakMap(); // of elements, so that a button keeps the focus while nothing changes

// say shows problems at an element, those that stand elsewhere and came with what was typed here, and of
// other drawers how many messages there are.
export function say(e, problems, caused = [], others = null) {
  const words = (p) => inForm(p) + (p.hint ? ` — ${plain(p.do ?? p.hint)}` : '');
  const list = [...problems.map((p) => [words(p), p.ways ?? []]), ...caused.map((p) => [`${p.where}: ${unnamed(p, words(p))}`, p.ways ?? []])];
  for (const [i, n] of others ?? []) list.push([`${textOf(at(['drawers', i, 'name'])) || `drawer ${Number(i) + 1}`}: ${n} ${n === 1 ? 'message' : 'messages'}; choose it to see`, []]);
  const now = JSON.stringify(list);
  e.dataset.level = caused.length > 0 || problems.some((p) => p.level === 'error') ? 'error' : 'warning';
  if (told.get(e) === now) return;
  told.set(e, now);
  room.hold(e);
  e.replaceChildren(...list.flatMap(([text, ways]) => [el('p', { textContent: text }), waysOut(ways)]).filter(Boolean));
  room.settle(e);
}

// unnamed is a text without the name of the drawer, where that stands before it already.
const unnamed = ({ where }, text) => (text.startsWith(`${where.split(', ')[0]}: `) ? text.slice(text.indexOf(': ') + 2) : text);

// refused shows why an edit could not be written.
export function refused(e, message) {
  told.delete(e);
  room.hold(e);
  e.dataset.level = 'error';
  e.replaceChildren(el('p', { textContent: message }));
  room.answer(e);
}

// inForm is what a form says of a problem.
export const inForm = (p) => plain(p.said ?? p.message);

const plain = (text) => text.replace(/,? on line \d+/g, '');

// waysOut are the buttons of a problem; null where there is none.
export function waysOut(ways) {
  if (!ways?.length) return null;
  return el('div', { class: 'bar ways' }, ...ways.map((way) => el('button', { type: 'button', textContent: way.label, onclick: () => {
    if (way.lead) return lead(way.lead);
    const [first, ...then] = way.steps;
    if (byId('told').contains(document.activeElement)) byId('told').focus(); // the button goes with its message
    else reach(first.path);
    send({ ...first, then });
  } })));
}
