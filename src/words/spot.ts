// Where something stands in a line of text.

/** A half-open stretch of a formula as it was typed, in UTF-16 offsets. */
export interface Spot {
  readonly from: number;
  readonly to: number;
}
