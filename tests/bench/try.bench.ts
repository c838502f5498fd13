import { Workings } from '../../src/engine/workings.ts';
import { Nouns } from '../../src/quantity/nouns.ts';
import { largeJob } from './sheds.ts';
const nouns = new Nouns([]);
const SHOW = { currency: '$', fractions: 16, measures: 'us' as const, many: (n: string) => nouns.many(n) };
const job = largeJob(Number(process.argv[2] ?? 400));
for (let i = 0; i < Number(process.argv[3] ?? 4); i++) {
  const w = new Workings({ nouns, show: SHOW });
  const t = performance.now();
  const c0 = process.cpuUsage();
  w.load(job.parts, job.cells);
  const c = process.cpuUsage(c0); console.log('load', (performance.now() - t).toFixed(1), 'cpu', ((c.user + c.system) / 1000).toFixed(0), w.ran.length);
  if (i === 0) {
    const kinds = new Map<string, number>();
    for (const c of job.cells) { const o = w.state(c.id).outcome; const k = o.kind === 'fault' ? o.report.code + ' ' + c.name + ': ' + c.formula : o.kind; kinds.set(k, (kinds.get(k) ?? 0) + 1); }
    console.log(kinds);
  }
  continue;
  const edits = (n: number, cell: any, f: (i: number) => string) => { const t = performance.now(); for (let i = 0; i < n; i++) w.change([{ kind: 'put', cell: { ...cell, formula: f(i) } }]); return ((performance.now() - t) / n).toFixed(4) + ' ms, ran ' + w.ran.length; };
  console.log('length', edits(200, job.length, (i) => `${10 + (i % 7)} ft`));
  console.log('absorbed', edits(200, job.waste, (i) => `10.0${i % 2}%`));
  console.log('rate', edits(20, job.rate, (i) => `$${50 + i} per hour`));
  console.log('name', edits(2, { ...job.rate, id: 999999, name: 'slab', part: 'summary' }, (i) => `${i} ft`));
}
