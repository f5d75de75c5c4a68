// Work, step by step as the packet has it: putting a box together, or cutting its parts. Words stand below
// the picture; of assembly there is in it what is there, its glue and its clamps.

// How long pieces move and a part is fed, and how long the words of a step stand while all steps are played, in ms.
const MOVING = 700, FEEDING = 1600, STANDING = 900, READING = 22;

class Assembly {
  constructor(viewer) {
    this.viewer = viewer;
    this.words = make('p', { 'aria-live': 'polite' });
    this.legend = make('p', { className: 'dw-legend' });
    this.card = make('div', { className: 'dw-card', hidden: true, tabIndex: 0, role: 'region', 'aria-label': 'Card of the setting' });
    this.told = make('div', { className: 'dw-told' }, this.words, this.legend, this.card);
    this.frame = 0; // asked for
    this.playing = false;
    this.calm = matchMedia('(prefers-reduced-motion: reduce)');
    const change = () => {
      this.halt();
      viewer.spread(this.state.opened);
    };
    this.calm.addEventListener('change', change);
    this.end = () => {
      this.halt();
      this.calm.removeEventListener('change', change);
    };
  }

  get state() { return this.viewer.state; }
  last() { return this.state.steps().length - 1; }

  // buttons are made anew with the tools.
  buttons() {
    this.back = button('Back', () => this.by(-1));
    this.next = button('Next', () => this.by(1));
    this.play = button('Play', () => this.press());
    this.whose = this.state.setups.length === 0 ? null : make('select', { 'aria-label': 'steps of', onchange: () => this.choose(this.whose.value) },
      ...['assembly', 'setups'].map((work) => make('option', { value: work }, work)));
    return make('div', { className: 'dw-tool', role: 'group', 'aria-label': 'Steps', hidden: this.last() < 0 }, this.whose, this.back, this.next, this.play);
  }

  // choose takes the steps of assembly or of setups: these from the first, as the operator sees it.
  choose(work) {
    const { state, viewer } = this;
    this.leave();
    state.work = work;
    if (work === 'setups') {
      if (state.leave()) state.fit();
      [state.camera.left, state.camera.above] = OPERATOR;
      this.by(1);
    } else {
      viewer.spread(0);
    }
  }

  // by goes a step on or back; before the first the box stands as it is.
  by(n) {
    const to = this.state.step + n;
    if (to < -1 || to > this.last()) return;
    this.halt();
    this.go(to);
  }

  // press plays all steps that come, from the first after the last, or stops that.
  press() {
    const playing = !this.playing;
    this.halt();
    this.playing = playing;
    if (playing) this.go(this.state.step < this.last() ? this.state.step + 1 : 0);
    else this.viewer.spread(this.state.opened);
  }

  // go moves the pieces to where they stand in a step.
  go(step) {
    const { state, viewer } = this;
    if (state.leave()) state.fit();
    state.step = step;
    const at = state.at(), feed = at?.feed;
    const from = feed ? 0 : state.opened, to = feed ? 1 : state.openAt();
    const put = (part) => (feed ? this.feed(part) : viewer.spread(part));
    if (feed) {
      [state.opened, state.fed] = [0, 1];
      if (state.camera.fitted) state.fit(); // where it ends, so that the picture keeps still while it is fed
    }
    const lasts = feed ? FEEDING * (feed.rows?.length ?? 1) : MOVING, words = at?.text.length ?? 0;
    let began = null, last = null;
    const move = (now) => {
      began ??= now;
      const k = this.calm.matches || from === to ? 1 : within((now - began) / lasts, 0, 1);
      const part = from + (to - from) * (feed ? k : k * k * (3 - 2 * k));
      if (part !== last) put(part);
      last = part;
      this.frame = 0;
      if (k < 1 || this.playing && now - began < lasts + STANDING + READING * words) this.frame = requestAnimationFrame(move);
      else if (this.playing && step < this.last()) this.go(step + 1);
      else if (this.playing) this.press();
    };
    if (this.calm.matches) put(to);
    else {
      put(from);
      this.frame = requestAnimationFrame(move);
    }
  }

  // feed brings the part of a setup as far as a part of its way.
  feed(part) {
    const { state, viewer } = this;
    state.fed = part;
    viewer.changed();
  }

  // halt ends what moves: pieces that are on their way are there.
  halt() {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.playing = false;
    const { state } = this;
    if (state.step < 0) return;
    state.opened = state.openAt();
    state.fed = 1;
  }

  // leave ends assembly: somebody opens the box by hand, or looks at other things.
  leave() {
    this.halt();
    const { state } = this, feed = state.at()?.feed;
    state.step = -1;
    if (feed) state.fit();
  }

  // set brings words and buttons to the state.
  set() {
    const { step } = this.state, at = this.state.at();
    setText(this.words, at ? `${step + 1} of ${this.last() + 1}: ${at.text}` : '');
    this.told.classList.toggle('dw-at', Boolean(at));
    const legend = at ? this.cues(at) : '';
    if (this.cued !== legend) {
      this.cued = legend;
      this.legend.replaceChildren(...legend.split('\n').filter(Boolean).map((line) => {
        const [kind, text] = line.split('|');
        return make('span', {}, make('span', { className: `dw-cue dw-${kind}` }), text);
      }));
    }
    if (this.carded !== at?.cut) {
      this.carded = at?.cut;
      this.card.replaceChildren(...(at?.feed ? cardOf(at) : []));
      this.card.hidden = !at?.feed;
    }
    if (this.whose) this.whose.value = this.state.work;
    this.back.setAttribute('aria-disabled', String(step < 0));
    this.next.setAttribute('aria-disabled', String(step === this.last()));
    setText(this.play, this.playing ? 'Stop' : 'Play');
    this.play.hidden = this.calm.matches;
  }

  // cues say what marks of a step are: a kind and its words a line.
  cues({ glue, clamps, feed }) {
    const lines = feed ? ['mark|what the cutter takes off'] : [];
    if (glue) lines.push(`glue|glue: ${[...new Set(glue.map(([piece]) => this.state.pieces[piece].piece.name))].join(', ')}`);
    if (clamps) lines.push('steel|clamps', 'pad|pads of wood');
    return lines.join('\n');
  }
}

// drawStep draws glue and clamps of the step that is shown.
function drawStep(state, painter, theme, nearer) {
  const at = state.at(), { gl } = painter;
  if (!at) return;
  const box = state.standsAt(0);
  const glue = (at.glue ?? []).flatMap(([piece, ...ends]) => {
    const p = state.pieces[piece];
    if (state.hidden.has(p.key)) return [];
    const by = minus(state.frame(p).o, p.piece.origin);
    return [...sidesOf(plus(ends.slice(0, 3), by), plus(ends.slice(3), by))];
  });
  const faces = new Float32Array(glue);
  painter.put(faces, gl.TRIANGLES, { color: [...theme.glue, 1], nearer });
  painter.put(faces, gl.TRIANGLES, { color: [...theme.ground, 1], nearer, hatch: 6 });
  for (const c of at.clamps ?? []) {
    const ends = [plus(c.low, box), plus(c.high, box)];
    painter.put(sidesOf(...ends), gl.TRIANGLES, { color: [...(c.pad ? theme.pad : theme.steel), 1] });
    painter.put(edgesOf(...ends), gl.LINES, { color: [...theme.line, 1], nearer });
  }
}
