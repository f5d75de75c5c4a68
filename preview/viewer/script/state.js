// What is shown of a scene and how: all that a person can set. Pieces are known by
// `box/piece`, so that another state of the job keeps what was set.

class State {
  constructor(data) {
    this.hidden = new Set();
    this.chosen = null; // a piece's key
    this.pocket = -1; // of the chosen piece
    this.opened = 0; // of the steps, as a part of all
    this.section = { axis: -1, at: 0, side: 1 }; // side: 1 takes away what lies beyond
    this.marks = { numbers: true, faces: false, grain: false, plays: false, exaggerated: false };
    this.camera = new Camera();
    this.before = null; // how the camera stood before it looked into a joint
    this.groupName = null;
    this.take(data);
  }

  // take looks at other data and forgets what is no longer there.
  take(data) {
    this.data = data;
    this.solids = readSolids(data);
    const n = data.groups.findIndex((g) => g.name === this.groupName);
    this.show(Math.max(0, n), n < 0);
  }

  show(n, anew = true) {
    this.group = this.data.groups[n];
    this.groupIndex = n;
    this.groupName = this.group.name;
    this.pieces = this.group.boxes.flatMap((b, i) => this.data.boxes[b].pieces.map((p, k) => ({
      key: `${this.data.boxes[b].name}/${p.name}`, box: this.data.boxes[b], boxIndex: i, at: this.group.at[i], piece: p,
      part: this.data.parts[p.part], number: 0, order: k,
    })));
    this.pieces.forEach((p, i) => { p.number = i + 1; });
    const keys = new Set(this.pieces.map((p) => p.key));
    for (const k of this.hidden) if (!keys.has(k)) this.hidden.delete(k);
    if (!keys.has(this.chosen)) this.choose(null);
    [this.low, this.high] = this.bounds(0);
    if (anew) {
      this.opened = 0;
      this.section.axis = -1;
      this.leave();
      this.hidden.clear();
      this.fit();
    } else {
      this.section.at = this.section.axis < 0 ? 0 : within(this.section.at, this.low[this.section.axis], this.high[this.section.axis]);
    }
  }

  choose(key) {
    if (key !== this.chosen) this.pocket = -1;
    this.chosen = key;
  }

  chosenPiece() { return this.pieces.find((p) => p.key === this.chosen); }
  shown() { return this.pieces.filter((p) => !this.hidden.has(p.key)); }

  // frame is where a piece stands, opened as far as a part of all steps.
  frame(p, opened = this.opened) {
    const steps = opened * p.box.steps.length;
    let o = plus(p.at, p.piece.origin);
    for (const [step, ...by] of p.piece.moves) o = plus(o, times(by, within(steps - step, 0, 1)));
    return frameOf(o, p.piece.x, p.piece.y);
  }

  solid(p) { return this.solids[this.marks.exaggerated ? p.part.eased : p.part.mesh]; }

  bounds(opened = this.opened, pieces = this.pieces) {
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
    return [low, high];
  }

  // leave takes the camera back from a joint.
  leave() {
    if (!this.before) return false;
    [this.camera.left, this.camera.above] = this.before;
    this.before = null;
    return true;
  }

  fit() {
    const shown = this.shown();
    if (shown.length > 0) this.camera.fit(...this.bounds(this.opened, shown));
  }

  // cut is the plane as [normal, distance]: what lies beyond is not drawn.
  cut() {
    const { axis, at, side } = this.section;
    if (axis < 0) return [[0, 0, 0], 1];
    const n = [0, 0, 0];
    n[axis] = side;
    return [n, side * at];
  }
}
