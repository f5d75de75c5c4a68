// Marks over the picture: lines drawn by the painter, letters as elements of the page.

// Sizes in dots of the page.
const TICK = 4, BESIDE = 16, SIZE_BESIDE = 22, ARROW = 9, SHORT = 34;

// A Marks draws over what is there; its letters are hidden from those who do not see the
// picture, who have the same in the lists.
class Marks {
  // options.resize is called with an axis, or also a piece, when a person wants another size
  // along it, or another place of the piece; may be missing.
  constructor(layer, over, options) {
    this.layer = layer;
    this.options = options;
    const ask = (axis) => button('', (e) => options.resize(axis, e.currentTarget), { className: 'dw-size', hidden: true });
    this.sizeButtons = options.resize ? SIZES.map((_, axis) => ask(axis)) : [];
    this.placeButton = button('', (e) => options.resize(this.placed.axis, e.currentTarget, this.placed.piece), { className: 'dw-size', hidden: true });
    over.append(...this.sizeButtons, ...(options.place ? [this.placeButton] : []));
    this.letters = new Letters(layer);
    [this.outlined, this.arrows] = [new Kept(), new Kept()];
  }

  // draw keeps letters off the elements given, too.
  draw(state, painter, theme, kept) {
    const { gl } = painter, axes = state.camera.axes(), feed = Boolean(state.at()?.feed), shown = state.shown().filter((p) => p.part.number);
    Object.assign(this, { state, painter, theme, axes });
    this.letters.begin(state.camera, kept);
    const alone = state.group.boxes.length === 1;
    const nearer = 1.5 / state.camera.scale / state.camera.reach;
    this.lines = new Map();
    if (feed) drawFeed(this);
    else drawStep(state, painter, theme, nearer);
    if (state.marks.grain) this.grain(shown, nearer);
    if (state.marks.faces && alone) this.faces(shown);
    if (state.marks.numbers && !feed) {
      if (alone) this.numbers(shown);
      else this.names();
    }
    this.overlaps();
    if (state.group.carcass && state.closed()) this.carcass();
    this.sizes();
    if (state.closed() && !state.stale) {
      if (state.joint) jointSizes(this);
      this.plays();
      this.elsewhere();
    }
    const chosen = state.chosenPiece();
    if (chosen && !feed && !state.hidden.has(chosen.key)) this.measures(chosen);
    this.place(chosen);
    for (const { ends, color } of this.letters.settle()) this.draws(ends.map((p) => state.camera.under(...p, axes)), color);
    for (const [color, places] of this.lines) painter.put(new Float32Array(places), gl.LINES, this.over(color));
  }

  dot(place) { return this.state.camera.project(place, this.axes); }

  // over is how lines of a color are drawn before everything.
  over(color, alpha = 1) { return { color: [...color, alpha], through: true, cut: NO_CUT }; }

  // draws gathers lines, two places each, by their color.
  draws(places, color) {
    const list = this.lines.get(color) ?? [];
    this.lines.set(color, list);
    for (const p of places) list.push(...p);
  }

  // mark draws lines before everything, and keeps letters off them, but those of its own.
  mark(places, color, own) {
    this.draws(places, color);
    this.keep(places, own);
  }

  keep(places, own) {
    for (let i = 0; i < places.length; i += 2) this.letters.taken.line(this.dot(places[i]), this.dot(places[i + 1]), own);
  }

  // grain is drawn on both faces; letters keep off what the eye may see.
  grain(shown, nearer) {
    const { state } = this, { list, numbers } = this.arrows.of(`${state.camera.scale} ${state.standing()}`, () => arrows(state, shown));
    this.painter.put(numbers, this.painter.gl.LINES, { color: [...this.theme.ink, 1], nearer });
    for (const { z, faces } of list) this.keep(faces[dot(z, this.axes.eye) > 0 ? 1 : 0]);
  }

  // seen is what numbers and letters of a piece need: their places in the picture, and whether nothing
  // hides one of them.
  seen(p, places) {
    const { state, axes } = this, f = state.frame(p), [n, far] = state.cut(), list = places.map((q) => outOf(f, q));
    const at = list.map((q) => this.dot(q));
    return { at, seen: (i) => dot(n, list[i]) <= far && seenAt(state, ...at[i], axes)?.key === p.key };
  }

