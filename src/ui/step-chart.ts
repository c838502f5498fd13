// Why a total moved, drawn as a stair that goes down the page: each step begins where the one above ended, to the right
// where the total grew, to the left where it fell, hatched by what was changed. The money is on the same line.
import { html, nothing, svg, type TemplateResult } from 'lit';
import { centsOf, moneyText } from '../versions/cents.ts';
import type { TotalStep } from '../versions/say-change.ts';
import { money, signedMoney } from './money-words.ts';
import { WHY_KINDS, type WhyKind } from './why-kinds.ts';

export interface ChartStep {
  readonly label: string;
  readonly kind: WhyKind;
  readonly amount: string;
  readonly from: string;
  readonly to: string;
}

/** So many steps are drawn one by one; what is left is one step more. */
const MOST_DRAWN = 24;
/** Percent of the width left free at both ends. */
const MARGIN = 4;

export function chartSteps(
  steps: readonly TotalStep[],
  kinds: readonly WhyKind[],
): readonly ChartStep[] {
  const all = steps.flatMap((step, i): readonly ChartStep[] => {
    const { amount, from, to } = step;
    if (centsOf(amount) === 0n) return [];
    return [{ label: labelOf(step), kind: kinds[i] ?? 'together', amount, from, to }];
  });
  if (all.length <= MOST_DRAWN) return all;
  const size = ({ amount }: ChartStep): bigint => {
    const cents = centsOf(amount);
    return cents < 0n ? -cents : cents;
  };
  const largest = new Set(
    all.toSorted((a, b) => Number(size(b) - size(a))).slice(0, MOST_DRAWN - 1),
  );
  const [drawn, rest] = [all.filter((s) => largest.has(s)), all.filter((s) => !largest.has(s))];
  const sum = rest.reduce((cents, { amount }) => cents + centsOf(amount), 0n);
  const label = `${rest.length} smaller changes`;
  const steps2 = [
    ...drawn,
    { label, kind: 'together' as const, amount: moneyText(sum), from: '', to: '' },
  ];
  // The steps left out move where the others begin.
  let at = centsOf(all[0]?.from ?? '0.00');
  return steps2.map((step) => {
    const from = moneyText(at);
    at += centsOf(step.amount);
    return { ...step, from, to: moneyText(at) };
  });
}

export interface ChartEnds {
  readonly before: readonly [name: string, total: string];
  readonly after: readonly [name: string, total: string];
  readonly currency: string;
}

export function stepChart(steps: readonly ChartStep[], ends: ChartEnds): TemplateResult {
  const { before, after, currency } = ends;
  const levels = [before[1], after[1], ...steps.map(({ to }) => to)].map((m) => Number(centsOf(m)));
  const [low, high] = [Math.min(...levels), Math.max(...levels)];
  const place = (amount: string): number => {
    const share = high === low ? 0.5 : (Number(centsOf(amount)) - low) / (high - low);
    return MARGIN + share * (100 - 2 * MARGIN);
  };
  const said = `From ${before[0]}, ${money(before[1], currency)}, to ${after[0]}, ${money(after[1], currency)}, in ${steps.length === 1 ? '1 step' : `${steps.length} steps`}; the table below tells each.`;
  return html`<figure class="stair" role="img" aria-label=${said}>
    <svg class="hatches" aria-hidden="true" width="0" height="0">
      <defs>${WHY_KINDS.map(hatch)}</defs>
    </svg>
    ${end(before, place(before[1]), 'start', currency)}
    ${steps.map((step) => stepLine(step, place, currency))}
    ${end(after, place(after[1]), 'end', currency)}
  </figure>`;
}

/** The hatch of a kind, to stand beside its words. */
export function hatchSwatch(kind: WhyKind): TemplateResult {
  return html`<svg class="swatch" viewBox="0 0 19 14" aria-hidden="true">
    <defs>${hatch(kind, 'key')}</defs>
    <rect x="0.5" y="0.5" width="18" height="13" fill="url(#why-key-${kind})" />
  </svg>`;
}

function stepLine(
  { label, kind, amount, from, to }: ChartStep,
  place: (amount: string) => number,
  currency: string,
): TemplateResult {
  const [a, b] = [place(from), place(to)];
  const [x, wide] = [Math.min(a, b), Math.max(Math.abs(b - a), 0.3)];
  return html`<div class="step">
    <span class="label">${label}</span>
    <svg class="lane">
      <line class="drop" x1="${a}%" x2="${a}%" y1="0" y2="25%" />
      <line class="drop" x1="${b}%" x2="${b}%" y1="75%" y2="100%" />
      <rect class="ground" x="${x}%" width="${wide}%" y="25%" height="50%" />
      <rect
        class="tread"
        x="${x}%"
        width="${wide}%"
        y="25%"
        height="50%"
        fill="url(#why-0-${kind})"
      />
    </svg>
    <span class="amount">${signedMoney(amount, currency)}</span>
  </div>`;
}

function end(
  [name, total]: readonly [string, string],
  at: number,
  which: 'start' | 'end',
  currency: string,
): TemplateResult {
  return html`<div class="step post">
    <span class="label">${name}</span>
    <svg class="lane">
      <line
        x1="${at}%"
        x2="${at}%"
        y1=${which === 'start' ? '20%' : '0'}
        y2=${which === 'start' ? '100%' : '80%'}
      />
    </svg>
    <span class="amount">${money(total, currency)}</span>
  </div>`;
}

function labelOf({ changes }: TotalStep): string {
  const [first] = changes;
  if (!first) return 'the tool';
  const name = first.name || first.part;
  return changes.length === 1 ? name : `${name} and ${changes.length - 1} more`;
}

function hatch(kind: WhyKind, of: string | number): unknown {
  const prefix = of === 'key' ? 'key' : '0';
  return svg`<pattern id="why-${prefix}-${kind}" patternUnits="userSpaceOnUse" width="8" height="8">
    ${strokes(kind)}
  </pattern>`;
}

function strokes(kind: WhyKind): unknown {
  const line = (d: string, wide = 0.9) =>
    svg`<path d=${d} fill="none" stroke="currentColor" stroke-width=${wide} />`;
  switch (kind) {
    case 'price':
      return svg`<rect width="8" height="8" fill="currentColor" />`;
    case 'size':
      return line('M-2 2 L2 -2 M0 8 L8 0 M6 10 L10 6');
    case 'formula':
      return line('M0 8 L8 0 M-2 2 L2 -2 M6 10 L10 6 M0 0 L8 8 M-2 6 L2 10 M6 -2 L10 2', 0.7);
    case 'line':
      return line('M2 0 V8 M6 0 V8');
    case 'table':
      return line('M0 2 H8 M0 6 H8');
    case 'together':
      return svg`<circle cx="2" cy="2" r="1" fill="currentColor" /><circle cx="6" cy="6" r="1" fill="currentColor" />`;
    case 'tool':
      return nothing;
  }
}
