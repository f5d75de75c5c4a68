// What a field means, why it is as it is when left alone, and an example: below the form for the
// field that has the focus, and tied to every field for those who hear the page.
import { byId, el } from './dom.js';
import { usual } from './outline.js';

const help = byId('help');

// parts are what is to be said of a key.
function parts(key) {
  const now = usual(key);
  const why = key.why ? `Why ${now.default ? now.default : now.without ?? 'so'}: ${key.why}.` : '';
  return [key.doc, why, key.example ? `Example: ${key.name}: ${key.example}` : ''].filter(Boolean);
}

// told is the description of a key's field, which is not seen.
export const told = (key, id) => el('span', { id, hidden: true, textContent: parts(key).join(' ') });

// show says all of a key; nothing without one.
export function show(key) {
  const name = key ? `${key.title} (${key.name})` : '';
  if (help.dataset.of === name) return;
  help.dataset.of = name;
  if (!key) return help.replaceChildren(el('div'));
  const [doc, ...more] = parts(key);
  help.replaceChildren(el('div', {}, el('p', {}, el('b', { textContent: key.title }), ` ${doc}`), ...more.map((text) => el('p', { textContent: text }))));
}
