// Works on the page of `drawerwright view` as a person does: see person.mjs. Takes, beside the
// command and a folder, how many edits the memory of page and program is measured over.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { launch } from './browser.mjs';
import * as person from './person.mjs';

const { attempt, accessible, browser, folder, must, say, source, unfold, until } = person;
const many = Number(process.argv[4]);

const jobText = `# Bench drawers
units: mm   # of bare numbers
stock:
  birch: {thickness: [12.21, 12.16, 12.24], sheet: 1525 x 1525, grain: length, price: 58}   # the good one
  hard: {thickness: 5.9, sheet: 2440 x 1220}
cutter: {kind: saw, width: 6.35}
drawers:
  - name: wide   # named
    count: 2
    outside: 460 x 140 x 500   # width x height x depth
    sides: birch
    bottom: hard
`;

const bankText = `units: mm
stock:
  birch: {thickness: [12.21, 12.16, 12.24], sheet: 1525 x 1525, grain: length, price: 58}
  hard: {thickness: 5.9, sheet: 2440 x 1220}
cutter: {kind: saw, width: 6.35}
openings:
  base: {width: 564, height: 2100, depth: 545, cabinet: frameless, fronts: overlay}
drawers:
  - name: bank
    opening: base
    slide: side-mount
    rows: 12
    sides: birch
    bottom: hard
`;

// serve starts the command on a job.
async function serve(name, text) {
  const job = person.file(name, text);
  return { ...await person.serve(['view', job.path]), read: job.read, file: job.path };
}

const context = await browser.newContext({ viewport: { width: 1500, height: 950 }, acceptDownloads: true });

// tab opens a page of the job, beside the others of this browser unless it has a context of its own.
const tab = (address, settings = { context }) => person.tab(address, settings);

const field = (page, ...path) => person.field(page, ...path).first();
const saidAt = (page, ...path) => page.locator(`[data-path='${JSON.stringify(path)}'] .said`);
const number = async (page, row, column) => page.locator(`#lists table tbody tr:has(th:text-is("${row}")) :nth-child(${column})`).first().textContent();

const focusIn = (page, path) => page.evaluate((p) => document.activeElement.closest('[data-path]')?.dataset.path === p, JSON.stringify(path));

const one = await serve('bench.yaml', jobText);
const page = await tab(one.address);

await attempt('a thickness', async () => {
  must((await page.context().cookies()).length === 0, 'a cookie, which every port of the computer gets');
  await page.locator('#fields summary', { hasText: 'birch' }).click();
  const before = await number(page, 'clear inside', 2);
  await field(page, 'stock', 'birch', 'thickness').fill('12.5');
  await until('numbers move', async () => (await number(page, 'clear inside', 2)) !== before);
  must(await number(page, 'clear inside', 2) === '435', `460 - 2 x 12.5 is ${await number(page, 'clear inside', 2)}`);
  must(await source(page) === jobText.replace('[12.21, 12.16, 12.24]', '12.5'), `the text is ${await source(page)}`);
  must(one.read() === jobText, 'the file has changed unasked');
});

await attempt('text and form follow each other', async () => {
  must(!(await page.locator('#source').isVisible()), 'the text is not folded away');
  await page.locator('#file').click();
  await page.fill('#source', jobText.replace('460 x 140', '400 x 140'));
  await until('the form follows', async () => (await field(page, 'drawers', '0', 'outside').inputValue()) === '400 x 140 x 500');
  await field(page, 'drawers', '0', 'joint').selectOption('rabbet');
  await until('the text follows', async () => (await source(page)).includes('    bottom: hard\n    joint: rabbet\n'));
  must((await source(page)).includes('# width x height x depth'), 'a comment is lost');
});

await attempt('a mistake at its field', async () => {
  await field(page, 'drawers', '0', 'outside').fill('400 x 140');
  await until('the message stands at the field', async () => (await saidAt(page, 'drawers', '0', 'outside').textContent()).includes('Outside size of the box needs 3 numbers'));
  must(await field(page, 'drawers', '0', 'outside').getAttribute('aria-invalid') === 'true', 'the field is not marked');
  must((await page.locator('#gutter [data-level=error]').textContent()) === '10', 'the line is not marked');
  must(await page.locator('#stale').isVisible(), 'old numbers are not told');
  await page.locator('#tab-told').click();
  await page.locator('#messages button').first().click();
  must(await page.evaluate(() => document.activeElement.id === 'source'), 'a message does not lead to the text');
  await page.locator('#tab-fit').click();
  await page.locator('#source').focus();
  await page.fill('#source', 'units: mm\nstock: [\n');
  await until('a broken text is told', async () => (await page.locator('#messages li').count()) > 0 && await field(page, 'units').isDisabled());
});

