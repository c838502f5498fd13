// The plain reader and the full one are held to the same outline.
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { markdownSections } from '../../src/notebook/outline-markdown.ts';
import { plainSection } from '../../src/notebook/outline-plain.ts';
import type { OutlineSection } from '../../src/notebook/outline.ts';
import { oddText, tidyText } from './random-text.ts';

// Many random cases: slow only where many are at work on one machine.
vi.setConfig({ testTimeout: 60_000 });

/** The plain reader's sections of a whole text; null where it declines. */
function plainly(text: string): readonly OutlineSection[] | null {
  const sections: OutlineSection[] = [];
  let at = 0;
  do {
    const section = plainSection(text, at, text.length);
    if (!section) return null;
    sections.push(section);
    at = section.spot.to;
  } while (at < text.length);
  return sections;
}

describe('the plain reader', () => {
  it('reads tidy notebooks as the full reader does, and declines none', () => {
    fc.assert(
      fc.property(tidyText, (text) => {
        expect(plainly(text)).toEqual(markdownSections(text, 0, text.length));
      }),
      { numRuns: 150 },
    );
  });

  it('reads as the full reader does whatever it does not decline', () => {
    let read = 0;
    fc.assert(
      fc.property(oddText, (text) => {
        const plain = plainly(text);
        if (!plain) return;
        read++;
        expect(plain).toEqual(markdownSections(text, 0, text.length));
      }),
      { numRuns: 1500 },
    );
    expect(read).toBeGreaterThan(50);
  });

  it('agrees on short mixes of plain lines, every one of them', () => {
    const lines = [
      '',
      '## A',
      '# B',
      'word',
      '- a: 1',
      '* b: 2',
      '1. c: 3',
      '2. d: 4',
      '  - e: 5',
      '   1. f: 6',
      '    - g: 7',
      '---',
    ];
    let read = 0;
    const tryAll = (text: string, depth: number): void => {
      const plain = plainly(text);
      if (plain) {
        read++;
        expect(plain, JSON.stringify(text)).toEqual(markdownSections(text, 0, text.length));
      }
      if (depth > 0) for (const line of lines) tryAll(`${text}${line}\n`, depth - 1);
    };
    tryAll('', 3);
    expect(read).toBeGreaterThan(500);
  });
});
