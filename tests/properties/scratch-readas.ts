import { casesOf } from './spoken-notebook.ts';
import { Estimate } from '../../src/notebook/estimate.ts';
const [from, to] = process.argv.slice(2);
const found: string[] = []; let n = 0;
for (let seed = Number(from); seed < Number(to); seed++) {
  const cases = casesOf(seed, 12);
  const parts = [...new Set(cases.map((k) => k.part))];
  const text = parts.map((part) => `## ${part}\n\n${cases.filter((k) => k.part === part).map((k) => `- ${k.name}: ${k.text}\n`).join('')}`);
  const e = new Estimate(`# K\n\n${text.join('\n')}`);
  for (const p of e.notebook.parts) for (const b of p.blocks) if (b.kind === 'cell') {
    n++;
    const id = b.cell.id; const st = e.state(id); const d = e.draft(id, st.reading.sentence);
    const a = e.shown(id), z = d.shown;
    const msg = d.outcome.kind === 'fault' ? d.outcome.report.code + ': ' + d.outcome.report.explanation : '';
    if (a?.exact !== z?.exact || a?.text !== z?.text) found.push(`[${seed}] ${b.cell.formula}\n   as: ${st.reading.sentence}\n   ${a?.text} / ${z?.text ?? msg}`);
    else if (d.reading.sentence !== st.reading.sentence) found.push(`[${seed}] ${b.cell.formula}\n   as: ${st.reading.sentence}\n   again: ${d.reading.sentence}`);
  }
}
found.sort((a, b) => a.length - b.length);
console.log(n, found.length); console.log(found.slice(0, 30).join('\n'));
