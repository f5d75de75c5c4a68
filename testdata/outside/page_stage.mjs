// The page's layout, its picture and its lists, as a person finds them: on a large screen, on
// paper, on a phone. Prints a line for each thing that was tried (person.mjs).
import { join } from 'node:path';
import { writeFileSync } from 'node:fs';
import { accessible, attempt, done, field, file, folder, must, serve, source, tab, until } from './person.mjs';

const jobText = `# Bench drawers
units: mm
stock:
  birch: {thickness: [12.21, 12.16, 12.24], sheet: 1525 x 1525, grain: length}
  hard: {thickness: 5.9, sheet: 2440 x 1220}
cutter: {kind: saw, width: 6.35}
drawers:
  - name: wide
    outside: 460 x 140 x 500   # width x height x depth
    sides: birch
    bottom: hard
    dividers: [{direction: across, at: [120, 240], stock: hard}]
`;

const openingText = `units: mm
stock:
  birch: {thickness: [12.21, 12.16, 12.24]}
  hard: {thickness: 5.9}
cutter: {kind: saw, width: 6.35}
openings:
  base: {width: 564, height: 300, depth: 545, cabinet: frameless, fronts: overlay}
drawers:
  - name: tray
    opening: base
    slide: side-mount
    sides: birch
    bottom: hard
`;

const bench = file('stage.yaml', jobText);
const one = await serve(['view', bench.path]);
const page = await tab(one.address);
const still = (p) => p.evaluate(() => new Promise((done) => { let n = 4; const next = () => (n-- ? requestAnimationFrame(next) : done()); next(); }));
const size = (p, name) => p.locator('#picture').getByRole('button', { name: new RegExp(`^${name} of the box`) });
// inside is what of the picture is not wholly in it: dimensions and numbers.
const outside = (p) => p.evaluate(() => {
  const r = document.querySelector('.dw-stage').getBoundingClientRect();
  return [...document.querySelectorAll('.dw-size:not([hidden]), .dw-letters span:not([hidden])')].map((e) => [e.textContent, e.getBoundingClientRect()])
    .filter(([, b]) => b.left < r.left || b.right > r.right || b.top < r.top || b.bottom > r.bottom).map(([text]) => text);
});
// quiet fails where the page tells of an error.
const quiet = async (p) => must(!await p.locator('#notice').isVisible(), `the page tells ${await p.locator('#notice').textContent()}`);
const undo = async (p, text) => {
  while (await source(p) !== text) {
    const now = await source(p);
    await p.locator('#undo').click();
    await until('undone', async () => await source(p) !== now);
  }
};

await attempt('half the screen is the box', async () => {
  for (const [width, height] of [[1366, 768], [1920, 1080]]) {
    await page.setViewportSize({ width, height });
    const at = (id) => page.locator(id).boundingBox();
    const [result, picture, lists] = [await at('#result'), await at('.dw-stage'), await at('#lists')];
    must(result.width >= width / 2 - 20 && result.y + result.height >= height - 5, `the right half is ${JSON.stringify(result)} of ${width}`);
    must(picture.height >= 0.3 * height && lists.height >= 100, `the picture is ${picture.height}, the lists ${lists.height} of ${height}`);
    must(!await page.locator('#source').isVisible(), 'the text is not folded away');
    await page.locator('#file').click();
    const text = await at('#text');
    must(text.width > 350 && (await at('#form')).width > 230 && (await at('.dw-stage')).width > 0.35 * width, `the text is ${text.width} wide`);
    must(await page.locator('#file').getAttribute('aria-expanded') === 'true', 'the button does not say so');
    await page.locator('#file').click();
    must(!await page.locator('#source').isVisible(), 'the text stays');
    const rolls = await page.evaluate(() => document.documentElement.scrollHeight > innerHeight);
    must(!rolls, 'the page itself rolls');
  }
  await page.setViewportSize({ width: 1500, height: 950 });
});

// scrollers are, of each pane, the elements that can be rolled; lists that drop down apart.
const scrollers = (p) => p.evaluate(() => [...document.querySelectorAll('main > section')].map((pane) => [pane, ...pane.querySelectorAll('*')]
  .filter((e) => e.checkVisibility() && /auto|scroll/.test(getComputedStyle(e).overflowY) && !e.closest('.dw-panel')).map((e) => e.id || e.className)));

