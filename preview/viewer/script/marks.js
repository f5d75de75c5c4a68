// Marks over the picture: lines drawn by the painter, letters as elements of the page.

// Sizes in dots of the page.
const TICK = 4, BESIDE = 16, SIZE_BESIDE = 22, ARROW = 9, SHORT = 34, LEADER = 40, LETTER = 7.5, EDGE = 4, LINE = 15, BUTTON = 26;

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
    this.letters = [];
    this.used = 0;
  }

  // letter puts a text at a dot. Its place is a part of the picture, so that it stays where it
  // belongs when a printer makes all of it larger or smaller.
  letter(text, kind, [x, y]) {
    let e = this.letters[this.used];
    if (!e) {
      e = document.createElement('span');
      this.layer.append(e);
      this.letters.push(e);
    }
    this.used++;
    if (e.textContent !== text) e.textContent = text;
    if (e.className !== kind) e.className = kind;
    this.put(e, x, y);
  }

  put(e, x, y) {
    e.style.left = `${(100 * x / this.wide).toFixed(3)}%`;
    e.style.top = `${(100 * y / this.high).toFixed(3)}%`;
    e.hidden = false;
  }

  draw(state, painter, theme) {
    this.used = 0;
    this.taken = []; // middles and widths of letters that others keep clear of
    [this.wide, this.high] = [state.camera.width, state.camera.height];
    const { gl } = painter;
    const axes = state.camera.axes();
    const feed = Boolean(state.at()?.feed), shown = state.shown().filter((p) => p.part.number);
    const alone = state.group.boxes.length === 1;
    const nearer = 1.5 / state.camera.scale / state.camera.reach;
    if (feed) drawFeed(this, state, painter, theme, axes);
    else drawStep(state, painter, theme, nearer);
    if (state.marks.grain) painter.put(grains(state, shown), gl.LINES, { color: [...theme.ink, 1], nearer });
    if (state.marks.faces && alone) this.faces(state, shown, axes);
    if (state.marks.numbers && !feed) {
      if (alone) this.numbers(state, shown, axes);
      else this.names(state, axes);
    }
    this.overlaps(state, painter, theme, axes);
    if (state.group.carcass && state.closed()) this.carcass(state, painter, theme, axes);
    this.sizes(state, painter, theme, axes);
    if (state.closed() && !state.stale) {
      if (state.joint) jointSizes(this, state, painter, theme, axes);
      this.plays(state, painter, theme, axes);
      this.elsewhere(state);
    }
    const chosen = state.chosenPiece();
    if (chosen && !feed && !state.hidden.has(chosen.key)) this.measures(state, chosen, painter, theme, axes);
    this.place(state, chosen, painter, theme, axes);
    for (const e of this.letters.slice(this.used)) e.hidden = true;
  }

  // seen finds the first of some places of a piece that nothing hides.
  seen(state, p, places, axes) {
    const f = state.frame(p), [n, far] = state.cut();
    for (const q of places) {
      const there = outOf(f, q);
      if (dot(n, there) > far) continue; // cut away
      const at = state.camera.project(there, axes);
      if (seenAt(state, ...at)?.key === p.key) return at;
    }
    return null;
  }

  numbers(state, shown, axes) {
    for (const p of shown) {
      const { length: l, width: w, thickness: t } = p.part;
      const places = [];
      for (const x of [0.5, 0.25, 0.75, 0.1, 0.9]) places.push([x * l, 0.6 * w, t], [x * l, 0.6 * w, 0], [x * l, w, t / 2]);
      const at = cutSpot(state, p, axes) ?? this.seen(state, p, places, axes);
      if (at) this.letter(String(p.number), state.marked(p) ? 'dw-number dw-chosen' : 'dw-number', at);
    }
  }

  names(state, axes) {
    state.group.boxes.forEach((b, i) => {
      const { name, size: [w, h] } = state.data.boxes[b];
      const at = state.camera.project(plus(state.standsAt(i), [w / 2, 0, h / 2]), axes);
      this.taken.push([...at, name.length * LETTER]);
      this.letter(name, 'dw-name', at);
    });
  }

  faces(state, shown, axes) {
    for (const p of shown) {
      const { length: l, width: w, thickness: t } = p.part;
      const out = dot(state.frame(p).z, axes.eye);
      if (Math.abs(out) < 0.1) continue;
      const z = out > 0 ? t : 0;
      const at = this.seen(state, p, [0.33, 0.7, 0.15, 0.85].map((x) => [x * l, 0.3 * w, z]), axes);
      if (at) this.letter(out > 0 ? 'inside' : 'outside', 'dw-face', at);
    }
  }

  overlaps(state, painter, theme, axes) {
    if (!state.closed()) return;
    state.group.boxes.forEach((b, i) => {
      const { overlaps, plays } = state.data.boxes[b];
      for (const o of overlaps) {
        const [low, high] = seenBlock(state, o, i);
        if (!low) continue;
        painter.put(sidesOf(low, high), painter.gl.TRIANGLES, { color: [...theme.bad, 0.8], through: true, cut: NO_CUT });
        painter.put(edgesOf(low, high), painter.gl.LINES, { color: [...theme.ink, 1], through: true, cut: NO_CUT });
        if (!plays.some((p) => p.verdict && meet(p, o))) this.letter('overlap', 'dw-bad', state.camera.project(times(plus(low, high), 0.5), axes));
      }
    });
  }

  // plays draws what is wrong always, once a measure; all of them where they are asked for.
  plays(state, painter, theme, axes) {
    const named = this.named = new Set();
    state.group.boxes.forEach((b, i) => {
      const list = seatsOf(state, b).filter((play) => state.marks.plays && !state.group.carcass || play.verdict);
      list.sort((p, q) => Boolean(q.verdict) - Boolean(p.verdict)); // what is wrong takes its place first
      for (const play of list) {
        const [low, high] = seenBlock(state, play, i);
        if (!low || isApart(state, play)) continue;
        const looks = { color: [...theme[judgedOf(play)], 1], through: true, cut: NO_CUT };
        // Where a wall has moved out, the gap is not this one.
        if (!state.marks.exaggerated) painter.put(edgesOf(low, high), painter.gl.LINES, looks);
        const middle = times(plus(low, high), 0.5), text = this.clearance(play, state);
        // In a joint the number stands over its gap, which it would hide, and so in any cut.
        const lead = state.joint || state.section.axis >= 0 ? LEADER : 0, at = state.camera.project(middle, axes), wide = text.length * LETTER;
        at[1] -= lead;
        if (at[0] > 0 && at[0] < this.wide) at[0] = within(at[0], wide / 2 + EDGE, this.wide - wide / 2 - EDGE);
        if (!state.marks.plays && named.has(`${i} ${play.measure}`)) continue;
        if (!this.free(at, wide, play.verdict ? BESIDES : [0])) continue;
        named.add(`${i} ${play.measure}`);
        this.taken.push([...at, wide]);
        if (lead) painter.put(new Float32Array([...middle, ...plus(middle, times(axes.up, lead / state.camera.scale))]), painter.gl.LINES, looks);
        if (state.section.axis >= 0 && play.verdict) painter.put(spot(middle, axes, state.camera), painter.gl.TRIANGLES, looks);
        this.letter(text, play.verdict ? `dw-play dw-${judgedOf(play)}` : 'dw-play', at);
      }
    });
  }

  // carcass draws the opening, slides and handles as lines, dotted where their size is a usual one;
  // what collides; and clearances where they are asked for.
  carcass(state, painter, theme, axes) {
    const { carcass } = state.group, { LINES, TRIANGLES } = painter.gl, { unit } = state.data;
    const nearer = 1.5 / state.camera.scale / state.camera.reach;
    for (const o of state.outlines()) painter.put(edgesOf(o.low, o.high), LINES, { color: [...theme.ink, o.box < 0 ? 0.5 : 1], nearer, hatch: o.usual ? 2 : 0, slope: 0.37 });
    for (const c of carcass.collisions) {
      painter.put(sidesOf(c.low, c.high), TRIANGLES, { color: [...theme.bad, 0.8], through: true, cut: NO_CUT });
      painter.put(edgesOf(c.low, c.high), LINES, { color: [...theme.ink, 1], through: true, cut: NO_CUT });
      const text = `✕ ${lengthText(c.by, unit)} ${unit}: ${collisionName(c)}`, at = state.camera.project(times(plus(c.low, c.high), 0.5), axes), wide = Math.min(text.length * LETTER, COLLISION);
      at[0] = within(at[0], wide / 2 + EDGE, Math.max(wide / 2 + EDGE, this.wide - wide / 2 - EDGE));
      if (this.free(at, wide, OVER)) {
        this.taken.push([...at, wide, 2 * LINE]);
        this.letter(text, 'dw-bad dw-collision', at);
      }
    }
    const lines = [];
    for (const c of carcass.clearances) {
      const named = c.name === state.gap;
      if (!named && !state.marks.plays || state.pulled(c.box) > 0) continue; // they are of what is closed
      lines.push(...c.low, ...c.high, ...ticked(c.low, axes, state.camera), ...ticked(c.high, axes, state.camera));
      const text = named ? `${c.name}: ${lengthText(c.gap, unit)} ${unit}` : lengthText(c.gap, unit);
      const at = state.camera.project(times(plus(c.low, c.high), 0.5), axes), wide = text.length * LETTER;
      if (named) at[0] = within(at[0], wide / 2 + EDGE, Math.max(wide / 2 + EDGE, this.wide - wide / 2 - EDGE));
      if (!this.free(at, wide, named ? BESIDES : [0])) continue;
      this.taken.push([...at, wide]);
      this.letter(text, 'dw-play', at);
    }
    painter.put(new Float32Array(lines), LINES, { color: [...theme.mark, 1], through: true, cut: NO_CUT });
  }

  // free moves a place for letters up or down to where none stand; it reports whether there is one.
  free(at, wide, by) {
    const meets = (y) => this.taken.some(([x, z, w, h = LINE]) => Math.abs(x - at[0]) < (w + wide) / 2 + 4 && Math.abs(z - y) < (h + LINE) / 2);
    const found = by.map((dy) => at[1] + dy).find((y) => !meets(y));
    if (found === undefined) return false;
    at[1] = found;
    return true;
  }

  // elsewhere tells of what is wrong where a cut does not meet it.
  elsewhere(state) {
    if (state.section.axis < 0 || state.joint) return;
    const all = state.group.boxes.flatMap((b, i) => seatsOf(state, b).map((play) => [play, `${i} ${play.measure}`]));
    const missed = all.find(([play, key]) => play.verdict && !this.named.has(key));
    if (missed) this.letter(`${this.clearance(missed[0], state)}; not in this cut`, `dw-play dw-${judgedOf(missed[0])}`, [this.wide / 2, LEADER / 2]);
  }

  // clearance is a clearance in letters, with the word where it is not right.
  clearance(play, state) {
    const { unit, ease } = state.data;
    const eased = !state.marks.exaggerated ? '' : play.play > 0 ? ` × ${ease}` : ', true size', text = lengthText(play.play, unit);
    return play.verdict ? `${play.sign} ${text} ${unit}${eased}: ${play.verdict}` : text + eased;
  }

  // sizes draws width, depth and height of the box where nothing stands before them. They are
  // buttons where the page takes another size.
  sizes(state, painter, theme, axes) {
    const lines = [];
    const [low, high] = state.sized() ? state.sizeBounds() : [];
    [0, 1, 2].forEach((axis) => {
      const [p0, p1] = low ? sizeEdge(low, high, axis, axes, state.camera) : [];
      const found = p0 && beside(p0, p1, times(plus(low, high), 0.5), axes, state.camera);
      const e = this.sizeButtons[axis];
      if (!found) {
        if (e) e.hidden = true;
        return;
      }
      lines.push(...found.lines);
      const text = tapeText(high[axis] - low[axis], state.data.unit);
      this.taken.push([...found.at, text.length * LETTER + 8, BUTTON]);
      if (!e) {
        this.letter(text, 'dw-measure', found.at);
        return;
      }
      setText(e, text);
      e.setAttribute('aria-label', `${SIZES[axis]} of the box, ${text} ${state.data.unit}: change it`);
      this.put(e, ...found.at);
    });
    painter.put(new Float32Array(lines.flat()), painter.gl.LINES, { color: [...theme.ink, 1], through: true, cut: NO_CUT });
  }

  // place draws how far a chosen piece stands from the wall, where that can be changed.
  place(state, chosen, painter, theme, axes) {
    this.placed = chosen && state.closed() && this.options.place?.(chosen.piece.name);
    this.placeButton.hidden = true;
    if (!this.placed) return;
    const { axis, mm } = this.placed, [low, high] = state.bounds(0, [chosen]);
    const by = state.shifted ? state.shifted.by[axis] : 0;
    const near = times(plus(low, high), 0.5);
    near[2] = high[2];
    near[axis] = low[axis];
    const wall = [...near];
    wall[axis] -= mm + by;
    painter.put(new Float32Array([...wall, ...near, ...[wall, near].flatMap((q) => ticked(q, axes, state.camera))]), painter.gl.LINES, { color: [...theme.mark, 1], through: true, cut: NO_CUT });
    const text = lengthText(mm + by, state.data.unit);
    setText(this.placeButton, text);
    this.placeButton.setAttribute('aria-label', `${this.placed.name}, ${text} ${state.data.unit}: change it`);
    this.put(this.placeButton, ...state.camera.project(times(plus(wall, near), 0.5), axes));
  }

  // measures draws the dimensions of a piece, and of its chosen pocket.
  measures(state, p, painter, theme, axes) {
    const f = state.frame(p), { length: l, width: w, thickness: t } = p.part;
    const facing = dot(f.z, axes.eye) >= 0;
    const z = facing ? t : 0;
    const text = (mm) => lengthText(mm, state.data.unit);
    const lines = [];
    // Letters stand in the middle, or after the end where the line is too short for them.
    const measure = (a, b, aside, value, row = 1) => {
      const off = times(aside, row * BESIDE / state.camera.scale);
      const [p0, p1] = [outOf(f, a), outOf(f, b)].map((q) => plus(q, turnedOut(f, off)));
      const seen = [p0, p1].map((q) => state.camera.project(q, axes));
      if (Math.hypot(seen[0][0] - seen[1][0], seen[0][1] - seen[1][1]) < 3) return;
      lines.push(p0, p1);
      // Lines from the piece to the ends, and a slanting tick at each.
      for (const [q, r] of [[a, p0], [b, p1]]) {
        lines.push(outOf(f, q), plus(r, times(turnedOut(f, off), 0.3)));
        const slant = times(plus(axes.right, axes.up), TICK / state.camera.scale);
        lines.push(minus(r, slant), plus(r, slant));
      }
      const [dx, dy] = [seen[1][0] - seen[0][0], seen[1][1] - seen[0][1]], long = Math.hypot(dx, dy);
      const along = long < SHORT ? 1 + (4 * value.length + 8) / long : 0.5;
      this.letter(value, 'dw-measure', [seen[0][0] + along * dx, seen[0][1] + along * dy]);
    };
    measure([0, 0, z], [l, 0, z], [0, -1, 0], tapeText(l, state.data.unit));
    measure([0, 0, z], [0, w, z], [-1, 0, 0], tapeText(w, state.data.unit));
    measure([l, w, t - z], [l, w, z], [1, 0, 0], text(t));
    const pocket = p.part.pockets[state.pocket];
    if (pocket) {
      const [x, y] = pocket.at, [dx, dy] = pocket.size, inside = pocket.face === 'inside';
      const [from, to] = inside ? [t - pocket.depth, t] : [0, pocket.depth];
      const face = inside ? t : 0;
      const corners = [[x, y, from], [x + dx, y + dy, to]];
      painter.put(new Float32Array(edgeList(...corners).flatMap((q) => outOf(f, q))), painter.gl.LINES, { color: [...theme.mark, 1], through: true, cut: NO_CUT });
      if (x > 0) measure([x, y + dy, face], [0, y + dy, face], [0, 1, 0], text(x), 2.4);
      if (y > 0) measure([x + dx, y, face], [x + dx, 0, face], [1, 0, 0], text(y), 2.4);
      measure([x, y + dy, face], [x + dx, y + dy, face], [0, 1, 0], text(dx));
      measure([x + dx, y, face], [x + dx, y + dy, face], [1, 0, 0], text(dy));
    }
    painter.put(new Float32Array(lines.flat()), painter.gl.LINES, { color: [...theme.ink, 1], through: true, cut: NO_CUT });
  }
}

