// The job as text, with the numbers of its lines and a mark where something is said of one.
import { byId, el, setText } from './dom.js';
import * as panes from './panes.js';
import { levels, waysOut } from './said.js';

const source = byId('source'), gutter = byId('gutter'), messages = byId('messages'), count = byId('count');

// begin calls changed with every text that is typed.
export function begin(changed) {
  source.addEventListener('input', () => { number(); changed(source.value); });
  source.addEventListener('scroll', () => { gutter.scrollTop = source.scrollTop; }, { passive: true });
}

// show puts a text in, with the place of the caret kept as well as can be.
export function show(text) {
  if (source.value === text) return;
  const { selectionStart, selectionEnd, scrollTop } = source;
  let same = 0;
  while (same < selectionStart && same < text.length && text[same] === source.value[same]) same++;
  const grown = same < selectionStart ? text.length - source.value.length : 0;
  source.value = text;
  source.setSelectionRange(Math.max(same, selectionStart + grown), Math.max(same, selectionEnd + grown));
  source.scrollTop = scrollTop;
  number();
}

function number() {
  let lines = 1;
  for (let at = source.value.indexOf('\n'); at >= 0; at = source.value.indexOf('\n', at + 1)) lines++;
  while (gutter.childElementCount > lines) gutter.lastElementChild.remove();
  const more = [];
  for (let n = gutter.childElementCount + 1; n <= lines; n++) more.push(el('div', { textContent: String(n) }));
  gutter.append(...more);
  gutter.scrollTop = source.scrollTop;
}

let said = '';

// tell lists problems; chosen is called with the one that a person goes to.
export function tell(problems, more, chosen) {
  const now = JSON.stringify([problems, more]);
  if (now === said) return;
  said = now;
  for (const line of gutter.querySelectorAll('[data-level]')) delete line.dataset.level;
  for (const p of problems) {
    const line = p.file ? null : gutter.children[p.line - 1];
    if (line && line.dataset.level !== 'error') line.dataset.level = p.level;
  }
  const errors = problems.filter((p) => p.level === 'error').length;
  const notes = problems.filter((p) => p.level === 'note').length;
  const noted = notes === 0 ? '' : notes === 1 ? ', 1 note' : `, ${notes} notes`;
  count.textContent = problems.length === 0 ? 'No messages' : `${errors} ${levels.error}, ${problems.length - errors - notes + more} ${levels.warning}${noted}`;
  const open = errors > 0 ? `${errors} to mend` : problems.length + more;
  setText(byId('tab-told'), `Messages (${open})`);
  byId('tab-told').classList.toggle('bad', errors > 0);
  messages.replaceChildren(...problems.map((p) => el('li', { 'data-level': p.level },
    el('button', { type: 'button', onclick: () => { chosen(p); if (!p.file) go(p.line, p.column); } },
      ...both('place', p.where && `${note(p)}${p.where}`, `${note(p)}${p.file ? p.file + ' ' : ''}line ${p.line}, column ${p.column}`),
      ...both('', p.said, p.message), ...both('hint', p.do, p.hint)), waysOut(p.ways))));
}

const note = (p) => (p.level === 'note' ? 'note, ' : '');

// both says a text in the words of the form, and of the file for those who have that open.
function both(kind, inForm, inFile) {
  if (!inFile) return [];
  if (!inForm) return [el('span', { class: kind || null, textContent: inFile })];
  return [el('span', { class: `${kind} in-form`, textContent: inForm }), el('span', { class: `${kind} in-file`, textContent: inFile })];
}

// go puts the caret at a place of the text.
export function go(line, column) {
  const lines = source.value.split('\n');
  const before = lines.slice(0, line - 1).reduce((n, text) => n + text.length + 1, 0);
  const at = before + [...(lines[line - 1] ?? '')].slice(0, column - 1).join('').length;
  panes.go('text');
  source.focus();
  source.setSelectionRange(at, at);
  const high = source.scrollHeight / lines.length;
  source.scrollTop = Math.max(0, (line - 4) * high);
}
