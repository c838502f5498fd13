// The keys of the page, for whoever works without a mouse.
import { html, type TemplateResult } from 'lit';

const KEYS: readonly (readonly [string, string])[] = [
  ['↑ ↓', 'the cell above, the cell below'],
  ['Enter', 'change the formula; in it, Enter keeps, Esc leaves, Tab goes on to the next cell'],
  ['0 … 9, $, ?', 'write a new amount over the cell’s'],
  [
    'T',
    'open the tape under a given; arrows slide it, Enter keeps, Esc goes back; or type the amount',
  ],
  ['F2', 'rename the cell'],
  ['Insert', 'add a cell below'],
  ['D', 'duplicate the cell; on the heading of a part, the part'],
  ['Alt ↑, Alt ↓', 'move the cell one place, on into the next part; on a heading, the part'],
  ['M', 'move the cell to another part'],
  ['I', 'what the cell goes into'],
  ['G, Ctrl G', 'go to a cell, table or part by some of its name; Ctrl G from anywhere'],
  ['Delete', 'remove the cell; what it goes into is said first'],
  ['W', 'go to the working of the cell; Esc comes back'],
  ['Ctrl Z, Ctrl Shift Z', 'undo, redo'],
  ['Alt 1 … Alt 9', 'while a formula is written: the first mend offered, the second, …'],
  ['F1 or H', 'the guide, and back from it; F1 also while a formula is written'],
  [
    'P, A, B',
    'in the guide: put the example into your formula, add it to your notebook, put it back',
  ],
  ['Ctrl Space', 'or ↓, while a formula is written: names and units that go on from here'],
];

export function keys(): TemplateResult {
  return html`<dl>
    ${KEYS.map(
      ([key, does]) =>
        html`<dt>${key}</dt>
          <dd>${does}</dd>`,
    )}
  </dl>`;
}
