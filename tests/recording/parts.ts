// What tests of readers share: texts to bytes, columns of a joint or a point.
import { readRecording } from '../../sim/recording/read-recording.ts';
import type { Recording } from '../../sim/recording/recording.ts';

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

export const readText = (name: string, text: string): Recording => readRecording(name, bytesOf(text));

export const pointOf = (recording: Recording, name: string): number[] => {
  const found = recording.points.find((point) => point.name === name);
  if (!found) throw new Error(`no point ${name}`);
  return [...found.p];
};
