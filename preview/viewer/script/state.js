// What is shown of a scene and how: all that a person can set. Pieces are known by
// `box/piece`, so that another state of the job keeps what was set.

// A Kept is made anew where its key is another.
class Kept {
  of(key, make) {
    if (this.key !== key) [this.key, this.value] = [key, make()];
    return this.value;
  }
}

class State {
  constructor(data) {
    this.hidden = new Set();
    this.chosen = null; // a piece's key
    this.number = 0; // of the parts that are marked, those of the chosen piece among them
    this.pulls = new Map(); // how far drawers are pulled out of their opening, in mm by name
    this.puller = ''; // the drawer that the slider pulls
    this.gap = null; // the name of a clearance in the opening that is drawn
    this.shifted = null; // {key, by}: a piece that is just being dragged, and how far
    this.pocket = -1; // of the chosen piece
    this.opened = 0; // of the steps of opening, as a part of all
    this.work = 'assembly'; // whose steps are told: of that, or of 'setups'
    this.step = -1; // of these, that is shown
    this.fed = 0; // how far the part of a setup has come, as a part of its way
    this.section = { axis: -1, at: 0, side: 1 }; // side: 1 takes away what lies beyond
    this.stale = false; // what is shown is not of the latest job: its clearances are not told
    this.marks = { numbers: true, sizes: true, faces: false, grain: false, plays: false, exaggerated: false, milled: true, woods: false };
    this.camera = new Camera();
    this.joint = null; // that is looked into: its name, how far apart it is, and what to go back to
    this.boards = MEAN; // of LEVELS, and the numbered box whose errors the machine has
    this.draw = 0;
    this.comeOut = new Map(); // solids of pieces as they come out then
    this.groupName = null;
    this.take(data);
  }

  // take looks at other data and forgets what is no longer there.
  take(data) {
    const { low, high } = this;
    this.data = data;
    this.solids = new Solids(data);
    this.comeOut.clear();
    const n = data.groups.findIndex((g) => g.name === this.groupName);
    this.show(Math.max(0, n), n < 0);
    if (n >= 0) this.follow(low, high);
  }

  // follow keeps in sight what was seen of a box that had other bounds: all of it, a joint, or
  // the same part of it.
  follow(low, high) {
    if (low.every((v, k) => v === this.low[k]) && high.every((v, k) => v === this.high[k]) && !this.joint) return;
    if (this.joint) this.aim();
    else if (this.camera.fitted) this.fit();
    else {
      const was = minus(high, low), is = minus(this.high, this.low);
      this.camera.at = this.camera.at.map((v, k) => this.low[k] + (v - low[k]) * is[k] / (was[k] || 1));
      this.camera.scale *= Math.hypot(...was) / Math.hypot(...is);
    }
  }

  // standing tells ways in which pieces stand, and what is shown of them, apart: what is made for one
  // serves until it is another, however it is turned.
  standing() {
    const { shifted, joint, marks } = this;
    return [this.shows, this.opened, this.work, this.step, this.fed, joint?.of, joint?.apart, this.boards, this.draw, marks.exaggerated, marks.milled, shifted?.key, shifted?.by,
      ...this.pulls, ...this.hidden].join(' ');
  }

  show(n, anew = true) {
    this.shows = (this.shows ?? 0) + 1;
    this.group = this.data.groups[n];
    this.groupIndex = n;
    this.groupName = this.group.name;
    this.pieces = this.group.boxes.flatMap((b, i) => this.data.boxes[b].pieces.map((p, k) => ({
      key: `${this.data.boxes[b].name}/${p.name}`, box: this.data.boxes[b], boxIndex: i, at: this.group.at[i], piece: p,
      part: this.data.parts[p.part], number: this.data.parts[p.part].number, order: k,
    })));
    const keys = new Set(this.pieces.map((p) => p.key));
    for (const k of this.hidden) if (!keys.has(k)) this.hidden.delete(k);
    if (!keys.has(this.chosen)) this.chosen = null; // its number stays marked
    this.shifted = null;
    if (!this.group.boxes.some((b) => this.data.boxes[b].name === this.puller)) this.puller = this.data.boxes[this.group.boxes[0]].name;
    if (anew) {
      this.pulls.clear();
      this.gap = null;
    }
    [this.low, this.high] = this.bounds(0, this.pieces);
    this.setups = feedsOf(this.data, this.group);
    if (this.setups.length === 0) this.work = 'assembly';
    if (anew || this.step >= this.steps().length) this.step = -1;
    if (this.step >= 0) this.opened = this.openAt();
    if (anew) {
      this.opened = 0;
      this.leave();
      this.section.axis = -1;
      this.hidden.clear();
      this.fit();
    } else {
      this.section.at = this.section.axis < 0 ? 0 : within(this.section.at, this.low[this.section.axis], this.high[this.section.axis]);
    }
  }