  numbers(shown) {
    for (const p of shown) {
      const { length: l, width: w, thickness: t } = p.part;
      const places = [];
      for (const x of [0.5, 0.25, 0.75, 0.1, 0.9]) places.push([x * l, 0.6 * w, t], [x * l, 0.6 * w, 0], [x * l, w, t / 2]);
      const seen = this.seen(p, places), cut = cutSpot(this.state, p, this.axes);
      const found = cut ? { at: [cut, ...seen.at], seen: (i) => i === 0 || seen.seen(i - 1) } : seen;
      this.letters.ask({ text: String(p.number), kind: this.state.marked(p) ? 'dw-number dw-chosen' : 'dw-number', turn: TURNS.name, ...found });
    }
  }

  names() {
    const { state } = this;
    state.group.boxes.forEach((b, i) => {
      const { name, size: [w, h] } = state.data.boxes[b];
      const at = ACROSS.map((x) => this.dot(plus(state.standsAt(i), [x * w, 0, h / 2])));
      this.letters.ask({ text: name, kind: 'dw-name', turn: TURNS.name, at, from: at[0], aside: true, color: this.theme.ink });
    });
  }

  faces(shown) {
    for (const p of shown) {
      const { length: l, width: w, thickness: t } = p.part;
      const out = dot(this.state.frame(p).z, this.axes.eye);
      if (Math.abs(out) < 0.1) continue;
      const z = out > 0 ? t : 0;
      const places = [0.33, 0.7, 0.15, 0.85].flatMap((x) => [0.3, 0.75, 0.15].map((y) => [x * l, y * w, z]));
      this.letters.ask({ text: out > 0 ? 'inside' : 'outside', kind: 'dw-face', turn: TURNS.face, ...this.seen(p, places) });
    }
  }

  // red draws what two things have in common that may not.
  red(low, high, own) {
    this.painter.put(sidesOf(low, high), this.painter.gl.TRIANGLES, this.over(this.theme.bad, 0.8));
    this.mark(edgeList(low, high), this.theme.ink, own);
  }

  overlaps() {
    const { state } = this;
    if (!state.closed()) return;
    state.group.boxes.forEach((b, i) => {
      const { overlaps, plays } = state.data.boxes[b];
      for (const o of overlaps) {
        const [low, high] = seenBlock(state, o, i);
        if (!low) continue;
        this.red(low, high, o);
        const from = this.dot(times(plus(low, high), 0.5));
        if (!plays.some((p) => p.verdict && meet(p, o))) this.letters.ask({ text: 'overlap', kind: 'dw-bad', turn: TURNS.wrong, at: [from], own: o, from, must: true, color: this.theme.bad });
      }
    });
  }

  // plays draws what is wrong always, once a measure; all of them where they are asked for.
  plays() {
    const { state, state: { camera }, axes } = this;
    const named = this.named = new Set();
    state.group.boxes.forEach((b, i) => {
      const list = seatsOf(state, b).filter((play) => state.marks.plays && !state.group.carcass || play.verdict);
      list.sort((p, q) => Boolean(q.verdict) - Boolean(p.verdict)); // what is wrong takes its place first
      for (const play of list) {
        const [low, high] = seenBlock(state, play, i);
        if (!low || isApart(state, play)) continue;
        const color = this.theme[judgedOf(play)];
        // Where a wall has moved out, the gap is not this one.
        if (!state.marks.exaggerated) this.mark(edgeList(low, high), color, play);
        const middle = times(plus(low, high), 0.5), key = `${i} ${play.measure}`;
        if (state.section.axis >= 0 && play.verdict) this.painter.put(spot(middle, axes, camera), this.painter.gl.TRIANGLES, this.over(color));
        if (!state.marks.plays && named.has(key)) continue;
        named.add(key);
        // In a joint the number stands over its gap, which it would hide, and so in any cut.
        const lead = state.joint || state.section.axis >= 0, from = this.dot(middle);
        const places = lead ? { by: LED } : { at: ALONG.map((x) => this.dot(plus(low, times(minus(high, low), x)))), own: play };
        this.letters.ask({ text: this.clearance(play), kind: play.verdict ? `dw-play dw-${judgedOf(play)}` : 'dw-play', turn: play.verdict ? TURNS.wrong : TURNS.clearance,
          ...places, from, must: Boolean(play.verdict || state.joint?.name === play.name), aside: true, color });
      }
    });
  }

