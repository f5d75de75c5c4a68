// What few jobs need stands folded away below what is asked for first. It opens by itself for a value
// that the text gets and for what is said of a field in it.
import { el } from './dom.js';
import { at, looked, textOf } from './outline.js';

let folds = new Map(); // path → {details, names, path, filled, fill, had}
const opened = new Map(); // path → whether its fold was open

// forget leaves the folds of a form that is built anew.
export function forget() { folds = new Map(); }

const belowIt = (one, path) => path.length > one.path.length && one.names.has(path[one.path.length]) && one.path.every((step, i) => step === path[i]);

// given reports whether the text has one of what a fold has.
const given = (one) => [...one.names].some((name) => { const n = at([...one.path, name]); return n && textOf(n) !== ''; });

// fold puts keys of what stands at a path under "More". Its content is made when it is opened first;
// filled is called then.
export function fold(path, keys, content, filled) {
  const way = JSON.stringify(path);
  const one = { path, names: new Set(keys.map((k) => k.name)), filled: false, told: '' };
  one.had = given(one);
  one.details = el('details', { class: 'more', open: opened.get(way) ?? one.had }, el('summary', {}, 'More'));
  one.fill = () => {
    if (one.filled) return;
    one.filled = true;
    one.details.append(el('div', {}, ...content()));
  };
  if (one.details.open) one.fill();
  one.details.addEventListener('toggle', () => {
    opened.set(way, one.details.open);
    if (!one.details.open || one.filled) return;
    one.fill();
    filled();
  });
  folds.set(way, one);
  return one.details;
}

// unfold opens the folds on the way to a path.
export function unfold(path) {
  for (const one of folds.values()) {
    if (belowIt(one, path)) open(one);
  }
}

function open(one) {
  one.fill();
  one.details.open = true;
}

// follow opens what has got a value, or something new that is said of it.
export function follow() {
  for (const one of [...folds.values()]) {
    const has = given(one), told = JSON.stringify(looked.problems.filter((p) => p.level !== 'note' && belowIt(one, p.path)).map((p) => p.path));
    if (has && !one.had || told !== '[]' && told !== one.told) open(one);
    one.had = has;
    one.told = told;
  }
}
