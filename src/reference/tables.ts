// The tables of the trade that every notebook can read from by name: `read span off joist spans for …`.
import bagYields from '../../shared/bag-yields.md?raw';
import barSizes from '../../shared/bar-sizes.md?raw';
import beamSpans from '../../shared/beam-spans.md?raw';
import deckFootings from '../../shared/deck-footings.md?raw';
import footingsByArea from '../../shared/footings-by-area.md?raw';
import joistSpans from '../../shared/joist-spans.md?raw';
import ledgerFasteners from '../../shared/ledger-fasteners.md?raw';
import lumberSizes from '../../shared/lumber-sizes.md?raw';
import soilVolumes from '../../shared/soil-volumes.md?raw';
import type { ReferenceTable } from '../engine/outcome.ts';
import { readTable } from './read-table.ts';
import { BARS, LUMBER } from './sizes.ts';

export const REFERENCE_TABLES: readonly ReferenceTable[] = [
  readTable('bag-yields.md', bagYields),
  { ...readTable('bar-sizes.md', barSizes), sizes: BARS },
  readTable('beam-spans.md', beamSpans),
  readTable('deck-footings.md', deckFootings),
  readTable('footings-by-area.md', footingsByArea),
  readTable('joist-spans.md', joistSpans),
  readTable('ledger-fasteners.md', ledgerFasteners),
  { ...readTable('lumber-sizes.md', lumberSizes), sizes: LUMBER },
  readTable('soil-volumes.md', soilVolumes),
];
