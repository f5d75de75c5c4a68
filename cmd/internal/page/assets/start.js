// How a job begins: with an opening, with the size of a box, or with a file of the folder; and the
// name that it gets when it is saved for the first time.
import * as api from './api.js';
import * as card from './card.js';
import { byId, el, setText } from './dom.js';

const cards = byId('start'), job = document.querySelector('main:not(#start)');

let taken, exampled, facts = null;

// begin takes a function for the text of a job that was begun, and one to call when a person looks at
// the example.
export function begin(took, looks) {
  taken = took;
  exampled = looks;
}

// show asks how to begin. Without a job to go back to, the example behind it is one.
export async function show(example) {
  facts = await api.start();
  cards.replaceChildren(
    el('h2', { id: 'start-title', tabIndex: -1, textContent: 'What do you begin with?' }),
    el('div', { class: 'cards' },
      card.measuring(facts, 'opening', took),
      card.measuring(facts, 'box', took),
      files()),
    el('button', { type: 'button', textContent: example ? 'Look at an example first' : 'Back to the job', onclick: () => {
      hide();
      if (example) exampled();
    } }));
  visible(true);
  byId('start-title').focus();
}

function hide() {
  visible(false);
  cards.replaceChildren();
}

function visible(on) {
  cards.hidden = !on;
  job.hidden = on;
  document.body.toggleAttribute('data-start', on);
}

function took(text) {
  card.forget();
  hide();
  taken(text);
}

// files is the card of the jobs of the folder.
function files() {
  const list = facts.jobs.map(({ name, title }) => el('li', {},
    el('a', { href: `?file=${encodeURIComponent(name)}` }, el('span', { textContent: name }), title ? el('span', { class: 'title', textContent: title }) : null)));
  return el('section', { class: 'card', 'aria-labelledby': 'start-file' },
    el('h3', { id: 'start-file', textContent: 'Open a file' }),
    el('p', { textContent: list.length > 0 ? `Job files of ${facts.folder}:` : `There is no job file in ${facts.folder}.` }),
    el('ul', {}, ...list));
}

// untitled is the title of a job that nobody gave one.
export async function untitled() {
  facts ??= await api.start();
  return facts.title;
}

// askName asks for the name of a job's file, which gets into the folder in which the program was
// started. It gives the name and the version of the file that shall be replaced, empty where there
// is none; or null.
export async function askName(suggested) {
  facts ??= await api.start();
  const name = el('input', { name: 'name', value: suggested, autocomplete: 'off', spellcheck: false, 'aria-describedby': 'naming-said' });
  const said = el('p', { id: 'naming-said', class: 'said', role: 'alert', hidden: true });
  const ok = el('button', { type: 'submit', textContent: 'Save' });
  const tell = (text) => { said.hidden = text === ''; said.dataset.level = 'error'; setText(said, text); };
  let found = null; // what the name leads to, once it was asked
  const dialog = el('dialog', { id: 'naming', 'aria-labelledby': 'naming-title' });
  const form = el('form', { onsubmit: async (event) => {
    event.preventDefault();
    if (found?.version && found.typed === name.value) return close(found);
    try {
      found = { ...await api.name(name.value), typed: name.value };
    } catch (error) {
      found = null;
      tell(error.message);
      return name.focus();
    }
    if (found.version === '') return close(found);
    tell(`${found.name} is there already. Give another name, or replace it with this job.`);
    setText(ok, `Replace ${found.name}`);
  } },
  el('h2', { id: 'naming-title', textContent: 'Name the job file' }), card.labeled(`It is saved in ${facts.folder}`, name), said,
  el('div', { class: 'bar' }, ok, el('button', { type: 'button', textContent: 'Cancel', onclick: () => close(null) })));
  name.addEventListener('input', () => { tell(''); setText(ok, 'Save'); });
  let close;
  const closed = new Promise((done) => { close = (answer) => { dialog.remove(); done(answer); }; });
  dialog.addEventListener('close', () => close(null));
  dialog.append(form);
  document.body.append(dialog);
  dialog.showModal();
  name.select();
  return closed;
}
