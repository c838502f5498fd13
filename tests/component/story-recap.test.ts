// What every part costs, laid out under the line that asks for it: it follows every change, and tells what has no price.
import { describe, expect, test } from 'vitest';
import '../../src/ui/story-part.ts';
import { axeFindings, drawn, everyElement, idOf, sessionOn, settled, wordsOf } from './drawn.ts';

const JOB = `# Kestrel Court

## Deck

- Boards: $300
  - cost: material
- Laying: $200
  - cost: labour

## Fence

- Run: 20 ft

## Summary

- Direct cost: total cost of every part
  - recap: every part
- Office: 10% of direct cost
  - price: overhead
`;

async function recap() {
  const session = sessionOn(JOB);
  const list = document.createElement('div');
  list.setAttribute('role', 'list');
  document.body.append(list);
  const element = await drawn('story-recap', { session, cell: idOf(session, 'Direct cost') });
  element.setAttribute('role', 'listitem');
  list.append(element);
  await settled(element);
  return { session, element, list };
}

const linesOf = (element: Element): readonly string[] =>
  everyElement(element)
    .filter((one) => one.localName === 'tr')
    .map((row) => [...row.children].map((cell) => wordsOf(cell).trim()).join(' | '));

describe('the recap', () => {
  test('is accessible, and gives each part and the whole kind by kind', async () => {
    const { element, list } = await recap();
    expect(await axeFindings(list)).toEqual([]);
    expect(linesOf(element)).toEqual([
      'part | cost | of the job | material | labour | equipment | subcontract | fee',
      'Deck | $500.00 | 100.0% | $300.00 60.0% | $200.00 40.0% | – | – | –',
      'whole job | $500.00 | 100.0% | $300.00 60.0% | $200.00 40.0% | – | – | –',
    ]);
    expect(wordsOf(element)).toContain('Named here and not priced: Fence');
  });

  test('has a part that is priced at once, and names what has no value', async () => {
    const { session, element } = await recap();
    const run = idOf(session, 'Run');
    session.apply((door) => door.addCell(session.cell(run)?.part ?? '', null, 'Panels', '$1,500'));
    session.apply((door) => door.setRemark(idOf(session, 'Panels'), 'cost', 'material'));
    await settled(element);
    expect(linesOf(element)[2]).toContain('Fence | $1,500.00 | 75.0%');
    expect(wordsOf(element)).not.toContain('not priced');
    session.apply((door) => door.setFormula(idOf(session, 'Laying'), '$?'));
    await settled(element);
    expect(wordsOf(element)).toContain('for want of a value: Laying');
  });

  test('stands under its line in the part', async () => {
    const session = sessionOn(JOB);
    const content = session.door.notebook.parts.find(({ name }) => name === 'Summary');
    if (!content) throw new Error('no summary');
    const part = await drawn('story-part', { session, content });
    expect(everyElement(part).filter((one) => one.localName === 'story-recap')).toHaveLength(1);
  });
});
