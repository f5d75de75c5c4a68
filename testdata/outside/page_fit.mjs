// How a drawer comes out, in pictures, and the verdict above: see person.mjs.
import { join } from 'node:path';
import { accessible, attempt, browser, done, field as fields, file, folder, must, serve, tab, until } from './person.mjs';

// Two drawers whose boxes fit, the second the less sure: its boards differ by more.
const good = `units: mm
job: Bench
stock:
  birch: {thickness: [12.21, 12.16, 12.24], sheet: 1525 x 1525, grain: length}
  rough: {thickness: [12.35, 12.05, 12.2], sheet: 1525 x 1525, grain: length}
  hard: {thickness: [5.92, 5.86, 5.95], sheet: 2440 x 1220}
cutter: {kind: saw, width: 6.35}
drawers:
  - {name: wide, count: 2, outside: 460 x 140 x 500, sides: birch, bottom: hard}
  - {name: small, outside: 300 x 90 x 500, sides: rough, bottom: hard}
`;
const bad = good.replace('[12.21, 12.16, 12.24]', '[12.21, 11.8, 12.5]');

const field = (page, ...path) => fields(page, ...path).first(); // beside some fields is another, for a new name
const list = (page) => page.locator('#lists .fit > li');
const verdict = (page) => page.locator('#verdict [role=status]').textContent();
const focused = (page) => page.evaluate(() => {
  const e = document.activeElement;
  return e.dataset.measure ?? e.closest('[data-path]')?.dataset.path ?? e.id;
});
const drawn = (page) => until('the fit is drawn', async () => (await list(page).count()) > 0);

// readings are the measures as drawn, in the lengths that stand at their axes, and as the table has
// them. A tick's place is taken from its line: the numbers are centered on it.
const readings = (page) => page.evaluate(() => [...document.querySelectorAll('#lists .fit > li')].map((li) => {
  const svg = li.querySelector('svg[role=img]');
  const of = (role) => [...svg.querySelectorAll(`.d-${role}`)];
  const across = (e) => {
    const b = e.getBBox();
    return [b.x, b.x + b.width];
  };
  const ticks = of('tick').map((e, i) => [across(e)[0], Number(of('number')[i].textContent.replace('−', '-'))]);
  const [first, last] = [ticks[0], ticks.at(-1)];
  const length = (x) => first[1] + (x - first[0]) * (last[1] - first[1]) / (last[0] - first[0]);
  const span = (list) => [Math.min(...list.map((e) => across(e)[0])), Math.max(...list.map((e) => across(e)[1]))].map(length);
  const set = across(of('set')[0]);
  const row = [...document.querySelectorAll('#lists .numbers tbody tr')].find((r) => r.cells[0].textContent === li.dataset.measure);
  const cell = (title) => {
    const heads = [...row.closest('table').tHead.rows[0].cells].map((c) => c.textContent);
    return row.cells[heads.findIndex((h) => h.startsWith(title))].textContent;
  };
  const range = (title) => cell(title).split(' to ').map(Number);
  return { name: li.dataset.measure, text: li.textContent, said: svg.querySelector('desc').textContent, bars: of('likely').concat(of('wrong')).map((e) => span([e])),
    drawn: { set: [length((set[0] + set[1]) / 2)], right: span(of('right')), likely: span([...of('likely'), ...of('wrong')]), worst: span(of('worst')) },
    table: { set: [Number(cell('as set'))], right: range('limits'), likely: range('likely'), worst: range('worst') },
    cells: [...row.cells].slice(1).map((c) => c.textContent), rows: row.parentElement.rows.length };
}));

