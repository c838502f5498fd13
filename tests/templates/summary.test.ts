// The summary: any job's cost lines reckoned in whole cents beside it, its choices of profit and tax, its payments to the cent.
import { describe, expect, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { Chance } from '../properties/chance.ts';
import { type Opened, opened } from '../published/opened.ts';
import { keepsItsPromises } from './random-givens.ts';
import { toCents } from './remarks.ts';
import { INDEX, templateText } from './texts.ts';
import { warnsWhere } from './warns.ts';

const FILE = 'summary.md';
const KINDS = ['material', 'labour', 'equipment', 'subcontract', 'fee'] as const;
const SHARES = ['Material share', 'Labour share', 'Equipment share', 'Subcontract share', 'Fee share'] as const;

keepsItsPromises({
  file: FILE,
  enough: ['price is at least direct cost', 'all payments is price'],
  grows: [{ given: 'Priced area', never: ['Direct cost', 'Price'] }],
});

/** A job of these lines in cents, with the summary below it. */
function job(lines: readonly (readonly [kind: string, cents: number])[], written: Readonly<Record<string, string>> = {}): Opened {
  const parts = ['Deck', 'Path'].map((part, p) => {
    const own = lines.filter((_, at) => at % 2 === p);
    const cells = own.map(([kind, cents], at) => `- Line ${at + 1}: $${(cents / 100).toFixed(2)}\n  - cost: ${kind}\n  - from: here\n`);
    return `## ${part}\n${cells.join('')}\n`;
  });
  const text = templateText(FILE);
  const notebook = opened(`# Job\n\n${parts.join('')}${text.slice(text.indexOf('## '))}`);
  for (const [name, formula] of Object.entries(written)) {
    expect(notebook.estimate.setFormula(notebook.cell(name).id, formula)).toHaveProperty('change');
  }
  return notebook;
}

const cents = (notebook: Opened, name: string) => toCents(notebook.figure(name)[1].toFixed(2));
/** A share in hundredths of a percent of so many cents, half a cent up. */
const share = (of: bigint, hundredths: bigint) => (of * hundredths * 2n + 10_000n) / 20_000n;
/** What a margin adds, half a cent up. */
const margin = (of: bigint, hundredths: bigint) =>
  (of * hundredths * 2n + (10_000n - hundredths)) / (2n * (10_000n - hundredths));

const percent = (hundredths: bigint) => `${Number(hundredths) / 100}%`;

describe('from cost to price, in cents', () => {
  test.each(['margin', 'markup'])('with the profit as a %s, and each way of being taxed', (taken) => {
    for (let seed = 1; seed <= 20; seed++) {
      for (const taxed of ['materials bought', 'price', 'none']) {
        const chance = new Chance(seed);
        const lines = Array.from({ length: chance.whole(1, 9) }, () => [chance.of(KINDS), chance.whole(1, 900_000)] as const);
        const [contingency, overhead, profit, tax] = [2000, 4000, 4000, 1200].map((most) => BigInt(chance.whole(0, most))) as [bigint, bigint, bigint, bigint];
        const notebook = job(lines, {
          'Contingency share': percent(contingency),
          'Overhead share': percent(overhead),
          'Profit share': percent(profit),
          'Tax rate': percent(tax),
          'Profit taken as': taken,
          Taxed: taxed,
        });
        const sum = (kind?: string) => lines.reduce((all, [own, many]) => all + (kind === undefined || own === kind ? BigInt(many) : 0n), 0n);
        const direct = sum();
        const forLuck = share(direct, contingency);
        const office = share(direct + forLuck, overhead);
        const till = taxed === 'materials bought' ? share(sum('material'), tax) : 0n;
        const cost = direct + forLuck + office + till;
        const gain = taken === 'margin' ? margin(cost, profit) : share(cost, profit);
        const bill = taxed === 'price' ? share(cost + gain, tax) : 0n;
        const told = ['Direct cost', 'Contingency', 'Overhead', 'Tax at the till', 'Profit', 'Tax on the bill', 'Price'].map((name) => cents(notebook, name));
        expect({ seed, taxed, told }).toEqual({ seed, taxed, told: [direct, forLuck, office, till, gain, bill, cost + gain + bill] });
        expect(toCents(notebook.estimate.costs().total.price)).toBe(cost + gain + bill);
        KINDS.forEach((kind, at) => {
          const [, shown] = notebook.figure(SHARES[at] ?? '');
          expect(shown).toBeCloseTo((Number(sum(kind)) / Number(direct)) * 100, 9);
        });
        expect(notebook.figure('All shares')).toEqual(['%', 100]);
      }
    }
  });

  test('a margin is that share of the price before tax, a markup that share of the cost', () => {
    const asMargin = job([['labour', 1_000_000]], { 'Profit share': '20%' });
    expect(asMargin.shown('Margin earned')).toBe('20%');
    expect(asMargin.figure('Markup earned')[1]).toBeCloseTo(25, 4);
    const asMarkup = job([['labour', 1_000_000]], { 'Profit share': '20%', 'Profit taken as': 'markup' });
    expect(asMarkup.figure('Markup earned')[1]).toBeCloseTo(20, 4);
    expect(asMarkup.shown('Margin earned')).toBe('16.67%');
    // $17,678.31 and 15% of the price come to a cent's rounding more than 15%: nobody reads that.
    const rounded = job([['labour', 1_767_831]], { 'Profit share': '15%', Taxed: 'none', 'Overhead share': '0%' });
    expect(rounded.shown('Margin earned')).toBe('15%');
  });
});

describe('the payments', () => {
  test('are each whole cents and together the price', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const chance = new Chance(seed);
      const notebook = job([['material', chance.whole(1, 3_000_000)]], {
        'Deposit share': percent(BigInt(chance.whole(0, 3300))),
        'Start share': percent(BigInt(chance.whole(0, 3300))),
        'Halfway share': percent(BigInt(chance.whole(0, 3300))),
      });
      const payments = ['Deposit', 'Payment at start', 'Payment halfway', 'Last payment'];
      const shown = payments.map((name) => notebook.shown(name));
      expect(shown.filter((text) => !/^\$[\d,]+\.\d\d$/.test(text))).toEqual([]);
      const paid = payments.reduce((sum, name) => sum + cents(notebook, name), 0n);
      expect([seed, paid, notebook.holds('Payment check')]).toEqual([seed, cents(notebook, 'Price'), true]);
      expect(cents(notebook, 'All payments')).toBe(paid);
    }
  });

  test('that come to more than the price are pointed out', () => {
    const notebook = job([['material', 100_000]], { 'Start share': '60%', 'Halfway share': '60%' });
    expect(notebook.holds('Payment check')).toBe(false);
    const { id } = notebook.cell('Payment check');
    expect(notebook.estimate.findings().find((f) => f.cell === id)?.message).toContain('more than the whole');
  });
});

