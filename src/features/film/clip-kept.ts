/** What was measured in a clip and is kept with the skill: its times are shown without the clip. */
import type { ClipMeasured, ClipRecording, ClipTimes, SkillFile } from '../../../sim/index.ts';
import type { Clipping } from '../../engine/clip.ts';
import type { FlightResult } from '../../engine/result.ts';

export interface KeptClip {
  /** of its file, where that is known */
  readonly name: string;
  readonly measured: ClipMeasured;
  /** as they were when it was kept; left out: nothing gave any */
  readonly times?: ClipTimes;
  /** the clip itself as a data: address, where it came along */
  readonly clip?: string;
  /** frames before the first of that: only what is marked came along */
  readonly left: number;
}

/** s beside what is marked, of a clip that is sent */
export const SENT_BESIDE = 0.3;

/** Of a data: address. */
export function fileOf(address: string, name: string): File {
  const [head, text = ''] = address.split(',', 2);
  const type = /^data:([^;,]*)/.exec(head)?.[1] ?? '';
  return new File([Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0))], name, { type });
}

/** With frames counted from the first of the clip that came along. */
export const ofSent = ({ measured, left }: KeptClip): ClipMeasured => ({
  ...measured,
  marks: measured.marks.map((mark) => ({ ...mark, frame: mark.frame - left })),
  posed: measured.posed.map((one) => ({ ...one, frame: one.frame - left })),
});

/** The last that was kept; throws an Error with the path of what is wrong in it. */
export function readKept(file: SkillFile, engine: Clipping, result: FlightResult): KeptClip | undefined {
  const entry = file.recordings?.findLast(engine.isOfClip);
  if (!entry) return undefined;
  const { measured, times, clip } = engine.read(entry, result);
  const name = entry.file ?? entry.title;
  const first = Math.min(...measured.marks.map(({ frame }) => frame));
  const left = Math.max(0, first - Math.floor(SENT_BESIDE * (measured.trueHz ?? 0)));
  return {
    name,
    measured,
    ...(times && { times }),
    ...(clip !== undefined && { clip }),
    left: Number.isFinite(left) ? left : 0,
  };
}

/** In the place of the entry of the same clip, or after all others. */
export function withKept(file: SkillFile, entry: ClipRecording, { isOfClip }: Clipping): SkillFile {
  const others = (file.recordings ?? []).filter((one) => !(isOfClip(one) && one.file === entry.file));
  return { ...file, recordings: [...others, entry] };
}
