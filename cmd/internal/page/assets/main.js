// The page of one job: its text is the truth, form and results follow it.
import * as api from './api.js';
import { byId, el, setText } from './dom.js';
import * as form from './form.js';
import { History } from './history.js';
import { child, looked, textOf } from './outline.js';
import * as panes from './panes.js';
import * as paper from './paper.js';
import * as presence from './presence.js';
import * as results from './results.js';
import * as sizes from './sizes.js';
import * as soon from './soon.js';
import * as starting from './start.js';
import * as take from './take.js';
import * as text from './text.js';
import * as fit from './fit.js';
import * as verdict from './verdict.js';

const view = { drawer: '', entry: 0, unit: '', show: 'fit', whole: false, flat: false };
const history = new History();
const edits = []; // from the form, in the order in which they were made

let now = ''; // the text
let saved = ''; // what the file held when it was read or written last
let version = ''; // of that
let name = ''; // of the file; empty while it has none
let fresh = false; // nothing of it was ever on disk
let busy = false, again = false, failed = true, writing = false;
let beside = []; // the files that the job names, as they were read
let gone = false; // the program was found to answer no more

const undo = byId('undo'), redo = byId('redo'), save = byId('save');

// change takes a text that replaces the one before.
function change(next, kind) {
  if (next === now) return;
  form.tried(null);
  history.changed(now, kind);
  become(next);
  look();
}

// become makes a text the job's.
function become(next) {
  now = next;
  take.edited();
}

// look asks what the text comes out as. Only the latest is asked for: while an answer is
// awaited, changes gather.
function look() {
  bar();
  again = true;
  rest?.abort();
  if (!busy) working = work();
  return working;
}

let working = Promise.resolve(); // done when the latest text is shown
let rest = null; // what gives up the rest of an answer that has the numbers alone

async function work() {
  busy = true;
  while (again || rest) {
    const first = again, asked = now, edit = first ? edits[0] : undefined, viewed = JSON.stringify(view);
    again = false;
    try {
      const wanted = { ...view, soon: first };
      const answer = edit ? await api.edit(asked, edit, wanted) : await api.look(asked, wanted, rest?.signal);
      rest = null;
      // Meanwhile something was typed, or chosen: the edit is made on that; or undone: then it is not.
      if (asked !== now || viewed !== JSON.stringify(view) || edit && !edits.includes(edit)) {
        again = true;
        continue;
      }
      if (edit) {
        drop(edit);
        if (answer.text !== now) {
          history.changed(now, edit.do === 'enter' && !edit.then ? JSON.stringify(edit.path) : '');
          become(answer.text);
        }
      }
      show(answer);
      if (edits.length > 0) again = true;
      else if (answer.soon && !again) rest = new AbortController();
    } catch (error) {
      rest = null;
      if (again && error.name === 'AbortError') continue;
      if (error.status === 0) { // the edits stay, and are made if it answers again
        lost();
        continue;
      }
      drop(edit);
      bar();
      if (edit && form.refuse(edit.path, error.message)) continue;
      tell(error.message);
    }
  }
  busy = false;
}

// drop forgets an edit that was made or refused; one that was undone meanwhile is gone already.
function drop(edit) {
  const at = edits.indexOf(edit);
  if (at >= 0) edits.splice(at, 1);
}

function show(answer) {
  soon.fill(answer);
  failed = answer.failed;
  beside = answer.beside ?? [];
  view.entry = answer.entry;
  if (answer.drawers) view.drawer = answer.drawers[answer.drawer].name;
  text.show(now);
  text.tell(answer.problems, answer.more, (p) => {
    if (p.path[0] === 'drawers' && p.path.length > 1) drawerOfFile(Number(p.path[1]));
  });
  form.show(answer);
  verdict.show(answer);
  results.show(answer);
  bar();
}

// leads are where the verdict's buttons lead.
const leads = {
  problem: async (p) => {
    if (p.file || p.path.length === 0) return leads.messages();
    panes.go('form');
    if (p.path[0] === 'drawers' && p.path.length > 1) await drawerOfFile(Number(p.path[1]));
    if (!form.lead(p.path)) leads.messages();
  },
  measure: (drawer, name) => {
    panes.go('result');
    fit.seek(name);
    results.lead('fit', drawer);
  },
  messages: () => {
    panes.go('result');
    results.lead('told');
    byId('tab-told').focus();
  },
};

// pending reports whether something was typed that the text does not have yet.
const pending = () => edits.length > 0 || form.waiting();