warnsWhere(FILE, {
  'Deposit check': { 'Deposit share': '40%' },
  // Nothing costs anything in a summary that stands alone: its profit and its last payment are set by hand.
  'Profit check': { 'Margin earned': '60%' },
  'Payment check': { 'Last payment': '-$1' },
});

describe('the whole notebook', () => {
  test('is read: every part with its lines, whatever stands in it, to the cent', () => {
    const estimate = new Estimate('# Kestrel Court\n');
    for (const file of INDEX.parts.filter((one) => one !== 'often-forgotten.md')) {
      expect(estimate.insertTemplate(templateText(file))).toHaveProperty('change');
    }
    // Both the frame and the general part bring a permit, and that is pointed out.
    expect(estimate.findings().map(({ code }) => code)).toEqual(['fee-twice']);
    const { parts, total } = estimate.costs();
    const summed = parts.reduce((sum, row) => sum + toCents(row.direct), 0n);
    expect(toCents(total.direct)).toBe(summed);
    const notebook = opened(estimate.notebook.text);
    expect(cents(notebook, 'Summary: Direct cost')).toBe(summed);
    expect(cents(notebook, 'Summary: Price')).toBe(toCents(total.price));
    const shares = KINDS.map((kind) => notebook.estimate.costs().shares[kind]);
    KINDS.forEach((_, at) => {
      expect(notebook.figure(SHARES[at] ?? '')[1]).toBeCloseTo((shares[at] ?? 0) * 100, 9);
    });
    expect(notebook.figure('All shares')).toEqual(['%', 100]);
  });

  test('is laid out part by part, kind by kind, and a part that is added stands in it at once', () => {
    const notebook = job([['material', 30_000], ['labour', 50_000], ['labour', 20_000]]);
    const lines = () => {
      const { rows, total } = notebook.estimate.recap();
      return [...rows, total].map(({ name, direct, share, kinds }) => [name, direct, share, ...kinds.map((k) => [k.amount, k.share])]);
    };
    const none = ['0.00', 0];
    expect(lines()).toEqual([
      ['Deck', '500.00', 500, ['300.00', 600], ['200.00', 400], none, none, none],
      ['Path', '500.00', 500, none, ['500.00', 1000], none, none, none],
      ['whole job', '1000.00', 1000, ['300.00', 300], ['700.00', 700], none, none, none],
    ]);
    notebook.estimate.insertTemplate('## Gate\n\n- Hinges: $500\n  - cost: material\n  - from: invented\n');
    expect(lines().map(([name, , share]) => [name, share])).toEqual([
      ['Deck', 334],
      ['Path', 333],
      ['Gate', 333],
      ['whole job', 1000],
    ]);
  });

  test('is told which part has a name and no price, until it has one', () => {
    const notebook = job([['material', 30_000]]);
    const unpriced = () => [
      notebook.estimate.recap().unpriced,
      notebook.estimate.findings().flatMap(({ code, message }) => (code === 'part-not-priced' ? [message] : [])),
    ];
    // Of its two parts one has no line.
    expect(unpriced()).toEqual([['Path'], ['"Path" has no cost line, and nothing in it goes into one: no total knows of it.']]);
    notebook.estimate.insertTemplate('## Gate\n\nA gate, named on the drawing.\n\n- Gate width: 4 ft\n  - from: drawing\n');
    expect(unpriced()[0]).toEqual(['Path', 'Gate']);
    const gate = notebook.cell('Gate width');
    notebook.estimate.addCell(gate.part, null, 'Gate boards', 'gate width at $9 per ft');
    notebook.estimate.setRemark(notebook.cell('Gate boards').id, 'cost', 'material');
    expect(unpriced()[0]).toEqual(['Path']);
    // What is measured in one part and priced in another is priced.
    notebook.estimate.insertTemplate('## Path sizes\n\n- Path run: 20 ft\n  - from: drawing\n');
    expect(unpriced()[0]).toEqual(['Path', 'Path sizes']);
    notebook.estimate.addCell(gate.part, null, 'Edging', 'path run at $3 per ft');
    notebook.estimate.setRemark(notebook.cell('Edging').id, 'cost', 'material');
    expect(unpriced()[0]).toEqual(['Path']);
  });

  test('names what its sums leave out', () => {
    const notebook = job([['material', 30_000]]);
    notebook.estimate.addCell(notebook.cell('Deck: Line 1').part, null, 'Railing', '$?');
    notebook.estimate.setRemark(notebook.cell('Railing').id, 'cost', 'subcontract');
    expect(notebook.estimate.recap().open).toEqual({ names: ['Railing'], count: 1 });
  });

  test('that costs nothing has a price of nothing and no fault', () => {
    const notebook = opened(templateText(FILE));
    expect(notebook.shown('Price')).toBe('$0.00');
    expect(notebook.figure('All shares')).toEqual(['%', 0]);
    expect(notebook.figure('Square foot price')).toEqual(['$ per sq ft', 0]);
  });

  test('that lacks a price says so in every sum, and none of them is less than what is known', () => {
    const notebook = job([['material', 100_000], ['labour', 100_000]]);
    notebook.estimate.addCell(notebook.cell('Deck: Line 1').part, null, 'Railing', '$?');
    const railing = notebook.cell('Railing').id;
    notebook.estimate.setRemark(railing, 'cost', 'subcontract');
    for (const name of ['Direct cost', 'Loaded cost', 'Price', 'Deposit', 'Square foot price']) {
      const { outcome } = notebook.state(name);
      expect([name, outcome.kind === 'value' && outcome.leftOut]).toEqual([name, [railing]]);
    }
    expect(notebook.shown('Direct cost')).toBe('$2,000.00 so far; 1 line not yet known');
  });
});
