/** Every ready skill at the instant that it opens at, unrolled and from the side: are face, limbs and ghosts seen? Not part of the app. */
import '@fontsource-variable/radio-canada';
import { athletes, shapes, skills } from '../../presets/index.ts';
import { findOpening } from '../../src/app/opening-instant.ts';
import { getSpans } from '../../src/document/spans.ts';
import { makeEngine } from '../../src/engine/engine.ts';
import { makePoser } from '../../src/engine/poses.ts';
import { makeStageFlight } from '../../src/pictures/staged-flight.ts';
import { svgPicture } from '../../src/scene/figure-svg.ts';
import { flightScene } from '../../src/scene/flight-scene.ts';
import { ghostTimes } from '../../src/scene/pose-frames.ts';
import { sideScene } from '../../src/scene/side-scene.ts';

const query = new URLSearchParams(location.search);
if (query.get('theme')) document.documentElement.dataset.theme = query.get('theme') ?? 'light';
const engine = makeEngine({ athletes, shapes });
const HEIGHT = 150;
const cells: string[] = [];
for (const [id, file] of Object.entries(skills)) {
  try {
    const result = engine.fly(structuredClone(file));
    const { flight, frames, outline } = result;
    const t = findOpening(result, getSpans(result.file, shapes, { apex: outline.apex, touchdown: flight.duration }));
    const pose = makePoser(flight, frames);
    const made = makeStageFlight(result.key, result, ghostTimes(flight.duration).map(pose));
    const tallest = Math.max(...frames.p_WScm_W.filter((_, i) => i % 3 === 1)) + 0.9;
    const pxPerM = Math.min(60, HEIGHT / tallest);
    const window = { height: HEIGHT, pxPerM, floorY: HEIGHT };
    const input = { flight: made, cursor: pose(t) };
    const scenes = [
      flightScene({
        ...input,
        calm: true,
        window: { ...window, width: 420, x0: 60, pxPerS: 330 / flight.duration, labelX: 20, ghosts: 5 },
      }),
      sideScene({ ...input, window: { ...window, width: 260 } }),
    ];
    const pictures = scenes.map(({ layers, width }) =>
      svgPicture(
        layers.flatMap(({ items }) => items),
        width,
        HEIGHT,
      ),
    );
    cells.push(`<div style="width:690px;margin:6px 12px"><div>${id} at ${t}</div>${pictures.join('')}</div>`);
  } catch (error) {
    cells.push(`<div style="width:690px">${id}: ${error}</div>`);
  }
}
(document.getElementById('sheet') as HTMLElement).innerHTML =
  `<div class="row" style="flex-wrap:wrap">${cells.join('')}</div>`;
document.title = 'ready';
