// Of many drawers an answer has the numbers first, and what is said of them comes after. Until then what
// was said before stands, but for mistakes that are mended, and the page says that it is working.
import { byId } from './dom.js';

let last = null; // the answer that had everything

// fill gives an answer of numbers alone what was said before.
export function fill(answer) {
  byId('result').setAttribute('aria-busy', String(Boolean(answer.soon)));
  if (!answer.soon) {
    last = answer;
    return;
  }
  answer.problems = (last?.problems ?? []).filter((p) => p.level !== 'error');
  answer.more = last?.more ?? 0;
  if (!answer.fit || answer.fit.drawer !== last?.fit?.drawer) return;
  for (const m of answer.fit.measures) {
    const before = last.fit.measures.find((other) => other.name === m.name);
    if (m.wrong && before?.wrong) m.help = before.help;
  }
}
