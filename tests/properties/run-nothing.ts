// Text that would run if anything ran it, and what holds after every test that hands it in.
import { afterEach } from 'vitest';

export const SCRIPT = '<script>globalThis.ran = 1</script>';
export const IMAGE = '<img src=x onerror="globalThis.ran = 1">';

afterEach(() => {
  // Thrown rather than expected, because it holds for every test here.
  if ('ran' in globalThis) throw new Error('something in the text was run');
  if (Object.keys(Object.prototype).length > 0) throw new Error('every object was changed');
});
