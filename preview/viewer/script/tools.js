// The row of tools on the picture: where it is looked at from, how far it is open, a cut
// through it, what is marked. What is wanted rarely drops down from the row.

const AXES = ['left to right', 'front to back', 'bottom to top'];

class Tools {
  constructor(viewer, row) {
    this.viewer = viewer;
    this.row = row;
    this.step = make('output', { className: 'dw-step' });
  }

  get state() { return this.viewer.state; }
  length(mm) { return lengthText(mm, this.state.data.unit); }
  unit() { return this.state.data.unit === 'in' ? MM_IN : 1; }

  build() {
    const { viewer } = this;
    this.open = make('input', { type: 'range', min: '0', max: '1', step: '0.005', oninput: () => viewer.open(Number(this.open.value)) });
    this.lists = button('Parts', () => viewer.fold());
    this.row.replaceChildren(
      make('div', { className: 'dw-buttons', role: 'group', 'aria-label': 'Look from' },
        ...Object.keys(LOOKS).map((name) => button(name, () => viewer.look(name))), button('all', () => viewer.fit(), { title: 'show all of it' })),
      make('label', { className: 'dw-tool' }, 'open', this.open),
      viewer.assembly.buttons(),
      ...this.pull(),
      this.section(),
      drop('Display', ...this.marks()),
      ...this.plays(),
      this.lists,
      viewer.measured.toggle(),
      drop('Keys', make('dl', {}, ...KEYS.flatMap(([k, what]) => [make('dt', {}, k), make('dd', {}, what)]))),
      ...(viewer.options.embedded ? [] : [button('light or dark', () => viewer.switchTheme(), { className: 'dw-apart' })]));
    this.set();
  }

  // pull pulls the drawers of an opening out, as far as their slides go.
  pull() {
    const { viewer, state, state: { group: { carcass, boxes }, data } } = this;
    this.out = null;
    if (!carcass) return [];
    this.whose = make('select', { 'aria-label': 'drawer to pull', onchange: () => viewer.pullWhose(this.whose.value) },
      ...boxes.map((b) => make('option', { value: data.boxes[b].name }, data.boxes[b].name)));
    this.out = make('input', { type: 'range', min: '0', step: '0.5', title: 'or choose its front and drag it', oninput: () => viewer.pull(state.puller, Number(this.out.value)) });
    this.outText = make('output', {});
    return [make('div', { className: 'dw-tool' }, make('label', { className: 'dw-tool' }, 'pull', this.out), this.outText, this.whose)];
  }

  section() {
    const { viewer, state } = this;
    this.axis = make('select', { onchange: () => viewer.section(Number(this.axis.value)) },
      ...['none', ...AXES].map((text, i) => make('option', { value: String(i - 1) }, text)));
    this.place = make('input', { type: 'range', oninput: () => viewer.cutAt(Number(this.place.value)) });
    this.placed = make('input', { type: 'number', step: 'any', onchange: () => viewer.cutAt(state.low[state.section.axis] + Number(this.placed.value) * this.unit()) });
    this.cut = make('div', { className: 'dw-tool' }, make('label', { className: 'dw-tool' }, 'place', this.place),
      make('label', { className: 'dw-tool' }, this.placed, `${state.data.unit} from the start`), button('Other side', () => viewer.flip()));
    return make('div', { className: 'dw-tool' }, make('label', { className: 'dw-tool' }, 'cut', this.axis), this.cut);
  }

  // marks are what can be drawn over the box.
  marks() {
    const { viewer, state: { group, data } } = this;
    const all = [['sizes', 'dimensions of the box'], ['numbers', group.boxes.length > 1 ? 'names' : 'numbers of the list'], ['faces', 'inside and outside faces (outside is hatched)'], ['grain', 'grain'], ['plays', `clearance in the ${group.carcass ? 'opening' : 'joints'}, ${data.unit}`], ['exaggerated', `clearance drawn ${data.ease} times its size, an overlap as it is`]];
    if (data.parts.some((p) => p.milled !== p.mesh)) all.unshift(['milled', 'as milled, with the bits’ round corners; else as designed']);
    if (Object.keys(data.stocks).length > 0) all.push(['woods', 'colors of the boards, else of the parts']);
    this.checks = new Map(all.map(([name, text]) => [name, check(text, (on) => viewer.mark(name, on))]));
    return [...this.checks.values()];
  }

