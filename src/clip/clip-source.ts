/** Clips as the page sees them: opened on this machine, frame by frame, with bounded memory. Times here are the file's, s, from its first frame. */

interface ClipFacts {
  readonly name: string;
  readonly bytes: number;
  readonly kind: 'moving' | 'still';
  /** as the file names it, as "avc"; of a still picture its kind */
  readonly codec: string;
  /** px, shown upright */
  readonly width: number;
  readonly height: number;
  /** deg that the file says its pictures have to be turned by; they come turned. 0 of a still picture */
  readonly turnedDeg: 0 | 90 | 180 | 270;
  /** s; 0 of a still picture */
  readonly lasts: number;
  /** frames a second that the file says, in the mean (of a long one: of its beginning); 0 of a still picture or a single frame */
  readonly fileHz: number;
}

export type ClipFaultCode =
  | 'notAClip' // what it is goes into `what`
  | 'noPictures' // sound alone
  | 'cannotDecode' // `what`: the codec
  | 'damaged'
  | 'empty'
  | 'tooLarge' // a picture of more px than is read; `what`: its size
  | 'cannotRead' // the file is gone or locked
  | 'noCamera' // `what`: none, notAllowed or inUse
  | 'noBrowser'; // no WebCodecs here; `what`: encoder, where it is that alone

/** Its words are the page's business. */
export interface ClipFault extends Error {
  readonly name: 'ClipFault';
  readonly code: ClipFaultCode;
  readonly what?: string;
}

/** Frames on the ruler. */
export interface ClipSpan {
  /** s of each frame, ascending; at least one */
  readonly stamps: Float64Array;
  /** s that the last frame is shown; 0: not known */
  readonly lastLasts: number;
  readonly isVariable: boolean;
}

/** A frame, upright. Owned by the clip, and good until the next turn of the page's loop: draw it at once. */
export interface ClipPicture {
  readonly source: CanvasImageSource;
  /** px of `source`: of the clip's shape, and fewer where that has many */
  readonly width: number;
  readonly height: number;
  /** the frame that is shown; another than the one asked for where that is damaged */
  readonly index: number;
}

export interface OpenClip {
  readonly facts: ClipFacts;
  /**
   * Frames from .. to s of the file are put on the ruler; at most MOST_FRAMES (`isCut`). `seen` after each few; abort rejects with the signal's reason
   * and leaves the span as it was. Others' pictures are let go.
   */
  span(
    from: number,
    to: number,
    seen: (frames: number) => void,
    signal: AbortSignal,
  ): Promise<ClipSpan & { readonly isCut: boolean }>;
  /**
   * Frame k of the span. Of several that are asked for, the one in work and the newest come; those between are given up, and one in work that is far
   * off too: they reject with an AbortError.
   */
  picture(k: number): Promise<ClipPicture>;
  /** what is held now: frames decoded and their bytes */
  held(): { readonly pictures: number; readonly bytes: number };
  close(): void;
}

export interface ClipSending {
  readonly from: number; // index of the first and last frame
  readonly to: number;
  /** blurred whole, so that no face can be known again */
  readonly isBlurred: boolean;
  /** px of the longer side at most */
  readonly most: number;
}

export interface ClipReading {
  /** throws a ClipFault */
  open(file: File, signal: AbortSignal): Promise<OpenClip>;
  /** of the span, written again: nothing else of the file (sound, place, date) goes along */
  write(
    clip: OpenClip,
    sending: ClipSending,
    made: (frames: number, of: number) => void,
    signal: AbortSignal,
  ): Promise<Blob>;
  /** draws it on a canvas of the same shape, blurred so that no face can be known again */
  drawBlurred(canvas: HTMLCanvasElement, picture: ClipPicture): void;
  /** s of the file's own camera stream as a clip: begun, and ended by the one who asked; throws a ClipFault */
  film(signal: AbortSignal): Promise<{ readonly live: MediaStream; stop(): Promise<File> }>;
}
