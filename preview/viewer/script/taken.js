// What letters and marks take of the picture, in dots of the page: cells, so that thousands of marks and
// places are dealt with in a frame. A cell has the number of the mark whose lines go through it; MANY
// where those of several do, and BOX under letters.

const CELL = 2, MANY = 0x7fff, BOX = 0x8000;

class Taken {
  constructor() { this.cells = new Uint16Array(0); }

  begin(width, height) {
    this.picture = [0, 0, width, height];
    this.columns = Math.ceil(width / CELL) + 1;
    const n = this.columns * (Math.ceil(height / CELL) + 1);
    if (this.cells.length === n) this.cells.fill(0);
    else this.cells = new Uint16Array(n);
    this.owners = new Map();
    this.lines = [];
  }

  // line takes a line of an owner, whose own letters may stand on it.
  line(p, q, own) {
    const seen = holds(this.picture, p) && holds(this.picture, q) ? [p, q] : clipped(p, q, this.picture);
    if (!seen) return;
    const [a, b] = seen, { cells, columns } = this;
    this.lines.push({ a, b, own });
    let number = this.owners.get(own);
    if (!number) this.owners.set(own, number = Math.min(MANY, this.owners.size + 1));
    const { n, dx, dy } = steps(a, b);
    for (let i = 0; i <= n; i++) {
      const at = Math.floor((a[1] + i * dy) / CELL) * columns + Math.floor((a[0] + i * dx) / CELL);
      if (cells[at] === 0) cells[at] = number;
      else if (cells[at] < BOX && cells[at] !== number) cells[at] = MANY;
    }
  }

  // box takes a rectangle of the picture: left, top, right, bottom.
  box([left, top, right, bottom]) {
    for (let j = Math.floor(top / CELL); j <= bottom / CELL; j++) this.cells.fill(BOX, j * this.columns + Math.floor(left / CELL), j * this.columns + Math.floor(right / CELL) + 1);
  }

  // number is that of an owner; 0 has no lines.
  number(own) { return this.owners.get(own) ?? 0; }

  // free reports whether a rectangle is in the picture, on no other and on no line but those of a number.
  free(left, top, right, bottom, number) {
    if (left < 0 || top < 0 || right > this.picture[2] || bottom > this.picture[3]) return false;
    const { cells, columns } = this;
    for (let j = Math.floor(top / CELL); j <= bottom / CELL; j++) {
      for (let i = j * columns + Math.floor(left / CELL), end = j * columns + right / CELL; i <= end; i++) {
        if (cells[i] !== 0 && (cells[i] !== number || number === MANY)) return false;
      }
    }
    return true;
  }

  // clear reports whether a line runs through no rectangle.
  clear(p, q) {
    const { n, dx, dy } = steps(p, q);
    for (let i = 0; i <= n; i++) {
      if (this.cells[Math.floor((p[1] + i * dy) / CELL) * this.columns + Math.floor((p[0] + i * dx) / CELL)] >= BOX) return false;
    }
    return true;
  }
}

// steps go along a line, dot by dot.
function steps(p, q) {
  const dx = q[0] - p[0], dy = q[1] - p[1], n = Math.ceil(Math.max(Math.abs(dx), Math.abs(dy))) || 1;
  return { n, dx: dx / n, dy: dy / n };
}

const holds = ([left, top, right, bottom], [x, y]) => x >= left && x <= right && y >= top && y <= bottom;

// clipped is the part of a line that lies in a rectangle, or nothing.
function clipped([x, y], [u, v], [left, top, right, bottom]) {
  const dx = u - x, dy = v - y;
  let from = 0, to = 1;
  for (const [by, low, high] of [[dx, left - x, right - x], [dy, top - y, bottom - y]]) {
    if (by === 0) {
      if (low > 0 || high < 0) return null;
    } else {
      from = Math.max(from, Math.min(low / by, high / by));
      to = Math.min(to, Math.max(low / by, high / by));
    }
  }
  return from > to ? null : [[x + from * dx, y + from * dy], [x + to * dx, y + to * dy]];
}
