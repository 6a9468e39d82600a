/** The sheet by which the figure is judged: eight shapes, two views, a half twist, three styles. Not part of the app. */
import '@fontsource-variable/radio-canada';
import { figureItems } from '../../src/scene/figure.ts';
import { outlineItems } from '../../src/scene/figure-outline.ts';
import { svgPicture } from '../../src/scene/figure-svg.ts';
import type { DrawItem } from '../../src/scene/scene.ts';
import { shapeTileSvg } from '../../src/scene/shape-tile.ts';
import { frontView, sideView, type View } from '../../src/scene/view.ts';
import { attitude, mixAngles, moreShapes, poseOf, sheetBody, sheetShapes } from './poses.ts';

const body = sheetBody;
const query = new URLSearchParams(location.search);
if (query.get('theme')) document.documentElement.dataset.theme = query.get('theme') ?? 'light';

function cell(name: string, items: DrawItem[], width: number, height: number): string {
  return `<div class="cell" style="width:${width}px"><div>${name}</div>${svgPicture(items, width, height)}</div>`;
}

const side = sideView(-1);
const rows: string[] = [];
for (const [label, view, scale] of [
  ['from the side', side, 112],
  ['from the front', frontView, 112],
  ['from behind', { right: [0, 0, 1], up: [0, 1, 0], toward: [-1, 0, 0] } as View, 60],
] as const) {
  const h = scale * 2.2;
  const cells = sheetShapes.map(({ name, angles }) =>
    cell(
      scale > 100 && view === side ? name : '',
      figureItems(body, poseOf(body, angles), { view, scale, anchor: [0, 0, 0], x: 90, y: h / 2 }),
      180,
      h,
    ),
  );
  rows.push(`<h2>${label}</h2><div class="row">${cells.join('')}</div>`);
}

const series: string[] = [];
const [, , , one, wrapped] = sheetShapes;
for (let i = 0; i < 9; i++) {
  const s = i / 8;
  const angles = mixAngles(one.angles, wrapped.angles, Math.min(1, Math.max(0, (i - 1) / 1.5)));
  const R = attitude(-18 + 118 * s, 3 + 6 * s, 180 * s);
  const place = { view: side, scale: 88, anchor: [0, 0, 0] as const, x: 58, y: 85 };
  series.push(cell('', figureItems(body, poseOf(body, angles, R), place), 116, 170));
}
const last = poseOf(body, wrapped.angles, attitude(30, 4, 15));
const place = { view: side, scale: 88, anchor: [0, 0, 0] as const, x: 58, y: 85 };
series.push(cell('cursor', figureItems(body, last, place), 116, 170));
series.push(cell('ghost', [{ kind: 'group', ghost: true, items: figureItems(body, last, place) }], 116, 170));
series.push(cell('version B', outlineItems(body, last, place), 116, 170));
rows.push(
  `<h2>half a twist to the left while the body goes over backward</h2><div class="row">${series.join('')}</div>`,
);
const tiles = moreShapes.map(({ name, angles }) => {
  const frames = poseOf(body, angles);
  const pictures = [frontView, side].map((view) =>
    shapeTileSvg(body, frames, { width: 62, height: 60, most: 32, view, gap: 'air' }, name),
  );
  return `<div class="cell" style="width:130px">${pictures.join('')}<div>${name}</div></div>`;
});
rows.push(`<h2>tiles</h2><div class="row" style="flex-wrap:wrap">${tiles.join('')}</div>`);
(document.getElementById('sheet') as HTMLElement).innerHTML = rows.join('');
document.title = 'ready';
