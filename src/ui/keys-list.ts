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
  ['L', 'lay out a table below the cell, or in the cell where nothing stands in it yet'],
  ['D', 'duplicate the cell; on the heading of a part, the part'],
  ['Alt ↑, Alt ↓', 'move the cell one place, on into the next part; on a heading, the part'],
  ['M', 'move the cell to another part'],
  ['I', 'what the cell goes into'],
  ['K', 'show how the cell comes about, each step'],
  ['G, Ctrl G', 'go to a cell, table or part by some of its name; Ctrl G from anywhere'],
  ['Delete', 'remove the cell; what it goes into is said first'],
  ['W', 'go to the working of the cell; Esc comes back'],
  [
    'E',
    'watch the cell, or let it go: it stays in view above the footing; on the heading of a part, what that costs; Shift E the price',
  ],
  ['A', 'alternatives beside the notebook, and back from them'],
  ['Ctrl Z, Ctrl Shift Z', 'undo, redo'],
  [
    'Alt 1 … Alt 9',
    'the first mend offered, the second, …; in the chosen row and while it is written',
  ],
  ['N, Shift N', 'the next cell with something to mend, the one before'],
  [
    'S',
    'snapshots: freeze, compare, change orders, the whole job in a file; in a comparison Esc goes back to the list',
  ],
  [
    'C',
    'the client’s sheet: the price as you hand it in, with nothing else in sight; Esc comes back',
  ],
  ['V', 'what moves it: which givens matter, how sure a result is, what it would take'],
  ['F1 or H', 'the guide, and back from it; F1 also while a formula is written'],
  [
    'P, A, B',
    'in the guide: put the example into your formula, add it to your notebook, put it back',
  ],
  ['Ctrl Space', 'or ↓, while a formula is written: names and units that go on from here'],
];

/** In a table, into which Enter goes from its name. */
const TABLE_KEYS: readonly (readonly [string, string])[] = [
  [
    '↑ ↓ ← →',
    'from cell to cell, and up into the header; Ctrl Home and Ctrl End to its ends, Esc back to its name',
  ],
  [
    'Enter',
    'write the cell, or just type; in it, Enter keeps, Tab and Shift Tab go on and back, Ctrl Enter goes on in the row below',
  ],
  ['Insert', 'add a row below; on the header a column after this one, with Shift before it'],
  ['Alt ↑, Alt ↓', 'move the row'],
  ['Alt ←, Alt →', 'on the header: move the column'],
  ['Ctrl Delete', 'remove the row; on the header the column, and what names it is said first'],
  ['F2', 'on the header: rename the column; Enter there changes what it works'],
];

/** In the job record. */
const RECORD_KEYS: readonly (readonly [string, string])[] = [
  ['Enter', 'in any field: put the line in, and go on with the next'],
  ['Esc', 'leave a correction as it was; else put the record away, with what is half written kept'],
];

/** While it is shown how a number comes about. */
const SHOWING_KEYS: readonly (readonly [string, string])[] = [
  [
    '→ ↓ Space, Page Down',
    'go on; a step that is asked first is shown. Page Down and Page Up also while you write an answer',
  ],
  ['← ↑ Shift Space, Page Up', 'back'],
  ['Home, End', 'to the first step, to the last'],
  ['Enter', 'in the line of an answer: answer'],
];

export function keys(): TemplateResult {
  return html`<dl>${KEYS.map(line)}</dl>
    <h3>In a table</h3>
    <dl>${TABLE_KEYS.map(line)}</dl>
    <h3>While it is shown how</h3>
    <dl>${SHOWING_KEYS.map(line)}</dl>
    <h3>In the job record</h3>
    <dl>${RECORD_KEYS.map(line)}</dl>`;
}

function line([key, does]: readonly [string, string]): TemplateResult {
  return html`<dt>${key}</dt>
    <dd>${does}</dd>`;
}
