// The words of the page, and what a newcomer finds on it: see person.mjs.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { accessible, attempt, done, field, file, folder, must, serve, source, tab, unfold, until } from './person.mjs';

const metric = `units: mm
stock:
  birch: {thickness: [12.21, 12.16, 12.24], sheet: 1525 x 1525}
  hard: {thickness: 5.9, sheet: 2440 x 1220}
cutter: {kind: saw, width: 6.35}
drawers:
  - {name: wide, outside: 460 x 140 x 500, sides: birch, bottom: hard}
  - {name: small, outside: 300 x 90 x 500, sides: birch, bottom: hard, joint: butt}
`;

const inches = `units: in
stock:
  birch: {thickness: [0.472, 0.468, 0.475], sheet: 60 x 60, grain: length, price: 64}
  ply: {thickness: [0.205, 0.201], sheet: 96 x 48, grain: length, price: 28}
cutter: {kind: saw, width: 0.246, groove-cutter: 0.125}
openings:
  base: {width: [22 5/32, 22 1/8], height: 27 5/8, depth: 21 1/2, cabinet: frameless, fronts: none}
drawers:
  - {name: base, opening: base, slide: side-mount, rows: 3, sides: birch, bottom: ply, joint: butt}
`;

// on opens the page of a job and works on it.
const on = (tried, text, work, settings) => attempt(tried, async () => {
  const name = tried.replace(/\W+/g, '-');
  const program = await serve(['view', file(`${name}.yaml`, text).path]);
  try {
    const page = await tab(program.address, settings);
    await work(page).finally(() => page.screenshot({ path: join(folder, `${name}.png`) }));
    await page.close({ runBeforeUnload: false });
  } finally {
    await program.stop();
  }
});

const errors = (page) => page.locator('#messages [data-level=error]').count();
const button = (page, name) => page.getByRole('button', { name, exact: true });
// markedIs reports whether the picture marks pieces of a number, and no others.
const markedIs = async (page, number) => {
  const marked = await page.locator('.dw-number.dw-chosen').allTextContents();
  return marked.length > 0 && marked.every((text) => text === number);
};
const seen = async (all) => (await all.evaluateAll((list) => list.filter((e) => e.checkVisibility()).map((e) => e.textContent))).join(', ');

await on('the order of the fields', metric, async (page) => {
  const drawer = page.locator(`[data-section='["drawers","0"]']`);
  must(await seen(drawer.locator('label, legend, summary')) === 'Name, How many, Size, I know the box, It goes into an opening, Outside size of the box, Sides, Bottom, Corner joint, More', await seen(drawer.locator('label, legend, summary')));
  must((await seen(page.locator('#fields > details > summary'))).replace('to watch', '') === 'Drawers, Stock, Cutting tool, Openingsnot set, More', await seen(page.locator('#fields > details > summary')));
  must(await drawer.locator('.more').evaluate((e) => !e.open), 'what few need is not folded away');
  await page.locator('#file').click();
  await page.fill('#source', metric.replace('joint: butt', 'joint: butt, spares: 1'));
  must(await drawer.locator('.more').evaluate((e) => !e.open), 'it opens for another drawer');
  await page.selectOption('#drawer-of-file', '1');
  const other = page.locator(`[data-section='["drawers","1"]'] > .more`);
  await until('a value opens it', async () => await other.evaluate((e) => e.open) && await field(page, 'drawers', '1', 'spares').inputValue() === '1');
  await other.locator('> summary').click();
  await page.fill('#source', metric.replace('joint: butt', 'joint: butt, spares: few'));
  await until('a message opens it', async () => await other.evaluate((e) => e.open) && await errors(page) === 1);
  await other.locator('> summary').click();
  await field(page, 'drawers', '1', 'name').fill('smaller');
  await until('typed', async () => (await source(page)).includes('name: smaller'));
  must(await other.evaluate((e) => !e.open), 'what was closed opens again for the same message');
  await accessible(page);
});

