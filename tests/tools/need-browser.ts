// Runs once before the component tests: without a browser they stop with a sentence, not with a stack of a launcher.
import { browserChoice } from './browser.ts';

export async function setup(): Promise<void> {
  await browserChoice();
}