await attempt('one scroller a pane', async () => {
  await page.locator('#file').click();
  for (const list of ['fit', 'parts', 'setups', 'told']) {
    await page.locator(`#tab-${list}`).click();
    const found = await scrollers(page);
    must(found.every((list) => list.length <= 1), JSON.stringify(found));
  }
  await page.locator('#tab-fit').click();
  await page.locator('#file').click();
  await quiet(page);
});

await attempt('a dimension in the picture', async () => {
  await page.mouse.move(1, 1);
  await size(page, 'width').click();
  const input = page.locator('.ask input');
  must(await input.inputValue() === '460' && (await page.locator('.ask label').textContent()) === 'outside width, mm', `it asks ${await page.locator('.ask').textContent()}`);
  await page.screenshot({ path: join(folder, 'ask.png') });
  await accessible(page);
  await page.keyboard.type('480');
  await page.keyboard.press('Enter');
  await until('the text follows', async () => (await source(page)).includes('outside: 480 x 140 x 500   # width x height x depth'));
  await until('the form follows', async () => await field(page, 'drawers', '0', 'outside').inputValue() === '480 x 140 x 500');
  await until('the picture follows', async () => await size(page, 'width').textContent() === '480');
  must(await size(page, 'width').evaluate((e) => e === document.activeElement), 'the focus is lost');
  await size(page, 'height').press('Enter');
  await page.keyboard.press('Escape');
  must(await page.locator('.ask').count() === 0, 'Escape does not leave it');
  must(await size(page, 'height').evaluate((e) => e === document.activeElement), 'the focus is lost after Escape');
  await undo(page, jobText);
  await until('back', async () => await size(page, 'width').textContent() === '460');
});

await attempt('a dimension that an opening governs', async () => {
  const tray = file('tray.yaml', openingText);
  const job = await serve(['view', tray.path]);
  const other = await tab(job.address);
  const before = await size(other, 'width').textContent();
  await size(other, 'width').click();
  must((await other.locator('.ask').textContent()).includes('follows from the opening') && await other.locator('.ask input').count() === 0, `it asks ${await other.locator('.ask').textContent()}`);
  await accessible(other);
  await other.screenshot({ path: join(folder, 'follows.png') });
  await other.keyboard.press('Escape');
  must(await other.locator('.ask').count() === 0 && await size(other, 'width').evaluate((e) => e === document.activeElement), 'Escape does not leave it');
  await size(other, 'depth').click();
  await other.getByRole('button', { name: 'Change: length of the slide' }).click();
  await until('it leads to the slide', () => field(other, 'drawers', '0', 'slide').first().evaluate((e) => e === document.activeElement));
  await size(other, 'width').click();
  await other.getByRole('button', { name: 'Change: width of the opening base' }).click();
  await until('it leads to the width', () => field(other, 'openings', 'base', 'width').evaluate((e) => e === document.activeElement));
  await field(other, 'openings', 'base', 'width').fill('574');
  await until('the opening is another', async () => (await source(other)).includes('width: 574'));
  await until('the box follows', async () => Number(await size(other, 'width').textContent()) === Number(before) + 10);
  await other.close({ runBeforeUnload: false });
  await job.stop();
});

const balloons = (p, marked = '') => p.locator(`.dw-number${marked}:not([hidden])`).allTextContents();

