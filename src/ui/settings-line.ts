// The notebook's settings as they stand in its text, `- Currency: US dollars`, and as a quiet line says them.
import { isSetting } from '../notebook/settings.ts';

export interface Setting {
  readonly name: string;
  readonly value: string;
}

/** The settings that make up this whole stretch of text; null where anything else stands in it. */
export function settingsIn(markdown: string): readonly Setting[] | null {
  const found: Setting[] = [];
  for (const line of markdown.split(/\r?\n/)) {
    if (line.trim() === '') continue;
    const [, name = '', value = ''] = /^\s*[-+*]\s+([^:]+):\s*(.*)$/.exec(line) ?? [];
    if (!isSetting(name)) return null;
    found.push({ name: name.trim(), value: value.trim() });
  }
  return found.length === 0 ? null : found;
}

/** As they are written in place: one a line, without the list's dashes. */
export function settingsToWrite(settings: readonly Setting[]): string {
  return settings.map(({ name, value }) => `${name}: ${value}`).join('\n');
}

/** Back to the notebook's text. */
export function settingsText(written: string): string {
  return written
    .split(/\r?\n/)
    .filter((line) => line.trim() !== '')
    .map((line) => `- ${line.trim().replace(/^[-+*]\s+/, '')}`)
    .join('\n');
}
