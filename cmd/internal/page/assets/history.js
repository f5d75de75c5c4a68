// Undo and redo of whole texts: the form and the text pane share one history.

// most states are kept, and no more characters than this in all.
const most = 300, mostSize = 20_000_000;

// together is how long changes of one kind become one step, in ms.
const together = 800;

export class History {
  #past = [];
  #future = [];
  #kind = '';
  #at = 0;

  // changed takes the text before a change. Quick changes of one kind are one step; those of none
  // are steps of their own.
  changed(before, kind) {
    const now = performance.now();
    if (!kind || kind !== this.#kind || now - this.#at > together || this.#past.length === 0) this.#past.push(before);
    this.#kind = kind;
    this.#at = now;
    this.#future = [];
    let size = this.#past.reduce((n, text) => n + text.length, 0);
    while (this.#past.length > 1 && (this.#past.length > most || size > mostSize)) size -= this.#past.shift().length;
  }

  get canUndo() { return this.#past.length > 0; }
  get canRedo() { return this.#future.length > 0; }

  // undo and redo give the text to go to, or undefined.
  undo(now) { return this.#step(now, this.#past, this.#future); }
  redo(now) { return this.#step(now, this.#future, this.#past); }

  #step(now, from, to) {
    this.#kind = '';
    if (from.length === 0) return undefined;
    to.push(now);
    return from.pop();
  }
}
