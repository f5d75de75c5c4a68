// Checks of viewer.mjs: keys, colors, focus and settings, and that anybody can use it.
import { dots, faults, near, settle } from './browser.mjs';

export const uses = {
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
