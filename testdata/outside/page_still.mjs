// Nothing moves under a pointer while a person types in the form, and what is wrong is said where it was
// typed: see person.mjs.
import { join } from 'node:path';
import { accessible, attempt, done, field, file, folder, must, serve, source, tab, until } from './person.mjs';

const jobText = `units: mm
stock:
  birch: {thickness: [12.21, 12.16, 12.24], sheet: 1525 x 1525}
  hard: {thickness: 5.92, sheet: 2440 x 1220}
cutter: {kind: saw, width: 6.35}
drawers:
  - name: wide
    outside: 460 x 140 x 500
    sides: birch
    bottom: hard
`;

const openingText = `units: mm
stock:
  birch: {thickness: [12.21, 12.16, 12.24]}
  hard: {thickness: [5.92, 5.86]}
cutter: {kind: saw, width: 6.35}
openings:
  base: {width: 564, height: 600, depth: 545, cabinet: frameless, fronts: none}
drawers:
  - {name: tray, opening: base, slide: side-mount, rows: 3, sides: birch, bottom: hard}
`;

// on opens the page of a job and works on it.
const on = (tried, text, work, settings) => attempt(tried, async () => {
  const name = tried.replace(/\W+/g, '-');
  const program = await serve(['view', file(`${name}.yaml`, text).path]);
  const page = await tab(program.address, settings);
  try {
    await work(page);
  } finally {
    await page.screenshot({ path: join(folder, `${name}.png`) });
    await page.close({ runBeforeUnload: false });
    await program.stop();
  }
});

const at = (...path) => `[data-path='${JSON.stringify(path)}']`;
const saidAt = (page, ...path) => page.locator(`${at(...path)} .said`);
const still = (page) => page.evaluate(() => new Promise((done) => { requestAnimationFrame(() => requestAnimationFrame(done)); }));

// places are where all fields, headings and buttons of the form stand, but for what lies over them.
const places = (page) => page.evaluate(() => Object.fromEntries([...document.querySelectorAll('#fields :is(.field, summary, .readings input, .sizing)')].filter((e) => e.checkVisibility())
  .map((e) => [e.dataset.path ?? e.id + e.textContent.replace(/not set|to mend|to watch|note/g, ''), e.getBoundingClientRect()]).map(([name, r]) => [name, [Math.round(r.x), Math.round(r.y)]])));

// unmoved types texts into a field, letter by letter, and holds that nothing else goes anywhere.
async function unmoved(page, into, ...texts) {
  await into.focus();
  await still(page);
  const before = await places(page);
  for (const text of texts) {
    await into.selectText();
    for (const letter of text) {
      await page.keyboard.type(letter);
      await page.waitForTimeout(120);
      const now = await places(page);
      for (const [name, [x, y]] of Object.entries(before)) {
        if (now[name]) must(Math.abs(now[name][0] - x) < 2 && Math.abs(now[name][1] - y) < 2, `at ${text}: ${name} went from ${[x, y]} to ${now[name]}`);
      }
    }
    await until('the text follows', async () => (await source(page)).includes(text));
    await page.waitForTimeout(300);
  }
  return before;
}

await on('nothing moves while one types', jobText, async (page) => {
  await unmoved(page, field(page, 'cutter', 'width').first(), '5.5', '6.36', '60', '6.35');
  await unmoved(page, field(page, 'drawers', '0', 'outside'), '460 x 14', '30 x 20 x 30', '460 x 140 x 500');
});

await on('nothing moves in an opening', openingText, async (page) => {
  await unmoved(page, field(page, 'openings', 'base', 'height'), '60', '1200', '600');
  await unmoved(page, field(page, 'drawers', '0', 'rows'), '4', '80', '3');
});

await on('the next field stays under the pointer', jobText, async (page) => {
  const width = field(page, 'cutter', 'width').first(), name = field(page, 'drawers', '0', 'name'), top = async (e) => (await e.boundingBox()).y;
  await width.fill('5.5');
  await until('it is told', async () => (await page.locator('#verdict').textContent()).startsWith('Cannot be built'));
  for (const next of [field(page, 'drawers', '0', 'count'), name]) {
    const before = await top(next);
    await next.click();
    await still(page);
    must(Math.abs(await top(next) - before) < 2, `it went from ${before} to ${await top(next)}`);
    must(await next.evaluate((e) => e === document.activeElement), 'the click went elsewhere');
  }
});

