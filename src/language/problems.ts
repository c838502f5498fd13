// What can be wrong with how a formula is written, as facts, and how each is said.
// Problems with what things measure are worded beside their rules in `check/`.
import type { Fix, Report } from '../words/report.ts';
import type { Spot } from '../words/spot.ts';

/** A problem found while reading, before anything is measured. */
export type ReadingProblem =
  | { readonly code: 'empty'; readonly spots: readonly Spot[]; readonly fixes: readonly Fix[] }
  | {
      readonly code: 'too-long';
      readonly spots: readonly Spot[];
      readonly length: number;
      readonly most: number;
    }
  | { readonly code: 'too-deep'; readonly spots: readonly Spot[]; readonly most: number }
  | {
      readonly code: 'unknown-name';
      readonly spots: readonly Spot[];
      readonly word: string;
      readonly near: readonly string[];
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'ambiguous-name';
      readonly spots: readonly Spot[];
      readonly word: string;
      readonly choices: readonly string[];
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'unknown-unit';
      readonly spots: readonly Spot[];
      readonly word: string;
      readonly number: string;
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'unknown-part';
      readonly spots: readonly Spot[];
      readonly word: string;
      readonly near: readonly string[];
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'unknown-table';
      readonly spots: readonly Spot[];
      readonly word: string;
      readonly near: readonly string[];
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'unknown-column';
      readonly spots: readonly Spot[];
      readonly word: string;
      readonly table: string;
      readonly columns: readonly string[];
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'not-a-choice';
      readonly spots: readonly Spot[];
      readonly word: string;
      readonly choices: readonly string[];
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'unknown-size';
      readonly spots: readonly Spot[];
      readonly word: string;
      readonly table: string;
      readonly near: readonly string[];
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'table-not-a-value';
      readonly spots: readonly Spot[];
      readonly table: string;
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'missing-operator';
      readonly spots: readonly Spot[];
      readonly left: string;
      readonly right: string;
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'missing-value';
      readonly spots: readonly Spot[];
      readonly after: string | null;
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'other-currency';
      readonly spots: readonly Spot[];
      readonly sign: string;
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'unread';
      readonly spots: readonly Spot[];
      readonly word: string;
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'unclosed-bracket';
      readonly spots: readonly Spot[];
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'stray-bracket';
      readonly spots: readonly Spot[];
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'two-readings';
      readonly spots: readonly Spot[];
      readonly about: string;
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'margin-or-markup';
      readonly spots: readonly Spot[];
      readonly percent: string;
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'missing-otherwise';
      readonly spots: readonly Spot[];
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'per-what';
      readonly spots: readonly Spot[];
      readonly what: string;
      readonly many: string;
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'pack-of-what';
      readonly spots: readonly Spot[];
      readonly noun: string;
      readonly many: string;
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'phrase-slot';
      readonly spots: readonly Spot[];
      readonly phrase: string;
      readonly wanted: string;
      readonly like: string;
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'half-a-range';
      readonly spots: readonly Spot[];
      /** What it says already, and what it lacks. */
      readonly says: 'best' | 'worst';
      readonly lacks: 'best' | 'worst';
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'range-in-formula';
      readonly spots: readonly Spot[];
      readonly range: string;
      readonly fixes: readonly Fix[];
    }
  | {
      readonly code: 'odd-number';
      readonly spots: readonly Spot[];
      readonly text: string;
      readonly why: string;
      readonly fixes: readonly Fix[];
    };

/** In place of a number: a unit to show in is asked for. */
export const IN_UNITS = '';

/** What the fix is called that leaves an amount still to come. */
export const LEAVE_OPEN = 'Leave it open for now';

/** What the fix is called that drops words nobody knows. */
/** Said where a note could be worked with; only shown where that reads. */
export const MULTIPLY = 'Multiply by it';

export const LEAVE_OUT = 'Leave the words out';