  // carcass draws the opening, slides and handles as lines, dotted where their size is a usual one;
  // what collides; and clearances where they are asked for.
  carcass() {
    const { state, state: { group: { carcass }, camera, data: { unit } }, theme, axes } = this;
    const nearer = 1.5 / camera.scale / camera.reach;
    for (const [numbers, alpha, hatch] of this.outlined.of(state.standing(), () => outlined(state.outlines()))) this.painter.put(numbers, this.painter.gl.LINES, { color: [...theme.ink, alpha], nearer, hatch, slope: 0.37 });
    for (const c of carcass.collisions) {
      this.red(c.low, c.high, c);
      const from = this.dot(times(plus(c.low, c.high), 0.5));
      this.letters.ask({ text: `✕ ${lengthText(c.by, unit)} ${unit}: ${collisionName(c)}`, kind: 'dw-bad dw-collision', turn: TURNS.wrong, by: OVER, from, must: true, color: theme.bad });
    }
    for (const c of carcass.clearances) {
      const named = c.name === state.gap;
      if (!named && !state.marks.plays || state.pulled(c.box) > 0) continue; // they are of what is closed
      this.mark([c.low, c.high, ...ticked(c.low, axes, camera), ...ticked(c.high, axes, camera)], theme.mark, c);
      const ends = [c.low, c.high].map((q) => this.dot(q)), from = ends[0].map((v, k) => (v + ends[1][k]) / 2), text = lengthText(c.gap, unit);
      const short = Math.hypot(ends[0][0] - ends[1][0], ends[0][1] - ends[1][1]) < SHORT;
      this.letters.ask({ text: named ? `${c.name}: ${text} ${unit}` : text, kind: 'dw-play', turn: named ? TURNS.asked : TURNS.clearance,
        by: short ? BESIDE_IT : ON_IT, own: c, from, must: named, color: theme.mark });
    }
  }

  // elsewhere tells of what is wrong where a cut does not meet it.
  elsewhere() {
    const { state } = this;
    if (state.section.axis < 0 || state.joint) return;
    const all = state.group.boxes.flatMap((b, i) => seatsOf(state, b).map((play) => [play, `${i} ${play.measure}`]));
    const missed = all.find(([play, key]) => play.verdict && !this.named.has(key));
    if (missed) this.letters.ask({ text: `${this.clearance(missed[0])}; not in this cut`, kind: `dw-play dw-${judgedOf(missed[0])}`, turn: TURNS.wrong, at: [[state.camera.width / 2, 20]], must: true });
  }

  // clearance is a clearance in letters, with the word where it is not right.
  clearance(play) {
    const { unit, ease } = this.state.data;
    const eased = !this.state.marks.exaggerated ? '' : play.play > 0 ? ` × ${ease}` : ', true size', text = lengthText(play.play, unit);
    return play.verdict ? `${play.sign} ${text} ${unit}${eased}: ${play.verdict}` : text + eased;
  }

  // sizes draws width, depth and height of the box where nothing stands before them. They are
  // buttons where the page takes another size.
  sizes() {
    const { state, state: { camera, data: { unit } }, axes } = this;
    const [low, high] = state.sized() ? state.sizeBounds() : [];
    SIZES.forEach((name, axis) => {
      const [p0, p1] = low ? sizeEdge(low, high, axis, axes, camera) : [];
      const found = p0 && beside(p0, p1, times(plus(low, high), 0.5), axes, camera);
      const button = this.sizeButtons[axis];
      if (!found) {
        if (button) button.hidden = true;
        return;
      }
      this.mark(found.lines, this.theme.ink, name);
      const text = tapeText(high[axis] - low[axis], unit);
      button?.setAttribute('aria-label', `${name} of the box, ${text} ${unit}: change it`);
      this.letters.ask({ text, kind: button ? 'dw-size' : 'dw-measure', turn: TURNS.size, at: found.at, own: name, from: found.at[0], must: true, button, color: this.theme.ink });
    });
  }

