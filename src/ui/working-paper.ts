// The whole working of a number as a page to print: of which notebook and day it is, every step, every source and caution.
import { html, nothing, type TemplateResult } from 'lit';
import { type ProofHead, proofHead } from '../explain/proof.ts';
import type { Step, Working } from '../explain/step.ts';
import { goesIntoSentence, toldSteps, unfinished } from '../explain/text.ts';
import { styled } from './styled.ts';

export function workingPaper(working: Working, head: ProofHead, shown: string): TemplateResult {
  const [place, when] = proofHead(head);
  return html`<section class="proof" aria-label="Working of ${working.name}">
    <p class="place">${place}</p>
    <h3>Working of ${working.name}: ${shown}</h3>
    <p class="when">${when}</p>
    ${toldSteps(working.steps).map(({ step, indent }) =>
      line(step.cell === working.cell ? { ...step, name: null } : step, indent.length),
    )}
    <p class="into">${goesIntoSentence(working)}</p>
  </section>`;
}

function line(step: Step, indent: number): TemplateResult {
  const isGiven = step.words === 'given';
  const name = step.name === null ? '' : step.name;
  const source = step.source ?? (isGiven ? 'no source is written' : null);
  return html`<div class="told" ${styled({ 'margin-left': `${indent * 0.55}em` })}>
    <p>
      ${name === '' ? nothing : html`<b>${name}</b>`}
      ${
        isGiven || step.referredTo
          ? html`${step.referredTo ? `${step.words}: ` : ''}${step.result}`
          : html`<span class="words">${step.words}</span>`
      }
    </p>
    ${
      step.numbers === ''
        ? isGiven || step.referredTo || step.words === step.result || step.result === ''
          ? nothing
          : html`<p class="numbers">${step.result}</p>`
        : html`<p class="numbers">
            ${step.pieces.map(({ text, struck }) => (struck ? html`<s>${text}</s>` : text))}
          </p>`
    }
    ${step.note ? html`<p class="beside">${step.note}</p>` : nothing}
    ${source === null ? nothing : html`<p class="beside">From: ${source}</p>`}
    ${step.caution ? html`<p class="beside"><b>Caution.</b> ${step.caution}</p>` : nothing}
    ${step.open ? html`<p class="beside">${unfinished(step)}</p>` : nothing}
  </div>`;
}
