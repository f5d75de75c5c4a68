// Lists beside the picture, and its tools. They are made anew when what there is changes;
// else elements are only set, which is fast and leaves the focus where it is.

class Controls {
  constructor(viewer, aside, row) {
    this.viewer = viewer;
    this.aside = aside;
    this.tools = new Tools(viewer, row);
    this.said = make('p', { className: 'dw-said', role: 'status' });
  }

  get state() { return this.viewer.state; }
  length(mm) { return lengthText(mm, this.state.data.unit); }
  size(...mm) { return mm.map((v) => this.length(v)).join(' × '); }
  tape(mm) { return tapeText(mm, this.state.data.unit); }
  // board is a piece by its length and width, which a tape takes, and its thickness, which a caliper does.
  board({ length, width, thickness }) { return [this.tape(length), this.tape(width), this.length(thickness)].join(' × '); }

  // shape is what the controls are made for; numbers alone are refreshed.
  shape() {
    const { data, groupIndex, group, setups } = this.state;
    return JSON.stringify([groupIndex, data.unit, setups.length > 0, data.groups.map((g) => [g.name, g.boxes.length, Boolean(g.carcass)]),
      group.boxes.map((b) => [data.boxes[b].name, data.boxes[b].pieces.map((p) => p.name), data.boxes[b].plays.length])]);
  }

  refresh() {
    const { data, pieces } = this.state;
    setText(this.title, data.title);
    this.fact.replaceChildren(...this.facts());
    for (const p of pieces) setText(this.rows.get(p.key).size, this.board(p.part));
    this.keepFocus(() => {
      this.tools.refresh();
      this.describe();
    });
  }

  // build makes all anew, but keeps what a person has unfolded, where the list stands
  // and which control has the focus.
  build() {
    const all = () => this.places().flatMap((e) => [...e.querySelectorAll('details')]);
    const open = new Set(all().filter((d) => d.open).map((d) => d.firstChild.textContent)), scrolled = this.aside.scrollTop;
    this.keepFocus(() => {
      this.remake();
      for (const d of all()) d.open = open.has(d.firstChild.textContent);
    });
    this.aside.scrollTop = scrolled;
  }

  places() { return [this.tools.row, this.aside]; }
  keepFocus(act) { keepFocus(this.places(), act, this.viewer.canvas); }

  remake() {
    const { viewer, state } = this;
    const { data } = state;
    const groups = make('select', { onchange: (e) => viewer.show(Number(e.target.value)) },
      ...data.groups.map((g, i) => make('option', { value: String(i), selected: i === state.groupIndex }, g.boxes.length > 1 ? `${g.name}: ${g.boxes.length} drawers` : g.name)));
    this.list = make('div', { className: 'dw-list' });
    this.detail = make('div', {});
    this.title = make('h2', {}, data.title);
    this.fact = make('p', { className: 'dw-fact' }, ...this.facts());
    this.aside.replaceChildren(
      this.title,
      make('label', { className: 'dw-row', hidden: data.groups.length === 1 }, 'show', groups),
      this.fact,
      part('Parts', make('div', { className: 'dw-buttons' }, button('show all parts', () => viewer.showAll())), this.list),
      this.detail);
    this.tools.build();
    this.fill();
    this.set();
    this.describe();
  }

  facts() {
    const { state } = this;
    const boxes = state.group.boxes.map((b) => state.data.boxes[b]);
    const bad = boxes.reduce((n, b) => n + b.overlaps.length, 0);
    const facts = boxes.length === 1
      ? `${boxes[0].size.map((v) => this.tape(v)).join(' × ')} ${state.data.unit}, width × height × depth outside; ${boxes[0].count} to make`
      : `${boxes.length} drawers as they stand in their opening`;
    const met = state.group.carcass?.collisions ?? [];
    if (met.length > 0) return [facts, make('strong', { className: 'dw-bad' }, ` ✕ Something collides in ${met.length} ${met.length === 1 ? 'place' : 'places'}: see the list Clearance.`)];
    return bad === 0 ? [facts] : [facts, make('strong', { className: 'dw-bad' }, ` Parts overlap in ${bad} places: the box does not go together.`)];
  }

  // fill makes the list of parts.
  fill() {
    const { viewer, state } = this;
    this.rows = new Map();
    const lists = state.group.boxes.map((b, i) => {
      const box = state.data.boxes[b];
      const items = state.pieces.filter((p) => p.boxIndex === i).map((p) => {
        const what = state.group.boxes.length > 1 ? `${box.name}, ${p.piece.name}` : p.piece.name;
        const show = make('input', { type: 'checkbox', 'aria-label': `show ${what}`, onchange: () => viewer.toggle(p.key) });
        const size = make('small', {}, this.board(p.part));
        const name = button('', () => viewer.choose(state.chosen === p.key ? null : p.key), { className: 'dw-piece' });
        name.append(make('b', {}, String(p.number)), ` ${p.piece.name} `, size);
        const only = button('only', () => viewer.only(p.key), { 'aria-label': `show only ${what}` });
        this.rows.set(p.key, { show, name, size });
        return make('li', {}, show, name, only);
      });
      const list = make('ul', {}, ...items);
      if (state.group.boxes.length === 1) return list;
      return make('details', {}, make('summary', {}, box.name), list);
    });
    this.list.replaceChildren(...lists);
    this.rowsSet = null;
  }

  // set brings the controls to the state.
  set() {
    const { state } = this;
    this.tools.set();
    const rows = [state.chosen, ...state.hidden].join('\n');
    if (this.rowsSet === rows) return; // a bank has hundreds
    this.rowsSet = rows;
    for (const [key, { show, name }] of this.rows) {
      show.checked = !state.hidden.has(key);
      const pressed = String(key === state.chosen);
      if (name.getAttribute('aria-pressed') !== pressed) name.setAttribute('aria-pressed', pressed);
    }
  }

  // describe tells of the chosen piece.
  describe() {
    const { viewer, state } = this;
    const p = state.chosenPiece();
    this.choices = [];
    if (!p) {
      this.detail.replaceChildren(part('Chosen part', make('p', { className: 'dw-fact' }, 'none: click one in the picture or in the list')));
      return;
    }
    const { part: q } = p;
    const rows = q.pockets.map((k, i) => {
      const choose = button(`${k.kind}, ${k.face}`, () => viewer.pocket(state.pocket === i ? -1 : i), { 'aria-pressed': String(state.pocket === i) });
      this.choices.push(choose);
      return [choose, this.length(k.at[0]), this.length(k.at[1]), this.size(...k.size), k.through ? 'through' : this.length(k.depth)];
    });
    this.detail.replaceChildren(part(`Chosen part: ${p.number} ${p.piece.name}`,
      table(`${q.name}, ${q.stock}, ${q.quantity} in the job; ${state.data.unit}`, ['length', 'width', 'thickness'], [[this.tape(q.length), this.tape(q.width), this.length(q.thickness)]]),
      rows.length === 0 ? make('p', { className: 'dw-fact' }, 'no dado, groove or rabbet in it')
        : table(`Cut into it; from its left end and its lower edge, inside face up; ${state.data.unit}`, ['pocket', 'left', 'low', 'size', 'deep'], rows)));
  }

  pressPocket() {
    this.choices.forEach((b, i) => b.setAttribute('aria-pressed', String(i === this.state.pocket)));
  }

  say(text) { setText(this.said, text); }
}
