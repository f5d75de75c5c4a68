// How a job begins on the page, and how it gets its name: see person.mjs.
import { existsSync, mkdirSync, readFileSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { accessible, answerAs, attempt, done, field, folder, must, serve, source, tab, unfold, until } from './person.mjs';

const jobText = `# Bench drawers
units: mm
job: Bench
stock:
  birch: {thickness: [12.21, 12.16, 12.24], sheet: 1525 x 1525, grain: length}
  hard: {thickness: 5.9, sheet: 2440 x 1220}
cutter: {kind: saw, width: 6.35}
drawers:
  - {name: wide, outside: 460 x 140 x 500, sides: birch, bottom: hard}
`;

const shop = join(folder, 'shop'), elsewhere = join(folder, 'elsewhere');
for (const dir of [shop, elsewhere]) mkdirSync(dir);
writeFileSync(join(shop, 'bench.yaml'), jobText);
writeFileSync(join(shop, 'slides.yaml'), 'units: mm\nslides: {quiet: {kind: side-mount}}\n');
writeFileSync(join(elsewhere, 'secret.yaml'), jobText.replace('Bench', 'Secret'));
symlinkSync(join(elsewhere, 'secret.yaml'), join(shop, 'link.yaml'));
const files = () => readdirSync(shop).sort().join();
const before = files();

const messages = async (page) => page.locator('#messages li').count();
const card = (page, title) => page.locator('.card', { hasText: title });
const saved = (page) => until('saved', async () => (await page.textContent('#state')) === 'as saved');

const program = await serve(['view'], shop);

await attempt('three cards', async () => {
  const page = await tab(program.address);
  await until('the cards', async () => (await page.locator('.card').count()) === 3);
  must(!await page.locator('#form').isVisible(), 'the job lies under the cards');
  await accessible(page);
  await page.screenshot({ path: join(folder, 'start.png') });
  const offered = await page.locator('.card a').allTextContents();
  must(offered.join() === 'bench.yamlBench', `jobs of the folder: ${offered}`);
  await page.close();
});

for (const [title, units, size] of [['I have an opening', 'mm', ['600', '180', '520']], ['I know the box', 'in', ['17 5/8', '4 1/2', '20']]]) {
  await attempt(title, async () => {
    const page = await tab(program.address);
    const one = card(page, title);
    await one.locator('[name=units]').selectOption(units);
    for (const [i, name] of ['width', 'height', 'depth'].entries()) await one.locator(`[name=${name}]`).fill(size[i]);
    page.expected.push('422');
    await answerAs(one);
    await one.locator('[name=sides]').fill('twelve');
    await one.locator('button[type=submit]').click();
    await until('a mistake is told at its field', async () => await one.locator('.said').isVisible());
    must(await page.evaluate(() => document.activeElement.name === 'sides' && document.activeElement.ariaInvalid !== null), 'the field is not gone to');
    const under = () => one.locator('.said').evaluate((e) => e.previousElementSibling.querySelector('input').name);
    must(await under() === 'sides', `it stands under ${await under()}`);
    await accessible(page);
    await one.locator('[name=sides]').fill(units === 'mm' ? '12.1 12.3' : '0.48; 0.482');
    const bottom = units === 'mm' ? '5.7' : '0.22';
    await one.locator('[name=bottom]').fill(`${bottom}1 and ${bottom}6`);
    await one.locator('[name=count]').fill('4');
    await one.getByLabel('Width of the saw blade or bit').fill(units === 'mm' ? '6.4' : '0.26');
    await one.locator('[name=sides]').press('Enter');
    await until('the job', async () => !await page.locator('#start').isVisible() && (await source(page)).includes(`units: ${units}`) && (await source(page)).includes('count: 4'));
    await until('nothing is to be warned of', async () => await page.locator('#messages li:not([data-level=note])').count() === 0 && !await page.locator('#stale').isVisible());
    const made = await source(page);
    for (const said of [`units: ${units}`, `[${bottom}1, ${bottom}6]`, 'count: 4', units === 'mm' ? 'width: 6.4' : 'width: 0.26', units === 'mm' ? '[12.1, 12.3]' : '[0.48, 0.482]']) {
      must(made.includes(said), `nothing of ${said}: ${made}`);
    }
    await unfold(page);
    const usually = await field(page, 'drawers', '0', 'back-setback').getAttribute('placeholder');
    must(units === 'in' ? usually.includes(' in') && !usually.includes(' mm') : usually.includes(' mm'), `usual setback: ${usually}`);
    must(files() === before, `written unasked: ${files()}`);
    await page.close({ runBeforeUnload: false });
  });
}

await attempt('drawers above each other', async () => {
  const page = await tab(program.address);
  page.expected.push('422');
  const one = card(page, 'I have an opening');
  for (const [name, value] of Object.entries({ width: '412,5', height: '610', depth: '570' })) await one.locator(`[name=${name}]`).fill(value);
  await answerAs(one);
  const marked = () => one.locator('[aria-invalid]').evaluateAll((all) => all.map((e) => e.name).join());
  await until('the slide that is taken', async () => (await one.locator('.taken').textContent()) === 'Takes slides of 550 mm, the longest that fit');
  await one.locator('button[type=submit]').click();
  await until('a decimal comma', async () => (await one.locator('.said').textContent()).includes('decimal point'));
  must(await marked() === 'width', `marked: ${await marked()}`);
  await one.locator('[name=width]').fill('412.5, 411.8');
  await one.locator('button[type=submit]').click();
  await until('rows are asked for', async () => (await one.locator('.said').textContent()).includes('above each other'));
  must(await marked() === 'rows', `marked: ${await marked()}`);
  await one.getByLabel('Drawers above each other').fill('3');
  await one.getByLabel('Slide length').fill('450');
  await until('the slide that is given', async () => (await one.locator('.taken').textContent()) === 'Takes slides of 450 mm');
  await accessible(page);
  await page.screenshot({ path: join(folder, 'start-rows.png') });
  await page.locator('#begin').click(); // by mistake
  await until('what was typed is still there', async () => await one.locator('[name=rows]').inputValue() === '3' && await one.locator('[name=width]').inputValue() === '412.5, 411.8');
  await one.locator('button[type=submit]').click();
  await until('the job', async () => !await page.locator('#start').isVisible() && (await source(page)).includes('rows: 3'));
  await until('three drawers', async () => await page.locator('#drawer option').count() === 3);
  must((await source(page)).includes('lengths: [450]') && (await source(page)).includes('width: [412.5, 411.8]'), await source(page));
  await page.close({ runBeforeUnload: false });
});

await attempt('what does not go together', async () => {
  const page = await tab(program.address);
  page.expected.push('422');
  const one = card(page, 'I have an opening');
  await one.locator('[name=width]').fill('900');
  await answerAs(one);
  await one.locator('button[type=submit]').click();
  await until('it is told', async () => (await one.locator('.said').textContent()).includes('rack'));
  await one.getByRole('button', { name: 'Take it all the same' }).click();
  await until('the job', async () => (await source(page)).includes('width: 900') && (await messages(page)) > 0);
  await page.close({ runBeforeUnload: false });
});

await attempt('the name at the first save', async () => {
  const page = await tab(program.address);
  page.expected.push('422');
  await answerAs(card(page, 'I know the box'));
  await card(page, 'I know the box').locator('button[type=submit]').click();
  await until('the job', async () => (await source(page)).includes('outside:'));
  must((await page.textContent('#name')) === 'New job', 'it has a name already');
  await page.keyboard.press('Control+s');
  const dialog = page.locator('#naming');
  await dialog.waitFor();
  await accessible(page);
  await page.screenshot({ path: join(folder, 'naming.png') });
  must(await dialog.locator('input').inputValue() === 'first-drawers.yaml', `suggested: ${await dialog.locator('input').inputValue()}`);
  must(await dialog.getByRole('button', { name: 'Cancel' }).count() === 1, 'no way back');
  must((await dialog.textContent()).includes(shop), `it does not say where: ${await dialog.textContent()}`);
  for (const [bad, says] of [['../mine', '/'], ['a\\b', '\\'], ['', 'name'], ['CON', 'device'], ['.hidden', 'letter'], ['x'.repeat(200), 'longer'], ['link', 'regular']]) {
    await dialog.locator('input').fill(bad);
    await dialog.locator('input').press('Enter');
    await until(`${bad} is refused`, async () => (await dialog.locator('.said').textContent()).includes(says));
  }
  await dialog.locator('input').fill('bench');
  await dialog.locator('input').press('Enter');
  await until('a name that is taken', async () => (await dialog.textContent()).includes('bench.yaml is there already'));
  must(readFileSync(join(shop, 'bench.yaml'), 'utf8') === jobText, 'it was replaced unasked');
  await page.keyboard.press('Escape');
  await until('no dialog', async () => (await dialog.count()) === 0);
  must((await page.textContent('#state')) === 'not saved', 'it is called saved');
  await page.keyboard.press('Control+s');
  await dialog.locator('input').fill('mine');
  await dialog.locator('input').press('Enter');
  await saved(page);
  must(readFileSync(join(shop, 'mine.yaml'), 'utf8') === await source(page), 'the file has another text');
  must((await page.textContent('#name')) === 'mine.yaml', 'the name is not told');
  must((await source(page)).includes('job: mine\n'), 'the title is not the name');
  await field(page, 'job').fill('Mine');
  await until('typed', async () => (await source(page)).includes('job: Mine'));
  await page.keyboard.press('Control+s');
  await until('saved again, unasked', async () => readFileSync(join(shop, 'mine.yaml'), 'utf8').includes('job: Mine'));
  await page.reload();
  await until('the same file', async () => (await page.textContent('#name')) === 'mine.yaml' && (await source(page)).includes('job: Mine'));
  must(!await page.locator('#start').isVisible(), 'it begins anew');
  await page.close();
});

await attempt('a file of the folder', async () => {
  const page = await tab(program.address);
  await page.locator('.card a', { hasText: 'bench.yaml' }).click();
  await until('it is open', async () => (await page.textContent('#name')) === 'bench.yaml' && (await source(page)) === jobText);
  const other = await tab(program.address, { context: page.context() });
  await other.locator('.card a', { hasText: 'mine.yaml' }).click();
  await until('another tab has another', async () => (await other.textContent('#name')) === 'mine.yaml');
  await field(page, 'job').fill('Bench 2');
  await until('typed', async () => (await source(page)).includes('job: Bench 2'));
  await page.locator('#save').click();
  await saved(page);
  must(readFileSync(join(shop, 'bench.yaml'), 'utf8').includes('job: Bench 2'), 'not into its own file');
  must(readFileSync(join(shop, 'mine.yaml'), 'utf8').includes('job: Mine'), 'into the file of the other tab');
  await page.locator('#begin').click();
  await answerAs(card(page, 'I know the box'));
  await card(page, 'I know the box').locator('button[type=submit]').click();
  await until('a new one without a file', async () => (await page.textContent('#name')) === 'New job' && (await source(page)).includes('outside:'));
  await until('and not the example', async () => !await page.locator('#start').isVisible());
  must((await page.textContent('#state')) === 'not saved', 'it is called saved');
  await page.close({ runBeforeUnload: false });
  await other.close({ runBeforeUnload: false });
});

await attempt('unsaved changes come back with their tab', async () => {
  const page = await tab(program.address);
  await page.locator('.card a', { hasText: 'bench.yaml' }).click();
  await until('it is open', async () => (await page.textContent('#name')) === 'bench.yaml');
  await field(page, 'job').fill('Bench 3');
  await until('typed', async () => (await source(page)).includes('job: Bench 3'));
  page.on('dialog', (d) => d.accept());
  await page.reload();
  await until('they are told', async () => (await page.textContent('#notice')).includes('here again') && (await source(page)).includes('job: Bench 3'));
  await page.locator('#notice button', { hasText: 'Give them up' }).click();
  await until('given up', async () => (await source(page)).includes('job: Bench 2'));
  await page.close({ runBeforeUnload: false });
});

await attempt('an empty file and a new one', async () => {
  writeFileSync(join(shop, 'empty.yaml'), '\n');
  for (const name of ['empty.yaml', 'new.yaml']) {
    const one = await serve(['view', name], shop);
    const page = await tab(one.address);
    await until('the cards', async () => (await page.locator('.card').count()) === 3);
    await page.getByRole('button', { name: 'Look at an example first' }).click();
    must((await page.textContent('#name')) === name && (await page.textContent('#state')) === 'not saved', `${await page.textContent('#name')} is ${await page.textContent('#state')}`);
    must(!existsSync(join(shop, 'new.yaml')) && readFileSync(join(shop, 'empty.yaml'), 'utf8') === '\n' || name === 'new.yaml', 'written unasked');
    await page.keyboard.press('Control+s');
    await saved(page);
    must(readFileSync(join(shop, name), 'utf8') === await source(page), 'the file has another text');
    await page.close();
    must(await one.stop() === 0, 'it fails');
  }
});

await attempt('a phone', async () => {
  const page = await tab(program.address, { viewport: { width: 390, height: 740 }, hasTouch: true, isMobile: true });
  await until('the cards', async () => (await page.locator('.card').count()) === 3);
  must(await page.evaluate(() => document.documentElement.scrollWidth) <= 390, 'wider than the phone');
  await accessible(page);
  await page.screenshot({ path: join(folder, 'start-phone.png'), fullPage: true });
  await page.close();
});

await attempt('dark', async () => {
  const page = await tab(program.address, { colorScheme: 'dark' });
  await until('the cards', async () => (await page.locator('.card').count()) === 3);
  await accessible(page);
  await page.screenshot({ path: join(folder, 'start-dark.png') });
  await page.close();
});

await attempt('nothing beyond the folder', async () => {
  must(readFileSync(join(elsewhere, 'secret.yaml'), 'utf8').includes('Secret'), 'a file elsewhere was written');
  must(readdirSync(elsewhere).join() === 'secret.yaml', `elsewhere: ${readdirSync(elsewhere)}`);
});

await done();
