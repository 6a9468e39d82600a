// Runs in a page that has mediabunny as a global: draws the pictures of an order and encodes them. It is sent there as text: all it needs is in it.
import type { ClipOrder, ClipShape } from './clip-order.ts';

declare const Mediabunny: typeof import('mediabunny');

export async function encodeInPage(text: string): Promise<string> {
  const order: ClipOrder = JSON.parse(text);
  const { width, height, stampsS, codec } = order;
  const pens = [0, 1, 2].map(() => {
    const pen = new OffscreenCanvas(width, height).getContext('2d', { alpha: false, willReadFrequently: true });
    if (!pen) throw new Error('no canvas');
    return pen;
  });
  const [shown, instant, still] = pens;

  const put = (pen: OffscreenCanvasRenderingContext2D, shape: ClipShape): void => {
    pen.beginPath();
    if (shape.kind === 'polygon' || shape.kind === 'line') {
      const { points } = shape;
      for (let i = 0; i < points.length; i += 2) pen.lineTo(points[i], points[i + 1]);
      if (shape.kind === 'line') {
        pen.strokeStyle = shape.stroke;
        pen.lineWidth = shape.width;
        pen.stroke();
        return;
      }
    } else if (shape.kind === 'oval') pen.ellipse(shape.x, shape.y, shape.rx, shape.ry, shape.turn, 0, 2 * Math.PI);
    else {
      const [[ax, ay, ar], [bx, by, br]] = [shape.a, shape.b];
      const apart = Math.hypot(bx - ax, by - ay);
      if (apart <= Math.abs(ar - br)) {
        const [x, y, r] = ar > br ? shape.a : shape.b;
        pen.arc(x, y, r, 0, 2 * Math.PI);
      } else {
        const along = Math.atan2(by - ay, bx - ax);
        const lean = Math.acos((ar - br) / apart);
        pen.arc(ax, ay, ar, along + lean, along - lean + 2 * Math.PI);
        pen.arc(bx, by, br, along - lean, along + lean);
      }
    }
    pen.closePath();
    pen.fillStyle = shape.fill;
    pen.fill();
  };

  let seed = order.seed ?? 1;
  const chance = (): number => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return seed / 2 ** 32;
  };
  const addNoise = (rms: number): void => {
    const picture = shown.getImageData(0, 0, width, height);
    // the sum of two even chances: its root mean square is 1 / sqrt(6)
    const scale = rms * Math.sqrt(6);
    for (let i = 0; i < picture.data.length; i += 4) {
      const by = scale * (chance() + chance() - 1);
      for (let k = 0; k < 3; k++) picture.data[i + k] += by;
    }
    shown.putImageData(picture, 0, 0);
  };

  still.fillStyle = order.background ?? '#cfd3cf';
  still.fillRect(0, 0, width, height);
  for (const shape of order.still ?? []) put(still, shape);

  const target = new Mediabunny.BufferTarget();
  const container = order.container ?? (codec.startsWith('vp') ? 'webm' : 'mp4');
  const format =
    container === 'webm'
      ? new Mediabunny.WebMOutputFormat()
      : container === 'mov'
        ? new Mediabunny.MovOutputFormat()
        : new Mediabunny.Mp4OutputFormat(container === 'fragmented' ? { fastStart: 'fragmented' } : {});
  const output = new Mediabunny.Output({ format, target });
  const n = stampsS.length;
  const last = order.lastLastsS ?? (n > 1 ? stampsS[n - 1] - stampsS[n - 2] : 1 / 30);
  const lasts = stampsS[n - 1] - stampsS[0] + last;
  const bitrate = Math.max(20_000, Math.round(((order.bitsPerPx ?? 0.2) * width * height * n) / lasts));
  const source = new Mediabunny.CanvasSource(shown.canvas, {
    codec,
    quality: new Mediabunny.Quality({ bitrate }),
    // key frames are asked for one by one
    keyFrameInterval: 1e6,
  });
  output.addVideoTrack(source, { rotation: order.rotation ?? 0 });
  if (order.title) output.setMetadataTags({ title: order.title });
  await output.start();
  for (let k = 0; k < n; k++) {
    shown.globalAlpha = 1;
    shown.drawImage(still.canvas, 0, 0);
    for (const { rows, instants } of order.draw[k]) {
      // of its rows alone: a band is a twelfth of a picture
      const rect = [0, rows[0], width, rows[1] - rows[0]] as const;
      for (const pen of [instant, shown]) {
        pen.save();
        pen.beginPath();
        pen.rect(...rect);
        pen.clip();
      }
      for (const [i, shapes] of instants.entries()) {
        instant.drawImage(still.canvas, ...rect, ...rect);
        for (const shape of shapes) put(instant, shape);
        shown.globalAlpha = 1 / (i + 1);
        shown.drawImage(instant.canvas, ...rect, ...rect);
      }
      instant.restore();
      shown.restore();
    }
    if (order.noise) addNoise(order.noise);
    const next = k + 1 < n ? stampsS[k + 1] : stampsS[k] + last;
    await source.add(stampsS[k], next - stampsS[k], { keyFrame: k % (order.keyEvery ?? 30) === 0 });
  }
  await output.finalize();
  if (!target.buffer) throw new Error('nothing was written');
  const bytes = new Uint8Array(target.buffer);
  let base = '';
  for (let i = 0; i < bytes.length; i += 0x8000) base += String.fromCharCode(...bytes.subarray(i, i + 0x8000));
  return btoa(base);
}
