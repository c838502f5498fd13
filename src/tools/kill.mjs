// Kills a real browser while it writes and looks for what is lost: `npm run test:kill`. KILLS=200 for the long run,
// SEED=7 for other moments. Ends badly where anything acknowledged is lost or anything found is not right.
import { makeReady, root } from './ready.mjs';

makeReady();
const { createServer } = await import('vite');
const kills = Number(process.env.KILLS ?? 40);
const seed = Number(process.env.SEED ?? Date.now() % 1_000_000);
const say = (/** @type {string} */ line) => process.stdout.write(`${line}\n`);
if (!Number.isSafeInteger(kills) || kills < 1) {
  process.stderr.write('KILLS is the number of kills, 1 or more.\n');
  process.exit(2);
}
// It reads the program, which is TypeScript; nothing is served by it.
const reader = await createServer({
  configFile: false,
  root,
  logLevel: 'warn',
  appType: 'custom',
  server: { middlewareMode: true, ws: false, watch: null },
  optimizeDeps: { noDiscovery: true },
});
const program = await reader.ssrLoadModule('/tests/kill/kills.ts');
say(`SEED=${seed}`);
const outcome = await program.killed({ kills, seed, way: 'right', say });
for (const fault of outcome.faults) say(fault);
for (const [phase, count] of outcome.phases) say(`killed at ${phase}: ${count}`);
say(`at least ${outcome.fewest} acknowledged writes between kills`);
say(`${outcome.kills} kills, ${outcome.acknowledged} acknowledged writes, ${outcome.lost} lost`);
await reader.close();
process.exit(outcome.lost > 0 || outcome.faults.length > 0 ? 1 : 0);
