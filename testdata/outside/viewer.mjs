// Checks pages of the viewer in Chromium. Reads {"name", "page", "title", "drawers", "overlaps",
// "checks", "printed"} as JSON, one a line, with the names of the checks that are to be made and the
// words of the packet without spaces; prints for each {"page", "check", "faults", "facts"}.
import { browse, dots, faults, open, settle } from './browser.mjs';
import { lines } from './panels.mjs';

const near = (a, b, by) => Math.abs(a - b) <= by;

// Each check gets the page's own facts and a place for faults.
const checks = {
  async load({ page }, must, job) {
    const { drawn } = await dots(page);
    must(drawn > 10000, `only ${drawn} dots are drawn`);
    must(await page.title() === job.title, `the title is ${await page.title()}`);
    must(await page.locator('h2').textContent() === job.title, 'the heading is another');
    must(await page.locator('img, script[src], link[href^="http"]').count() === 0, 'markup from a name, or a link to elsewhere');
    must(await page.locator('.pictures').count() === 0, 'pictures stand beside the viewer');
    const before = await page.evaluate(() => viewer.frames.drawn);
    await page.waitForTimeout(300);
    must(await page.evaluate(() => viewer.frames.drawn) === before, 'it draws while nothing changes');
  },

  async orbit({ page }, must) {
    const camera = () => page.evaluate(() => ({ ...viewer.state.camera }));
    const [before, picture] = [await camera(), await dots(page)];
    await page.mouse.move(400, 300);
    await page.mouse.down();
    await page.mouse.move(460, 330, { steps: 4 });
    await page.mouse.up();
    const turned = await camera();
    must(near(turned.left - before.left, 24, 0.1) && near(turned.above - before.above, 12, 0.1), `60 and 30 dots turned it by ${turned.left - before.left} and ${turned.above - before.above}`);
    must((await dots(page)).sum !== picture.sum, 'the picture is the same');
    // What is under the pointer stays there when a wheel zooms.
    const under = () => page.evaluate(() => viewer.state.camera.under(500, 350 - viewer.canvas.getBoundingClientRect().top));
    const spot = await under();
    await page.mouse.move(500, 350);
    await page.mouse.wheel(0, -300);
    await settle(page);
    const zoomed = await camera(), after = await under();
    must(zoomed.scale > 1.3 * turned.scale, `a wheel zooms from ${turned.scale} to ${zoomed.scale}`);
    must(spot.every((v, k) => near(v, after[k], 0.01)), `under the pointer was ${spot}, is ${after}`);
    await page.keyboard.down('Shift');
    await page.mouse.down();
    await page.mouse.move(540, 350, { steps: 2 });
    await page.mouse.up();
    await page.keyboard.up('Shift');
    const moved = await camera();
    must(moved.left === zoomed.left && moved.at.some((v, k) => !near(v, zoomed.at[k], 1)), 'shift and a drag do not move it');
  },

  async explode({ page }, must) {
    const slider = page.getByLabel('open', { exact: true });
    await slider.focus();
    await page.keyboard.press('End');
    await settle(page);
    const open = await page.evaluate(() => viewer.state.pieces.map((p) => {
      const by = [0, 0, 0];
      for (const [, ...d] of p.piece.moves) d.forEach((v, k) => { by[k] += v; });
      return { name: p.key, want: by.map((v, k) => v + p.at[k] + p.piece.origin[k]), got: viewer.state.frame(p).o };
    }));
    for (const { name, want, got } of open) must(want.every((v, k) => near(v, got[k], 1e-6)), `${name} is at ${got}, opened ${want}`);
    const said = await page.locator('.dw-step').textContent();
    must(/^(\d+) of \1: /.test(said), `it says ${said}`);
    await page.keyboard.press('Home');
    await settle(page);
    must(await page.locator('.dw-step').textContent() === 'closed', 'it is not closed again');
  },

  async assembly({ page }, must, job) {
    const named = (name) => page.getByRole('button', { name, exact: true });
    const [back, next, play, stop] = ['Back', 'Next', 'Play', 'Stop'].map(named);
    const told = () => page.locator('.dw-told [aria-live="polite"]').textContent();
    const off = async (e) => await e.getAttribute('aria-disabled') === 'true';
    const focused = () => page.evaluate(() => document.activeElement.textContent);
    const rest = async () => {
      await page.waitForFunction(() => viewer.assembly.frame === 0);
      await settle(page);
    };
    await page.evaluate(() => viewer.show(viewer.state.data.groups.findIndex((g) => g.boxes.length === 1)));
    await settle(page);
    const steps = await page.evaluate(() => viewer.state.steps()), n = steps.length;
    must(n > 5 && await off(back) && !await off(next) && await told() === '', `${n} steps, at first it says ${await told()}`);
    // How the box stands: how far open, which pieces, what of them and of marks is seen, and where labels are.
    const stands = () => page.evaluate(() => {
      const { state, painter: { gl }, canvas, theme } = viewer;
      const all = new Uint8Array(4 * canvas.width * canvas.height), seen = {};
      gl.readPixels(0, 0, canvas.width, canvas.height, gl.RGBA, gl.UNSIGNED_BYTE, all);
      for (const kind of ['glue', 'steel']) {
        seen[kind] = 0;
        for (let i = 0; i < all.length; i += 4) if (theme[kind].every((v, k) => Math.abs(255 * v - all[i + k]) < 3)) seen[kind]++;
      }
      const low = document.querySelector('.dw-told').getBoundingClientRect().top;
      const under = [...document.querySelectorAll('.dw-letters span:not([hidden])')].filter((e) => e.getBoundingClientRect().bottom > low).length;
      return { ...seen, under, opened: state.opened * state.data.boxes[state.group.boxes[0]].opening.length, first: Math.min(...state.shown().flatMap((p) => p.piece.moves.slice(0, 1).map(([step]) => step))), cues: [...document.querySelectorAll('.dw-legend > span')].map((e) => e.textContent).join() };
    });
    await next.focus();
    for (const [i, step] of steps.entries()) {
      await page.keyboard.press('Enter');
      await rest();
      must(await told() === `${i + 1} of ${n}: ${step.text}`, `step ${i + 1} says ${await told()}`);
      must(job.printed.includes(step.text.replace(/\s/g, '')), `the packet does not say ${step.text}`);
      const now = await stands(), glue = Boolean(step.glue), clamps = Boolean(step.clamps);
      must(near(now.opened, step.open, 1e-6) && now.first >= step.from, `step ${i + 1} stands open by ${now.opened}, with what comes off in ${now.first}`);
      must(now.glue > 50 === glue && now.cues.startsWith('glue: ') === glue, `step ${i + 1} has ${now.glue} dots of glue, and says ${now.cues}`);
      must(now.steel > 50 === clamps && now.cues.startsWith('clamps') === clamps, `step ${i + 1} has ${now.steel} dots of clamps, and says ${now.cues}`);
      must(now.under === 0, `step ${i + 1}: ${now.under} labels stand under the words`);
      must(await focused() === 'Next', `the focus went to ${await focused()}`);
      if (glue) for (const f of await faults(page)) must(false, f);
    }
    must(await off(next), 'after the last step there is a next one');
    await page.keyboard.press('Enter');
    must((await told()).startsWith(`${n} of `), 'it goes on after the last step');
    // Other data of the job keep the step and the focus, and show all of a box that is wider.
    await page.evaluate(() => viewer.assembly.by(-viewer.state.step + 2));
    await rest();
    const [kept, closer, whole] = await page.evaluate(() => {
      const other = structuredClone(viewer.state.data), { scale } = viewer.state.camera;
      const p = other.boxes[viewer.state.group.boxes[0]].pieces[0];
      p.name += ' again';
      p.origin[0] -= 300;
      viewer.update(other);
      const now = viewer.state.camera.scale;
      viewer.state.fit();
      return [viewer.state.step, scale / now, now === viewer.state.camera.scale];
    });
    must(kept === 2 && await focused() === 'Next' && closer > 1.1 && whole, `another box: step ${kept + 1}, focus on ${await focused()}, ${closer} times as near before`);
    // Played, it moves, stands still while words are read, and stops at the end.
    await page.evaluate(() => viewer.assembly.by(viewer.assembly.last() - 2 - viewer.state.step));
    await rest();
    await play.click();
    await page.waitForFunction((last) => viewer.state.step === last, n - 1);
    await page.waitForFunction(() => viewer.state.opened === viewer.state.openAt());
    await settle(page);
    const drawn = await page.evaluate(() => viewer.frames.drawn);
    await page.waitForTimeout(300);
    must(await stop.count() === 0 || await page.evaluate(() => viewer.frames.drawn) === drawn, 'it draws while nothing moves');
    await page.waitForFunction(() => !viewer.assembly.playing);
    await settle(page);
    must(await play.count() === 1 && await focused() === 'Play' && await page.evaluate(() => viewer.assembly.frame) === 0, `at the end the button says ${await focused()}`);
    await play.click();
    await stop.click();
    await settle(page);
    must((await told()).startsWith('1 of ') && await play.count() === 1, `stopped, it says ${await told()}`);
    const jump = () => page.evaluate(() => {
      viewer.assembly.by(1 - viewer.state.step);
      viewer.assembly.by(1);
      return viewer.state.opened === viewer.state.openAt();
    });
    must(!await jump(), 'pieces do not move, they jump');
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await settle(page);
    must(await jump(), 'pieces move where no motion is wanted');
    must(!await play.isVisible() && await next.isVisible(), 'it plays where no motion is wanted');
    await page.emulateMedia({ reducedMotion: 'no-preference' });
    // Before the first step, and opened by hand, the box is that of before.
    for (let i = 0; i < 3; i++) await back.click();
    await rest();
    must(await told() === '' && await off(back) && await page.evaluate(() => viewer.state.closed()), `back at the beginning it says ${await told()}`);
    await page.locator('canvas').focus();
    await page.keyboard.press('.');
    must(await page.evaluate(() => viewer.state.step) === 0, 'a key does not begin');
    await page.keyboard.press(']');
    await settle(page);
    must(await told() === '' && await page.locator('.dw-step').isVisible(), 'opened by hand, it tells a step of assembly');
  },

  async section({ page }, must) {
    const axis = page.locator('label', { hasText: 'cut' }).locator('select');
    await axis.selectOption({ label: 'bottom to top' });
    await settle(page);
    const place = page.getByLabel(/from the start/);
    const half = await page.evaluate(() => {
      const p = viewer.state.pieces.find((q) => q.part.role === 'side');
      const middle = p.at[2] + p.piece.origin[2] + p.part.width / 2;
      return (middle - viewer.state.low[2]) / (viewer.state.data.unit === 'in' ? 25.4 : 1);
    });
    await place.fill(String(half));
    await place.press('Enter');
    await settle(page);
    // In the middle of every side's wood, between its pockets, the cut shows as a mixture
    // of its color and the ground.
    const at = await page.evaluate(() => viewer.state.pieces.filter((p) => p.part.role === 'side').map((p) => {
      const f = viewer.state.frame(p), { length, thickness } = p.part, { axis, at } = viewer.state.section;
      const q = f.o.map((v, k) => v + 0.37 * length * f.x[k] + 0.5 * thickness * f.z[k]);
      q[axis] = at;
      const low = p.piece.origin[2] + p.at[2];
      const [x, y] = viewer.state.camera.project(q);
      return { cut: at > low + 1 && at < low + p.part.width - 1, key: p.key, x: x * viewer.dots, y: y * viewer.dots };
    }).filter((p) => p.cut));
    must(at.length > 0, 'no side is cut');
    const color = await page.evaluate(() => viewer.theme.of({ role: 'side' }).map((v, k) => 255 * (v + 0.45 * (viewer.theme.ground[k] - v))));
    const { around } = await dots(page, at.map((p) => [p.x, p.y]));
    around.forEach((found, i) => must(found.some((c) => c.every((v, k) => near(v, color[k], 3))), `${at[i].key} has no closed cut at ${at[i].x}, ${at[i].y}: ${found[40]}`));
    const closed = await dots(page);
    await page.getByRole('button', { name: 'Other side' }).click();
    await settle(page);
    must((await dots(page)).sum !== closed.sum, 'the other side looks the same');
    await axis.selectOption({ label: 'none' });
  },

  async measures({ page }, must) {
    // A click on the picture chooses what is seen there, and the tables have its numbers.
    const { x, y, want } = await page.evaluate(() => {
      viewer.show(viewer.state.data.groups.length - 1);
      const p = viewer.state.pieces.find((q) => q.piece.name === 'right side');
      const f = viewer.state.frame(p), { length, width } = p.part;
      const q = f.o.map((v, k) => v + 0.5 * length * f.x[k] + 0.5 * width * f.y[k]);
      const [x, y] = viewer.state.camera.project(q), r = viewer.canvas.getBoundingClientRect();
      return { x: x + r.left, y: y + r.top, want: { ...p.part, unit: viewer.state.data.unit } };
    });
    await page.mouse.click(x, y);
    await settle(page);
    must(await page.locator('.dw-piece[aria-pressed="true"]').textContent().then((t) => t.includes('right side')), 'the right side is not chosen');
    const mm = want.unit === 'in' ? 25.4 : 1;
    const number = (t) => Number(t) * mm;
    const row = await page.locator('table').first().locator('tbody tr').first().locator('th, td').allTextContents();
    [want.length, want.width, want.thickness].forEach((v, i) => must(near(number(row[i]), v, 0.02), `the table has ${row[i]}, the part ${v} mm`));
    const rows = await page.locator('table').nth(1).locator('tbody tr').count();
    must(rows === want.pockets.length && rows > 0, `${rows} pockets of ${want.pockets.length}`);
    for (let i = 0; i < rows; i++) {
      const cells = await page.locator('table').nth(1).locator('tbody tr').nth(i).locator('th, td').allTextContents();
      const k = want.pockets[i];
      must(cells[0].startsWith(k.kind) && near(number(cells[1]), k.at[0], 0.02) && near(number(cells[2]), k.at[1], 0.02) && (k.through || near(number(cells[4]), k.depth, 0.02)), `pocket ${i} is ${cells}, should be ${JSON.stringify(k)}`);
      const sizes = cells[3].split(' × ').map(number);
      must(near(sizes[0], k.size[0], 0.02) && near(sizes[1], k.size[1], 0.02), `pocket ${i} is ${cells[3]}`);
    }
    await page.locator('table').nth(1).getByRole('button').first().click();
    await settle(page);
    must(await page.locator('.dw-measure:not([hidden])').count() >= 4, 'no dimensions in the picture');
    // Only it, then all again.
    await page.getByRole('button', { name: 'show only right side' }).click();
    must(await page.evaluate(() => viewer.state.shown().length) === 1, 'more than one part is shown');
    await page.getByRole('button', { name: 'show all parts' }).click();
    must(await page.evaluate(() => viewer.state.shown().length === viewer.state.pieces.length), 'parts stay hidden');
  },

  async plays({ page }, must) {
    const n = await page.evaluate(() => {
      const i = viewer.state.data.groups.findIndex((g) => g.boxes.length === 1 && viewer.state.data.boxes[g.boxes[0]].plays.length > 0);
      if (i >= 0) viewer.show(i);
      return i;
    });
    if (n < 0) return { plays: 0 };
    await page.locator('summary', { hasText: 'Clearance' }).click();
    const first = page.locator('details', { hasText: 'Clearance in the joints' }).getByRole('button').first();
    await first.click();
    await settle(page);
    must(await page.locator('.dw-play:not([hidden])').count() > 0, 'no clearance is named in the picture');
    const scaled = await dots(page);
    await page.locator('summary', { hasText: 'Display' }).click();
    await page.getByLabel(/clearance drawn 10 times/).check();
    await settle(page);
    must((await dots(page)).sum !== scaled.sum, 'exaggerated, the picture is the same');
    must((await page.locator('.dw-play:not([hidden])').first().textContent()).endsWith('× 10'), 'exaggerated, the number does not say so');
    return { plays: await page.evaluate(() => viewer.state.data.boxes[viewer.state.group.boxes[0]].plays.length) };
  },

  // A box of any boards and any numbered errors: lengths and verdicts are those of the data, the picture has them, a
  // joint closes as far as it goes, and what is drawn larger is told.
  async measured({ page }, must) {
    const found = await page.evaluate(() => {
      const i = viewer.state.data.groups.findIndex((g) => g.boxes.length === 1 && viewer.state.data.boxes[g.boxes[0]].joints.length > 0);
      if (i >= 0) viewer.show(i);
      return i;
    });
    const tools = page.getByRole('group', { name: 'As measured' });
    must(await tools.isVisible() === found >= 0, 'boards are chosen where nothing is known of them, or not where it is');
    if (found < 0) return { joints: 0 };
    const fold = page.getByRole('button', { name: 'As measured', exact: true });
    await fold.click();
    must(!await tools.isVisible() && await fold.getAttribute('aria-expanded') === 'false', 'the choices do not fold away');
    await fold.click();
    const boards = tools.locator('select'), machine = tools.getByLabel('machine', { exact: true });
    const choose = async (level, number) => {
      await boards.selectOption(level);
      await machine.fill(String(number));
      await settle(page);
    };
    // What a choice makes of each clearance, worked out from the data once more.
    const worked = (level, number) => page.evaluate(([level, number]) => {
      const { data, group } = viewer.state, box = data.boxes[group.boxes[0]], at = ['least', 'mean', 'most'].indexOf(level);
      const off = (k) => (k in data.draws ? (number && box.off[k][0] * data.draws[k][number - 1] + box.off[k][1]) : [box.off[k][0], 0, box.off[k][1]][at]);
      const sum = (f, by) => f.at + f.by.reduce((v, [k, times]) => v + times * by(k), 0) + (f.bends ?? []).reduce((v, b) => v + b.times * Math.min(sum(b.a, by), sum(b.b, by)), 0);
      return box.plays.map((p, i) => [p, i]).filter(([p]) => p.measure).map(([p, i]) => {
        const j = box.joints.find((k) => k.name === p.measure), n = j.verdicts.length / 3;
        const whole = sum(j.clearance, off), as = sum(j.clearance, () => 0);
        return { i, name: p.name, clearance: whole * Math.round(10 * p.play / as) / 10, slot: j.slot && !p.open && sum(j.slot, off), tongue: j.tongue && sum(j.tongue, off), ...j.said[j.verdicts[at * n + number]] };
      });
    }, [level, number]);
    const { unit, ease } = await page.evaluate(() => viewer.state.data), mm = unit === 'in' ? 25.4 : 1, by = unit === 'in' ? 0.014 : 0.0051;
    const number = (text) => mm * Number(text.match(/-?[\d.]+/)[0]);
    const list = page.locator('details', { hasText: 'Clearance in the joints' });
    await page.locator('summary', { hasText: 'Clearance' }).click();
    const listed = () => list.locator('tbody tr td').allTextContents();
    const seen = [];
    for (const [level, n] of [['least', 0], ['mean', 1], ['most', 7], ['least', 50], ['most', 0], ['most', 7]]) {
      await choose(level, n);
      const [rows, want] = [await listed(), await worked(level, n)];
      must(rows.length === want.length && rows.length > 0, `${rows.length} rows, ${want.length} clearances`);
      want.forEach((w, k) => must(near(number(rows[k]), w.clearance, by) && rows[k].endsWith(w.words) && rows[k].startsWith(w.sign) === (w.state !== 'right'), `${level}, box ${n}: ${w.name} is ${rows[k]}, worked out ${w.clearance}, ${w.words}`));
      must(await list.getByText(`Boards at the ${level} of their readings, the machine ${n ? `with the errors of box ${n}` : 'as set'}`).count() === 1, 'the list does not say of what it is');
      seen.push(rows.join());
    }
    await page.locator('summary', { hasText: 'Clearance' }).click(); // its list lies over tools
    must(seen[2] === seen[5] && new Set(seen).size > 2, `one choice gives ${seen[2]}, then ${seen[5]}`);
    // How wide the gap is in the solids that are drawn: from wood to wood on a line through it.
    const gap = (i) => page.evaluate((i) => {
      const { state } = viewer, play = state.data.boxes[state.group.boxes[0]].plays[i], k = play.axis, [u, v] = [(k + 1) % 3, (k + 2) % 3];
      const spot = (axis, part) => play.low[axis] + part * (play.high[axis] - play.low[axis]) + state.group.at[0][axis];
      const at = [spot(u, 0.37), spot(v, 0.43)], middle = spot(k, 0.5);
      const met = (order) => {
        const p = state.pieces[order], { places, corners } = state.solid(p), out = [];
        const q = (c) => p.piece.x.map((_, m) => {
          const z = [p.piece.x[1] * p.piece.y[2] - p.piece.x[2] * p.piece.y[1], p.piece.x[2] * p.piece.y[0] - p.piece.x[0] * p.piece.y[2], p.piece.x[0] * p.piece.y[1] - p.piece.x[1] * p.piece.y[0]];
          return state.group.at[0][m] + p.piece.origin[m] + p.piece.x[m] * places[3 * c] + p.piece.y[m] * places[3 * c + 1] + z[m] * places[3 * c + 2];
        });
        for (let t = 0; t < corners.length; t += 3) {
          const [a, b, c] = [0, 1, 2].map((n) => q(corners[t + n]));
          const turn = (p1, p2) => (p2[u] - p1[u]) * (at[1] - p1[v]) - (p2[v] - p1[v]) * (at[0] - p1[u]);
          const [x, y, z] = [turn(b, c), turn(c, a), turn(a, b)], all = x + y + z;
          if (all !== 0 && x / all > 0 && y / all > 0 && z / all > 0) out.push((x * a[k] + y * b[k] + z * c[k]) / all);
        }
        return out;
      };
      const near = (list) => list.reduce((best, x) => (Math.abs(x - middle) < Math.abs(best - middle) ? x : best), Infinity);
      return (near(met(play.of)) - near(met(play.in))) * (play.up ? 1 : -1);
    }, i);
    const joints = (await worked('most', 7)).filter((w, i, all) => all.findIndex((o) => o.words === w.words && Boolean(o.slot) === Boolean(w.slot)) === i);
    const told = page.locator('.dw-joint'), scale = page.locator('.dw-scale'), letters = () => page.locator('.dw-letters span:not([hidden])').allTextContents();
    const move = page.getByRole('button', { name: /^(Take apart|Close joint)$/ }), rest = () => page.waitForFunction(() => viewer.measured.frame === 0);
    const apart = () => page.evaluate(() => viewer.state.joint.apart);
    for (const [level, n] of [['most', 7], ['least', 3]]) {
      const want = await worked(level, n);
      await choose(level, n);
      for (const { i } of joints) {
        const w = want.find((o) => o.i === i);
        await page.evaluate((i) => viewer.goTo(viewer.state.data.boxes[viewer.state.group.boxes[0]].plays[i]), i);
        await settle(page);
        must(await scale.textContent() === 'true to scale', `the picture says ${await scale.textContent()}`);
        const drawn = await gap(i);
        must(near(drawn, w.clearance, 0.004), `${w.name} of ${w.clearance} is drawn ${drawn} wide`);
        const [said, marks] = [await told.textContent(), await letters()];
        must(said.startsWith(`${w.name}: `) && said.includes(w.words) && said.includes('stops') === Boolean(w.jams), `of ${w.name}, ${w.words}, it says ${said}`);
        if (w.slot) {
          const [slot, tongue] = ['dado|groove|notch', 'tongue|back|bottom|divider|finger'].map((names) => marks.find((t) => new RegExp(`^(${names}) [\\d.]+$`).test(t)));
          must(slot && tongue && near(number(slot), w.slot, by) && near(number(tongue), w.tongue, by), `slot ${w.slot} and tongue ${w.tongue} are marked ${slot}, ${tongue}`);
        }
        if (w.state !== 'right') must(marks.some((t) => t.startsWith(`${w.sign} `) && t.endsWith(w.words) && near(number(t), w.clearance, by)), `${w.words} stands nowhere in ${marks}`);
        const cut = await page.evaluate((i) => {
          const { in: a, of } = viewer.state.data.boxes[viewer.state.group.boxes[0]].plays[i];
          return [a, of].map((k) => String(viewer.state.pieces[k].number));
        }, i);
        must(cut.every((text) => marks.includes(text)), `of the cut parts ${cut} some have no number: ${marks}`);
        // Closed it is home, or at the slot's mouth.
        const end = w.jams ? 1 : 0;
        must(await apart() === end, `${w.name} stands ${await apart()} apart, ${w.words}`);
        await move.click();
        await rest();
        must(await apart() > 1, 'it does not come apart');
        must((await apart()) > end && await move.textContent() === 'Close joint', 'it cannot be closed again');
        const jump = await page.evaluate(() => {
          viewer.measured.press();
          return viewer.state.joint.apart;
        });
        must(jump > 1, 'it does not move, it jumps');
        await rest();
        must(await apart() === end, `closed, ${w.name} stands ${await apart()} apart, ${w.words}`);
        await page.evaluate(() => viewer.mark('exaggerated', true));
        await settle(page);
        const larger = await gap(i);
        must(w.clearance > 0.5 /* too little wood for it */ || near(larger, w.clearance * (w.clearance > 0 ? ease : 1), 0.004 * ease) && (await scale.textContent()).includes(`× ${ease}`), `${ease} times ${w.clearance} is drawn ${larger} wide, and the picture says ${await scale.textContent()}`);
        await page.evaluate(() => viewer.mark('exaggerated', false));
      }
    }
    for (const f of await faults(page)) must(false, f);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    const still = await page.evaluate(() => {
      viewer.measured.press();
      return [viewer.state.joint.apart, viewer.measured.frame];
    });
    must(still[0] > 1 && still[1] === 0, `where no motion is wanted it stands at ${still}`);
    await page.emulateMedia({ reducedMotion: 'no-preference' });
    await page.evaluate(() => {
      viewer.measured.press();
      viewer.escape(); // while it moves
    });
    await settle(page);
    must(await page.evaluate(() => viewer.measured.frame) === 0 && !await move.isVisible(), 'a joint that is left moves on');
    // Other data keep the choice.
    must(await page.evaluate(() => {
      viewer.update(structuredClone(viewer.state.data));
      return viewer.state.boards === 0 && viewer.state.draw === 3;
    }), 'an update loses the choice');
    return { joints: joints.length, jammed: joints.filter((w) => w.jams).length };
  },

  // Drawers of an opening are pulled out and stop; what is free is listed, and drawn where asked for;
  // what collides is red and named.
  async pull({ page }, must) {
    const carcass = () => page.evaluate(() => viewer.state.group.carcass);
    const c = await carcass(), slider = page.getByLabel('pull', { exact: true });
    must(await slider.count() === (c ? 1 : 0), 'a slider pulls where no opening is, or none where one is');
    if (!c) return { pulled: 0 };
    const front = () => page.evaluate(() => {
      const p = viewer.state.pieces.find((q) => q.boxIndex === 0 && q.part.role === 'drawer-front'), f = viewer.state.frame(p), r = viewer.canvas.getBoundingClientRect();
      const at = f.o.map((v, k) => v + 0.8 * p.part.length * f.x[k] + 0.2 * p.part.width * f.y[k] + f.z[k] * p.part.thickness);
      const [x, y] = viewer.state.camera.project(at), [ahead] = [viewer.state.camera.project([at[0], at[1] - 100, at[2]])];
      return { y: f.o[1], at: [x + r.left, y + r.top], step: [ahead[0] - x, ahead[1] - y], key: p.key };
    });
    const closed = await front(), before = await dots(page);
    await slider.focus();
    await page.keyboard.press('End');
    await settle(page);
    const out = await front();
    must(near(closed.y - out.y, c.travel[0], 1e-6), `the first drawer is out by ${closed.y - out.y}, its slides go ${c.travel[0]}`);
    must((await dots(page)).sum !== before.sum, 'pulled out, the picture is the same');
    const off = await page.evaluate(() => {
      const { data, group: { at: [[x, y, z]], boxes: [b], carcass }, camera } = viewer.state, { name, size: [w, h] } = data.boxes[b];
      const told = [...document.querySelectorAll('.dw-name:not([hidden])')].some((l) => l.textContent === name);
      const at = camera.project([x + w / 2, y - carcass.travel[0], z + h / 2]);
      return told ? Math.hypot(...viewer.marks.letters.asked.find((a) => a.text === name).from.map((v, k) => v - at[k])) : NaN;
    });
    must(near(off, 0, 0.1), `the drawer's name belongs ${off} dots beside it`);
    must(await page.evaluate(() => viewer.state.outlines().some((o) => o.motion === 'runs' && o.box === 0 && o.high[1] - o.low[1] > 1.9 * viewer.state.group.carcass.travel[0])), 'the slides stay');
    await page.keyboard.press('Home');
    await settle(page);
    // Its front, chosen and dragged, takes it along: 100 mm, then far beyond the stop.
    await page.evaluate((key) => viewer.choose(key), closed.key);
    const drag = async (n) => {
      const { at, step } = await front();
      await page.mouse.move(...at);
      await page.mouse.down();
      await page.mouse.move(at[0] + n * step[0], at[1] + n * step[1], { steps: 3 });
      await page.mouse.up();
      await settle(page);
      return closed.y - (await front()).y;
    };
    const by = await drag(1), end = await drag(50);
    must(near(by, 100, 1) && near(end, c.travel[0], 1e-6), `dragged by 100 mm and far beyond, it is out by ${by} and ${end}`);
    await page.evaluate(() => {
      viewer.choose(null);
      viewer.pull(viewer.state.puller, 0);
    });
    await page.locator('summary', { hasText: 'Clearance' }).click();
    await settle(page);
    const list = page.locator('details', { hasText: 'Clearance in the opening' });
    must(await list.locator('tbody tr').count() === c.clearances.length + c.collisions.length, 'the list is not that of the data');
    must(await list.locator('strong', { hasText: '✕' }).count() === c.collisions.length, 'not all that collides is listed');
    const { name, gap } = c.clearances.find((k) => k.name.startsWith('above'));
    await list.getByRole('button', { name, exact: true }).click();
    await settle(page);
    const said = await page.locator('.dw-play:not([hidden])').allTextContents(), unit = await page.evaluate(() => viewer.state.data.unit);
    must(said.some((t) => t.startsWith(`${name}: `) && near(parseFloat(t.slice(name.length + 2)) * (unit === 'in' ? 25.4 : 1), gap, 0.02)), `of ${name}, ${gap} mm, the picture says ${said}`);
    const bad = await page.locator('.dw-collision:not([hidden])').allTextContents();
    must(bad.length > 0 === c.collisions.length > 0 && bad.every((t) => t.startsWith('✕ ') && c.collisions.some((k) => t.includes(k.name))), `it says ${bad} of ${c.collisions.length} collisions`);
    must((await page.locator('strong.dw-bad', { hasText: 'collide' }).count() > 0) === c.collisions.length > 0, 'beside the picture it is not said');
    if (bad.length > 0) {
      const [spot] = await page.evaluate(() => viewer.state.group.carcass.collisions.slice(0, 1).map((k) => viewer.state.camera.project(k.low.map((v, i) => (v + k.high[i]) / 2)).map((v) => v * viewer.dots)));
      const { around } = await dots(page, [spot]);
      must(around[0].some((d) => d[0] > d[1] + 60), `what collides is not red: ${around[0][40]}`);
    }
    const drawn = await page.evaluate(() => viewer.frames.drawn);
    await page.waitForTimeout(300);
    must(await page.evaluate(() => viewer.frames.drawn) === drawn, 'it draws while nothing changes');
    return { pulled: c.travel.length };
  },

  async milled({ page }, must) {
    const parts = await page.evaluate(() => viewer.state.data.parts.filter((p) => p.milled !== p.mesh).length);
    await page.locator('summary', { hasText: 'Display' }).click();
    const shown = page.getByLabel(/as milled/);
    must(await shown.count() === (parts > 0 ? 1 : 0), `${parts} parts are milled, and ${await shown.count()} checks show them`);
    if (parts === 0) return { milled: 0 };
    const corners = () => page.evaluate(() => viewer.state.pieces.reduce((n, p) => n + viewer.state.solid(p).corners.length, 0));
    await page.evaluate(() => {
      viewer.mark('exaggerated', false);
      viewer.open(1);
    });
    await settle(page);
    const round = await corners(), before = await dots(page);
    must(await shown.isChecked(), 'parts are not shown as milled at first');
    await shown.uncheck();
    await settle(page);
    must(await corners() < round && (await dots(page)).sum !== before.sum, 'as designed, the picture is the same');
    await shown.check();
    await page.evaluate(() => viewer.open(0));
    return { milled: parts };
  },

  async overlaps({ page }, must, job) {
    const found = await page.locator('strong.dw-bad').count();
    must((found > 0) === job.overlaps, `it says ${found ? '' : 'not '}that parts overlap`);
    const bad = await page.evaluate(() => viewer.theme.bad.map((v) => 255 * v));
    const at = await page.evaluate(() => viewer.state.data.boxes[0].overlaps.slice(0, 1).map((o) => viewer.state.camera.project(o.low.map((v, k) => (v + o.high[k]) / 2 + viewer.state.group.at[0][k])).map((v) => v * viewer.dots)));
    const { around } = await dots(page, at);
    for (const dots of around) must(dots.some((c) => c[0] > c[1] + 60 && near(c[0], bad[0], 60)), `the overlap is not colored: ${dots[40]}`);
  },

  async keys({ page }, must) {
    const stops = [];
    await page.evaluate(() => document.activeElement.blur());
    for (let i = 0; i < 400; i++) {
      await page.keyboard.press('Tab');
      const stop = await page.evaluate(() => {
        const e = document.activeElement;
        if (e === document.body) return null;
        const name = e.getAttribute('aria-label') || e.labels?.[0]?.textContent || e.textContent;
        return { tag: e.tagName, name: name.trim(), outline: getComputedStyle(e).outlineStyle, top: e.getBoundingClientRect().top };
      });
      if (stop === null) break;
      stops.push(stop);
    }
    must(stops[0]?.name === 'corner', `the first stop is ${stops[0]?.name}`);
    must(stops.filter((s) => s.tag === 'CANVAS').length === 1, 'the picture is no stop');
    const all = await page.evaluate(() => [...document.querySelectorAll('canvas, button, input, select, summary')].filter((e) => e.checkVisibility({ visibilityProperty: true }) && e.getClientRects().length > 0).length);
    must(stops.length === all, `${stops.length} stops for ${all} controls`);
    for (const s of stops) must(s.name !== '' && s.outline !== 'none', `a stop ${s.tag} with the name "${s.name}" and outline ${s.outline}`);
    await page.locator('canvas').focus();
    const state = () => page.evaluate(() => ({ left: viewer.state.camera.left, scale: viewer.state.camera.scale, opened: viewer.state.opened, chosen: viewer.state.chosen, hidden: viewer.state.hidden.size, at: viewer.state.camera.at }));
    const was = await state();
    for (const k of ['ArrowRight', '+', 'n', 'h', ']']) await page.keyboard.press(k);
    const now = await state();
    must(near(now.left, was.left + 5, 1e-9) && now.chosen !== null && now.hidden === 1 && now.opened > was.opened, `keys made ${JSON.stringify(now)} of ${JSON.stringify(was)}`);
    await page.keyboard.press('Shift+ArrowRight');
    must((await state()).at.some((v, k) => !near(v, now.at[k], 1e-6)), 'shift and an arrow do not move it');
    for (const k of ['[', '[', 'h', 'Escape', '0']) await page.keyboard.press(k);
    const end = await state();
    must(end.chosen === null && end.hidden === 0 && end.opened === 0, `keys left ${JSON.stringify(end)}`);
    return { stops: stops.length };
  },

  async theme({ page }, must) {
    const ground = () => page.evaluate(() => getComputedStyle(document.querySelector('.dw-viewer')).backgroundColor);
    const light = await ground();
    await page.emulateMedia({ colorScheme: 'dark' });
    const dark = await ground();
    must(light !== dark, 'dark is as light');
    must((await faults(page)).length === 0, `dark: ${await faults(page)}`);
    must(await page.locator('.dw-panel').getByRole('button', { name: 'light or dark' }).count() === 0, 'the switch stands among the marks');
    await page.getByRole('button', { name: 'light or dark' }).click();
    must(await ground() === light, 'the switch does not go before the system');
    await page.emulateMedia({ colorScheme: 'light' });
  },

  // By the wood, boards of one stock have one color, which those of another have not.
  async woods({ page }, must) {
    const { stocks, roles } = await page.evaluate(() => viewer.state.data);
    const used = await page.evaluate(() => [...new Set(viewer.state.data.parts.map((p) => p.stock))]);
    must(used.length > 1 && new Set(used.map((s) => stocks[s]?.light)).size === used.length, `the stocks ${used} have the colors ${JSON.stringify(stocks)}`);
    const shown = () => page.evaluate(() => viewer.state.data.parts.map((p) => viewer.theme.of(p, viewer.state.marks.woods).map((v) => Math.round(255 * v).toString(16).padStart(2, '0')).join('')));
    const wanted = (by) => page.evaluate((by) => viewer.state.data.parts.map((p) => p[by]), by);
    const same = async (by, tints) => (await shown()).every((c, i) => `#${c}` === tints[by[i]].light);
    must(await same(await wanted('role'), roles), 'at first parts have other colors than their roles');
    const before = await dots(page);
    await page.locator('summary', { hasText: 'Display' }).click();
    await page.getByLabel(/colors of the boards/).check();
    await settle(page);
    must(await same(await wanted('stock'), stocks), 'boards have other colors than their stocks');
    must((await dots(page)).sum !== before.sum, 'by the wood, the picture is the same');
  },

  // Controls that are made anew leave the focus on the one that had it.
  async focus({ page }, must) {
    const now = () => page.evaluate(() => {
      const e = document.activeElement;
      return `${e.tagName} ${e.getAttribute('aria-label') ?? e.closest('label')?.firstChild.textContent ?? e.textContent}`;
    });
    const anew = async (what, act) => {
      const before = await now();
      await act();
      await settle(page);
      must(await now() === before, `${what}: the focus was on ${before}, is on ${await now()}`);
    };
    const groups = page.locator('aside select, .dw-controls select').first(), names = await groups.locator('option').count();
    await groups.focus();
    for (const i of [names - 1, 0]) await anew(`group ${i}`, () => groups.selectOption(String(i)));
    const without = () => page.evaluate(() => viewer.update({ ...viewer.state.data, boxes: viewer.state.data.boxes.map((b) => ({ ...b, plays: b.plays.length > 0 ? [] : [{ name: 'x', play: 1, axis: 0, along: 0, low: [0, 0, 0], high: [1, 1, 1] }] })) }));
    for (const name of ['Parts', 'show all parts', 'light or dark']) {
      await page.getByRole('button', { name, exact: true }).focus();
      await anew('another shape', without);
    }
    const pocket = await page.evaluate(() => {
      const p = viewer.state.pieces.find((q) => q.part.pockets.length > 1);
      if (p) viewer.choose(p.key);
      return p?.part.pockets.length;
    });
    if (!pocket) return;
    const last = page.locator('table').nth(1).getByRole('button').nth(pocket - 1);
    await last.focus();
    await page.keyboard.press('Enter');
    await anew('the same shape', () => page.evaluate(() => viewer.update(structuredClone(viewer.state.data))));
    must(await last.evaluate((e) => e === document.activeElement && e.getAttribute('aria-pressed') === 'true'), 'another pocket has the focus, or none is chosen');
  },

  // What changes stays in sight whole, unless a person looks at one place of it.
  async refit({ page }, must) {
    const out = () => page.evaluate(() => {
      const { state, state: { camera } } = viewer, axes = camera.axes();
      const [low, high] = state.bounds(state.opened, state.shown());
      return [0, 1, 2, 3, 4, 5, 6, 7].map((i) => camera.project([0, 1, 2].map((k) => (i >> k & 1 ? high : low)[k]), axes)).some(([x, y]) => x < 0 || y < 0 || x > camera.width || y > camera.height);
    });
    const scale = () => page.evaluate(() => viewer.state.camera.scale);
    const larger = () => page.evaluate(() => viewer.update({ ...viewer.state.data, boxes: viewer.state.data.boxes.map((b) => ({ ...b, pieces: b.pieces.map((p) => ({ ...p, origin: p.origin.map((v) => 2 * v) })) })) }));
    const changes = { opened: () => viewer.open(1), closed: () => viewer.open(0), pulled: () => viewer.state.group.carcass && viewer.pull(viewer.state.puller, 1000) };
    for (const [what, change] of Object.entries(changes)) {
      await page.evaluate(change);
      must(!await out(), `${what}, something is out of the picture`);
    }
    await larger();
    await settle(page);
    must(!await out(), 'of another job something is out of the picture');
    await page.evaluate(() => viewer.state.camera.zoom(3));
    const near = await scale();
    for (const change of Object.values(changes)) await page.evaluate(change);
    must(await scale() === near, 'what a person looks at is left');
    await page.evaluate(() => viewer.fit());
    must(!await out(), '"all" does not show all');
  },

  async axe({ page }, must) {
    for (const f of await faults(page)) must(false, f);
    await page.locator('details').evaluateAll((all) => all.forEach((d) => { d.open = true; }));
    await page.evaluate(() => viewer.next(1));
    for (const f of await faults(page)) must(false, `unfolded: ${f}`);
  },

  async update({ page }, must) {
    const kept = await page.evaluate(async () => {
      viewer.next(1);
      viewer.state.camera.turn(13, 7);
      viewer.section(0);
      viewer.toggle(viewer.state.pieces.at(-1).key);
      const told = () => JSON.stringify([viewer.state.chosen, viewer.state.camera.left, viewer.state.camera.scale, viewer.state.section, [...viewer.state.hidden], viewer.state.groupName]);
      const before = told();
      const other = structuredClone(viewer.state.data);
      viewer.update(other);
      const same = told() === before;
      other.groups.forEach((g) => { g.name += ' again'; });
      viewer.update(structuredClone(other));
      await new Promise(requestAnimationFrame);
      return { same, anew: viewer.state.hidden.size === 0 && viewer.state.section.axis === -1 };
    });
    must(kept.same, 'an update loses what was set');
    must(kept.anew, 'a group that is gone leaves its settings');
    const gone = await page.evaluate(() => {
      viewer.destroy();
      return document.getElementById('viewer').outerHTML;
    });
    must(!gone.includes('dw-') && !gone.includes('<div'), `destroyed, it leaves ${gone}`);
  },
};