await attempt('undo and redo', async () => {
  const broken = await source(page);
  await page.keyboard.press('Control+z');
  await until('undone once', async () => (await source(page)) !== broken);
  while (await page.locator('#undo').isEnabled()) {
    const now = await source(page);
    await page.locator('#undo').click();
    await until('undone', async () => (await source(page)) !== now);
  }
  must(await source(page) === jobText, `all undone is ${await source(page)}`);
  await until('the form is undone', async () => (await field(page, 'stock', 'birch', 'thickness').inputValue()) === '12.21, 12.16, 12.24');
  await page.keyboard.press('Control+Shift+z');
  await until('redone', async () => (await source(page)).includes('thickness: 12.5'));
});

await attempt('save', async () => {
  await page.keyboard.press('Control+s');
  await until('saved', async () => (await page.textContent('#state')) === 'as saved');
  must(one.read() === jobText.replace('[12.21, 12.16, 12.24]', '12.5'), `the file holds ${one.read()}`);
});

await attempt('two tabs', async () => {
  const other = await tab(one.address);
  await field(other, 'drawers', '0', 'count').fill('5');
  await field(page, 'drawers', '0', 'count').fill('7');
  await until('both typed', async () => (await source(other)).includes('count: 5') && (await source(page)).includes('count: 7'));
  other.expected.push('409');
  await page.locator('#save').click();
  await until('the first is saved', async () => one.read().includes('count: 7'));
  await other.locator('#save').click();
  await until('the later is told', async () => (await other.textContent('#notice')).includes('changed'));
  must(one.read().includes('count: 7'), 'the later save has won unasked');
  must((await source(other)).includes('count: 5'), 'the later tab has lost its edit');
  await other.locator('#notice button', { hasText: 'Take what is on disk' }).click();
  await until('taken', async () => (await source(other)).includes('count: 7'));
  await other.keyboard.press('Control+z');
  await until('and undone', async () => (await source(other)).includes('count: 5'));
  writeFileSync(one.file, one.read().replace('# Bench drawers', '# By another program'));
  await until('another program is told', async () => (await page.textContent('#notice')).includes('another tab or program'));
  await page.locator('#notice button', { hasText: 'Keep mine' }).click();
  await page.locator('#save').click();
  await until('kept', async () => one.read().includes('# Bench drawers'));
  await other.close({ runBeforeUnload: false });
});

await attempt('download', async () => {
  await page.locator('#take-open').click();
  const [download] = await Promise.all([page.waitForEvent('download'), page.locator('[data-take=all]').click()]);
  await download.saveAs(join(folder, 'bench.zip'));
  must(download.suggestedFilename() === 'bench.zip', download.suggestedFilename());
});

await attempt('a name that would be markup', async () => {
  const before = await source(page);
  const name = '<img src=x onerror="document.title=1">';
  await field(page, 'drawers', '0', 'name').fill(name); // refused, and told with the name
  await field(page, 'job').fill(name);
  await until('it is a name', async () => (await page.locator('#messages').textContent()).includes('<img src=x') && (await page.locator('#fields option').allTextContents()).includes(name));
  await until('both are made', async () => (await source(page)).split('<img src=x').length === 3);
  must(await page.locator('img').count() === 0, 'it has become markup');
  while (await source(page) !== before) {
    const now = await source(page);
    await page.locator('#undo').click();
    await until('undone', async () => (await source(page)) !== now);
  }
});

await attempt('sheets', async () => {
  await page.locator('#tab-sheets').click();
  await until('sheets are drawn', async () => (await page.locator('#lists figure .piece').count()) > 4);
  const first = await page.locator('#lists h2 + p').first().textContent(); // how many sheets
  await field(page, 'drawers', '0', 'count').fill('30');
  await until('and drawn anew', async () => ![first, null].includes(await page.locator('#lists h2 + p').first().textContent().catch(() => null)));
  await until('cuts are there', async () => (await page.locator('#lists details tbody tr').count()) > 20);
  await page.screenshot({ path: join(folder, 'sheets.png') });
  await accessible(page);
  await page.locator('#tab-fit').click();
});

await attempt('units', async () => {
  await page.selectOption('#unit', 'in');
  await until('inches', async () => (await page.locator('#lists caption').first().textContent()).endsWith('in'));
  must(!(await source(page)).includes('units: in'), 'the display has changed the job');
  await page.selectOption('#unit', '');
  await until('as the job has them', async () => (await page.locator('#lists caption').first().textContent()).endsWith('mm'));
});

