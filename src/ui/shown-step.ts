// What stands on the sheet for one step: what is put in and where it comes from, the working with units struck out, the
// picture, and the mark that it comes to; at the end of being asked, how it went.
import { html, nothing, type TemplateResult } from 'lit';
import { CAUTION, type PutIn, type ShownLine, type ShownStep } from '../explain/show-how.ts';
import { type Word, plainWords } from '../explain/step.ts';
import type { CellId } from '../language/tree.ts';
import type { CameOut, Tried } from '../mistakes/asking.ts';
import { MISTAKES_SAID } from '../mistakes/named.ts';
import { pictureFor, pictureTells } from './picture-marks.ts';
import type { Showing } from './showing.ts';
import './ask-step.ts';
import './story-picture.ts';

/** What a person does on a step. */
export interface StepActs {
  readonly know: (cell: CellId) => void;
  readonly tried: (tried: Tried) => void;
}

/** How much larger than on the page a picture's letters are. */
const ENLARGED = 1.35;
/** In pixels: on a screen in the hand it is as on the page. */
const NARROW = 760;
/** So many things that go in stand there at once; the rest of a long total opens. */
const PUT_IN_AT_ONCE = 9;

export function stepShown(showing: Showing, cell: CellId, acts: StepActs): TemplateResult {
  const asked = showing.asked(cell);
  const step = asked ? showing.question(cell) : showing.step(cell);
  const tried = showing.tried(cell);
  return html`<div class="sides">
    <div class="told">
      ${sentence(step)} ${step.kind === 'given' ? source(step) : putIn(showing, step, acts)}
      ${
        asked
          ? html`<ask-step
              .session=${showing.session}
              .step=${asked}
              .tried=${tried}
              @tried=${({ detail }: CustomEvent<Tried>) => acts.tried(detail)}
            ></ask-step>`
          : html`${came(tried)} ${lines(step)} ${step.kind === 'given' ? nothing : source(step)}`
      }
      ${step.note ? html`<p class="beside">${step.note}</p>` : nothing}
      ${
        step.caution
          ? html`<p class="beside caution ${step.cautions}">
              <b>${`${CAUTION[step.cautions]}.`}</b> ${step.caution}
            </p>`
          : nothing
      }
      ${
        asked
          ? nothing
          : html`<p class="comes">
              <span class="value">${step.result}</span> <span class="name">${step.name}</span>
            </p>`
      }
    </div>
    ${picture(showing, step, asked ? 'asked' : 'shown')}
  </div>`;
}

function sentence({ kind, sentence: said, putIn: put }: ShownStep): TemplateResult {
  if (kind === 'given') return html`<p class="sentence">${plainWords(said)}</p>`;
  const names = new Set(put.map(({ cell }) => cell));
  return html`<p class="sentence">${said.map((word) => named(word, names))}</p>`;
}

function named({ text, cell }: Word, names: ReadonlySet<CellId>): unknown {
  return cell !== null && names.has(cell) ? html`<b>${text}</b>` : text;
}

function putIn(showing: Showing, { putIn: all }: ShownStep, acts: StepActs): unknown {
  const left = all.filter(({ cell }) => !showing.known.has(cell) || showing.steps.includes(cell));
  const known = all.filter((each) => !left.includes(each));
  if (all.length === 0) return nothing;
  const [first, rest] = [left.slice(0, PUT_IN_AT_ONCE), left.slice(PUT_IN_AT_ONCE)];
  return html`<ul class="put-in" aria-label="What goes in">
      ${first.map((each) => putInLine(showing, each, acts))}
    </ul>
    ${
      rest.length === 0
        ? nothing
        : html`<details class="more-in">
            <summary>${rest.length} more that go in</summary>
            <ul class="put-in">
              ${rest.map((each) => putInLine(showing, each, acts))}
            </ul>
          </details>`
    }
    ${
      known.length === 0
        ? nothing
        : html`<p class="beside">
            Known: ${known.map(({ name, result }) => `${name} ${result}`).join('; ')}.
          </p>`
    }`;
}

