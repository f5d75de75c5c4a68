// Readings of a caliper, typed one after the other with Enter.
import { el, setText } from './dom.js';
import { at, looked } from './outline.js';
import * as room from './room.js';

// digits are a list's, without what may stand between readings: several can be typed at once.
const digits = (list) => list.join(' ').replace(/\band\b|[,;\s]/gi, '');

// readings are the readings of the stock at a path; send takes edits. The answer is the element,
// and what brings it to the text.
export function readings(path, send) {
  const stock = path[1], id = `r${JSON.stringify(path)}`;
  let waiting = null; // what was typed, until the text has it
  const list = room.keeps(el('ul', { 'aria-label': `Readings of ${stock}` }), `list ${id}`, () => false);
  const told = el('span'), status = room.keeps(el('p', { role: 'status' }, told), `status ${id}`, () => false);
  const next = el('input', { id, type: 'text', inputMode: 'decimal', autocomplete: 'off', spellcheck: false, 'data-focus': id });
  const whole = el('div', { class: 'readings', 'data-readings': JSON.stringify(path) },
    el('label', { htmlFor: id, textContent: 'next reading, then Enter' }), next, status, list);
  const texts = () => {
    const n = at(path);
    return n?.items ? n.items.map((item) => item.text ?? '') : n?.text ? [n.text] : [];
  };
  const write = (all) => {
    waiting = all;
    send({ do: 'enter', path, value: all.length === 1 ? all[0] : `[${all.join(', ')}]` });
  };
  next.addEventListener('keydown', (event) => {
    const value = next.value.trim().replace(/(\d),(?=\d)/g, '$1.');
    if (event.key !== 'Enter' || value === '') return;
    next.value = '';
    write([...(waiting ?? texts()), value]);
  });
  const fill = () => {
    const now = texts();
    if (waiting && digits(waiting) === digits(now)) waiting = null;
    const known = looked.readings?.[stock] ?? '';
    if (told.textContent !== known) room.hold(status);
    setText(told, known);
    const key = JSON.stringify(now);
    if (list.dataset.of === key) return;
    list.dataset.of = key;
    room.hold(list);
    list.replaceChildren(...now.map((text, i) => el('li', {}, text, now.length < 2 ? null : el('button', { type: 'button', textContent: '×',
      'aria-label': `remove reading ${i + 1}, ${text}, of ${stock}`, onclick: () => {
        next.focus();
        write(now.filter((_, other) => other !== i));
      } }))));
  };
  fill();
  return { whole, fill, focus: () => next.focus(), drop: () => { waiting = null; } };
}
