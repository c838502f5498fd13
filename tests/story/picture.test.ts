// The picture in README is taken from the page as it is built: `PICTURE=take` before the command takes it anew.
import fs from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { DESK, choose, seenIn, visits, workingOf } from './visit.ts';

const visit = visits();
const root = path.resolve(import.meta.dirname, '../..');
const picture = path.join(import.meta.dirname, 'kestrel-court.png');

test('README shows the page at 1440 × 900 with the working of a chosen cell', async () => {
  const page = await (await visit({ viewport: DESK, colorScheme: 'light' })).tab();
  await choose(page, 'Bags to buy');
  await expect.poll(() => seenIn(page.locator('story-rod'))).toContain('Bag yield');
  await expect.poll(() => seenIn(workingOf(page))).toContain('rounded up to whole bags');
  // Without the keyboard's ring, as for someone who only looks.
  await page.mouse.move(0, 0);
  const taken = await page.screenshot({ animations: 'disabled' });
  if (process.env['PICTURE'] === 'take') fs.writeFileSync(picture, taken);

  expect(fs.readFileSync(path.join(root, 'README.md'), 'utf8')).toContain(
    path.relative(root, picture).replaceAll('\\', '/'),
  );
  const shown = fs.readFileSync(picture);
  expect(sizeOf(shown)).toEqual(sizeOf(taken));
  expect(sizeOf(shown)).toEqual([DESK.width, DESK.height]);
  expect(shown.length).toBeLessThan(250_000);
});

/** Width and height as a PNG has them at its start. */
function sizeOf(png: Buffer): readonly [number, number] {
  return [png.readUInt32BE(16), png.readUInt32BE(20)];
}
