// The prose of the guide: words to write, places in slanted words, and numbers that follow what was changed.
import { html, type TemplateResult } from 'lit';

/** A stretch of prose, as its marks in the text say. */
export interface Stretch {
  readonly look: 'plain' | 'words' | 'place' | 'number';
  readonly text: string;
}

/** `words to write`, *a place*, **a number**; everything else stands as it is. */
export function stretchesOfProse(markdown: string): readonly Stretch[] {
  const stretches: Stretch[] = [];
  let at = 0;
  for (const found of markdown.matchAll(/`([^`]+)`|\*\*([^*]+)\*\*|\*([^*]+)\*/g)) {
    if (found.index > at) stretches.push({ look: 'plain', text: markdown.slice(at, found.index) });
    const [all, words, number, place] = found;
    if (words !== undefined) stretches.push({ look: 'words', text: words });
    else if (number !== undefined) stretches.push({ look: 'number', text: number });
    else stretches.push({ look: 'place', text: place ?? '' });
    at = found.index + all.length;
  }
  if (at < markdown.length) stretches.push({ look: 'plain', text: markdown.slice(at) });
  return stretches;
}

/** A line of prose with its marks drawn; `number` gives a number as it is now. */
export function proseLine(
  markdown: string,
  number: (written: string) => string = (written) => written,
): readonly unknown[] {
  return stretchesOfProse(markdown.replace(/\s*\n\s*/g, ' ')).map(({ look, text }) => {
    switch (look) {
      case 'plain':
        return text;
      case 'words':
        return html`<code>${text}</code>`;
      case 'place':
        return html`<em>${text}</em>`;
      case 'number':
        return html`<strong>${number(text)}</strong>`;
    }
  });
}

/** A paragraph, or the lines of a quote as a list. */
export function proseBlock(
  markdown: string,
  number: (written: string) => string,
): TemplateResult | null {
  if (!/^\s*>/.test(markdown)) return html`<p>${proseLine(markdown.trim(), number)}</p>`;
  const lines = markdown
    .split('\n')
    .map((line) => line.replace(/^\s*>\s?/, '').trim())
    .filter((line) => line !== '');
  return html`<ul>
    ${lines.map((line) => html`<li>${proseLine(line, number)}</li>`)}
  </ul>`;
}
