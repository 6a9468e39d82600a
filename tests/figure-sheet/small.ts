/** The figure at the sizes that it has in the page, all round: what must read at a glance is judged here. Not part of the app. */
import '@fontsource-variable/radio-canada';
import { figureItems } from '../../src/scene/figure.ts';
import { svgPicture } from '../../src/scene/figure-svg.ts';
import type { DrawItem } from '../../src/scene/scene.ts';
import { sheetBody as body, poseOf, sheetShapes } from './poses.ts';
import { turnedView } from './turned-view.ts';

const query = new URLSearchParams(location.search);
if (query.get('theme')) document.documentElement.dataset.theme = query.get('theme') ?? 'light';
const heights = (query.get('heights') ?? '40,60,100').split(',').map(Number);
const asked = (query.get('shapes') ?? '').split(',').filter(Boolean);
const rows: string[] = [];
for (const height of heights) {
  const scale = height / 1.62;
  const cells = Math.floor(1420 / (1.05 * height));
  const pictures: string[] = [];
  for (const { name, angles } of sheetShapes) {
    if (asked.length > 0 && !asked.includes(name)) continue;
    for (let k = 0; k < 8; k++) {
      const view = turnedView((k * Math.PI) / 4, 0);
      const at = { view, scale, anchor: [0, 0, 0] as const, x: 0.525 * height, y: 0.9 * height };
      const items: DrawItem[] = figureItems(body, poseOf(body, angles), at);
      pictures.push(svgPicture(items, 1.05 * height, 1.6 * height));
    }
  }
  rows.push(`<h2>${height} px, from the front round by the left side, ${cells} in a row</h2>`);
  rows.push(`<div class="row" style="flex-wrap:wrap">${pictures.join('')}</div>`);
}
(document.getElementById('sheet') as HTMLElement).innerHTML = rows.join('');
document.title = 'ready';