  // plays lists where joints have play, each a way to a section through it; the list is
  // filled while it is unfolded.
  plays() {
    const { viewer, state } = this;
    const { boxes, carcass } = state.group;
    const count = carcass ? carcass.clearances.length : boxes.length === 1 ? state.data.boxes[boxes[0]].plays.length : 0;
    this.fill = () => {};
    if (count === 0) return [];
    const list = make('div', {}), place = drop('Clearance', list);
    const fold = () => {
      place.open = false;
      place.firstChild.focus();
    };
    this.fill = () => {
      if (!place.open) return;
      if (state.stale) return list.replaceChildren(make('p', { className: 'dw-fact' }, 'not known: what was entered cannot be drawn'));
      if (carcass) return list.replaceChildren(...this.free(fold));
      const rows = seatsOf(state, boxes[0]).map((play) => [button(play.name, () => {
        fold();
        viewer.goTo(play);
      }, { title: 'a section through it' }), play.verdict ? make('strong', { className: `dw-${judgedOf(play)}` }, `${play.sign} ${this.length(play.play)} ${play.verdict}`) : `${this.length(play.play)} ${play.words ?? ''}`]);
      list.replaceChildren(make('p', { className: 'dw-fact' }, viewer.measured.choice()), table(`Clearance in the joints, a section through each; ${state.data.unit}`, ['where', 'clearance'], rows));
    };
    place.addEventListener('toggle', this.fill);
    return [place];
  }

  // free lists what is free about the drawers in their opening, what collides before it.
  free(fold) {
    const { viewer, state: { group: { carcass }, data } } = this;
    const bad = carcass.collisions.map((c) => [...[collisionName(c), `✕ ${this.length(c.by)}`].map((t) => make('strong', { className: 'dw-bad' }, t))]);
    const rows = carcass.clearances.map((c) => [button(c.name, () => {
      fold();
      viewer.showGap(c.name);
    }, { title: 'its dimension in the picture' }), this.length(c.gap)]);
    return [table(`Clearance in the opening, the drawers closed; ${data.unit}`, ['where', 'clearance'], [...bad, ...rows]),
      make('p', { className: 'dw-fact' }, `Assumed: ${carcass.assumed.join('; ')}.`)];
  }

  refresh() { this.fill(); }

  // set brings the tools to the state.
  set() {
    const { state } = this;
    const { axis, at } = state.section;
    this.open.value = String(state.opened);
    const box = state.data.boxes[state.group.boxes[0]];
    const n = state.opened * box.opening.length;
    setText(this.step, state.opened === 0 ? 'closed' : `${Math.ceil(n)} of ${box.opening.length}: ${box.opening[Math.ceil(n) - 1]}`);
    this.step.hidden = state.opened === 0 || state.step >= 0;
    this.open.setAttribute('aria-valuetext', this.step.textContent);
    this.viewer.assembly.set();
    this.viewer.measured.set();
    if (this.out) {
      const i = state.group.boxes.findIndex((b) => state.data.boxes[b].name === state.puller);
      this.whose.value = state.puller;
      this.out.max = String(state.group.carcass.travel[i]);
      this.out.value = String(state.pulled(i));
      setText(this.outText, `${this.length(state.pulled(i))} ${state.data.unit}`);
      this.out.setAttribute('aria-valuetext', this.outText.textContent);
    }
    this.axis.value = String(axis);
    this.cut.hidden = axis < 0;
    if (axis >= 0) {
      const low = state.low[axis], high = state.high[axis];
      Object.assign(this.place, { min: String(low), max: String(high), step: String((high - low) / 2000) });
      this.place.value = String(at);
      this.place.setAttribute('aria-valuetext', `${this.length(at - low)} ${state.data.unit}`);
      if (document.activeElement !== this.placed) this.placed.value = this.length(at - low);
    }
    for (const [name, label] of this.checks) label.firstChild.checked = state.marks[name];
    this.lists.setAttribute('aria-expanded', String(!this.viewer.folded));
  }
}

// drop is what drops down from the row; Escape, and a click elsewhere but where boards are chosen, fold it.
function drop(name, ...children) {
  const summary = make('summary', {}, name), panel = make('div', { className: 'dw-panel' }, ...children);
  const place = make('details', { className: 'dw-drop' }, summary, panel);
  // Under its button, but not out of the row, which the panel is as wide as at most.
  const under = () => {
    if (!place.open) return;
    panel.style.top = `${summary.offsetTop + summary.offsetHeight}px`;
    panel.style.left = `${Math.max(0, Math.min(summary.offsetLeft, panel.offsetParent.clientWidth - panel.offsetWidth))}px`;
  };
  new ResizeObserver(under).observe(panel); // as it drops down, too
  const fold = (e) => { if (!place.contains(e.target) && !e.target.closest('.dw-bar')) place.open = false; };
  place.addEventListener('toggle', () => {
    if (place.open) document.addEventListener('pointerdown', fold, true);
    else document.removeEventListener('pointerdown', fold, true);
  });
  place.addEventListener('keydown', (e) => {
    if (e.key !== 'Escape' || !place.open) return;
    place.open = false;
    place.firstChild.focus();
  });
  return place;
}
