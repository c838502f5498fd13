// Estimate and what it comes to, part by part, as two strips on one scale: above what was estimated, below what was
// spent and what is still to go; what stands past the estimate is marked in keel.
import { html, nothing, svg, type TemplateResult } from 'lit';
import type { Against, Figures } from '../record/against.ts';
import { moneyText } from '../versions/cents.ts';
import { money } from './money-words.ts';

export function bars({ parts, budget }: Against): TemplateResult | typeof nothing {
  const rows = parts.filter(({ whole }) => whole.estimate !== 0n || whole.forecast !== 0n);
  const most = rows.reduce(
    (top, { whole }) => larger(top, larger(whole.estimate, larger(whole.forecast, whole.actual))),
    0n,
  );
  if (most <= 0n) return nothing;
  return html`<div class="bars">
    <ul class="legend" aria-hidden="true">
      <li>${swatch('estimate')}estimate</li>
      <li>${swatch('actual')}spent</li>
      <li>${swatch('to-go')}to go</li>
      <li>${swatch('over')}past the estimate</li>
    </ul>
    ${rows.map(
      ({ part, whole }) =>
        html`<div class="bar">
          <span aria-hidden="true">${part.name}</span>
          ${strip(whole, most, said(part.name, whole, budget.currency))}
        </div>`,
    )}
  </div>`;
}

function strip(figures: Figures, most: bigint, label: string): TemplateResult {
  const at = (cents: bigint): number =>
    cents <= 0n ? 0 : Number((cents * 100_000n) / most) / 1000;
  const [estimate, spent, end] = [at(figures.estimate), at(figures.actual), at(figures.forecast)];
  const past = Math.max(0, end - estimate);
  return html`<svg class="strips" role="img" aria-label=${label}>
    ${hatched()}
    <rect class="estimate" x="0" y="1" width="${estimate}%" height="8" />
    <rect class="actual" x="0" y="12" width="${Math.min(spent, end)}%" height="9" />
    <rect
      class="to-go"
      fill="url(#to-go)"
      x="${spent}%"
      y="12"
      width="${Math.max(0, end - spent)}%"
      height="9"
    />
    ${past > 0 ? svg`<rect class="over" x="${estimate}%" y="23" width="${past}%" height="3" />` : nothing}
    <line class="mark" x1="${estimate}%" x2="${estimate}%" y1="0" y2="26" />
  </svg>`;
}

function hatched(): unknown {
  return svg`<defs><pattern id="to-go" patternUnits="userSpaceOnUse" width="6" height="6">
    <path d="M0 6 L6 0 M-1.5 1.5 L1.5 -1.5 M4.5 7.5 L7.5 4.5" fill="none" stroke="currentColor" stroke-width="0.9" />
  </pattern></defs>`;
}

function swatch(what: 'estimate' | 'actual' | 'to-go' | 'over'): TemplateResult {
  return html`<svg class="swatch" viewBox="0 0 19 11">
    ${hatched()}
    <rect
      class=${what}
      fill=${what === 'to-go' ? 'url(#to-go)' : nothing}
      x="0.5"
      y=${what === 'over' ? 4 : 0.5}
      width="18"
      height=${what === 'over' ? 3 : 10}
    />
  </svg>`;
}

function said(name: string, { estimate, actual, toGo, over }: Figures, currency: string): string {
  const of = (cents: bigint): string => money(moneyText(cents), currency);
  const past = over > 0n ? `, ${of(over)} over` : over < 0n ? `, ${of(-over)} under` : '';
  return `${name}: estimate ${of(estimate)}, spent ${of(actual)}, to go ${of(toGo)}${past}`;
}

function larger(one: bigint, other: bigint): bigint {
  return one > other ? one : other;
}