// bar brings buttons and the state to what can be done.
function bar() {
  const same = now === saved && version !== '' && !fresh && !pending();
  able(undo, history.canUndo || form.waiting(), 'Nothing was changed yet');
  able(redo, history.canRedo, 'Nothing was undone');
  able(save, !same, 'All changes are saved');
  take.able(!failed);
  setText(byId('state'), same ? 'as saved' : 'not saved');
  setText(byId('name'), name || 'New job');
  const title = (same ? '' : '* ') + (name || 'New job');
  if (document.title !== title) document.title = title;
}

// A button that can do nothing now keeps the focus, unlike one that is disabled, and says why.
function able(button, can, why) {
  button.setAttribute('aria-disabled', String(!can));
  button.title = can ? '' : why;
}

const act = (button, what) => button.addEventListener('click', () => { if (button.getAttribute('aria-disabled') === 'false') what(); });

function drawerOfFile(entry) {
  view.entry = entry;
  view.drawer = '';
  return look();
}

// edit takes an edit from the form. Of one field, the last that was typed counts.
function edit(e) {
  form.tried(e);
  const before = e.do === 'enter' ? edits.findIndex((other, i) => (i > 0 || !busy) && other.do === 'enter' && JSON.stringify(other.path) === JSON.stringify(e.path)) : -1;
  if (before >= 0) edits[before] = e;
  else edits.push(e);
  if (e.path[0] === 'drawers' && e.path.length === 2 && ['copy', 'move'].includes(e.do)) { // it is followed
    view.entry = e.do === 'copy' ? Number(e.path[1]) + 1 : Number(e.value);
    view.drawer = '';
  }
  look();
}

// back undoes; an emptied field takes back its value first.
function back() {
  if (!form.waiting()) step(history.undo(now));
  else {
    form.release();
    look();
  }
}

function step(next) {
  if (next === undefined) return;
  form.tried(null);
  edits.length = 0;
  become(next);
  text.show(now);
  look().then(form.release);
}

// tell shows a notice with what can be done about it.
function tell(message, ...ways) {
  const notice = byId('notice');
  const close = () => { notice.hidden = true; };
  notice.replaceChildren(el('p', { textContent: message }),
    el('div', { class: 'bar' }, ...ways.map(([label, act]) => el('button', { type: 'button', textContent: label, onclick: () => { close(); act(); } })),
      el('button', { type: 'button', textContent: 'Close', onclick: close })));
  notice.hidden = false;
}

let toldOf = null; // the version on disk that a person was told of

// conflict tells that the file is no more what this page has read.
function conflict(disk, what) {
  toldOf = disk.version;
  const mine = now.split('\n'), theirs = disk.text.split('\n');
  let first = 0;
  while (first < mine.length && mine[first] === theirs[first]) first++;
  const differs = disk.version === '' ? 'The file is gone.' : now === disk.text ? 'It holds the same as this page.' : `It differs from this page from line ${first + 1} on.`;
  tell(`${what} ${differs}`,
    ...(disk.version === '' ? [] : [['Take what is on disk', () => { change(disk.text, 'disk'); seen(disk); }]]),
    ['Keep mine; the next save replaces it', () => { saved = disk.text; version = disk.version; bar(); }]);
}

function seen(disk) {
  saved = disk.text;
  version = disk.version;
  fresh = false;
  bar();
}

// unsaved is what a person would lose with the page.
const unsaved = () => (now !== saved || pending() ? { text: now, version, edits } : null);

// fileNameOf is the name that a job's title suggests for its file.
const fileNameOf = (title) => `${(title ?? '').normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase().replace(/[^a-z0-9]+/g, '-').slice(0, 60).replace(/^-|-$/g, '') || 'drawers'}.yaml`;

// adopt makes a file that was written that of the page.
function adopt(file) {
  name = file;
  api.use(name);
  window.history.replaceState(null, '', `?file=${encodeURIComponent(name)}`);
}

// entitle gives a new job that has no title of its own the name of its file.
async function entitle(file) {
  if (textOf(child(looked.outline, 'job')) !== await starting.untitled()) return;
  edit({ do: 'enter', path: ['job'], value: file.replace(/\.ya?ml$/i, '') });
  await working;
}

