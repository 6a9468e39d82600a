/** The stage on its renderer: flight, front, side, top, held upright in one picture, and how long drawing takes. */
import '@fontsource-variable/radio-canada';
import { putText } from '../../src/pictures/put-text.ts';
import { readTokens } from '../../src/render/read-tokens.ts';
import { createRenderer } from '../../src/render/renderer.ts';
import type { RendererKind } from '../../src/render/stage-renderer.ts';
import { flightScene } from '../../src/scene/flight-scene.ts';
import { frontScene } from '../../src/scene/front-scene.ts';
import { joinScenes, type Scene } from '../../src/scene/scene.ts';
import { sideScene } from '../../src/scene/side-scene.ts';
import { topScene } from '../../src/scene/top-scene.ts';
import { uprightScene } from '../../src/scene/upright-scene.ts';
import { mockFlight } from './mock-flight.ts';
import { sheetBody } from './poses.ts';

const query = new URLSearchParams(location.search);
if (query.get('theme')) document.documentElement.dataset.theme = query.get('theme') ?? 'light';
await document.fonts.load('560 12px "Radio Canada Variable"');
const canvas = document.getElementById('stage') as HTMLCanvasElement;
const [width, height] = [1440, 840];
canvas.style.width = `${width}px`;
canvas.style.height = `${height}px`;
const body = sheetBody;
const one = mockFlight(body);
const two = mockFlight(body, { up: 4.4, along: -2.1 });
const tall = mockFlight(body, { up: 8.4, along: 0.6, from: 1.1, turns: 3, surfaceY: 0.2 });

function stage(t: number, compare: boolean): Scene {
  const cursor = one.pose(t);
  const other = compare ? { flight: two.flight, cursor: two.pose(t) } : undefined;
  const shared = { flight: one.flight, cursor, ...(other ? { other } : {}) };
  const upright = { body, pose: cursor, width: 240, height: 300, pxPerM: 140 };
  const w = { height: 274, pxPerM: 83, floorY: 274 };
  return joinScenes(width, height, [
    {
      scene: flightScene({
        ...shared,
        landingLabel: '6° short',
        window: { ...w, width: 800, x0: 62, pxPerS: 720, labelX: 10 + 12 },
      }),
      x: 200,
      y: 0,
    },
    { scene: frontScene({ flight: one.flight, cursor, window: { ...w, width: 126 } }), x: 1020, y: 0 },
    { scene: sideScene({ ...shared, arrows: true, window: { ...w, width: 294 } }), x: 1146, y: 0 },
    {
      scene: topScene({ flight: one.flight, cursor, window: { ...w, width: 294, height: 120, floorY: 60 } }),
      x: 1146,
      y: 290,
    },
    {
      scene: uprightScene({
        ...upright,
        lift: { chains: ['armL'] },
        arrows: true,
      }),
      x: 20,
      y: 290,
    },
    {
      scene: uprightScene({
        ...upright,
        azimuth: Math.PI / 2,
        before: one.pose(0.3).frames,
      }),
      x: 270,
      y: 290,
    },
    {
      scene: flightScene({
        flight: tall.flight,
        cursor: tall.pose(Math.min(tall.flight.duration, t * 1.7)),
        window: { ...w, width: 560, x0: 60, pxPerS: 260, labelX: 30 },
      }),
      x: 560,
      y: 290,
    },
    {
      scene: sideScene({
        flight: tall.flight,
        cursor: tall.pose(t * 1.7),
        arrows: true,
        window: { width: 260, height: 260, pxPerM: 48, floorY: 250, labelX: 26 },
      }),
      x: 1150,
      y: 430,
    },
    {
      scene: frontScene({ flight: one.flight, cursor: one.pose(0.94), arrows: true, window: { ...w, width: 126 } }),
      x: 560,
      y: 566,
    },
    { scene: frontScene({ flight: one.flight, cursor: one.pose(0.5), window: { ...w, width: 126 } }), x: 700, y: 566 },
  ]);
}

try {
  const prefer = (query.get('renderer') ?? undefined) as RendererKind | undefined;
  const started = performance.now();
  const renderer = await createRenderer(canvas, {
    tokens: readTokens(),
    resolution: devicePixelRatio,
    width,
    height,
    putText,
    ...(prefer ? { prefer } : {}),
  });
  const ready = performance.now();
  const compare = query.has('compare');
  renderer.draw(stage(0.44, compare));
  const first = performance.now();
  let list = 0;
  let draw = 0;
  const frames = Number(query.get('frames') ?? 30);
  for (let i = 0; i < frames; i++) {
    const a = performance.now();
    const scene = stage(0.2 + (i / frames) * 0.5, compare);
    const b = performance.now();
    renderer.draw(scene);
    list += b - a;
    draw += performance.now() - b;
  }
  renderer.draw(stage(Number(query.get('t') ?? 0.44), compare));
  (globalThis as { picture?: string }).picture = await renderer.snapshot();
  console.log(
    `${renderer.kind}: ready ${(ready - started).toFixed(0)} ms, first ${(first - ready).toFixed(1)} ms; per frame list ${(list / frames).toFixed(2)} ms, draw ${(draw / frames).toFixed(2)} ms`,
  );
} catch (error) {
  console.log(String(error));
}
document.title = 'ready';
