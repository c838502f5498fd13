// Every mistake that can be made in every worked step of every template, made without the help of what recognises it, and
// asked: it is among those that are named.
// All of them, with the table of where each can be made: MISTAKES=all npx vitest run --project unit tests/mistakes/every-mistake.test.ts
import fs from 'node:fs';
import { afterAll, describe, expect, test, vi } from 'vitest';
import { diagnose } from '../../src/mistakes/diagnose.ts';
import { HINTS, type Mistake } from '../../src/mistakes/mistake.ts';
import { openedText } from '../moves-it/opened.ts';
import { Chance } from '../properties/chance.ts';
import { madeIn, stepsOf } from './made.ts';

const ALL = process.env['MISTAKES'] === 'all';
/** Of each mistake in each template so many are asked. */
const ASKED_AT_MOST = ALL ? Infinity : 4;

// Thousands of answers: slow only where many are at work on one machine.
vi.setConfig({ testTimeout: ALL ? 3_600_000 : 120_000 });

const folder = `${import.meta.dirname}/../../templates`;
const files = fs.readdirSync(folder).filter((file) => file.endsWith('.md'));

/** By mistake and template, how often it can be made. */
const where = new Map<Mistake, Map<string, number>>();

describe('every mistake that can be made is recognised', () => {
  test.for(files)('in %s', (file) => {
    const open = openedText(fs.readFileSync(`${folder}/${file}`, 'utf8'));
    const { estimate } = open;
    const chance = new Chance(file.length);
    const asking = open
      .cells()
      .filter((cell) => estimate.state(cell).kind === 'worked')
      .flatMap((cell) => stepsOf(estimate, cell))
      .flatMap((step) => madeIn(estimate, step).map((made) => ({ step, made })));
    for (const { made } of asking) count(made.mistake, file);
    const missed: string[] = [];
    for (const mistake of Object.keys(HINTS) as readonly Mistake[]) {
      const all = asking.filter(({ made }) => made.mistake === mistake);
      for (const { step, made } of some(all, chance)) {
        for (const answer of made.answers) {
          const told = diagnose(estimate, step, answer);
          // What comes to the right number, to the digits that are asked for, is no mistake.
          if (told.kind === 'right') continue;
          const named = told.kind === 'wrong' ? told.mistakes.map((each) => each.mistake) : [];
          if (!named.includes(mistake)) {
            const { input } = estimate.state(step.cell);
            const { from, to } = step.node.formula.spot;
            missed.push(
              `${mistake} | ${input.name}: ${input.formula.slice(from, to)} | ${answer} (${made.how}) | ${told.kind} ${named.join(' ')}`,
            );
          }
        }
      }
    }
    expect(missed.join('\n')).toBe('');
  });

  test('each of them in one template at least', () => {
    const nowhere = Object.keys(HINTS).filter((mistake) => !where.has(mistake as Mistake));
    expect(nowhere).toEqual([]);
  });

  afterAll(() => {
    if (ALL) process.stdout.write(`${table()}\n`);
  });
});

function count(mistake: Mistake, file: string): void {
  const counts = where.get(mistake) ?? new Map<string, number>();
  where.set(mistake, counts.set(file, (counts.get(file) ?? 0) + 1));
}

function some<T>(all: readonly T[], chance: Chance): readonly T[] {
  if (all.length <= ASKED_AT_MOST) return all;
  return Array.from({ length: ASKED_AT_MOST }, () => chance.of(all));
}

/** How often each can be made in each template. */
function table(): string {
  const names = files.map((file) => file.replace('.md', ''));
  const rows = Object.keys(HINTS).map((mistake) => {
    const counts = files.map((file) => where.get(mistake as Mistake)?.get(file) ?? 0);
    return `${mistake.padEnd(22)}${counts.map((many) => String(many).padStart(8)).join('')}`;
  });
  return [
    ' '.repeat(22) + names.map((name) => name.slice(0, 7).padStart(8)).join(''),
    ...rows,
  ].join('\n');
}