await attempt('numbers of parts', async () => {
  await page.locator('#tab-parts').click();
  await until('the cut list is shown', async () => await page.locator('#lists tr[data-number]').count() > 2);
  const rows = await page.locator('#lists tr[data-number]').evaluateAll((all) => all.map((r) => [r.dataset.number, r.cells[1].textContent]));
  must(rows.every(([n], i) => n === String(i + 1)), `numbers ${rows}`);
  const inPicture = await balloons(page);
  must(inPicture.length >= 4 && inPicture.every((n) => rows.some(([m]) => m === n)), `the picture has ${inPicture}, the list ${rows}`);
  // Equal parts have one number: box front and back.
  const side = rows.find(([, name]) => name.includes('box-front'))[0];
  must(inPicture.filter((n) => n === side).length === 2, `side ${side} stands in the picture as ${inPicture}`);
  await page.getByRole('button', { name: `mark part ${side}`, exact: true }).click();
  await until('it is marked in the picture', async () => (await balloons(page, '.dw-chosen')).join() === `${side},${side}`);
  must(await page.locator('#lists tr.marked').count() === 1, 'its row is not marked');
  await accessible(page);
  // In the picture, by keyboard; the list follows.
  await page.locator('canvas').focus();
  await page.keyboard.press('Escape');
  await page.keyboard.press('p');
  await until('another is marked', async () => await page.locator('#lists tr.marked').count() === 1);
  const now = await page.locator('#lists tr.marked').getAttribute('data-number');
  must(now !== side, `the key has chosen ${now} again`);
  await until('the picture marks the same', async () => { const all = await balloons(page, '.dw-chosen'); return all.length > 0 && all.every((n) => n === now); });
  await page.locator('#tab-sheets').click();
  await until('sheets mark it too', async () => await page.locator('#lists figcaption button.marked').count() > 0);
  must((await page.locator('#lists figcaption button.marked').first().textContent()).startsWith(`${now} `), 'a sheet marks another part');
  await page.locator('#lists figcaption button[data-number="' + side + '"]').first().click();
  must(await page.locator(`#lists g.marked[data-number="${side}"]`).count() > 0, 'pieces on the sheet are not marked');
  await until('and the picture', async () => (await balloons(page, '.dw-chosen')).join() === `${side},${side}`);
  await page.screenshot({ path: join(folder, 'marked.png') });
  await accessible(page);
  await page.locator('canvas').focus();
  await page.keyboard.press('Escape');
  must(await page.locator('#lists .marked').count() === 0, 'Escape leaves marks in the list');
  await page.locator('#tab-fit').click();
});

await attempt('a divider in the picture', async () => {
  const at = () => page.locator('#picture').getByRole('button', { name: /^from the inside of the box front/ });
  await page.locator('canvas').focus();
  for (let i = 0; i < 12 && !await at().isVisible(); i++) {
    await page.keyboard.press('p');
    await still(page);
  }
  must(await at().textContent() === '240', `the last divider stands at ${await at().textContent()}`);
  await at().click();
  await page.keyboard.type('250');
  await page.keyboard.press('Enter');
  await until('the text follows', async () => (await source(page)).includes('at: [120, 250]'));
  await until('the picture follows', async () => await at().textContent() === '250');
  // Dragged from above, where its edge is seen, it goes in whole millimeters.
  await page.getByRole('button', { name: 'top', exact: true }).click();
  await still(page);
  const label = await at().boundingBox(), scale = await page.evaluate(() => {
    const [a, b] = ['depth', 'width'].map((n) => document.querySelector(`.dw-size[aria-label^="${n}"]`));
    return a && b ? 1 : 0;
  });
  must(scale === 1, 'no dimensions');
  const box = await page.locator('canvas').boundingBox();
  await page.screenshot({ path: join(folder, 'divider.png') });
  // The divider's near face is where the dimension ends: half its length before the number.
  const middle = label.y + label.height / 2, x = label.x + label.width / 2;
  let found = null;
  for (let y = middle; y > box.y && !found; y -= 2) {
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y - 10, { steps: 4 });
    await still(page);
    const text = await at().isVisible() ? await at().textContent() : '250';
    if (text !== '250') found = text;
    else {
      await page.mouse.move(x, y, { steps: 2 });
      await page.mouse.up();
      await page.getByRole('button', { name: 'top', exact: true }).click();
      await still(page);
    }
  }
  must(found !== null && /^\d+$/.test(found) && Number(found) > 250, `dragged to ${found}`);
  await page.mouse.up();
  await until('the text follows the drag', async () => (await source(page)).includes(`at: [120, ${found}]`));
  await undo(page, jobText);
  await page.locator('canvas').focus();
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'corner', exact: true }).click();
});

const jamText = `units: in
stock:
  ply: {thickness: [0.488, 0.487, 0.489]}
  quarter: {thickness: [0.2494, 0.2489, 0.2499]}
cutter: {kind: saw, width: 0.25}
drawers:
  - {name: wide, outside: 18 x 5 x 20, sides: ply, bottom: quarter}
`;

