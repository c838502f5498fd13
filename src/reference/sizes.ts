// Which columns of the trade's tables of sizes answer what a builder asks of a size, and in which words.
import type { SizesTold } from '../language/size-table.ts';

/** Board feet go by the nominal size, what is built by the actual one. Width is the wider side, however it stands. */
export const LUMBER: SizesTold = {
  column: 'size',
  noun: null,
  figures: [
    figure('nominal thickness', 'nominal thickness', []),
    figure('nominal width', 'nominal width', ['nominal depth', 'nominal height']),
    figure('actual thickness', 'thickness', ['dressed thickness', 'true thickness']),
    figure('actual width', 'width', [
      'actual depth',
      'actual height',
      'dressed width',
      'dressed depth',
      'true width',
      'true depth',
    ]),
  ],
  lengths: ['nominal width', 'actual width', 'actual thickness'],
  sold: { columns: ['nominal thickness', 'nominal width'], unit: 'board ft' },
  usual: 'sold',
};

export const BARS: SizesTold = {
  column: 'bar',
  noun: 'bar',
  figures: [
    { say: 'diameter', also: [], column: 'diameter', beforeSize: true },
    { say: 'area', also: ['section', 'section area'], column: 'area', beforeSize: true },
    { say: 'weight', also: [], column: 'weight', beforeSize: true },
  ],
  lengths: ['diameter'],
  sold: { columns: ['weight'], unit: 'lb' },
  usual: 'run',
};

function figure(
  say: string,
  column: string,
  also: readonly string[],
): SizesTold['figures'][number] {
  return { say, also, column, beforeSize: false };
}
