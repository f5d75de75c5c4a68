// What is taken along from a job: packet, labels, sheets, the page for a phone, or all of it, made
// as `build` makes it. A download says how far it has come, and can be given up.
import * as api from './api.js';
import { byId, el, setText } from './dom.js';

const kinds = [
  ['packet', 'Packet', '(PDF) to print', 'what goes to the bench'],
  ['labels', 'Labels', '(PDF) to print', 'one for each piece'],
  ['sheets', 'Sheets', '(PDF) to print', 'what is cut out of each, and in which order'],
  ['shop', 'For the phone', '(HTML)', 'cut list and setups to tick off in the shop'],
  ['all', 'All files', '(zip)', 'what a build writes, with the drawings'],
];

const title = 'Print and take along';

// steady is how long a number stands before the next one, in ms.
const steady = 250;

const list = el('ul', { id: 'take-list', popover: 'auto', 'aria-label': title });
const open = el('button', { type: 'button', id: 'take-open', textContent: title });
const progress = el('span', { id: 'taking', role: 'status' });
const cancel = el('button', { type: 'button', id: 'take-cancel', textContent: 'Cancel', hidden: true });

let text, tell, can = false;
let running = null; // what ends the download

// begin takes what gives the text once all that was typed is in it, and what tells of a mistake.
export function begin(latest, notice) {
  text = latest;
  tell = notice;
  list.append(...kinds.map(([what, name, kind, about]) => el('li', {}, el('button', { type: 'button', 'data-take': what, onclick: () => take(what, name) },
    el('span', { textContent: `${name} ${kind}` }), el('span', { class: 'about', textContent: about })))));
  open.popoverTargetElement = list;
  list.addEventListener('beforetoggle', (event) => { if (event.newState === 'open' && !(can && !running)) event.preventDefault(); });
  list.addEventListener('toggle', (event) => { if (event.newState === 'open') place(); });
  cancel.addEventListener('click', () => running?.abort());
  byId('take').append(open, list, progress, cancel);
  able(can);
}

// able says whether there is a job to take anything from.
export function able(now) {
  can = now;
  open.setAttribute('aria-disabled', String(!can || running !== null));
  open.title = running ? 'A download is being made' : can ? 'Packet, labels and sheets to print; a page for the phone; all files' : 'The job has mistakes: mend them first';
}

// edited forgets what was downloaded: it is no more the job that is seen.
export function edited() {
  if (!running) say('');
}

// say tells of a download; a longer line than its place has stands in its title.
function say(what) {
  setText(progress, what);
  progress.title = what;
}

// place puts the list below its button, within the window.
function place() {
  const at = open.getBoundingClientRect();
  list.style.top = `${Math.min(at.bottom + 2, Math.max(0, innerHeight - list.offsetHeight - 8))}px`;
  list.style.left = `${Math.max(8, Math.min(at.left, innerWidth - list.offsetWidth - 8))}px`;
}

async function take(what, name) {
  list.hidePopover();
  if (running) return;
  running = new AbortController();
  able(can);
  say(`${name}: building …`);
  cancel.setAttribute('aria-label', `Cancel: ${name}`);
  cancel.hidden = false;
  try {
    const file = await download(await api.take(await text(), what, running.signal), steadily((said) => say(`${name}: ${said}`)));
    hand(file);
    say(`Downloaded ${file.name}, ${size(file.blob.size)}`);
  } catch (error) {
    say(`${name}: ${running.signal.aborted ? 'canceled' : 'not downloaded'}`);
    if (!running.signal.aborted) tell(`${name}: ${error.message}`);
  }
  if (document.activeElement === cancel) open.focus();
  cancel.hidden = true;
  running = null;
  able(can);
}

// steadily says the first thing at once, and later ones no sooner than the eye follows.
function steadily(tells) {
  let last = 0;
  return (said) => {
    const now = performance.now();
    if (now - last < steady) return;
    last = now;
    tells(said);
  };
}

// download reads an answer: lines that tell of the build, and the bytes after the last of them.
async function download(response, say) {
  let waiting = new Uint8Array(0), file = null, length = 0;
  const parts = [];
  const body = (bytes) => {
    parts.push(bytes);
    length += bytes.length;
    say(`${size(length)} so far`);
  };
  for (const reader = response.body.getReader(); ;) {
    const { done, value } = await reader.read();
    if (done) break;
    if (file) {
      body(value);
      continue;
    }
    waiting = joined(waiting, value);
    for (let end = waiting.indexOf(10); end >= 0 && !file; end = waiting.indexOf(10)) {
      const line = JSON.parse(new TextDecoder().decode(waiting.subarray(0, end)));
      waiting = waiting.slice(end + 1);
      if (line.error) throw new Error(line.error);
      if (line.name) file = line;
      else say(`building, ${line.done} of ${line.of} ${line.of === 1 ? 'drawer' : 'drawers'}`);
    }
    if (file) body(waiting);
  }
  if (!file) throw new Error('the program gave an answer that ends too soon');
  return { name: file.name, blob: new Blob(parts, { type: file.kind }) };
}

function joined(a, b) {
  const all = new Uint8Array(a.length + b.length);
  all.set(a);
  all.set(b, a.length);
  return all;
}

// hand gives a file to the browser, which keeps it as it keeps any.
function hand(file) {
  const url = URL.createObjectURL(file.blob);
  el('a', { href: url, download: file.name }).click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

const size = (bytes) => (bytes < 1e6 ? `${Math.ceil(bytes / 1e3)} kB` : `${(bytes / 1e6).toFixed(1)} MB`);
