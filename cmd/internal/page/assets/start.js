// How a job begins: with an opening, with the size of a box, or with a file of the folder; and the
// name that it gets when it is saved for the first time.
import * as api from './api.js';
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
      measuring('opening', 'I have an opening', 'The hole that one drawer runs in, inside, where it is narrowest. The box follows from it and from the slide. Type what you measured.', 'Make the drawer for this opening'),
      measuring('box', 'I know the box', 'The outside of the box itself, without a drawer front. Type what you measured.', 'Make this box'),
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

const usualUnit = () => (/^en-US\b/.test(navigator.language) ? 'in' : 'mm');
const usualOf = (measured, units) => facts.usual.find((u) => u.measured === measured && u.units === units);

// labeled is a field of a card with its label above it.
function labeled(label, input) {
  return el('label', {}, el('span', { textContent: label }), input);
}

// measuring is the card of what was measured.
function measuring(measured, title, about, does) {
  const units = el('select', { name: 'units' }, el('option', { value: 'mm', textContent: 'mm' }), el('option', { value: 'in', textContent: 'inches' }));
  const lengths = ['Width', 'Height', 'Depth'].map((name) => [name, el('input', { name: name.toLowerCase(), autocomplete: 'off' })]);
  const [sides, bottom, count, cutter] = ['sides', 'bottom', 'count', 'cutter'].map((name) => el('input', { name, autocomplete: 'off' }));
  count.inputMode = 'numeric';
  const slide = measured === 'box' ? null : el('select', { name: 'slide' }, ...facts.slides.map((name) => el('option', { value: name, textContent: name.replaceAll('-', ' ') })));
  const said = el('p', { id: `said-${measured}`, class: 'said', role: 'alert', hidden: true });
  const allSame = el('button', { type: 'button', hidden: true, textContent: 'Take it all the same' });
  // What nobody knows but who measures is shown as an example, and has to be typed.
  const fill = () => {
    const usual = usualOf(measured, units.value);
    lengths.forEach(([, input], i) => { input.placeholder = `such as ${usual.size[i]}`; });
    for (const input of [sides, bottom, cutter]) input.placeholder = `such as ${usual[input.name]}`;
    if (count.value === '') count.value = usual.count;
    refused(null);
  };
  const fields = { units: [units], size: lengths.map(([, input]) => input), sides: [sides], bottom: [bottom], count: [count], cutter: [cutter], slide: slide ? [slide] : [] };
  const refused = (answer) => {
    said.hidden = answer === null;
    said.dataset.level = 'error';
    setText(said, answer?.error ?? '');
    allSame.hidden = !answer?.text;
    allSame.onclick = () => took(answer.text);
    for (const [name, inputs] of Object.entries(fields)) {
      for (const input of inputs) {
        for (const [about, value] of [['aria-invalid', 'true'], ['aria-describedby', said.id]]) {
          if (answer?.field === name) input.setAttribute(about, value);
          else input.removeAttribute(about);
        }
      }
    }
    if (!answer) return;
    const of = fields[answer.field] ?? [], first = of.find((input) => input.value.trim() === '') ?? of[0];
    if (first) first.closest('.row, label').after(said);
    else bar.before(said);
    first?.focus();
  };
  const id = `start-${measured}`, bar = el('div', { class: 'bar' }, el('button', { type: 'submit', textContent: does }), allSame);
  const form = el('form', { class: 'card', 'aria-labelledby': id, onsubmit: async (event) => {
    event.preventDefault();
    try {
      const answer = await api.begin({ units: units.value, measured, size: lengths.map(([, input]) => input.value.trim()), sides: sides.value.trim(), bottom: bottom.value.trim(), count: count.value.trim(), cutter: cutter.value.trim(), slide: slide?.value ?? '' });
      took(answer.text);
    } catch (error) {
      refused(error.answer?.error ? error.answer : { error: error.message });
    }
  } },
  el('h3', { id, textContent: title }), el('p', { textContent: about }),
  labeled('Measured in', units),
  el('div', { class: 'row three' }, ...lengths.map(([name, input]) => labeled(name, input))),
  labeled('Thickness of the boards, two caliper readings or more', sides),
  labeled('Thickness of the bottom, caliper readings', bottom),
  slide ? labeled('Slide', slide) : null,
  el('div', { class: 'row two' }, labeled('How many boxes', count), labeled('Width of the saw blade or bit', cutter)),
  said, bar);
  units.value = usualUnit();
  if (slide) slide.value = usualOf(measured, units.value).slide;
  units.addEventListener('change', fill);
  fill();
  return form;
}

function took(text) {
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
  el('h2', { id: 'naming-title', textContent: 'Name the job file' }), labeled(`It is saved in ${facts.folder}`, name), said,
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