await attempt('a joint that jams is seen', async () => {
  const job = await serve(['view', file('jam.yaml', jamText).path]);
  const jam = await tab(job.address, { viewport: { width: 1366, height: 768 } });
  const red = jam.locator('.dw-letters .dw-bad:not([hidden])');
  await until('it is red in the picture', async () => (await red.allTextContents()).includes('✕ 0.001 in: tight'));
  await jam.screenshot({ path: join(folder, 'jam.png') });
  // A picture that was smaller for a while is as before.
  const ends = () => jam.locator('.dw-size:not([hidden])').evaluateAll((all) => all.map((e) => { const b = e.getBoundingClientRect(); return [Math.round(b.x), Math.round(b.y)]; }).join());
  const before = await ends();
  await jam.setViewportSize({ width: 1366, height: 640 });
  await until('the picture is smaller', async () => await ends() !== before);
  await jam.setViewportSize({ width: 1366, height: 768 });
  await until('it is as before', async () => await ends() === before);
  // A measure of the fit leads to its joint, and so does what to watch.
  const cut = jam.locator('#picture label', { hasText: /^cut/ }).locator('select'), high = async () => (await jam.locator('.dw-stage').boundingBox()).height;
  const tall = (await jam.locator('#picture').boundingBox()).height;
  for (const way of [jam.locator('#lists').getByRole('button', { name: 'grooved-in bottom clearance in its groove' }), jam.locator('#verdict button[data-kind=measure]')]) {
    await way.click();
    await until('the section is shown', async () => await cut.inputValue() !== '-1');
    must((await red.allTextContents()).includes('✕ 0.001 in: tight'), 'the section is of another joint');
    await jam.getByRole('button', { name: 'corner', exact: true }).click();
    await until('all is shown', async () => await cut.inputValue() === '-1');
  }
  const clearances = jam.locator('.dw-drop', { has: jam.locator('summary', { hasText: 'Clearance' }) });
  await clearances.locator('summary').click();
  const row = clearances.locator('tr', { hasText: 'bottom in the groove of the left side' });
  must((await row.locator('.dw-bad').textContent()) === '✕ 0.001 tight', `the list has ${await row.textContent()}`);
  await accessible(jam);
  const [summary, panel] = [await clearances.locator('summary').boundingBox(), await clearances.locator('.dw-panel').boundingBox()];
  must(Math.abs(panel.x - summary.x) < 3 && Math.abs(panel.y - summary.y - summary.height) < 3, `the list drops down at ${JSON.stringify(panel)}, not under ${JSON.stringify(summary)}`);
  await row.locator('button').click();
  await still(jam);
  must(!await clearances.locator('.dw-panel').isVisible(), 'the list stays over the section');
  must(await clearances.locator('summary').evaluate((e) => e === document.activeElement), 'the focus is lost');
  must((await red.allTextContents()).includes('✕ 0.001 in: tight'), 'the section does not tell it');
  await jam.screenshot({ path: join(folder, 'jam-section.png') });
  await field(jam, 'cutter', 'width').first().fill('0.24');
  await until('it cannot be built', async () => (await jam.locator('#verdict').textContent()).startsWith('Cannot be built'));
  await until('it is seen', async () => (await red.allTextContents()).includes('✕ -0.009 in: does not go in'));
  await field(jam, 'cutter', 'width').first().fill('oops');
  await until('nothing is drawn', async () => (await jam.locator('#stale').textContent()).startsWith('This entry cannot be drawn'));
  await still(jam);
  must((await jam.locator('#picture').boundingBox()).height === tall && await high() > 200, 'what is said makes the picture smaller');
  must(await red.count() === 0 && await jam.locator('.dw-play:not([hidden])').count() === 0, 'a clearance of before is told');
  await field(jam, 'cutter', 'width').first().fill('0.256');
  await until('it fits', async () => (await jam.locator('#verdict').textContent()).startsWith('Fits'));
  await until('nothing is red', async () => await red.count() === 0 && (await jam.locator('.dw-play:not([hidden])').count()) > 0);
  // What is most often wrong comes into sight, unless the list was rolled.
  const lists = jam.locator('#lists'), groove = lists.locator('.fit > li', { hasText: 'grooved-in bottom clearance in its groove' });
  const low = async () => { const [a, b] = [await groove.boundingBox(), await lists.boundingBox()]; return a.y + a.height - b.y - b.height; };
  for (const [rolled, seen] of [[0, true], [5, false]]) {
    await lists.evaluate((e, to) => { e.scrollTop = to; }, rolled);
    must(await low() > 20, 'the measure is in sight already');
    await field(jam, 'cutter', 'width').first().fill('0.25');
    await until('it does not fit', async () => (await jam.locator('#verdict').textContent()).startsWith('Does not fit'));
    await still(jam);
    must((await low() <= 1) === seen, `rolled by ${rolled}, the measure ends ${await low()} below the list`);
    await field(jam, 'cutter', 'width').first().fill('0.256');
    await until('it fits again', async () => (await jam.locator('#verdict').textContent()).startsWith('Fits'));
  }
  await jam.close({ runBeforeUnload: false });
  await job.stop();
});

