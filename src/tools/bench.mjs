// Runs the benchmarks, tests/bench/*.bench.ts, each in a process of its own: `npm run bench -- [WORD] [--gate]`.
// A word picks those whose name holds it; everything that starts with a dash goes to the benchmark itself.
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { makeReady, root } from './ready.mjs';

makeReady();
const runner = fileURLToPath(new URL('run.mjs', import.meta.url));
const options = process.argv.slice(2).filter((word) => word.startsWith('-'));
const words = process.argv.slice(2).filter((word) => !word.startsWith('-'));

const folder = path.join(root, 'tests/bench');
const programs = (fs.existsSync(folder) ? fs.readdirSync(folder).sort() : [])
  .filter((file) => file.endsWith('.bench.ts'))
  .filter((file) => words.every((word) => file.includes(word)));

if (programs.length === 0) {
  process.stderr.write('There is no such benchmark in tests/bench.\n');
  process.exit(2);
}

for (const program of programs) {
  const run = spawnSync(
    process.execPath,
    ['--expose-gc', runner, `tests/bench/${program}`, ...options],
    { cwd: root, stdio: 'inherit' },
  );
  // The others still run: one look should tell all that is too slow.
  if (run.status !== 0) process.exitCode = run.status ?? 1;
}
