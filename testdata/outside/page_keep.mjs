// What a person typed is not lost on the page, whatever comes between: see person.mjs.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { answerAs, attempt, done, field, folder, must, serve, source, tab, until } from './person.mjs';

const jobText = `units: mm
job: Bench
stock:
  birch: {thickness: [12.21, 12.16, 12.24], sheet: 1525 x 1525, grain: length}
  hard: {thickness: 5.9, sheet: 2440 x 1220}
cutter: {kind: saw, width: 6.35}
drawers:
  - {name: wide, count: 2, outside: 460 x 140 x 500, sides: birch, bottom: hard}
`;

const shop = join(folder, 'shop');
mkdirSync(shop);
for (const name of ['a.yaml', 'b.yaml']) writeFileSync(join(shop, name), jobText);
const program = await serve(['view'], shop);

// open gives a page on a file of the folder.
async function open(file) {
  const page = await tab(program.address);
  await page.goto(`${program.address}?file=${file}`);
  await until('the file', async () => (await page.textContent('#name')) === file && (await source(page)) === jobText);
  return page;
}

// type gives the job another name, in its field.
async function type(page, name) {
  await field(page, 'job').fill(name);
  await until('typed', async () => (await source(page)).includes(`job: ${name}`));
}

const state = (page) => page.textContent('#state');
const notice = (page) => page.textContent('#notice');

await attempt('an edit under way', async () => {
  const page = await open('a.yaml');
  await until('all is saved', async () => (await state(page)) === 'as saved');
  let held = true;
  await page.route('**/api/edit*', async (route) => {
    while (held) await new Promise((done) => setTimeout(done, 20));
    await route.continue().catch(() => { /* its page has gone */ });
  });
  await field(page, 'job').fill('Slow');
  await until('it is not saved', async () => (await state(page)) === 'not saved');
  must((await page.getAttribute('#save', 'aria-disabled')) === 'false', 'it cannot be saved');
  must(!(await source(page)).includes('Slow'), 'the edit was not under way');
  let asked = false;
  page.on('dialog', (d) => { asked = true; d.accept(); });
  await page.reload();
  held = false;
  must(asked, 'the page was left unasked');
  await until('the edit is made', async () => (await source(page)).includes('job: Slow'));
  await page.close({ runBeforeUnload: false });
});

await attempt('a first save that fails', async () => {
  const page = await tab(program.address);
  page.expected.push('500');
  await page.getByRole('button', { name: 'Look at an example first' }).click();
  await page.route('**/api/save*', (route) => route.fulfill({ status: 500, json: { error: 'nothing was saved: the disk is full' } }), { times: 1 });
  const save = async () => {
    await page.keyboard.press('Control+s');
    await page.locator('#naming input').fill('first');
    await page.locator('#naming input').press('Enter');
  };
  await save();
  await until('it is told', async () => (await notice(page)).includes('the disk is full'));
  must((await page.textContent('#name')) === 'New job' && !page.url().includes('first'), `it is called ${await page.textContent('#name')} at ${page.url()}`);
  must(!existsSync(join(shop, 'first.yaml')), 'it was written');
  await save();
  await until('saved', async () => (await state(page)) === 'as saved');
  must((await page.textContent('#name')) === 'first.yaml' && page.url().includes('first.yaml'), 'it has no name');
  must(readFileSync(join(shop, 'first.yaml'), 'utf8') === await source(page), 'the file has another text');
  await page.close();
});

await attempt('another job in the same tab, and back', async () => {
  const page = await open('a.yaml');
  page.on('dialog', (d) => d.accept());
  await type(page, 'Mine');
  await page.goto(`${program.address}?file=b.yaml`);
  await until('the other', async () => (await page.textContent('#name')) === 'b.yaml' && (await source(page)) === jobText);
  await page.goBack();
  await until('the changes', async () => (await source(page)).includes('job: Mine') && (await notice(page)).includes('here again'));
  await page.close({ runBeforeUnload: false });
});

await attempt('a new job, and stay', async () => {
  const page = await open('a.yaml');
  await type(page, 'Stay');
  await page.locator('#begin').click();
  const dialog = page.waitForEvent('dialog');
  await answerAs(page.locator('.card', { hasText: 'I know the box' }));
  await page.locator('.card', { hasText: 'I know the box' }).locator('button[type=submit]').click({ noWaitAfter: true });
  await (await dialog).dismiss();
  must((await source(page)).includes('job: Stay'), 'the changes are gone');
  page.on('dialog', (d) => d.accept());
  await page.goto(`${program.address}?file=`);
  await until('a page without a job', async () => await page.locator('.card').count() === 3);
  await page.close({ runBeforeUnload: false });
});

await attempt('the program ends', async () => {
  const page = await open('b.yaml');
  page.expected.push('ERR_CONNECTION_REFUSED', 'ERR_EMPTY_RESPONSE', 'ERR_CONNECTION_RESET');
  await type(page, 'Last');
  await program.stop();
  await until('it is told unasked', async () => (await notice(page)).includes('The program has ended; copy the text'));
  await page.locator('#notice button', { hasText: 'Close' }).click();
  const again = page.waitForEvent('requestfailed', (r) => r.url().includes('api/edit'));
  await field(page, 'job').fill('Later');
  await again;
  const asked = page.waitForEvent('requestfailed', (r) => r.url().includes('api/disk'));
  await asked;
  must(!await page.locator('#notice').isVisible(), 'it is told twice');
  must((await source(page)).includes('job: Last') && (await field(page, 'job').inputValue()) === 'Later', 'what was typed is gone');
  await page.route('**/api/disk*', (route) => route.fulfill({ status: 204 }));
  await page.route('**/api/edit*', (route) => {
    must(JSON.parse(route.request().postData()).value === 'Later', 'another edit');
    return route.fulfill({ status: 422, json: { error: 'the edit has come' } });
  });
  page.expected.push('422');
  await until('the edit is made when it answers again', async () => (await page.textContent('body')).includes('the edit has come'));
  await page.close({ runBeforeUnload: false });
});

await done();
