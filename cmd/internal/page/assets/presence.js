// Tells the program that this tab is there, so that it ends when none is; and keeps what was not
// saved for a tab that comes back: one that is loaded again, or opened again after it was closed.
import * as api from './api.js';

const tab = crypto.randomUUID();
const stored = (file) => `unsaved ${file}`, begunWith = 'begun'; // a tab goes from one file to another and back

// begin takes a function for the name of the file, and one for what is not saved: {text, version,
// edits}, or null.
export function begin(file, unsaved) {
  const here = () => api.here(tab).catch(() => { /* it is said when something is asked for */ });
  here();
  addEventListener('pageshow', (event) => { if (event.persisted) here(); });
  addEventListener('pagehide', () => {
    const open = unsaved();
    put(stored(file()), open);
    api.leave(tab, open !== null);
  });
  document.addEventListener('visibilitychange', () => {
    put(stored(file()), document.hidden ? unsaved() : null); // a hidden tab can be dropped without a word
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

// goBegun goes to a page of its own with the text of a job that begins there; takeBegun gives it
// there. The address says that it is that page: a person may stay on this one, and go to another
// without a file later.
export function goBegun(text) {
  put(begunWith, { text });
  location.assign('?file=#begun');
}

export function takeBegun() {
  const held = take(begunWith);
  if (location.hash !== '#begun') return undefined;
  history.replaceState(null, '', location.search);
  return held?.text;
}

// takeUnsaved gives what was not saved of a file, once; or null.
export const takeUnsaved = (file) => take(stored(file));
