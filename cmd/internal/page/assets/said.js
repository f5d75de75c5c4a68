// What is said of a field or a section, in the words of a form: without the lines of the text,
// which its user may never have seen, and with a button for every way out that is known.
import { byId, el } from './dom.js';
import { at, textOf } from './outline.js';

// levels are the words for what a message asks for, the weightiest last.
export const levels = { note: 'note', warning: 'to watch', error: 'to mend' };

let send, reach;

// begin takes the function for edits, and one that brings the focus to a path once an edit is shown.
export function begin(edit, reached) {
  send = edit;
  reach = reached;
}

// said makes the place for what is said.
export const said = (id) => el('div', { class: 'said', id, hidden: true });

const told = new WeakMap(); // of elements, so that a button keeps the focus while nothing changes

// say shows problems at an element, and of other drawers how many messages there are.
export function say(e, problems, others) {
  const list = problems.map((p) => [inForm(p) + (p.hint ? ` — ${plain(p.do ?? p.hint)}` : ''), p.ways ?? []]);
  for (const [i, n] of others ?? []) list.push([`${textOf(at(['drawers', i, 'name'])) || `drawer ${Number(i) + 1}`}: ${n} ${n === 1 ? 'message' : 'messages'}; choose it to see`, []]);
  const now = JSON.stringify(list);
  e.dataset.level = problems.some((p) => p.level === 'error') ? 'error' : 'warning';
  if (told.get(e) === now) return;
  told.set(e, now);
  e.hidden = list.length === 0;
  e.replaceChildren(...list.flatMap(([text, ways]) => [el('p', { textContent: text }), waysOut(ways)]).filter(Boolean));
}

// refused shows why an edit could not be written.
export function refused(e, message) {
  told.delete(e);
  e.hidden = false;
  e.dataset.level = 'error';
  e.replaceChildren(el('p', { textContent: message }));
}

// inForm is what a form says of a problem.
export const inForm = (p) => plain(p.said ?? p.message);

const plain = (text) => text.replace(/,? on line \d+/g, '');

// waysOut are the buttons of a problem; null where there is none.
export function waysOut(ways) {
  if (!ways?.length) return null;
  return el('div', { class: 'bar ways' }, ...ways.map((way) => el('button', { type: 'button', textContent: way.label, onclick: () => {
    const [first, ...then] = way.steps;
    if (byId('told').contains(document.activeElement)) byId('told').focus(); // the button goes with its message
    else reach(first.path);
    send({ ...first, then });
  } })));
}
