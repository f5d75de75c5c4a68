// What is taken along from the page: each kind, how far it has come, giving it up, and mistakes. It
// leaves what it was given in the folder; see person.mjs.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { accessible, attempt, done, field, file, folder, must, serve, tab, until } from './person.mjs';

const jobText = (title, more = '', n = 1) => `units: mm
${title}stock:
  birch: {thickness: [12.21, 12.16, 12.24], sheet: 1525 x 1525, grain: length, price: 58}
  hard: {thickness: [5.92, 5.86, 5.95], sheet: 2440 x 1220}
cutter: {kind: saw, width: 6.35}
${more}drawers:
${Array.from({ length: n }, (_, i) => `  - {name: wide-${i + 1}, outside: ${460 + i} x 140 x 500, sides: birch, bottom: hard}\n`).join('')}`;

const bench = file('take.yaml', jobText('job: <b>Bench</b> 7\n'));
const one = await serve(['view', bench.path]);
const page = await tab(one.address);
const progress = (p) => p.textContent('#taking');

// chosen opens the list and takes what it names.
async function chosen(p, what) {
  await p.click('#take-open');
  await p.locator('#take-list').getByRole('button', { name: new RegExp(`^${what}`) }).click();
}

async function kept(p, what) {
  const [download] = await Promise.all([p.waitForEvent('download', { timeout: 30000 }), chosen(p, what)]);
  const name = download.suggestedFilename();
  await download.saveAs(join(folder, name));
  await until('it is said to be there', async () => (await progress(p)).startsWith(`Downloaded ${name}, `));
  must(!await p.isVisible('#take-cancel'), 'what is there can be canceled');
  const cut = await p.locator('#taking').evaluate((e) => [e.scrollWidth - e.clientWidth, e.scrollHeight - e.clientHeight]);
  must(cut.every((by) => by <= 1), `${await progress(p)} is cut off by ${cut}`);
  return name;
}

await attempt('each kind', async () => {
  for (const [what, name] of [['Packet', 'packet.pdf'], ['Labels', 'labels.pdf'], ['Sheets', 'sheets.pdf'], ['For the phone', 'shop.html']]) {
    const got = await kept(page, what);
    must(got.endsWith(`-${name}`) && !got.includes('<'), `${what}: ${got}`);
    if (name.endsWith('.pdf')) must(readFileSync(join(folder, got)).subarray(0, 5).toString() === '%PDF-', `${got} is no PDF`);
  }
  const all = await kept(page, 'All files');
  must(all.endsWith('.zip'), all);
});

await attempt('what is typed last', async () => {
  await field(page, 'drawers', '0', 'outside', 'width').or(field(page, 'drawers', '0', 'outside')).first().fill('470 x 140 x 500');
  const got = await kept(page, 'For the phone');
  must(readFileSync(join(folder, got), 'utf8').includes('470 x 140 x 500'), 'the download is of what was before');
  const undo = () => page.locator('#undo').boundingBox();
  const before = await undo();
  await page.click('#undo');
  await until('an edit clears what was downloaded', async () => await progress(page) === '');
  must(JSON.stringify(before) === JSON.stringify(await undo()), 'the toolbar moves');
});

await attempt('the keyboard', async () => {
  await page.focus('#take-open');
  await page.keyboard.press('Enter');
  must(await page.isVisible('#take-list'), 'Enter does not open the list');
  await page.keyboard.press('Tab');
  must(await page.evaluate(() => document.activeElement.dataset.take) === 'packet', 'Tab does not lead into the list');
  await page.keyboard.press('Escape');
  must(!await page.isVisible('#take-list') && await page.evaluate(() => document.activeElement.id) === 'take-open', 'Escape does not close it');
});

await attempt('accessible', async () => {
  await page.click('#take-open');
  must((await page.locator('#take-list').textContent()).startsWith('Packet (PDF) to print'), await page.locator('#take-list').textContent());
  await accessible(page);
  await page.screenshot({ path: join(folder, 'take.png') });
  await page.keyboard.press('Escape');
});

await attempt('nothing of a job with mistakes', async () => {
  await field(page, 'cutter', 'width').fill('oops');
  await until('it is told', async () => await page.getAttribute('#take-open', 'aria-disabled') === 'true');
  await page.click('#take-open', { force: true });
  must(!await page.isVisible('#take-list'), 'the list opens');
  must((await page.getAttribute('#take-open', 'title')).includes('mistakes'), 'it does not say why');
  must(await page.textContent('#stale') === 'This entry cannot be drawn: mend the first mistake. The picture is of an earlier entry.' && await page.isVisible('#stale'), 'the old picture is not told');
  const flag = page.locator('#fields details', { has: page.locator(`[data-path='["cutter","width"]']`) }).locator('.flag').first();
  must(await flag.textContent() === 'to mend' && (await page.textContent('#count')).startsWith('1 to mend, 0 to watch'), `${await flag.textContent()}: ${await page.textContent('#count')}`);
  await field(page, 'cutter', 'width').fill('6.35');
  await until('it is mended', async () => await page.getAttribute('#take-open', 'aria-disabled') === 'false');
});

