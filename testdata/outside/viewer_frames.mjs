// Measures the script of a frame while boxes turn, in Chromium. Reads {"page"} as JSON, one a line; the
// cabinets of a page stand side by side as one, for no opening takes 60 drawers. Prints for each
// {"drawers", "ms": {what is shown: the 10th fastest of 41 frames}}: other work on the machine counts less.
import { browse, open } from './browser.mjs';
import { lines } from './panels.mjs';

const jobs = await lines();
await browse(true, async (browser) => {
  for (const job of jobs) {
    const { context, page } = await open(browser, job.page);
    console.log(JSON.stringify(await page.evaluate(async () => {
      const { state, state: { data } } = viewer;
      const whole = { name: 'all of them', boxes: [], at: [], carcass: { travel: [], assumed: [], outlines: [], clearances: [], collisions: [] } };
      let x = 0;
      for (const { boxes, at, carcass: c } of data.groups.filter((g) => g.carcass)) {
        const aside = (o) => ({ ...o, low: [o.low[0] + x, o.low[1], o.low[2]], high: [o.high[0] + x, o.high[1], o.high[2]], box: o.box < 0 ? o.box : o.box + whole.boxes.length });
        for (const list of ['outlines', 'clearances', 'collisions']) whole.carcass[list].push(...c[list].map(aside));
        whole.carcass.travel.push(...c.travel);
        whole.carcass.low ??= c.low;
        whole.carcass.high = aside(c).high;
        whole.at.push(...at.map((v) => [v[0] + x, v[1], v[2]]));
        whole.boxes.push(...boxes);
        x = whole.carcass.high[0] + 40;
      }
      viewer.update({ ...data, groups: [whole] });
      const ms = {};
      for (const [what, set] of Object.entries({
        closed: () => {},
        clearances: () => viewer.mark('plays', true),
        all: () => ['faces', 'grain'].forEach((m) => viewer.mark(m, true)),
        cut: () => viewer.section(0),
        open: () => {
          viewer.section(-1);
          viewer.open(0.5);
        },
      })) {
        set();
        const list = [];
        for (let i = 0; i < 41; i++) {
          state.camera.turn(3, 0);
          const { drawn } = viewer.frames;
          viewer.changed();
          while (viewer.frames.drawn === drawn) await new Promise(requestAnimationFrame);
          list.push(viewer.frames.last);
          viewer.painter.gl.finish(); // a picture that is still drawn takes a processor
        }
        ms[what] = list.sort((p, q) => p - q)[10];
      }
      return { drawers: whole.boxes.length, ms };
    })));
    await context.close();
  }
});
