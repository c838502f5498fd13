// The worker behind the sheet "What moves it": reads the notebook's text for itself and answers questions about it, so
// that the page stays quick while it works.
import { Estimate } from '../notebook/estimate.ts';
import type { Job } from '../moves-it/figures.ts';
import { answerTo } from '../moves-it/questions.ts';
import { withTotals } from '../moves-it/whole-job.ts';
import type { FromWorker, ToWorker } from './moves-asked.ts';

/** How often it says how far it is, in milliseconds. */
const TELLS = 150;

let read: { readonly text: string; readonly job: Job } | null = null;

addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  const { id, text, question } = data;
  if (read?.text !== text) read = { text, job: withTotals(new Estimate(text)) };
  const goes = answerTo(read.job, question);
  let told = performance.now();
  for (;;) {
    const went = goes.next();
    if (went.done) {
      tell({ id, kind: 'answer', answer: went.value });
      return;
    }
    if (performance.now() - told < TELLS) continue;
    told = performance.now();
    tell({ id, kind: 'going', done: went.value });
  }
});

function tell(message: FromWorker): void {
  postMessage(message);
}
