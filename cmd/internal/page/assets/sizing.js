// A drawer has its size from its box or from an opening: one switch, which keeps what was typed
// for the other way as long as the page is open.
import { called } from './called.js';
import { el } from './dom.js';
import { at, child, nameAt, textOf } from './outline.js';

const kept = new Map(); // drawer and way → edits that write it again

// wayOf is how a drawer has its size.
export const wayOf = (path) => (child(at(path), 'opening') ? 'opening' : 'size');

// belongs reports whether a key is asked for in a way; what the text has is shown in any case.
export const belongs = (key, way, given) => !key.in || key.in === way || Boolean(given);

// sizing is the switch of a drawer. keys are its entries, send takes edits.
export function sizing(path, keys, send) {
  const now = wayOf(path);
  const choose = (to) => {
    const name = nameAt(path, 'drawer');
    kept.set(name + now, keys.flatMap((k) => written(k, [...path, k.name], now)));
    const then = (kept.get(name + to) ?? []).map((e) => ({ ...e, path: [...path, ...e.path.slice(2)] }));
    const opening = then.find((e) => e.path.length === 3 && e.path[2] === 'opening');
    send({ do: 'size', path, value: to, then: opening && !child(at(['openings']), opening.value) ? [] : then });
  };
  const radio = (value, text) => el('label', {}, el('input', { type: 'radio', name: 'size', value, checked: now === value,
    'data-focus': `size ${value}`, onchange: () => choose(value) }), text);
  const both = el('fieldset', { class: 'sizing' }, el('legend', { textContent: 'Size' }), radio('size', 'I know the box'), radio('opening', 'It goes into an opening'));
  return called(both, () => `size of ${nameAt(path, 'drawer')}`);
}

// written are the edits that write again what the text has for a way.
function written(key, path, way, within = false) {
  const n = at(path), mine = within || key.in === way;
  if (!n) return [];
  if (n.entries) return (key.keys ?? []).flatMap((k) => written(k, [...path, k.name], way, mine));
  return mine && textOf(n) ? [{ do: 'enter', path, value: textOf(n) }] : [];
}
