/** What draws a recording: markup for an <svg> of the page. */
import type { RecordingResult } from '../jobs/kinds/recording-data.ts';
import type { UnitSystem } from '../ui/units.ts';

export interface RecordingPictureInput {
  readonly width: number;
  readonly height: number;
  /** px at the left that only labels are in */
  readonly left: number;
  readonly x: (t: number) => number;
  readonly units: UnitSystem;
}

export interface RecordingPictures {
  /** what does not move with the cursor */
  still(result: RecordingResult, input: RecordingPictureInput): string;
  now(result: RecordingResult, input: RecordingPictureInput, t: number): string;
}