  choose(key) {
    if (key !== this.chosen) this.pocket = -1;
    this.chosen = key;
    this.number = this.chosenPiece()?.number ?? 0;
  }

  marked(p) { return p.number > 0 && p.number === this.number; }

  chosenPiece() { return this.pieces.find((p) => p.key === this.chosen); }
  shown() {
    if (this.at()?.feed) return feedPieces(this);
    const from = this.at()?.from ?? 0;
    return this.pieces.filter((p) => !this.hidden.has(p.key) && (p.piece.moves[0]?.[0] ?? from) >= from);
  }

  // steps are those of assembly, of a single box, or of setups.
  steps() {
    if (this.work === 'setups') return this.setups;
    return this.group.boxes.length === 1 ? this.data.boxes[this.group.boxes[0]].steps : [];
  }
  at() { return this.steps()[this.step]; }

  // openAt is how far the box is open in the step that is shown.
  openAt() {
    const at = this.at();
    return at && !at.feed ? at.open / this.data.boxes[this.group.boxes[0]].opening.length : 0;
  }

  // closed reports whether the box stands as it is when it is done.
  closed() { return this.opened === 0 && this.step < 0; }

  // frame is where a piece stands, opened as far as a part of all steps.
  frame(p, opened = this.opened) {
    if (p.stands) return p.stands;
    const steps = opened * p.box.opening.length;
    let o = plus(this.standsAt(p.boxIndex), p.piece.origin);
    if (this.shifted?.key === p.key) o = plus(o, this.shifted.by);
    if (this.joint?.of === p.order) o = plus(o, times(this.joint.way, this.joint.apart));
    for (const [step, ...by] of p.piece.moves) o = plus(o, times(by, within(steps - step, 0, 1)));
    return frameOf(o, p.piece.x, p.piece.y);
  }

  // pulled is how far a box of the group is pulled out, as far as its slides go.
  pulled(i) {
    const { carcass, boxes } = this.group;
    return carcass ? within(this.pulls.get(this.data.boxes[boxes[i]].name) ?? 0, 0, carcass.travel[i]) : 0;
  }

  // standsAt is where a box of the group stands, pulled out as it is.
  standsAt(i) { return minus(this.group.at[i], [0, this.pulled(i), 0]); }

  // outlines are the opening and all that is outlined in it, by low and high, as the drawers are
  // pulled; none while boxes are open.
  outlines(opened = this.opened) {
    const { carcass } = this.group;
    if (!carcass || opened > 0 || this.step >= 0) return [];
    return [carcass, ...carcass.outlines.map((o) => {
      const by = [0, o.box < 0 ? 0 : this.pulled(o.box), 0];
      return o.motion === 'stays' ? o : { ...o, low: minus(o.low, by), high: o.motion === 'runs' ? o.high : minus(o.high, by) };
    })];
  }

  // solid is what is shown of a piece: with clearances that are drawn larger it is as designed.
  solid(p) {
    if (p.mesh !== undefined) return this.solids.of(p.mesh);
    const { part } = p, { exaggerated, milled } = this.marks;
    if (asMeasured(this)) return comesOut(this, p);
    return this.solids.of(exaggerated ? part.eased : milled ? part.milled : part.mesh);
  }

