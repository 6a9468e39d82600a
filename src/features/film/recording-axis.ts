/** The ruler of a recording: zero is the start of the air, with some room beside both ends so that they can be dragged outwards. */
import type { TimeAxis } from '../../ui/plot/axis.ts';

export interface RecordingAxis extends TimeAxis {
  /** px at the left that labels have */
  readonly left: number;
}

const LABELS = { bench: 46, touch: 54 } as const;
const RIGHT = 26;
/** of the span, at each side, and at least s */
const BESIDE = { share: 0.1, least: 0.06 } as const;

export function makeRecordingAxis(width: number, duration: number, isTouch: boolean): RecordingAxis {
  const left = LABELS[isTouch ? 'touch' : 'bench'];
  const beside = Math.max(BESIDE.share * duration, BESIDE.least);
  const pxPerS = (width - left - RIGHT) / (duration + 2 * beside);
  return { left, x0: left + beside * pxPerS, pxPerS, width, duration, from: 0 };
}
