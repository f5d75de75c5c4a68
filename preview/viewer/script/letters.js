// Letters over the picture. All are asked for before any finds its place: in the order of TURNS, at the
// first of its places where it covers neither other letters nor a mark that is not its own. What has to
// be told, and names, are led aside, with a line to where they belong; what else finds no place is left
// out, and stands in the lists.

// TURNS: dimensions, what is wrong, what was asked for, names, clearances, faces.
const TURNS = { size: 0, wrong: 1, asked: 2, name: 3, clearance: 4, face: 5 };

// Dots that letters keep from others, and from a border; how near to its mark they need no line.
const SPARE = 1, BORDER = 2, NEAR = 10;

// Dots from ring to ring of places aside, and how many there are, for names and for what has to be told;
// places on a ring.
const RING = 22, RINGS = 5, ALL_RINGS = 14, ROUND = 16;

class Letters {
  constructor(layer) {
    this.layer = layer;
    this.spans = [];
    this.sizes = new Map(); // by kind and text
    this.taken = new Taken();
  }

  begin({ width, height }, kept) {
    if (this.width !== width) this.sizes.clear(); // some break their lines by it
    [this.width, this.height] = [width, height];
    this.taken.begin(width, height);
    this.asked = [];
    this.used = 0; // spans
    this.inTurn = Object.values(TURNS).map(() => []);
    for (const e of kept) if (e.textContent && !e.hidden) this.taken.box(this.boxOf(e));
  }

  // boxOf is where an element over the picture stands; it is asked again only for another text.
  boxOf(e) {
    const key = `${e.textContent} ${this.width} ${this.height}`;
    if (e.keptFor !== key) {
      const r = e.getBoundingClientRect(), s = this.layer.getBoundingClientRect();
      e.keptFor = key;
      e.keptBox = [r.left - s.left, r.top - s.top, r.right - s.left, r.bottom - s.top];
    }
    return e.keptBox;
  }

  // ask wants a text: {text, kind, turn, at: dots where its middle may stand, own: its mark, from: the dot
  // from which it may be led aside, by: its places as so many dots from there, must: it has to be told,
  // aside: it is led aside all the same, seen: whether nothing hides one of its places, button: an element
  // that is put there instead, color: of its line}.
  ask(what) {
    what.e = what.button ?? this.span(this.used++);
    this.asked.push(what);
    this.inTurn[what.turn].push(what);
  }

  // settle gives every text its place, and the lines to those aside, by dots.
  settle() {
    this.measure();
    const lines = [];
    this.placed = [];
    // The dot from which a text is led aside stays free for its line.
    for (const ask of this.asked) if (ask.must && ask.from) this.taken.line(ask.from, ask.from, ask.own ?? ask);
    for (const ask of this.inTurn.flat()) {
      const { e } = ask, found = this.find(ask);
      if (e.hidden === Boolean(found)) e.hidden = !found;
      if (!found) continue;
      this.taken.box(found.box);
      if (found.line) {
        this.taken.line(...found.line, ask.own ?? ask);
        lines.push({ ends: found.line, color: ask.color });
      }
      if (e.told !== ask.text) e.textContent = e.told = ask.text; // to read it from the page takes its time
      if (!ask.button && e.className !== ask.kind) e.className = ask.kind;
      this.put(e, found.at);
      this.placed.push({ e, own: ask.own ?? ask });
    }
    for (const e of this.spans.slice(this.used)) e.hidden = true;
    return lines;
  }

  span(n) {
    if (!this.spans[n]) this.layer.append(this.spans[n] = document.createElement('span'));
    return this.spans[n];
  }

  // put has a place as a part of the picture, so that it stays where it belongs when a printer makes
  // all of it larger or smaller.
  put(e, [x, y]) {
    e.style.left = `${(100 * x / this.width).toFixed(3)}%`;
    e.style.top = `${(100 * y / this.height).toFixed(3)}%`;
  }

  // measure finds how large texts are that were not seen before, all at once: one layout of the page.
  measure() {
    const fresh = new Map();
    for (const { text, kind } of this.asked) {
      const key = `${kind} ${text}`;
      if (!this.sizes.has(key) && !fresh.has(key)) fresh.set(key, make('span', { className: kind }, text));
    }
    this.layer.append(...fresh.values());
    for (const [key, e] of fresh) this.sizes.set(key, [e.offsetWidth + 1, e.offsetHeight]); // a width is rounded
    for (const e of fresh.values()) e.remove();
    for (const ask of this.asked) ask.size = this.sizes.get(`${ask.kind} ${ask.text}`);
  }

  // find looks for the place of a text: {at, box, line: to where it is led aside}.
  find(ask) {
    const { from, size: [wide, high] } = ask, number = this.taken.number(ask.own ?? ask);
    if (from && !holds(this.taken.picture, from)) return null;
    const places = ask.at ?? ask.by;
    for (let i = 0; i < places.length; i++) {
      const [x, y] = places[i], found = ask.at ? this.at(from, x, y, wide, high, number) : this.led(from, from[0] + x, from[1] + y, wide, high, number);
      if (found && (ask.seen?.(i) ?? true)) return found;
    }
    if (!ask.must && !ask.aside || from && !this.taken.clear(from, from)) return null;
    const [x, y] = from ?? ask.at[0];
    for (let ring = 1; ring <= (ask.must ? ALL_RINGS : RINGS); ring++) {
      for (let k = 0; k < ROUND; k++) {
        const turn = 2 * Math.PI * (k + 0.5) / ROUND, far = ring * RING;
        const found = this.led(from, x + (far + wide / 2) * Math.cos(turn), y + far * Math.sin(turn), wide, high, number);
        if (found) return found;
      }
    }
    return null;
  }

  // at is a place of a text, if it is free; what may be led aside is moved into the picture.
  at(from, x, y, wide, high, number) {
    if (from) [x, y] = [intoView(x, wide, this.width), intoView(y, high, this.height)];
    const left = x - wide / 2 - SPARE, top = y - high / 2 - SPARE, right = x + wide / 2 + SPARE, bottom = y + high / 2 + SPARE;
    if (!this.taken.free(left, top, right, bottom, number)) return null;
    return { at: [x, y], box: [left, top, right, bottom] };
  }

  // led is a place aside, with its line where it is not near.
  led(from, x, y, wide, high, number) {
    const found = this.at(from, x, y, wide, high, number);
    if (!found || !from) return found;
    const [left, top, right, bottom] = found.box, to = [within(from[0], left, right), within(from[1], top, bottom)];
    if (Math.hypot(to[0] - from[0], to[1] - from[1]) < NEAR) return found;
    return this.taken.clear(from, to) ? { ...found, line: [from, to] } : null;
  }
}

// intoView moves a middle along one side of the picture to where all of it is seen.
const intoView = (x, long, all) => within(x, long / 2 + BORDER, Math.max(long / 2 + BORDER, all - long / 2 - BORDER));
