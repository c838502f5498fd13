// Mends of what is pointed out about a cell, a table or the text itself, beside faults of formulas.
import { RECAP_OF } from './recap-table.ts';
import { nearNames } from '../words/near.ts';
import type { CellId } from '../language/tree.ts';
import type { Checked } from '../language/plan.ts';
import type { Cell, Finding, Splice } from './document.ts';
import type { Mend, Mendable } from './mends.ts';
import { pictureOf, pictureRemarks } from './pictures.ts';
import { moneyWordsOf, remarkText } from './remarks.ts';
import { away, setRemark, texts, withoutRemark } from './mend-words.ts';
import { columnNames, lineName, ownName, ownPartName } from './name-mends.ts';
import { goesOn, knownRemark, outOfProse, ownCell, settingAway, tableMarks } from './text-mends.ts';
import { byName, certain, limits, wider } from './amount-mends.ts';
import { tied, untied } from './tie-mends.ts';

/** What a source says that nobody has looked up. */
const ASSUMED = 'assumed';

export function findingMends(estimate: Mendable, finding: Finding): readonly Mend[] {
  const { notebook } = estimate;
  const cell = finding.cell === null ? null : (notebook.cell(finding.cell) ?? null);
  switch (finding.code) {
    case 'same-part-name':
      return finding.part === null ? [] : [ownPartName(estimate, finding.part)];
    case 'name-is-a-word':
    case 'not-a-name':
      return cell ? columnNames(cell, finding) : lineName(estimate, finding);
    case 'cell-under-prose':
      return outOfProse(notebook.text, finding);
    case 'table-not-read':
      return tableMarks(notebook.text, finding);
    case 'setting-not-read':
      return settingAway(notebook.text, finding);
    default:
      return cell ? ofCell(estimate, cell, finding) : [];
  }
}

function ofCell(estimate: Mendable, cell: Cell, finding: Finding): readonly Mend[] {
  const { text } = estimate.notebook;
  switch (finding.code) {
    case 'same-name':
      return cell.table && finding.spot && finding.spot.from !== cell.nameSpot.from
        ? columnNames(cell, finding)
        : [ownName(estimate, cell)];
    case 'counted-twice':
      return countedOnce(estimate, cell, finding.about ?? null);
    case 'fee-twice':
      return [cell.id, finding.about ?? null].flatMap((id) => paidElsewhere(estimate, id));
    case 'remark-not-known':
      return knownRemark(text, finding);
    case 'remark-twice':
      return [away('Take the second one away', finding)];
    case 'money-not-known':
      return knownMoney(cell);
    case 'recap-not-known':
      return [
        setRemark(`Write "${RECAP_OF}"`, cell.id, 'recap', RECAP_OF),
        withoutRemark('Take the recap away', cell.id, 'recap'),
      ];
    case 'money-on-table':
      return (['cost', 'price'] as const)
        .filter((word) => remarkText(cell.remarks, word) !== null)
        .map((word) => withoutRemark(`Take "${word}" away`, cell.id, word));
    case 'cost-and-price':
      return [
        withoutRemark('Count it as cost', cell.id, 'price'),
        withoutRemark('Count it into the price', cell.id, 'cost'),
      ];
    case 'formula-goes-on':
      return goesOn(text, cell, finding);
    case 'table-beside-formula':
      return ownCell(text, cell, finding);
    case 'row-too-long':
      return [away('Take what stands beyond away', finding)];
    case 'column-without-name':
      return columnNames(cell, finding);
    case 'given-without-source':
    case 'assumed-amount':
      return [setRemark('Say that it is assumed', cell.id, 'from', ASSUMED)];
    case 'set-by-hand':
      return [{ say: 'Take it back', does: { kind: 'by-hand', cell: cell.id, formula: null } }];
    case 'limits-not-read':
      return limits(estimate, cell);
    case 'limits-unlike':
      return [withoutRemark('Take the limits away', cell.id, 'sensible')];
    case 'outside-limits':
      return wider(estimate, cell);
    case 'range-of-one':
      return certain(estimate, cell);
    case 'other-share':
      return byName(estimate, cell);
    case 'tie-without-words':
    case 'tied-not-given':
      return [untied(cell)];
    case 'tied-alone':
      return tied(estimate, cell);
    case 'picture-not-known':
    case 'picture-slot-not-known':
    case 'picture-slot-twice':
    case 'picture-slot-missing':
    case 'picture-value-not-read':
    case 'picture-value-unlike':
    case 'picture-value-odd':
    case 'picture-lists-unlike':
      return pictureMends(estimate, cell, finding);
    default:
      return [];
  }
}