await on('a mistake is said where it was typed', jobText, async (page) => {
  const width = field(page, 'cutter', 'width').first(), told = saidAt(page, 'cutter', 'width');
  await width.fill('5.5');
  await until('it is told', async () => (await told.textContent()).includes('wide, Bottom: the bottom is '));
  must((await told.textContent()).startsWith("wide: the box front's tongue is 6.1 mm thick, the dado 5.5 mm wide"), `it says ${await told.textContent()}`);
  must(await told.locator('.ways button').count() > 1, `no way out: ${await told.textContent()}`);
  must(await told.locator('p').first().isVisible() && await width.getAttribute('aria-invalid') === 'true', 'the field does not show it');
  await accessible(page);
  await page.screenshot({ path: join(folder, 'said.png') });
  const name = field(page, 'drawers', '0', 'name');
  await name.fill('broad'); // it stays until it is mended, and is told of no other field
  await until('typed', async () => (await source(page)).includes('name: broad') && (await told.textContent()).includes('broad, Bottom: the bottom'));
  must((await saidAt(page, 'drawers', '0', 'name').textContent()) === '', 'it is told of another field');
  const twice = await page.locator('#fields p', { hasText: "the box front's tongue is" }).count();
  must(twice === 1, `it is said ${twice} times`);
  await told.getByRole('button', { name: 'Cutting tool, Width of one pass: 6.35 mm' }).first().click();
  await until('it is mended', async () => (await told.textContent()) === '' && (await source(page)).includes('width: 6.35'));
});

await on('the caliper again', jobText, async (page) => {
  const way = saidAt(page, 'drawers', '0', 'bottom').getByRole('button', { name: 'Measure hard again' });
  await until('it is the first way', async () => (await saidAt(page, 'drawers', '0', 'bottom').locator('.ways button').first().textContent()) === 'Measure hard again');
  await way.click();
  must(await page.getByLabel('next reading, then Enter').last().evaluate((e) => e === document.activeElement), 'it does not lead to the readings');
  for (const reading of ['5.95', '5.9']) {
    await page.keyboard.type(reading);
    await page.keyboard.press('Enter');
  }
  await until('it fits', async () => (await page.locator('#verdict').textContent()).startsWith('Fits'));
  await until('all three are written', async () => (await source(page)).includes('hard: {thickness: [5.92, 5.95, 5.9]'));
});

await on('messages by the names of fields', jobText, async (page) => {
  await page.locator('#tab-told').click();
  const place = async () => (await page.locator('#messages li').first().locator('.place:visible').allInnerTexts()).join();
  must(await place() === 'wide, Bottom', `it is called ${await place()}`);
  await page.locator('#file').click();
  must(await place() === 'line 10, column 13', `beside the text it is called ${await place()}`);
});

await on('one size of letters in a table', jobText.replace('hard: {thickness: 5.92', 'hard: {thickness: [5.92, 5.9]'), async (page) => {
  for (const width of [1500, 1000, 600]) {
    await page.setViewportSize({ width, height: 900 });
    if (width === 600) await page.locator('[data-to=result]').click();
    for (const tab of ['fit', 'parts', 'setups', 'buy']) {
      await page.locator(`#tab-${tab}`).click();
      await until('a table', async () => await page.locator('#lists table').count() > 0);
      const sizes = await page.locator('#lists table').evaluateAll((all) => [...new Set(all.flatMap((t) => [...t.querySelectorAll('th, td, td *, th *')]).map((e) => getComputedStyle(e).fontSize))]);
      must(sizes.length === 1, `${tab} at ${width}: letters of ${sizes}`);
    }
  }
});

await on('a small screen at the beginning', openingText, async (page) => {
  const lists = page.locator('#lists'), name = lists.locator('li[data-measure^="grooved-in"] .name');
  must((await lists.locator('.wide').textContent()).includes(' wide = 564.00 opening - 2 x 12.70 slide'), 'the width does not say where it comes from');
  await field(page, 'cutter', 'width').first().fill('6.52'); // the groove becomes too wide for the bottom
  await until('it is told', async () => !(await page.locator('#verdict').textContent()).startsWith('Fits'));
  must((await page.locator('#said').textContent()) === '', `the verdict stands there twice: ${await page.locator('#said').textContent()}`);
  await until('it is followed', async () => (await lists.evaluate((e) => e.scrollTop)) > 0);
  const [n, l] = [await name.boundingBox(), await lists.boundingBox()];
  must(n.y >= l.y - 1 && n.y + n.height <= l.y + l.height + 1, `the name of the measure is at ${n.y}, and the list from ${l.y} to ${l.y + l.height}`);
  await page.locator('#begin').click();
  await page.locator('.card').first().waitFor();
  const cut = await page.locator('.card input').evaluateAll((all) => all.filter((e) => {
    const pen = document.createElement('canvas').getContext('2d'), now = getComputedStyle(e, '::placeholder');
    pen.font = `${now.fontSize} ${now.fontFamily}`;
    return pen.measureText(e.placeholder).width > e.clientWidth - 11;
  }).map((e) => e.placeholder));
  must(cut.length === 0, `examples are cut off: ${cut}`);
}, { viewport: { width: 1366, height: 768 }, locale: 'en-US' });

await on('on a phone', jobText, async (page) => {
  const width = field(page, 'cutter', 'width').first();
  await unmoved(page, width, '5.5', '6.36');
  await width.fill('5.5');
  await until('it is told', async () => (await page.locator('.field .said:visible').allTextContents()).join() !== '');
  await page.screenshot({ path: join(folder, 'phone-said.png') });
}, { viewport: { width: 390, height: 780 }, hasTouch: true, isMobile: true });

await done();