await attempt('the camera follows a size', async () => {
  const fits = async (p) => { await still(p); return (await outside(p)).join(); };
  must(await fits(page) === '', `out of the picture: ${await fits(page)}`);
  await field(page, 'drawers', '0', 'outside').fill('900 x 140 x 500');
  await until('the picture follows', async () => await size(page, 'width').textContent() === '900');
  must(await fits(page) === '', `out of the picture: ${await fits(page)}`);
  const wide = async (name) => (await size(page, name).boundingBox()).x;
  const large = await wide('height') - await wide('width');
  await field(page, 'drawers', '0', 'outside').fill('300 x 60 x 300');
  await until('the picture follows', async () => await size(page, 'width').textContent() === '300');
  await still(page);
  must(await wide('height') - await wide('width') > 0.4 * large, 'a small box is drawn small');
  await undo(page, jobText);
});

await attempt('a joint is left', async () => {
  await page.locator('#fields summary', { hasText: 'birch' }).click();
  const named = () => page.locator('.dw-play:not(.dw-bad, .dw-doubt, [hidden])').count(); // what is wrong is always told
  const drop = page.locator('#picture summary', { hasText: 'Clearance' });
  const shot = async () => { await still(page); return (await page.locator('.dw-stage').screenshot()).toString('base64'); };
  for (const leave of [() => page.getByRole('button', { name: 'corner', exact: true }).click(), () => page.getByRole('button', { name: 'all', exact: true }).click(),
    () => page.locator('#picture label', { hasText: /^cut/ }).locator('select').selectOption('none'), async () => { await page.locator('canvas').focus(); await page.keyboard.press('Escape'); }]) {
    await drop.click();
    await page.locator('.dw-panel table button').first().click();
    await until('clearance is named', async () => await named() > 0);
    const before = await shot();
    await page.keyboard.press('Escape');
    // A thickness that changes is seen in the joint, which stays in the middle.
    await field(page, 'stock', 'birch', 'thickness').evaluate((e) => { e.value = '12.3'; e.dispatchEvent(new InputEvent('input', { bubbles: true })); });
    await until('the joint follows', async () => await shot() !== before);
    must(await named() > 0, 'the joint is lost when a size changes');
    await undo(page, jobText);
    await still(page);
    await leave();
    await still(page);
    must(await named() === 0, `clearance stays named after ${leave}`);
    must(await page.locator('#picture label', { hasText: /^cut/ }).locator('select').inputValue() === '-1', 'the cut through the joint stays');
  }
});

