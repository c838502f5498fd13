// One trade table out of its file in shared/: a title, prose, a list item with a table, and its remarks.
// The files are the project's own, so what is wrong in one is a mistake of ours and throws.
import type { ReferenceTable } from '../engine/outcome.ts';

/** The table of such a file; `file` is named in complaints. */
export function readTable(file: string, text: string): ReferenceTable {
  const lines = text.split('\n');
  const item = lines.findIndex((line) => /^- [^:]+:$/.test(line));
  const name = lines[item]?.slice(2, -1) ?? '';
  const [header, delimiter, ...rows] = lines.filter((line) => line.startsWith('  |')).map(cellsOf);
  if (!header || !delimiter?.every((cell) => /^-+$/.test(cell)) || rows.length === 0) {
    throw new Error(`${file} has no table`);
  }
  const odd = rows.findIndex((row) => row.length !== header.length);
  if (odd >= 0) throw new Error(`${file}, row ${odd + 1}: ${rows[odd]?.length} cells`);
  if (header.some((head) => head === '' || head.includes(':'))) {
    throw new Error(`${file}: a column without a name, or with a formula`);
  }
  const from = remark(lines, 'from');
  const edition = remark(lines, 'edition');
  if (name === '' || from === null || edition === null) {
    throw new Error(`${file} does not say what it is, or where it comes from`);
  }
  return {
    name,
    source: `${from}, ${edition}`,
    caution: remark(lines, 'caution'),
    table: { columns: header.map((head) => ({ name: head, formula: null })), rows },
  };
}

function cellsOf(line: string): readonly string[] {
  const cells = line.trim().split('|').slice(1, -1);
  return cells.map((cell) => cell.trim());
}

function remark(lines: readonly string[], word: string): string | null {
  const lead = `  - ${word}: `;
  return lines.find((line) => line.startsWith(lead))?.slice(lead.length) ?? null;
}
