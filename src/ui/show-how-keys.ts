// What keys, clickers and fingers do while showing how: on, back, to the start, to the end.

export type Move = 'forward' | 'back' | 'start' | 'end';

/** In pixels: a finger that went less far, or more up and down than across, only scrolls. */
const SWIPE = 60;

/** Page Up and Page Down are what clickers send. */
export function moveOf(event: KeyboardEvent): Move | null {
  if (event.ctrlKey || event.metaKey || event.altKey) return null;
  const [on] = event.composedPath();
  const inField =
    on instanceof HTMLInputElement ||
    on instanceof HTMLSelectElement ||
    on instanceof HTMLTextAreaElement;
  const isPressed =
    on instanceof HTMLButtonElement || (on instanceof HTMLElement && on.tagName === 'SUMMARY');
  switch (event.key) {
    case 'PageDown':
      return 'forward';
    case 'PageUp':
      return 'back';
    case 'ArrowRight':
    case 'ArrowDown':
      return inField ? null : 'forward';
    case 'ArrowLeft':
    case 'ArrowUp':
      return inField ? null : 'back';
    case ' ':
      if (inField || isPressed) return null;
      return event.shiftKey ? 'back' : 'forward';
    case 'Home':
      return inField ? null : 'start';
    case 'End':
      return inField ? null : 'end';
    default:
      return null;
  }
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** To the left goes on, to the right goes back. */
export function swiped(from: Point, to: Point): Move | null {
  const [across, down] = [to.x - from.x, to.y - from.y];
  if (Math.abs(across) < SWIPE || Math.abs(across) < 2 * Math.abs(down)) return null;
  return across < 0 ? 'forward' : 'back';
}
