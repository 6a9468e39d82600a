/** From where to where, in the unit of what it is a part of: seconds, samples, an input. */
export interface FromTo {
  readonly from: number;
  readonly to: number;
}
