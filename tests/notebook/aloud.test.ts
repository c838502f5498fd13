import fs from 'node:fs';
import { test } from 'vitest';
import { FORMULA_MENDS } from '../language/mends.ts';
import { found } from './mending.ts';
import { NOTEBOOK_MENDS } from './mends.ts';
test('aloud', () => {
  const lines = [...FORMULA_MENDS, ...NOTEBOOK_MENDS].map((each) => {
    const { finding, mends, estimate } = found(each);
    const f = finding.cell === null ? '' : estimate.state(finding.cell).input.formula.slice(0, 90);
    return `${each.code}: ${f}\n    ${finding.message.slice(0, 400)}\n${mends.map((m) => `      [${m.say}]  ${JSON.stringify(m.does).slice(0, 150)}`).join('\n')}`;
  });
  fs.writeFileSync('/tmp/aloud/aloud.txt', lines.join('\n'));
});