function putInLine(showing: Showing, each: PutIn, acts: StepActs): TemplateResult {
  const { cell, name, result, kind, source: from, caution } = each;
  const where =
    kind !== 'worked'
      ? (from ?? 'no source is written')
      : showing.steps.includes(cell)
        ? 'as worked before'
        : 'worked, and not shown here';
  return html`<li>
    <span class="value">${result}</span> <span class="name">${name}</span>
    <span class="where">${where}</span>
    ${
      kind === 'given'
        ? html`<button
            class="plain known"
            aria-label="Known: leave ${name} out from here on"
            @click=${() => acts.know(cell)}
          >
            known
          </button>`
        : nothing
    }
    ${caution ? html`<span class="where caution"><b>Caution.</b> ${caution}</span>` : nothing}
  </li>`;
}

function lines({ lines: all, sentence: said }: ShownStep): unknown {
  if (all.length === 0) return nothing;
  const whole = plainWords(said);
  return html`<ol class="lines">
    ${all.map((line) => html`<li>${lineShown(line, line.words === whole)}</li>`)}
  </ol>`;
}

function lineShown({ words, pieces, result, note }: ShownLine, isWhole: boolean): TemplateResult {
  return html`${isWhole ? nothing : html`<p class="words">${words}</p>`}
    <p class="numbers">
      ${
        pieces.length === 0
          ? result
          : pieces.map(({ text, struck }) => (struck ? html`<s>${text}</s>` : text))
      }
    </p>
    ${note ? html`<p class="beside">${note}</p>` : nothing}`;
}

function source({ source: from, kind }: ShownStep): unknown {
  if (from === null && kind === 'worked') return nothing;
  return html`<p class="beside">
    ${from === null ? 'No source is written.' : html`From: ${from}`}
  </p>`;
}

const CAME: Readonly<Record<CameOut, string>> = {
  first: 'Right.',
  'after-hint': 'Right now.',
  shown: 'This is how:',
};

function came({ cameOut }: Tried): unknown {
  return cameOut === null ? nothing : html`<p class="came">${CAME[cameOut]}</p>`;
}

/** Where a step is asked, no picture from which the answer could be read. */
function picture(showing: Showing, step: ShownStep, how: 'asked' | 'shown'): unknown {
  const { session } = showing;
  const others = step.putIn.map(({ cell }) => cell);
  const found = pictureFor(session, step.cell, others);
  if (!found) return nothing;
  if (how === 'asked' && pictureTells(session, found, showing.result(step.cell))) return nothing;
  return html`<story-picture
    class="drawing"
    .session=${session}
    .cell=${found.cell}
    .only=${found.place}
    .marked=${found.marks}
    enlarged=${window.innerWidth > NARROW ? ENLARGED : 1}
  ></story-picture>`;
}

/** What was right at first, after a hint, and shown. */
export function howItWent(showing: Showing): TemplateResult {
  const all = showing.steps.map((cell) => showing.tried(cell));
  const groups: readonly (readonly [CameOut, string])[] = [
    ['first', 'Right at first'],
    ['after-hint', 'Right after a hint'],
    ['shown', 'Shown'],
  ];
  const asked = all.some(({ cameOut }) => cameOut !== null);
  if (!asked) return html`<p class="sentence">Nothing was asked on the way here.</p>`;
  return html`${groups.map(([cameOut, heading]) => {
    const some = all.filter((tried) => tried.cameOut === cameOut);
    if (some.length === 0) return nothing;
    return html`<h4>${`${heading}: ${some.length}`}</h4>
      <ul class="went">
        ${some.map(
          ({ cell, mistakes }) =>
            html`<li>
              <span class="value">${showing.result(cell)}</span>
              <span class="name">${showing.session.door.state(cell).input.name}</span>
              ${
                mistakes.length === 0
                  ? nothing
                  : html`<span class="where"
                      >${mistakes.map((each) => MISTAKES_SAID[each]).join('; ')}</span
                    >`
              }
            </li>`,
        )}
      </ul>`;
  })}`;
}
