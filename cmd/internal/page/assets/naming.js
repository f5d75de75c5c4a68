// A new thing gets its name before it is made.
import { called } from './called.js';
import { el } from './dom.js';

let ids = 0;

// naming is a button that asks for a name and makes something of it. label is what is written on
// it, whole gives what is said to those who do not see where it stands, name one that is free.
export function naming(label, whole, name, make) {
  const id = `n${++ids}`;
  const start = called(el('button', { type: 'button', textContent: label, 'aria-expanded': 'false' }), whole);
  const input = el('input', { id, type: 'text', autocomplete: 'off', spellcheck: false });
  const close = () => { asking.hidden = true; start.setAttribute('aria-expanded', 'false'); start.focus(); };
  const done = () => {
    const chosen = input.value.trim();
    if (chosen === '') return;
    close();
    make(chosen);
  };
  const asking = el('span', { class: 'bar asking', hidden: true }, el('label', { htmlFor: id, textContent: 'Name' }), called(input, () => `name of the ${whole().replace(/^(add|new) /, 'new ')}`),
    called(el('button', { type: 'button', textContent: 'Make', onclick: done }), () => `make ${whole().replace(/^add /, '')}`), el('button', { type: 'button', textContent: 'Cancel', onclick: close }));
  input.addEventListener('keydown', (event) => {
    if (event.key === 'Enter') done();
    else if (event.key === 'Escape') close();
    else return;
    event.preventDefault(); // the button that has the focus then is not pressed
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
