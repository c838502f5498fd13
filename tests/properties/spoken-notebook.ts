// A notebook of formulas that name one another, in two parts, with what each of them comes to.
import { Estimate } from '../../src/notebook/estimate.ts';
import { Chance } from './chance.ts';
import { Exact } from './exact.ts';
import { type Kind, sizeOf } from './measures.ts';
import { type Named, PLAIN_KINDS, RATES } from './saying.ts';
import { Speaker } from './spoken.ts';
import { amount, ranged } from './written-amounts.ts';

export interface Case {
  readonly name: string;
  readonly part: string;
  readonly text: string;
  readonly wanted: Exact | boolean;
  readonly kind: Kind | 'yes-no';
  readonly isCost: boolean;
}

/** Names that run into one another and into the words of the language. */
const NAMES = [
  'Alder',
  'Alder edge',
  'Length of run',
  'Run',
  'Bay 1 width',
  '# of trips',
  "Mason's figure",
  'Cut by hand',
  'Rise',
  'Total',
  'Slab in front',
  'Waste',
  'Bags',
  'Cost per side',
  'Net',
  'Gross',
  'Edge',
  'Square',
  'Sum',
  'Per side',
  'Less one',
  'By the yard',
  'And so on',
  'Over all',
];

/** So many cases for this seed; after them a given of some kinds comes first, to be named. */
export function casesOf(seed: number, count: number): readonly Case[] {
  const c = new Chance(seed);
  const names = [...NAMES].sort(() => c.next() - 0.5);
  const cases: Case[] = [];
  for (let i = 0; i < count; i++) {
    const part = i < count / 2 ? 'Yard' : 'North wall';
    const known = cases.flatMap((k): Named[] =>
      k.kind === 'yes-no' || typeof k.wanted === 'boolean'
        ? []
        : [{ say: said(k, part, c), size: k.wanted, kind: k.kind }],
    );
    const answers = cases.flatMap((k) =>
      typeof k.wanted === 'boolean' ? [{ say: said(k, part, c), holds: k.wanted }] : [],
    );
    const name = names[i] ?? `Cell ${i}`;
    const speaker = new Speaker(c, known, answers);
    const kind = c.of<Kind>([...PLAIN_KINDS, ...PLAIN_KINDS, 'money', 'money', 'volume', ...RATES]);
    if (i < 3) {
      const given = c.of<Kind>(['share', 'length', ...RATES]);
      const { text, size } = c.in(0.5) ? ranged(c, given) : amount(c, given);
      cases.push({ name, part, text, wanted: size, kind: given, isCost: false });
    } else if (c.in(0.15)) {
      const { text, holds } = speaker.check();
      cases.push({ name, part, text, wanted: holds, kind: 'yes-no', isCost: false });
    } else {
      const { text, size } = speaker.formula(kind);
      const isCost = kind === 'money' && c.in(0.4);
      const wanted = isCost ? size.nearest() : size;
      cases.push({ name, part, text, wanted, kind, isCost });
    }
  }
  const costs = cases.flatMap((k) => (k.isCost && k.wanted instanceof Exact ? [k.wanted] : []));
  if (costs.length > 0) {
    const wanted = costs.reduce((a, b) => a.plus(b));
    const text = c.of([
      'total cost of every part',
      'total of material in every part',
      'total cost of the job',
    ]);
    cases.push({ name: 'Whole', part: 'North wall', text, wanted, kind: 'money', isCost: false });
  }
  return cases;
}

/** As it is written from a part; from another part with the part's name before it. */
function said(of: Case, from: string, c: Chance): string {
  const name = c.in(0.5) ? of.name.toLowerCase() : of.name;
  const say = of.part === from ? name : `${of.part} ${name}`;
  return c.in(0.1) ? `the ${say}` : say;
}

export interface Got {
  readonly exact: string;
  readonly unit: string;
  readonly text: string;
  /** What stands in the way of a value; empty where there is one. */
  readonly code: string;
  readonly readAs: string;
  /** What the sentence that it was read as comes to. */
  readonly again: string;
}

/** The cases as the text of a notebook. */
export function textOf(cases: readonly Case[]): string {
  const parts = [...new Set(cases.map((k) => k.part))];
  const text = parts.map((part) => {
    const own = cases.filter((k) => k.part === part);
    return `## ${part}\n\n${own.map((k) => `- ${k.name}: ${k.text}\n${k.isCost ? '  - cost: material\n' : ''}`).join('')}`;
  });
  return `# Kestrel Court\n\n${text.join('\n')}`;
}

/** The cases through the estimate's own door. */
export function notebookOf(cases: readonly Case[]): readonly (readonly [Case, Got])[] {
  const estimate = new Estimate(textOf(cases));
  const cells = estimate.notebook.parts
    .flatMap((p) => p.blocks)
    .flatMap((b) => (b.kind === 'cell' ? [b.cell] : []));
  return cases.map((each) => {
    const cell = cells.find((k) => k.name === each.name);
    if (!cell) throw new Error(`no cell ${each.name} came of the text`);
    const { outcome, reading } = estimate.state(cell.id);
    const shown = estimate.shown(cell.id);
    const report = outcome.kind === 'fault' ? outcome.report : null;
    const got: Got = {
      exact: shown?.exact ?? '',
      unit: shown?.unit ?? '',
      text: shown?.text ?? '',
      code: report?.code ?? (outcome.kind === 'value' ? '' : outcome.kind),
      readAs: reading.sentence,
      again: estimate.draft(cell.id, reading.sentence).shown?.text ?? 'nothing',
    };
    return [each, got] as const;
  });
}

/** Of the size itself: 36 digits. */
const CLOSE = new Exact(1n, 10n ** 36n);

/** What is wrong with what was got, or null. */
export function differs(each: Case, got: Got): string | null {
  if (got.code !== '') return `${String(each.wanted)} wanted, ${got.code} given`;
  if (got.again !== got.text && !each.isCost)
    return `read as "${got.readAs}", which comes to ${got.again}`;
  if (typeof each.wanted === 'boolean') {
    return got.text === (each.wanted ? 'yes' : 'no')
      ? null
      : `${each.wanted} wanted, ${got.text} given`;
  }
  const unit = sizeOf(got.unit);
  if (!unit) return `no such unit: ${got.unit}`;
  const wanted = each.wanted.by(unit);
  const given = Exact.of(got.exact);
  // A rounded count is a whole number to the last digit.
  if (wanted.under === 1n && String(wanted.over).length <= 30) {
    return given.compare(wanted) === 0
      ? null
      : `${wanted.toString()} ${got.unit} wanted, ${got.exact} given`;
  }
  const far = given.minus(wanted);
  const size = wanted.over < 0n ? new Exact(-wanted.over, wanted.under) : wanted;
  const off = far.over < 0n ? new Exact(-far.over, far.under) : far;
  return off.compare(size.times(CLOSE)) <= 0
    ? null
    : `${wanted.toString()} ${got.unit} wanted, ${got.exact} given`;
}
