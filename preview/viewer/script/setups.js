// Parts on their way past the cutter, setting by setting as the cards have them. The picture is in the
// coordinates of the machine: the operator stands before it, the fence is at his right, and the part
// goes away from him.

// feedsOf are the steps of setups for the parts of a single box.
function feedsOf(data, group) {
  if (group.boxes.length !== 1) return [];
  const { pieces } = data.boxes[group.boxes[0]];
  return (data.setups ?? []).flatMap((setting) => setting.cuts.flatMap((cut) => cut.feeds.flatMap((feed) => {
    const parts = feed.parts.filter((part) => pieces.some((p) => p.part === part));
    if (parts.length === 0) return [];
    const pass = feed.passes > 1 ? `, pass ${feed.pass} of ${feed.passes}` : '';
    const text = `${setting.name}, cut ${cut.number}: ${cut.text} In the picture: ${parts.map((part) => data.parts[part].name).join(', ')}, ${feed.edge}${pass}.`;
    return [{ setting, cut, feed, text, part: parts[0] }];
  })));
}

// feedPieces are what stands about the cutter, and the part as far as it has come: twice, cut where it has
// passed the cutter and whole before it.
function feedPieces(state) {
  const { feed, setting, part } = state.at();
  const place = fedTo(feed, state.fed), by = [0, place.o[1] - feed.origin[1], 0];
  const list = feed.machine.map(({ mesh, role, fed }) => ({ key: null, mesh, order: 0, number: 0, part: { role }, stands: frameOf(fed ? by : [0, 0, 0], [1, 0, 0], [0, 1, 0]) }));
  const p = state.pieces.find((q) => q.piece.part === part);
  const stands = frameOf(place.o, feed.x, feed.y);
  // Fingers are cut row after row, all else along the way.
  const [n, at] = feed.rows ? [[-1, 0, 0], place.passed ? setting.cutter : 0] : [[0, -1, 0], 0];
  list.push({ ...p, mesh: feed.after, stands, cut: [...n, at] });
  list.push({ ...p, mesh: feed.before, stands, cut: [...times(n, -1), -at] });
  return list;
}

// fedTo is where a part stands, with fingers also whether it has passed the cutter in its row.
function fedTo({ origin, by, rows }, fed) {
  if (!rows) return { o: plus(origin, [0, fed * by, 0]) };
  const row = Math.min(rows.length - 1, Math.floor(fed * rows.length)), along = fed * rows.length - row;
  return { o: plus(origin, [rows[row], along * by, 0]), passed: along > 0.5 };
}

// cardOf are the figures and cautions of a step's card.
function cardOf({ setting, cut }) {
  const list = (texts, properties) => make('ul', properties, ...texts.map((text) => make('li', {}, text)));
  return [
    make('div', {}, make('dl', {}, ...setting.figures.map(([name, value]) => make('div', {}, make('dt', {}, name), make('dd', {}, value)))),
      list([setting.heading, `Pieces: ${cut.parts}.`, ...cut.notes, ...setting.notes])),
    list([...setting.cautions, ...cut.cautions], { className: 'dw-cautions', 'aria-label': 'Cautions' }),
  ];
}

// drawFeed draws what the cutter takes, which the part hides, the way of feeding, and what is set.
function drawFeed(marks) {
  const { state, painter, theme, axes } = marks, { feed, setting, part } = state.at(), { camera } = state;
  const { o } = fedTo(feed, state.fed), f = frameOf(o, feed.x, feed.y), { length, width, thickness } = state.data.parts[part];
  const ends = [outOf(f, [0, 0, 0]), outOf(f, [length, width, thickness])];
  const low = [0, 1, 2].map((k) => Math.min(ends[0][k], ends[1][k])), high = [0, 1, 2].map((k) => Math.max(ends[0][k], ends[1][k]));
  const from = [Math.max(low[0], -setting.cutter), Math.max(low[1], 0), 0];
  const to = [Math.min(high[0], 0, feed.rows ? 0 : feed.fence), high[1] - (feed.lead ?? 0), Math.min(high[2], setting.height)];
  if (to[1] > from[1]) marks.mark(edgeList(from, to), theme.mark);
  // An arrow over the part, away from the operator.
  const middle = [low[0] + (high[0] - low[0]) / 4, (low[1] + high[1]) / 2, high[2]], arrow = Math.min(60, (high[1] - low[1]) / 3), tip = arrow / 3;
  const [tail, head] = [-arrow, arrow].map((dy) => plus(middle, [0, dy, 0]));
  marks.mark([tail, head, head, plus(head, [-tip, -tip, 0]), head, plus(head, [tip, -tip, 0])], theme.ink, 'feed');
  const upright = Math.abs(outOf(f, [0, 0, 1])[2] - o[2]) < 0.5, told = camera.project(tail, axes);
  marks.letters.ask({ text: feed.rows ? 'feed' : `feed, ${feed.down} face ${upright ? 'at the fence' : 'down'}`, kind: 'dw-face', turn: TURNS.asked, at: [told], own: 'feed', from: told, must: true, color: theme.ink });
  // What is set, from the cutter to the near edge of the table, below which its figures stand.
  const { cutter, figures } = setting, front = state.solids.of(feed.machine[0].mesh).low;
  const sides = (feed.rows ? [-cutter, 0] : [-cutter, 0, feed.fence]).flatMap((x) => [[x, 0, 0], [x, front[1], 0]]);
  painter.put(new Float32Array(sides.flat()), painter.gl.LINES, { color: [...theme.mark, 1], nearer: 1.5 / camera.scale / camera.reach });
  marks.keep(sides, 'set');
  const below = camera.project([0, front[1], front[2]], axes);
  marks.letters.ask({ text: figures.filter(([, value]) => /\d/.test(value)).map((v) => v.join(' ')).join(', '), kind: 'dw-measure', turn: TURNS.size, by: [[0, 15]], own: 'set', from: below, must: true, color: theme.mark });
}
