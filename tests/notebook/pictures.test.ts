import { expect, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { cellNamed } from './cells.ts';
import { draw, sheetOf } from '../../src/picture/draw.ts';
test('x', () => {
  const e = new Estimate(`## Landing

- Bays:

  | what | length | width |
  |---|---|---|
  | a | 6 ft | 4 ft |
  | b | 5 ft | 4 ft |

  - picture: slab plan for lengths length in bays, widths width in bays, bars 16 in

- Rise: 7 1/2 in per riser
- Count: 4 risers
- Depth: 11 in
  - picture: stair section for risers count, rise rise, run depth
- Thin: 4 in
  - picture: stair sction for risers count
  - picture: slab section for width 4 ft
`);
  for (const name of ['Bays', 'Depth', 'Thin']) {
    for (const p of e.picturesOf(cellNamed(e.notebook, name).id)) {
      console.log(JSON.stringify(p, null, 1).slice(0, 1500));
      if (p.kind === 'drawn') { const d = draw(p.name, p.given); console.log(d.alt, JSON.stringify(sheetOf(d, {width: 600, measures: 'us'}).letters)); }
    }
  }
  console.log(e.findings().filter(f => f.code.startsWith('picture')).map(f => [f.message, e.mendsFor(f).map(m => m.say)]));
  console.log(e.rename(cellNamed(e.notebook, 'Depth').id, 'Going'));
  console.log(e.rename(cellNamed(e.notebook, 'Bays').id, 'Slab bays'));
  console.log(e.renameColumn(cellNamed(e.notebook, 'Slab bays').id, 1, 'long'));
  console.log(e.notebook.text);
  expect(1).toBe(1);
});