// meeting are texts of a drawing that run into each other or out of it.
const meeting = (page) => page.evaluate(() => [...document.querySelectorAll('#lists .fit svg[role=img]')].flatMap((svg) => {
  const edge = svg.getBoundingClientRect(), texts = [...svg.querySelectorAll('text')].map((e) => [e.textContent, e.getBoundingClientRect()]);
  return texts.flatMap(([name, a], i) => [
    ...(a.left < edge.left - 1 || a.right > edge.right + 1 || a.bottom > edge.bottom + 2 ? [`${name} leaves its drawing`] : []),
    ...texts.slice(0, i).filter(([, b]) => a.left < b.right && b.left < a.right && a.top + 2 < b.bottom && b.top + 2 < a.bottom).map(([other]) => `${name} runs into ${other}`)]);
}));

// compare holds what is drawn against the table: to within half of its last digit, but for limits,
// which the table rounds inward, so that what reads right on a caliper is right.
function compare(all, half) {
  must(all.length > 8 && all.length === all[0].rows, `${all.length} measures are drawn, the table has ${all[0]?.rows}`);
  for (const m of all) {
    for (const [what, want] of Object.entries(m.table)) {
      const [over, under] = what === 'right' ? [2 * half, 0] : [half, half]; // how far the table may go inward and outward
      m.drawn[what].forEach((v, i) => {
        const inward = i === 0 ? want[i] - v : v - want[i];
        must(inward <= over + half / 100 && inward >= -under - half / 100, `${m.name}: ${what} is ${want}, drawn as ${m.drawn[what]}`);
      });
    }
    for (const [from, to] of m.bars) must(from >= m.drawn.worst[0] - half / 10 && to <= m.drawn.worst[1] + half / 10, `${m.name}: the bar leaves the worst case`);
    for (const number of m.cells.flatMap((c) => c.match(/-?\d+\.\d+/g) ?? [])) must(m.said.includes(number), `${m.name} is told as ${m.said}, without ${number}`);
  }
}

const one = await serve(['view', file('good.yaml', good).path]);
const page = await tab(one.address);

await attempt('pictures of the numbers', async () => {
  await drawn(page);
  compare(await readings(page), 0.005);
  await page.selectOption('#unit', 'in');
  await until('inches', async () => (await page.locator('#lists .numbers thead').first().textContent()).includes(' in'));
  compare(await readings(page), 0.0005);
  await page.selectOption('#unit', '');
  await until('millimeters', async () => (await page.locator('#lists .numbers thead').first().textContent()).includes(' mm'));
  const before = JSON.stringify(await readings(page));
  await field(page, 'drawers', '0', 'bottom').selectOption('birch');
  await until('the pictures follow', async () => JSON.stringify(await readings(page)) !== before);
  compare(await readings(page), 0.005);
  await page.locator('#undo').click();
  await until('and back', async () => JSON.stringify(await readings(page)) === before);
});

await attempt('for those who do not see it', async () => {
  const pictures = page.locator('#lists').getByRole('img');
  must(await pictures.count() === await list(page).count(), 'not every drawing is a picture with a name');
  must(await page.locator('#lists').getByRole('img', { name: 'outside depth' }).count() === 1, 'a drawing has not the name of its measure');
  const summary = page.locator('#lists .numbers summary');
  must(!await page.locator('#lists .numbers table').first().isVisible(), 'the numbers are not behind');
  await summary.focus();
  await page.keyboard.press('Enter');
  must(await page.locator('#lists .numbers table').first().isVisible(), 'the keyboard does not open the numbers');
  await page.keyboard.press('Enter');
});

await attempt('the verdict leads to what to watch', async () => {
  must(/^Fits: 2 kinds of drawer; of small, the least sure, .+ of 1,000 boxes come out right\.$/.test(await verdict(page)), `the verdict is ${await verdict(page)}`);
  must(await page.locator('#verdict .sign svg[aria-hidden=true]').count() === 1 && await page.locator('#verdict').getAttribute('data-mark') === 'right', 'no mark stands beside the word');
  await page.locator('#tab-parts').click();
  const way = page.locator('#verdict button[data-kind=measure]'), text = await way.textContent();
  await way.focus();
  await page.keyboard.press('Enter');
  await until('the measure has the focus', async () => (await page.evaluate(() => document.activeElement.matches('#lists .fit > li'))) && text.startsWith(`Nearest to its limit, of small: ${(await focused(page)).split(' (')[0]}`));
  must(await page.locator('#tab-fit').getAttribute('aria-selected') === 'true', 'the fit is not shown');
});