const bare = await serve(['view', file('bare.yaml', jobText('', 'paper: {labels: none}\n')).path]);

await attempt('what a job has none of', async () => {
  const other = await tab(bare.address);
  other.expected.push('422');
  await chosen(other, 'Labels');
  await until('it is told', async () => (await other.textContent('#notice')).includes('Labels: the job asks for no labels'));
  must(await progress(other) === 'Labels: not downloaded' && !await other.isVisible('#take-cancel'), 'it goes on');
  await other.context().close();
});

// large opens the page of a job of which there is a lot to build.
async function large() {
  const other = await tab(one.address);
  other.setDefaultTimeout(60000);
  await other.goto(many.address);
  await other.waitForSelector('#lists table', { state: 'attached' });
  return other;
}

const many = await serve(['view', file('many.yaml', jobText('', '', 100)).path]);

await attempt('how far it has come, and giving it up', async () => {
  const other = await large();
  await other.evaluate(() => {
    globalThis.said = [];
    new MutationObserver(() => said.push(document.getElementById('taking').textContent)).observe(document.getElementById('taking'), { childList: true });
  });
  await chosen(other, 'All files');
  await until('drawers are counted', async () => /building, \d+ of 100 drawers/.test(await progress(other)));
  must(await other.getAttribute('#take-open', 'aria-disabled') === 'true', 'a second one can be begun');
  await other.getByRole('button', { name: 'Cancel: All files' }).click();
  await until('it is given up', async () => await progress(other) === 'All files: canceled');
  must(await other.evaluate(() => document.activeElement.id) === 'take-open', 'the focus is lost');
  must(!await other.isVisible('#notice'), 'giving up is told as a mistake');
  const got = await kept(other, 'All files');
  const said = await other.evaluate(() => said);
  must(said.some((s) => / of 100 drawers/.test(s)) && got === 'many.zip', `${got}: ${said.slice(-8)}`);
  await other.context().close();
});

await attempt('the program ends meanwhile', async () => {
  const other = await large();
  other.expected.push('ERR_', 'Failed to load');
  await chosen(other, 'Packet');
  await until('drawers are counted', async () => /building, \d+ of 100 drawers/.test(await progress(other)));
  await many.stop('SIGKILL');
  // The download or the watch for the program fails first. The end of both is the same.
  await until('it is told', async () => await progress(other) === 'Packet: not downloaded');
  await until('the end is told', async () => /^The program has ended; copy the text/.test(await other.textContent('#notice')));
  await other.context().close();
});

await attempt('a phone', async () => {
  const phone = await tab(one.address, { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  await phone.tap('#take-open');
  const box = await phone.locator('#take-list').boundingBox();
  must(box.x >= 0 && box.x + box.width <= 390 && box.y + box.height <= 844, `the list is at ${JSON.stringify(box)}`);
  const small = await phone.$$eval('#take-list button', (all) => all.filter((b) => b.getBoundingClientRect().height < 44).length);
  must(small === 0, `${small} buttons under 44 px`);
  await accessible(phone);
  await phone.screenshot({ path: join(folder, 'take-phone.png') });
  await phone.context().close();
});

await attempt('lists on paper', async () => {
  await page.click('#tab-sheets');
  await page.locator('#lists figure').first().waitFor({ timeout: 30000 });
  const folds = page.locator('#lists details');
  must(await folds.count() > 0 && !await folds.first().evaluate((e) => e.open), 'the cuts are not folded away');
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await page.emulateMedia({ media: 'print' });
  must(await folds.evaluateAll((all) => all.every((e) => e.open)), 'cuts stay folded away on paper');
  must(!await page.isVisible('#take-open') && !await page.isVisible('#tabs'), 'buttons on paper');
  must(await page.$eval('#lists', (e) => getComputedStyle(e).overflowY) === 'visible', 'a list is cut off');
  await page.pdf({ path: join(folder, 'lists.pdf'), format: 'A4' });
  await page.evaluate(() => dispatchEvent(new Event('afterprint')));
  must(!await folds.first().evaluate((e) => e.open), 'they stay open afterward');
  await page.emulateMedia({ media: null });
});

await done();
