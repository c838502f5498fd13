// A whole job in one file: written, and opened elsewhere. Opening looks at every hash and says which don't match;
// files of older forms are brought up to this one, newer ones are refused with the reason. Nothing in a file is run.
import * as v from 'valibot';
import { readNotebook, refusal } from '../notebook/read-notebook.ts';
import type { Plain } from '../versions/canonical.ts';
import { hashOf } from '../versions/hash.ts';
import { keptIdentities, newIdentities } from '../versions/identities.ts';
import { type Job, type JobMismatch, verifyJob } from '../versions/job.ts';
import { JOB_1 } from './job-shapes.ts';
import { recordMismatches } from './record-shapes.ts';
import { takenNotebook } from './shapes.ts';

export type JobFile =
  | {
      readonly kind: 'opened';
      readonly job: Job;
      /** What is not as it was made; it is opened all the same. */
      readonly mismatches: readonly JobMismatch[];
      /** What was brought up to the present form: a notebook as the page kept it at first, or a plain text. */
      readonly from: 'job' | 'kept-notebook' | 'text';
    }
  | {
      readonly kind: 'refused';
      readonly code: 'newer' | 'unreadable';
      readonly message: string;
    };

/** For what comes without: an id, and a stem for new keys. */
export interface Fresh {
  readonly id: string;
  readonly stem: string;
}

const NEWEST = 1;
/** Our own files nest a handful deep; what nests deeper was not written here. */
const DEEPEST = 60;

export function writeJobFile(job: Job): string {
  const { id, title, text, identities, origin, snapshots, log, orders, orderLog, records } = job;
  const notebook = { id, title, text, identities, origin };
  const versions = { snapshots, log, orders, orderLog, records };
  const content = { storyrod: 'job', v: 1, ...notebook, ...versions };
  return `${JSON.stringify({ ...content, check: checkOf(content) })}\n`;
}

export function openJobFile(content: string, fresh: Fresh): JobFile {
  if (!/^\uFEFF?\s*\{/.test(content)) return openText(content, fresh);
  if (nestsTooDeep(content)) return unreadable('it nests deeper than any job');
  let raw: unknown;
  try {
    raw = JSON.parse(content.replace(/^\uFEFF/, ''));
  } catch {
    return unreadable('it is cut off or damaged, so that it can’t be read to its end');
  }
  if (isRecord(raw) && raw['storyrod'] === 'job') return openJob(raw);
  const kept = takenNotebook(raw);
  switch (kept.kind) {
    case 'taken': {
      const { id, text, identities } = kept.value;
      const job = jobOf(text, { ...fresh, id });
      return opened(identities ? { ...job, identities } : job, 'kept-notebook');
    }
    case 'newer':
      return newer();
    case 'absent':
    case 'unreadable':
      return unreadable('it is neither a job nor a notebook of this tool');
  }
}

function openJob(raw: Readonly<Record<string, unknown>>): JobFile {
  if (typeof raw['v'] === 'number' && raw['v'] > NEWEST) return newer();
  const read = v.safeParse(JOB_1, raw);
  if (!read.success) {
    const [first] = read.issues;
    return unreadable(`${v.getDotPath(first) ?? 'it'}: ${first.message}`);
  }
  const { storyrod: _storyrod, v: _version, check, ...job } = read.output;
  const tooMuch = refusal(job.text);
  if (tooMuch) return unreadable(tooMuch.message);
  const { check: _check, ...checked } = raw;
  const file: readonly JobMismatch[] =
    checkOf(checked) === check
      ? []
      : [
          {
            about: 'file',
            snapshot: null,
            message: 'This file was damaged or written into since it was saved.',
          },
        ];
  const whole: Job = { ...job, records: job.records as readonly Plain[] };
  return {
    kind: 'opened',
    job: whole,
    mismatches: [...file, ...verifyJob(whole), ...recordMismatches(whole.records)],
    from: 'job',
  };
}

/** The text is a notebook as it always was; identities begin with it. */
function openText(text: string, fresh: Fresh): JobFile {
  const tooMuch = refusal(text);
  return tooMuch ? unreadable(tooMuch.message) : opened(jobOf(text, fresh), 'text');
}

function jobOf(text: string, { id, stem }: Fresh): Job {
  const notebook = readNotebook(text);
  return {
    id,
    title: notebook.title,
    text,
    identities: keptIdentities(newIdentities(notebook, stem), notebook),
    origin: null,
    snapshots: [],
    log: [],
    orders: [],
    orderLog: [],
    records: [],
  };
}

function opened(job: Job, from: 'kept-notebook' | 'text'): JobFile {
  return { kind: 'opened', job, mismatches: [], from };
}

function newer(): JobFile {
  return {
    kind: 'refused',
    code: 'newer',
    message:
      'This file was written by a later version of Storyrod, which keeps more in it than this one can read. Open it there, or bring this one up to date.',
  };
}

function unreadable(why: string): JobFile {
  return { kind: 'refused', code: 'unreadable', message: `This file can't be opened: ${why}.` };
}

/** Over what JSON makes of it, so that it is the same after it was read again. */
function checkOf(content: unknown): string {
  return hashOf(['job file 1', JSON.parse(JSON.stringify(content)) as Plain]);
}

function nestsTooDeep(json: string): boolean {
  let depth = 0;
  let inText = false;
  for (let i = 0; i < json.length; i++) {
    const sign = json[i];
    if (inText && sign === '\\') i++;
    else if (sign === '"') inText = !inText;
    else if (inText) continue;
    else if (sign === '{' || sign === '[') depth++;
    else if (sign === '}' || sign === ']') depth--;
    if (depth > DEEPEST) return true;
  }
  return false;
}

function isRecord(raw: unknown): raw is Readonly<Record<string, unknown>> {
  return typeof raw === 'object' && raw !== null && !Array.isArray(raw);
}
