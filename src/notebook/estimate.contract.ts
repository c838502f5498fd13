// The types of the estimate's doorway, under the name they were agreed by.
export type { Applied, EstimateDoor } from './estimate.ts';
export type { CostRow, Costs } from './recap.ts';
