// The form for the first box of a drawer: what is read, between what limits, and what follows.
import * as api from './api.js';
import { el, setText } from './dom.js';

const typed = new Map(); // what was typed, by drawer and row; it stays when the job is changed

let running = null, asked = '', box = {};

// readings are what was typed of the drawer that is shown.
function readings() {
  if (!typed.has(box.drawer)) typed.set(box.drawer, {});
  return typed.get(box.drawer);
}

// show asks for the form of a drawer and what becomes of the readings, anew where a file beside the job has changed.
export function show(into, text, unit, drawer, beside) {
  const key = JSON.stringify([text, unit, drawer, beside]);
  if (key === asked && into.querySelector('form')) return;
  asked = key;
  box = { text, unit, drawer };
  judge(into, false);
}

async function judge(into, log) {
  running?.abort();
  const mine = running = new AbortController();
  if (!into.querySelector('form')) into.replaceChildren(el('p', { class: 'wait', textContent: 'Working the form out …' }));
  try {
    const answer = await api.first({ ...box, readings: readings(), log }, mine.signal);
    if (running === mine) fill(into, answer);
  } catch (error) {
    if (running !== mine || error.name === 'AbortError') return;
    const told = into.querySelector('.logged');
    if (told) setText(told, error.message);
    else into.replaceChildren(el('p', { textContent: error.message }));
  }
}

// fill brings the form to an answer. Where its rows are the same, what is being typed stays.
function fill(into, answer) {
  const rows = answer.parts.flatMap((part) => part.rows);
  const key = JSON.stringify([answer.drawer, answer.unit, answer.log, rows.map((r) => [r.what, r.least, r.most])]);
  if (into.querySelector('form')?.dataset.key !== key) into.replaceChildren(...draw(into, answer, key));
  const head = into.querySelector('.head'), todo = into.querySelector('.todo');
  setText(head, answer.head);
  head.dataset.level = answer.level;
  setText(todo, answer.do);
  todo.hidden = answer.do === '';
  into.querySelectorAll('tbody tr').forEach((tr, i) => {
    const cell = tr.cells[3], r = rows[i];
    setText(cell, r.fault || r.verdict);
    cell.dataset.level = r.fault ? 'bad' : r.level ?? '';
    tr.querySelector('input').setAttribute('aria-invalid', String(Boolean(r.fault)));
  });
  const told = into.querySelector('.logged');
  if (told) setText(told, answer.logged.join(' '));
}

function draw(into, answer, key) {
  const part = (p) => el('table', {},
    el('caption', { textContent: p.on }),
    el('thead', {}, el('tr', {}, ...['reading', `right ${answer.unit}`, `measured ${answer.unit}`, 'verdict'].map((title) => el('th', { scope: 'col', textContent: title })))),
    el('tbody', {}, ...p.rows.map(row)));
  const row = (r) => el('tr', {},
    el('th', { scope: 'row', textContent: r.what }),
    el('td', { class: 'number', textContent: `${r.least}\u00a0to\u00a0${r.most}` }),
    el('td', {}, el('input', {
      type: 'text', size: 9, autocomplete: 'off', 'aria-label': `${r.what}, measured`, value: readings()[r.what] ?? '',
      onchange: (event) => {
        readings()[r.what] = event.target.value.trim();
        judge(into, false);
      },
    })),
    el('td', {}));
  return [
    el('p', { textContent: `${answer.safely} Read the box dry, its front pulled outward.` }),
    el('p', { class: 'head', role: 'status' }),
    el('pre', { class: 'todo', hidden: true }),
    el('form', { class: 'first', 'data-key': key, onsubmit: (event) => event.preventDefault() },
      ...answer.parts.map(part),
      answer.log ? el('div', { class: 'bar' },
        el('button', { type: 'button', textContent: `Add to ${answer.log}`, onclick: () => judge(into, true) }),
        el('p', { class: 'logged', role: 'status' }))
        : el('p', { textContent: 'Where the job names a log, as log: shop.csv, these readings can go into it.' })),
  ];
}
