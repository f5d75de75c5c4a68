// As measured: all boards at the least, the mean or the most of their readings, and the machine's errors of a numbered
// box of the forecast. Lengths are forms of the data, which are only added up here; verdicts stand in the data.

const LEVELS = ['least', 'mean', 'most'], MEAN = 1;

// How far apart a joint goes, of the depth of its slot; how long that takes, in ms; how far from it dimensions
// stand, in dots; and what is one place, in mm.
const APART = 2, CLOSING = 900, ASIDE = 26, SAME = 0.002;

const none = () => 0;

// valueOf is a form with what is off, added in the order in which the program adds.
function valueOf({ at, by, bends = [] }, off) {
  let v = at;
  for (const [source, times] of by) v += times * off(source);
  for (const { times, a, b } of bends) v += times * Math.min(valueOf(a, off), valueOf(b, off));
  return v;
}

// offOf gives what each source of a box is off by.
function offOf({ data: { draws }, boards, draw }, box) {
  return (source) => {
    const [a, b] = box.off[source], errors = draws[source];
    if (errors) return draw > 0 ? a * errors[draw - 1] + b : 0;
    return [a, 0, b][boards];
  };
}

const boxOf = (state) => state.data.boxes[state.group.boxes[0]];
const hasJoints = (state) => state.group.boxes.length === 1 && boxOf(state).joints.length > 0;

// asMeasured reports whether boards or machine are off in the box that is shown.
const asMeasured = (state) => hasJoints(state) && (state.boards !== MEAN || state.draw > 0);

// seatsOf are the clearances of a box as they come out; of those that nothing judges it is not known.
const seatsOf = (state, b) => state.data.boxes[b].plays.map((play) => seatOf(state, play)).filter(Boolean);

// seatOf is one of them: with the verdict on it, and how wide the slot and what is in it are, where one length is.
function seatOf(state, play) {
  const box = hasJoints(state) && boxOf(state), joint = box && box.joints.find((j) => j.name === play.measure);
  if (!joint) return asMeasured(state) ? null : play;
  const off = offOf(state, box);
  const nominal = valueOf(joint.clearance, none), whole = valueOf(joint.clearance, off);
  const part = Math.abs(play.play - nominal) < SAME ? 1 : play.play / nominal; // what is in a slot may have some on either side
  const n = joint.verdicts.length / LEVELS.length;
  const said = joint.said[joint.verdicts[state.boards * n + state.draw]];
  const [slot, tongue] = [joint.slot, joint.tongue].map((form) => (form ? valueOf(form, off) : null));
  const kind = play.pocket < 0 ? 'notch' : state.pieces[play.of].part.pockets[play.pocket].kind;
  // Where the face of what is in the slot is, and the wall before it: as drawn, and as they come out.
  const up = play.up ? 1 : -1, { axis } = play;
  const [below, above] = [play.low[axis], play.high[axis]];
  const [face, wall] = play.up === play.play > 0 ? [below, above] : [above, below];
  const faceOut = face + up * (joint.tongue ? part * (tongue - joint.tongue.at) : 0), wallOut = faceOut + up * part * whole;
  const low = [...play.low], high = [...play.high];
  low[axis] = Math.min(faceOut, wallOut);
  high[axis] = Math.max(faceOut, wallOut);
  const larger = state.marks.exaggerated && whole > 0 ? state.data.ease : 1;
  const drawn = faceOut + up * part * whole * larger, rest = (1 - part) * whole * larger;
  const verdict = asMeasured(state) ? { verdict: said.state === 'right' ? undefined : said.words, sign: said.sign, doubt: said.state === 'doubt' } : {};
  return { ...play, low, high, ...verdict, play: part * whole, words: said.words, jams: said.jams, kind, slot, tongue, within: joint.within, up, face, wall, faceOut, drawn, rest };
}

// apartOf is how far the joint that is looked into is apart once nothing moves, as a part of the depth of its slot: where
// it jams it comes to rest at the mouth.
function apartOf(state, play) {
  if (state.joint.open) return APART;
  return seatOf(state, play)?.jams ? 1 : 0;
}

// isApart reports whether a clearance is not there, as its joint is not closed.
const isApart = (state, play) => state.joint?.apart > 0 && !play.jams;

// comesOut is the solid of a piece with the walls of its slots, and its faces in those of others, where they come out.
function comesOut(state, p) {
  const key = `${p.order} ${state.marks.exaggerated}`;
  let solid = state.comeOut.get(key);
  if (!solid) {
    solid = moved(state, p, state.solids.of(p.part.mesh));
    state.comeOut.set(key, solid);
  }
  return solid;
}

