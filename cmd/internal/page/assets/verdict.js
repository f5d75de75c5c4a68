// The verdict on the job in one strip: a word and a mark, the odds, and what to watch, each with a
// button that leads there.
import { byId, el, setText } from './dom.js';
import { mark } from './drawing.js';
import { inForm } from './said.js';

const strip = byId('verdict');
const tab = document.querySelector('nav [data-to=result]'); // on a small screen the verdict stands behind it
const sign = el('span', { class: 'sign' }), word = el('strong'), said = el('span');
const ways = el('ul', { 'aria-label': 'What to watch' });

let leads, shown = '';

// shortly is how many warnings the strip names; the others stand under messages.
const shortly = 2;

// begin takes what leads to a problem, to a measure of a drawer, and to all messages.
export function begin(all) {
  leads = all;
  strip.replaceChildren(el('p', { role: 'status', 'aria-live': 'polite', 'aria-atomic': 'true' }, sign, word, ' ', said), el('p', { class: 'working', 'aria-hidden': 'true', textContent: 'working …' }), ways);
}

// show brings the strip to what was looked at. Nothing is touched, and nothing read out, where nothing
// has changed.
export function show(now) {
  const told = now.failed ? failed(now) : judged(now);
  const next = JSON.stringify([told, now.problems]);
  if (next === shown) return;
  shown = next;
  if (strip.dataset.mark !== told.mark) {
    strip.dataset.mark = told.mark;
    sign.replaceChildren(mark(told.mark));
    tab.replaceChildren(mark(told.mark), 'Box');
  }
  setText(word, told.word);
  tab.setAttribute('aria-label', `Box, ${told.word.replace(/:$/, '')}`);
  setText(said, told.said);
  ways.replaceChildren(...told.ways.map(way));
  ways.hidden = told.ways.length === 0;
}

// way is a button; its kind says where it leads.
function way({ kind, text, to }) {
  return el('li', {}, el('button', { type: 'button', 'data-kind': kind, onclick: () => leads[kind](...to) }, el('span', { textContent: text })));
}

function failed(now) {
  const errors = now.problems.filter((p) => p.level === 'error');
  const n = errors.length, least = now.more > 0 ? 'at least ' : '';
  const ways = [{ kind: 'problem', text: `First: ${inForm(errors[0])}`, to: [errors[0]] }];
  if (n > 1) ways.push({ kind: 'messages', text: 'All messages', to: [] });
  return { mark: 'wrong', word: 'Cannot be built:', said: `${least}${n} ${n === 1 ? 'mistake' : 'mistakes'}`, ways };
}

function judged(now) {
  const { strip } = now, warnings = now.problems.filter((p) => p.level === 'warning');
  const others = warnings.filter((p) => p.code !== strip.check), named = others.slice(0, shortly); // what is to be watched is named already
  const ways = named.map((p) => ({ kind: 'problem', text: inForm(p), to: [p] }));
  if (strip.watch) ways.unshift({ kind: 'measure', text: `${strip.off ? 'Most often wrong' : 'Nearest to its limit'}${now.drawers.length > 1 ? `, of ${strip.drawer}` : ''}: ${strip.watch}`, to: [strip.drawer, strip.measure] });
  if (others.length + now.more > named.length) ways.push({ kind: 'messages', text: `All ${warnings.length + now.more} warnings`, to: [] });
  return { mark: strip.mark, word: `${strip.word}:`, said: strip.said, ways };
}
