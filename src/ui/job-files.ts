// A whole job in one file, out and in: the notebook with its snapshots, change orders and what happened to them.
import { fileOpen, fileSave } from 'browser-fs-access';
import { openJobFile, writeJobFile } from '../store/job-file.ts';
import { stemOf } from '../versions/identities.ts';
import type { Desk } from './desk.ts';
import { fileName, isLeft, textOf } from './files.ts';

const KIND = {
  description: 'A whole job',
  mimeTypes: ['application/json', 'text/markdown', 'text/plain'],
  extensions: ['.storyrod', '.json', '.md', '.txt'],
};

/** What came of it: in words, and what does not match. */
export interface JobTold {
  readonly kind: 'opened' | 'refused' | 'left';
  readonly said: string;
  readonly mismatches: readonly string[];
}

const LEFT: JobTold = { kind: 'left', said: '', mismatches: [] };

export async function openJob(desk: Desk): Promise<JobTold> {
  try {
    const file = await fileOpen(KIND);
    return await openJobText(desk, textOf(await file.arrayBuffer()));
  } catch (cause) {
    return isLeft(cause) ? LEFT : refused('That file could not be read.');
  }
}

/** Opens it as a notebook of its own, beside all that is kept here. */
export async function openJobText(desk: Desk, content: string): Promise<JobTold> {
  const id = desk.newId();
  const read = openJobFile(content, { id, stem: stemOf(id) });
  if (read.kind === 'refused')
    return refused(`${read.message} The notebook that was open is still here.`);
  const { job, mismatches } = read;
  const binder = await desk.binder();
  await binder.openJob(job);
  const count = job.snapshots.length;
  const has = count === 1 ? '1 snapshot' : `${count} snapshots`;
  return {
    kind: 'opened',
    said:
      mismatches.length > 0
        ? `${job.title || 'The job'} is open, with ${has}. Not all of it is as it was made:`
        : `${job.title || 'The job'} is open, with ${has}. ${count === 0 ? '' : 'Every hash matches.'}`.trim(),
    mismatches: mismatches.map(({ message }) => message),
  };
}

export async function saveJob(desk: Desk): Promise<JobTold> {
  const job = await (await desk.binder()).job();
  const blob = new Blob([writeJobFile(job)], { type: 'application/json' });
  const name = `${fileName(job.title)}.storyrod`;
  try {
    await fileSave(blob, { ...KIND, extensions: ['.storyrod'], fileName: name });
    await desk.savedAsFile('whole job');
    return { kind: 'opened', said: `Saved as ${name}.`, mismatches: [] };
  } catch (cause) {
    return isLeft(cause) ? LEFT : refused('The file could not be saved.');
  }
}

function refused(said: string): JobTold {
  return { kind: 'refused', said, mismatches: [] };
}
