/** A clip from the machine's own camera: pictures alone, no sound. Nothing is kept but what is handed back. */
import { clipFault } from './clip-fault.ts';

/** As fast as it can: what moves is measured. */
const ASKED: MediaStreamConstraints = {
  audio: false,
  video: {
    facingMode: { ideal: 'environment' },
    width: { ideal: 1280 },
    height: { ideal: 720 },
    frameRate: { ideal: 120 },
  },
};
const KINDS = ['video/mp4;codecs=avc1', 'video/webm;codecs=vp9', 'video/webm;codecs=vp8', 'video/webm'];
/** Bits a second: a frame at 60 a second stays sharp. */
const BITS = 16e6;
/** ms of film between two pieces that are kept of it. */
const PIECE_MS = 500;

/** none, not allowed, or used by another program */
function whyNot(error: unknown): string {
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'NotAllowedError' || name === 'SecurityError') return 'notAllowed';
  return name === 'NotReadableError' || name === 'AbortError' ? 'inUse' : 'none';
}

async function openCamera(): Promise<MediaStream> {
  // a page that was not sent safely has no such door
  const devices = navigator.mediaDevices as MediaDevices | undefined;
  if (!devices?.getUserMedia || typeof MediaRecorder === 'undefined') throw clipFault('noCamera', 'none');
  try {
    return await devices.getUserMedia(ASKED);
  } catch (error) {
    throw clipFault('noCamera', whyNot(error), error);
  }
}

export async function filmHere(signal: AbortSignal): Promise<{ readonly live: MediaStream; stop(): Promise<File> }> {
  signal.throwIfAborted();
  const live = await openCamera();
  const end = (): void => {
    for (const part of live.getTracks()) part.stop();
  };
  if (signal.aborted) {
    end();
    throw signal.reason;
  }
  const mimeType = KINDS.find((kind) => MediaRecorder.isTypeSupported(kind));
  const pieces: Blob[] = [];
  let recorder: MediaRecorder;
  try {
    recorder = new MediaRecorder(live, { ...(mimeType ? { mimeType } : {}), videoBitsPerSecond: BITS });
    recorder.ondataavailable = ({ data }) => pieces.push(data);
    recorder.start(PIECE_MS);
  } catch (error) {
    end();
    throw clipFault('noCamera', 'none', error);
  }
  const ended = new Promise<void>((resolve) => {
    recorder.onstop = () => resolve();
  });
  const halt = (): void => {
    if (recorder.state !== 'inactive') recorder.stop();
    end();
  };
  signal.addEventListener('abort', halt, { once: true });
  return {
    live,
    stop: async () => {
      halt();
      await ended;
      signal.removeEventListener('abort', halt);
      signal.throwIfAborted();
      const type = recorder.mimeType.split(';')[0] || 'video/webm';
      return new File(pieces, `filmed-here.${type.endsWith('mp4') ? 'mp4' : 'webm'}`, { type });
    },
  };
}
