// Thousands of formulas that an estimator might say, each worked beside the language by exact fractions.
// Each is also said back in tidy words, which have to come to the same.
// Every run throws 1,500 of them. For a long run: ORACLE_CASES=100000 npx vitest run --project unit tests/properties/oracle.test.ts
// and ORACLE_SEED=… to go on from another place.
import { describe, expect, test } from 'vitest';
import { casesOf, differs, notebookOf } from './spoken-notebook.ts';

const CASES = Number(process.env['ORACLE_CASES'] ?? 1500);
const SEED = Number(process.env['ORACLE_SEED'] ?? 1);
const EACH = 12;
describe('the language and the engine', () => {
  test(`give what exact fractions give, on ${CASES} formulas`, { timeout: 1_800_000 }, () => {
    const wrong: string[] = [];
    for (let seed = SEED; seed < SEED + CASES / EACH && wrong.length < 40; seed++) {
      const cases = casesOf(seed, EACH);
      for (const [each, got] of notebookOf(cases)) {
        const fault = differs(each, got);
        if (fault) wrong.push(`seed ${seed}: ${each.name}: ${each.text}\n   ${fault}`);
      }
    }
    expect(wrong.join('\n')).toBe('');
  });
});