  // place draws how far a chosen piece stands from the wall, where that can be changed.
  place(chosen) {
    const { state, axes } = this;
    this.placed = chosen && state.closed() && this.options.place?.(chosen.piece.name);
    this.placeButton.hidden = true;
    if (!this.placed) return;
    const { axis, mm, name } = this.placed, [low, high] = state.bounds(0, [chosen]);
    const by = state.shifted ? state.shifted.by[axis] : 0;
    const near = times(plus(low, high), 0.5);
    near[2] = high[2];
    near[axis] = low[axis];
    const wall = [...near];
    wall[axis] -= mm + by;
    this.mark([wall, near, ...[wall, near].flatMap((q) => ticked(q, axes, state.camera))], this.theme.mark, 'place');
    const text = lengthText(mm + by, state.data.unit), at = [0.5, 0.3, 0.7].map((k) => this.dot(plus(wall, times(minus(near, wall), k))));
    this.placeButton.setAttribute('aria-label', `${name}, ${text} ${state.data.unit}: change it`);
    this.letters.ask({ text, kind: 'dw-size', turn: TURNS.size, at, own: 'place', from: at[0], must: true, button: this.placeButton, color: this.theme.mark });
  }

  // measures draws the dimensions of a piece, and of its chosen pocket.
  measures(p) {
    const { state, state: { camera }, axes } = this;
    const f = state.frame(p), { length: l, width: w, thickness: t } = p.part;
    const facing = dot(f.z, axes.eye) >= 0;
    const z = facing ? t : 0;
    const text = (mm) => lengthText(mm, state.data.unit);
    // Letters stand in the middle, or after the end where the line is too short for them.
    const measure = (a, b, aside, value, row = 1) => {
      const off = times(aside, row * BESIDE / camera.scale);
      const [p0, p1] = [outOf(f, a), outOf(f, b)].map((q) => plus(q, turnedOut(f, off)));
      const seen = [p0, p1].map((q) => this.dot(q));
      if (Math.hypot(seen[0][0] - seen[1][0], seen[0][1] - seen[1][1]) < 3) return;
      const lines = [p0, p1], own = [...a, ...b].join();
      // Lines from the piece to the ends, and a slanting tick at each.
      for (const [q, r] of [[a, p0], [b, p1]]) {
        lines.push(outOf(f, q), plus(r, times(turnedOut(f, off), 0.3)));
        const slant = times(plus(axes.right, axes.up), TICK / camera.scale);
        lines.push(minus(r, slant), plus(r, slant));
      }
      this.mark(lines, this.theme.ink, own);
      const [dx, dy] = [seen[1][0] - seen[0][0], seen[1][1] - seen[0][1]], long = Math.hypot(dx, dy), past = (4 * value.length + 8) / long;
      const at = (long < SHORT ? [1 + past, -past] : ALONG).map((k) => [seen[0][0] + k * dx, seen[0][1] + k * dy]);
      this.letters.ask({ text: value, kind: 'dw-measure', turn: TURNS.size, at, own, from: seen[0].map((v, k) => (v + seen[1][k]) / 2), must: true, color: this.theme.ink });
    };
    measure([0, 0, z], [l, 0, z], [0, -1, 0], tapeText(l, state.data.unit));
    measure([0, 0, z], [0, w, z], [-1, 0, 0], tapeText(w, state.data.unit));
    measure([l, w, t - z], [l, w, z], [1, 0, 0], text(t));
    const pocket = p.part.pockets[state.pocket];
    if (!pocket) return;
    const [x, y] = pocket.at, [dx, dy] = pocket.size, inside = pocket.face === 'inside';
    const [from, to] = inside ? [t - pocket.depth, t] : [0, pocket.depth];
    const face = inside ? t : 0;
    this.mark(edgeList([x, y, from], [x + dx, y + dy, to]).map((q) => outOf(f, q)), this.theme.mark);
    if (x > 0) measure([x, y + dy, face], [0, y + dy, face], [0, 1, 0], text(x), 2.4);
    if (y > 0) measure([x + dx, y, face], [x + dx, 0, face], [1, 0, 0], text(y), 2.4);
    measure([x, y + dy, face], [x + dx, y + dy, face], [0, 1, 0], text(dx));
    measure([x + dx, y, face], [x + dx, y + dy, face], [1, 0, 0], text(dy));
  }
}

