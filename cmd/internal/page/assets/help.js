// What a field means, why it is as it is when left alone, and an example: below the form for the
// field that has the focus, and tied to every field for those who hear the page.
import { byId, el } from './dom.js';
import { usual } from './outline.js';

const help = byId('help');

// parts are what is to be said of a key.
function parts(key) {
  const now = usual(key);
  const why = now.why ? `Why ${now.default ? now.default : now.without ?? 'so'}: ${now.why}.` : '';
  return [now.doc, why, now.example ? `Example: ${now.example}` : ''].filter(Boolean);
}

// told is the description of a key's field, which is not seen.
export const told = (key, id) => el('span', { id, hidden: true, textContent: parts(key).join(' ') });

// show says all of a key; nothing without one.
export function show(key) {
  const [doc, ...more] = key ? parts(key) : [];
  const name = JSON.stringify([key?.name, doc, more]);
  if (help.dataset.of === name) return;
  help.dataset.of = name;
  if (!key) return help.replaceChildren(el('div'));
  help.replaceChildren(el('div', {}, el('p', {}, el('b', { textContent: key.title }), ` ${doc}`), ...more.map((text) => el('p', { textContent: text })),
    el('p', {}, 'In the job file: ', el('code', { textContent: key.name }))));
}