await attempt('nothing is told again', async () => {
  await until('the drawer is chosen', async () => await page.inputValue('#drawer') === 'small' && (await page.locator('#lists h2').textContent()) === 'Fit of small');
  await page.selectOption('#drawer', 'wide');
  await until('another drawer', async () => (await page.locator('#lists h2').textContent()) === 'Fit of wide');
  await page.evaluate(() => {
    globalThis.touched = 0;
    new MutationObserver((all) => { globalThis.touched += all.length; }).observe(document.getElementById('verdict'), { subtree: true, childList: true, characterData: true, attributes: true });
  });
  await field(page, 'job').fill('Another bench');
  await until('typed', async () => (await page.inputValue('#source')).includes('Another bench'));
  await page.waitForTimeout(300);
  must(await page.evaluate(() => globalThis.touched) === 0, 'the verdict was touched though it is the same');
  const width = field(page, 'cutter', 'width').first(), was = await width.inputValue();
  await width.fill('6.6');
  await until('the verdict follows', async () => !(await verdict(page)).startsWith('Fits'));
  must(await page.evaluate(() => globalThis.touched) > 0, 'the watch sees nothing');
  await width.fill(was);
  await until('it fits again', async () => (await verdict(page)).startsWith('Fits'));
});

await attempt('mistakes', async () => {
  await field(page, 'drawers', '0', 'outside').fill('460 x 140');
  await until('told', async () => (await verdict(page)) === 'Cannot be built: 1 mistake');
  must(await page.locator('#verdict').getAttribute('data-mark') === 'wrong', 'the mark is another');
  await field(page, 'cutter', 'width').fill('many');
  await until('both', async () => (await verdict(page)) === 'Cannot be built: 2 mistakes');
  const said = (await page.locator('#fields .said').allTextContents()).join('\n');
  must(said.includes('needs 3 numbers') && !said.includes('null'), `at the fields stands ${said}`);
  await accessible(page);
  await page.screenshot({ path: join(folder, 'fit-mistakes.png') });
  await page.locator('#tab-fit').focus();
  await page.locator('#verdict button[data-kind=problem]').click();
  await until('the first has the focus', async () => (await focused(page)) === JSON.stringify(['cutter', 'width']));
  await page.locator('#verdict button[data-kind=messages]').click();
  must(await page.locator('#messages').isVisible(), 'the messages are not shown');
  await page.locator('#tab-fit').click();
  await page.locator('#undo').click();
  await page.locator('#undo').click();
  await until('mended', async () => (await verdict(page)).startsWith('Fits: '));
});

const other = await serve(['view', file('bad.yaml', bad).path]);
const worse = await tab(other.address);

