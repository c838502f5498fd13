// What stands on the client's sheet beside the price: answers, what to know, payments, until when; and what is left off.
import { describe, expect, test } from 'vitest';
import { clientSheet } from '../../src/client/client-sheet.ts';
import type { ClientLevel } from '../../src/client/client-copy.ts';
import { Estimate } from '../../src/notebook/estimate.ts';
import { templateText } from '../templates/texts.ts';

const SLAB = `# Slab at Kestrel Court

## Slab

- Concrete: $300
  - cost: material
  - client: a slab beside the shed
  - from: quoted by the yard, 2026-03-06, good until 2026-04-15
- Pour it: $200
  - cost: labour
  - note: never tell anybody
- Gain: 20% of total cost of every part
  - price: markup
- Price: total cost of every part plus gain
`;

function handing(text: string, level: ClientLevel = 'parts', today: string | null = '2026-03-12') {
  return clientSheet(new Estimate(text), level, today);
}

function sheetOf(text: string, level: ClientLevel = 'parts', today: string | null = '2026-03-12') {
  const found = handing(text, level, today);
  if (found.kind !== 'sheet') throw new Error(found.message);
  return found;
}

const PAID = (last: string): string => `${SLAB}
### Payments

- Deposit: 10% of price, rounded to the nearest cent
  - client: with the signature
  - from: chosen: as little as they take
- Rest: ${last}
- Deposit check: deposit is at most $1,000
- All of them: total of deposit and rest
`;

describe('payments', () => {
  test('under their heading are told with when they are due, without sums, checks or sources', () => {
    const { sheet, leftOff } = sheetOf(PAID('price minus deposit'));
    expect(sheet.payments).toEqual([
      { name: 'Deposit', amount: '60.00', when: 'with the signature' },
      { name: 'Rest', amount: '540.00', when: '' },
    ]);
    expect(leftOff).toEqual([]);
    expect(sheet.toKnow).toHaveLength(1);
  });

  test.each(['price minus deposit minus $0.01', '$?', '$700 minus deposit'])(
    'that are not the price to the cent are left off: %s',
    (last) => {
      const { sheet, leftOff } = sheetOf(PAID(last));
      expect(sheet.payments).toEqual([]);
      expect(leftOff).toEqual([
        'The payments are not the price to the cent, so they are left off.',
      ]);
    },
  );

  test('are none where no heading says so', () => {
    const { sheet, leftOff } = sheetOf(SLAB);
    expect([sheet.payments, leftOff]).toEqual([[], []]);
  });
});

describe('answers', () => {
  const LINES = (water: string): string => `${SLAB}
- Permit fees: by others
  - choices: included, not needed, by others
  - client: the owner of the house asks for it
- Water: ${water}
  - choices: included, not needed, by others
- Finish: broomed
  - choices: broomed, smooth
`;

  test('of lines with these choices are named under what they say', () => {
    const { sheet } = sheetOf(LINES('included'));
    expect(sheet.included).toEqual([{ name: 'Water', told: '' }]);
    expect(sheet.byOthers).toEqual([
      { name: 'Permit fees', told: 'the owner of the house asks for it' },
    ]);
    expect(sheet.notNeeded).toEqual([]);
    expect(sheet.toKnow).toEqual([
      'A permit is asked for and paid by others. Work that needs one begins when the building department has granted it.',
    ]);
  });

  test('that nobody gave yet are left off, and the owner is told', () => {
    const { sheet, leftOff } = sheetOf(LINES('?'));
    expect(sheet.included).toEqual([]);
    expect(leftOff).toEqual(['“Water” has no answer yet, so it is left off.']);
  });

  test('in a column of a table are named by the first column, and nothing else of the row', () => {
    const { sheet, leftOff } = sheetOf(`${SLAB}
- Asked:

  | item   | answer     | where           |
  |--------|------------|-----------------|
  | permit | not needed | under 200 sq ft |
  | debris | included   | my brother’s    |
  | water  |            |                 |

- Sizes:

  | item   | size  |
  |--------|-------|
  | permit | large |
`);
    expect(sheet.included).toEqual([{ name: 'debris', told: '' }]);
    expect(sheet.notNeeded).toEqual([{ name: 'permit', told: '' }]);
    expect(leftOff).toEqual(['“water” has no answer yet, so it is left off.']);
    expect(sheet.toKnow[0]).toMatch(/^No permit is in this price\. Ask the local building/);
    expect(sheet.copy.lines.map(({ name }) => name)).toEqual(['Slab']);
  });

  test('of the template are all asked, and nothing goes out before they are answered', () => {
    const list = templateText('often-forgotten.md').replace(/^# .*\n/, '');
    const asked = handing(SLAB + list.slice(list.indexOf('## ')));
    expect(asked.kind === 'not-yet' && asked.message).toMatch(
      /^This price is not complete: "Sales tax"/,
    );
    const answered = list.slice(list.indexOf('## ')).replace(/: \?\n/g, ': included\n');
    const { sheet } = sheetOf(SLAB + answered);
    expect(sheet.included).toHaveLength(answered.match(/^- .*: included$/gm)?.length ?? 0);
    expect(sheet.included.length).toBeGreaterThan(15);
  });
});

test('what costs in the list of what is often forgotten is called work that was asked for', () => {
  const demo = new Estimate(templateText('kestrel-court.md'));
  const found = clientSheet(demo, 'parts', null);
  const names = found.kind === 'sheet' ? found.sheet.copy.lines.map(({ name }) => name) : [];
  expect(names.at(-1)).toBe('Other work asked for');
  expect(names).not.toContain('Often forgotten');
});

describe('a permit', () => {
  test.each([
    ['$186', /^The permit is in this price\./],
    ['$0', /^No permit is in this price\. Ask the local building department/],
  ])('that costs %s', (cost, said) => {
    const { sheet } = sheetOf(`${SLAB}- Building permit: ${cost}\n  - cost: fee\n`);
    expect(sheet.toKnow[0]).toMatch(said);
  });
});

describe('until when it is good', () => {
  test('is the day on which the first price runs out', () => {
    expect(sheetOf(SLAB, 'parts', '2026-04-15').sheet.until).toBe('2026-04-15');
    expect(sheetOf(SLAB, 'parts', null).sheet.until).toBe('2026-04-15');
  });

  test('is not told when that day is over, and the owner is', () => {
    const { sheet, leftOff } = sheetOf(SLAB, 'parts', '2026-04-16');
    expect(sheet.until).toBeNull();
    expect(leftOff).toEqual(['A price in here is past its day: choose until when this is good.']);
  });
});

describe('the work', () => {
  test('is told in the words written for the client, only where it is asked for', () => {
    expect(sheetOf(SLAB, 'described').sheet.copy.lines).toEqual([
      { name: 'Slab', amount: '600.00', work: ['a slab beside the shed'] },
    ]);
    expect(JSON.stringify(sheetOf(SLAB, 'parts'))).not.toContain('beside the shed');
  });

  test('that nobody described is pointed out to the owner', () => {
    const { leftOff } = sheetOf(SLAB.replace(/ {2}- client.*\n/, ''), 'described');
    expect(leftOff).toEqual([
      'No work is described yet: put “client” under a cost line, with what is done there.',
    ]);
  });

  test('under a line that is no cost it is something to know, at every level', () => {
    const { sheet } = sheetOf(`${SLAB}- Depth: 4 in\n  - client: Keep cars off it.\n`, 'price');
    expect(sheet.toKnow[1]).toBe('Keep cars off it.');
  });
});
