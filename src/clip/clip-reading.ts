/** Clips for the page: opened, written again, blurred, filmed. What reads files is loaded with the first that is opened. */
import { blurInto } from './blur.ts';
import { clipFault, faultOf } from './clip-fault.ts';
import type { ClipReading } from './clip-source.ts';
import { filmHere } from './film-here.ts';
import { innerOf } from './inner-clip.ts';
import { findStillKind } from './still-kind.ts';

/** Enough to know a still picture by. */
const HEAD = 64;

async function headOf(file: Blob): Promise<Uint8Array> {
  try {
    return new Uint8Array(await file.slice(0, HEAD).arrayBuffer());
  } catch (error) {
    throw faultOf(error);
  }
}

export const clipReading: ClipReading = {
  open: async (file, signal) => {
    signal.throwIfAborted();
    if (file.size === 0) throw clipFault('empty');
    const still = findStillKind(await headOf(file));
    if (still) return (await import('./still-clip.ts')).openStill(file, still, signal);
    if (typeof VideoDecoder === 'undefined' || typeof OffscreenCanvas === 'undefined') throw clipFault('noBrowser');
    return (await import('./moving-clip.ts')).openMoving(file, signal);
  },
  write: async (clip, sending, made, signal) => {
    signal.throwIfAborted();
    const inner = innerOf(clip);
    if (clip.facts.kind === 'still') return (await import('./write-still.ts')).writeStill(inner, sending);
    if (typeof VideoEncoder === 'undefined') throw clipFault('noBrowser', 'encoder');
    return (await import('./write-clip.ts')).writeClip(inner, sending, made, signal);
  },
  drawBlurred: (canvas, { source, width, height }) => {
    const pen = canvas.getContext('2d');
    if (pen) blurInto(pen, source, { width, height });
  },
  film: filmHere,
};
