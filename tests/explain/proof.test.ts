// The working as a proof: which notebook, part and day it is of stand above it.
import { expect, test } from 'vitest';
import { proofHead, proofText } from '../../src/explain/proof.ts';
import { landing } from './kestrel.ts';

test('a proof says its notebook, part and day, then the working with sources and cautions', () => {
  const on = landing(
    'Riser limit: 7 3/4 in\n  - from: the building department, 2026-03-05',
    'Riser check: 7 in is at most riser limit\n  - caution: Too steep for a stair in most places.',
  );
  const head = { title: 'Kestrel Court', part: 'Landing', day: '3 Mar 2026' };
  expect(proofText(on.working('Riser check'), head)).toBe(
    [
      'Kestrel Court, Landing',
      'As the notebook stood on 3 Mar 2026',
      '',
      on.text('Riser check'),
    ].join('\n'),
  );
  expect(proofText(on.working('Riser check'), head)).toContain(
    'the building department, 2026-03-05',
  );
  expect(proofText(on.working('Riser check'), head)).toContain('Caution: Too steep');
});

test('what has no title says so', () => {
  expect(proofHead({ title: '', part: '', day: 'today' })[0]).toBe('A notebook without a title');
});
