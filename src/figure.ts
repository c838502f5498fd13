// The headless run: works a notebook without a browser and prints what it comes to.
//   npm run -s figure -- FILE.md [--json] [--set "PART: CELL=formula"]… [--explain "PART: CELL"] [--trials N] [--seed S]
//     [--client price|parts|described|work]
// Leaves with 0 when every cell has a value or waits only for a `?`, 1 when some cell has an error,
// 2 when the file can't be read or an option is wrong.
import fs from 'node:fs';
import path from 'node:path';
import { CLIENT_LEVELS, type ClientLevel } from './client/client-copy.ts';
import { clientSheet } from './client/client-sheet.ts';
import { clientText } from './client/client-text.ts';
import { workingText } from './explain/text.ts';
import { workingOf } from './explain/working.ts';
import type { CellId } from './language/tree.ts';
import { GREATEST_SEED } from './moves-it/draws.ts';
import { trialFigures, trialsText } from './moves-it/figures.ts';
import { Estimate } from './notebook/estimate.ts';
import { figuresOf } from './notebook/figures.ts';
import { listingOf } from './notebook/listing.ts';
import { cellsOf } from './notebook/lines.ts';
import { nameKey } from './notebook/names.ts';
import { LONGEST_TEXT, refusal } from './notebook/read-notebook.ts';

const USAGE =
  'Usage: npm run -s figure -- FILE.md [--json] [--set "PART: CELL=formula"]… [--explain "PART: CELL"] [--trials N] [--seed S] [--client price|parts|described|work]';

/** More trials than this tell nothing more. */
const MOST_TRIALS = 1_000_000;

/** A wrong option or an unreadable file: one line, and the run ends with 2. */
class Refusal extends Error {}

interface Options {
  readonly file: string;
  readonly prints: 'listing' | 'json';
  /** Null: the owner's own figures. */
  readonly client: ClientLevel | null;
  readonly sets: readonly string[];
  readonly explains: readonly string[];
  /** Null: the notebook is worked once, as it stands. */
  readonly trials: { readonly trials: number; readonly seed: number } | null;
}

function run(args: readonly string[]): number {
  const options = optionsOf(args);
  const estimate = new Estimate(textOf(options.file));
  for (const set of options.sets) setCell(estimate, set);
  if (options.client !== null) return handOut(estimate, options.client);
  const explained = options.explains.map((name) => cellNamed(estimate, name, '--explain'));
  const workings = explained.map((id) => workingText(workingOf(estimate, id))).join('\n');
  const trials = options.trials && trialFigures(estimate, options.trials);
  if (options.prints === 'json') {
    const figures = figuresOf(estimate);
    const told = trials ? { ...figures, trials } : figures;
    process.stdout.write(`${JSON.stringify(told, null, 2)}\n`);
    // Beside JSON a working goes where it can't get into it.
    process.stderr.write(workings);
  } else {
    process.stdout.write(workings === '' ? listingOf(estimate) : workings);
    if (trials) process.stdout.write(trialsText(trials));
  }
  const isAtFault = (id: CellId): boolean => estimate.state(id).outcome.kind === 'fault';
  const inRows = (id: CellId): readonly CellId[] => estimate.rows(id)?.flat() ?? [];
  return estimate.notebook.parts.some((p) =>
    cellsOf(p).some((c) => isAtFault(c.id) || inRows(c.id).some(isAtFault)),
  )
    ? 1
    : 0;
}

function optionsOf(args: readonly string[]): Options {
  let file: string | null = null;
  let prints: Options['prints'] = 'listing';
  const sets: string[] = [];
  const explains: string[] = [];
  let client: ClientLevel | null = null;
  let trials: number | null = null;
  let seed: number | null = null;
  const waiting = [...args];
  for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
    if (next === '--json') prints = 'json';
    else if (next === '--set' || next === '--explain') {
      const value = waiting.shift();
      if (value === undefined) throw new Refusal(`${next} wants a cell after it. ${USAGE}`);
      (next === '--set' ? sets : explains).push(value);
    } else if (next === '--client') client = levelAfter(waiting.shift());
    else if (next === '--trials') trials = wholeAfter(next, waiting.shift(), 1, MOST_TRIALS);
    else if (next === '--seed') seed = wholeAfter(next, waiting.shift(), 0, GREATEST_SEED);
    else if (next.startsWith('--')) throw new Refusal(`There is no option ${next}. ${USAGE}`);
    else if (file !== null)
      throw new Refusal(`One notebook at a time: ${file}, or ${next}? ${USAGE}`);
    else file = next;
  }
  if (file === null) throw new Refusal(`No notebook was named. ${USAGE}`);
  if (trials === null && seed !== null)
    throw new Refusal(`--seed is for trials: say how many with --trials. ${USAGE}`);
  const asked = trials === null ? null : { trials, seed: seed ?? 1 };
  if (client !== null && (prints === 'json' || explains.length > 0 || asked !== null))
    throw new Refusal(`--client prints what a client may have and nothing beside it. ${USAGE}`);
  return { file, prints, client, sets, explains, trials: asked };
}

