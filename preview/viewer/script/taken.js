// What letters and marks take of the picture: rectangles [left, top, right, bottom] and lines, in dots
// of the page. They are looked up by the squares of a grid, for a bank has thousands of them.

const SQUARE = 64;

class Taken {
  constructor(width, height) {
    this.picture = [0, 0, width, height];
    this.squares = new Map();
    this.lines = [];
  }

  // line takes a line; letters of its own, which name the same owner, may stand on it.
  line(p, q, own) {
    const seen = clipped(p, q, this.picture);
    if (!seen) return;
    const [a, b] = seen, line = { a, b, own }, parts = Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / SQUARE) || 1;
    this.lines.push(line);
    const at = (i) => [a[0] + (b[0] - a[0]) * i / parts, a[1] + (b[1] - a[1]) * i / parts];
    for (let i = 0, from = a; i < parts; i++) {
      const to = at(i + 1);
      this.add([Math.min(from[0], to[0]), Math.min(from[1], to[1]), Math.max(from[0], to[0]), Math.max(from[1], to[1])], line);
      from = to;
    }
  }

  box(box) { this.add(box, { box }); }

  add([left, top, right, bottom], what) {
    for (let i = Math.floor(left / SQUARE); i <= right / SQUARE; i++) {
      for (let j = Math.floor(top / SQUARE); j <= bottom / SQUARE; j++) {
        const list = this.squares.get(i * SQUARE * SQUARE + j);
        if (list) list.push(what);
        else this.squares.set(i * SQUARE * SQUARE + j, [what]);
      }
    }
  }

  // some reports whether something that has to do with a rectangle is as asked.
  some([left, top, right, bottom], asked) {
    for (let i = Math.floor(left / SQUARE); i <= right / SQUARE; i++) {
      for (let j = Math.floor(top / SQUARE); j <= bottom / SQUARE; j++) {
        if (this.squares.get(i * SQUARE * SQUARE + j)?.some(asked)) return true;
      }
    }
    return false;
  }

  // free reports whether a rectangle is in the picture, on no other and on no line but its own.
  free(box, own) {
    const [left, top, right, bottom] = this.picture;
    if (box[0] < left || box[1] < top || box[2] > right || box[3] > bottom) return false;
    return !this.some(box, (t) => (t.box ? meeting(t.box, box) : t.own !== own && clipped(t.a, t.b, box)));
  }

  // clear reports whether a line runs through no rectangle.
  clear(p, q) {
    const about = [Math.min(p[0], q[0]), Math.min(p[1], q[1]), Math.max(p[0], q[0]), Math.max(p[1], q[1])];
    return !this.some(about, (t) => t.box && clipped(p, q, t.box));
  }
}

const meeting = (p, q) => p[0] < q[2] && q[0] < p[2] && p[1] < q[3] && q[1] < p[3];

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
