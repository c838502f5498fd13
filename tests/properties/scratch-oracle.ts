import { casesOf, differs, notebookOf } from './spoken-notebook.ts';
const [from, to, most = '60'] = process.argv.slice(2);
const found: string[] = [];
let n = 0, waits = 0, faults = 0;
for (let seed = Number(from); seed < Number(to); seed++) {
  const cases = casesOf(seed, 12);
  for (const [each, got] of notebookOf(cases)) {
    n++;
    if (got.code === 'waiting') { waits++; continue; }
    const fault = differs(each, got);
    if (fault) { faults++; found.push(`[${seed}] ${each.name} (${each.kind}): ${each.text}\n     ${fault} | ${got.readAs} | ${got.message}`); }
  }
}
found.sort((a, b) => a.length - b.length);
console.log(n, 'cases', faults, 'faults', waits, 'wait');
console.log(found.slice(0, Number(most)).join('\n'));
