import fc from 'fast-check';
import { formula } from '../language/grammar.ts';
import { landing, stepsIn } from './kestrel.ts';
import { workingText } from '../../src/explain/text.ts';
const G = ['Slab length: 12 ft', 'Slab width: 3 ft 7 in', 'Thickness: 4 in', 'Bags: 40 bags', 'Waste: 10%', 'Markup: 15%', 'Length of run: 10.8 ft', 'Total rise: 52 1/2 in', '# of posts: 7 posts'];
let n = 0, good = 0, bad = 0, above = 0; const kinds = new Map<string, number>();
fc.assert(fc.property(formula, (f) => {
  n++;
  const b = landing(...G, `Answer: ${f}`);
  let w; try { w = b.working('Answer'); const t = workingText(w); if (/undefined|NaN|null/.test(t)) throw new Error('text'); }
  catch (e) { if (bad++ < 8) console.log('THREW', f, (e as Error).stack?.split('\n').slice(0,6).join('\n')); return; }
  if (w.shown !== 'no value yet') good++;
  const s = stepsIn(w.steps);
  for (const [i, step] of w.steps.slice(1).entries()) { const up = w.steps[i]!; if (up.numbers && step.result && w.shown !== 'no value yet' && !up.numbers.includes(step.result) && above++ < 10) console.log('ABOVE', f, '|', up.numbers, '|', step.words, step.result); }
  for (const x of s) if (/\d\.\d{7}/.test(x.numbers)) console.log('LONG', f, x.numbers);
}), { numRuns: Number(process.argv[2] ?? 3000) });
console.log({ n, good, bad, above });
