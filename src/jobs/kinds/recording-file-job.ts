/** What was computed from a recording, or else measured, as a file in a form of recordings. Long texts are made beside the page. */
import {
  formatBvh,
  formatRecorded,
  formatTrc,
  type PosedMotion,
  provenance,
  type RecordingStudy,
  sha256,
} from '../../../sim/index.ts';
import type { JobKind } from '../job.ts';
import type { RecordedFileRequest } from './recording-data.ts';

/** Pieces between two reports. */
const AT_ONCE = 50;

export const recordingFileJob: JobKind<RecordedFileRequest, undefined, { readonly done: number }, string> = {
  open: (request) =>
    function* () {
      const posed = posedOf(request.study);
      const pieces: string[] = [];
      for (const piece of piecesOf(request, posed)) {
        pieces.push(piece);
        if (pieces.length % AT_ONCE === 0) yield { done: Math.min(pieces.length / (posed.n + 1), 1) };
      }
      return pieces.join('');
    },
};

function posedOf(study: RecordingStudy): PosedMotion {
  const root = study.computedRoot ?? study.measuredRoot;
  if (!study.body || !root) throw new RangeError('nothing was posed');
  const { body, t, angles, isSeen, rateHz } = study;
  return { body, n: t.length, t, rateHz, ...root, angles, isSeen };
}

function piecesOf({ form, study, bytes }: RecordedFileRequest, posed: PosedMotion): Iterable<string> {
  if (form === 'bvh') return formatBvh(posed);
  if (form === 'trc') return formatTrc(posed, study.name);
  const what = study.computedRoot ? 'computed from its joint angles' : 'as measured';
  return formatRecorded(posed, {
    from: provenance({
      call: `page: recording, ${what}`,
      inputs: [{ name: study.name, sha256: sha256(bytes), ready: null }],
      tolerance: null,
      seed: null,
    }),
  });
}
