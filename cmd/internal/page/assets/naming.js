// A new thing gets its name before it is made.
import { el } from './dom.js';

let ids = 0;

// naming is a button that asks for a name and makes something of it. label is what is written on
// it, whole what is said to those who do not see where it stands; name gives one that is free.
export function naming(label, whole, name, make) {
  const id = `n${++ids}`;
  const start = el('button', { type: 'button', textContent: label, 'aria-label': whole, 'aria-expanded': 'false' });
  const input = el('input', { id, type: 'text', autocomplete: 'off', spellcheck: false });
  const close = () => { asking.hidden = true; start.setAttribute('aria-expanded', 'false'); start.focus(); };
  const done = () => {
    const chosen = input.value.trim();
    if (chosen === '') return;
    close();
    make(chosen);
  };
  const asking = el('span', { class: 'bar asking', hidden: true }, el('label', { htmlFor: id, textContent: `Name of the ${whole.replace(/^(add|new) /, 'new ')}` }), input,
    el('button', { type: 'button', textContent: 'Make', 'aria-label': `make ${whole.replace(/^add /, '')}`, onclick: done }), el('button', { type: 'button', textContent: 'Cancel', onclick: close }));
  input.addEventListener('keydown', (event) => {
    if (event.key === 'Enter') done();
    else if (event.key === 'Escape') close();
  });
  start.addEventListener('click', () => {
    asking.hidden = !asking.hidden;
    start.setAttribute('aria-expanded', String(!asking.hidden));
    if (asking.hidden) return;
    input.value = name();
    input.focus();
    input.select();
  });
  return el('span', { class: 'naming' }, start, asking);
}