await attempt('on paper', async () => {
  const shape = await page.locator('.dw-stage').evaluate((e) => e.clientWidth / e.clientHeight);
  const places = () => page.evaluate(() => {
    const r = document.querySelector('.dw-stage').getBoundingClientRect();
    return [...document.querySelectorAll('.dw-number:not([hidden]), .dw-size:not([hidden])')].map((e) => { const b = e.getBoundingClientRect(); return [e.textContent, (b.x + b.width / 2 - r.x) / r.width, (b.y + b.height / 2 - r.y) / r.height]; });
  });
  const before = await places();
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: 700, height: 950 });
  await still(page);
  const printed = await page.locator('.dw-stage').evaluate((e) => ({ shape: e.clientWidth / e.clientHeight, canvas: e.firstChild.clientWidth / e.firstChild.clientHeight, dots: e.firstChild.width / e.firstChild.height }));
  must(Object.values(printed).every((v) => Math.abs(v / shape - 1) < 0.02), `the picture was ${shape}, printed it is ${JSON.stringify(printed)}`);
  const after = await places();
  before.forEach(([text, x, y], i) => must(after[i][0] === text && Math.abs(after[i][1] - x) < 0.01 && Math.abs(after[i][2] - y) < 0.02, `${text} has moved from ${[x, y]} to ${after[i]}`));
  must(!await page.locator('#form').isVisible() && !await page.locator('.dw-tools').isVisible(), 'controls are printed');
  writeFileSync(join(folder, 'paper.pdf'), await page.pdf());
  // What a printer gets of the picture is what was drawn.
  const kept = await page.evaluate(() => {
    const all = document.querySelector('canvas'), copy = Object.assign(document.createElement('canvas'), { width: all.width, height: all.height }).getContext('2d');
    copy.drawImage(all, 0, 0);
    return new Set(new Uint32Array(copy.getImageData(0, 0, all.width, all.height).data.buffer)).size;
  });
  must(kept > 20, `the printed picture has ${kept} colors`);
  await page.emulateMedia({ media: 'screen' });
  await page.setViewportSize({ width: 1500, height: 950 });
});

await attempt('skip links', async () => {
  for (const width of [1500, 390]) {
    const fresh = await tab(one.address, { viewport: { width, height: 800 } });
    await fresh.keyboard.press('Tab');
    await fresh.keyboard.press('Tab');
    const link = await fresh.evaluate(() => { const e = document.activeElement, r = e.getBoundingClientRect(); return [e.textContent, r.width * r.height, getComputedStyle(e).clipPath]; });
    must(link[0] === 'To the box and its lists' && link[1] > 500 && link[2] === 'none', `${width}: the second stop is ${link}`);
    await fresh.keyboard.press('Enter');
    must(await fresh.evaluate(() => document.activeElement.id === 'result' && document.activeElement.checkVisibility()), `${width}: it leads to nothing that is seen`);
    await fresh.context().close();
  }
});

const phone = { viewport: { width: 390, height: 780 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 };

await attempt('a phone', async () => {
  const small = await tab(one.address, phone);
  for (const pane of ['form', 'result', 'text']) {
    await small.locator(`[data-to=${pane}]`).tap();
    await still(small);
    await small.screenshot({ path: join(folder, `stage-${pane}.png`), fullPage: true });
    const wide = await small.evaluate(() => document.documentElement.scrollWidth);
    must(wide <= 390, `${pane} is ${wide} wide`);
    await accessible(small);
    if (pane !== 'text') {
      const nested = (await scrollers(small)).flat();
      must(nested.length === 0, `${pane} has a scroller in the page's: ${nested}`);
    }
  }
  // A heading that is gone to stands below the bar.
  await small.locator('[data-to=form]').tap();
  const under = await small.evaluate(() => {
    const list = [...document.querySelectorAll('#fields summary')].filter((e) => e.checkVisibility());
    const last = list.at(-1);
    last.scrollIntoView();
    return [last.getBoundingClientRect().top, document.querySelector('nav').getBoundingClientRect().bottom];
  });
  must(under[0] >= under[1], `a heading at ${under[0]} is under the bar, which ends at ${under[1]}`);
  await small.context().close();
});

await attempt('a finger on the picture', async () => {
  const small = await tab(one.address, phone);
  await small.locator('[data-to=result]').tap();
  await still(small);
  const touch = await small.context().newCDPSession(small);
  const rolled = () => small.evaluate(() => scrollY);
  // swipe goes over the middle of the picture, which it brings into sight first. It gives how
  // far the page has rolled.
  const swipe = async (dx, dy) => {
    await small.locator('canvas').evaluate((e) => e.scrollIntoView({ block: 'center' }));
    await still(small);
    const was = await rolled(), b = await small.locator('canvas').boundingBox(), x = b.x + b.width / 2, y = b.y + b.height / 2;
    await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x, y }] });
    for (let i = 1; i <= 8; i++) await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: [{ x: x + dx * i / 8, y: y + dy * i / 8 }] });
    await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await small.waitForTimeout(900); // it may roll on
    return await rolled() - was;
  };
  const look = async () => (await size(small, 'width').boundingBox()).x;
  const before = await look();
  const by = await swipe(0, -150);
  must(by > 80, `a finger upward rolls the page by ${by}`);
  must(Math.abs(await look() - before) < 1, 'and it turns the box');
  const aside = await swipe(90, 0);
  must(Math.abs(aside) < 2, `a finger sideways rolls the page by ${aside}`);
  await until('a finger sideways turns the box', async () => await look() !== before);
  await small.context().close();
});

