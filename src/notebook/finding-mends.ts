// Mends of what is pointed out about a cell, a table or the text itself, beside faults of formulas.
import { nearNames } from '../words/near.ts';
import type { CellId } from '../language/tree.ts';
import type { Checked } from '../language/plan.ts';
import { wordsOf } from '../language/range-ends.ts';
import type { Cell, Finding, Splice } from './document.ts';
import { leadAt, lineBreak } from './lines.ts';
import type { Mend, Mendable } from './mends.ts';
import { nameKey, nameProblem } from './names.ts';
import { lineEnd, lineStart } from './outline.ts';
import { pictureOf, pictureRemarks } from './pictures.ts';
import { REMARK_WORDS, moneyWordsOf, remarkText } from './remarks.ts';
import { splitLimits, upTo } from './sensible.ts';
import { cellRooms, cellSpots } from './table-text.ts';
import { TIE_WORD, givenCalled, nearTies, tieOf } from './ties.ts';
import { amountsIn } from './tree-parts.ts';

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
    case 'remark-not-known':
      return knownRemark(text, finding);
    case 'remark-twice':
      return [away('Take the second one away', finding)];
    case 'money-not-known':
      return knownMoney(cell);
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
      return [withoutRemark('Take it away', cell.id, TIE_WORD)];
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

function setRemark(say: string, cell: CellId, word: string, text: string): Mend {
  return { say, does: { kind: 'remark', cell, word, text } };
}

function withoutRemark(say: string, cell: CellId, word: string): Mend {
  return { say, does: { kind: 'no-remark', cell, word } };
}

function texts(say: string, ...splices: readonly Splice[]): Mend {
  return { say, does: { kind: 'text', splices } };
}

