// Opening and saving the notebook as a text file: the text is the format. A file of a whole job is opened as such.
import { fileOpen, fileSave } from 'browser-fs-access';
import type { Desk } from './desk.ts';

const JOB = /^\uFEFF?\s*\{\s*"storyrod"\s*:/;

const KIND = {
  description: 'Estimate as text',
  mimeTypes: ['text/markdown', 'text/plain'],
  extensions: ['.md', '.txt'],
};

export async function openTextFile(desk: Desk): Promise<void> {
  try {
    const file = await fileOpen({ ...KIND, extensions: [...KIND.extensions, '.storyrod'] });
    const text = textOf(await file.arrayBuffer());
    if (JOB.test(text)) await openJobFile(desk, text);
    else await desk.openText(text);
  } catch (cause) {
    if (!isLeft(cause)) desk.session.tell({ text: 'That file could not be read.', lasts: 'stays' });
  }
}

export async function saveTextFile(desk: Desk): Promise<void> {
  const { notebook } = desk.session.door;
  const blob = new Blob([notebook.text], { type: 'text/markdown' });
  try {
    await fileSave(blob, { ...KIND, fileName: `${fileName(notebook.title)}.md` });
    await desk.savedAsFile('text');
  } catch (cause) {
    if (!isLeft(cause)) desk.session.tell({ text: 'The file could not be saved.', lasts: 'stays' });
  }
}

async function openJobFile(desk: Desk, content: string): Promise<void> {
  const { openJobText } = await import('./job-files.ts');
  const { said, mismatches } = await openJobText(desk, content);
  desk.session.tell({ text: [said, ...mismatches].join(' '), lasts: 'stays' });
}

/** Bytes that are no text come out with zero characters in them, which reading refuses with its reason. */
export function textOf(bytes: ArrayBuffer): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    const start = new Uint8Array(bytes, 0, Math.min(2, bytes.byteLength));
    if (start[0] === 0xff && start[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
    return `\0${new TextDecoder('latin1').decode(bytes)}`;
  }
}

/** `Kestrel Court garden` → `kestrel-court-garden`. */
export function fileName(title: string): string {
  const plain = title
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');
  return plain.slice(0, 60) || 'estimate';
}

/** The person closed the browser's own window for files. */
export function isLeft(cause: unknown): boolean {
  return cause instanceof Error && cause.name === 'AbortError';
}