/** The problem in words. */
export function wordProblem(problem: ReadingProblem): Report {
  const report = (headline: string, explanation: string): Report => ({
    code: problem.code,
    headline,
    spots: problem.spots,
    explanation,
    fixes: 'fixes' in problem ? problem.fixes : [],
  });
  switch (problem.code) {
    case 'empty':
      return report(
        'Nothing is written here yet.',
        'Write an amount, such as 12 ft, or ? for one still to come.',
      );
    case 'too-long':
      return report(
        'This formula is too long to read.',
        `It has ${problem.length.toLocaleString('en-US')} characters; up to ${problem.most.toLocaleString('en-US')} are read. Split it into cells with names.`,
      );
    case 'too-deep':
      return report(
        'Too many brackets inside one another.',
        `Up to ${problem.most} are followed. Give the inner part a cell of its own.`,
      );
    case 'unknown-name':
      return report(
        short(`No cell is called "${problem.word}".`, 'No cell has this name.'),
        problem.near.length > 0
          ? `Nearest ${problem.near.length > 1 ? 'names' : 'name'} here: ${listed(problem.near)}.`
          : `Nothing near "${problem.word}" is named in this notebook. Add a cell of that name, or write an amount.`,
      );
    case 'ambiguous-name':
      return report(
        short(
          `"${problem.word}" could be any of several cells.`,
          'This name could be any of several cells.',
        ),
        `It could be ${listed(problem.choices, 'or')}. Write the one that is meant.`,
      );
    case 'unknown-unit':
      return report(
        problem.number === IN_UNITS
          ? 'In which unit?'
          : short(`${problem.number} of what?`, 'This many of what?'),
        `"${problem.word}" is not a unit or a thing that is counted here. If it is counted, add it to "Counted things" at the top of the notebook.`,
      );
    case 'unknown-part':
      return report(
        short(`No part is called "${problem.word}".`, 'No part has this name.'),
        problem.near.length > 0
          ? `Nearest here: ${listed(problem.near)}.`
          : 'Write the name of a part as its heading has it, "this part" or "every part".',
      );
    case 'unknown-table':
      return report(
        short(`No table is called "${problem.word}".`, 'No table has this name.'),
        problem.near.length > 0
          ? `Nearest here: ${listed(problem.near)}.`
          : 'Write the name of a cell that holds a table, or of a table of the trade.',
      );
    case 'unknown-column':
      return report(
        short(`No column is called "${problem.word}".`, 'No column has this name.'),
        problem.columns.length > 0
          ? `"${problem.table}" has ${listed(few(problem.columns))}.`
          : `"${problem.table}" has no columns with names.`,
      );
    case 'not-a-choice':
      return report(
        short(`"${problem.word}" is not one of the choices.`, 'This is not one of the choices.'),
        problem.choices.length > 0
          ? `They are ${listed(few(problem.choices))}.`
          : 'There are none to choose from yet.',
      );
    case 'unknown-size':
      return report(
        short(`There is no size ${problem.word} here.`, 'There is no such size here.'),
        `"${problem.table}" has none. Nearest there: ${listed(problem.near)}.`,
      );
    case 'table-not-a-value':
      return report(
        short(`"${problem.table}" is a table, not an amount.`, 'This is a table, not an amount.'),
        'Say which column is meant, such as "total of … in" it, or read a row "off" it.',
      );
    case 'missing-operator':
      return report(
        'Two things stand side by side.',
        `Nothing says what to do with "${clipped(problem.left)}" and "${clipped(problem.right)}". Put a word between them, such as plus, minus, times or at.`,
      );
    case 'missing-value':
      return report(
        'Something is missing here.',
        problem.after
          ? `After "${problem.after}" an amount, a name or a bracket is needed.`
          : 'An amount, a name or a bracket is needed here.',
      );
    case 'other-currency':
      return report(
        'One notebook, one currency.',
        `Money is written with ${problem.sign} in this notebook. The currency stands under its title: "Currency: …".`,
      );
    case 'unread':
      return report(
        short(`"${problem.word}" can't be read here.`, "These words can't be read here."),
        'It is not a name, a unit or a word that works between amounts.',
      );
    case 'unclosed-bracket':
      return report('A bracket is not closed.', 'Every "(" needs its ")".');
    case 'stray-bracket':
      return report(
        'A bracket closes that was not opened.',
        'Take it away, or open it where the group begins.',
      );
    case 'two-readings':
      return report('There are two ways to read this.', problem.about);
    case 'margin-or-markup':
      return report(
        'A margin is not added on.',
        `A ${problem.percent} margin is a share of the price; a ${problem.percent} markup is a share of the cost. Say which: "for a ${problem.percent} margin" or "marked up ${problem.percent}".`,
      );
    case 'missing-otherwise':
      return report(
        'And when it does not hold?',
        'A condition needs its "otherwise": what the answer is in every other case.',
      );
    case 'per-what':
      return report(
        'Divided by how much?',
        `"${problem.what}" alone is no amount to divide by. Name the cell that holds it, or write an amount such as "100 ${problem.many}".`,
      );
    case 'pack-of-what':
      return report(
        short(`How much is in one ${problem.noun}?`, 'How much is in one?'),
        `Say what one ${problem.noun} holds, for example "in ${problem.many} of 350 screws" or with the name of a cell.`,
      );
    case 'phrase-slot':
      return report(
        short(`"${problem.phrase}" needs ${problem.wanted}.`, 'This phrase needs something more.'),
        `It reads, for example: ${problem.like}.`,
      );
    case 'half-a-range':
      return report(
        `And at ${problem.lacks}?`,
        `A range says both what it is at best and what it is at worst, for example "13 hours, 12 at best, 16 at worst".`,
      );
    case 'range-in-formula':
      return report(
        'A range stands in a cell of its own.',
        `"${clipped(problem.range)}" is a range, and a formula works with one value. Take its plain value, or give the range a cell of its own and write the name of that cell here.`,
      );
    case 'odd-number':
      return report(
        short(`"${problem.text}" can't be read as a number.`, "This can't be read as a number."),
        problem.why,
      );
  }
}

/** As many as one reads at a glance. */
const FEW = 8;

function few(names: readonly string[]): readonly string[] {
  return names.length <= FEW ? names : names.slice(0, FEW);
}

function short(headline: string, otherwise: string): string {
  return headline.length < 60 ? headline : otherwise;
}

function clipped(words: string): string {
  return words.length > 40 ? words.slice(0, 38) + '…' : words;
}

function listed(names: readonly string[], joiner = 'and'): string {
  const quoted = names.map((n) => `"${n}"`);
  return quoted.length < 2
    ? quoted.join('')
    : `${quoted.slice(0, -1).join(', ')} ${joiner} ${quoted.at(-1)}`;
}