await on('help in the unit of the job', inches, async (page) => {
  await unfold(page);
  const help = page.locator('#help');
  for (const [path, parts] of [[['drawers', '0', 'front-gap'], ['From 0 in to 3.937 in', 'Example: 1/8', 'In the job file: front-gap']], [['drawers', '0', 'overlay'], ['Example: 5/8, 5/8, 3/8, 1/8', 'Why 1/2 in']], [['cutter', 'width'], ['Example: 1/4']]]) {
    await field(page, ...path).focus();
    for (const part of parts) must((await help.textContent()).includes(part), `of ${path.join(' ')} the help says ${await help.textContent()}`);
    must(!/\d mm\b/.test(await help.textContent()), `millimeters: ${await help.textContent()}`);
  }
  const told = await page.locator('#fields').evaluate((e) => [...e.querySelectorAll('[id$=h]'), ...e.querySelectorAll('[placeholder]')].map((e) => e.placeholder ?? e.textContent).filter((text) => /\d mm\b(?!\/)/.test(text)));
  must(told.length === 0, told.join('\n'));
});

await on('messages in the words of the form', metric, async (page) => {
  await unfold(page);
  const said = () => page.locator(`[data-path='["drawers","0","fasteners"]'] .said`);
  await field(page, 'drawers', '0', 'fasteners').selectOption('screws');
  const wanted = 'Fasteners does nothing here: it is for a butt joint, and this is dado-rabbet';
  await until('it is told at the field', async () => (await said().locator('p').textContent()) === `${wanted} — clear it, or set Corner joint to butt`);
  must((await page.locator('#verdict li').first().textContent()) === `First: ${wanted}`, await page.locator('#verdict').textContent());
  await page.click('#tab-told');
  const shown = async () => (await page.locator('#messages li button').first().innerText()).replace(/\s+/g, ' ');
  must((await shown()).includes('set Corner joint to butt') && !(await shown()).includes('`'), await shown());
  await page.locator('#file').click();
  must((await shown()).includes('write `joint: butt`') && !(await shown()).includes('set Corner'), await shown());
  await accessible(page);
  await page.locator('#file').click();
  await said().getByRole('button', { name: 'Delete Fasteners' }).click();
  await until('mended', async () => await errors(page) === 0);
  await page.locator('#file').click();
  await page.fill('#source', metric.replace(', bottom: hard}', '}'));
  await page.locator('#file').click();
  await until('what is missing', async () => (await page.locator('#fields').innerText()).includes('Bottom is missing — choose Bottom: the stock of the bottom'));
  must(!(await page.locator('#fields').innerText()).includes('`'), await page.locator('#fields').innerText());
});

