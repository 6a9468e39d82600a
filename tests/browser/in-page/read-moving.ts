// Runs in the page: the pictures of a file, decoded, against the flight drawn at the times that the test asks for.
import { ALL_FORMATS, BufferSource, Input, VideoSampleSink } from 'mediabunny';
import { athletes, shapes, skills } from '../../../presets/index.ts';
import { makeEngine } from '../../../src/engine/engine.ts';
import type { MovingRequest } from '../../../src/moving-picture/moving-input.ts';
import { makePicturePen } from '../../../src/moving-picture/picture-pen.ts';
import { runPieces } from '../../../src/scene/pieces.ts';

type Canvas2D = CanvasRenderingContext2D;

/** A request without what cannot be sent to the page. */
export interface AskedMoving extends Pick<MovingRequest, 'view' | 'size' | 'from'> {
  readonly skill: string;
  /** none: the landing */
  readonly to?: number;
  readonly slower: number;
  readonly speed: string;
  readonly caution: string;
}

interface ReadPicture {
  readonly timestamp: number;
  readonly duration: number;
  /** root mean square of the difference of px, of 255: to the picture of its own time, to those of its neighbours */
  readonly own: number;
  readonly before: number;
  readonly after: number;
}

export interface ReadMoving {
  readonly durationS: number;
  readonly landsAt: number;
  readonly codec: string | null;
  readonly size: readonly [number, number];
  readonly tags: { readonly title?: string; readonly comment?: string };
  readonly pictures: readonly ReadPicture[];
  /** the picture that is shown in the middle of each one's time */
  readonly inMiddle: readonly number[];
  /** the first, one of the middle and the last, to look at */
  readonly seen: readonly string[];
}

const bytesOf = (base64: string): Uint8Array => Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));

function difference(a: ImageData, b: ImageData): number {
  let sum = 0;
  for (let i = 0; i < a.data.length; i += 4) for (let k = 0; k < 3; k++) sum += (a.data[i + k] - b.data[i + k]) ** 2;
  return Math.sqrt(sum / (0.75 * a.data.length));
}

function canvasOf(width: number, height: number): readonly [HTMLCanvasElement, Canvas2D] {
  const canvas = Object.assign(document.createElement('canvas'), { width, height });
  const g = canvas.getContext('2d', { willReadFrequently: true });
  if (!g) throw new Error('no 2D context');
  return [canvas, g];
}

async function read(base64: string, asked: AskedMoving, stepS: number): Promise<ReadMoving> {
  const engine = makeEngine({ athletes, shapes });
  const file = skills[asked.skill];
  await engine.ready(file);
  const result = engine.fly(file);
  const landsAt = result.flight.duration;
  const { width, height } = asked.size;
  const drawn = document.createElement('canvas');
  const pen = runPieces(
    makePicturePen(drawn, {
      ...asked,
      result,
      to: asked.to ?? landsAt,
      words: {
        title: '',
        headline: '',
        speed: asked.speed,
        caution: asked.caution,
        seconds: (s) => `${s.toFixed(2)} s`,
      },
      marks: { unit: 'm', perUnitM: 1 },
    }),
  );
  const pictureAt = (n: number): ImageData => {
    pen.draw(Math.min(Math.max(asked.from + n * stepS, 0), landsAt));
    const g = drawn.getContext('2d');
    if (!g) throw new Error('no 2D context');
    return g.getImageData(0, 0, width, height);
  };
  const input = new Input({ source: new BufferSource(bytesOf(base64)), formats: ALL_FORMATS });
  const track = await input.getPrimaryVideoTrack();
  if (!track) throw new Error('the file has no moving picture');
  const [canvas, g] = canvasOf(width, height);
  const sink = new VideoSampleSink(track);
  const pictures: ReadPicture[] = [];
  const seen: string[] = [];
  let [before, now, after] = [pictureAt(-1), pictureAt(0), pictureAt(1)];
  for await (const sample of sink.samples()) {
    sample.draw(g, 0, 0);
    const shown = g.getImageData(0, 0, width, height);
    if (pictures.length % 40 === 0) seen.push(canvas.toDataURL('image/png'));
    pictures.push({
      timestamp: sample.timestamp,
      duration: sample.duration,
      own: difference(shown, now),
      before: difference(shown, before),
      after: difference(shown, after),
    });
    sample.close();
    [before, now, after] = [now, after, pictureAt(pictures.length + 1)];
  }
  const inMiddle: number[] = [];
  for (let n = 0; n < pictures.length; n += 17) {
    const sample = await sink.getSample((n + 0.5) / 60);
    inMiddle.push(sample ? pictures.findIndex(({ timestamp }) => timestamp === sample.timestamp) - n : Number.NaN);
    sample?.close();
  }
  const { title, comment } = await input.getMetadataTags();
  return {
    durationS: await input.computeDuration(),
    landsAt,
    codec: track.codec,
    size: [track.displayWidth, track.displayHeight],
    tags: { ...(title ? { title } : {}), ...(comment ? { comment } : {}) },
    pictures,
    inMiddle,
    seen,
  };
}

declare global {
  var readMoving: typeof read;
}
globalThis.readMoving = read;
