// Checks of viewer.mjs: sizes, clearances and verdicts, as the data have them and as they are drawn.
import { dots, faults, near, settle } from './browser.mjs';

export const sizes = {
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
    const move = page.getByRole('button', { name: /^(Take apart|Close joint)$/ });
    const rest = async () => {
      await page.waitForFunction(() => viewer.measured.frame === 0);
      await settle(page);
    };
    const apart = () => page.evaluate(() => viewer.state.joint.apart);
    for (const [level, n] of [['most', 7], ['least', 3]]) {
      const want = await worked(level, n);
      await choose(level, n);
      for (const { i } of joints) {
        const w = want.find((o) => o.i === i);
        const moves = i === joints[0].i; // the others jump, which is sooner seen
        await page.emulateMedia({ reducedMotion: moves ? 'no-preference' : 'reduce' });
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
        must(jump > 1 === moves, moves ? 'it does not move, it jumps' : 'it moves where no motion is wanted');
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
};
