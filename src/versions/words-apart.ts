// Two wordings of a formula word by word: what stayed, what went, what came.

export interface Run {
  readonly kind: 'same' | 'gone' | 'new';
  readonly text: string;
}

/** Longer texts are told apart as a whole between what they begin and end with alike. */
const MOST_WORDS = 1_500;

/** The runs in reading order, blanks among them: what is same and gone is the old text, same and new the new one. */
export function wordsApart(before: string, after: string): readonly Run[] {
  const old = wordsOf(before);
  const now = wordsOf(after);
  const steps = stepsBetween(old, now);
  const runs: { kind: Run['kind']; text: string }[] = [];
  const put = (kind: Run['kind'], text: string): void => {
    const last = runs.at(-1);
    if (text === '') return;
    if (last?.kind === kind) last.text += text;
    else runs.push({ kind, text });
  };
  let gone = '';
  let came = '';
  steps.forEach(([kind, index], i) => {
    const text = kind === 'new' ? now[index] : old[index];
    // A blank that stayed between words that did not is no place to catch one's breath.
    const between =
      kind === 'same' &&
      text.trim() === '' &&
      gone !== '' &&
      came !== '' &&
      (steps[i + 1]?.[0] ?? 'same') !== 'same';
    if (kind === 'gone' || between) gone += text;
    if (kind === 'new' || between) came += text;
    if (kind !== 'same' || between) return;
    put('gone', gone);
    put('new', came);
    put('same', text);
    gone = came = '';
  });
  put('gone', gone);
  put('new', came);
  return runs;
}

/** Words, amounts with what stands in them, blanks, and signs one by one. */
function wordsOf(text: string): readonly string[] {
  return text.match(/[\p{L}\p{N}\p{M}_'’]+(?:[.,/][\p{N}]+)*|\s+|[^\s]/gu) ?? [];
}

export type DiffStep = readonly [kind: Run['kind'], index: number];

/** The way from one list to the other over the longest common one; `gone` comes before `new`. */
export function stepsBetween(old: readonly string[], now: readonly string[]): readonly DiffStep[] {
  let start = 0;
  const most = Math.min(old.length, now.length);
  while (start < most && old[start] === now[start]) start++;
  let end = 0;
  while (end < most - start && old[old.length - 1 - end] === now[now.length - 1 - end]) end++;
  const steps: DiffStep[] = [];
  for (let i = 0; i < start; i++) steps.push(['same', i]);
  const left = old.length - end;
  const right = now.length - end;
  if (Math.max(left, right) - start > MOST_WORDS) {
    for (let i = start; i < left; i++) steps.push(['gone', i]);
    for (let k = start; k < right; k++) steps.push(['new', k]);
  } else steps.push(...commonSteps(old, now, start, left, right));
  for (let i = left; i < old.length; i++) steps.push(['same', i]);
  return steps;
}

function commonSteps(
  old: readonly string[],
  now: readonly string[],
  start: number,
  left: number,
  right: number,
): readonly DiffStep[] {
  const width = right - start + 1;
  const longest = new Uint16Array((left - start + 1) * width);
  const at = (i: number, k: number): number => (i - start) * width + (k - start);
  for (let i = left - 1; i >= start; i--) {
    for (let k = right - 1; k >= start; k--) {
      longest[at(i, k)] =
        old[i] === now[k]
          ? longest[at(i + 1, k + 1)] + 1
          : Math.max(longest[at(i + 1, k)], longest[at(i, k + 1)]);
    }
  }
  const steps: DiffStep[] = [];
  let i = start;
  let k = start;
  while (i < left || k < right) {
    if (i < left && k < right && old[i] === now[k]) {
      steps.push(['same', i]);
      i++;
      k++;
    } else if (i < left && (k === right || longest[at(i + 1, k)] >= longest[at(i, k + 1)])) {
      steps.push(['gone', i++]);
    } else steps.push(['new', k++]);
  }
  return gathered(steps);
}

/** Between two that stayed, all that went before all that came. */
function gathered(steps: readonly DiffStep[]): readonly DiffStep[] {
  const out: DiffStep[] = [];
  const came: DiffStep[] = [];
  for (const step of steps) {
    if (step[0] === 'new') came.push(step);
    else {
      if (step[0] === 'same') out.push(...came.splice(0));
      out.push(step);
    }
  }
  return [...out, ...came];
}