await attempt('sections, copies and removals', async () => {
  const before = await source(page);
  await page.locator('button[aria-label="copy drawer wide"]').click();
  await until('a copy', async () => (await source(page)).includes('- name: wide 2'));
  await until('its name has the focus', () => focusIn(page, ['drawers', '1', 'name']));
  await until('the copy is chosen', async () => (await page.inputValue('#drawer')) === 'wide 2' && (await field(page, 'drawers', '1', 'name').inputValue()) === 'wide 2');
  await page.locator('button[aria-label="remove drawer wide 2"]').first().click();
  await until('and gone', async () => (await source(page)) === before);
  await until('the focus stays in the form', () => page.evaluate(() => document.activeElement.closest('#fields') !== null));
  must((await field(page, 'drawers', '0', 'sides').inputValue()) === 'birch', 'the form shows a drawer that is gone');
  await unfold(page);
  await page.locator('#fields summary', { hasText: 'joinery' }).first().click();
  await field(page, 'drawers', '0', 'joinery', 'fence-distance').fill('6');
  await until('a section', async () => (await source(page)).includes('joinery: {fence-distance: 6}'));
  await field(page, 'drawers', '0', 'joinery', 'fence-distance').fill('');
  await page.keyboard.press('Enter');
  await until('an empty section', async () => !(await source(page)).includes('fence-distance'));
});

await attempt('an emptied field', async () => {
  await field(page, 'drawers', '0', 'count').fill('t');
  await until('a mistake is told', async () => (await saidAt(page, 'drawers', '0', 'count').textContent()) !== '');
  await field(page, 'drawers', '0', 'count').fill('');
  must(!(await saidAt(page, 'drawers', '0', 'count').isVisible()), 'what was said of another value stays');
  must((await page.textContent('#state')) === 'not saved', 'an emptied field is called saved');
  await page.keyboard.press('Control+z');
  must((await field(page, 'drawers', '0', 'count').inputValue()) === 't', 'it does not come back');
  await field(page, 'drawers', '0', 'count').fill('');
  await page.keyboard.press('Control+s');
  await until('saved', async () => (await page.textContent('#state')) === 'as saved');
  must(!one.read().includes('count'), `the file holds ${one.read()}`);
});

await attempt('a cabinet', async () => {
  const bank = await serve('cabinet.yaml', bankText);
  const wide = await tab(bank.address);
  const fact = () => wide.locator('#picture .dw-fact').first().textContent();
  const offered = (name) => wide.locator(`[data-path='["drawers","0","${name}"]'] .chosen > select option`).evaluateAll((list) => list.map((o) => o.value));
  must((await offered('opening')).join() === ',base', `openings on offer: ${await offered('opening')}`);
  must((await offered('slide')).includes('side-mount'), `slides on offer: ${await offered('slide')}`);
  await wide.locator('#whole').check();
  await until('all drawers are shown', async () => (await fact()).startsWith('12 drawers'));
  must(!(await wide.locator('#picture label', { hasText: 'show' }).first().isVisible()), 'a second list chooses what is shown');
  await wide.selectOption('#drawer', { index: 2 });
  await until('the fit is of another', async () => (await wide.locator('#lists').textContent()).includes('bank-3'));
  must((await fact()).startsWith('12 drawers'), 'the cabinet is gone');
  await wide.locator('#whole').uncheck();
  await until('one drawer is shown', async () => (await wide.locator('#picture h2').textContent()) === 'bank-3' && !(await fact()).includes('drawers'));
  await wide.close({ runBeforeUnload: false });
  await bank.stop('SIGINT');
});

await attempt('the keyboard alone', async () => {
  const fresh = await tab(one.address);
  const seen = new Set();
  for (let i = 0; i < 60; i++) {
    await fresh.keyboard.press('Tab');
    seen.add(await fresh.evaluate(() => document.activeElement.closest('[data-path]')?.dataset.path ?? document.activeElement.tagName));
    if (seen.has('["drawers","0","count"]') && !seen.has('typed')) {
      seen.add('typed');
      await fresh.keyboard.press('Control+a');
      await fresh.keyboard.type('12');
    }
  }
  await until('typed', async () => (await source(fresh)).includes('count: 12'));
  must(await fresh.evaluate(() => { const o = getComputedStyle(document.activeElement); return o.outlineStyle !== 'none' && parseFloat(o.outlineWidth) > 0; }), 'the focus is not seen');
  await fresh.locator('#tab-fit').focus();
  await fresh.keyboard.press('ArrowRight');
  await until('the next list', async () => (await fresh.locator('[role=tab][aria-selected=true]').textContent()) === 'Cut list');
  await fresh.locator('#file').focus();
  await fresh.keyboard.press('Enter');
  await fresh.locator('#source').focus();
  await fresh.keyboard.press('Tab');
  must(await fresh.evaluate(() => document.activeElement.id !== 'source'), 'the text keeps the keyboard');
  await fresh.close({ runBeforeUnload: false });
});

