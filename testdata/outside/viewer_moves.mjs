// Checks of viewer.mjs: what a person turns, opens, cuts and puts together.
import { dots, faults, near, settle } from './browser.mjs';

export const moves = {
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
    await page.emulateMedia({ reducedMotion: 'reduce' }); // how they move is seen below, where it is played
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
    await page.emulateMedia({ reducedMotion: 'no-preference' });
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
};