  bounds(opened = this.opened, pieces = this.at()?.feed ? this.shown() : this.pieces) {
    const low = [Infinity, Infinity, Infinity], high = [-Infinity, -Infinity, -Infinity];
    for (const p of pieces) {
      const f = this.frame(p, opened), s = this.solid(p);
      for (const q of [outOf(f, s.low), outOf(f, s.high)]) {
        for (let k = 0; k < 3; k++) {
          low[k] = Math.min(low[k], q[k]);
          high[k] = Math.max(high[k], q[k]);
        }
      }
    }
    for (const o of pieces.length > 1 ? this.outlines(opened) : []) { // a piece alone is looked at without them
      for (let k = 0; k < 3; k++) {
        low[k] = Math.min(low[k], o.low[k]);
        high[k] = Math.max(high[k], o.high[k]);
      }
    }
    return [low, high];
  }

  // enter looks straight into a joint, cut through where it has clearance.
  enter(play) {
    this.joint ??= { left: this.camera.left, above: this.camera.above, plays: this.marks.plays, section: { ...this.section } };
    Object.assign(this.joint, { name: play.name, open: false });
    this.opened = 0;
    this.marks.plays = true;
    this.camera.look(['right', 'front', 'top'][play.along]);
    this.section.axis = play.along;
    this.section.side = this.camera.axes().eye[play.along] < -1e-6 ? -1 : 1;
    this.camera.fitted = false;
    this.camera.scale = this.joint.scale = this.jointScale();
    this.aim();
  }

  jointScale() { return Math.min(this.camera.width, this.camera.height) / JOINT; }

  // aim keeps the joint in the middle; one that is gone is left.
  aim() {
    const play = this.data.boxes[this.group.boxes[0]].plays.find((q) => q.name === this.joint.name);
    if (!play) {
      this.leave();
      this.fit();
      return;
    }
    Object.assign(this.joint, { of: play.of, way: play.way, apart: apartOf(this, play) });
    this.camera.at = plus(times(plus(play.low, play.high), 0.5), this.standsAt(0));
    this.section.at = this.camera.at[this.section.axis];
  }

  // leave goes back from a joint to what was seen before: its clearance is named no more.
  leave() {
    if (!this.joint) return false;
    const { left, above, plays, section } = this.joint;
    Object.assign(this.camera, { left, above });
    this.marks.plays = plays;
    this.section = section;
    this.joint = null;
    return true;
  }

  fit() {
    const shown = this.shown();
    if (shown.length === 0) return;
    const ends = this.bounds(this.opened, shown);
    for (const { low, high } of this.at()?.clamps ?? []) {
      ends[0] = ends[0].map((v, k) => Math.min(v, low[k] + this.standsAt(0)[k]));
      ends[1] = ends[1].map((v, k) => Math.max(v, high[k] + this.standsAt(0)[k]));
    }
    this.camera.fit(...ends, this.sized() ? MARGIN : 0);
  }

  // resized brings the eye to a picture of another size: all of the box or the joint is shown as
  // before; what a person has zoomed to keeps its share of the picture.
  resized(first, factor) {
    const { camera, joint } = this;
    if (first || camera.fitted) this.fit();
    else if (joint?.scale === camera.scale) camera.scale = joint.scale = this.jointScale();
    else camera.scale *= factor;
  }

  // sizeBounds are the outside of the box, without a front that is screwed to it.
  sizeBounds() {
    const at = this.standsAt(0), [w, h, d] = this.data.boxes[this.group.boxes[0]].size;
    return [at, plus(at, [w, d, h])];
  }

  // sized reports whether the dimensions of the box stand about it.
  sized() { return this.marks.sizes && this.group.boxes.length === 1 && this.closed() && !this.joint && !this.chosen; }

  // cut is the plane as [normal, distance]: what lies beyond is not drawn.
  cut() {
    const { axis, at, side } = this.section;
    if (axis < 0 || this.at()?.feed) return [[0, 0, 0], 1];
    const n = [0, 0, 0];
    n[axis] = side;
    return [n, side * at];
  }
}

// JOINT is how much of a joint is shown, in mm: thick boards and their neighbors. MARGIN is
// the room for dimensions about a box, in dots.
const JOINT = 45, MARGIN = 44;
