// The start cards of what was measured: an opening, or a box. What was typed in one stays while the page
// is open, until a job is made of it.
import * as api from './api.js';
import { el, setText } from './dom.js';

const kinds = {
  opening: { title: 'I have an opening', does: 'Make the drawers for this opening',
    about: 'The hole in the cabinet, inside; of several readings, with a comma and a space between them, the smallest counts. The boxes follow from it and from the slide.' },
  box: { title: 'I know the box', does: 'Make this box', about: 'The outside of the box itself, without a drawer front. Type what you measured.' },
};

let typed = new Map(); // card and name of a field → its value

// forget forgets what was typed: a job was made of it.
export function forget() { typed = new Map(); }

const usualUnit = () => (/^en-US\b/.test(navigator.language) ? 'in' : 'mm');

// labeled is a field with its label above it, and what is said of it below.
export function labeled(label, input, told = null) {
  return el('label', {}, el('span', { textContent: label }), input, told);
}

const text = (name) => el('input', { name, autocomplete: 'off' });
const choice = (name, options) => el('select', { name }, ...options.map(([value, textContent]) => el('option', { value, textContent })));

// fieldsOf are the inputs of a card by their names.
function fieldsOf(facts, opening) {
  const list = [choice('units', [['mm', 'mm'], ['in', 'inches']]), ...['width', 'height', 'depth', 'sides', 'bottom', 'count', 'cutter'].map(text)];
  if (opening) list.push(choice('slide', facts.slides.map((name) => [name, name.replaceAll('-', ' ')])), text('length'), text('rows'));
  const all = Object.fromEntries(list.map((input) => [input.name, input]));
  for (const name of ['count', 'rows']) if (all[name]) all[name].inputMode = 'numeric';
  return all;
}

// answersOf are the answers of a card.
function answersOf(measured, f) {
  const value = (name) => f[name]?.value.trim() ?? '';
  const one = (name) => [name, value(name)];
  return { ...Object.fromEntries(['units', 'sides', 'bottom', 'count', 'cutter', 'slide', 'length', 'rows'].map(one)), measured, size: ['width', 'height', 'depth'].map(value) };
}

// measuring is the card of what was measured; took takes the text of the job that is made of it.
export function measuring(facts, measured, took) {
  const { title, about, does } = kinds[measured], id = `start-${measured}`, f = fieldsOf(facts, measured === 'opening');
  const said = el('p', { id: `said-${measured}`, class: 'said', role: 'alert', hidden: true });
  const allSame = el('button', { type: 'button', hidden: true, textContent: 'Take it all the same' });
  const bar = el('div', { class: 'bar' }, el('button', { type: 'submit', textContent: does }), allSame);
  const takes = f.length ? slideTaken(measured, f) : null;
  const form = el('form', { class: 'card', 'aria-labelledby': id, onsubmit: async (event) => {
    event.preventDefault();
    try {
      took((await api.begin(answersOf(measured, f))).text);
    } catch (error) {
      refuse(f, said, bar, error.answer?.error ? error.answer : { error: error.message });
      allSame.hidden = !error.answer?.text;
      allSame.onclick = () => took(error.answer.text);
    }
  } }, el('h3', { id, textContent: title }), el('p', { textContent: about }), labeled('Measured in', f.units), ...rows(f, takes), said, bar);
  // What nobody knows but who measures is shown as an example, and has to be typed.
  const fill = () => {
    const usual = facts.usual.find((u) => u.measured === measured && u.units === f.units.value);
    ['width', 'height', 'depth'].forEach((name, i) => { f[name].placeholder = `such as ${usual.size[i]}`; });
    for (const name of ['sides', 'bottom', 'cutter']) f[name].placeholder = `such as ${usual[name]}`;
    refuse(f, said, bar, null);
    allSame.hidden = true;
  };
  const first = facts.usual.find((u) => u.measured === measured);
  const begins = { units: usualUnit(), count: first.count, slide: first.slide, rows: '1' };
  for (const [name, input] of Object.entries(f)) {
    input.value = typed.get(measured + name) ?? begins[name] ?? '';
    input.addEventListener('input', () => {
      typed.set(measured + name, input.value);
      input.removeAttribute('aria-invalid');
      allSame.hidden = true; // it would take what was typed before
    });
  }
  f.units.addEventListener('change', fill);
  fill();
  takes?.ask();
  return form;
}

// rows are the fields of a card, in their order.
function rows(f, takes) {
  const size = el('div', { class: 'row three' }, labeled('Width', f.width), labeled('Height', f.height), labeled('Depth', f.depth));
  const boards = [labeled('Thickness of the boards, two caliper readings or more (they say how boards differ)', f.sides),
    labeled('Thickness of the bottom, caliper readings (one will do to begin with)', f.bottom)];
  if (!takes) return [size, ...boards, el('div', { class: 'row two' }, labeled('How many boxes', f.count), labeled('Width of the saw blade or bit', f.cutter))];
  return [size, el('div', { class: 'row two' }, labeled('Drawers above each other', f.rows), labeled('How many such openings', f.count)),
    el('div', { class: 'row two' }, labeled('Slide', f.slide), labeled('Slide length', f.length)), takes.told,
    ...boards, labeled('Width of the saw blade or bit', f.cutter)];
}

// slideTaken says which length of slide is taken, as long as that is known.
function slideTaken(measured, f) {
  const told = el('p', { class: 'taken', role: 'status' });
  f.length.placeholder = 'the longest that fits';
  let asked = 0, waiting;
  const ask = async () => {
    const now = ++asked;
    const { taken } = await api.slide(answersOf(measured, f)).catch(() => ({ taken: '' })); // it is only a help
    if (now !== asked) return;
    setText(told, taken ? `Takes slides of ${taken}${f.length.value.trim() === '' ? ', the longest that fit' : ''}` : 'Which slide is taken shows once the depth is typed');
  };
  for (const name of ['units', 'depth', 'slide', 'length']) {
    f[name].addEventListener('input', () => {
      clearTimeout(waiting);
      waiting = setTimeout(ask, 200);
    });
  }
  return { told, ask };
}

// refuse says at the fields that are wrong what is, or nothing without an answer.
function refuse(f, said, bar, answer) {
  said.hidden = answer === null;
  said.dataset.level = 'error';
  setText(said, answer?.error ?? '');
  const wrong = answer?.field === 'size' ? answer.sides ?? ['width', 'height', 'depth'] : [answer?.field];
  for (const [name, input] of Object.entries(f)) {
    for (const [about, value] of [['aria-invalid', 'true'], ['aria-describedby', said.id]]) {
      if (wrong.includes(name)) input.setAttribute(about, value);
      else input.removeAttribute(about);
    }
  }
  if (!answer) return;
  const of = wrong.filter((name) => f[name]).map((name) => f[name]), first = of.find((input) => input.value.trim() === '') ?? of[0];
  if (first) (first.closest('.row') ?? first.closest('label')).after(said);
  else bar.before(said);
  first?.focus();
}
