// Days as they stand on the page and in what is kept: the day on the wall calendar, wherever the page is open.

/** `2026-03-03`, of the person's own day. */
export function dayOf(at: number): string {
  const date = new Date(at);
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** `3 Mar 2026`, or as the person's own language writes it; a text that is no date stays as it is. */
export function dayShown(date: string): string {
  // A day alone is a day of the calendar and no moment, so no time zone may shift it.
  const day = /^\d{4}-\d{2}-\d{2}$/.test(date) ? `${date}T12:00:00` : date;
  const at = new Date(day);
  return Number.isNaN(at.getTime()) ? date : at.toLocaleDateString([], { dateStyle: 'medium' });
}
