// Tells the program that this tab is there, so that it ends when none is; and keeps what was not
// saved for a tab that comes back: one that is loaded again, or opened again after it was closed.
import * as api from './api.js';

const tab = crypto.randomUUID();
const stored = 'unsaved', begunWith = 'begun';

// begin takes a function for what is not saved: {name, text, version}, or null.
export function begin(unsaved) {
  const here = () => api.here(tab).catch(() => { /* it is said when something is asked for */ });
  here();
  addEventListener('pageshow', (event) => { if (event.persisted) here(); });
  addEventListener('pagehide', () => {
    const open = unsaved();
    put(stored, open);
    api.leave(tab, open !== null);
  });
  document.addEventListener('visibilitychange', () => {
    put(stored, document.hidden ? unsaved() : null); // a hidden tab can be dropped without a word
    if (!document.hidden) here();
  });
}

// put holds a value for the next page in this tab, or holds none. A store that is full or
// forbidden holds nothing.
function put(key, value) {
  try {
    if (value) sessionStorage.setItem(key, JSON.stringify(value));
    else sessionStorage.removeItem(key);
  } catch { /* then it is not held */ }
}

function take(key) {
  try {
    return JSON.parse(sessionStorage.getItem(key));
  } catch {
    return null;
  } finally {
    put(key, null);
  }
}

// keepBegun holds the text of a job that begins on the next page; takeBegun gives it there.
export const keepBegun = (text) => put(begunWith, { text });
export const takeBegun = () => take(begunWith)?.text;

// takeUnsaved gives what was not saved of a file, once; or null.
export function takeUnsaved(name) {
  const held = take(stored);
  return held?.name === name ? held : null;
}