function levelAfter(text: string | undefined): ClientLevel {
  const level = CLIENT_LEVELS.find((one) => one === text);
  if (level) return level;
  throw new Refusal(`--client wants one of ${CLIENT_LEVELS.join(', ')} after it. ${USAGE}`);
}

/** Only the copy: what it is made from is never printed beside it. */
function handOut(estimate: Estimate, level: ClientLevel): number {
  const handing = clientSheet(estimate, level, null);
  if (handing.kind === 'not-yet') {
    process.stderr.write(`${handing.message}\n`);
    return 1;
  }
  process.stdout.write(clientText(handing.sheet));
  return 0;
}

function wholeAfter(option: string, text: string | undefined, least: number, most: number): number {
  const number = text !== undefined && /^\d+$/.test(text) ? Number(text) : NaN;
  if (number >= least && number <= most) return number;
  throw new Refusal(`${option} wants a whole number from ${least} to ${most} after it. ${USAGE}`);
}

function textOf(file: string): string {
  const place = path.resolve(process.env['INIT_CWD'] ?? process.cwd(), file);
  let bytes: Buffer;
  try {
    const { size } = fs.statSync(place);
    // A character takes up to four bytes: what is longer than that is not worth opening.
    if (size > 4 * LONGEST_TEXT)
      throw new Refusal(
        `${file} is ${megabytes(size)} long; a notebook may have ${LONGEST_TEXT / 1e6} million characters.`,
      );
    bytes = fs.readFileSync(place);
  } catch (cause) {
    if (cause instanceof Refusal) throw cause;
    throw new Refusal(`${file} can't be opened: ${reasonOf(cause)}.`);
  }
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new Refusal(`${file} does not look like a text file.`);
  }
  const why = refusal(text);
  if (why) throw new Refusal(`${file}: ${why.message}`);
  return text;
}

function megabytes(size: number): string {
  return `${(size / 1e6).toFixed(1)} MB`;
}

function reasonOf(cause: unknown): string {
  const code = cause instanceof Error && 'code' in cause ? String(cause.code) : '';
  switch (code) {
    case 'ENOENT':
      return 'there is no such file';
    case 'EISDIR':
      return 'it is a folder';
    case 'EACCES':
      return 'it may not be read';
    default:
      return code === '' ? 'it could not be read' : code;
  }
}

/** `PART: CELL=formula`: the first `=` ends the name. */
function setCell(estimate: Estimate, set: string): void {
  const equals = set.indexOf('=');
  if (equals < 0)
    throw new Refusal(
      `--set wants a cell and a formula, as in "Landing: Waste=15%"; "${set}" has no =.`,
    );
  const formula = set.slice(equals + 1).trim();
  const id = cellNamed(estimate, set.slice(0, equals), '--set');
  const done = setText(estimate, id, formula);
  if ('code' in done) throw new Refusal(`--set "${set}": ${done.message}`);
}

/** A row's cell is set in its row. */
function setText(estimate: Estimate, id: CellId, text: string) {
  const { inTable } = estimate.state(id).input;
  if (inTable === undefined) return estimate.setFormula(id, text);
  const rows = estimate.rows(inTable) ?? [];
  const row = rows.findIndex((cells) => cells.includes(id));
  return estimate.setRowCell(inTable, row, rows[row].indexOf(id), text);
}

/** A cell by its name alone where only one has it, or with its part's name and a colon before it. */
function cellNamed(estimate: Estimate, said: string, option: string): CellId {
  const wanted = nameKey(said);
  const all = estimate.notebook.parts.flatMap((part) =>
    cellsOf(part).flatMap((cell) => [
      { id: cell.id, part: part.name, name: cell.name },
      // `Slab bays: B: volume`
      ...(wanted.includes(nameKey(cell.name))
        ? (estimate.rows(cell.id)?.flat() ?? []).map((id) => ({
            id,
            part: part.name,
            name: estimate.state(id).input.name,
          }))
        : []),
    ]),
  );
  const alone = all.filter((cell) => nameKey(cell.name) === wanted);
  const found =
    alone.length > 0
      ? alone
      : all.filter((cell) => nameKey(`${cell.part}: ${cell.name}`) === wanted);
  if (found.length === 1) return found[0].id;
  if (found.length === 0) throw new Refusal(`${option}: no cell is called "${said.trim()}".`);
  const where = found.map((cell) => `"${cell.part}: ${cell.name}"`).join(' or ');
  throw new Refusal(`${option}: "${said.trim()}" could be ${where}.`);
}

try {
  process.exitCode = run(process.argv.slice(2));
} catch (cause) {
  if (!(cause instanceof Refusal)) throw cause;
  process.stderr.write(`${cause.message.replace(/\s*\n\s*/g, ' ')}\n`);
  process.exitCode = 2;
}
