// The viewer: what ties state, picture and controls together.

class Viewer {
  constructor(element, data, options) {
    this.element = element;
    this.options = options;
    this.frames = { drawn: 0, last: 0, longest: 0 }; // of the script alone, in ms
    element.classList.add('dw-viewer');
    this.canvas = make('canvas', { tabIndex: 0, role: 'application', 'aria-label': 'Picture of the box: arrow keys turn it, more keys are listed under Keys' });
    this.layer = make('div', { className: 'dw-letters', 'aria-hidden': 'true' });
    this.aside = make('div', { className: 'dw-controls' });
    this.row = make('div', { className: 'dw-tools', role: 'group', 'aria-label': 'Tools of the picture' });
    this.stage = make('div', { className: 'dw-stage' }, this.canvas, this.layer);
    this.ending = [];
    try {
      this.painter = new Painter(this.canvas);
    } catch {
      this.works = false;
      element.replaceChildren(this.withoutWebGL());
      return;
    }
    this.works = true;
    this.marks = new Marks(this.layer, this.stage, options);
    this.state = new State(data);
    this.assembly = new Assembly(this);
    this.measured = new Measured(this);
    this.ending.push(this.assembly.end, () => this.measured.halt());
    this.controls = new Controls(this, this.aside, this.row);
    const caption = make('div', { className: 'dw-caption' }, this.controls.tools.step, this.controls.said, this.measured.told);
    this.over = [...caption.children, this.measured.scale]; // what letters keep clear of
    this.stage.append(caption, this.measured.scale);
    element.replaceChildren(this.row, this.stage, make('div', {}, this.measured.bar, this.assembly.told), this.aside);
    this.fold(Boolean(options.embedded));
    this.controls.build();
    this.ending.push(listen(this.canvas, this));
    const resized = new ResizeObserver(() => this.resize());
    resized.observe(this.stage);
    this.ending.push(() => resized.disconnect());
    const dark = matchMedia('(prefers-color-scheme: dark)'), change = () => this.retheme();
    dark.addEventListener('change', change);
    this.ending.push(() => dark.removeEventListener('change', change));
    const lost = (e) => e.preventDefault(), back = () => {
      this.painter = new Painter(this.canvas);
      this.changed();
    };
    this.canvas.addEventListener('webglcontextlost', lost);
    this.canvas.addEventListener('webglcontextrestored', back);
    this.retheme();
    this.resize();
    this.state.fit();
  }

  withoutWebGL() {
    return make('div', { className: 'dw-without', role: 'region', 'aria-label': 'Pictures' },
      make('p', {}, make('strong', {}, 'This browser does not draw in three dimensions (WebGL 2 is missing or switched off).'),
        ' Open the file in a present Firefox, Chrome, Edge or Safari, or switch on hardware acceleration in its settings and load the page again. Until then, here is how it looks put together:'),
      ...(this.options.pictures ?? []));
  }

  resize() {
    const { camera } = this.state;
    const width = this.stage.clientWidth, height = this.stage.clientHeight;
    if (width === 0 || height === 0 || matchMedia('print').matches) return; // paper keeps the picture
    const first = camera.width === 1;
    this.dots = Math.min(3, devicePixelRatio || 1);
    this.element.style.setProperty('--wide', `${width}px`);
    this.element.style.setProperty('--shape', `${width} / ${height}`);
    this.element.style.setProperty('--high', `${height}px`);
    this.canvas.width = Math.round(width * this.dots);
    this.canvas.height = Math.round(height * this.dots);
    const factor = Math.min(width, height) / Math.min(camera.width, camera.height); // there and back is 1
    camera.width = width;
    camera.height = height;
    this.state.resized(first, factor);
    this.changed();
  }

  // fold folds the lists beside the picture away, or out again.
  fold(away = !this.folded) {
    this.folded = away;
    this.aside.hidden = away;
    this.element.classList.toggle('dw-folded', away);
    if (this.controls.tools.lists) this.controls.tools.set();
  }

  retheme() {
    this.theme = themeOf(this.element, this.state.data);
    this.changed();
  }