// collisionName tells what collides.
const collisionName = (c) => `${c.name}${c.pulled ? ', pulled out' : ''}`;

// OVER are how far from its place a collision is told, in dots: not over it.
const OVER = [[0, -30], [0, 30], [0, -60], [0, 60]];

// LED are how far over a joint its clearance is told.
const LED = [[0, -40], [0, 40], [0, -80]];

// ON_IT and BESIDE_IT are how far from the middle of a line its number may stand, in dots: beside it first
// where it is short. ALONG, as parts of a line or a block, and ACROSS, of the width of a box, are where
// letters may stand on it.
const ABOUT = [[26, 0], [-26, 0], [0, -14], [0, 14]], ON_IT = [[0, 0], ...ABOUT], BESIDE_IT = [...ABOUT, [0, 0]];
const ALONG = [0.5, 0.35, 0.65, 0.2, 0.8];
const ACROSS = [0.5, 0.3, 0.7, 0.15, 0.85];

// spot is a small square over a place, of the same size at any scale: what is missing in a joint is
// too little to be seen in a whole box.
function spot(middle, axes, camera) {
  const [right, up] = [axes.right, axes.up].map((v) => times(v, 4 / camera.scale));
  const corner = (x, y) => plus(middle, plus(times(right, x), times(up, y)));
  return new Float32Array([[-1, -1], [1, -1], [1, 1], [-1, -1], [1, 1], [-1, 1]].flatMap(([x, y]) => corner(x, y)));
}

// judgedOf is the color of a clearance, and the class of its letters.
const judgedOf = (play) => (play.doubt ? 'doubt' : play.verdict ? 'bad' : 'mark');

const SIZES = ['width', 'depth', 'height'];

// sizeEdge is the edge of a block, of the four along an axis, at which its dimension is read:
// on the outline that the eye sees, below, and of upright ones to the right.
function sizeEdge(low, high, axis, axes, camera) {
  const [i, j] = [(axis + 1) % 3, (axis + 2) % 3];
  let best = [], value = -Infinity;
  for (const [u, v] of [[0, 0], [0, 1], [1, 0], [1, 1]]) {
    const facing = [[i, u], [j, v]].filter(([k, far]) => (far ? 1 : -1) * axes.eye[k] > 1e-6).length;
    if (facing !== 1) continue;
    const ends = [low, high].map((end) => {
      const q = [...end];
      q[i] = (u ? high : low)[i];
      q[j] = (v ? high : low)[j];
      return q;
    });
    const [a, b] = ends.map((q) => camera.project(q, axes));
    if (Math.hypot(a[0] - b[0], a[1] - b[1]) < SHORT) continue;
    const middle = [a[0] + b[0], a[1] + b[1]];
    const steep = Math.abs(a[1] - b[1]) > 3 * Math.abs(a[0] - b[0]);
    const good = steep ? middle[0] : middle[1];
    if (good > value) [best, value] = [ends, good];
  }
  return best;
}

// beside is a dimension along an edge, outside of the block about a middle: lines, and the dot
// where its number stands.
function beside(p0, p1, middle, axes, camera) {
  const seen = [p0, p1].map((q) => camera.project(q, axes)), center = camera.project(middle, axes);
  const along = [seen[1][0] - seen[0][0], seen[1][1] - seen[0][1]], long = Math.hypot(...along);
  let out = [-along[1] / long, along[0] / long];
  const mid = [(seen[0][0] + seen[1][0]) / 2, (seen[0][1] + seen[1][1]) / 2];
  if (out[0] * (mid[0] - center[0]) + out[1] * (mid[1] - center[1]) < 0) out = [-out[0], -out[1]];
  const move = (q, dx, dy) => plus(q, plus(times(axes.right, dx / camera.scale), times(axes.up, -dy / camera.scale)));
  const lines = [];
  const ends = [p0, p1].map((q) => move(q, out[0] * SIZE_BESIDE, out[1] * SIZE_BESIDE));
  lines.push(...ends);
  [p0, p1].forEach((q, k) => {
    lines.push(move(q, 4 * out[0], 4 * out[1]), move(ends[k], 4 * out[0], 4 * out[1]));
    lines.push(move(ends[k], -TICK, TICK), move(ends[k], TICK, -TICK));
  });
  return { lines, at: ALONG.map((k) => seen[0].map((v, i) => v + k * along[i] + out[i] * SIZE_BESIDE)) };
}