for (const colorScheme of ['light', 'dark']) {
  await attempt(`${colorScheme}, for everybody`, async () => {
    await page.emulateMedia({ colorScheme });
    for (const list of ['parts', 'setups', 'buy', 'fit']) {
      await page.locator(`#tab-${list}`).click();
      await until(`${list} is shown`, async () => (await page.locator('#lists table').count()) > 0);
      await accessible(page);
    }
    await field(page, 'drawers', '0', 'outside').fill('400 x 140');
    await until('a mistake', async () => await page.locator('#stale').isVisible());
    await accessible(page);
    await page.screenshot({ path: join(folder, `${colorScheme}-mistake.png`) });
    await page.locator('#undo').click();
    await until('mended', async () => !(await page.locator('#stale').isVisible()));
    await page.screenshot({ path: join(folder, `${colorScheme}.png`) });
  });
}

await attempt('a phone', async () => {
  const phone = await browser.newContext({ viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true });
  const small = await tab(one.address, { context: phone }).catch((error) => { throw error; });
  for (const pane of ['form', 'text', 'result']) {
    await small.locator(`[data-to=${pane}]`).tap();
    const wide = await small.evaluate(() => document.documentElement.scrollWidth);
    must(wide <= 360, `${pane} is ${wide} wide`);
    must(await small.locator(`#${pane}`).isVisible(), `${pane} is not seen`);
    await small.screenshot({ path: join(folder, `phone-${pane}.png`) });
    await accessible(small);
  }
  await small.locator('[data-to=form]').tap();
  await field(small, 'drawers', '0', 'count').fill('3');
  await until('typed', async () => (await source(small)).includes('count: 3'));
  await phone.close();
});

await attempt('without WebGL', async () => {
  const flat = await launch({ webgl: false });
  const old = await tab(one.address, { context: await flat.newContext() });
  await until('lines are drawn', async () => ((await old.locator('#picture svg path').getAttribute('d')) ?? '').length > 100);
  await accessible(old);
  await flat.close();
});

await attempt('the end', async () => {
  await page.close({ runBeforeUnload: false });
  const before = one.read();
  const code = await one.stop('SIGTERM');
  must(code === 0, `the program ends with ${code}`);
  must(one.read() === before, 'the file has changed');
});

// memory makes many edits after as many, and compares what is kept of the page, and of the
// program where the system tells it.
async function memory(text) {
  const job = await serve('memory.yaml', text);
  const page = await tab(job.address);
  const cdp = await page.context().newCDPSession(page);
  await page.locator('#fields summary', { hasText: 'birch' }).click();
  await field(page, 'stock', 'birch', 'thickness').waitFor();
  const edits = () => page.evaluate(async (many) => {
    const input = document.querySelector(`[data-path='["stock","birch","thickness"]'] input`), source = document.getElementById('source');
    input.focus();
    for (let i = 0; i < many; i++) {
      input.value = String(12 + (i % 7) / 10);
      input.dispatchEvent(new InputEvent('input', { bubbles: true }));
      while (!source.value.includes(`thickness: ${input.value},`)) await new Promise((done) => setTimeout(done, 5));
      await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => requestAnimationFrame(done)))); // and its picture
    }
  }, many);
  const kept = async () => {
    for (let i = 0; i < 3; i++) await cdp.send('HeapProfiler.collectGarbage');
    const { nodes, jsEventListeners } = await cdp.send('Memory.getDOMCounters');
    const program = Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${job.pid}/status`, 'utf8'))[1]) / 1024;
    return { heap: (await cdp.send('Runtime.getHeapUsage')).usedSize / 2 ** 20, nodes, listeners: jsEventListeners, program };
  };
  await attempt('many edits', async () => {
    await edits();
    const before = await kept();
    await edits();
    const after = await kept();
    const told = `${JSON.stringify(before)}, then ${JSON.stringify(after)}`;
    say({ tried: 'memory', fault: '', told });
    must(after.heap - before.heap < 2 && after.nodes - before.nodes < 50 && after.listeners - before.listeners < 50 && after.program - before.program < 30, told);
  });
  await page.close({ runBeforeUnload: false });
  await job.stop('SIGINT');
}

await memory(jobText);
await browser.close();
