// The worker behind the sheet "What moves it": reads the notebook's text for itself and answers questions about it, so
// that the page stays quick while it works. Questions of two kinds go on side by side; of one kind only the latest.
import { Estimate } from '../notebook/estimate.ts';
import type { Job } from '../moves-it/figures.ts';
import { type Question, answerTo } from '../moves-it/questions.ts';
import { withTotals } from '../moves-it/whole-job.ts';
import type { FromWorker, ToWorker } from './moves-asked.ts';
import { inShortGoes } from './short-goes.ts';

/** How long it does not listen, in milliseconds. */
const SHORT = 60;

let read: { readonly text: string; readonly job: Job } | null = null;
const latest = new Map<Question['kind'], number>();

addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  const { id, text, question } = data;
  latest.set(question.kind, id);
  if (read?.text !== text) read = { text, job: withTotals(new Estimate(text)) };
  answer(read.job, id, question).catch((cause: unknown) => {
    // Thrown where the page hears of it.
    setTimeout(() => {
      throw cause;
    });
  });
});

async function answer(job: Job, id: number, question: Question): Promise<void> {
  const found = await inShortGoes(answerTo(job, question), {
    short: SHORT,
    goesOn: () => latest.get(question.kind) === id,
    going: (done) => tell({ id, kind: 'going', done }),
  });
  if (found) tell({ id, kind: 'answer', answer: found });
}

function tell(message: FromWorker): void {
  postMessage(message);
}
