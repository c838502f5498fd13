// The headless run as a person starts it, in a process of its own: arguments in, text and exit code out.
import { spawnSync } from 'node:child_process';
import path from 'node:path';

const project = path.resolve(import.meta.dirname, '../..');

export interface Headless {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** `npm run figure` with these arguments, started in this folder. */
export function headless(folder: string, ...args: readonly string[]): Headless {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [path.join(project, 'src/tools/run.mjs'), 'src/figure.ts', ...args],
    { cwd: folder, encoding: 'utf8', env: { ...process.env, INIT_CWD: folder } },
  );
  return { code: status, out: stdout, err: stderr };
}
