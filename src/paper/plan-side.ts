/** The camera from the side on paper: its height over the floor, what it sees, and the room, along its line of sight. */
import type { FilmingPlan } from '../../sim/index.ts';
import { PLAIN_FILMING, roomSize } from '../../sim/words/filming-words.ts';
import { figureItems } from '../scene/figure.ts';
import { planView } from '../scene/filmed-scene.ts';
import type { PaperFlight } from './paper-flight.ts';
import { drawn } from './paper-ink.ts';
import { BOLD, round, textMarkup } from './set-text.ts';

interface SidePlace {
  readonly x: number;
  /** of the floor */
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const STEEPEST = 1.4;

export function sideMarkup(plan: FilmingPlan, flight: PaperFlight, place: SidePlace): string {
  const { camera, stand, sightline } = plan;
  const [length, breadth, high] = roomSize(plan);
  const off = Math.abs(camera.offSquare);
  const deep = (length * Math.sin(off) + breadth * Math.cos(off)) / 2;
  const reach = camera.away + deep + 0.4;
  const k = Math.min((place.width - 60) / reach, place.height / Math.max(high + 0.2, camera.up + 0.6));
  const x = (m: number): number => Math.round(10 * (place.x + 40 + m * k)) / 10;
  const y = (m: number): number => Math.round(10 * (place.y - m * k)) / 10;
  const aim = camera.aim ?? stand.middle[1] - stand.floorY;
  const pitch = Math.atan2(aim - camera.up, camera.away);
  const half = Math.atan(sightline.height / 2 / sightline.focal);
  // what it sees ends at the floor, and at the top of what is drawn
  const riseAt = (a: number): number => camera.up + reach * Math.tan(Math.min(STEEPEST, Math.max(-STEEPEST, a)));
  const top = riseAt(pitch + half);
  const bottom = riseAt(pitch - half);
  const low =
    bottom >= 0 ? `L${x(reach)} ${y(bottom)}` : `L${x(reach)} ${y(0)}L${x(camera.up / Math.tan(half - pitch))} ${y(0)}`;
  const roomTop = plan.room.high[1] - stand.floorY;
  const now = flight.pose(plan.t[plan.steps.most.row]);
  const figure = drawn(
    figureItems(flight.staged.body, now.frames, {
      view: planView(plan, 'side'),
      scale: k,
      anchor: stand.middle,
      x: x(camera.away),
      y: y(stand.middle[1] - stand.floorY),
    }),
  );
  const every = reach > 24 ? 5 : 2;
  const marks = Array.from({ length: Math.floor(reach / every) + 1 }, (_, i) => i * every);
  const edge = y(Math.max(roomTop, camera.up)) - 40;
  return [
    `<clipPath id="side"><rect x="${place.x}" y="${edge}" width="${place.width}" height="${place.y - edge}"/></clipPath>`,
    `<path clip-path="url(#side)" d="M${x(0)} ${y(camera.up)}L${x(reach)} ${y(top)}${low}Z" fill="#e4e4e4" stroke="#000000" stroke-width="1.5" stroke-dasharray="5 5"/>`,
    `<rect x="${x(camera.away - deep)}" y="${y(roomTop)}" width="${round(2 * deep * k)}" height="${round(high * k)}" fill="#ffffff" stroke="#000000" stroke-width="2"/>`,
    figure,
    `<path d="M${x(0)} ${y(camera.up)}L${x(0) - 12} ${y(0)}M${x(0)} ${y(camera.up)}L${x(0) + 12} ${y(0)}" fill="none" stroke="#000000" stroke-width="2"/>`,
    `<path d="M${x(0) - 13} ${y(camera.up) - 8}h22v16h-22zM${x(0) + 9} ${y(camera.up)}l9 -8v16z" fill="#000000"/>`,
    `<rect x="${place.x}" y="${y(0)}" width="${place.width}" height="4" fill="#000000"/>`,
    ...marks.map((m) => textMarkup([{ text: `${m} m` }], { x: x(m), y: place.y + 28, size: 18, anchor: 'middle' })),
    textMarkup([{ text: PLAIN_FILMING.metres(camera.up), weight: BOLD }], {
      x: x(0),
      y: y(camera.up) - 18,
      size: 22,
      anchor: 'middle',
    }),
  ].join('');
}