  switchTheme() {
    const dark = getComputedStyle(this.element).getPropertyValue('--dark').trim() === '1';
    this.element.dataset.theme = dark ? 'light' : 'dark';
    this.controls.say(dark ? 'light' : 'dark');
    this.retheme();
  }

  // changed draws in the next frame, once.
  changed() {
    if (this.asked) return;
    this.asked = requestAnimationFrame(() => {
      this.asked = 0;
      const start = performance.now();
      this.painter.draw(this.state, this.theme, this.dots);
      this.controls.set();
      this.marks.draw(this.state, this.painter, this.theme, this.over);
      const took = performance.now() - start;
      this.frames.drawn++;
      this.frames.last = took;
      if (this.frames.drawn > 1) this.frames.longest = Math.max(this.frames.longest, took); // the first makes what is kept
    });
  }

  update(data) {
    if (!this.works) return;
    const { pocket } = this.state, shape = this.controls.shape();
    this.assembly.halt();
    this.measured.halt();
    this.painter.forget();
    this.state.take(data);
    this.state.pocket = this.state.chosenPiece() ? pocket : -1;
    if (this.controls.shape() === shape) this.controls.refresh();
    else this.controls.build();
    this.controls.say(this.chosen());
    this.retheme();
  }

  // stale says whether what is shown is not of the latest job, which could not be worked out.
  stale(on) {
    if (!this.works || this.state.stale === on) return;
    this.state.stale = on;
    this.controls.keepFocus(() => this.controls.tools.refresh());
    this.changed();
  }

  destroy() {
    cancelAnimationFrame(this.asked);
    for (const end of this.ending) end();
    this.painter?.forget();
    this.painter?.gl.getExtension('WEBGL_lose_context')?.loseContext();
    this.element.classList.remove('dw-viewer', 'dw-folded');
    delete this.element.dataset.theme;
    this.element.removeAttribute('style');
    this.element.replaceChildren();
  }

  show(n) {
    this.assembly.leave();
    this.painter.forget();
    this.state.show(n);
    this.controls.build();
    this.controls.say(this.chosen());
    this.changed();
  }

  choose(key) {
    this.state.choose(key);
    this.controls.say(this.chosen() || 'no part chosen');
    this.controls.describe();
    this.changed();
    this.options.chosen?.(this.state.number);
  }

  // chosen is the chosen piece in words; empty where none is.
  chosen() {
    const p = this.state.chosenPiece();
    return p ? `${p.piece.name}: ${this.controls.board(p.part)} ${this.state.data.unit}` : '';
  }

  // number marks all pieces of the parts with a number; 0 for none.
  number(n) {
    if (this.state.chosenPiece()?.number !== n) this.state.choose(null);
    this.state.number = n;
    this.controls.describe();
    this.changed();
  }

  // drag gives the place of the chosen piece, if it is what is seen at a dot and can be moved
  // there: then it goes along with the pointer, in whole steps. A front takes its drawer along.
  drag(x, y) {
    const { state } = this, p = state.chosenPiece();
    if (!p || !state.closed() || seenAt(state, x, y)?.key !== p.key) return null;
    const placed = this.options.place?.(p.piece.name);
    if (placed) return { ...placed, key: p.key };
    return state.group.carcass && FRONTS.includes(p.part.role) ? { key: p.key, axis: 1, mm: -state.pulled(p.boxIndex), pulls: p.box.name } : null;
  }

  // shift moves a dragged piece by dots of the page, to a whole step from its wall.
  shift({ key, axis, mm, pulls }, dx, dy) {
    const { camera, data } = this.state, step = data.unit === 'in' ? MM_IN / 16 : 1;
    const along = [0, 0, 0];
    along[axis] = 1;
    const { right, up } = camera.axes(), per = [camera.scale * dot(along, right), -camera.scale * dot(along, up)];
    const long = per[0] ** 2 + per[1] ** 2;
    if (long < 1e-6) return;
    const place = Math.round((mm + (dx * per[0] + dy * per[1]) / long) / step) * step;
    if (pulls) return this.pull(pulls, -place, false);
    const to = Math.max(0, place);
    this.state.shifted = { key, by: times(along, to - mm) };
    this.changed();
  }