// A window as that of a phone, with fingers.
async function phone(browser, job, must) {
  const { context, page, heard } = await open(browser, job.page, { viewport: { width: 390, height: 780 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 });
  const size = await page.evaluate(() => ({ wide: document.documentElement.scrollWidth, canvas: viewer.canvas.getBoundingClientRect().toJSON() }));
  must(size.wide <= 390, `the page is ${size.wide} dots wide`);
  must(size.canvas.height > 250 && size.canvas.width > 350, `the picture is ${size.canvas.width} x ${size.canvas.height}`);
  const small = await page.locator('button:visible, select:visible, input:visible').evaluateAll((all) => all.filter((e) => (e.closest('label') ?? e).getBoundingClientRect().height < 24).map((e) => e.outerHTML.slice(0, 80)));
  must(small.length === 0, `too small for a finger: ${small}`);
  const touch = await context.newCDPSession(page);
  const points = (type, ...list) => touch.send('Input.dispatchTouchEvent', { type, touchPoints: list.map(([x, y], id) => ({ x, y, id })) });
  const camera = () => page.evaluate(() => ({ left: viewer.state.camera.left, scale: viewer.state.camera.scale }));
  const was = await camera();
  const y = size.canvas.y + 60;
  await points('touchStart', [150, y]);
  await points('touchMove', [200, y]);
  await points('touchEnd');
  const turned = await camera();
  must(turned.left > was.left + 5, `a finger turned it from ${was.left} to ${turned.left}`);
  await points('touchStart', [150, y], [200, y]);
  await points('touchMove', [110, y], [240, y]);
  await points('touchEnd');
  const pinched = await camera();
  must(pinched.scale > 1.5 * turned.scale, `two fingers zoomed from ${turned.scale} to ${pinched.scale}`);
  await page.evaluate(() => viewer.show(viewer.state.data.groups.findIndex((g) => g.boxes.length === 1)));
  for (let i = 0; i < 3; i++) await page.getByRole('button', { name: 'Next', exact: true }).tap();
  await page.waitForFunction(() => viewer.assembly.frame === 0);
  await page.emulateMedia({ colorScheme: 'dark' });
  const told = await page.locator('.dw-told').boundingBox(), picture = await page.locator('canvas').boundingBox();
  must(told.height > 40 && told.width <= 390 && told.y >= picture.y + picture.height - 1 && told.y + told.height <= 780 && picture.height > 240, `words of a step are ${told.width} x ${told.height} at ${told.y}, the picture ${picture.height} high`);
  for (const f of await faults(page)) must(false, f);
  heard.forEach((h) => must(false, h));
  await context.close();
}

// Without WebGL, and without scripts, pictures are shown.
async function pictures(browser, job, must, options) {
  const { context, page, heard } = await open(browser, job.page, options);
  const shown = await page.locator('figure svg').evaluateAll((all) => all.filter((e) => e.getBoundingClientRect().width > 100).length);
  must(shown === job.drawers, `${shown} pictures of ${job.drawers} drawers`);
  must(await page.getByText(/WebGL|script/).count() > 0, 'nobody says what to do');
  if (options.javaScriptEnabled !== false) for (const f of await faults(page)) must(false, f);
  heard.forEach((h) => must(false, h));
  await context.close();
}

// report makes a check of a page, if it is asked for, and prints what came of it.
async function report(job, check, act) {
  if (!job.checks.includes(check)) return;
  const wrong = [];
  let facts;
  try {
    facts = await act((good, text) => { if (!good) wrong.push(text); });
  } catch (error) {
    wrong.push(String(error.message ?? error).slice(0, 600));
  }
  console.log(JSON.stringify({ page: job.name, check, faults: wrong, facts: facts ?? {} }));
}

const jobs = await lines();
await browse(true, async (browser) => {
  for (const job of jobs) {
    for (const [name, check] of Object.entries(checks)) {
      await report(job, name, async (must) => {
        const opened = await open(browser, job.page);
        try { return await check(opened, must, job); } finally {
          opened.heard.forEach((h) => must(false, h));
          await opened.context.close();
        }
      });
    }
    await report(job, 'phone', (must) => phone(browser, job, must));
    await report(job, 'without scripts', (must) => pictures(browser, job, must, { javaScriptEnabled: false }));
  }
});
if (jobs.some((job) => job.checks.includes('without WebGL'))) {
  await browse(false, async (browser) => {
    for (const job of jobs) await report(job, 'without WebGL', (must) => pictures(browser, job, must, {}));
  });
}
