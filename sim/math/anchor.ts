/** Times that are counted from an event of the flight. Seconds. */
export type Anchor = 'takeoff' | 'apex' | 'touchdown';

export interface AnchoredTime {
  readonly anchor: Anchor;
  readonly s: number;
}

/** When the events are, from take-off. */
export interface AnchorTimes {
  readonly apex: number;
  readonly touchdown: number;
}

export const eventTime = (anchor: Anchor, times: AnchorTimes): number =>
  anchor === 'takeoff' ? 0 : anchor === 'apex' ? times.apex : times.touchdown;

/** When it happens, from take-off. */
export const resolveTime = (at: AnchoredTime, times: AnchorTimes): number => at.s + eventTime(at.anchor, times);
