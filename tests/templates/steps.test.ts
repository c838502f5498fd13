// Wood steps with random heights, widths and choices, and each of their checks made to say no.
import { keepsItsPromises } from './random-givens.ts';
import { warnsWhere } from './warns.ts';

keepsItsPromises({
  file: 'steps.md',
  limits: { 'Frame height': '8 in up to 60 in', 'Stair width': '36 in up to 8 ft' },
  enough: ['tread boards times 8 ft is at least tread planks times stair width'],
  grows: [{ given: 'Stair width', never: ['Stringers', 'Tread boards'] }],
});

warnsWhere('steps.md', {
  'Riser check': { 'Riser limit': '0.1 in per riser', 'Unit rise': '9 in per riser' },
  'Even check': { 'Bottom cut': '9 in' },
  'Tread check': { 'Tread depth': '9 in' },
  'Comfort check': { 'Tread depth': '14 in' },
  'Width check': { 'Stair width': '30 in' },
  'Handrail check': { 'Handrail count': '0 rails' },
  'Rail height check': { 'Handrail height': '39 in' },
  'Guard check': { 'Frame height': '60 in' },
});
