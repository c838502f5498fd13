// A large invented job for the benchmark: sheds of 25 cells each, added up by twenties, one labour rate for all.
// Every amount is invented.
import type { CellInput } from '../../src/engine/outcome.ts';
import type { PartName } from '../../src/language/reading.ts';

const SHED: readonly (readonly [name: string, formula: string, cost?: 'material' | 'labour'])[] = [
  ['slab length', 'LENGTH ft'],
  ['slab width', 'WIDTH ft'],
  ['thickness', '4 in'],
  ['waste', '10%'],
  ['bag yield', '0.45 cubic feet per bag'],
  ['bag price', '$6.48 per bag'],
  ['slab area', 'slab length by slab width'],
  ['slab volume', 'slab area by thickness'],
  ['bags', 'slab volume plus waste, in bags of bag yield'],
  ['concrete', 'bags at bag price', 'material'],
  ['gravel depth', '6 in'],
  ['gravel volume', 'slab area by gravel depth, in cubic yards'],
  ['gravel price', '$45 per cubic yard'],
  ['gravel', 'gravel volume at gravel price', 'material'],
  ['board width', '5 1/2 in'],
  ['board length', '12 ft'],
  ['boards', '(slab area plus 8%) divided by (board width by board length), rounded up, as boards'],
  ['board price', '$14.25 per board'],
  ['lumber', 'boards at board price', 'material'],
  ['screws', 'boards times 24 screws per board'],
  ['boxes', 'screws in boxes of 350 screws'],
  ['fasteners', 'boxes at $29 per box', 'material'],
  ['crew hours', 'slab area at 40 sq ft per hour'],
  ['labour', 'crew hours at labour rate', 'labour'],
  ['shed total', 'total of concrete, gravel, lumber, fasteners and labour'],
];

/** How many are added up in one formula. */
const TOGETHER = 20;

export interface LargeJob {
  /** The notebook as it would be written. */
  readonly text: string;
  readonly parts: readonly PartName[];
  readonly cells: readonly CellInput[];
  readonly rate: CellInput;
  /** The length of a slab in the middle of the job. */
  readonly length: CellInput;
  /** A share that rounding up absorbs a small change of. */
  readonly waste: CellInput;
}

export function largeJob(sheds: number): LargeJob {
  const parts: PartName[] = [{ key: '', name: '' }];
  const cells: CellInput[] = [];
  const put = (
    part: string,
    name: string,
    formula: string,
    cost?: 'material' | 'labour',
  ): CellInput => {
    const money = cost === undefined ? null : { line: 'cost' as const, kind: cost };
    const cell = { id: cells.length + 1, part, name, formula, byHand: null, money };
    cells.push(cell);
    return cell;
  };
  const rate = put('', 'labour rate', '$52 per hour');
  const first = new Map<string, CellInput>();
  for (let i = 1; i <= sheds; i++) {
    const part = `shed-${i}`;
    parts.push({ key: part, name: `Shed ${i}` });
    for (const [name, formula, cost] of SHED) {
      const given = formula
        .replace('LENGTH', String(10 + (i % 9)))
        .replace('WIDTH', String(6 + (i % 5)));
      const cell = put(part, name, given, cost);
      if (i === Math.ceil(sheds / 2)) first.set(name, cell);
    }
  }
  parts.push({ key: 'summary', name: 'Summary' });
  let totals = Array.from({ length: sheds }, (_, i) => `Shed ${i + 1} shed total`);
  for (let level = 1; totals.length > 1; level++) {
    const sums: string[] = [];
    for (let from = 0; from < totals.length; from += TOGETHER) {
      const name = totals.length <= TOGETHER ? 'grand total' : `sum ${level} no ${sums.length + 1}`;
      put('summary', name, listed(totals.slice(from, from + TOGETHER)));
      sums.push(name);
    }
    totals = sums;
  }
  const [length, waste] = [first.get('slab length') ?? rate, first.get('waste') ?? rate];
  return { text: textOf(parts, cells), parts, cells, rate, length, waste };
}

/** Cells stand in the order of their parts. */
function textOf(parts: readonly PartName[], cells: readonly CellInput[]): string {
  const lines = ['# Sheds', ''];
  const headings = new Map(parts.map((part) => [part.key, part.name]));
  let part = '';
  for (const cell of cells) {
    if (cell.part !== part) {
      part = cell.part;
      lines.push('', `## ${headings.get(part)}`, '');
    }
    lines.push(`- ${cell.name}: ${cell.formula}`);
    if (cell.money) lines.push(`  - cost: ${cell.money.kind}`);
  }
  return `${lines.join('\n')}\n`;
}

function listed(items: readonly string[]): string {
  return items.length === 1
    ? (items[0] ?? '')
    : `total of ${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}