function moved(state, p, solid) {
  const seats = seatsOf(state, state.group.boxes[0]).filter((s) => s.of === p.order || s.in === p.order);
  const frame = frameOf(p.piece.origin, p.piece.x, p.piece.y), ends = [outOf(frame, solid.low), outOf(frame, solid.high)];
  const places = Float32Array.from(solid.places);
  for (let i = 0; i < places.length; i += 3) {
    const v = [...solid.places.subarray(i, i + 3)], was = outOf(frame, v), is = [...was];
    for (const s of seats) {
      const k = s.axis;
      if (s.in === p.order && Math.abs(was[k] - s.face) < SAME) is[k] = s.faceOut;
      if (s.of !== p.order || Math.abs(was[k] - s.wall) > SAME || !isOf(s, p.part, v, was)) continue;
      const [low, high] = [ends[0][k], ends[1][k]].sort((a, b) => a - b); // some wood is left before it
      is[k] = within(s.drawn, Math.min(low + 0.5, s.wall), Math.max(high - 0.5, s.wall));
    }
    places.set(into(frame, is), i);
  }
  return solidOf(places, solid.corners);
}

// isOf reports whether a place on a wall's plane is one of a slot: of its pocket, or beside the clearance between fingers.
function isOf(seat, { pockets, thickness }, v, was) {
  const in0 = (x, low, high) => x > low - SAME && x < high + SAME;
  if (seat.pocket < 0) return [0, 1, 2].every((k) => k === seat.axis || in0(was[k], seat.low[k], seat.high[k]));
  const { at, size, depth, face } = pockets[seat.pocket], floor = face === 'inside' ? thickness - depth : 0;
  return in0(v[0], at[0], at[0] + size[0]) && in0(v[1], at[1], at[1] + size[1]) && in0(v[2], floor, floor + depth);
}

// jointSizes draws how wide the slot of the joint is, beyond its floor, and what is in it, before its mouth.
function jointSizes(marks) {
  const { state, theme, axes } = marks;
  const seat = seatsOf(state, state.group.boxes[0]).find((s) => s.name === state.joint.name);
  const deep = state.joint.way.findIndex((v) => v !== 0);
  if (!seat?.slot || seat.open || deep === seat.axis || deep === seat.along) return;
  const { data: { unit }, camera, section } = state, out = Math.sign(state.joint.way[deep]), aside = out * ASIDE / camera.scale;
  const [mouth, floor] = out > 0 ? [seat.low[deep], seat.high[deep]] : [seat.high[deep], seat.low[deep]];
  const stands = state.standsAt(0);
  const size = (from, to, edge, by, text) => {
    const place = (across, d) => {
      const q = [0, 0, 0];
      q[seat.axis] = across + stands[seat.axis];
      q[deep] = d + stands[deep];
      q[seat.along] = section.at;
      return q;
    };
    const ends = [from, to].map((v) => place(v, edge + by));
    marks.mark([...ends, place(from, edge), ends[0], place(to, edge), ends[1], ...ends.flatMap((q) => ticked(q, axes, camera))], theme.ink, text);
    const at = camera.project(times(plus(...ends), 0.5), axes);
    marks.letters.ask({ text, kind: 'dw-measure', turn: TURNS.size, at: [at], own: text, from: at, must: true, color: theme.ink });
  };
  const other = seat.faceOut - seat.up * seat.tongue;
  size(other - seat.up * seat.rest, seat.drawn, floor + state.joint.apart * state.joint.way[deep], aside, `${seat.kind} ${lengthText(seat.slot, unit)}`);
  size(other, seat.faceOut, mouth, -aside, `${seat.within} ${lengthText(seat.tongue, unit)}`);
}

// cutSpot is a dot on what a section cuts of a piece, as near to its middle as may be; nothing where none is seen.
function cutSpot(state, p, axes) {
  const { section: { axis, at, side }, camera } = state;
  if (axis < 0 || side * axes.eye[axis] < 0.1) return null; // it is seen edge on, or from behind
  const [low, high] = state.bounds(state.opened, [p]);
  if (low[axis] >= at || high[axis] <= at) return null;
  // What is seen of the plane: where the corners of the picture are in it.
  const corners = [[0, 0], [1, 0], [0, 1], [1, 1]].map(([x, y]) => {
    const q = camera.under(x * camera.width, y * camera.height, axes);
    return plus(q, times(axes.eye, (at - q[axis]) / axes.eye[axis]));
  });
  for (let k = 0; k < 3; k++) {
    low[k] = Math.max(low[k], Math.min(...corners.map((q) => q[k])));
    high[k] = Math.min(high[k], Math.max(...corners.map((q) => q[k])));
    if (k !== axis && low[k] >= high[k]) return null;
  }
  const [u, v] = [(axis + 1) % 3, (axis + 2) % 3], solid = state.solid(p), f = state.frame(p);
  for (const a of SPREAD) {
    for (const b of SPREAD) {
      const q = [0, 0, 0];
      [q[axis], q[u], q[v]] = [at, low[u] + a * (high[u] - low[u]), low[v] + b * (high[v] - low[v])];
      if (inWood(solid, into(f, q), turnedInto(f, axes.eye))) return camera.project(q, axes);
    }
  }
  return null;
}

