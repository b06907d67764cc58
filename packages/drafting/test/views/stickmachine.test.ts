import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { type Panel, readJob, solve } from '@wattlewright/model';
import { chromium } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { toSvg } from '../../src/svg.ts';
import { courseStick } from '../../src/views/stickcourse.ts';
import { staveStick } from '../../src/views/stickstave.ts';

const example = (name: string): Panel =>
  solve(readJob(readFileSync(new URL(`../../../../examples/${name}.yaml`, import.meta.url), 'utf8')))[0] as Panel;

/** As much of a browser's page as is measured here. */
interface Page {
  querySelector(selector: string): Drawn;
  querySelectorAll(selector: string): Iterable<Drawn>;
}
interface Drawn {
  getBoundingClientRect(): { width: number; height: number };
  getBBox(): { x: number; y: number; width: number; height: number };
  readonly viewBox: { readonly baseVal: { width: number; height: number } };
}

/** A browser to measure in; checks on a server must have one, elsewhere its absence skips the test. */
const browser = spawnSync('sh', [
  '-c',
  'command -v chromium || command -v chromium-browser || command -v google-chrome',
])
  .stdout.toString()
  .trim();

describe.skipIf(browser === '' && process.env.CI !== 'true')('sticks for machines, measured in a browser', () => {
  /** Millimetres of a CSS pixel: CSS Values and Units, 1 in = 96 px. */
  const px = 25.4 / 96;

  /** Size of the whole drawing on screen, what its units make of it, and each tick's box in those units, mm. */
  async function measured(svg: string): Promise<{ screen: number[]; units: number[]; ticks: number[][] }> {
    const launched = await chromium.launch({ executablePath: browser, args: ['--no-sandbox'] });
    try {
      const page = await launched.newPage();
      await page.setContent(`<body style="margin:0">${svg}</body>`);
      return await page.evaluate((scale) => {
        const { document } = globalThis as unknown as { document: Page };
        const root = document.querySelector('svg');
        const { width, height } = root.getBoundingClientRect();
        const view = root.viewBox.baseVal;
        const ticks = [...document.querySelectorAll('g.tick path')].map((path) => {
          const { x, y, width: w, height: h } = path.getBBox();
          return [x, y, x + w, y + h];
        });
        return { screen: [width * scale, height * scale], units: [view.width, view.height], ticks };
      }, px);
    } finally {
      await launched.close();
    }
  }

  /** Chromium lays boxes out in 64ths of a pixel; a unit is a millimetre as near as that lets it say. */
  function expectTrueSize({ screen, units }: { screen: number[]; units: number[] }): void {
    for (const k of [0, 1]) expect(Math.abs((screen[k] as number) - (units[k] as number))).toBeLessThan(px / 64);
  }

  test('staveStick as SVG for machines: every face within 0.01 mm of the solved place, from the outline’s left', async () => {
    const panel = example('larch-deck-guard');
    const seen = await measured(toSvg(staveStick(panel), { machine: true }));
    expectTrueSize(seen);
    const { ticks } = seen;
    const outline = ticks.find(([u0, , u1]) => (u1 as number) - (u0 as number) > 100) as number[];
    expect((outline[2] as number) - (outline[0] as number)).toBeCloseTo(panel.rail.length, 2);
    expect((outline[3] as number) - (outline[1] as number)).toBeCloseTo(70, 2);
    const places = ticks.map(([u0]) => (u0 as number) - (outline[0] as number));
    for (const left of panel.staves.lefts)
      for (const face of [left, left + panel.staves.width])
        expect(Math.min(...places.map((place) => Math.abs(place - face)))).toBeLessThan(0.01);
  });

  test('courseStick as SVG for machines: every course within 0.01 mm of the solved place, from the foot', async () => {
    const panel = example('wash-house-gate');
    const seen = await measured(toSvg(courseStick(panel), { machine: true }));
    expectTrueSize(seen);
    const { ticks } = seen;
    const foot = Math.max(...ticks.map(([, , , v1]) => v1 as number));
    const places = ticks.map(([, v0]) => foot - (v0 as number));
    for (const bottom of panel.courses.bottoms.slice(1))
      expect(Math.min(...places.map((place) => Math.abs(place - (bottom - panel.clear.bottom))))).toBeLessThan(0.01);
  });
});
