/** What can be wrong with a schedule: an order in time that cannot be, or a value that cannot be. */
import { FieldError } from '../math/field-error.ts';

/** Something of a schedule with the time it falls on once anchors are resolved, s from take-off. */
interface PlacedItem {
  readonly what: string;
  readonly time: number;
  /** of a block: its shape, as people read it */
  readonly title?: string;
}

/** Two keys or blocks that changed order, meet, or leave no time between them; names both. */
export class ScheduleOrderError extends Error {
  readonly first: PlacedItem;
  readonly second: PlacedItem;

  constructor(first: PlacedItem, second: PlacedItem, why: string) {
    super(`${first.what} (at ${first.time.toFixed(4)} s) and ${second.what} (at ${second.time.toFixed(4)} s): ${why}`);
    this.name = 'ScheduleOrderError';
    this.first = first;
    this.second = second;
  }
}

/** A value that a schedule cannot use. */
export class ScheduleValueError extends FieldError {
  constructor(field: string, value: unknown, allowed: string) {
    super(field, value, allowed);
    this.name = 'ScheduleValueError';
  }
}
