// The files of the project as they would be committed: all but what .gitignore names and what git keeps.
import fs from 'node:fs';
import { fileURLToPath } from 'node:url';
import path from 'node:path';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Paths from the project's folder with forward slashes, sorted. Works without git: a download has none. */
export function committedFiles(): readonly string[] {
  const left = new Set(['.git', 'node_modules', 'dist', 'coverage', '.DS_Store']);
  const found: string[] = [];
  const visit = (folder: string): void => {
    for (const item of fs.readdirSync(path.join(root, folder), { withFileTypes: true })) {
      if (left.has(item.name) || item.name.endsWith('.log')) continue;
      const name = folder ? `${folder}/${item.name}` : item.name;
      if (item.isDirectory()) visit(name);
      else if (item.isFile()) found.push(name);
    }
  };
  visit('');
  return found.sort();
}

/** What a committed file holds. */
export function contentOf(file: string): Buffer {
  return fs.readFileSync(path.join(root, file));
}