  // drop ends a drag: the page is told where the piece is to stand, in mm from its wall.
  drop({ piece, axis, mm, pulls }, taken) {
    if (pulls) return this.spread(this.state.opened); // all stays in sight
    const by = this.state.shifted?.by[axis] ?? 0;
    if (!taken || by === 0) this.state.shifted = null;
    else this.options.move(piece, mm + by);
    this.changed();
  }

  clicked(x, y) { this.choose(seenAt(this.state, x, y)?.key ?? null); }

  next(by) {
    const shown = this.state.shown();
    if (shown.length === 0) return;
    const i = shown.findIndex((p) => p.key === this.state.chosen);
    this.choose(shown[i < 0 ? (by > 0 ? 0 : shown.length - 1) : (i + by + shown.length) % shown.length].key);
  }

  toggle(key) {
    if (!key) return;
    const { hidden } = this.state;
    if (!hidden.delete(key)) hidden.add(key);
    this.changed();
  }

  only(key) {
    const { state } = this;
    state.hidden = new Set(state.pieces.map((p) => p.key).filter((k) => k !== key));
    state.fit();
    this.choose(key);
  }

  showAll() {
    this.state.hidden.clear();
    this.state.fit();
    this.changed();
  }

  pocket(i) {
    this.state.pocket = i;
    this.controls.pressPocket();
    this.changed();
  }

  // open opens the boxes; all stays in sight, unless somebody looks at one place.
  open(part) {
    this.assembly.leave();
    this.spread(within(part, 0, 1));
  }

  spread(part) {
    this.state.opened = part;
    if (this.state.camera.fitted) this.state.fit();
    this.changed();
  }

  // pull pulls a drawer out, in mm; all stays in sight, unless somebody looks at one place or
  // has it at the pointer.
  pull(name, mm, fit = true) {
    const { state } = this, i = state.group.boxes.findIndex((b) => state.data.boxes[b].name === name);
    state.puller = name;
    state.pulls.set(name, within(mm, 0, state.group.carcass.travel[i]));
    [state.low, state.high] = state.bounds(0);
    if (fit && state.camera.fitted) state.fit();
    this.changed();
  }

  pullWhose(name) {
    this.state.puller = name;
    this.changed();
  }

  // showGap draws a clearance in the opening.
  showGap(name) {
    this.state.gap = this.state.gap === name ? null : name;
    this.changed();
  }

  look(name) {
    this.state.leave();
    this.state.camera.look(name);
    this.state.fit();
    this.changed();
  }

  fit() {
    this.state.leave();
    this.state.fit();
    this.changed();
  }

  escape() {
    if (this.state.leave()) this.state.fit();
    this.choose(null);
  }

  // section cuts across an axis, through the middle, and takes away what is nearer to
  // the eye.
  section(axis) {
    const { state } = this;
    if (state.at()?.feed) this.assembly.leave();
    if (state.leave()) state.fit();
    state.section.axis = axis;
    if (axis >= 0) {
      state.section.at = (state.low[axis] + state.high[axis]) / 2;
      state.section.side = state.camera.axes().eye[axis] < -1e-6 ? -1 : 1;
    }
    this.changed();
  }

  cutAt(at) {
    const { section, low, high } = this.state;
    section.at = within(at || 0, low[section.axis], high[section.axis]);
    this.changed();
  }

  flip() {
    this.state.section.side *= -1;
    this.changed();
  }

  mark(name, on) {
    const { state } = this;
    state.marks[name] = on;
    if (name === 'plays' && state.joint) state.joint.plays = on;
    this.changed();
  }

  // joint looks into a joint of a measure, and reports whether there is one.
  joint(measure) {
    const { boxes } = this.state.group;
    const play = boxes.length === 1 && this.state.data.boxes[boxes[0]].plays.find((p) => p.measure === measure);
    if (play) this.goTo(play);
    return Boolean(play);
  }

  goTo(play) {
    this.assembly.leave();
    this.measured.halt();
    this.state.enter(play);
    this.changed();
  }
}

// FRONTS are the roles of what a drawer is pulled at.
const FRONTS = ['drawer-front', 'box-front'];

// mountViewer puts a viewer into an element: see the package's comment.
function mountViewer(element, data, options = {}) {
  return new Viewer(element, data, options);
}