await on('sizes as a tape reads them', inches, async (page) => {
  const sizes = async () => (await page.locator('.dw-size:not([hidden])').allTextContents()).join(', ');
  await until('the picture has fractions', async () => /^\d+( \d+\/\d+)?(, \d+( \d+\/\d+)?){2}$/.test(await sizes()) && (await sizes()).includes('/'));
  const rows = await page.locator('#lists table').first().locator('tbody tr').evaluateAll((all) => all.map((e) => [...e.cells].map((c) => c.textContent)));
  must(rows.flat().every((text) => !/\d\.\d/.test(text)), `decimals of a tape: ${JSON.stringify(rows)}`);
  must(rows[2].join() === 'its opening, at the least,22 1/8,27 5/8,21 1/2', `no opening: ${rows[2]}`);
  must(/^base-1, \d+ \d+\/\d+ in$/.test(await page.locator('.front text').first().textContent()), await page.locator('.front text').first().textContent());
  await page.click('#tab-parts');
  await page.locator('#lists .whole').first().waitFor();
  for (const width of [1500, 1100]) {
    await page.setViewportSize({ width, height: 950 });
    const broken = await page.locator('#lists .whole').evaluateAll((all) => all.filter((e) => e.getClientRects().length !== 1).map((e) => e.textContent));
    must(broken.length === 0, `at ${width} px lengths break: ${broken}`);
  }
  must(await page.locator('#lists td', { hasText: /^0\.\d{3} \/ 0\.\d{3}$|^\d+\.\d{3} \(\d+ \d+\/\d+\)$/ }).count() > 4, `what a caliper reads has no decimals: ${await page.locator('#lists td').allTextContents()}`);
  await page.click('#tab-setups');
  await until('the setups', async () => (await page.locator('#lists pre').textContent()).includes('SETTING 1'));
  must(!/\d \d+\/\d+|\(\d[^()\n]* [^()\n]*\)/.test(await page.locator('#lists pre').textContent()), 'a length of the setups may break over lines');
  await page.click('#tab-buy');
  await until('what to buy', async () => (await page.locator('#lists').textContent()).includes('birch, 60 x 60 in'));
  for (const row of [/screw #8 x 1 1\/2 in *\d+/, /for 100 lb/, /[05]oz/]) must(row.test(await page.locator('#lists').textContent()), `nothing of ${row}: ${await page.locator('#lists').textContent()}`);
  await accessible(page);
});

await on('a metric cabinet', metric.replace('outside: 300 x 90 x 500', 'opening: bay, slide: side-mount, rows: [150, free], load: 15 kg').replace('drawers:', 'openings: {bay: {width: 564.2, height: 440, depth: 545, cabinet: frameless, fronts: none}}\ndrawers:').replace('sheet: 1525 x 1525', 'sheet: 1525 x 1525, material: birch-plywood').replace('sheet: 2440 x 1220', 'sheet: 2440 x 1220, material: hardboard'), async (page) => {
  await page.selectOption('#drawer-of-file', '1');
  await until('a weight as it is known', async () => /^The box weighs \d\.\d kg, loaded \d\d kg; such slides carry 45 kg\. Under 15 kg /.test(await page.textContent('#bears')));
  must(/^boxes 53\d\.\d\d mm wide = 564\.20 opening - 2 x 12\.70 slide - 0\.\d\d so that most run$/.test(await page.textContent('#lists .wide')), await page.textContent('#lists .wide'));
  must((await page.locator('.front p').textContent()).startsWith('The numbers are how high the opening of each box is: there are no drawer fronts.'), await page.locator('.front p').textContent());
  must(/^Each line is one measure by itself\. A box is right where all of them are: .*boxes come out right\.$/.test(await page.locator('.together').textContent()), await page.locator('.together').textContent());
  await page.click('#tab-buy');
  await until('what to buy', async () => (await page.locator('#lists').textContent()).includes('birch, 1525 x 1525 mm'));
});

await on('one verdict', metric.replace('thickness: 5.9,', 'thickness: [5.92, 5.9],').replace(', joint: butt', ''), async (page) => {
  const strip = page.locator('#verdict');
  must(await strip.getAttribute('data-mark') === 'right' && await strip.locator('svg').count() === 1, await strip.textContent());
  must(!(await strip.textContent()).includes('Watch') && (await strip.textContent()).includes('Nearest to its limit, of '), await strip.textContent());
  await unfold(page);
  must((await field(page, 'drawers', '0', 'fasteners').locator('option').first().textContent()) === '— screws in a butt joint, none in others', 'screws seem to be chosen');
  await page.locator('#file').click();
  await page.fill('#source', metric);
  await until('warnings', async () => await strip.getAttribute('data-mark') !== 'right' && await strip.locator('li').count() > 0);
  must((await strip.textContent()).includes('Most often wrong, of '), await strip.textContent());
  const cut = await strip.locator('button, p').evaluateAll((all) => all.filter((e) => e.scrollWidth > e.clientWidth || [...e.querySelectorAll('span')].some((s) => s.scrollHeight > s.clientHeight + 1 && s.clientHeight > 0)).map((e) => e.textContent));
  must(cut.length === 0, `cut short: ${cut}`);
  await page.click('#tab-fit');
  const word = page.locator('#lists .fit li', { hasText: 'grooved-in bottom clearance in its groove' }).locator('.word');
  await until('what is set right is not called wrong', async () => (await word.textContent()).startsWith('may come out loose, '));
});

await on('decimal commas', metric, async (page) => {
  await page.locator('#fields summary', { hasText: 'hard' }).click();
  const thickness = field(page, 'stock', 'hard', 'thickness');
  await thickness.fill('5,9; 5,86');
  await until('two readings', async () => (await source(page)).includes('hard: {thickness: [5.9, 5.86]'));
  must(await errors(page) === 0, 'they are a mistake');
  await thickness.fill('5,9');
  await until('it is not taken for a decimal comma unasked', async () => (await page.locator('#messages').textContent()).includes('decimal'));
});

await on('a part of another drawer', metric, async (page) => {
  await page.click('#tab-parts');
  const row = page.locator('#lists tr', { hasText: 'small-box-front' });
  await row.waitFor();
  const number = await row.getAttribute('data-number');
  await row.locator('button').click();
  await until('the picture has its drawer', async () => await page.inputValue('#drawer') === 'small');
  await until('and the part is marked in it', () => markedIs(page, number));
  must(await row.evaluate((e) => e.classList.contains('marked')), 'the list forgets it');
  must(await field(page, 'drawers', '1', 'name').isVisible(), 'the form has the fields of another one');
  await row.locator('button').click();
  await until('it is marked no more', async () => await page.locator('.dw-number.dw-chosen').count() === 0);
});

await on('parts in the setups', metric, async (page) => {
  await page.click('#tab-setups');
  const part = page.locator('#lists pre').getByRole('button', { name: /^mark part \d+ small-side$/ }).first();
  await part.click();
  await until('the picture has its drawer', async () => await page.inputValue('#drawer') === 'small');
  const number = await part.getAttribute('data-number');
  await until('and the part is marked in it', () => markedIs(page, number));
  must(await part.getAttribute('aria-pressed') === 'true', 'the setup does not say so');
  must((await page.locator('#lists pre').textContent()).includes(' x small-side\n'), 'the text is another one');
  await accessible(page);
});

const shop = join(folder, 'words');
mkdirSync(shop, { recursive: true });
const program = await serve(['view'], shop);

await attempt('cards ask for what they do not know', async () => {
  const page = await tab(program.address);
  const card = page.locator('.card', { hasText: 'I know the box' });
  page.expected.push('422');
  const inputs = () => card.locator('input').evaluateAll((all) => all.map((e) => [e.name, e.value, e.placeholder]));
  for (const [name, value, placeholder] of await inputs()) must(name === 'count' ? value === '1' : value === '' && placeholder.startsWith('such as '), `${name}: ${value} ${placeholder}`);
  for (const [name, value] of [['width', '460'], ['height', '140'], ['depth', '500'], ['sides', '12.21, 12.16'], ['bottom', '5.9, 5.86'], ['cutter', '6.3']]) {
    await card.locator('button[type=submit]').click();
    await until(`${name} is asked for`, async () => (await card.locator('.said').textContent()).startsWith('type what you measured') && await page.evaluate(() => document.activeElement.name) === name);
    must(await page.locator('#start').isVisible(), 'an example is taken for a measure');
    await card.locator(`[name=${name}]`).fill(value);
  }
  await accessible(page);
  await page.screenshot({ path: join(folder, 'words-cards.png') });
  await card.locator('button[type=submit]').click();
  await until('the job', async () => (await source(page)).includes('outside: 460 x 140 x 500'));
  await page.close({ runBeforeUnload: false });
});

await attempt('an example is called one', async () => {
  const page = await tab(program.address);
  await page.getByRole('button', { name: 'Look at an example first' }).click();
  must((await page.locator('#notice p').textContent()).startsWith('This is an example'), await page.locator('#notice').textContent());
  await accessible(page);
  await page.getByRole('button', { name: 'Begin with what I measured' }).click();
  await until('the cards', async () => await page.locator('.card').count() === 3);
  await page.close({ runBeforeUnload: false });
});

await done();
