// The part that is marked, by its number: in the picture, in the cut list and on sheets alike.
import { byId } from './dom.js';

let number = 0, tell = () => {};

// begin takes a function that marks a number in the picture.
export function begin(picture) { tell = picture; }

// choose marks the parts with a number, or none with 0; what is marked already is not any more.
export function choose(n) {
  number = n === number ? 0 : n;
  tell(number);
  show();
}

// chosen is told what was chosen in the picture.
export function chosen(n) {
  number = n;
  show();
  byId('lists').querySelector('tr.marked')?.scrollIntoView({ block: 'nearest' });
}

// show marks what is in the lists now.
export function show() {
  for (const e of byId('lists').querySelectorAll('[data-number]')) {
    const on = number !== 0 && Number(e.dataset.number) === number;
    e.classList.toggle('marked', on);
    if (e.tagName === 'BUTTON') e.setAttribute('aria-pressed', String(on));
  }
}

// listen marks what is clicked on in the lists.
byId('lists').addEventListener('click', (event) => {
  const e = event.target.closest('[data-number]');
  if (e) choose(Number(e.dataset.number));
});
