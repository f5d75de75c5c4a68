// Putting a box together, step by step as the packet has it: words below the picture, and in it what
// is there, its glue and its clamps.

// How long pieces move, and how long the words of a step stand while all steps are played, in ms.
const MOVING = 700, STANDING = 900, READING = 22;

class Assembly {
  constructor(viewer) {
    this.viewer = viewer;
    this.words = make('p', { 'aria-live': 'polite' });
    this.legend = make('p', { className: 'dw-legend' });
    this.told = make('div', { className: 'dw-told' }, this.words, this.legend);
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
    return make('div', { className: 'dw-tool', role: 'group', 'aria-label': 'Assembly', hidden: this.last() < 0 }, this.back, this.next, this.play);
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
    const from = state.opened, to = state.openAt();
    const words = this.state.at()?.text.length ?? 0;
    let began = null;
    const move = (now) => {
      began ??= now;
      const k = this.calm.matches || from === to ? 1 : within((now - began) / MOVING, 0, 1);
      const opened = from + (to - from) * k * k * (3 - 2 * k);
      if (opened !== state.opened) viewer.spread(opened);
      this.frame = 0;
      if (k < 1 || this.playing && now - began < MOVING + STANDING + READING * words) this.frame = requestAnimationFrame(move);
      else if (this.playing && step < this.last()) this.go(step + 1);
      else if (this.playing) this.press();
    };
    if (this.calm.matches) viewer.spread(to);
    else {
      viewer.spread(from);
      this.frame = requestAnimationFrame(move);
    }
  }

  // halt ends what moves: pieces that are on their way are there.
  halt() {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.playing = false;
    const { state } = this;
    if (state.step >= 0) state.opened = state.openAt();
  }

  // leave ends assembly: somebody opens the box by hand, or looks at other things.
  leave() {
    this.halt();
    this.state.step = -1;
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
    this.back.setAttribute('aria-disabled', String(step < 0));
    this.next.setAttribute('aria-disabled', String(step === this.last()));
    setText(this.play, this.playing ? 'Stop' : 'Play');
    this.play.hidden = this.calm.matches;
  }

  // cues say what marks of a step are: a kind and its words a line.
  cues({ glue, clamps }) {
    const lines = [];
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