// collisionName tells what collides.
const collisionName = (c) => `${c.name}${c.pulled ? ', pulled out' : ''}`;

// COLLISION is how wide its letters are at most, in dots, as the style sheet has it.
const COLLISION = 300;

// OVER are how far from its place a collision is told, in dots: not over it.
const OVER = [-30, 30, -60, 60, 0];

// BESIDES are how far from its place what is wrong may be told, in dots.
const BESIDES = [0, -22, 22, -44, 44];

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
  return { lines, at: [mid[0] + out[0] * SIZE_BESIDE, mid[1] + out[1] * SIZE_BESIDE] };
}

// ticked is a slanting tick at a place.
function ticked(q, axes, camera) {
  const slant = times(plus(axes.right, axes.up), TICK / camera.scale);
  return [...minus(q, slant), ...plus(q, slant)];
}

// turnedOut takes a direction out of a frame.
const turnedOut = (f, v) => minus(outOf(f, v), f.o);

// grains are arrows along the grain on both faces of pieces that have one.
function grains(state, shown) {
  const out = [];
  for (const p of shown) {
    if (!p.part.grained) continue;
    const f = state.frame(p), { length: l, width: w, thickness: t } = p.part;
    const tip = Math.min(ARROW / state.camera.scale, l / 8, w / 4);
    for (const z of [0, t]) {
      const y = 0.45 * w, a = 0.36 * l, b = 0.64 * l;
      for (const q of [[a, y], [b, y], [a, y], [a + tip, y + tip / 2], [a, y], [a + tip, y - tip / 2], [b, y], [b - tip, y + tip / 2], [b, y], [b - tip, y - tip / 2]]) out.push(...outOf(f, [...q, z]));
    }
  }
  return new Float32Array(out);
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
