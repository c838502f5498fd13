// The change that makes a copy of a notebook one by name.
import type { Change } from '../notebook/document.ts';
import type { Door } from './session.ts';

export function copied({ notebook }: Door): Change {
  const at = notebook.titleSpot;
  const title = `${notebook.title || 'Estimate'}, a copy`;
  const splice = at ? { ...at, insert: title } : { from: 0, to: 0, insert: `# ${title}\n\n` };
  return { say: `Title: ${title}`, splices: [splice] };
}