// inWood reports whether a place, in the frame of a solid, is inside of it: from there a line goes out once more than in.
function inWood(solid, place, along) {
  let inside = false, end = 0;
  for (;;) {
    const next = hit(solid, place, along, (t) => t >= end);
    if (next === null) return inside;
    inside = !inside;
    end = next - SAME;
  }
}

// SPREAD are parts of a length, from its middle.
const SPREAD = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9];

// What a person chooses, and the joint that closes.
class Measured {
  constructor(viewer) {
    this.viewer = viewer;
    this.frame = 0; // asked for
    this.boards = make('select', { onchange: () => this.choose(Number(this.boards.value), this.state.draw) },
      ...LEVELS.map((text, i) => make('option', { value: String(i) }, text)));
    this.draw = make('input', { type: 'range', min: '0', title: 'errors as they are usual, by number: one number is one box', oninput: () => this.choose(this.state.boards, Number(this.draw.value)) });
    this.drawn = make('output', {});
    this.close = button('', () => this.press());
    this.told = make('p', { className: 'dw-joint', role: 'status' });
    this.scale = make('div', { className: 'dw-scale' });
    this.choices = make('div', { className: 'dw-tool', role: 'group', 'aria-label': 'As measured' },
      make('label', { className: 'dw-tool' }, 'boards', this.boards), make('label', { className: 'dw-tool' }, 'machine', this.draw), this.drawn);
    this.folded = Boolean(viewer.options.embedded);
    this.bar = make('div', { className: 'dw-bar' }, this.choices, make('div', { className: 'dw-tool' }, this.close));
  }

  get state() { return this.viewer.state; }

  // toggle is made anew with the tools.
  toggle() {
    return this.shows = button('As measured', () => {
      this.folded = !this.folded;
      this.set();
    }, { title: 'thin and thick boards, errors of the machine' });
  }

  choose(boards, draw) {
    const { state, viewer } = this;
    this.halt();
    Object.assign(state, { boards, draw });
    state.comeOut.clear();
    viewer.painter.forget();
    if (state.joint) state.joint.apart = apartOf(state, this.play());
    viewer.controls.tools.refresh();
    viewer.changed();
  }

  play() { return boxOf(this.state).plays.find((p) => p.name === this.state.joint.name); }

  // press takes the joint apart, or closes it as far as it goes.
  press() {
    const { state, viewer } = this;
    this.halt();
    state.joint.open = !state.joint.open;
    const from = state.joint.apart, to = apartOf(state, this.play());
    let began = null;
    const move = (now) => {
      if (!state.joint) return this.halt(); // left while it moves
      began ??= now;
      const k = viewer.assembly.calm.matches ? 1 : within((now - began) / CLOSING, 0, 1);
      state.joint.apart = from + (to - from) * k * k * (3 - 2 * k);
      this.frame = k < 1 ? requestAnimationFrame(move) : 0;
      viewer.changed();
    };
    move(performance.now());
  }

  halt() {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
  }

  // choice says what is chosen.
  choice() {
    const { boards, draw } = this.state;
    return `Boards at the ${LEVELS[boards]} of their readings, the machine ${draw > 0 ? `with the errors of box ${draw}` : 'as set'}`;
  }

  // set brings the tools and the words in the picture to the state.
  set() {
    const { state } = this, { unit, ease } = state.data;
    this.shows.hidden = state.group.boxes.length > 1 || Boolean(state.at()?.feed); // parts are fed as they are drawn
    this.shows.setAttribute('aria-expanded', String(!this.folded));
    this.bar.hidden = this.folded || this.shows.hidden;
    this.choices.hidden = !hasJoints(state);
    if (hasJoints(state)) this.draw.max = String(boxOf(state).joints[0].verdicts.length / LEVELS.length - 1);
    this.boards.value = String(state.boards);
    this.draw.value = String(state.draw);
    setText(this.drawn, state.draw > 0 ? `box ${state.draw}` : 'as set');
    this.draw.setAttribute('aria-valuetext', this.drawn.textContent);
    this.close.hidden = !state.joint;
    if (state.joint) setText(this.close, state.joint.open ? 'Close joint' : 'Take apart');
    setText(this.told, state.joint && !this.frame && !state.stale ? this.say() : '');
    setText(this.scale, state.marks.exaggerated ? `clearance × ${ease}, else true to scale` : 'true to scale');
  }

  // say tells of the joint that is looked into.
  say() {
    const { state } = this, { unit } = state.data, play = this.play(), seat = seatOf(state, play);
    if (!seat) return play.name;
    const length = (mm) => `${lengthText(mm, unit)} ${unit}`;
    const home = state.joint.open || !seat.jams ? '' : `; it stops ${length(Math.hypot(...play.way))} before it is home`;
    const verdict = seat.verdict ?? seat.words;
    const sizes = !seat.slot || seat.open ? '' : `${seat.kind} ${length(seat.slot)}, ${seat.within} ${length(seat.tongue)}, `;
    return `${play.name}: ${sizes}clearance ${length(seat.play)}${verdict ? `: ${verdict}` : ''}${home}`;
  }
}
