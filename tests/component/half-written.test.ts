// The line that somebody was in the middle of: told at the next visit, gone once it is done.
import { describe, expect, test } from 'vitest';
import type { Desk } from '../../src/ui/desk.ts';
import { browserOf } from './desk.ts';
import { idOf } from './drawn.ts';

async function begun() {
  const browser = browserOf();
  // It will be gone: it answers no other page.
  const desk = await browser.page({ channel: () => null });
  desk.session.apply((door) => door.setFormula(idOf(desk.session, 'Thickness'), '5 in'));
  await expect.poll(() => desk.keeping.kind).toBe('kept');
  desk.session.write({ kind: 'formula', cell: idOf(desk.session, 'Waste') });
  desk.half.typed('12');
  desk.half.typed('12% o');
  return { desk, shelf: browser.settings.shelf, next: () => browser.page() };
}

const told = ({ session }: Desk) => session.notice?.text ?? null;

describe('a line that was left half-written', () => {
  test('is told where it was, changes nothing, and can be gone on with', async () => {
    const { desk, next } = await begun();
    await desk.leave(0);
    const { session } = await next();
    expect(session.notice?.text).toMatch(/at Waste .* is not in the notebook: 12% o$/);
    expect(session.door.shown(idOf(session, 'Waste'))?.text).toBe('10%');
    session.notice?.act?.go();
    const cell = idOf(session, 'Waste');
    expect(session.writing).toEqual({ kind: 'formula', cell, typed: '12% o' });
  });

  test('is not lost where another tab writes by then: it is taken over first', async () => {
    const { desk, shelf, next } = await begun();
    await desk.leave(0);
    const here = await next();
    const there = await next();
    const says = (): string | undefined => here.session.notice?.act?.say;
    await expect.poll(() => there.role).toBe('follows');
    await there.takeOver();
    await expect.poll(() => here.role).toBe('follows');
    there.session.apply((door) => door.setFormula(idOf(there.session, 'Slab length'), '15 ft'));
    await expect
      .poll(() => here.session.door.shown(idOf(here.session, 'Slab length'))?.text)
      .toBe('15 ft');

    // As the page does: the notice goes, then what it offers is done.
    const press = (): void => {
      const act = here.session.notice?.act;
      here.session.tell(null);
      act?.go();
    };
    expect(says()).toBe('Go on with it');
    press();
    expect(here.session.writing).toBeNull();
    expect(told(here)).toMatch(/Another tab writes .* waits here: 12% o$/);
    await here.half.flush();
    expect(await shelf.half(here.openId)).toMatchObject({ words: '12% o' });
    expect(says()).toBe('Write here instead, and go on with it');
    press();
    const cell = idOf(here.session, 'Waste');
    await expect
      .poll(() => here.session.writing)
      .toEqual({ kind: 'formula', cell, typed: '12% o' });
    expect([here.role, there.role]).toEqual(['writes', 'follows']);
  });

  test('is kept without anybody leaving', async () => {
    const { desk, next } = await begun();
    await desk.half.flush();
    expect(told(await next())).toMatch(/12% o$/);
  });

  test('is told until it is put away', async () => {
    const { desk, next } = await begun();
    await desk.leave(0);
    expect(told(await next())).toMatch(/12% o$/);
    const again = await next();
    expect(told(again)).toMatch(/12% o$/);
    again.session.tell(null);
    await again.half.flush();
    expect(told(await next())).toBeNull();
  });

  test('is forgotten once it is done, one way or the other', async () => {
    const { desk, next } = await begun();
    await desk.half.flush();
    desk.session.write(null);
    await desk.half.flush();
    expect(told(await next())).toBeNull();
  });

  test('of a cell that was only to come is told, too', async () => {
    const { desk, next } = await begun();
    await desk.leave(0);
    desk.session.write(null);
    desk.session.write({
      kind: 'new-cell',
      part: desk.session.door.notebook.parts[0].key,
      after: null,
    });
    desk.half.typed('Rail length');
    await desk.leave(0);
    const { session } = await next();
    expect(session.notice?.text).toMatch(/is not in the notebook: Rail length$/);
    expect(session.notice?.act).toBeUndefined();
  });

  test('of the job record is told as such, until it is emptied', async () => {
    const { desk, next } = await begun();
    desk.session.write(null);
    desk.half.typedInRecord('2026-03-03, Boards, 12');
    await desk.half.flush();
    const { session } = await next();
    expect(session.notice?.text).toMatch(
      /in the job record .* is not in it: 2026-03-03, Boards, 12$/,
    );
    expect(session.notice?.act).toBeUndefined();
    desk.half.typedInRecord('');
    await desk.half.flush();
    expect(told(await next())).toBeNull();
  });

  test('goes with its notebook', async () => {
    const { shelf } = browserOf().settings;
    await shelf.keepRows('a', 'rows');
    await shelf.keepHalf('a', { part: 'P', cell: 'A', what: 'formula', words: '3 ft' });
    expect(await shelf.half('a')).toMatchObject({ words: '3 ft' });
    await shelf.remove('a');
    expect(await shelf.half('a')).toBeNull();
    expect(await shelf.rows('a')).toBe('');
  });
});
