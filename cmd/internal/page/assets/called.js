// Buttons say on what they act, also while that is being renamed.
let all = []; // elements of the form, with what they are called

export function called(e, text) {
  all.push([e, text]);
  e.setAttribute('aria-label', text());
  return e;
}

// recall follows the text; forget begins with a form that is built anew.
export function recall() {
  for (const [e, text] of all) {
    const now = text();
    if (e.getAttribute('aria-label') !== now) e.setAttribute('aria-label', now);
  }
}
export function forget() { all = []; }
