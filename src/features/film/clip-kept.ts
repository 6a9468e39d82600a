/** What was measured in a clip and is kept with the skill: its times are shown without the clip. */
import type { ClipRecording, ClipTimes, SkillFile } from '../../../sim/index.ts';
import type { Clipping } from '../../engine/clip.ts';
import type { FlightResult } from '../../engine/result.ts';
import type { ClipMeasuring } from './clip-page.ts';

export interface KeptClip {
  /** of its file, where that is known */
  readonly name: string;
  readonly measured: ClipMeasuring;
  /** as they were when it was kept; left out: nothing gave any */
  readonly times?: ClipTimes;
}

/** The last that was kept; throws an Error with the path of what is wrong in it. */
export function readKept(file: SkillFile, engine: Clipping, result: FlightResult): KeptClip | undefined {
  const entry = file.recordings?.findLast(engine.isOfClip);
  if (!entry) return undefined;
  const { measured, times } = engine.read(entry, result);
  return { name: entry.file ?? entry.title, measured, ...(times && { times }) };
}

/** In the place of the entry of the same clip, or after all others. */
export function withKept(file: SkillFile, entry: ClipRecording, { isOfClip }: Clipping): SkillFile {
  const others = (file.recordings ?? []).filter((one) => !(isOfClip(one) && one.file === entry.file));
  return { ...file, recordings: [...others, entry] };
}
