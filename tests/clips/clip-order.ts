// What a made clip is of: plain shapes, at stated times, in a stated file. It can be sent to a page.

/** px of the picture before it is turned; later ones cover earlier ones. */
export type ClipShape =
  | { readonly kind: 'polygon'; readonly points: readonly number[]; readonly fill: string }
  | { readonly kind: 'line'; readonly points: readonly number[]; readonly stroke: string; readonly width: number }
  | {
      readonly kind: 'capsule';
      /** x, y, radius */
      readonly a: readonly [number, number, number];
      readonly b: readonly [number, number, number];
      readonly fill: string;
    }
  | {
      readonly kind: 'oval';
      readonly x: number;
      readonly y: number;
      readonly rx: number;
      readonly ry: number;
      /** rad */
      readonly turn: number;
      readonly fill: string;
    };

/** Rows of a picture that are read at once. */
export interface ClipBand {
  readonly rows: readonly [number, number];
  /** what is there at instants evenly over the time that the shutter is open: their mean is seen */
  readonly instants: readonly (readonly ClipShape[])[];
}

export interface ClipOrder {
  /** px, before turning */
  readonly width: number;
  readonly height: number;
  readonly codec: 'vp8' | 'vp9' | 'avc' | 'av1';
  /** left out: WebM for vp8 and vp9, MP4 for the others */
  readonly container?: 'webm' | 'mp4' | 'mov' | 'fragmented';
  /** s, ascending; as many as there are pictures */
  readonly stampsS: readonly number[];
  /** s that the last one is shown; left out: as long as the one before */
  readonly lastLastsS?: number;
  /** clockwise, what the file says that its pictures have to be turned by */
  readonly rotation?: 0 | 90 | 180 | 270;
  /** what the file says it is called */
  readonly title?: string;
  readonly background?: string;
  /** under all pictures */
  readonly still?: readonly ClipShape[];
  /** bands of each picture */
  readonly draw: readonly (readonly ClipBand[])[];
  /** root mean square, of 255 */
  readonly noise?: number;
  readonly seed?: number;
  /** left out: 0.2 */
  readonly bitsPerPx?: number;
  /** frames from key frame to key frame; left out: 30 */
  readonly keyEvery?: number;
}
