// A fee that two parts bring is pointed out where it stands for the second time, and left alone where it is paid once.
import { expect, it, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { templateText } from '../templates/texts.ts';
import { cellNamed } from './cells.ts';

const SOURCE = '\n  - from: the town\n';

function twice(text: string): readonly string[] {
  return new Estimate(text)
    .findings()
    .filter(({ code }) => code === 'fee-twice')
    .map(({ message }) => message);
}

const job = (second: string, kind = 'fee', name = 'Permit') =>
  `# Job\n\n## Frame\n- Permit: $180${SOURCE}  - cost: fee\n\n## Site\n- ${name}: ${second}${SOURCE}  - cost: ${kind}\n`;

it('says which part has it too, and what to do', () => {
  expect(twice(job('$246'))).toEqual([
    '"Permit" is a fee here and in "Frame" as well. Where the job pays it once, take one of them out.',
  ]);
});

test.for([
  ['one of them comes to nothing', job('$0')],
  ['one of them is not yet known', job('?')],
  ['it is another fee', job('$246', 'fee', 'Street permit')],
  ['it is no fee', job('$246', 'equipment')],
])('nothing is said where %s', ([, text]) => {
  expect(twice(text ?? '')).toEqual([]);
});

test('the permit of a deck frame and of the general part is paid once, when one of them says so', () => {
  const estimate = new Estimate('# Deck\n');
  for (const file of ['deck-framing.md', 'general.md']) {
    expect(estimate.insertTemplate(templateText(file))).toHaveProperty('change');
  }
  const told = () => estimate.findings().filter(({ code }) => code === 'fee-twice').length;
  expect(told()).toBe(1);
  const fees = () => estimate.costs().total.fee;
  expect(fees()).toBe('706.00');
  estimate.setFormula(cellNamed(estimate.notebook, 'Permit counted').id, 'in another part');
  expect(told()).toBe(0);
  expect(fees()).toBe('526.00');
});

it('is left out of the costs in either part', () => {
  for (const [label, fee] of [
    ['Leave "cost" out of Permit in Site', '180.00'],
    ['Leave "cost" out of Permit in Frame', '246.00'],
  ]) {
    const estimate = new Estimate(job('$246'));
    const finding = estimate.findings().find(({ code }) => code === 'fee-twice');
    const mend = finding && estimate.mendsFor(finding).find(({ say }) => say === label);
    if (!mend) throw new Error(`not offered: ${label}`);
    expect(estimate.mend(mend)).toHaveProperty('change');
    expect(estimate.costs().total.fee).toBe(fee);
  }
});