function away(say: string, { spot }: Finding): Mend {
  return texts(say, { from: spot?.from ?? 0, to: spot?.to ?? 0, insert: '' });
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

/** `Width 2`, or the next number that nobody has. */
function freeName(name: string, taken: readonly string[]): string {
  const known = new Set(taken.map(nameKey));
  const base = name.replace(/ \d{1,3}$/, '');
  for (let n = 2; ; n++) if (!known.has(nameKey(`${base} ${n}`))) return `${base} ${n}`;
}

function ownName({ notebook }: Mendable, cell: Cell): Mend {
  const names = notebook.sections.flatMap(({ cells }) => cells.map((c) => c.name));
  const name = freeName(cell.name, names);
  return { say: `Call this one "${name}"`, does: { kind: 'name', cell: cell.id, name } };
}

function ownPartName({ notebook }: Mendable, key: string): Mend {
  const part = notebook.sections.find((section) => section.key === key);
  const name = freeName(
    part?.name ?? '',
    notebook.sections.map((section) => section.name),
  );
  return { say: `Call this one "${name}"`, does: { kind: 'part-name', part: key, name } };
}

/** A line that stays prose for its name: with the part's name before it, or cut to eight words. */
function lineName({ notebook }: Mendable, { spot, part }: Finding): readonly Mend[] {
  if (!spot) return [];
  const line = notebook.text.slice(spot.from, spot.to);
  const colon = /:(?=\s|$)/.exec(line)?.index ?? line.length;
  const name = line.slice(0, colon).trim();
  const section = notebook.sections.find(({ key }) => key === part);
  const before = section?.name ? section.name : 'Job';
  const taken = section?.cells.map((cell) => cell.name) ?? [];
  const made =
    nameProblem(name) === 'too-long'
      ? name.split(/\s+/).slice(0, 8).join(' ')
      : `${before} ${name.toLowerCase()}`;
  if (nameProblem(made) !== null) return [];
  const free = taken.some((each) => nameKey(each) === nameKey(made)) ? freeName(made, taken) : made;
  const end = spot.from + line.slice(0, colon).trimEnd().length;
  return [texts(`Call it "${free}"`, { from: spot.from, to: end, insert: free })];
}

/** A column with no name of its own: numbered, or with the table's name before it. */
function columnNames(cell: Cell, { spot }: Finding): readonly Mend[] {
  const { table } = cell;
  if (!table || !spot) return [];
  const column = table.columns.findIndex((c) => cell.spot.from + c.spot.from === spot.from);
  const found = table.columns[column];
  if (!found) return [];
  const names = table.columns.map((c) => c.name);
  const made =
    found.name === '' ? `column ${column + 1}` : `${cell.name.toLowerCase()} ${found.name}`;
  const isTwin = found.name !== '' && nameProblem(found.name) === null;
  const name = isTwin ? freeName(found.name, names) : made;
  if (nameProblem(name) !== null || names.some((each) => nameKey(each) === nameKey(name)))
    return [];
  return [{ say: `Call it "${name}"`, does: { kind: 'column-name', cell: cell.id, column, name } }];
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

/** The nearest word that is known, or a note that says the same. */
function knownRemark(text: string, { spot }: Finding): readonly Mend[] {
  if (!spot) return [];
  const lead = leadAt(text, spot.from)?.length ?? 0;
  const from = spot.from + lead;
  const colon = text.indexOf(':', from);
  const word = text.slice(from, colon).trim();
  const near = nearNames(word, REMARK_WORDS, 2);
  const to = from + text.slice(from, colon).trimEnd().length;
  return [
    ...near.map((known) => texts(`Write "${known}"`, { from, to, insert: known })),
    texts('Keep it as a note', { from, to: from, insert: 'note: ' }),
  ];
}

/** Tied to what was meant, or to nothing. */
function tied({ notebook }: Mendable, cell: Cell): readonly Mend[] {
  const cells = notebook.sections.flatMap((section) => section.cells);
  const words = tieOf(cell)?.text ?? '';
  const called = givenCalled(cells, cell, words);
  const near = nearTies(cells, cell);
  return [
    ...(called
      ? [setRemark(`Tie "${called.name}" to it`, called.id, TIE_WORD, words)]
      : near.map((other) => setRemark(`Write "${other}"`, cell.id, TIE_WORD, other))),
    withoutRemark('Take it away', cell.id, TIE_WORD),
  ];
}

function knownMoney(cell: Cell): readonly Mend[] {
  const word = remarkText(cell.remarks, 'cost') === null ? 'price' : 'cost';
  const known = moneyWordsOf(word);
  const said = remarkText(cell.remarks, word) ?? '';
  const near = nearNames(said, known, 1);
  const offered = near.length > 0 ? near : known;
  return offered.map((one) => setRemark(`Count it as ${one}`, cell.id, word, one));
}

/** What goes on below its first line is drawn up to it. */
function goesOn(text: string, cell: Cell, { spot }: Finding): readonly Mend[] {
  if (!spot) return [];
  const { from, to } = cell.formulaSpot;
  const more = text.slice(spot.from, spot.to).trim();
  const start = lineStart(text, spot.from);
  return [
    texts(
      'Make it one line',
      { from: to, to, insert: from === to ? ` ${more}` : ` ${more}` },
      { from: start, to: lineEnd(text, spot.to), insert: '' },
    ),
    texts('Keep it as a note', { from: spot.from, to: spot.from, insert: '- note: ' }),
  ];
}

/** A table under a formula: an item of its own, the formula's name before it. */
function ownCell(text: string, cell: Cell, { spot }: Finding): readonly Mend[] {
  if (!spot) return [];
  const start = lineStart(text, spot.from);
  const name = `${cell.name} table`;
  if (nameProblem(name) !== null) return [];
  const lead = leadAt(text, cell.spot.from) ?? '- ';
  const line = `${lead}${name}:${lineBreak(text)}`;
  return [texts(`Give it a cell, "${name}"`, { from: start, to: start, insert: line })];
}

/** A cell in a list under prose: to the start of the line, and what is under it with it. */
function outOfProse(text: string, { spot }: Finding): readonly Mend[] {
  if (!spot) return [];
  const first = lineStart(text, spot.from);
  const indent = /^[ \t]*/.exec(text.slice(first, spot.to))?.[0] ?? '';
  const splices: Splice[] = [];
  for (let at = first; at < spot.to; at = lineEnd(text, at)) {
    if (text.startsWith(indent, at)) splices.push({ from: at, to: at + indent.length, insert: '' });
  }
  return indent === '' ? [] : [texts('Bring it to the start of the line', ...splices)];
}

/** As many marks under the header as it has names. */
function tableMarks(text: string, { spot }: Finding): readonly Mend[] {
  if (!spot) return [];
  const header = { from: spot.from, to: spot.from + lineOf(text, spot.from).length };
  const many = cellSpots(text, header).length;
  const marks = `|${'---|'.repeat(many)}`;
  const next = lineEnd(text, header.to);
  const below = lineOf(text, next);
  const indent = text.slice(lineStart(text, spot.from), spot.from).replace(/[^\t]/g, ' ');
  const isMarks = /^\s*\|[\s:|-]+$/.test(below);
  if (many === 0) return [];
  if (isMarks) {
    const bar = next + below.indexOf('|');
    if (cellRooms(text, { from: bar, to: next + below.length }).length === many) return [];
    const end = next + below.trimEnd().length;
    return [texts('Put a mark under each name', { from: bar, to: end, insert: marks })];
  }
  const insert = `${lineBreak(text)}${indent}${marks}`;
  return [texts('Put the row of marks in', { from: header.to, to: header.to, insert })];
}

function lineOf(text: string, from: number): string {
  return text.slice(from, lineEnd(text, from)).trimEnd();
}

/** Without it the usual one is used, as it is now. */
function settingAway(text: string, { spot }: Finding): readonly Mend[] {
  if (!spot) return [];
  const from = lineStart(text, spot.from);
  return [texts('Take it away', { from, to: lineEnd(text, spot.from), insert: '' })];
}

/** `3 in to 8 in`, `between 3 in and 8 in`: as limits are written. */
function limits(estimate: Mendable, cell: Cell): readonly Mend[] {
  const said = remarkText(cell.remarks, 'sensible') ?? '';
  const { tree } = estimate.draft(cell.part, cell.id, said).reading;
  const ends = tree.kind === 'range' ? upTo(tree) : null;
  const found = /^(?:between|from)?\s*(.+?)\s+(?:to|and|-|–|—)\s+(.+)$/i.exec(said.trim());
  const reads = found?.slice(1).every((side) => {
    const { outcome } = estimate.draft(cell.part, cell.id, side);
    return outcome.kind === 'value';
  });
  const made = ends ?? (found && reads ? `${found[1]} up to ${found[2]}` : null);
  return [
    ...(made === null ? [] : [setRemark(`Write ${made}`, cell.id, 'sensible', made)]),
    withoutRemark('Take the limits away', cell.id, 'sensible'),
  ];
}

/** The limit that was passed goes to where the value is, or the end of its range that lies farthest out. */
function wider(estimate: Mendable, cell: Cell): readonly Mend[] {
  const said = remarkText(cell.remarks, 'sensible') ?? '';
  const { range, reading } = estimate.state(cell.id);
  const { tree } = reading;
  const shown = estimate.shown(cell.id);
  const ends = range && tree.kind === 'range' ? [wordsOf(tree.best), wordsOf(tree.worst)] : [];
  const values = [...(shown === null ? [] : [shown]), ...ends];
  if (values.length === 0) return [];
  const isLess = (a: string, b: string): boolean => {
    const { outcome } = estimate.draft(cell.part, cell.id, `(${a}) is less than (${b})`);
    return outcome.kind === 'value' && outcome.value === true;
  };
  const { low, high } = splitLimits(said.trim()) ?? { low: null, high: null };
  const least = low && values.reduce((far, value) => (isLess(value, far) ? value : far), low);
  const most = high && values.reduce((far, value) => (isLess(far, value) ? value : far), high);
  const moved = [least === low ? null : least, most === high ? null : most].filter(
    (one) => one !== null,
  );
  if (moved.length === 0) return [];
  const made = least === null ? `up to ${most}` : `${least} up to ${most}`;
  const text = most === null ? `at least ${least}` : made;
  const say = `Widen the limits to ${moved.join(' and ')}`;
  return [setRemark(say, cell.id, 'sensible', text)];
}

/** A range that leaves nothing open is one amount. */
function certain(estimate: Mendable, cell: Cell): readonly Mend[] {
  const { tree } = estimate.state(cell.id).reading;
  if (tree.kind !== 'range') return [];
  const formula = wordsOf(tree.first ?? tree.best);
  return [{ say: `Only ${formula}`, does: { kind: 'formula', cell: cell.id, formula } }];
}

/** `10% waste` beside a cell Waste: the cell's name in its place. */
function byName(estimate: Mendable, cell: Cell): readonly Mend[] {
  const section = estimate.notebook.sections.find(({ key }) => key === cell.part);
  const mends: Mend[] = [];
  for (const { label, spot } of amountsIn(estimate.state(cell.id).reading.tree)) {
    const beside = section?.cells.find((c) => label !== null && nameKey(c.name) === label);
    if (!beside || beside.id === cell.id) continue;
    const formula =
      cell.formula.slice(0, spot.from) + beside.name.toLowerCase() + cell.formula.slice(spot.to);
    const say = `Take ${beside.name}, ${estimate.shown(beside.id) ?? beside.formula}`;
    mends.push({ say, does: { kind: 'formula', cell: cell.id, formula } });
  }
  return mends;
}
