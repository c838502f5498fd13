// The templates as they stand in the folder, and the index that tells the page of them.
import fs from 'node:fs';
import index from '../../templates/index.json' with { type: 'json' };

const folder = new URL('../../templates/', import.meta.url);

export const INDEX = index;

export const templateFiles: readonly string[] = fs
  .readdirSync(folder)
  .filter((name) => name.endsWith('.md'))
  .toSorted();

export function templateText(file: string): string {
  return fs.readFileSync(new URL(file, folder), 'utf8');
}