await attempt('what would help', async () => {
  await drawn(worse);
  compare(await readings(worse), 0.005);
  must((await verdict(worse)).startsWith('May not fit: 1 of 2 kinds of drawer; wide '), `the verdict is ${await verdict(worse)}`);
  must(await worse.locator('#verdict').getAttribute('data-mark') === 'doubt', 'the mark is another');
  const [watched, ...others] = await worse.locator('#verdict button').allTextContents();
  must(watched.startsWith('Most often wrong, of wide: box front recess at the side ends ('), `watch is ${watched}`);
  must(others.length === 2 && others.every((o) => o.startsWith('wide: ')), `besides: ${others}`);
  const wrong = worse.locator('#lists .fit > li:has(.word[data-level])');
  must(await wrong.count() > 0 && await wrong.locator('.d-hatch').count() > 0, 'what is wrong is not hatched');
  await worse.locator('#tab-told').click();
  const hints = await worse.locator('#messages .hint').allTextContents();
  await worse.locator('#tab-fit').click();
  await drawn(worse);
  for (const help of await wrong.locator('.help').allTextContents()) must(hints.includes(help), `beside a picture stands ${help}, the messages say ${hints}`);
  for (const help of await list(worse).filter({ hasNot: worse.locator('.word[data-level]') }).locator('.help').allTextContents()) must(help.startsWith('moved most by '), help);
  await worse.locator('#verdict button[data-kind=problem]').first().click();
  await until('the field has the focus', async () => (await focused(worse)).startsWith('["drawers","0"'));
  await worse.locator('#file').click();
  await worse.fill('#source', bad.replace('[12.21, 11.8, 12.5]', '[11.4, 12.2, 13]'));
  await until('it does not fit', async () => (await verdict(worse)).startsWith('Does not fit: '));
  const last = await worse.locator('#verdict button').last().textContent();
  must(last === `All ${await worse.locator('#messages li[data-level=warning]').count()} warnings`, `the others are ${last}`);
  must(await worse.locator('#verdict').getAttribute('data-mark') === 'wrong', 'the mark is another');
  await worse.locator('#undo').click();
  await worse.locator('#file').click();
  await until('and as before', async () => (await verdict(worse)).startsWith('May not fit: '));
});

for (const colorScheme of ['light', 'dark']) {
  await attempt(`${colorScheme}, for everybody`, async () => {
    for (const [name, tab] of [['good', page], ['bad', worse]]) {
      await tab.emulateMedia({ colorScheme });
      await accessible(tab);
      must((await meeting(tab)).length === 0, (await meeting(tab)).join('\n'));
      await tab.screenshot({ path: join(folder, `fit-${name}-${colorScheme}.png`) });
      await tab.locator('#lists').screenshot({ path: join(folder, `fit-${name}-${colorScheme}-lists.png`) });
    }
  });
}

await attempt('without colors', async () => {
  await worse.emulateMedia({ colorScheme: 'light' });
  await worse.evaluate(() => document.documentElement.style.setProperty('filter', 'grayscale(1)'));
  await worse.screenshot({ path: join(folder, 'fit-gray.png') });
  await worse.evaluate(() => document.documentElement.style.removeProperty('filter'));
});

await attempt('a phone', async () => {
  const phone = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 });
  for (const [name, { address }] of [['good', one], ['bad', other]]) {
    const small = await tab(address, { context: phone });
    await small.locator('[data-to=result]').tap();
    await drawn(small);
    const [wide, letters, nested] = await small.evaluate(() => [document.documentElement.scrollWidth,
      Math.min(...[...document.querySelectorAll('#lists .fit text')].map((t) => Number(t.getAttribute('font-size')) * t.ownerSVGElement.getBoundingClientRect().width / t.ownerSVGElement.viewBox.baseVal.width)),
      [...document.querySelectorAll('#lists, #lists *')].filter((e) => e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0 && ['auto', 'scroll'].includes(getComputedStyle(e).overflowX)).map((e) => e.id || e.className)]);
    must(wide <= 390, `the page is ${wide} wide`);
    must(letters >= 11, `letters are ${letters} high`);
    must(nested.length === 0, `scrolled within: ${nested}`);
    must((await meeting(small)).length === 0, (await meeting(small)).join('\n'));
    await accessible(small);
    await small.screenshot({ path: join(folder, `fit-phone-${name}-verdict.png`) });
    await small.locator('#lists h2').evaluate((e) => e.scrollIntoView());
    await small.screenshot({ path: join(folder, `fit-phone-${name}.png`) });
    await small.close({ runBeforeUnload: false });
  }
});

await attempt('the end', async () => {
  for (const tab of [page, worse]) must(!await tab.locator('#notice').isVisible(), `a notice: ${await tab.textContent('#notice')}`);
});

await done();
