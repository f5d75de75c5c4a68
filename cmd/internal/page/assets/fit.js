// What the measures of a drawer come out as: a drawing of each with what would help, and the
// numbers behind.
import { el, setText, svg } from './dom.js';
import { mark, parts, viewBox } from './drawing.js';
import * as picture from './picture.js';
import { refill, table } from './tables.js';

let box, wide, title, together, list, numbers; // of what is shown
let shown = []; // of each measure, as JSON
let sought = null; // the name of a measure to which the focus goes

// seek gives the focus to a measure when it is shown.
export const seek = (measure) => { sought = measure; };

// show brings an element to the fit of the drawer that is shown.
export function show(into, now) {
  const { fit, tables: [sizes, ...behind] } = now;
  const kept = list && into.contains(list) && shape(behind) === numbers.dataset.shape;
  if (!kept) make(into, sizes, behind, fit);
  setText(box.caption, sizes.title);
  refill(box, sizes);
  setText(wide, now.width?.said ?? '');
  setText(title, `Fit of ${fit.drawer}`);
  setText(together, fit.said);
  while (list.childElementCount > fit.measures.length) list.lastElementChild.remove();
  shown.length = list.childElementCount;
  fit.measures.forEach((m, i) => {
    const joint = now.scene?.boxes.length === 1 && now.scene.boxes[0].plays.some((p) => p.measure === m.name);
    const next = JSON.stringify([m, joint]);
    if (next === shown[i]) return;
    shown[i] = next;
    if (!list.children[i]) list.append(el('li', { tabIndex: -1 }));
    list.children[i].dataset.measure = m.name;
    list.children[i].replaceChildren(...measure(m, i, joint));
  });
  [...numbers.querySelectorAll('table')].forEach((e, i) => {
    setText(e.caption, behind[i].title);
    refill(e, behind[i]);
  });
  if (sought !== null) reach();
  else follow(into, now.strip, fit.drawer);
}

let followed = null; // the measure that is most often wrong, as it was shown last; null before any was
let rolled = 0; // how far the page itself has rolled the list

// follow brings the measure that is most often wrong into sight when it is another than before,
// unless a person has rolled the list.
function follow(into, strip, drawer) {
  const wrong = strip.off && strip.drawer === drawer ? strip.measure : '';
  if (wrong === followed) return;
  const first = followed === null;
  followed = wrong;
  if (first) return;
  const place = [...list.children].find((e) => e.dataset.measure === wrong);
  if (!place || (into.scrollTop !== 0 && into.scrollTop !== rolled)) return;
  const at = place.getBoundingClientRect(), seen = into.getBoundingClientRect();
  const over = Math.min(at.bottom - seen.bottom, at.top - seen.top); // its name stays in sight
  if (over > 0) into.scrollTop += over;
  rolled = into.scrollTop;
}

// shape is what tables must have in common for one to be filled with the cells of another.
const shape = (tables) => JSON.stringify(tables.map((t) => [t.columns, t.rows.length]));

function make(into, sizes, behind, fit) {
  box = table(sizes);
  wide = el('p', { class: 'wide' });
  title = el('h2');
  together = el('p', { class: 'together' });
  const key = el('ul', { class: 'signs', 'aria-label': 'Signs' }, ...fit.signs.map((s) => el('li', {},
    svg('svg', { viewBox: viewBox(s.picture), width: 5 * s.picture.width, 'aria-hidden': 'true' }, ...parts(s.picture)), el('span', { textContent: s.word }))));
  list = el('ol', { class: 'fit' });
  shown = [];
  numbers = el('details', { class: 'numbers', 'data-shape': shape(behind) }, el('summary', { textContent: 'Numbers' }), ...behind.map(table));
  into.replaceChildren(box, wide, title, together, key, list, numbers);
}

// measure shows one of them; the name of a joint leads to a section through it.
function measure(m, i, joint) {
  const named = `fit${i}-title`, told = `fit${i}-said`;
  const drawn = svg('svg', { role: 'img', viewBox: viewBox(m.picture), 'aria-labelledby': named, 'aria-describedby': told },
    svg('title', { id: named }, m.title), svg('desc', { id: told }, m.said), ...parts(m.picture));
  return [
    el('p', { class: 'name' }, joint ? el('button', { type: 'button', title: 'a section through it', textContent: m.title, onclick: () => picture.joint(m.name) }) : m.title),
    el('p', { class: 'word', 'data-level': m.mark === 'right' ? null : m.mark === 'wrong' ? 'bad' : 'doubt' }, mark(m.mark), el('span', { textContent: `${m.verdict}, ${m.odds}` })),
    drawn,
    m.help ? el('p', { class: 'help', textContent: m.help }) : null,
  ].filter(Boolean);
}

function reach() {
  const place = [...list.children].find((e) => e.dataset.measure === sought);
  if (place) picture.joint(sought);
  sought = null;
  place?.focus();
}