// ticked is a slanting tick at a place.
function ticked(q, axes, camera) {
  const slant = times(plus(axes.right, axes.up), TICK / camera.scale);
  return [minus(q, slant), plus(q, slant)];
}

// turnedOut takes a direction out of a frame.
const turnedOut = (f, v) => minus(outOf(f, v), f.o);

// arrows are those of all pieces that have a grain.
function arrows(state, shown) {
  const list = shown.filter((p) => p.part.grained).map((p) => ({ z: state.frame(p).z, faces: [0, p.part.thickness].map((z) => arrow(state, p, z)) }));
  return { list, numbers: new Float32Array(list.flatMap(({ faces }) => faces.flat(2))) };
}

// outlined are outlines by how they are drawn: numbers, how dark, how they are dotted.
function outlined(outlines) {
  return [[false, false], [false, true], [true, false], [true, true]].map(([stays, usual]) => {
    const list = outlines.filter((o) => o.box < 0 === stays && Boolean(o.usual) === usual);
    return [new Float32Array(list.flatMap((o) => edgeList(o.low, o.high).flat())), stays ? 0.5 : 1, usual ? 2 : 0];
  });
}

// arrow is along the grain of a piece, at a height over its outside face.
function arrow(state, p, z) {
  const f = state.frame(p), { length: l, width: w } = p.part;
  const tip = Math.min(ARROW / state.camera.scale, l / 8, w / 4), y = 0.45 * w, a = 0.36 * l, b = 0.64 * l;
  return [[a, y], [b, y], [a, y], [a + tip, y + tip / 2], [a, y], [a + tip, y - tip / 2], [b, y], [b - tip, y + tip / 2], [b, y], [b - tip, y - tip / 2]].map((q) => outOf(f, [...q, z]));
}

// seenBlock is a block of a box in its place, or what is seen of it in a section: nothing of one
// that the section does not meet.
function seenBlock(state, block, box) {
  const low = plus(block.low, state.standsAt(box)), high = plus(block.high, state.standsAt(box)), { axis, at } = state.section;
  if (axis >= 0) {
    if (low[axis] > at || high[axis] < at) return [];
    low[axis] = high[axis] = at;
  }
  return [low, high];
}

// meet reports whether two blocks have something in common: an overlap is told as what does not go in.
const meet = (p, q) => [0, 1, 2].every((k) => p.low[k] <= q.high[k] && q.low[k] <= p.high[k]);

// edgeList are the twelve edges of a block, two places each.
function edgeList(low, high) {
  const at = (i) => [0, 1, 2].map((k) => (i >> k & 1 ? high[k] : low[k]));
  const list = [];
  for (let i = 0; i < 8; i++) for (let k = 0; k < 3; k++) if (!(i >> k & 1)) list.push(at(i), at(i | 1 << k));
  return list;
}
const edgesOf = (low, high) => new Float32Array(edgeList(low, high).flat());

// sidesOf are the faces of a block as triangles.
function sidesOf(low, high) {
  const at = (i) => [0, 1, 2].map((k) => (i >> k & 1 ? high[k] : low[k]));
  const list = [];
  for (let k = 0; k < 3; k++) {
    const u = 1 << (k + 1) % 3, v = 1 << (k + 2) % 3;
    for (const o of [0, 1 << k]) list.push(at(o), at(o | u), at(o | u | v), at(o), at(o | u | v), at(o | v));
  }
  return new Float32Array(list.flat());
}
