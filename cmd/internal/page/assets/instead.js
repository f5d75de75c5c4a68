// What stands in place of a list while the job cannot be built: measures that are known all the same,
// or a sentence with the way out. Nothing of an earlier entry is seen.
import { byId, el } from './dom.js';
import { table } from './tables.js';

const lists = byId('lists');
const place = el('div', { class: 'instead' });

let lead, shown = '';

// begin takes what leads to a problem.
export const begin = (leads) => { lead = leads; };

// show hides the list, and says what is known without it.
export function show({ known, problems }) {
  if (!place.isConnected) lists.prepend(place);
  const first = problems.find((p) => p.level === 'error'), next = JSON.stringify([known, first]);
  if (next === shown) return;
  shown = next;
  const had = place.contains(document.activeElement);
  const out = first ? el('button', { type: 'button', textContent: 'Go to the first mistake', onclick: () => lead(first) }) : null;
  place.replaceChildren(...(known
    ? [el('p', { textContent: 'Measures as set in this entry. How many boxes come out right is told when the job can be built.' }), table(known)]
    : [el('p', { textContent: 'Nothing to show while the job cannot be built.' })]), out ?? '');
  if (had) out?.focus();
}

// hide brings the list back.
export function hide() {
  place.remove();
}