/** The remark written anew, or taken away with its line. */
function pictureMends(estimate: Mendable, cell: Cell, { message }: Finding): readonly Mend[] {
  const section = estimate.notebook.sections.find(({ key }) => key === cell.part);
  const neighbours = section?.cells ?? [];
  for (const remark of pictureRemarks(cell)) {
    const picture = pictureOf(estimate, cell, remark, neighbours);
    const problems = picture.kind === 'wrong' ? picture.problems : [];
    const problem = problems.find((each) => each.message === message);
    if (!problem) continue;
    return problem.mends.map(({ say, text }) => {
      const { from, to } = text === null ? remark.spot : remark.textSpot;
      return texts(say, { from, to, insert: text ?? '' });
    });
  }
  return [];
}

/** Counted in one of the two lines only; or the one is taken out of the other's sum. */
function countedOnce(estimate: Mendable, cell: Cell, inner: CellId | null): readonly Mend[] {
  const mends: Mend[] = [];
  const other = inner === null ? null : estimate.notebook.cell(inner);
  const rest = inner === null ? null : withoutTerm(estimate, cell, inner);
  if (other && rest !== null) {
    mends.push({
      say: `Take ${other.name} out of this line`,
      does: { kind: 'formula', cell: cell.id, formula: rest },
    });
  }
  if (other) mends.push(withoutRemark(`Count ${other.name} only in here`, other.id, 'cost'));
  return [...mends, withoutRemark(`Leave "cost" out of ${cell.name}`, cell.id, 'cost')];
}

/** Of two fees of one name the one in this part is left out of the costs, and stays as a note. */
function paidElsewhere({ notebook }: Mendable, id: CellId | null): readonly Mend[] {
  const fee = id === null ? null : notebook.cell(id);
  const part = notebook.parts.find(({ key }) => key === fee?.part);
  return fee && part
    ? [withoutRemark(`Leave "cost" out of ${fee.name} in ${part.name}`, fee.id, 'cost')]
    : [];
}

/** The formula of a sum without this name in it, where that leaves money. */
function withoutTerm(estimate: Mendable, cell: Cell, inner: CellId): string | null {
  const checked = estimate.state(cell.id).reading.checked;
  const cut = checked && termOf(checked, inner);
  if (!cut) return null;
  const formula = (cell.formula.slice(0, cut.from) + cell.formula.slice(cut.to)).trim();
  const { outcome, reading } = estimate.draft(cell.part, cell.id, formula);
  return reading.problems.length === 0 && outcome.kind === 'value' ? formula : null;
}

function termOf({ formula, parts }: Checked, inner: CellId): Splice | null {
  const [left, right] = parts;
  if (formula.kind !== 'binary' || formula.op !== 'plus' || !left || !right) return null;
  const isInner = ({ formula: f }: Checked): boolean => f.kind === 'name' && f.cell === inner;
  const [a, b] = [left.formula.spot, right.formula.spot];
  if (isInner(right)) return { from: a.to, to: b.to, insert: '' };
  if (isInner(left)) return { from: a.from, to: b.from, insert: '' };
  return termOf(left, inner);
}

function knownMoney(cell: Cell): readonly Mend[] {
  const word = remarkText(cell.remarks, 'cost') === null ? 'price' : 'cost';
  const known = moneyWordsOf(word);
  const said = remarkText(cell.remarks, word) ?? '';
  const near = nearNames(said, known, 1);
  const offered = near.length > 0 ? near : known;
  return offered.map((one) => setRemark(`Count it as ${one}`, cell.id, word, one));
}
