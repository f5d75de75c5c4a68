// What the job comes out as: lists on tabs, the drawer that is shown, its picture.
import { byId, el, setText } from './dom.js';
import * as first from './first.js';
import * as fit from './fit.js';
import * as instead from './instead.js';
import * as marked from './marked.js';
import * as sheets from './sheets.js';
import { refill, table } from './tables.js';
import * as picture from './picture.js';

const tabs = byId('tabs'), lists = byId('lists'), told = byId('told'), drawer = byId('drawer'), said = byId('said'), bears = byId('bears'), stale = byId('stale');

const kinds = [['fit', 'Fit'], ['parts', 'Cut list'], ['setups', 'Setups'], ['sheets', 'Sheets'], ['first', 'First box'], ['buy', 'To buy'], ['told', 'Messages']];

let view, again;
let now = null; // what was looked at last that has drawers

// begin takes the view, which it changes, a function that looks again, and what leads to a problem.
export function begin(shared, look, lead) {
  view = shared;
  again = look;
  instead.begin(lead);
  tabs.append(...kinds.map(([kind, name]) => el('button', { type: 'button', role: 'tab', id: `tab-${kind}`, 'aria-controls': kind === 'told' ? 'told' : 'lists', textContent: name, onclick: () => open(kind) })));
  tabs.addEventListener('keydown', (event) => {
    const step = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    if (!step) return;
    event.preventDefault();
    const at = kinds.findIndex(([kind]) => kind === view.show);
    open(kinds[(at + step + kinds.length) % kinds.length][0]);
    byId(`tab-${view.show}`).focus();
  });
  drawer.addEventListener('change', () => {
    view.drawer = drawer.value;
    view.entry = -1;
    again();
  });
  byId('whole').addEventListener('change', (event) => {
    view.whole = event.target.checked;
    again();
  });
  marked.begin((n) => {
    if (now && !picture.has(n) && !now.drawers[now.drawer].numbers.includes(n)) showPart(n);
    picture.mark(n);
  });
  choose();
}

// showPart chooses the first drawer that has a part.
function showPart(n) {
  const other = now.drawers.find((d) => d.numbers.includes(n));
  if (!other) return;
  view.drawer = other.name;
  view.entry = -1;
  again();
}

// lead opens a list of a drawer.
export function lead(kind, name) {
  if (name !== undefined) {
    view.drawer = name;
    view.entry = -1;
  }
  open(kind);
}

function open(kind) {
  view.show = kind;
  choose();
  drawn = '';
  lists.replaceChildren();
  again();
}

function choose() {
  for (const [kind] of kinds) {
    const tab = byId(`tab-${kind}`), on = kind === view.show;
    tab.setAttribute('aria-selected', String(on));
    tab.tabIndex = on ? 0 : -1;
  }
  const messages = view.show === 'told';
  told.hidden = !messages;
  lists.hidden = messages;
  if (!messages) lists.setAttribute('aria-labelledby', `tab-${view.show}`);
}

let drawn = '', names = '';

// show brings picture and lists to what was looked at. The picture of what cannot be drawn stays as it
// was before.
export function show(looked) {
  const pictured = Boolean(looked.scene || looked.picture);
  setText(stale, looked.failed ? oldness(pictured) : '');
  stale.hidden = !looked.failed;
  byId('result').classList.toggle('old', looked.failed);
  byId('result').classList.toggle('undrawn', looked.failed && !pictured);
  picture.old(looked.failed && !pictured);
  if (looked.drawers) {
    now = looked;
    showBox();
  } else for (const e of [said, bears]) setText(e, '');
  if (looked.failed) {
    sheets.stop();
    instead.show(looked);
    return;
  }
  instead.hide();
  showLists();
}

// oldness says what is not of the latest entry, which has mistakes.
function oldness(pictured) {
  if (pictured) return 'The picture is of this entry.';
  return `This entry cannot be drawn: mend the first mistake.${now ? ' The picture is of an earlier entry.' : ''}`;
}

// showBox brings the choice of drawers and the picture to what was looked at.
function showBox() {
  setText(said, now.strip?.said.includes(now.verdict) ? '' : now.verdict ?? ''); // it is said of the job already
  setText(bears, now.bears ?? '');
  const list = now.drawers.map((d) => `${d.name} × ${d.count}`);
  if (list.join('\n') !== names) {
    names = list.join('\n');
    drawer.replaceChildren(...now.drawers.map((d, i) => el('option', { value: d.name, textContent: list[i] })));
  }
  drawer.value = now.drawers[now.drawer].name;
  byId('cabinet').hidden = !now.drawers[now.drawer].bank;
  if (picture.show(now)) {
    view.flat = true;
    again();
  }
}

function showLists() {
  if (view.show === 'sheets') {
    if (now.soon) sheets.stop(); // their turn comes once all is said
    else sheets.show(lists, now.text, view.unit);
    return;
  }
  sheets.stop();
  if (view.show === 'first') {
    if (!now.soon) first.show(lists, now.text, view.unit, now.drawers[now.drawer].name, now.beside);
    return;
  }
  if (view.show === 'fit') {
    if (now.fit) fit.show(lists, now);
    return;
  }
  if (!now.tables) return; // of messages alone, or asked for before another list was chosen
  const next = JSON.stringify([now.tables.map((t) => [t.title, t.columns, t.rows.length]), Boolean(now.notes)]);
  if (next !== drawn || lists.querySelectorAll('table').length !== now.tables.length) {
    drawn = next;
    lists.replaceChildren(...now.tables.map(table), ...(now.notes ? [el('pre', {}, ...parted(now))] : []));
    marked.show();
    return;
  }
  now.tables.forEach((t, i) => refill(lists.querySelectorAll('table')[i], t));
  const notes = lists.querySelector('pre');
  if (!notes || notes.textContent === unbroken(now.notes ?? '')) return;
  notes.replaceChildren(...parted(now));
  marked.show();
}

// parted is the text of notes in which the names of parts are buttons that mark them.
function parted({ notes, numbers = {} }) {
  const names = new RegExp(`(${wordsOf(numbers)})`);
  return unbroken(notes).split(names).map((text) => (Object.hasOwn(numbers, text)
    ? el('button', { type: 'button', 'data-number': String(numbers[text]), 'aria-pressed': 'false', 'aria-label': `mark part ${numbers[text]} ${text}`, textContent: text }) : text));
}

// unbroken keeps lengths on one line: 5 7/32, and (5 7/32 - 0.006).
const unbroken = (text) => text.replace(/\d+ \d+\/\d+|\(\d[^()\n]*\)/g, (length) => length.replaceAll(' ', '\u00a0'));

// wordsOf finds the names of parts where they stand as words, the longest first; nothing where there are none.
function wordsOf(numbers) {
  const names = Object.keys(numbers).sort((a, b) => b.length - a.length);
  if (names.length === 0) return '$.';
  return `(?<![\\w-])(?:${names.map((name) => name.replace(/[^\w]/gu, '\\$&')).join('|')})(?![\\w-])`;
}

export const shown = () => drawer.value;