// write saves the job. A new one gets its name when the file stands.
async function write() {
  if (writing) return;
  writing = true;
  const first = name === '';
  try {
    form.settle();
    await working;
    const file = first ? await starting.askName(fileNameOf(textOf(child(looked.outline, 'job')))) : { name, version };
    if (!file) return;
    if (first || fresh) await entitle(file.name);
    const asked = now;
    const answer = await api.save(file.name, asked, file.version);
    if (first) adopt(file.name);
    seen({ text: asked, version: answer.version });
    byId('notice').hidden = true;
  } catch (error) {
    if (error.status !== 409 || error.answer.version === undefined) tell(error.message);
    else if (first) tell('Nothing was saved: another program has written a file of that name meanwhile. Save again, and give a name.');
    else conflict(error.answer, 'Nothing was saved: the file on disk has been changed since this page read it.');
  } finally {
    writing = false;
  }
}

// latest is the text with all that was typed.
async function latest() {
  form.settle();
  await working;
  return now;
}

// lost tells once that the program answers no more; what is typed stays on the page.
function lost() {
  if (gone) return;
  gone = true;
  tell('The program has ended; copy the text before you close this tab.');
}

// found lets what was typed meanwhile be made where the program answers again, as after a sleep.
function found() {
  if (!gone) return;
  gone = false;
  tell('The program answers again.');
  look();
}

// watch tells of changes of the file by another tab or program, and of the end of this one. Where a file that the job
// names has been changed, as a log of test cuts, the job is looked at anew.
async function watch() {
  if (document.hidden) return;
  try {
    const disk = await api.disk(version);
    found();
    if (disk && disk.version !== version && disk.version !== toldOf) conflict(disk, 'The file on disk has been changed by another tab or program.');
    if (beside.length > 0 && !busy && await api.changed(beside)) look();
  } catch (error) {
    if (error.status === 0) lost(); // anything else is said when something is asked for
  }
}

function keyboard(event) {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
  const key = event.key.toLowerCase();
  if (key === 's') write();
  else if (key === 'z' && !event.shiftKey) back();
  else if (key === 'y' || key === 'z') step(history.redo(now));
  else return;
  event.preventDefault();
}

// begun takes the text of a job that was begun. Where there is one already, the new one gets a
// page of its own, without a file.
function begun(text) {
  if (fresh) {
    change(text, 'begun');
    working.then(() => { if (document.activeElement === document.body) byId('form').focus(); });
    return;
  }
  presence.goBegun(text);
}

// restore takes what this tab has for the page: a job that was begun, or what was not saved. That
// was made of the version that it names, so that a change of the file meanwhile is told.
function restore() {
  const disk = now, text = presence.takeBegun(), kept = presence.takeUnsaved(name);
  if (!text && (!kept || kept.text === now && kept.edits.length === 0)) return false;
  history.changed(now, 'restored');
  now = text ?? kept.text;
  if (text) {
    if (kept) tell('Another new job was begun in this tab, and not saved.', ['Take that one', () => change(kept.text, 'restored')]);
    return true;
  }
  version = kept.version;
  edits.push(...kept.edits);
  tell('Changes that were not saved are here again.', ['Give them up', () => {
    edits.length = 0;
    change(disk, 'restored');
    look();
  }]);
  return true;
}

async function start() {
  const job = await api.job();
  name = job.name;
  now = job.text;
  seen(job);
  fresh = job.fresh;
  const restored = restore();
  text.begin((next) => change(next, 'text'));
  text.show(now);
  panes.begin();
  form.begin(job.keys, edit, drawerOfFile, bar);
  sizes.begin(edit, (path) => leads.problem({ path }));
  results.begin(view, look, leads.problem);
  verdict.begin(leads);
  act(undo, back);
  act(redo, () => step(history.redo(now)));
  act(save, write);
  starting.begin(begun, () => tell('This is an example: its sizes and readings are not yours. Nothing of it fits your opening or your boards.',
    ['Begin with what I measured', () => starting.show(true).catch((error) => tell(error.message))]));
  presence.begin(() => name, unsaved);
  byId('begin').addEventListener('click', () => starting.show(false).catch((error) => tell(error.message)));
  take.begin(latest, (message) => { if (!gone) tell(message); }); // that the program has ended says more
  paper.begin();
  byId('unit').addEventListener('change', (event) => { view.unit = event.target.value; look(); });
  document.addEventListener('keydown', keyboard);
  document.addEventListener('beforeinput', (event) => { // the browser's own history knows only one field
    if (event.inputType === 'historyUndo' || event.inputType === 'historyRedo') event.preventDefault();
  });
  document.addEventListener('visibilitychange', watch);
  addEventListener('beforeunload', (event) => { if (unsaved()) event.preventDefault(); });
  setInterval(watch, 2000);
  await look();
  if (fresh && !restored) await starting.show(true);
}

start().catch((error) => tell(error.message));