// small is what a finger or a trembling hand misses: controls under 24 dots either way, but for
// words in a line of text.
const smallTargets = (p) => p.evaluate(() => [...document.querySelectorAll('button, select, input, summary, a')].filter((e) => {
  const r = (e.closest('label') ?? e).getBoundingClientRect();
  return e.checkVisibility() && !e.closest('.skips') && r.width > 0 && (r.height < 24 || r.width < 24);
}).map((e) => `${e.outerHTML.slice(0, 80)} ${Math.round(e.getBoundingClientRect().height)}`));

await attempt('setups in the picture', async () => {
  for (const [width, height] of [[1366, 768], [700, 900]]) {
    const fresh = await tab(one.address, { viewport: { width, height }, reducedMotion: 'reduce' });
    if (width < 800) await fresh.locator('[data-to=result]').click();
    const whose = fresh.locator('#picture').getByLabel('steps of'), card = fresh.locator('#picture .dw-card');
    await whose.selectOption('setups');
    await card.waitFor();
    await still(fresh);
    const stage = await fresh.locator('#picture .dw-stage').boundingBox();
    must(stage.height > 180, `${width} x ${height}: the picture is ${stage.height} high beside its card`);
    must((await card.textContent()).includes('Setting 1: cutter 6.35 mm wide'), `the card says ${await card.textContent()}`);
    await accessible(fresh);
    await fresh.locator('#picture').getByRole('button', { name: 'Back', exact: true }).click();
    await card.waitFor({ state: 'hidden' });
    await fresh.context().close();
  }
});

for (const colorScheme of ['light', 'dark']) {
  await attempt(`for everybody, ${colorScheme}`, async () => {
    const fresh = await tab(one.address, { viewport: { width: 1366, height: 768 }, colorScheme, reducedMotion: 'reduce' });
    await fresh.locator('#file').click();
    for (const list of ['parts', 'setups', 'buy', 'told', 'fit']) {
      await fresh.locator(`#tab-${list}`).click();
      await still(fresh);
      await accessible(fresh);
    }
    for (const name of ['Display', 'Clearance', 'Keys']) {
      await fresh.locator('#picture summary', { hasText: name }).click();
      await accessible(fresh);
    }
    await fresh.getByRole('button', { name: 'Parts', exact: true }).click();
    await accessible(fresh);
    const small = await smallTargets(fresh);
    must(small.length === 0, `too small to hit: ${small.slice(0, 6).join('\n')}`);
    const moving = await fresh.evaluate(() => [...document.querySelectorAll('*')].filter((e) => parseFloat(getComputedStyle(e).transitionDuration) > 0).length);
    must(moving === 0, `${moving} elements move although nothing shall`);
    await fresh.screenshot({ path: join(folder, `everybody-${colorScheme}.png`) });
    await fresh.context().close();
  });
}

await attempt('twice as large', async () => {
  for (const [width, height] of [[683, 384], [640, 400], [960, 540]]) {
    const fresh = await tab(one.address, { viewport: { width, height } });
    for (const pane of ['form', 'result', 'text']) {
      if (await fresh.locator(`[data-to=${pane}]`).isVisible()) await fresh.locator(`[data-to=${pane}]`).click();
      await still(fresh);
      const wide = await fresh.evaluate(() => [document.documentElement, ...document.querySelectorAll('main > section, #lists, #fields')].filter((e) => e.checkVisibility() && e.scrollWidth > e.clientWidth + 1).map((e) => `${e.id || e.tagName}: ${e.scrollWidth} in ${e.clientWidth}`));
      must(wide.length === 0, `${width} x ${height}, ${pane}: rolls sideways: ${wide}`);
    }
    await fresh.screenshot({ path: join(folder, `twice-${width}.png`) });
    await fresh.context().close();
  }
});

await done();
