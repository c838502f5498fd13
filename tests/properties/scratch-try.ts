import fs from 'node:fs';
import { worked } from '../language/worked.ts';
for (const line of fs.readFileSync(process.argv[2]!, 'utf8').split('\n')) {
  if (!line.trim()) continue;
  const [f, ...g] = line.split(' || ');
  const w = worked(f!, [...['Slab length: 12 ft','Slab width: 4 ft','Thickness: 4 in','Bag yield: 0.45 cubic feet per bag','Bag price: $6.48 per bag','Waste: 10%','Direct cost: $7,500'], ...g]);
  console.log(`${f}\n   → ${w.code ?? w.shown} [${w.exact} ${w.unit}] ${w.readAs}${w.message ? '\n   ! ' + w.message : ''}${w.fixes.length ? '\n   fix: ' + w.fixes.join(' | ') : ''}${w.notes.length ? '\n   n: ' + w.notes.join(' ') : ''}`);
}
